"""What breaks the walls of a plan: doors with their leaves, openings, windows."""

import math
from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from junctionary.house.geometry import THICKEST_WALL_IN, Shape, Wall, inches
from junctionary.house.model import Room
from junctionary.records.rooms import Thing
from junctionary.records.values import NONE
from junctionary.sheets.plan import Inches, PlanGap, PlanLeaf


def gaps(known: Mapping[str, Shape], rooms: Iterable[Room]) -> tuple[PlanGap, ...]:
    """What breaks the walls of these rooms; a thing whose place or width is not recorded breaks nothing.

    A door told by the rooms on both its sides is drawn once, as the room tells it that knows its hinges.
    """
    told = sorted(_told(known, rooms), key=lambda each: not (each.leaves or each.slides))
    kept: list[PlanGap] = []
    for gap in told:
        if gap.what != "door" or not any(_is_same(gap, each) for each in kept):
            kept.append(gap)
    return tuple(kept)


def _is_same(one: PlanGap, other: PlanGap) -> bool:
    return other.what == "door" and math.dist(one.middle, other.middle) <= float(THICKEST_WALL_IN)


def _told(known: Mapping[str, Shape], rooms: Iterable[Room]) -> Iterator[PlanGap]:
    for room in rooms:
        for thing in room.record.things:
            wall = known[room.id].wall(thing.wall) if room.id in known else None
            if thing.what not in ("door", "opening", "window") or wall is None:
                continue
            if thing.along is None or thing.width is None:
                continue
            near = inches(thing.along)
            ends = (_at(wall, near), _at(wall, near + inches(thing.width)))
            leaves = tuple(_leaves(room, thing, wall, ends)) if thing.what == "door" else ()
            yield PlanGap(thing.what, *ends, leaves, thing.hinged is NONE)  # type: ignore[arg-type]


def _leaves(room: Room, thing: Thing, wall: Wall, ends: tuple[Inches, Inches]) -> Iterator[PlanLeaf]:
    """One leaf, or two of a pair; none where the hinges or the swing are not told."""
    if not isinstance(thing.hinged, str) or not isinstance(thing.swings_into, str):
        return
    side = -1 if thing.swings_into == room.id else 1
    left, right = ends
    middle = ((left[0] + right[0]) / 2, (left[1] + right[1]) / 2)
    shut = {"left": ((left, right),), "right": ((right, left),), "both": ((left, middle), (right, middle))}
    for hinge, edge in shut[thing.hinged]:
        long = math.dist(hinge, edge) * side
        yield PlanLeaf(hinge, (hinge[0] + wall.facing[0] * long, hinge[1] + wall.facing[1] * long), edge)


def _at(wall: Wall, along: Fraction) -> Inches:
    x, y = wall.at(along)
    return (float(x), float(y))
