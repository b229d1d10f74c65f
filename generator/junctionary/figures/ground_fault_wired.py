"""Which outlets other than receptacles must open on a ground fault, and which appliances, however fed."""

from junctionary.figures.ground_fault import WORK_PLACES, Asked
from junctionary.figures.places import OPEN_AIR, branch_breakers, is_detached
from junctionary.house.model import Device, House, Room
from junctionary.house.terminals import WIRED
from junctionary.records.circuits import LoadRecord
from junctionary.records.values import Said
from junctionary.sources import edition_year
from junctionary.tables import table
from junctionary.units import Quantity

CRAWLSPACE_LIGHTS_SINCE = 2017
BY_COMPRESSOR = ("heat-pump", "air-conditioner")
HEATING_AND_COOLING = (*BY_COMPRESSOR, "air-handler", "furnace", "space-heater")
INVERTERS_LEFT_OUT_IN = 2020
LEFT_OUT_UNTIL = "2026-09"
"""When the 2023 edition's exception for heating and cooling equipment ends (210.8(F), from memory)."""
OUTDOORS_UP_TO_A = 50
LIGHTS = ("luminaire",)


def light_in_crawlspace(house: House, device: Device) -> bool:
    """Whether it is a light in a crawlspace whose edition has it guarded (210.8(C), in 2017 210.8(E))."""
    box = house.boxes[device.box]
    room = house.rooms.get(box.room)
    asked = edition_year(box.edition) >= CRAWLSPACE_LIGHTS_SINCE
    return asked and device.kind.is_ in LIGHTS and room is not None and room.record.kind == "crawlspace"


def wired_outdoors(house: House, device: Device, breakers: tuple[str, ...]) -> Asked | None:
    """Of what is wired outdoors or where that counts as much, the place that asks; None where none does.

    ``breakers`` are those on its way to the source; lights are left out, and what is above 50 A (210.8(F)).
    """
    box = house.boxes[device.box]
    room = house.rooms.get(box.room)
    place = _place_of(house, room) if room is not None else None
    if device.kind.is_ not in WIRED or device.kind.is_ in LIGHTS or place is None:
        return None
    row, year = table("gfci-outdoor-outlets").row(place), edition_year(box.edition)
    loads = wired_to(house, device)
    if year < (row.number("since") or 0) or _above(house, breakers):
        return None
    if loads and all(each.is_ in HEATING_AND_COOLING for each in loads):
        if year in row.numbers("heating and cooling left out"):
            held = {each.id: _in_time(house, each) for each in loads}
            if False in held.values():
                return Asked(device.id, (row.text("in words"),), ())
            needs = tuple(f"when {each} was installed" for each, in_time in held.items() if in_time is None)
            return Asked(device.id, (), needs) if needs else None
        if year == INVERTERS_LEFT_OUT_IN and all(each.is_ in BY_COMPRESSOR for each in loads):
            if any(each.inverter is True for each in loads):
                return None
            unsaid = [each.id for each in loads if each.inverter is not False]
            needs = tuple(f"whether the compressor of {each} runs on an inverter" for each in unsaid)
            return Asked(device.id, () if needs else (row.text("in words"),), needs)
    return Asked(device.id, (row.text("in words"),), ())


def _in_time(house: House, load: LoadRecord) -> bool | None:
    """Whether a load was installed while the exception for it held; None where no date tells.

    A record that is older than its end holds nothing newer.
    """
    told = load.installed
    if isinstance(told, str) and not isinstance(told, Said) and told != LEFT_OUT_UNTIL[: len("2026")]:
        return told < LEFT_OUT_UNTIL
    recorded = house.record.recorded
    return True if recorded is not None and recorded < LEFT_OUT_UNTIL else None


def appliance_asked(load: LoadRecord, year: int) -> bool:
    """Whether an appliance's outlet is guarded by an edition, wherever it stands (210.8(D))."""
    known = table("gfci-appliances")
    if load.is_ not in known or year < (known.number(load.is_, "since") or 0):
        return False
    return load.is_ != "oven" or load.fastened is True or load.wired is not None


def wired_to(house: House, device: Device) -> tuple[LoadRecord, ...]:
    """The loads that the record wires to a device."""
    return tuple(
        load for circuit in house.circuits.values() for load in circuit.loads if load.wired == device.id
    )


def _place_of(house: House, room: Room) -> str | None:
    if room.record.kind in OPEN_AIR:
        return "outdoors"
    if room.record.kind == "garage":
        return "garage"
    return "accessory building" if room.record.kind in WORK_PLACES and is_detached(house, room) else None


def _above(house: House, breakers: tuple[str, ...]) -> bool:
    ratings = [house.breakers[each].rating for each in branch_breakers(house, breakers)]
    return any(isinstance(each, Quantity) and each.to("A") > OUTDOORS_UP_TO_A for each in ratings)
