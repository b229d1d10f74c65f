"""The receptacles of a room, for the checks that ask for one."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from junctionary.checks.finding import CannotTell
from junctionary.figures.gaps import boxes_untold, unseen_in
from junctionary.figures.places import is_125_volt
from junctionary.figures.receptacles import is_taken_up
from junctionary.house.geometry import distance_in, shape, span_of, spot
from junctionary.house.model import Box, House, Room
from junctionary.house.terminals import RECEPTACLES
from junctionary.records.rooms import Thing


@dataclass(frozen=True, slots=True)
class Held:
    """The boxes of a room with a 120 V receptacle that counts, and what is missing to tell of others."""

    boxes: tuple[str, ...]
    lacks: tuple[str, ...]


def receptacles_in(house: House, room: Room, counts: Callable[[Box], bool | None] = lambda _: True) -> Held:
    """Boxes of the room with a receptacle, of which ``counts`` says so; None where it cannot be told."""
    boxes: list[str] = []
    lacks: list[str] = []
    for box in (house.boxes[each] for each in room.boxes):
        if gap := unseen_in(box):
            lacks.append(gap)
        if any(each.kind.is_ in RECEPTACLES and is_125_volt(each.kind) for each in box.devices):
            counted = counts(box)
            if counted:
                boxes.append(box.id)
            elif counted is None:
                lacks.append(f"where box {box.id} is")
    return Held(tuple(boxes), (*lacks, *boxes_untold(room)))


def reaches(house: House, room: Room, thing: Thing, held: Held, reach_in: int) -> bool | tuple[str, ...]:
    """Whether one of these boxes is that near to a thing, on the plan; else the facts that would tell."""
    made = shape(room.record)
    span = span_of(thing, made)
    lacks = list(held.lacks)
    if span is None:
        lacks.append(f"where the {thing.what} on the {thing.wall} wall of {room.id} is")
    for id_ in held.boxes:
        place = spot(house.boxes[id_].record.at, made)
        if place is None:
            lacks.append(f"where box {id_} is")
        elif span is not None and distance_in(place.point, *span) <= reach_in:
            return True
    return tuple(lacks) or False


def bare_rooms(
    house: House, rooms: Iterable[Room], counts: Callable[[Box], bool | None] = lambda _: True
) -> Iterator[tuple[Room, CannotTell | None]]:
    """The rooms in which no receptacle is recorded, each with why it cannot be told, if it cannot."""
    for room in rooms:
        held = receptacles_in(house, room, counts)
        if not held.boxes:
            yield room, CannotTell((room.id,), held.lacks, room.place) if held.lacks else None


def not_taken_up(house: House) -> Callable[[Box], bool]:
    """Counts a box with a receptacle that no appliance that stays takes up."""

    def counts(box: Box) -> bool:
        return any(
            each.kind.is_ in RECEPTACLES and is_125_volt(each.kind) and not is_taken_up(house, each)
            for each in box.devices
        )

    return counts


def no_higher_than(limit_in: int) -> Callable[[Box], bool | None]:
    """Counts a box whose centre is no higher; one in a ceiling is."""

    def counts(box: Box) -> bool | None:
        at = box.record.at
        if at is None or (at.up is None and at.ceiling is None and at.floor is None):
            return None
        return at.ceiling is None and (at.up is None or at.up.to("in") <= limit_in)

    return counts
