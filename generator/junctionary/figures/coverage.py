"""How far the walls and counters of a room are from its receptacles, measured on its outline."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.gaps import boxes_untold
from junctionary.figures.places import gives_light, is_125_volt
from junctionary.formulas.reach import Interval, between, out_of_reach
from junctionary.house.geometry import Shape, Wall, area_in2, inches, shape, spot
from junctionary.house.lamps import LampTable, outlets_of
from junctionary.house.model import House, Room
from junctionary.house.terminals import RECEPTACLES
from junctionary.records.rooms import Thing
from junctionary.units import Quantity

WALL_REACH = Quantity(Fraction(6), "ft", "length")
WALL_REACH_IN = WALL_REACH.to("in")
WALL_LEAST_IN = Fraction(24)
WALL_HIGHEST_IN = Fraction(66)
FROM_FLOOR_IN = Fraction(18)
FOYER_ABOVE_IN2 = 60 * 144
FOYER_LEAST_IN = Fraction(36)
COUNTER_REACH = Quantity(Fraction(24), "in", "length")
COUNTER_REACH_IN = COUNTER_REACH.to("in")
COUNTER_LEAST_IN = Fraction(12)
COUNTER_TOP_IN = Fraction(36)
ABOVE_COUNTER_IN = Fraction(20)

WALL_ROOMS = (
    "kitchen", "family", "dining", "living", "library", "den", "sunroom", "bedroom", "recreation", "office",
)  # fmt: skip
COUNTER_ROOMS = ("kitchen", "pantry", "dining")

DOORS = ("door", "opening")
WIDEST_DOOR_IN = Fraction(72)
BREAKS_WALL = ("door", "opening", "fireplace", "cabinets", "counter", "tub", "shower", "range")
ABOVE_FLOOR = ("cabinets", "window")
"""Things that break a wall only where they come down to the floor."""
BREAKS_FOYER = (*BREAKS_WALL, "window")
BREAKS_COUNTER = ("sink", "range", "cooktop", "refrigerator")


@dataclass(frozen=True, slots=True)
class Stretch:
    """A part of one wall, in inches from its left end as it is faced."""

    wall: str
    from_in: Fraction
    to_in: Fraction


@dataclass(frozen=True, slots=True)
class Reached:
    """Of the wall spaces or counters of a room: how many there are, and what is too far from a receptacle.

    ``lacks`` are the facts without which more or less may be too far.
    """

    room: str
    spaces: int
    far: tuple[Stretch, ...]
    lacks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Line:
    """The foot of a room's walls as one closed line: where each wall begins on it, and its whole length."""

    walls: tuple[Wall, ...]
    starts: tuple[Fraction, ...]
    length_in: Fraction

    def at(self, wall: Wall, along_in: Fraction) -> Fraction:
        return self.starts[self.walls.index(wall)] + along_in

    def stretches(self, interval: Interval) -> Iterator[Stretch]:
        start, end = interval
        for turn in (Fraction(0), self.length_in):
            for wall, begins in zip(self.walls, self.starts, strict=True):
                first = max(start, begins + turn)
                last = min(end, begins + turn + wall.length_in)
                if last > first:
                    yield Stretch(wall.name or "unnamed", first - begins - turn, last - begins - turn)


def wall_spaces(house: House, lamps: Iterable[LampTable]) -> dict[str, Reached]:
    """By room, its wall spaces of 2 ft and wider held against its receptacles (210.52(A)).

    A receptacle that a wall switch governs whole, in a room that has no other light, is its light and
    does not count.
    """
    switched = frozenset(each.outlet for each in lamps if each.switches)
    return {
        id_: _walls(house, each, _instead_of_lights(house, each, switched))
        for id_, each in house.rooms.items()
        if each.record.kind in WALL_ROOMS
    }


def _instead_of_lights(house: House, room: Room, switched: frozenset[str]) -> frozenset[str]:
    """The receptacles of a room that a switch governs whole, where it governs no light there."""
    devices = [each for id_ in room.boxes for each in house.boxes[id_].devices]
    hots = {each.id: {outlet for outlet, _ in outlets_of(each)} for each in devices}
    governed = [each for each in devices if hots[each.id] and hots[each.id] <= switched]
    if any(gives_light(each.kind) for each in governed):
        return frozenset()
    return frozenset(each.id for each in governed if each.kind.is_ in RECEPTACLES)


def counters(house: House) -> dict[str, Reached]:
    """By room, its counters along walls of 12 in and wider held against its receptacles (210.52(C)).

    A counter is taken to be 36 in high, and its receptacles to stand no more than 20 in above it.
    """
    kinds = COUNTER_ROOMS
    return {id_: _counters(house, each) for id_, each in house.rooms.items() if each.record.kind in kinds}


def foyer_walls(house: House, room: Room) -> Reached | None:
    """The wall spaces of 3 ft and wider of a foyer that have no receptacle (210.52(I)).

    None where it is of 60 ft² or less. A window breaks a wall where it is told to come down to the floor.
    """
    made = shape(room.record)
    if made is not None and area_in2(tuple(each.left for each in made.walls)) <= FOYER_ABOVE_IN2:
        return None
    return _reached(
        house,
        room,
        lambda line, lacks: between(_spans(room, line, BREAKS_FOYER, lacks), line.length_in),
        FOYER_LEAST_IN,
        made.around_in if made is not None else Fraction(0),
        lambda up: up is None or up <= WALL_HIGHEST_IN,
    )


def _walls(house: House, room: Room, left_out: frozenset[str]) -> Reached:
    return _reached(
        house,
        room,
        lambda line, lacks: between(_spans(room, line, BREAKS_WALL, lacks), line.length_in),
        WALL_LEAST_IN,
        WALL_REACH_IN,
        lambda up: up is None or up <= WALL_HIGHEST_IN,
        left_out,
    )


def _counters(house: House, room: Room) -> Reached:
    def spaces(line: _Line, lacks: list[str]) -> list[Interval]:
        counters_ = _spans(room, line, ("counter",), lacks)
        if not counters_:
            return []
        cut = _spans(room, line, BREAKS_COUNTER, lacks)
        return between([*between(counters_, line.length_in), *cut], line.length_in)

    return _reached(
        house,
        room,
        spaces,
        COUNTER_LEAST_IN,
        COUNTER_REACH_IN,
        lambda up: up is not None and COUNTER_TOP_IN <= up <= COUNTER_TOP_IN + ABOVE_COUNTER_IN,
        entered_by=(),
    )


def _reached(
    house: House,
    room: Room,
    spaces_of: Callable[[_Line, list[str]], list[Interval]],
    least_in: Fraction,
    reach_in: Fraction,
    counts: Callable[[Fraction | None], bool],
    left_out: frozenset[str] = frozenset(),
    entered_by: tuple[str, ...] = DOORS,
) -> Reached:
    made = shape(room.record)
    if made is None:
        return Reached(room.id, 0, (), (f"the outline of room {room.id}",))
    line = _line_of(made)
    lacks: list[str] = []
    spaces = [each for each in spaces_of(line, lacks) if each[1] - each[0] >= least_in]
    unplaced: list[str] = []
    points = list(_points(house, room, made, line, counts, left_out, unplaced))
    far = [
        stretch
        for space in spaces
        for part in out_of_reach(
            space, points, reach_in, line.length_in, closed=space == (Fraction(0), line.length_in)
        )
        for stretch in line.stretches(part)
    ]
    if far:
        lacks += [*unplaced, *boxes_untold(room)]
    doorless = entered_by and not any(each.what in entered_by for each in room.record.things)
    # A stretch wider than a door is too far whatever stands there.
    if doorless and not any(each.to_in - each.from_in > WIDEST_DOOR_IN for each in far):
        lacks.append(f"where the doors of room {room.id} are")
    return Reached(room.id, len(spaces), tuple(far), tuple(dict.fromkeys(lacks)))


def _line_of(made: Shape) -> _Line:
    """The walls from left end to right end, each going on where the last one ended."""
    walls = made.walls if made.walls[0].right == made.walls[1].left else made.walls[::-1]
    starts: list[Fraction] = []
    length = Fraction(0)
    for wall in walls:
        starts.append(length)
        length += wall.length_in
    return _Line(tuple(walls), tuple(starts), length)


def _spans(room: Room, line: _Line, kinds: Iterable[str], lacks: list[str]) -> list[Interval]:
    """Where things of these kinds stand along the walls; what hangs above the floor breaks nothing."""
    spans: list[Interval] = []
    for thing in room.record.things:
        if thing.what not in kinds or (thing.what in ABOVE_FLOOR and _hangs(thing)):
            continue
        wall = next((each for each in line.walls if each.name == thing.wall), None)
        if wall is None or thing.along is None or thing.width is None:
            lacks.append(f"where the {thing.what} on the {thing.wall} wall of {room.id} begins and ends")
            continue
        start = line.at(wall, inches(thing.along))
        spans.append((start, start + inches(thing.width)))
    return spans


def _hangs(thing: Thing) -> bool:
    """Whether it stands above the floor; a window of which nothing is told does."""
    if thing.up is None:
        return thing.what == "window"
    return inches(thing.up) > 0


def _points(
    house: House,
    room: Room,
    made: Shape,
    line: _Line,
    counts: Callable[[Fraction | None], bool],
    left_out: frozenset[str],
    unplaced: list[str],
) -> Iterator[Fraction]:
    """Where along the line the room's receptacles stand, those that count; the others' boxes are noted."""
    for id_ in room.boxes:
        box = house.boxes[id_]
        if box.makeup_unknown and not box.devices:
            unplaced.append(f"which devices are in box {id_}")
        kept = [each for each in box.devices if each.id not in left_out]
        if not any(each.kind.is_ in RECEPTACLES and is_125_volt(each.kind) for each in kept):
            continue
        place = spot(box.record.at, made)
        if place is None or (place.surface == "wall" and place.up_in is None):
            unplaced.append(f"where box {id_} is")
        elif place.wall is not None and place.along_in is not None:
            if counts(place.up_in):
                yield line.at(place.wall, place.along_in)
        elif place.surface == "floor":
            for wall in line.walls:
                along = wall.along_of(place.point)
                near = abs(wall.distance_in(place.point)) <= FROM_FLOOR_IN
                if near and 0 <= along <= wall.length_in and counts(None):
                    yield line.at(wall, along)
