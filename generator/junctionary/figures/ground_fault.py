"""Which receptacles must open on a ground fault: by the room, by what stands near, by the edition."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.places import OPEN_AIR, exposure, is_125_volt, is_small_receptacle, volts_of
from junctionary.figures.receptacles import RECEPTACLES
from junctionary.house.geometry import Shape, Spot, distance_in, inches, shape, span_of, spot
from junctionary.house.model import Box, Device, House, Room
from junctionary.records.rooms import Thing
from junctionary.sources import edition_year
from junctionary.tables import table

NEAR_IN = 72
COUNTER_TOP_IN = Fraction(36)
UP_TO_250_V_SINCE = 2020
WATER = {"sink": "sink", "basin": "sink", "tub": "tub", "shower": "tub"}
BASEMENTS = ("basement", "cellar")
WORK_PLACES = ("workshop", "storage")


@dataclass(frozen=True, slots=True)
class Asked:
    """What asks ground-fault protection of a receptacle: a place by the table, or facts that may."""

    device: str
    places: tuple[str, ...]
    lacks: tuple[str, ...]


def gfci_asked(house: House, device: Device) -> Asked | None:
    """Of a receptacle, in which places that its edition covers it stands; None for what is no receptacle.

    ``places`` are in the table's words. ``lacks`` are facts that might add one.
    """
    box = house.boxes[device.box]
    room = house.rooms.get(box.room)
    year = edition_year(box.edition)
    if device.kind.is_ not in RECEPTACLES or not _covered(device, year):
        return None
    if room is None:
        return Asked(device.id, (), (f"the kind of room {box.room}",))
    known = table("gfci-places")
    places: list[str] = []
    lacks: list[str] = []
    for place, lack in _places(house, room, box):
        if (known.number(place, "since") or 0) > year:
            continue
        if lack:
            lacks.append(lack)
        else:
            places.append(known.row(place).text("in words"))
    return Asked(device.id, tuple(dict.fromkeys(places)), tuple(dict.fromkeys(lacks)))


def _covered(device: Device, year: int) -> bool:
    usual = is_125_volt(device.kind) and is_small_receptacle(device.kind)
    return usual or (year >= UP_TO_250_V_SINCE and volts_of(device.kind) is not None)


def _places(house: House, room: Room, box: Box) -> Iterator[tuple[str, str | None]]:
    """Each place by its key in the table, with the fact that is missing where it may be one."""
    kind, record = room.record.kind, room.record
    if kind in OPEN_AIR:
        yield "outdoors", None
    if kind in ("bathroom", "garage", "crawlspace", "laundry", "kitchen"):
        yield kind, None
    if kind in WORK_PLACES and _is_detached(house, room):
        yield "garage", None
    if kind in BASEMENTS:
        yield "basement", None
        if record.finished is not True:
            yield (
                "unfinished basement",
                None if record.finished is False else f"whether {room.id} is finished",
            )
    if kind not in OPEN_AIR and (place := exposure(house, box)) != "dry":
        yield "damp", None if place else f"whether box {box.id} is in a dry, damp or wet place"
    yield from _near_things(room, box)


def _is_detached(house: House, room: Room) -> bool:
    building = next((each for each in house.record.buildings if each.id == room.record.building), None)
    return building is not None and building.detached is True


def _near_things(room: Room, box: Box) -> Iterator[tuple[str, str | None]]:
    made = shape(room.record)
    place = spot(box.record.at, made)
    for thing in room.record.things:
        if thing.what in WATER:
            near = _is_near(made, place, thing)
            if near is not False:
                yield WATER[thing.what], None if near else _where(room, box, thing, place)
        if thing.what == "counter" and room.record.kind == "kitchen":
            over = _is_over(made, place, thing)
            if over is not False:
                yield "kitchen counter", None if over else _where(room, box, thing, place)


def _is_near(made: Shape | None, place: Spot | None, thing: Thing) -> bool | None:
    """Whether a place is within 6 ft of a thing along a wall, on the plan; None where either is not told."""
    span = span_of(thing, made)
    return None if place is None or span is None else distance_in(place.point, *span) <= NEAR_IN


def _is_over(made: Shape | None, place: Spot | None, thing: Thing) -> bool | None:
    """Whether a place is on the wall above a counter; None where either is not told."""
    wall = made.wall(thing.wall) if made else None
    if place is None or wall is None or thing.along is None or thing.width is None:
        return None
    if place.wall != wall or place.along_in is None:
        return False
    start = inches(thing.along)
    if not start <= place.along_in <= start + inches(thing.width):
        return False
    return place.up_in >= COUNTER_TOP_IN if place.up_in is not None else None


def _where(room: Room, box: Box, thing: Thing, place: Spot | None) -> str:
    if place is None or place.up_in is None:
        return f"where box {box.id} is"
    return f"where the {thing.what} on the {thing.wall} wall of {room.id} begins and ends"
