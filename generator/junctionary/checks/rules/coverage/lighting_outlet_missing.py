"""A room has no light that a wall switch governs.

Why it matters: whoever crosses a dark room to find a lamp falls over what stands in it.
What to do: put in a lighting outlet with a switch beside the door; in a living or sleeping room a switched
    receptacle may serve.
Cannot tell: when what is in a box of the room, or what switches its light, is not recorded. In attics,
    crawlspaces, cellars, laundries and utility rooms any light counts; an attic or crawlspace needs one only
    where things are stored or equipment stands. A fan is no light unless it has a lead for one. Rooms built
    before the 2008 edition are left alone.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.figures import Figures
from junctionary.figures.gaps import boxes_untold, unseen_in
from junctionary.figures.places import gives_light
from junctionary.house.lamps import LampTable
from junctionary.house.model import Device, House, Room
from junctionary.house.network import Network
from junctionary.house.terminals import RECEPTACLES
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.70(A)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: lights, says: "Den lights"}
[circuits/lights.yaml]
circuit: lights
name: Den lights
runs:
  - {id: a1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: a2, cable: 14/2 NM-B, from: D1, to: D2}
[rooms/den.yaml]
room: den    #! lighting-outlet-missing
name: Den
kind: den
complete: true
[boxes/den.yaml]
room: den
boxes:
  D1: {makeup: splice-through}
  D2: {devices: {f1: lamp}, makeup: end-of-run}
[devices/all.yaml]
devices:
  switch: {is: switch, ways: 1, rating: 15 A}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace(
    "D1: {makeup: splice-through}", "D1: {devices: {s1: switch}, makeup: {feed: a1, switched: {s1: a2}}}"
).replace("    #! lighting-outlet-missing", "")

UNTOLD = PASSES.replace("D2: {devices: {f1: lamp}, makeup: end-of-run}", "D2: {makeup: unknown}")

LIVED_IN = (
    "family", "dining", "living", "library", "den", "sunroom", "bedroom", "recreation", "office",
)  # fmt: skip
SWITCHED = (*LIVED_IN, "kitchen", "bathroom", "hall", "stair", "foyer", "garage")
ANY_LIGHT = ("cellar", "basement", "utility", "laundry")
IF_USED = ("attic", "crawlspace")
EQUIPMENT = ("furnace", "water-heater")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each room by its lights and what switches them."""
    tables = {each.device: each for each in figures.lamps}
    for room in rooms_of(house, *SWITCHED, *ANY_LIGHT, *IF_USED):
        lights = [
            device
            for id_ in room.boxes
            for device in house.boxes[id_].devices
            if gives_light(device.kind) is not False
            or (device.kind.is_ in RECEPTACLES and room.record.kind in LIVED_IN)
        ]
        if any(_serves(room, each, tables.get(each.id)) for each in lights):
            continue
        needs = [gap for id_ in room.boxes if (gap := unseen_in(house.boxes[id_]))]
        needs += [why for each in lights if each.id in tables for why in tables[each.id].unknown]
        needs += [
            reason.reason
            for each in lights
            if each.id not in tables
            for name in network.index.carrying.get(each.id, ())
            for reason in network.unknown_at(name)
        ]
        needs += [f"whether {each.id} has a light" for each in lights if gives_light(each.kind) is None]
        needs += boxes_untold(room)
        if room.record.kind in IF_USED and not _holds_equipment(house, room):
            needs.append(f"whether anything is stored or serviced in {room.id}")
        if needs:
            yield CannotTell((room.id,), tuple(dict.fromkeys(needs)), room.place)
            continue
        yield _fault(room)


def _holds_equipment(house: House, room: Room) -> bool:
    standing = any(each.what in EQUIPMENT for each in room.record.things)
    devices = (each for id_ in room.boxes for each in house.boxes[id_].devices)
    return standing or any(each.kind.is_ == "appliance" for each in devices)


def _serves(room: Room, device: Device, table: LampTable | None) -> bool:
    light = gives_light(device.kind)
    if room.record.kind in (*ANY_LIGHT, *IF_USED):
        return light is True
    return light is not None and table is not None and bool(table.switches)


def _fault(room: Room) -> Fault:
    return Fault(
        place=room.place,
        about=(room.id,),
        found=f"{room.name} has no light{_switched(room)}, as recorded.",
        allowed="A lighting outlet with a wall switch.",
        because="Whoever crosses a dark room to find a lamp falls over what stands in it.",
        do="Put in a lighting outlet, and a switch for it beside the door.",
        edition=room.edition,
    )


def _switched(room: Room) -> str:
    return "" if room.record.kind in (*ANY_LIGHT, *IF_USED) else " that a switch governs"
