"""The cover's plans: names clear of one another, panels where they stand."""

from collections.abc import Callable

import pytest
from overlaps import lettering_overlaps, outside
from rooms import level_plans

from junctionary.drawings.ink import Drawing, Linked, letterings
from junctionary.drawings.plan_small import narrow_small, wide_small
from junctionary.sheets.links import Ref
from junctionary.sheets.plan import Plan
from junctionary.sheets.survey import Survey

Draw = Callable[[Plan, float], Drawing]
LAYOUTS = pytest.mark.parametrize("draw", [wide_small, narrow_small])


def across(plan: Plan) -> float:
    xs = [x for room in plan.rooms for x, _ in room.corners]
    return max(xs) - min(xs)


def plans(survey: Survey) -> list[Plan]:
    return [plan for plan in level_plans(survey) if len(plan.rooms) > 1]


@LAYOUTS
def test_no_lettering_lies_on_other_lettering(demo_survey: Survey, draw: Draw) -> None:
    for plan in plans(demo_survey):
        drawing = draw(plan, across(plan))
        assert lettering_overlaps(drawing) == [], drawing.id
        assert outside(drawing) == [], drawing.id


@LAYOUTS
def test_the_main_panel_stands_on_its_level_and_leads_to_its_sheet(demo_survey: Survey, draw: Draw) -> None:
    (ground,) = [plan for plan in plans(demo_survey) if "ground" in plan.id]
    marks = draw(ground, across(ground)).marks
    assert Ref("panel", "main") in {each.to for each in marks if isinstance(each, Linked)}
    assert "main" in {each.text for each in letterings(marks)}
