"""Builds the sheet of a level: a plan for each of its buildings, and what cannot be drawn."""

from collections.abc import Iterator, Mapping

from junctionary.house.geometry import Shape, spot
from junctionary.house.model import House, Room
from junctionary.sheets.entries import Row, Table
from junctionary.sheets.links import Link, Ref, listed
from junctionary.sheets.naming import circuit_link, counted
from junctionary.sheets.plan import LevelSheet, Plan, PlanRoom
from junctionary.sheets.plan_gaps import gaps
from junctionary.sheets.plans import (
    boxes_placed,
    circuit_numbers,
    corners,
    fixtures,
    home_runs,
    north_deg,
    scale_steps,
    signs_of,
)
from junctionary.sheets.survey import Survey, sentence, title
from junctionary.sheets.titleblock import level_number

NEAR_IN = 48.0
"""A box out of doors no farther than this from a building stands on its plan."""


def levels_of(house: House) -> tuple[str, ...]:
    """The levels that have a room, in the order of the record."""
    used = {each.record.level for each in house.rooms.values()}
    return tuple(each.id for each in house.record.levels if each.id in used)


def level_sheet(survey: Survey, level_id: str) -> LevelSheet:
    """The sheet of one level."""
    house = survey.house
    level = next(each for each in house.record.levels if each.id == level_id)
    known = survey.shapes
    rooms = [each for each in house.rooms.values() if each.record.level == level_id]
    keys = _keys(rooms)
    return LevelSheet(
        title=title(
            survey, f"Plan, {level.name}", level_number(levels_of(house).index(level_id) + 1), "as recorded"
        ),
        ref=Ref("level", level_id),
        heading=level.name,
        lead=(sentence(counted(len(rooms), "room")),),
        plans=level_plans(survey, level_id),
        rooms=Table(
            ("room", "boxes", "circuits"),
            tuple(
                Row(
                    (
                        (f"{keys[each.id]} · ", Link(each.name, Ref("room", each.id))),
                        listed(tuple(Link(box, Ref("box", box)) for box in each.boxes)),
                        listed(tuple(circuit_link(house, circuit) for circuit in each.circuits)),
                    )
                )
                for each in rooms
            ),
        ),
        not_drawn=Table(("what", "why"), tuple(_not_drawn(house, known, rooms))),
    )


def _keys(rooms: list[Room]) -> dict[str, str]:
    return {room.id: str(index) for index, room in enumerate(rooms, 1)}


def level_plans(survey: Survey, level_id: str) -> tuple[Plan, ...]:
    """A plan for each building of the level; none where no room has an outline."""
    rooms = [each for each in survey.house.rooms.values() if each.record.level == level_id]
    return tuple(_plans(survey, survey.shapes, level_id, rooms))


def _plans(survey: Survey, known: Mapping[str, Shape], level_id: str, rooms: list[Room]) -> Iterator[Plan]:
    """Grounds are too wide to draw, but what is on the outer walls of a building is shown."""
    keys = _keys(rooms)
    house = survey.house
    buildings = dict.fromkeys(each.record.building for each in rooms)
    placed, _ = boxes_placed(
        house,
        known,
        [house.boxes[box] for room in rooms for box in room.boxes],
        [house.panels[panel] for room in rooms for panel in room.panels],
        circuit_numbers(house),
    )
    for building in buildings:
        ours = [
            each
            for each in rooms
            if each.record.building == building and each.id in known and each.record.kind != "outdoors"
        ]
        if not ours:
            continue
        points = [corner for each in ours for corner in corners(known[each.id].outline)]
        xs, ys = [x for x, _ in points], [y for _, y in points]
        here = [
            each
            for each in placed
            if min(xs) - NEAR_IN <= each.at[0] <= max(xs) + NEAR_IN
            and min(ys) - NEAR_IN <= each.at[1] <= max(ys) + NEAR_IN
        ]
        names = {each.name for each in here}
        name = next((each.name for each in house.record.buildings if each.id == building), None) or ""
        yield Plan(
            id=f"level-{level_id}-{building or 'house'}",
            title=f"Plan, {name or 'house'}",
            says=f"{counted(len(ours), 'room')}, {counted(len(here), 'box or panel', 'boxes and panels')}; "
            "each leads to its sheet.",
            rooms=tuple(
                PlanRoom(Ref("room", each.id), each.name, corners(known[each.id].outline), keys[each.id])
                for each in ours
            ),
            gaps=gaps(known, ours),
            fixtures=tuple(each for room in ours for each in fixtures(room, known[room.id])),
            boxes=tuple(here),
            signs=signs_of(here),
            home_runs=tuple(home_runs(house, known, names, {})),
            controls=tuple(each for each in survey.controls if set(each) <= names),
            north_deg=north_deg(house),
            scale=scale_steps(house),
        )


def _not_drawn(house: House, known: Mapping[str, Shape], rooms: list[Room]) -> Iterator[Row]:
    for room in rooms:
        if room.id not in known:
            yield Row(((Link(room.name, Ref("room", room.id)),), ("outline not recorded",)))
        elif room.record.kind == "outdoors":
            yield Row(((Link(room.name, Ref("room", room.id)),), ("out of doors: drawn on its own sheet",)))
        for id_ in room.boxes:
            at = house.boxes[id_].record.at
            if spot(at, known.get(room.id)) is None:
                why = "place not recorded" if at is None else "its wall or the distance along it not recorded"
                yield Row(((Link(id_, Ref("box", id_)),), (why,)))
