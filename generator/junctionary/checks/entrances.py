"""The doors by which one steps out of the house, for checks of what is outdoors."""

from collections.abc import Iterator

from junctionary.figures.places import OPEN_AIR
from junctionary.house.model import House, Room
from junctionary.records.rooms import Thing

WAYS = ("door", "opening")
WIDEST_IN = 72
"""A wider door of a garage is one for vehicles, which nobody is taken to go in by. Practice."""


def is_entered(house: House, room: Room) -> bool | None:
    """Whether a door leads to it from a room indoors; None where no door tells."""
    to = {each for thing, each in _doors(house, room) if not _for_vehicles(house, thing, each)}
    known = [house.rooms[each] for each in to if isinstance(each, str) and each in house.rooms]
    if any(each.record.kind not in OPEN_AIR for each in known):
        return True
    return False if known and len(known) == len(to) else None


def _doors(house: House, room: Room) -> Iterator[tuple[Thing, object]]:
    """Each door of a room, told from either side, and the room beyond it."""
    for thing in room.record.things:
        if thing.what in WAYS:
            yield thing, thing.to
    for other in house.rooms.values():
        for thing in other.record.things:
            if thing.what in WAYS and thing.to == room.id:
                yield thing, other.id


def _for_vehicles(house: House, door: Thing, beyond: object) -> bool:
    garage = isinstance(beyond, str) and beyond in house.rooms and house.rooms[beyond].record.kind == "garage"
    return garage and door.width is not None and door.width.to("in") > WIDEST_IN
