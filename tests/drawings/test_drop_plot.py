"""The plot of the voltage drop: every box a named point, its lines told apart, nothing on anything."""

import pytest
from overlaps import lettering_overlaps, outside, strokes

from junctionary.drawings.drop_plot import narrow_drop, wide_drop
from junctionary.drawings.ink import Drawing, Linked, letterings
from junctionary.sheets.circuits import circuit_sheet
from junctionary.sheets.drop_plot import DropPlot, DropPoint
from junctionary.sheets.links import Ref
from junctionary.sheets.survey import Survey

PHONE_PX = 320 - 46


def point(name: str, before: str | None, way: float, recorded: float | None, design: float) -> DropPoint:
    return DropPoint(Ref("box", name), name, before, way, recorded, design)


PLOT = DropPlot(
    "Voltage drop",
    "Three boxes.",
    (
        point("B1", None, 40, 0.5, 2.0),
        point("B2", "B1", 60, 0.6, 2.9),
        point("B3", "B1", 60, 0.6, 2.9),
        point("B4", "B3", 90, None, 4.4),
    ),
    3,
    "3 % of 120 V, 3.6 V",
    "ft",
    "recorded load",
    "design load, 16 A at that box alone",
    (),
)


def drawn(plot: DropPlot) -> tuple[Drawing, Drawing]:
    return wide_drop(plot, "w"), narrow_drop(plot, "n")


@pytest.mark.parametrize("drawing", drawn(PLOT), ids=["wide", "narrow"])
def test_every_box_is_named_once_and_leads_to_its_sheet(drawing: Drawing) -> None:
    named = [mark.to.id for mark in drawing.marks if isinstance(mark, Linked)]
    assert named == ["B1", "B2", "B3", "B4"]


def test_no_lettering_of_the_demo_lies_on_other_lettering_or_is_too_small(demo_survey: Survey) -> None:
    for circuit in demo_survey.house.circuits:
        plot = circuit_sheet(demo_survey, circuit).plot
        for drawing in drawn(plot) if plot is not None else ():
            assert lettering_overlaps(drawing) == [], circuit
            assert outside(drawing) == [], circuit
            if drawing.kind.startswith("narrow"):
                assert min(each.size_px for each in letterings(drawing.marks)) * PHONE_PX / 340 >= 9


def test_a_point_stands_higher_where_more_is_lost_and_farther_where_the_way_is_longer() -> None:
    wide, _ = drawn(PLOT)
    at = {mark.to.id: next(letterings(mark.marks)) for mark in wide.marks if isinstance(mark, Linked)}
    assert at["B1"].x < at["B2"].x < at["B4"].x
    assert at["B1"].y > at["B2"].y > at["B4"].y


def test_the_limit_is_the_one_heavy_line_and_says_what_it_is() -> None:
    for drawing in drawn(PLOT):
        assert len(list(strokes(drawing.marks, "heavy"))) == 1
        assert any("3 % of 120 V, 3.6 V" in each.text for each in letterings(drawing.marks))


def test_a_box_whose_cable_has_no_length_is_named_as_not_plotted(demo_survey: Survey) -> None:
    house = demo_survey.house
    for circuit in house.circuits:
        plot = circuit_sheet(demo_survey, circuit).plot
        if plot is not None:
            drop = demo_survey.figures.drops[circuit]
            assert {each.name for each in plot.points} | set(plot.untold) == set(drop.design)
