"""A device or a load is at another voltage than it is made for.

Why it matters: at twice its voltage a lamp or an appliance burns out, and may burn; at half of it a motor
    stalls and overheats. A face of one voltage on a circuit of another invites just that.
What to do: leave the breaker off. Put in a device for the circuit's voltage, or bring the device the
    conductors it is made for.
Cannot tell: when a load's voltage is told neither by it nor by what it is plugged or wired into, when a
    box's make-up is not recorded, or which breaker feeds it. A load or device made for both legs on a
    single pole is pole-count-mismatch.
Stands: on the device's line, or on the load's where it suits its circuit and not what it is plugged into.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.voltages import made_for, wrongly_fed
from junctionary.checks.wording import headed
from junctionary.figures import Figures
from junctionary.figures.drawn_at import volts_of
from junctionary.figures.draws import at_of
from junctionary.figures.gaps import unseen_in
from junctionary.formulas.sums import plain
from junctionary.house.model import Circuit, Device, House
from junctionary.house.network import Network
from junctionary.house.terminals import is_across
from junctionary.records.circuits import LoadRecord
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "210.6(A)"),
        cite("practice", "A device or load is at the voltage it is made for."),
    ),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  2+4: {rating: 20 A, feeds: shop, says: Workshop}
[circuits/shop.yaml]
circuit: shop
name: Workshop
runs:
  - {id: s1, cable: 12/2 NM-B, from: main, to: W1}
[rooms/shop.yaml]
room: shop
name: Workshop
kind: workshop
[boxes/shop.yaml]
room: shop
boxes:
  W1:
    devices: {r1: outlet}    #! voltage-mismatch
    marked: {s1.white: black}
    terminals: {r1.brass: s1.black, r1.silver: s1.white, r1.green: s1.bare}
[devices/all.yaml]
devices:
  outlet: {is: receptacle, face: 5-20R}
"""

PASSES = (
    FAILS.replace("face: 5-20R", "face: 6-20R, outlets: 1")
    .replace("r1.brass: s1.black, r1.silver: s1.white, r1.green", "r1.x: s1.black, r1.y: s1.white, r1.g")
    .replace("    #! voltage-mismatch", "")
)

UNTOLD = PASSES.replace("terminals: {r1.x: s1.black, r1.y: s1.white, r1.g: s1.bare}", "makeup: unknown")

GETS = {
    "both legs": "gets both legs, {both} V between them",
    "one leg": "gets one leg and the neutral, 120 V",
    "one leg twice": "gets the same leg on both its hots, and no voltage between them",
}


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device by its conductors, then each load by what it is plugged or wired into."""
    for box in house.boxes.values():
        if gap := unseen_in(box):
            yield CannotTell((box.id, *box.circuits), (gap,), box.place)
        for device in box.devices:
            yield from _device(house, network, device)
    for circuit in house.circuits.values():
        for load in circuit.loads:
            yield from _load(house, circuit, load)


def _device(house: House, network: Network, device: Device) -> Iterator[Fault]:
    gets, volts = wrongly_fed(house, network, device), made_for(house, device)
    if gets is None or volts is None or (gets == "one leg" and _single_pole(house, device)):
        return
    said = GETS[gets].format(both=plain(2 * volts) if gets == "both legs" else "")
    yield Fault(
        place=device.place,
        about=(device.id, device.box, *device.circuits),
        found=f"{device.id} is made for {plain(volts)} V and {said}.",
        allowed=f"{plain(volts)} V for a device made for it.",
        because="What is used there burns out, or stalls and overheats.",
        do="Leave its breaker off; put in a device for that voltage, or bring it the right conductors.",
        edition=house.boxes[device.box].edition,
    )


def _single_pole(house: House, device: Device) -> bool:
    circuits = [house.circuits[each] for each in device.circuits if each in house.circuits]
    return any(sum(house.breakers[each].poles for each in one.breakers) == 1 for one in circuits)


def _load(house: House, circuit: Circuit, load: LoadRecord) -> Iterator[Fault | CannotTell]:
    said = load.plugged or load.wired
    device = at_of(house, said)[0] if said else None
    there = made_for(house, device) if device is not None else None
    there = volts_of(house, circuit, device) if there is None else there
    told = load.volts.to("V") if load.volts is not None else None
    single = sum(house.breakers[each].poles for each in circuit.breakers) == 1
    if told is None and there is None:
        yield CannotTell((load.id, circuit.id), (f"the voltage of {load.id}",), load.place)
    elif told is not None and there is None and not circuit.breakers:
        needs = (f"which breaker feeds circuit {circuit.id}",)
        yield CannotTell((load.id, circuit.id), needs, load.place)
    elif told is None or there is None or is_across(told) is is_across(there):
        return
    elif device is not None or not (is_across(told) and single):
        at = f"{device.id}, made for {plain(there)} V" if device else f"a circuit of {plain(there)} V"
        yield Fault(
            place=load.place,
            about=(load.id, circuit.id, *([device.id] if device else [])),
            found=f"{headed(load.name or load.id)} is for {plain(told)} V and is on {at}.",
            allowed=f"{plain(told)} V for a load made for it.",
            because="It burns out, or stalls and overheats.",
            do="Unplug or switch it off; give it a circuit and a device of its own voltage.",
            edition=circuit.edition,
        )
