"""Rooms of every shape with boxes at random, as a record would have them, and what is drawn of them."""

import random
from collections.abc import Iterator

from houses import surveyed

from junctionary.sheets.elevation import Elevation
from junctionary.sheets.elevations import elevations
from junctionary.sheets.levels import level_sheet
from junctionary.sheets.plan import Plan
from junctionary.sheets.plans import room_plan
from junctionary.sheets.survey import Survey

PANEL = """\
panel: main
name: Main panel
spaces: 40
at: {room: den, wall: south, along: 14 in, up: 60 in}
breakers:
"""
KINDS = ("duplex", "duplex", "duplex", "switch", "lamp")


def random_room(seed: int) -> Survey:
    """A rectangle or an L of up to 30 ft, 1 to 14 boxes on its walls and ceiling, up to four circuits."""
    chance = random.Random(seed)
    wide, deep = chance.randint(5, 30), chance.randint(5, 24)
    if chance.random() < 0.5:
        corners = [(0, 0), (wide, 0), (wide, deep), (0, deep)]
        walls = ["north", "east", "south", "west"]
    else:
        x, y = chance.randint(2, wide - 2), chance.randint(2, deep - 2)
        corners = [(0, 0), (x, 0), (x, y), (wide, y), (wide, deep), (0, deep)]
        walls = ["north", "jog", "step", "east", "south", "west"]
    sides = {
        name: abs(x2 - x1) + abs(y2 - y1)
        for name, (x1, y1), (x2, y2) in zip(walls, corners, [*corners[1:], corners[0]], strict=True)
    }
    outline = ", ".join(f"[{x} ft, {y} ft]" for x, y in corners)
    room = f"room: den\nname: Den\nkind: den\nlevel: ground\nceiling: 8 ft\ncomplete: true\noutline: [{outline}]\n"
    hung = ("", ", hinged: left", ", hinged: right", ", hinged: both", ", hinged: none")[seed % 5]
    door = f"what: door, wall: south, along: 0 in, width: 30 in{hung}, swings_into: den"
    room += f"walls: [{', '.join(walls)}]\nthings:\n  - {{{door}}}\n"
    room += f"  - {{what: window, wall: north, along: 4 in, width: {min(sides['north'], 4)} ft}}\n"
    room += f"  - {{what: counter, wall: west, along: 0 in, width: {min(sides['west'], 6)} ft}}\n"
    count = chance.randint(1, 14)
    boxes = "room: den\nboxes:\n"
    circuits: dict[str, list[str]] = {}
    for number in range(1, count + 1):
        kind = chance.choice(KINDS)
        if kind == "lamp":
            at = f"ceiling: [{chance.randint(1, corners[1][0] * 12 - 1)} in, {chance.randint(1, 12 * deep - 1)} in]"
        else:
            wall = chance.choice(walls)
            at = f"wall: {wall}, along: {chance.randint(0, sides[wall] * 12)} in, up: {chance.choice((6, 16, 16, 44, 48, 80))} in"
        boxes += f"  B{number}: {{at: {{{at}}}, devices: {{d1: {kind}}}}}\n"
        circuits.setdefault(f"c{chance.randint(1, 4)}", []).append(f"B{number}")
    files = {"boxes": boxes, "panels": PANEL}
    for number, (circuit, held) in enumerate(sorted(circuits.items()), 1):
        ends = ["main", *held]
        runs = "".join(
            f"  - {{id: {circuit}{index}, cable: 12/2 NM-B, from: {a}, to: {b}}}\n"
            for index, (a, b) in enumerate(zip(ends, held, strict=False))
        )
        files[f"circuits/{circuit}"] = (
            f"circuit: {circuit}\nname: Circuit {circuit}\npurpose: general\nruns:\n{runs}"
        )
        files["panels"] += f"  {number * 2}: {{rating: 20 A, feeds: {circuit}}}\n"
    return surveyed(rooms=room, **files)


def plan_of(survey: Survey) -> Plan:
    plan = room_plan(survey, survey.house.rooms["den"])
    assert plan is not None
    return plan


def walls_of(survey: Survey) -> tuple[Elevation, ...]:
    return elevations(survey, survey.house.rooms["den"], 1)


def level_plans(survey: Survey) -> Iterator[Plan]:
    for level in survey.house.record.levels:
        if any(room.record.level == level.id for room in survey.house.rooms.values()):
            yield from level_sheet(survey, level.id).plans
