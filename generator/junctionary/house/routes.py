"""How runs lie on a wall: as recorded, or assumed straight up or down from the box, then along.

Nothing here says where a cable is not. A route that is assumed says so, and
one whose direction nothing tells stands both ways.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from junctionary.house.geometry import Shape, Spot, Wall, inches, spot
from junctionary.house.model import End, House, Room, Run
from junctionary.records.rooms import Thing
from junctionary.records.runs import RoutePoint

OnWall: TypeAlias = tuple[Fraction, Fraction]
"""Inches along a wall from its left end, and inches up."""

Route: TypeAlias = tuple[tuple[str | None, Spot | None], ...]
"""The points of a recorded route: the room each is in, and where it is."""

Way = Literal["along", "up", "down", "untold", "on"]

DOOR_IN = Fraction(80)
"""How high a door or an opening is taken to be where nothing is recorded. Practice."""

_OVER_IN = Fraction(6)


@dataclass(frozen=True, slots=True)
class Piece:
    """A part of a run on one wall.

    ``way`` is ``along`` between two boxes of the wall, ``up``, ``down`` or
    ``untold`` where it leaves, ``on`` for a recorded piece that goes on
    elsewhere. ``assumed`` where the record tells no route here.
    """

    run: str
    points: tuple[OnWall, ...]
    assumed: bool
    way: Way


def routes_of(house: House, known: Mapping[str, Shape]) -> dict[str, Route]:
    """The route of every run that has one recorded."""
    return {run.id: tuple(_places(house, known, run)) for run in house.runs.values() if run.record.route}


def on_wall(
    house: House,
    known: Mapping[str, Shape],
    routes: Mapping[str, Route],
    room: Room,
    wall: Wall,
    top_in: Fraction,
) -> list[Piece]:
    """Every piece of every run that is recorded on this wall, or ends in a box on it."""
    found: list[Piece] = []
    here = {
        box: place
        for box in room.boxes
        if (at := house.boxes[box].record.at) is not None
        and at.wall == wall.name
        and (place := spot(at, known.get(room.id))) is not None
        and place.wall == wall
        and place.up_in is not None
    }
    for run in house.runs.values():
        if run.id in routes:
            found += _recorded(known, room, wall, run, routes[run.id], top_in)
        # An end the route does not name is on no way that is known.
        named = {each.box for each in run.record.route or ()}
        unnamed = {
            id_: here[id_] for each in run.ends if (id_ := each.id) and id_ in here and id_ not in named
        }
        if unnamed:
            found += _assumed(house, room, run, unnamed, top_in)
    return found


def _recorded(
    known: Mapping[str, Shape],
    room: Room,
    wall: Wall,
    run: Run,
    route: Route,
    top: Fraction,
) -> Iterator[Piece]:
    """The stretches of a route on this wall; where it comes from or goes to elsewhere the way is assumed."""
    here = [_told_on(wall, place) if in_room == room.id else None for in_room, place in route]
    stretch: list[OnWall] = []
    for index, place in enumerate(here):
        if place is not None:
            stretch.append(_on(place))
            for beside in (index - 1, index + 1):
                if 0 <= beside < len(here) and here[beside] is None:
                    for points in _towards(place, route[beside][1], known[room.id], room.record.things, top):
                        yield Piece(run.id, points, True, "on")
        if (place is None or index == len(here) - 1) and len(stretch) > 1:
            yield Piece(run.id, tuple(stretch), False, "on")
        if place is None:
            stretch = []


def _told_on(wall: Wall, place: Spot | None) -> Spot | None:
    """The place, where it is on this wall and told whole."""
    if place is None or place.along_in is None or place.up_in is None or place.wall != wall:
        return None
    return place


def _towards(
    place: Spot, other: Spot | None, within: Shape, things: list[Thing], top: Fraction
) -> Iterator[tuple[OnWall, ...]]:
    """From a point of a wall towards one elsewhere: to the corner, the ceiling or the floor, or both ways."""
    along, up = _on(place)
    wall = place.wall
    if other is not None and other.wall is not None and wall is not None and other.wall in within.walls:
        if other.wall.left == wall.right:
            yield ((along, up), (wall.length_in, up))
            return
        if other.wall.right == wall.left:
            yield ((along, up), (Fraction(0), up))
            return
    surface = other.surface if other is not None else "wall"
    if surface != "floor":
        yield _leaving(place, top, things)
    if surface != "ceiling":
        yield _leaving(place, Fraction(0), things)


def _places(house: House, known: Mapping[str, Shape], run: Run) -> Iterator[tuple[str | None, Spot | None]]:
    """Each point of a route with its room: by its own word, the last one's, or the only one of its ends."""
    ends = {house.boxes[each.id].room for each in run.ends if each.id and each.id in house.boxes}
    only = next(iter(ends)) if len(ends) == 1 else None
    last = next((room for each in run.record.route or () if (room := _room_of(house, each))), only)
    for each in run.record.route or ():
        last = _room_of(house, each) or last
        at = house.boxes[each.box].record.at if each.box and each.box in house.boxes else each
        yield last, spot(at, known.get(last or ""))


def _room_of(house: House, point: RoutePoint) -> str | None:
    return house.boxes[point.box].room if point.box and point.box in house.boxes else point.room


def _assumed(house: House, room: Room, run: Run, here: dict[str, Spot], top: Fraction) -> Iterator[Piece]:
    ends = [each.id for each in run.ends if each.kind == "box" and each.id in here]
    if len(ends) == 2 and ends[0] != ends[1]:
        a, b = (_on(here[each]) for each in ends)
        yield Piece(run.id, _between(a, b, room.record.things, here[ends[0]].wall, top), True, "along")
        return
    for id_ in ends:
        far = next((each for each in run.ends if each.id != id_), run.to)
        way = _way(house, room, run, far)
        for goes, edge in (("up", top), ("down", Fraction(0))):
            if way in (goes, "untold"):
                points = _leaving(here[id_], edge, room.record.things)
                yield Piece(run.id, points, True, way)


def _leaving(place: Spot, edge: Fraction, things: list[Thing]) -> tuple[OnWall, ...]:
    """Straight to the ceiling or floor, or along to the nearer side of what stands in the way, past it."""
    along, up = _on(place)
    low, high = sorted((up, edge))
    for left, right, foot, head in _holes(place.wall, things):
        if left < along < right and foot < high and head > low and not foot < up < head:
            beside = [each for each in (left - _OVER_IN, right + _OVER_IN) if _on_it(place, each)]
            if beside:
                past = min(beside, key=lambda each: (abs(each - along), each))
                return ((along, up), (past, up), (past, edge))
    return ((along, up), (along, edge))


def _on_it(place: Spot, along: Fraction) -> bool:
    return place.wall is not None and 0 <= along <= place.wall.length_in


def _holes(wall: Wall | None, things: list[Thing]) -> Iterator[tuple[Fraction, Fraction, Fraction, Fraction]]:
    """What no cable runs through, doors, windows and fireplaces: left, right, foot and head of each."""
    for thing in things:
        if wall is None or thing.wall != wall.name or thing.along is None or thing.width is None:
            continue
        if thing.what in ("door", "opening", "window", "fireplace"):
            left = inches(thing.along)
            foot = inches(thing.up) if thing.up is not None else Fraction(0)
            tall = inches(thing.height) if thing.height is not None else max(DOOR_IN - foot, Fraction(12))
            yield left, left + inches(thing.width), foot, foot + tall


def _on(place: Spot) -> OnWall:
    assert place.along_in is not None
    assert place.up_in is not None
    return place.along_in, place.up_in


def _between(
    a: OnWall, b: OnWall, things: list[Thing], wall: Wall | None, top: Fraction
) -> tuple[OnWall, ...]:
    """From one box to another of the same wall, over the top of any door or window in the way."""
    low, high = sorted((a[0], b[0]))
    over = b[1]
    for left, right, foot, head in _holes(wall, things):
        if left < high and right > low and foot < over < head:
            over = min(head + _OVER_IN, top)
    points = [a, (a[0], over), (b[0], over), b]
    return tuple(point for index, point in enumerate(points) if not index or point != points[index - 1])


def _way(house: House, room: Room, run: Run, far: End) -> Way:
    """Up or down from a box, by the level of where the run goes through and ends; else it is not told."""
    floors = {each.id: each.floor for each in house.record.levels}

    def floor(room_id: str | None) -> Fraction | None:
        level = house.rooms[room_id].record.level if room_id and room_id in house.rooms else None
        height = floors.get(level or "")
        return inches(height) if height is not None else None

    own = floor(room.id)
    far_room = None
    if far.id and far.id in house.boxes:
        far_room = house.boxes[far.id].room
    elif far.id and far.id in house.panels:
        at = house.panels[far.id].record.at
        far_room = at.room if at else None
    for other in (*(run.record.through or ()), far_room):
        height = floor(other)
        if own is not None and height is not None and height != own:
            return "up" if height > own else "down"
    return "untold"
