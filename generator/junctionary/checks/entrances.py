"""The doors by which one steps out of the house, for checks of what is outdoors."""

from junctionary.figures.places import OPEN_AIR
from junctionary.house.model import House, Room

WAYS = ("door", "opening")


def is_entered(house: House, room: Room) -> bool | None:
    """Whether a door leads to it from a room indoors; None where no door tells."""
    to = {each.to for each in room.record.things if each.what in WAYS}
    to |= {
        other.id
        for other in house.rooms.values()
        for each in other.record.things
        if each.what in WAYS and each.to == room.id
    }
    known = [house.rooms[each] for each in to if isinstance(each, str) and each in house.rooms]
    if any(each.record.kind not in OPEN_AIR for each in known):
        return True
    return False if known and len(known) == len(to) else None
