"""A receptacle of kitchen, pantry or dining room hangs on a circuit that is not for small appliances.

Why it matters: a kettle or a toaster takes nearly all that a circuit carries; on one that also feeds lights
    or other rooms the breaker trips at supper, and somebody puts in a larger one.
What to do: feed the receptacle from a 20 A small-appliance circuit; or, where the circuit is one, record
    its purpose.
Cannot tell: when the purpose of the circuit, or where a box is, is not recorded. Left alone: receptacles
    above 5-1/2 ft, those switched from the wall, those kept for an appliance that stays (a refrigerator
    only if it is alone on its circuit), those on a circuit for one appliance, and those below the
    counter's top behind a counter, a cabinet or a range. Rooms built before the 2008 edition are left alone.
Stands: on the receptacle's line, each on its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import HELD_SINCE
from junctionary.figures import Figures
from junctionary.figures.coverage import WALL_HIGHEST_IN
from junctionary.figures.places import is_125_volt, is_small_receptacle
from junctionary.figures.receptacles import circuits_of, is_taken_up, plugged_into
from junctionary.house.geometry import inches, shape, spot
from junctionary.house.model import Box, Circuit, Device, House, Room
from junctionary.house.network import Network
from junctionary.house.terminals import RECEPTACLES, WIRED
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(B)(1)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [gfci, afci], feeds: back, says: "Kitchen and den, receptacles"}
[circuits/back.yaml]
circuit: back
name: Kitchen and den
purpose: general
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/kitchen.yaml]
room: kitchen
name: Kitchen
kind: kitchen
outline: [[0 ft, 0 ft], [12 ft, 0 ft], [12 ft, 9 ft], [0 ft, 9 ft]]
walls: [north, east, south, west]
things:
  - {what: counter, wall: north, along: 1 ft, width: 6 ft}
[boxes/kitchen.yaml]
room: kitchen
boxes:
  D1:
    at: {wall: north, along: 3 ft, up: 44 in}
    devices: {r1: duplex}    #! kitchen-receptacle-on-other-circuit
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("purpose: general", "purpose: small-appliance").replace(
    "    #! kitchen-receptacle-on-other-circuit", ""
)

UNTOLD = PASSES.replace("purpose: small-appliance\n", "")

ROOMS = ("kitchen", "pantry", "dining")
KEPT_FOR = "small-appliance"
FOR_ONE_APPLIANCE = ("appliance", "range", "dryer", "water-heater", "heating", "cooling", "heat-pump", "pump")
INSIDE = ("counter", "cabinets", "sink", "range", "cooktop")
COUNTER_TOP_IN = 36
COLD = "refrigerator"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each 120 V receptacle of these rooms by the purposes of the circuits that feed it."""
    switched = {each.device for each in figures.lamps if each.switches}
    for device in house.devices.values():
        box = house.boxes[device.box]
        room = house.rooms.get(box.room)
        if room is None or room.record.kind not in ROOMS or edition_year(room.edition) < HELD_SINCE:
            continue
        small = is_small_receptacle(device.kind) and is_125_volt(device.kind)
        if not small or device.id in switched:
            continue
        fed = [house.circuits[each] for each in circuits_of(house, device) if each in house.circuits]
        other = [each for each in fed if each.record.purpose not in (KEPT_FOR, *FOR_ONE_APPLIANCE)]
        for circuit in other[:1]:
            asked = _is_asked(room, box)
            if asked is False or _is_kept(house, device, circuit):
                continue
            needs = [] if circuit.record.purpose is not None else [f"the purpose of circuit {circuit.id}"]
            needs += [] if asked else [f"where box {box.id} is"]
            if needs:
                yield CannotTell((device.id, circuit.id), tuple(needs), device.place)
                continue
            yield Fault(
                place=device.place,
                about=(device.id, circuit.id, room.id),
                found=f"{device.id} in {room.name} hangs on {circuit.name}, whose purpose is "
                f"{circuit.record.purpose}.",
                allowed="There, wall and counter receptacles on the 20 A small-appliance circuits.",
                because="A kettle or a toaster takes nearly all that the circuit carries.",
                do="Feed it from a small-appliance circuit, or record the circuit's true purpose.",
                edition=box.edition,
            )


def _is_kept(house: House, device: Device, circuit: Circuit) -> bool:
    """Whether an appliance that stays has it; a refrigerator, only where the circuit feeds nothing else."""
    if not is_taken_up(house, device):
        return False
    cold = any(each.is_ == COLD for each in plugged_into(house, device))
    others = (house.devices[each].kind.is_ for each in circuit.devices if each != device.id)
    return not (cold and any(each in (*RECEPTACLES, *WIRED) for each in others))


def _is_asked(room: Room, box: Box) -> bool | None:
    """Whether a box is one that wall or counter asks for; None where its place is not told."""
    made = shape(room.record)
    place = spot(box.record.at, made)
    at = box.record.at
    if at is not None and at.ceiling is not None:
        return False
    if at is None or (at.up is None and at.floor is None):
        return None
    if at.up is not None and inches(at.up) > WALL_HIGHEST_IN:
        return False
    low = at.up is not None and inches(at.up) < COUNTER_TOP_IN
    standing = [each for each in room.record.things if each.what in INSIDE and each.wall == at.wall]
    if not low or not standing:
        return True
    if place is None or place.along_in is None:
        return None
    for thing in standing:
        if thing.along is None or thing.width is None:
            return None
        start = inches(thing.along)
        if start <= place.along_in <= start + inches(thing.width):
            return False
    return True
