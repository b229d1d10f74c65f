"""A circuit that must serve one purpose alone feeds something else as well.

Why it matters: the rule keeps these circuits free for heavy loads; what else hangs on them trips with
    the kettle, the iron or the hair dryer.
What to do: move the outlet that is named to a general circuit, or record the circuit's true purpose;
    a circuit that feeds a bathroom receptacle is judged as a bathroom's, whatever it is called.
Cannot tell: when what is in a box of the circuit is not recorded. A small-appliance circuit serves
    receptacles in kitchen, pantry and dining room, but none of a dishwasher, disposer or hood; a laundry's
    those of the laundry; a bathroom's the receptacles of bathrooms, or everything of one bathroom; since
    the 2017 edition a garage's those of the garage and outdoors. Circuits built before the 2008 edition
    are left alone.
Stands: on the circuit's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import HELD_SINCE
from junctionary.figures import Figures
from junctionary.figures.gaps import unseen_on
from junctionary.figures.places import OPEN_AIR, is_125_volt
from junctionary.figures.receptacles import is_taken_up, plugged_into
from junctionary.house.model import Circuit, Device, House
from junctionary.house.network import Network
from junctionary.house.terminals import RECEPTACLES, WIRED
from junctionary.sources import cite, edition_year

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "210.11(C)(1)"),
        cite("nec-2023", "210.11(C)(2)"),
        cite("nec-2023", "210.11(C)(3)"),
        cite("nec-2023", "210.11(C)(4)"),
        cite("nec-2023", "210.52(B)(2)"),
    ),
    ROUGHED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: counter, says: "Kitchen counter"}
[circuits/counter.yaml]
circuit: counter    #! circuit-strays-from-purpose
name: Kitchen counter
purpose: small-appliance
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/porch.yaml]
room: porch
name: Porch
kind: porch
exposed: damp
[boxes/porch.yaml]
room: porch
boxes:
  D1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
"""

PASSES = FAILS.replace("kind: porch", "kind: pantry").replace("    #! circuit-strays-from-purpose", "")

UNTOLD = PASSES.replace("{devices: {r1: duplex}, makeup: end-of-run}", "{makeup: unknown}")

ROOMS = {
    "small-appliance": ("kitchen", "pantry", "dining"),
    "laundry": ("laundry",),
    "bathroom": ("bathroom",),
    "garage": ("garage", *OPEN_AIR),
}
SINCE = {"garage": 2017}
NO_SMALL_APPLIANCE = ("dishwasher", "disposer", "hood", "washer", "dryer", "furnace", "water-heater")
"""Appliances that stay and for which the small-appliance circuits are not: a refrigerator may be on one."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit of these purposes, or with a receptacle that only they may feed, by the outlets on it."""
    for circuit in house.circuits.values():
        purpose = _kept_for(house, circuit)
        if purpose is None or edition_year(circuit.edition) < SINCE.get(purpose, HELD_SINCE):
            continue
        strays = [each for each in _outlets(house, circuit) if _strays(house, circuit, purpose, each)]
        if strays:
            yield _fault(house, circuit, purpose, strays)
        elif gaps := tuple(dict.fromkeys(unseen_on(house, circuit))):
            yield CannotTell((circuit.id,), gaps, circuit.place)


def _kept_for(house: House, circuit: Circuit) -> str | None:
    """The purpose that a circuit is kept for: as recorded, or by a bathroom receptacle that hangs on it."""
    if circuit.record.purpose in ROOMS:
        return circuit.record.purpose
    rooms = (
        house.rooms.get(house.boxes[each.box].room)
        for each in _outlets(house, circuit)
        if each.kind.is_ in RECEPTACLES and is_125_volt(each.kind)
    )
    kinds = {room.record.kind for room in rooms if room and edition_year(room.edition) >= HELD_SINCE}
    return "bathroom" if "bathroom" in kinds else None


def _outlets(house: House, circuit: Circuit) -> list[Device]:
    fed = (house.devices[each] for each in circuit.devices)
    return [each for each in fed if each.kind.is_ in (*RECEPTACLES, *WIRED)]


def _strays(house: House, circuit: Circuit, purpose: str, device: Device) -> bool:
    room = house.rooms.get(house.boxes[device.box].room)
    if room is None:
        return False
    if room.record.kind not in ROOMS[purpose]:
        return True
    if purpose == "small-appliance" and is_taken_up(house, device):
        return any(each.is_ in NO_SMALL_APPLIANCE for each in plugged_into(house, device))
    return device.kind.is_ not in RECEPTACLES and not _one_bathroom(house, circuit, purpose)


def _one_bathroom(house: House, circuit: Circuit, purpose: str) -> bool:
    """Whether it is a bathroom's circuit that serves a single room, where lights and fans may share it."""
    rooms = {house.boxes[each.box].room for each in _outlets(house, circuit)}
    return purpose == "bathroom" and len(rooms) == 1


def _fault(house: House, circuit: Circuit, purpose: str, strays: list[Device]) -> Fault:
    rooms = [house.rooms[house.boxes[each.box].room].name for each in strays]
    named = ", ".join(f"{each.id} ({room})" for each, room in zip(strays, rooms, strict=True))
    return Fault(
        place=circuit.place,
        about=(circuit.id, *(each.id for each in strays)),
        found=f"{circuit.name} {_by(circuit, purpose)} and also feeds {named}.",
        allowed=f"On a {purpose} circuit, only what it is for.",
        because="What else hangs on it trips with the heavy loads it is kept for.",
        do="Move what is named to a general circuit, or record the circuit's true purpose.",
        edition=circuit.edition,
    )


def _by(circuit: Circuit, purpose: str) -> str:
    return f"is a {purpose} circuit" if circuit.record.purpose == purpose else "feeds a bathroom receptacle"
