"""Plans of rooms and levels: legible, whole, the same every time."""

from collections.abc import Callable

import pytest
from houses import HOUSE, surveyed
from nearness import touched
from overlaps import lettering_on_leaders, lettering_on_swings, lettering_overlaps, outside, strokes
from rooms import level_plans, plan_of, random_room

from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, letterings, svg
from junctionary.drawings.plan import (
    middle_level,
    middle_room,
    narrow_level,
    narrow_room,
    wide_level,
    wide_room,
)
from junctionary.drawings.plan_margins import dimensioned
from junctionary.drawings.plan_small import narrow_small, wide_small
from junctionary.publish.pages import TABLET_PX
from junctionary.sheets.levels import level_sheet
from junctionary.sheets.links import Ref
from junctionary.sheets.plan import Plan
from junctionary.sheets.plans import room_plan
from junctionary.sheets.survey import Survey

Draw = Callable[[Plan], Drawing]
SEEDS = pytest.mark.parametrize("seed", range(24))
PHONE_PX = 320 - 46
"""What the sheet's frame leaves of the narrowest phone."""
DESK_PX = 1120 - 46
SMALL_TABLET_PX = 721 - 46
"""Where the narrow layout ends; a wide drawing with a middle one stands on a desk only."""


def drawn(survey: Survey) -> list[Drawing]:
    plans = [plan for room in survey.house.rooms.values() if (plan := room_plan(survey, room)) is not None]
    made = [draw(plan) for plan in plans for draw in (wide_room, middle_room, narrow_room)]
    return made + [
        draw(plan) for plan in level_plans(survey) for draw in (wide_level, middle_level, narrow_level)
    ]


def links(marks: tuple[Mark, ...]) -> set[Ref]:
    return {mark.to for mark in marks if isinstance(mark, Linked)}


@SEEDS
def test_no_lettering_of_a_random_room_lies_on_other_lettering(seed: int) -> None:
    for drawing in drawn(random_room(seed)):
        assert lettering_overlaps(drawing) == [], drawing.id
        assert outside(drawing) == [], drawing.id


def test_no_lettering_of_the_demo_lies_on_other_lettering(demo_survey: Survey) -> None:
    for drawing in drawn(demo_survey):
        assert lettering_overlaps(drawing) == [], drawing.id
        assert outside(drawing) == [], drawing.id


SWITCHES = {"S", "S3", "S4"}
"""The letters that are the symbol of a switch: they stand where the switch is, be it in a swing."""


def names_and_codes_on_swings(survey: Survey) -> dict[str, list[str]]:
    small = [draw(plan, 528) for plan in level_plans(survey) for draw in (wide_small, narrow_small)]
    found = {each.id: lettering_on_swings(each) for each in [*drawn(survey), *small]}
    return {
        name: words for name, texts in found.items() if (words := [t for t in texts if t not in SWITCHES])
    }


def test_no_name_or_code_of_the_demo_lies_on_the_swing_of_a_door(demo_survey: Survey) -> None:
    assert names_and_codes_on_swings(demo_survey) == {}


@SEEDS
def test_no_name_or_code_of_a_random_room_lies_on_the_swing_of_a_door(seed: int) -> None:
    assert names_and_codes_on_swings(random_room(seed)) == {}


def test_a_swing_is_seen_where_a_word_lies_on_it() -> None:
    arc = Stroke("M100.0 0.0A100.0 100.0 0 0 1 0.0 100.0", "hair")
    on, off = Lettering(66, 75, "on"), Lettering(20, 40, "off")
    assert lettering_on_swings(Drawing("d", 200, 200, "", "", (arc, on, off))) == ["on"]


def test_no_leader_of_a_demo_room_runs_through_lettering(demo_survey: Survey) -> None:
    for room in demo_survey.house.rooms.values():
        plan = room_plan(demo_survey, room)
        if plan is not None:
            assert lettering_on_leaders(wide_room(plan)) == [], plan.id


def test_no_line_of_a_demo_room_touches_the_words_of_a_run_to_a_panel(demo_survey: Survey) -> None:
    for room in demo_survey.house.rooms.values():
        plan = room_plan(demo_survey, room)
        if plan is None:
            continue
        for draw in (wide_room, middle_room, narrow_room):
            words = {each for run in plan.home_runs for each in (run.panel, run.space)}
            assert touched(draw(plan), words, 1.5) == [], (plan.id, draw.__name__)


def test_every_run_to_a_panel_is_told_on_the_plan_of_its_room(demo_survey: Survey) -> None:
    for room in demo_survey.house.rooms.values():
        plan = room_plan(demo_survey, room)
        if plan is not None:
            for draw in (wide_room, middle_room):
                said = {each.text for each in letterings(draw(plan).marks)}
                assert {run.panel for run in plan.home_runs} <= said, (plan.id, draw.__name__)


def test_a_line_that_touches_a_word_is_seen_unless_it_is_broken_for_it() -> None:
    word = Lettering(20, 40, "main 4")
    curve, far = Stroke("M0 20Q40 60 80 20", "wire w0"), Stroke("M0 60L80 60", "hair")
    gap = Stroke("M15 28h60v15h-60Z", "floor")
    for marks, found in (
        ((curve, word), ["main 4"]),
        ((far, word), []),
        ((curve, gap, word), []),
        ((gap, curve, word), ["main 4"]),
    ):
        assert touched(Drawing("d", 80, 80, "", "", marks), {"main 4"}, 1.5) == found


def test_every_room_of_the_demo_is_named_on_its_level_and_on_the_small_plan(demo_survey: Survey) -> None:
    for plan in level_plans(demo_survey):
        small = (wide_small(plan, 528), narrow_small(plan, 528))
        for drawing in (wide_level(plan), middle_level(plan), *small):
            words = " ".join(each.text for each in letterings(drawing.marks))
            assert [each.name for each in plan.rooms if each.name not in words] == [], drawing.id


def test_letters_are_never_below_nine_pixels(demo_survey: Survey) -> None:
    for drawing in drawn(demo_survey):
        on_tablet = drawing.kind.startswith("middle") or drawing.width_px <= TABLET_PX
        field = SMALL_TABLET_PX if on_tablet else DESK_PX
        field = PHONE_PX if drawing.kind.startswith("narrow") else field
        scale = min(1, field / drawing.width_px)
        assert min((each.size_px for each in letterings(drawing.marks)), default=9) * scale >= 9, drawing.id


@SEEDS
@pytest.mark.parametrize(
    "draw", [wide_room, middle_room, narrow_room, wide_level, middle_level, narrow_level]
)
def test_every_box_is_drawn_and_leads_to_its_sheet(draw: Draw, seed: int) -> None:
    plan = plan_of(random_room(seed))
    assert {each.ref for each in plan.boxes} <= links(draw(plan).marks)


@SEEDS
def test_every_box_carries_its_code_wide_and_narrow(seed: int) -> None:
    plan = plan_of(random_room(seed))
    for draw in (wide_room, middle_room, narrow_room, wide_level, middle_level):
        assert {each.name for each in plan.boxes} <= {each.text for each in letterings(draw(plan).marks)}


def test_symbols_stand_clear_of_one_another(demo_survey: Survey) -> None:
    for room in demo_survey.house.rooms.values():
        plan = room_plan(demo_survey, room)
        if plan is None:
            continue
        hits = [
            tuple(float(each) for each in stroke.d[1:].split("h")[0].split())
            for stroke in strokes(wide_room(plan).marks, "hit")
        ]
        for index, (x, y) in enumerate(hits):
            for other_x, other_y in hits[index + 1 :]:
                assert (x - other_x) ** 2 + (y - other_y) ** 2 >= 22**2, plan.id


def test_the_same_plan_is_drawn_the_same() -> None:
    one, other = (str(svg(wide_room(plan_of(random_room(7))), lambda _: None)) for _ in range(2))
    assert one == other


ROOM = """\
room: den
name: Den
kind: den
level: ground
outline: [[0 ft, 0 ft], [12 ft, 0 ft], [12 ft, 10 ft], [0 ft, 10 ft]]
walls: [north, east, south, west]
"""


def test_a_door_told_by_one_room_breaks_the_wall_of_both() -> None:
    beside = (
        "room: hall\nname: Hall\nkind: hall\nlevel: ground\n"
        "outline: [[12 ft 5 in, 0 ft], [20 ft, 0 ft], [20 ft, 10 ft], [12 ft 5 in, 10 ft]]\n"
        "walls: [north, east, south, west]\nthings: [{what: door, wall: west, along: 2 ft, width: 30 in}]\n"
    )
    (plan,) = level_plans(surveyed(rooms=ROOM, **{"rooms/hall": beside}))
    whole = list(strokes(wide_level(plan).marks, "wall"))
    # Two rooms of four sides; the side on each face of the shared wall is in two parts.
    assert len(whole) == 4 + 4 + 2


def test_a_room_without_an_outline_has_no_plan_and_is_listed_on_its_level() -> None:
    survey = surveyed()
    assert room_plan(survey, survey.house.rooms["den"]) is None
    sheet = level_sheet(survey, "ground")
    assert sheet.plans == ()
    assert [row.cells[1] for row in sheet.not_drawn.rows] == [("outline not recorded",)]


def test_a_box_whose_place_is_not_told_is_named_beside_the_plan() -> None:
    survey = surveyed(
        rooms=ROOM, boxes="room: den\nboxes:\n  D1: {}\n  D2: {at: {wall: north, along: 2 ft}}\n"
    )
    plan = plan_of(survey)
    assert [each.name for each in plan.boxes] == ["D2"]
    assert [phrase[1] for phrase in plan.unplaced] == [": place not recorded"]


SWITCHED = """\
room: den
boxes:
  S1: {at: {wall: north, along: 2 ft, up: 48 in}, devices: {s1: switch}, makeup: {feed: c1, switched: {s1: c2}}}
  L1: {at: {ceiling: [6 ft, 5 ft]}, devices: {f1: lamp}, makeup: end-of-run}
"""
LIT = """\
circuit: c
name: Lights
purpose: lighting
runs:
  - {id: c1, cable: 14/2 NM-B, from: main, to: S1}
  - {id: c2, cable: 14/2 NM-B, from: S1, to: L1}
"""
MAIN = "panel: main\nname: Main\nspaces: 20\nbreakers: {4: {rating: 15 A, feeds: c}}\n"


def test_a_switch_is_joined_to_its_lamp_by_a_dashed_curve_and_its_home_run_names_the_space() -> None:
    plan = plan_of(surveyed(rooms=ROOM, boxes=SWITCHED, circuits=LIT, panels=MAIN))
    assert plan.controls == (("S1", "L1"),)
    drawing = wide_room(plan)
    assert len(list(strokes(drawing.marks, "leg"))) == 1
    assert "main 4" in {each.text for each in letterings(drawing.marks)}
    assert Ref("run", "c1") in links(drawing.marks)


OUTLET = """\
room: den
boxes:
  D1: {at: {wall: south, along: 6 ft, up: 14 in}, devices: {r1: duplex}, makeup: end-of-run}
"""
FED = """\
circuit: c
name: Den
runs:
  - {id: c1, cable: 12/2 NM-B, from: main, to: D1}
"""
FAR_PANEL = "panel: main\nspaces: 8\nbreakers:\n  3: {rating: 20 A, feeds: c, says: Den}\n"


def far_plan(room: str) -> Plan:
    return plan_of(surveyed(rooms=room, boxes=OUTLET, circuits=FED, panels=FAR_PANEL))


def test_the_stretch_of_wall_that_fails_is_drawn_around_its_corners_with_its_length() -> None:
    plan = far_plan(ROOM + "complete: true\n")
    # 44 ft around, of which 6 ft to each side of the outlet is in reach.
    assert [each.says for each in plan.far] == ["32 ft"]
    assert plan.far_kinds == ("wall more than 6 ft from a receptacle",)
    for draw in (wide_room, narrow_room):
        drawing = draw(plan)
        assert len(list(strokes(drawing.marks, "far"))) == 1
        assert "32 ft" in {each.text for each in letterings(drawing.marks)}


def test_where_it_cannot_be_told_whether_a_wall_fails_no_stretch_is_drawn() -> None:
    plan = far_plan(ROOM)
    assert plan.far == ()
    assert list(strokes(wide_room(plan).marks, "far")) == []


def test_a_room_of_an_older_edition_shows_the_stretch_as_asked_by_todays() -> None:
    plan = far_plan(ROOM + "complete: true\nbuilt_to: nec-1996\n")
    assert [each.only_today for each in plan.far] == [True]


HALL = (
    "room: hall\nname: Hall\nkind: hall\nlevel: ground\n"
    "outline: [[0 ft, -8 ft], [12 ft, -8 ft], [12 ft, -5 in], [0 ft, -5 in]]\nwalls: [north, east, south, west]\n"
)


def door_plan(door: str) -> Plan:
    den = f"{ROOM}things: [{{what: door, wall: north, along: 2 ft, width: 30 in, to: hall{door}}}]\n"
    return plan_of(surveyed(rooms=den, **{"rooms/hall": HALL}))


def test_a_door_hangs_on_its_recorded_side_and_opens_into_its_recorded_room() -> None:
    (inward,) = door_plan(", hinged: left, swings_into: den").gaps
    # The north wall is faced from the south: its left end is the west one.
    assert [(leaf.hinge, leaf.open, leaf.shut) for leaf in inward.leaves] == [((24, 0), (24, 30), (54, 0))]
    (outward,) = door_plan(", hinged: right, swings_into: hall").gaps
    assert [(leaf.hinge, leaf.open, leaf.shut) for leaf in outward.leaves] == [((54, 0), (54, -30), (24, 0))]


def test_a_pair_of_doors_has_two_leaves_that_meet() -> None:
    (pair,) = door_plan(", hinged: both, swings_into: den").gaps
    assert [leaf.shut for leaf in pair.leaves] == [(39, 0), (39, 0)]


@pytest.mark.parametrize(
    "told", ["", ", hinged: left", ", swings_into: den", ", hinged: unknown, swings_into: den"]
)
def test_a_door_whose_hinges_or_swing_are_not_recorded_has_no_leaf_drawn(told: str) -> None:
    plan = door_plan(told)
    assert plan.gaps[0].leaves == ()
    assert not [each for each in strokes(wide_room(plan).marks, "hair") if "A" in each.d]
    assert list(strokes(wide_room(plan).marks, "dashed-fine"))


def test_a_door_that_slides_is_drawn_as_two_panels_without_a_swing() -> None:
    plan = door_plan(", hinged: none")
    assert plan.gaps[0].slides
    assert not list(strokes(wide_room(plan).marks, "dashed-fine"))


def test_a_door_told_by_both_its_rooms_is_drawn_once_with_the_leaf_that_one_of_them_tells() -> None:
    den = f"{ROOM}things: [{{what: door, wall: north, along: 2 ft, width: 30 in, hinged: left, swings_into: den}}]\n"
    hall = f"{HALL}things: [{{what: door, wall: south, along: 7 ft 6 in, width: 30 in, to: den}}]\n"
    (plan,) = level_plans(surveyed(rooms=den, **{"rooms/hall": hall}))
    assert [len(gap.leaves) for gap in plan.gaps] == [1]


def test_a_metric_house_reads_the_reach_in_its_own_units_beside_the_codes() -> None:
    survey = surveyed(
        house=f"{HOUSE}shows: metric\n",
        rooms=ROOM + "complete: true\n",
        boxes=OUTLET,
        circuits=FED,
        panels=FAR_PANEL,
    )
    assert plan_of(survey).far_kinds == ("wall more than 1.83 m (6 ft) from a receptacle",)


def test_along_a_garden_a_wall_is_drawn_only_where_a_room_stands() -> None:
    garden = (
        "room: den\nname: Garden\nkind: outdoors\nlevel: ground\n"
        "outline: [[0 ft, 0 ft], [30 ft, 0 ft], [30 ft, 20 ft], [0 ft, 20 ft]]\nwalls: [north, east, south, west]\n"
    )
    plan = plan_of(surveyed(rooms=garden, **{"rooms/hall": HALL}))
    ((start, end),) = [each for each in plan.rooms[0].unbuilt if each[0][1] == each[1][1] == 0]
    # The hall is 12 ft long; the rest of the north side is open.
    assert (start, end) == ((144, 0), (360, 0))
    assert len(list(strokes(wide_room(plan).marks, "wall"))) == 1


def test_the_key_tells_every_symbol_of_the_plan_once(demo_survey: Survey) -> None:
    for level in {room.record.level for room in demo_survey.house.rooms.values()} - {None}:
        sheet = level_sheet(demo_survey, level)
        drawn_as = {
            "receptacle" if each == "gfci" else each
            for plan in sheet.plans
            for box in plan.boxes
            for each in box.symbols
        }
        assert {symbol for symbol, _ in sheet.signs} == drawn_as
        assert len(sheet.signs) == len(drawn_as)


def test_of_two_sides_alike_over_against_each_other_one_has_a_dimension_line() -> None:
    plan = plan_of(surveyed(rooms=ROOM))
    assert [each.says for each in plan.sides] == ["12 ft", "10 ft", "12 ft", "10 ft"]
    assert [each.says for each in dimensioned(plan)] == ["12 ft", "10 ft"]
    assert [each.text for each in letterings(wide_room(plan).marks)].count("12 ft") == 1
