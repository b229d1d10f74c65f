"""The one-line diagram: every part labelled and linked, nothing on top of anything, legible on a phone."""

from dataclasses import replace

import pytest
from overlaps import lettering_overlaps, outside, strokes
from samples import ONE_LINE, SUBPANEL

from junctionary.drawings.ink import Drawing, Linked, Mark, letterings
from junctionary.drawings.one_line import (
    MIDDLE_PX,
    NARROW_PX,
    WIDE_PX,
    middle_one_line,
    narrow_one_line,
    wide_one_line,
)
from junctionary.sheets.links import Ref
from junctionary.sheets.one_line import Bus, Feed, Label, OneLine, Tap, buses

LONG = "1 in PVC: 6 AWG black, 6 AWG red, 6 AWG white, 10 AWG green, and a grounding conductor beside it"


def with_feeders(count: int, deep: int = 1) -> OneLine:
    """A main panel with so many feeders, each to a panel with a feeder of its own, so many deep."""
    below: Bus = SUBPANEL
    for _ in range(deep - 1):
        below = replace(SUBPANEL, taps=(Tap(Label("1+3", ("60 A", LONG)), Label("run q", (LONG,)), below),))
    (feed,) = ONE_LINE.feeds
    tap = Tap(Label("5+7", ("60 A", "2 poles")), Label("run f9", (LONG, "70 ft")), below)
    bus = replace(feed.bus, taps=(*feed.bus.taps[:1], *[tap] * count, *feed.bus.taps[2:]))
    return OneLine(ONE_LINE.title, ONE_LINE.says, (replace(feed, bus=bus), Feed((), None, SUBPANEL)))


PLANS = {
    "sample": ONE_LINE,
    "one feeder": with_feeders(1),
    "three feeders": with_feeders(3),
    "four deep": with_feeders(1, 4),
    "nothing": OneLine("One line", "No panel.", ()),
}
EVERY = pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS.keys())


def every(plan: OneLine) -> tuple[Drawing, Drawing, Drawing]:
    return wide_one_line(plan, "w"), middle_one_line(plan, "m"), narrow_one_line(plan, "n")


@EVERY
def test_no_lettering_lies_on_other_lettering(plan: OneLine) -> None:
    for drawing in every(plan):
        assert lettering_overlaps(drawing) == []
        assert outside(drawing) == []


@EVERY
def test_every_panel_is_named_and_has_its_bus_in_all(plan: OneLine) -> None:
    for drawing in every(plan):
        words = [each.text for each in letterings(drawing.marks)]
        count = len(list(buses(plan.feeds)))
        assert sum(each in ("Main panel", "Barn panel") for each in words) == count
        assert len(list(strokes(drawing.marks, "bus"))) == count


@EVERY
def test_each_fits_what_it_is_made_for(plan: OneLine) -> None:
    wide, middle, narrow = every(plan)
    assert wide.width_px <= WIDE_PX
    assert middle.width_px <= MIDDLE_PX
    assert narrow.width_px == NARROW_PX


def links(marks: tuple[Mark, ...]) -> set[Ref]:
    return {mark.to for mark in marks if isinstance(mark, Linked)}


def test_panels_breakers_and_runs_are_linked_in_both() -> None:
    due = {Ref("panel", "main"), Ref("panel", "barn"), Ref("space", "main/main"), Ref("space", "main/2+4")}
    assert links(wide_one_line(ONE_LINE, "w").marks) == due
    assert links(narrow_one_line(ONE_LINE, "n").marks) == due


def ratings(drawing: Drawing) -> str:
    return " ".join(each.text for each in letterings(drawing.marks))


def test_every_part_is_labelled_with_its_size_in_both() -> None:
    for drawing in (wide_one_line(ONE_LINE, "w"), narrow_one_line(ONE_LINE, "n")):
        said = ratings(drawing)
        for part in ("4/0 AWG aluminium", "main 200 A", "60 A", "6/3 NM-B", "2 rods", "15 to 50 A"):
            assert part in said


def test_neutral_and_ground_are_joined_by_a_line_only_where_they_are_bonded() -> None:
    (feed,) = ONE_LINE.feeds

    def heavy(bond: str) -> int:
        bus = replace(feed.bus, ground=replace(feed.bus.ground, bond=bond))
        plan = replace(ONE_LINE, feeds=(replace(feed, bus=bus),))
        return len(list(strokes(wide_one_line(plan, "w").marks, "heavy")))

    assert heavy("joined") == heavy("apart") + 1


def test_letters_are_never_below_nine_pixels() -> None:
    for drawing, room in (
        (narrow_one_line(ONE_LINE, "n"), 320 - 46),
        (middle_one_line(ONE_LINE, "m"), 761 - 100),
        (wide_one_line(ONE_LINE, "w"), 1120 - 100),
    ):
        scale = min(1, room / drawing.width_px)
        assert min(each.size_px for each in letterings(drawing.marks)) * scale >= 9


def test_a_panel_stands_below_the_one_that_feeds_it_and_takes_no_width_from_it() -> None:
    wide = wide_one_line(with_feeders(1), "w")
    by_name = {
        each.text: each for each in letterings(wide.marks) if each.text in ("Main panel", "Barn panel")
    }
    assert by_name["Main panel"].y < by_name["Barn panel"].y
    assert middle_one_line(with_feeders(1), "m").kind == "wide middle line"
    assert len(list(strokes(middle_one_line(with_feeders(1), "m").marks, "dashed"))) > 1


def test_the_key_tells_only_signs_that_are_used() -> None:
    for drawing in (wide_one_line(ONE_LINE, "w"), narrow_one_line(ONE_LINE, "n")):
        words = ratings(drawing)
        assert "grounding electrodes" in words
    assert "enclosure of a panel" in ratings(wide_one_line(ONE_LINE, "w"))
    assert "enclosure of a panel" not in ratings(narrow_one_line(ONE_LINE, "n"))
    assert "grounding electrodes" not in ratings(
        wide_one_line(OneLine("T", "S", (Feed((), None, SUBPANEL),)), "w")
    )
