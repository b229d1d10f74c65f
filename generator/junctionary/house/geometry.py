"""Where things stand: outlines, walls and places in the house's one frame.

Lengths are exact inches. In the frame x runs east, y runs south, from the
north-west corner of the house; heights are from the room's finished floor,
outside from grade. A wall is faced from within its room's outline, an
outside wall from the garden's; ``along`` starts at its left end so faced.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Literal, TypeAlias

from junctionary.house.model import House, Room
from junctionary.records.places import At
from junctionary.records.rooms import RoomRecord, Thing
from junctionary.records.runs import RoutePoint
from junctionary.units import Quantity

Point: TypeAlias = tuple[Fraction, Fraction]
Surface = Literal["wall", "ceiling", "floor"]

THICKEST_WALL_IN = Fraction(16)
"""Two rooms' walls that face each other across no more than this are two faces of one wall. Practice."""

_COMPASS = {(0, -1): "north", (1, 0): "east", (0, 1): "south", (-1, 0): "west"}


@dataclass(frozen=True, slots=True)
class Wall:
    """One side of an outline: ``left`` and ``right`` as it is faced; ``facing`` points out of the room.

    ``length_in`` is from end to end, ``way`` what an inch along it adds to x and y; both are
    exact where the wall runs with the frame.
    """

    name: str | None
    left: Point
    right: Point
    facing: tuple[float, float]
    length_in: Fraction
    way: Point

    def at(self, along_in: Fraction) -> Point:
        """The point of the wall's foot so far from its left end."""
        (x, y), (dx, dy) = self.left, self.way
        return (x + dx * along_in, y + dy * along_in)

    def along_of(self, point: Point) -> Fraction:
        """How far from the left end a point stands, square to the wall; may lie beyond either end."""
        (x, y), (dx, dy) = self.left, self.way
        return (point[0] - x) * dx + (point[1] - y) * dy

    def distance_in(self, point: Point) -> float:
        """How far a point stands from the wall's plane: positive outside the room."""
        return (
            float(point[0] - self.left[0]) * self.facing[0] + float(point[1] - self.left[1]) * self.facing[1]
        )


@dataclass(frozen=True, slots=True)
class Shape:
    """A room's outline in the frame, its walls in the order recorded, and its height if recorded."""

    outline: tuple[Point, ...]
    walls: tuple[Wall, ...]
    height_in: Fraction | None

    @property
    def longest_in(self) -> Fraction:
        """The longer side of the rectangle around the outline."""
        xs, ys = [x for x, _ in self.outline], [y for _, y in self.outline]
        return max(max(xs) - min(xs), max(ys) - min(ys))

    @property
    def run_in(self) -> float:
        """The length of a passage of its area and walls, in inches; exact for a rectangle."""
        half, area = float(self.around_in) / 2, float(area_in2(tuple(each.left for each in self.walls)))
        return (half + math.sqrt(max(half * half - 4 * area, 0))) / 2

    @property
    def around_in(self) -> Fraction:
        """The length of all walls together."""
        return sum((each.length_in for each in self.walls), Fraction(0))

    def wall(self, name: str | None) -> Wall | None:
        """The wall of that name; None where there is none, or more than one."""
        found = [each for each in self.walls if each.name == name and name is not None]
        return found[0] if len(found) == 1 else None


@dataclass(frozen=True, slots=True)
class Spot:
    """A place: its point on the plan; on a wall, which one, how far along, how high (None: not told)."""

    surface: Surface
    point: Point
    wall: Wall | None = None
    along_in: Fraction | None = None
    up_in: Fraction | None = None


def inches(length: Quantity) -> Fraction:
    """A length in inches, exact."""
    return length.to("in")


def shape(record: RoomRecord) -> Shape | None:
    """The shape of a room; None where no outline is recorded, or what is recorded encloses nothing.

    Sides get their names from ``walls``. Where no names are recorded, a side
    goes by the quarter it faces, if it is the only one that faces there.
    """
    if record.outline is None:
        return None
    outline = tuple((inches(x), inches(y)) for x, y in record.outline)
    if len(outline) > 1 and outline[0] == outline[-1]:
        outline = outline[:-1]
    turn = _doubled_area(outline)
    sides = list(pairwise((*outline, *outline[:1])))
    if len(outline) < 3 or not turn or any(start == end for start, end in sides):
        return None
    # Recorded clockwise, a side starts at its left end as it is faced; the other way round it ends there.
    faced = [(start, end) if turn > 0 else (end, start) for start, end in sides]
    names = record.walls if record.walls is not None and len(record.walls) == len(sides) else None
    quarters = [quarter(*ends) for ends in faced]
    if names is None and record.walls is None:
        names = [each if quarters.count(each) == 1 else None for each in quarters]  # type: ignore[misc]
    walls = tuple(_wall(names[index] if names else None, *ends) for index, ends in enumerate(faced))
    return Shape(outline, walls, inches(record.ceiling) if record.ceiling is not None else None)


def _wall(name: str | None, left: Point, right: Point) -> Wall:
    dx, dy = right[0] - left[0], right[1] - left[1]
    length = abs(dx + dy)
    if dx and dy:
        length = Fraction(math.hypot(dx, dy)).limit_denominator(16) or Fraction(1, 16)
    return Wall(name, left, right, _facing(left, right), length, (dx / length, dy / length))


def shapes(house: House) -> dict[str, Shape]:
    """The shape of every room that has one, by the room's id."""
    return {room.id: made for room in house.rooms.values() if (made := shape(room.record)) is not None}


def spot(at: At | RoutePoint | None, within: Shape | None) -> Spot | None:
    """Where a place of the record is; None where it is not recorded, or cannot be told from the outline."""
    if at is None:
        return None
    if at.ceiling is not None:
        return Spot("ceiling", (inches(at.ceiling[0]), inches(at.ceiling[1])))
    if at.floor is not None:
        return Spot("floor", (inches(at.floor[0]), inches(at.floor[1])))
    wall = within.wall(at.wall) if within is not None else None
    if wall is None or at.along is None:
        return None
    along = inches(at.along)
    return Spot("wall", wall.at(along), wall, along, inches(at.up) if at.up is not None else None)


def other_face(
    house: House, known: Mapping[str, Shape], room: Room, wall: Wall
) -> Iterator[tuple[Room, Wall]]:
    """The walls of other rooms of the level that are the other face of this wall, or of a part of it."""
    for other in house.rooms.values():
        if other.id == room.id or other.record.level != room.record.level or other.id not in known:
            continue
        for each in known[other.id].walls:
            if is_other_face(wall, each):
                yield other, each


def is_other_face(one: Wall, other: Wall) -> bool:
    """Whether two walls look away from each other, close enough to be one wall, and overlap."""
    if one.facing[0] * other.facing[0] + one.facing[1] * other.facing[1] > -0.999:
        return False
    if not -1 <= one.distance_in(other.left) <= THICKEST_WALL_IN:
        return False
    ends = sorted((one.along_of(other.left), one.along_of(other.right)))
    return ends[1] > 0 and ends[0] < one.length_in


def _doubled_area(outline: tuple[Point, ...]) -> Fraction:
    """Twice the area, positive for an outline that runs clockwise on the plan (y is down)."""
    closed = (*outline, *outline[:1])
    return sum((x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise(closed)), Fraction(0))


def _facing(left: Point, right: Point) -> tuple[float, float]:
    dx, dy = float(right[0] - left[0]), float(right[1] - left[1])
    size = math.hypot(dx, dy)
    return (dy / size + 0.0, -dx / size + 0.0)


def quarter(left: Point, right: Point) -> str | None:
    """The quarter a side faces, ``north``; None where it faces between two."""
    x, y = _facing(left, right)
    return _COMPASS.get((round(x), round(y))) if x in (0, 1, -1) and y in (0, 1, -1) else None


def span_of(thing: Thing, within: Shape | None) -> tuple[Point, Point] | None:
    """The foot of what stands along a wall, from its left edge to its right; None where it is not told."""
    wall = within.wall(thing.wall) if within is not None else None
    if wall is None or thing.along is None or thing.width is None:
        return None
    start = inches(thing.along)
    return wall.at(start), wall.at(start + inches(thing.width))


def distance_in(point: Point, start: Point, end: Point) -> float:
    """From a point to the nearest place between two others, on the plan."""
    (x, y), (x1, y1), (x2, y2) = point, start, end
    dx, dy = x2 - x1, y2 - y1
    along = max(Fraction(0), min(Fraction(1), ((x - x1) * dx + (y - y1) * dy) / (dx * dx + dy * dy or 1)))
    return math.hypot(x - x1 - along * dx, y - y1 - along * dy)


def area_in2(outline: tuple[Point, ...]) -> Fraction:
    """The area of an outline in square inches, whichever way round it runs."""
    return abs(_doubled_area(outline)) / 2


def contains(outline: tuple[Point, ...], point: Point) -> bool:
    """Whether a point lies within an outline or on its edge, on the plan."""
    closed = tuple(pairwise((*outline, *outline[:1])))
    if any(distance_in(point, *ends) == 0 for ends in closed):
        return True
    x, y = point
    crossed = [
        (x1, y1, x2, y2)
        for (x1, y1), (x2, y2) in closed
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1)
    ]
    return len(crossed) % 2 == 1
