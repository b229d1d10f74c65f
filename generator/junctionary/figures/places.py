"""Which outlets the rules of protection speak of: by voltage, by rating, by the kind of room."""

from collections.abc import Collection
from fractions import Fraction

from junctionary.figures.receptacles import rating_of
from junctionary.house.model import Box, House, Room
from junctionary.house.panels import MAIN
from junctionary.house.terminals import RECEPTACLES, is_across, terminals_of
from junctionary.records.devices import DeviceKind
from junctionary.records.values import UNKNOWN, Said
from junctionary.tables import table
from junctionary.units import Quantity

USUAL_VOLTS = "125"
SMALL_A = 20
FAN_LIGHT = "blue"
OPEN_AIR = ("outdoors", "porch", "deck")


def is_125_volt(kind: DeviceKind) -> bool:
    """Whether an outlet is on 120 V: a receptacle by its face (NEMA WD 6), anything else by its voltage."""
    if kind.is_ in RECEPTACLES:
        return volts_of(kind) == USUAL_VOLTS
    return kind.volts is None or not is_across(kind.volts.to("V"))


def volts_of(kind: DeviceKind) -> str | None:
    """The voltage of a receptacle's face as it is printed: 125, 250, 125/250; None where no face says."""
    faces = table("receptacle-faces")
    if kind.face is None:
        return USUAL_VOLTS
    return faces.row(kind.face).text("volts") if kind.face in faces else None


def branch_breakers(house: House, breakers: Collection[str]) -> tuple[str, ...]:
    """Of the breakers on a way to the source, those of the branch circuit: no feeder's, no panel's main."""
    feeders = {each.feeder for each in house.panels.values()}
    found = (house.breakers[each] for each in breakers)
    return tuple(each.id for each in found if each.spaces != (MAIN,) and each.feeds not in feeders)


def small_breaker(house: House, breakers: Collection[str]) -> bool | None:
    """Whether all of these are 20 A or less; None where a rating that decides is not recorded."""
    ratings = [house.breakers[each].rating for each in breakers]
    known = [each.to("A") for each in ratings if isinstance(each, Quantity)]
    if any(each > SMALL_A for each in known):
        return False
    return True if known and len(known) == len(ratings) else None


def afci_since(kind: str) -> Fraction | None:
    """The edition since which rooms of this kind are guarded against arcs; None where none asks it."""
    rooms = table("afci-rooms")
    return rooms.number(kind, "since") if kind in rooms else None


def exposure(house: House, box: Box) -> str | None:
    """``dry``, ``damp``, ``wet`` or ``not dry``; None where nothing tells.

    As the box or its room says; outdoors and on a deck that is at least damp; indoors, dry.
    """
    room = house.rooms.get(box.room)
    told = box.record.exposed or (room.record.exposed if room else None)
    if isinstance(told, str) and not isinstance(told, Said):
        return told
    if told is UNKNOWN or room is None:
        return None
    return "not dry" if room.record.kind in OPEN_AIR else "dry"


def is_small_receptacle(kind: DeviceKind) -> bool:
    """Whether it is a 15 or 20 A receptacle that does not lock, by its face or its rating."""
    rating = rating_of(kind)
    return kind.is_ in RECEPTACLES and (rating is None or rating <= SMALL_A)


def gives_light(kind: DeviceKind) -> bool | None:
    """Whether a device is a light: a luminaire, or a fan with a lead for one; None where no lead is told."""
    if kind.is_ != "fan":
        return kind.is_ == "luminaire"
    return None if kind.leads is None else FAN_LIGHT in [each.name for each in terminals_of(kind)]


def has_ground_hole(kind: DeviceKind) -> bool:
    """Whether a receptacle takes a plug with a ground pin; one whose face is not told is taken to."""
    faces = table("receptacle-faces")
    if kind.is_ not in RECEPTACLES:
        return False
    return kind.face is None or kind.face not in faces or faces.number(kind.face, "grounds") != 0


def is_detached(house: House, room: Room) -> bool:
    """Whether a room is of a building that stands apart."""
    building = next((each for each in house.record.buildings if each.id == room.record.building), None)
    return building is not None and building.detached is True
