"""Which outlets must open on a ground fault: by the room, by what stands near, by the edition."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.places import (
    OPEN_AIR,
    exposure,
    is_125_volt,
    is_detached,
    is_small_receptacle,
    volts_of,
)
from junctionary.figures.receptacles import is_taken_up, outlets_of, plugged_into
from junctionary.house.geometry import Shape, Spot, distance_in, inches, shape, span_of, spot
from junctionary.house.model import Box, Device, House, Room
from junctionary.house.terminals import RECEPTACLES
from junctionary.records.rooms import Thing
from junctionary.sources import edition_year
from junctionary.tables import table

NEAR_IN = 72
COUNTER_TOP_IN = Fraction(36)
UP_TO_250_V_SINCE = 2020
GRADE_REACH_IN = 78
WATER = {"sink": "sink", "basin": "sink", "tub": "tub", "shower": "tub"}
BASEMENTS = ("basement", "cellar")
WORK_PLACES = ("workshop", "storage")
WASH_ROOMS = ("laundry", "utility")
BAR_ROOMS = ("living", "family", "dining", "recreation", "den", "library", "sunroom")
FOOD_ROOMS = (*BAR_ROOMS, "pantry", "office", "bedroom", "porch", "deck")
FOOD = ("refrigerator", "microwave", "range", "oven", "cooktop", "dishwasher")
WASHES = ("washer", "dryer")
WASHER_STANDS = ("closet", "utility")
"""Small rooms that a washer makes a laundry."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What asks ground-fault protection of an outlet: a place by the table, or facts that may."""

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
    places: list[str] = []
    lacks: list[str] = []
    for place, lack in _places(house, room, box, device):
        row = table("gfci-places").row(place)
        if not (row.number("since") or 0) <= year <= (row.number("through") or year):
            continue
        if year <= (row.number("spared through") or 0) and (spared := _spared(house, box, device)):
            lacks += [spared] if isinstance(spared, str) else []
        elif lack:
            lacks.append(lack)
        else:
            places.append(row.text("in words"))
    return Asked(device.id, tuple(dict.fromkeys(places)), tuple(dict.fromkeys(lacks)))


def _covered(device: Device, year: int) -> bool:
    usual = is_125_volt(device.kind) and is_small_receptacle(device.kind)
    return usual or (year >= UP_TO_250_V_SINCE and volts_of(device.kind) is not None)


def _spared(house: House, box: Box, device: Device) -> bool | str:
    """Whether a receptacle is out of reach or kept for an appliance that stays, or the fact that tells."""
    at = box.record.at
    if at is not None and (at.ceiling is not None or (at.up is not None and at.up.to("in") > GRADE_REACH_IN)):
        return True
    if is_taken_up(house, device):
        return True
    single = outlets_of(device.kind) == 1 and not plugged_into(house, device)
    return f"what is plugged into {device.id}" if single else False


def _places(house: House, room: Room, box: Box, device: Device) -> Iterator[tuple[str, str | None]]:
    """Each place by its key in the table, with the fact that is missing where it may be one."""
    kind, record = room.record.kind, room.record
    if kind in OPEN_AIR:
        yield "outdoors", None
        near = _near_grade(house, room, box)
        if near is not False:
            yield "outdoors near grade", None if near else f"how high above grade box {box.id} is"
    if kind in ("bathroom", "garage", "crawlspace", "laundry", "kitchen"):
        yield kind, None
    elif _is_laundry(house, room, device):
        yield "laundry", None
    yield from _food_area(house, room, box, device)
    if kind in WORK_PLACES and is_detached(house, room):
        yield "accessory building", None
    if kind in BASEMENTS and not _is_for_alarm(house, device):
        yield "basement", None
        if record.finished is not True:
            yield (
                "unfinished basement",
                None if record.finished is False else f"whether {room.id} is finished",
            )
    if kind not in OPEN_AIR and (place := exposure(house, box)) != "dry":
        yield "damp", None if place else f"whether box {box.id} is in a dry, damp or wet place"
    yield from _near_things(room, box)


def _food_area(house: House, room: Room, box: Box, device: Device) -> Iterator[tuple[str, str | None]]:
    """A bar or a pantry with a sink: what is above its counter, or holds its cold or cooking appliance.

    How far such an area reaches is not in the record; what is within 6 ft of its sink counts anyway.
    """
    things = {each.what for each in room.record.things}
    if room.record.kind not in FOOD_ROOMS or "sink" not in things:
        return
    if room.record.kind == "pantry" or any(each.is_ in FOOD for each in plugged_into(house, device)):
        yield "food area", None
        return
    made = shape(room.record)
    place = spot(box.record.at, made)
    over = [_is_over(made, place, each) for each in room.record.things if each.what == "counter"]
    if any(each is not False for each in over):
        yield "food area", None if any(over) else f"where box {box.id} is"


def _is_for_alarm(house: House, device: Device) -> bool:
    """Whether a single receptacle feeds an alarm system alone, which basements have been let."""
    return outlets_of(device.kind) == 1 and {each.is_ for each in plugged_into(house, device)} == {"alarm"}


def _near_grade(house: House, room: Room, box: Box) -> bool | None:
    """Whether a box outdoors is in reach of somebody on the ground; None where its height is not told."""
    up = box.record.at.up if box.record.at else None
    if room.record.kind == "outdoors":
        return None if up is None else up.to("in") <= GRADE_REACH_IN
    floor = next((each.floor for each in house.record.levels if each.id == room.record.level), None)
    return None if up is None or floor is None else up.to("in") + floor.to("in") <= GRADE_REACH_IN


def _is_laundry(house: House, room: Room, device: Device) -> bool:
    """Whether a washer or dryer is plugged in, or makes a laundry of the small room it stands in."""
    standing = any(each.what in WASHES for each in room.record.things) and room.record.kind in WASHER_STANDS
    return standing or any(each.is_ in WASHES for each in plugged_into(house, device))


def _near_things(room: Room, box: Box) -> Iterator[tuple[str, str | None]]:
    made = shape(room.record)
    place = spot(box.record.at, made)
    for thing in room.record.things:
        if thing.what in WATER:
            near = _is_near(made, place, thing)
            lack = None if near else _where(room, box, thing, place)
            for key in _water_of(room, thing) if near is not False else ():
                yield key, lack
        if thing.what == "counter" and room.record.kind == "kitchen":
            over = _is_over(made, place, thing)
            if over is not False:
                lack = None if over else _where(room, box, thing, place)
                yield "kitchen counter", lack
                sinks = [_is_near(made, place, each) for each in room.record.things if each.what == "sink"]
                if any(each is not False for each in sinks):
                    sure = any(sinks)
                    yield "kitchen counter near the sink", lack if sure else f"where the sink of {room.id} is"


def _water_of(room: Room, thing: Thing) -> Iterator[str]:
    """The rows of the table that a sink, a tub or a shower stands for, by the room it is in."""
    yield WATER[thing.what]
    if WATER[thing.what] == "sink" and room.record.kind != "kitchen":
        yield "sink outside the kitchen"
        if room.record.kind in WASH_ROOMS:
            yield "laundry sink"
        if room.record.kind in BAR_ROOMS:
            yield "bar sink"


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
