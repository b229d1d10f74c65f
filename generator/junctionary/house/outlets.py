"""What can be seen dead or live: each half of a receptacle, each lamp, fan and appliance.

A thing may be named as a device (``K1.r1``), a half (``K1.r1.top``), a box
(``K1``) or a load (``kettle``); a box stands for all that is in it.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.model import Device, House
from junctionary.house.terminals import HALVES, RECEPTACLES, WIRED, terminals_of

SIGNAL = "orange"
"""The lead by which smoke alarms tell one another; it feeds nothing."""


@dataclass(frozen=True, slots=True)
class Outlet:
    """One point that works or does not: its terminals that carry, and its ground if it has one.

    ``half`` is top or bottom of a duplex receptacle, or the colour of one of a
    fan's two hot leads; None where the device is one point. A receptacle's
    face of a GFCI device stands on the load side of its contacts.
    """

    id: str
    device: str
    half: str | None
    carries: tuple[str, ...]
    ground: tuple[str, ...]
    is_face: bool


def outlets_of(house: House) -> dict[str, Outlet]:
    """Every outlet of the house by its id, in the order of the record."""
    return {each.id: each for device in house.devices.values() for each in outlets_of_device(device)}


def named(house: House, outlets: Mapping[str, Outlet], name: str) -> tuple[str, ...] | None:
    """The outlets that a name means; empty where it has none, None where nothing has that name."""
    if name in outlets:
        return (name,)
    if name in house.devices:
        return tuple(each.id for each in outlets_of_device(house.devices[name]))
    if name in house.boxes:
        return tuple(each.id for device in house.boxes[name].devices for each in outlets_of_device(device))
    for circuit in house.circuits.values():
        for load in circuit.loads:
            if load.id == name:
                said = load.plugged or load.wired
                return () if said is None else named(house, outlets, said) or ()
    return None


def names(house: House) -> list[str]:
    """Every name that ``named`` knows, for saying which is nearest."""
    loads = (load.id for circuit in house.circuits.values() for load in circuit.loads)
    return [*house.boxes, *house.devices, *outlets_of(house), *loads]


def outlets_of_device(device: Device) -> Iterable[Outlet]:
    """The outlets of one device; none of a switch and its like."""
    kind = device.kind
    if kind.is_ not in (*RECEPTACLES, *WIRED):
        return
    face = kind.is_ in RECEPTACLES
    terminals = terminals_of(kind)
    carrying = [each for each in terminals if each.role != "ground" and each.name != SIGNAL]
    grounds = tuple(f"{device.id}.{each.name}" for each in terminals if each.role == "ground")

    def outlet(half: str | None, terminal_names: Iterable[str]) -> Outlet:
        own = tuple(f"{device.id}.{each}" for each in terminal_names)
        return Outlet(f"{device.id}.{half}" if half else device.id, device.id, half, own, grounds, face)

    own = [each.name for each in carrying]
    if "brass-top" in own:
        for half in HALVES:
            yield outlet(half, (f"brass-{half}", f"silver-{half}"))
    elif "load-brass" in own:
        yield outlet(None, ("load-brass", "load-silver"))
    elif kind.is_ == "fan" and len([each for each in carrying if each.role == "hot"]) > 1:
        back = [each.name for each in carrying if each.role == "neutral"]
        for each in carrying:
            if each.role == "hot":
                yield outlet(each.name, (each.name, *back))
    else:
        yield outlet(None, own)
