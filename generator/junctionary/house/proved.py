"""What the log and the photographs prove of a thing: when it was tested last, which walls a picture shows."""

from collections.abc import Mapping

from junctionary.house.model import Device, House, Room
from junctionary.records.log import LogEntry

TESTS = {"gfci-receptacle": "gfci-button", "gfci-device": "gfci-button", "smoke-alarm": "smoke-alarm"}
"""The test that a kind of device wants again and again."""


def tests_of(house: House, device: Device, test: str) -> tuple[LogEntry, ...]:
    """The entries of one test about a device, its box or a circuit of it, the oldest first."""
    about = {device.id, device.box, *device.circuits}
    found = (each for each in house.log if each.test == test and about & set(each.about or ()))
    return tuple(sorted(found, key=lambda each: each.date))


def walls_shown(house: House, room: Room) -> Mapping[str, bool]:
    """By wall of a room with a box in it, whether a photograph of the record shows it."""
    places = (house.boxes[each].record.at for each in room.boxes)
    walls = dict.fromkeys(each.wall for each in places if each is not None and each.wall is not None)
    shown = {each.wall for each in house.photos if each.room == room.id}
    return {wall: wall in shown for wall in walls}
