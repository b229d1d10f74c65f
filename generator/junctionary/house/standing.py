"""Where things are said to stand: walls no room has, outlines that enclose nothing, places outside a room."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from junctionary.house.geometry import Point, Shape, contains, inches, quarter, shape
from junctionary.house.ids import Ids, unknown_id
from junctionary.marks import Place
from junctionary.problems import Problem
from junctionary.records import Records
from junctionary.records.places import At
from junctionary.records.rooms import RoomRecord
from junctionary.records.runs import RoutePoint
from junctionary.units import Quantity, show_as

SLACK_IN = 6
"""So far beyond a wall's end or a ceiling a thing may stand unasked: walls have thickness. Practice."""

_QUARTERS = ("north", "east", "south", "west")


def out_of_place(records: Records, ids: Ids) -> list[Problem]:
    """Every outline, wall and place that cannot be; what is only farther out than its room is a warning."""
    system = records.house.shows
    known = {id_: shape(room) for id_, room in ids.rooms.items()}
    return [
        *(problem for room in ids.rooms.values() for problem in _outline(room, known[room.room])),
        *(problem for room in ids.rooms.values() for problem in _things(room, known[room.room], system)),
        *(problem for each in _places(records, ids) for problem in _place(*each, ids, known, system)),
        *_photos(records, ids, known),
    ]


def _outline(room: RoomRecord, made: Shape | None) -> Iterator[Problem]:
    if room.outline is None:
        return
    place = room.value_place("outline")
    if made is None or _crosses(made.outline):
        found = f"the outline of {room.room} {'encloses nothing' if made is None else 'crosses itself'}"
        yield Problem(place, found, "its corners in their order", "write them clockwise, one after the other")
        return
    names, sides = room.walls, len(made.walls)
    if names is None:
        return
    if len(names) != sides:
        found = f"the outline of {room.room} has {sides} sides, and walls has {len(names)} names"
        yield Problem(room.value_place("walls"), found, "a name for each side", "name them in their order")
    for number, name in enumerate(names):
        if name in names[:number]:
            found = f"{name} is the name of two walls of {room.room}"
            expected = "a name of its own for each wall"
            yield Problem(room.value_place("walls", number), found, expected, "give one of them another name")
    for number, wall in enumerate(made.walls if len(names) == sides else ()):
        faces = quarter(wall.left, wall.right)
        if wall.name in _QUARTERS and faces is not None and faces != wall.name:
            found = f"the side of {room.room} called {wall.name} faces {faces}"
            expected = "the names of the walls in the order of the outline's sides"
            yield Problem(
                room.value_place("walls", number), found, expected, "reorder the names", stops=False
            )
            break


def _crosses(outline: tuple[Point, ...]) -> bool:
    """Whether two sides that do not meet in a corner cut each other."""
    sides = list(zip(outline, (*outline[1:], outline[0]), strict=True))
    return any(
        _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0
        for (a, b), (c, d) in combinations(sides, 2)
    )


def _turn(a: Point, b: Point, c: Point) -> int:
    area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    return (area > 0) - (area < 0)


def _things(room: RoomRecord, made: Shape | None, system: str) -> Iterator[Problem]:
    for thing in room.things:
        place = thing.value_place("wall")
        if told := _no_wall(thing.wall, place, room, made):
            yield told
            continue
        wall = made.wall(thing.wall) if made else None
        if wall is None or thing.along is None:
            continue
        end = inches(thing.along) + (inches(thing.width) if thing.width else 0)
        if end > wall.length_in + SLACK_IN:
            where = thing.value_place("width" if thing.width else "along")
            found = f"the {thing.what} ends {_as(end, system)} along {thing.wall} of {room.room}"
            yield _beyond(where, found, f"a wall of {_as(wall.length_in, system)}")


def _places(records: Records, ids: Ids) -> Iterator[tuple[At | RoutePoint, str, str]]:
    """Every place with the room it is in, and what stands there."""
    for id_, box in ids.boxes.items():
        if box.at is not None:
            yield box.at, box.at.room or ids.file_of[id_].room, f"box {id_}"
    for id_, panel in ids.panels.items():
        if panel.at is not None and panel.at.room is not None:
            yield panel.at, panel.at.room, f"panel {id_}"
    for run in ids.runs.values():
        yield from (
            (each, each.room, f"the route of {run.id}") for each in run.route or () if each.room is not None
        )


def _place(
    at: At | RoutePoint, in_: str, what: str, ids: Ids, known: dict[str, Shape | None], system: str
) -> Iterator[Problem]:
    room = ids.rooms.get(in_)
    if room is None:
        return
    made = known[in_]
    if at.wall is not None:
        if told := _no_wall(at.wall, at.value_place("wall"), room, made):
            yield told
            return
        wall = made.wall(at.wall) if made else None
        if wall is not None and at.along is not None and inches(at.along) > wall.length_in + SLACK_IN:
            found = f"{what} is {_as(inches(at.along), system)} along {at.wall} of {in_}"
            yield _beyond(at.value_place("along"), found, f"a wall of {_as(wall.length_in, system)}")
    if at.up is not None and room.ceiling is not None and inches(at.up) > inches(room.ceiling) + SLACK_IN:
        found = f"{what} is {at.up} up, and {in_} is {room.ceiling} high"
        yield _beyond(at.value_place("up"), found, f"at most {room.ceiling}")
    for key in ("ceiling", "floor"):
        point = getattr(at, key)
        if point is not None and made is not None and not contains(made.outline, _point(point)):
            found = f"{what} is at {point[0]}, {point[1]}, which is outside {in_}"
            yield _beyond(at.value_place(key), found, "a point within its outline, in the house's frame")


def _photos(records: Records, ids: Ids, known: dict[str, Shape | None]) -> Iterator[Problem]:
    for photo in records.photos:
        if photo.wall is not None and photo.room is not None and photo.room in ids.rooms:
            room = ids.rooms[photo.room]
            if told := _no_wall(photo.wall, photo.value_place("wall"), room, known[photo.room]):
                yield told


def _no_wall(name: str, place: Place, room: RoomRecord, made: Shape | None) -> Problem | None:
    """A problem where the room names its walls, or its outline does, and none goes by this name."""
    names = (
        room.walls
        if room.walls is not None
        else [each.name for each in made.walls if each.name]
        if made
        else []
    )
    if not names or name in names or (room.walls is None and name in _QUARTERS):
        return None
    return unknown_id("wall", name, place, names, f" in {room.room}")


def _beyond(place: Place, found: str, expected: str) -> Problem:
    return Problem(place, found, expected, "measure again, or correct the outline", stops=False)


def _point(point: tuple[Quantity, Quantity]) -> Point:
    return inches(point[0]), inches(point[1])


def _as(length_in: Fraction, system: str) -> str:
    return show_as(Quantity(length_in, "in", "length"), system)
