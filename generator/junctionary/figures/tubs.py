"""How near a receptacle is to a bathtub or a shower, on the plan."""

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from junctionary.house.geometry import Point, Shape, contains, distance_in, inches, shape, span_of, spot
from junctionary.house.model import Box, Room
from junctionary.records.rooms import Thing

TUBS = ("tub", "shower")
ZONE_IN = 36
ZONE_HIGHEST_IN = 96
DEEPEST_IN = 48
"""No bathtub or shower is taken to reach farther from its wall. Practice."""


@dataclass(frozen=True, slots=True)
class NearTub:
    """A box by one tub or shower: ``within`` its space, or within 3 ft beside it; None where not told."""

    what: str
    within: bool | None
    beside: bool | None
    lacks: tuple[str, ...]


def near_tubs(room: Room, box: Box) -> tuple[NearTub, ...]:
    """A box held against each tub and shower of its room.

    ``beside`` leaves out what is more than 8 ft above the floor, and a room so small that no corner of it
    is farther than 3 ft away (406.9(C), from memory).
    """
    tubs = [each for each in room.record.things if each.what in TUBS]
    made = shape(room.record) if tubs else None
    return tuple(_near(room, made, box, each) for each in tubs)


def _near(room: Room, made: Shape | None, box: Box, thing: Thing) -> NearTub:
    place, span = spot(box.record.at, made), span_of(thing, made)
    if made is None or span is None:
        needs = f"where the {thing.what} on the {thing.wall} wall of {room.id} begins and ends"
        return NearTub(thing.what, None, None, (needs,))
    if place is None or (place.surface == "wall" and place.up_in is None):
        return NearTub(thing.what, None, None, (f"where box {box.id} is",))
    high = place.surface == "ceiling" or (place.up_in is not None and place.up_in > ZONE_HIGHEST_IN)
    depth = inches(thing.depth) if thing.depth is not None else None
    foot = _foot(made, thing, span, depth or Fraction(0))
    if depth is not None:
        off = _off(foot, place.point)
        small = all(_off(foot, each) < ZONE_IN for each in made.outline)
        return NearTub(thing.what, off == 0, off < ZONE_IN and not high and not small, ())
    # Its depth is not recorded: on its own wall it is known, and far enough from that wall as well.
    off = distance_in(place.point, *span)
    lacks = (f"how far the {thing.what} of {room.id} stands out from its wall",)
    if off == 0:
        return NearTub(thing.what, True, not high, ())
    return NearTub(
        thing.what,
        False if off > DEEPEST_IN else None,
        False if high or off >= ZONE_IN + DEEPEST_IN else None,
        lacks,
    )


def _foot(made: Shape, thing: Thing, span: tuple[Point, Point], depth_in: Fraction) -> tuple[Point, ...]:
    """The outline of what it stands on: its foot along the wall, and as far into the room as it is deep."""
    wall = made.wall(thing.wall)
    assert wall is not None
    inward = tuple(-Fraction(each).limit_denominator(10_000) * depth_in for each in wall.facing)
    (x1, y1), (x2, y2) = span
    return (x1, y1), (x2, y2), (x2 + inward[0], y2 + inward[1]), (x1 + inward[0], y1 + inward[1])


def _off(foot: tuple[Point, ...], point: Point) -> float:
    if contains(foot, point):
        return 0
    return min(distance_in(point, *ends) for ends in pairwise((*foot, foot[0])))
