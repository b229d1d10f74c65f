"""The load bars: one scale, each load at its length, what is over its limit told by word and by hatching."""

from dataclasses import replace
from fractions import Fraction

import pytest
from overlaps import lettering_overlaps, outside, strokes
from samples import LOADS

from junctionary.drawings.ink import Drawing, letterings
from junctionary.drawings.load_bars import middle_bars, narrow_bars, wide_bars
from junctionary.sheets.load_calculation import loads_sheet
from junctionary.sheets.loads import LoadsSheet
from junctionary.sheets.survey import Survey

PHONE_PX = 320 - 46


def drawn(sheet: LoadsSheet) -> tuple[Drawing, Drawing, Drawing]:
    return wide_bars(sheet, "w"), middle_bars(sheet, "m"), narrow_bars(sheet, "n")


def words(drawing: Drawing) -> str:
    return " ".join(each.text for each in letterings(drawing.marks))


def test_no_lettering_lies_on_other_lettering_or_is_too_small(demo_survey: Survey) -> None:
    for sheet in (LOADS, loads_sheet(demo_survey)):
        for drawing in drawn(sheet):
            assert lettering_overlaps(drawing) == []
            assert outside(drawing) == []
        assert min(each.size_px for each in letterings(drawn(sheet)[2].marks)) * PHONE_PX / 340 >= 9


def test_every_load_and_leg_is_a_bar_with_its_name(demo_survey: Survey) -> None:
    sheet = loads_sheet(demo_survey)
    due = len(sheet.methods) + len(sheet.legs) + len(sheet.feeders)
    for drawing in drawn(sheet):
        assert len(list(strokes(drawing.marks, "mid"))) == due


def test_a_load_beyond_its_limit_says_by_how_much_and_is_hatched_closely() -> None:
    for drawing in drawn(LOADS):
        assert "1.0 A over 60 A" in words(drawing)
        assert len(list(strokes(drawing.marks, "over"))) == 1


def test_a_load_that_may_not_be_all_has_an_open_end_and_says_at_least() -> None:
    for drawing in drawn(LOADS):
        assert "at least 11.3 A" in words(drawing)
        assert len(list(strokes(drawing.marks, "dashed-fine"))) == 2


@pytest.mark.parametrize("limit", [None, Fraction(100)])
def test_a_limit_that_is_not_recorded_is_not_drawn(limit: Fraction | None) -> None:
    sheet = replace(LOADS, methods=tuple(replace(each, limit_a=limit) for each in LOADS.methods), legs=())
    assert ("service 100 A" in words(wide_bars(sheet, "w"))) == (limit is not None)
