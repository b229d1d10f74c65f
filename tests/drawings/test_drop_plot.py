"""The plot of the voltage drop: every box a row of its own, its lines told apart, nothing on anything."""

import re
from dataclasses import replace

import pytest
from overlaps import lettering_overlaps, outside, segments, strokes

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


def rows(drawing: Drawing) -> dict[str, float]:
    """The height of each box's row, at the middle of its name."""
    named = {mark.to.id: next(letterings(mark.marks)) for mark in drawing.marks if isinstance(mark, Linked)}
    return {name: each.y - 4 for name, each in named.items()}


def scale(drawing: Drawing) -> tuple[float, float]:
    """Where nothing is lost, and how many px a percent takes, as the figures of the axis say."""
    figures = {each.text: each.x for each in letterings(drawing.marks) if re.fullmatch(r"\d+ %", each.text)}
    low, high = min(figures, key=figures.__getitem__), max(figures, key=figures.__getitem__)
    return figures[low], (figures[high] - figures[low]) / int(high.split()[0])


def middles(drawing: Drawing, kind: str) -> set[tuple[float, float]]:
    """The middles of the circles of a kind, rounded to px."""
    circles = [each.d for each in strokes(drawing.marks, kind) if "a" in each.d]
    found = set()
    for d in circles:
        x, y, radius = map(float, re.match(r"M([\d.]+) ([\d.]+)a([\d.]+)", d).groups())  # type: ignore[union-attr]
        found.add((round(x + radius), round(y)))
    return found


@pytest.mark.parametrize("drawing", drawn(PLOT), ids=["wide", "narrow"])
def test_each_box_is_marked_in_its_row_at_what_is_lost_there(drawing: Drawing) -> None:
    nought, percent = scale(drawing)
    at = rows(drawing)
    assert len(set(at.values())) == len(PLOT.points)
    for point in PLOT.points:
        for value, kind in ((point.recorded, "solid"), (point.design, "hole")):
            if value is not None:
                assert (round(nought + value * percent), round(at[point.name])) in middles(drawing, kind)


@pytest.mark.parametrize("kind", ["mid", "hair"])
def test_a_box_is_joined_to_the_one_its_cable_comes_from(kind: str) -> None:
    wide, _ = drawn(PLOT)
    nought, percent = scale(wide)
    at = rows(wide)
    steps = {tuple(map(round, each)) for stroke in strokes(wide.marks, kind) for each in segments(stroke.d)}
    for point in PLOT.points:
        before = next((each for each in PLOT.points if each.name == point.before), None)
        value, start = (
            (each.design if kind == "hair" else each.recorded) if each else 0.0 for each in (point, before)
        )
        if value is not None and start is not None:
            y = round(at[point.name])
            assert (round(nought + start * percent), y, round(nought + value * percent), y) in steps


def test_rows_follow_the_branches_of_the_map(demo_survey: Survey) -> None:
    for circuit in demo_survey.house.circuits:
        plot = circuit_sheet(demo_survey, circuit).plot
        seen: set[str] = set()
        for each in plot.points if plot is not None else ():
            assert each.before is None or each.before in seen, (circuit, each.name)
            seen.add(each.name)


def test_the_limit_is_the_one_heavy_line_and_says_what_it_is() -> None:
    for drawing in drawn(PLOT):
        assert len(list(strokes(drawing.marks, "heavy"))) == 1
        assert any("3 % of 120 V, 3.6 V" in each.text for each in letterings(drawing.marks))


def test_what_rises_stands_left_of_nought_and_clear_of_the_names() -> None:
    lifted = replace(PLOT, points=(*PLOT.points[:3], replace(PLOT.points[3], recorded=-0.4)))
    for drawing in drawn(lifted):
        nought, _ = scale(drawing)
        height = round(rows(drawing)["B4"])
        left = [x for x, y in middles(drawing, "solid") if y == height and x < nought - 1]
        assert len(left) == 1
        ways = [each for each in letterings(drawing.marks) if each.anchor == "end"]
        assert left[0] > max(each.extent[2] for each in ways)


def test_a_box_whose_cable_has_no_length_is_named_as_not_plotted(demo_survey: Survey) -> None:
    house = demo_survey.house
    for circuit in house.circuits:
        plot = circuit_sheet(demo_survey, circuit).plot
        if plot is not None:
            drop = demo_survey.figures.drops[circuit]
            assert {each.name for each in plot.points} | set(plot.untold) == set(drop.design)
