"""An appliance that the code wants guarded hangs on an outlet that opens on no ground fault.

Why it matters: water and worn heating elements put the case of such a machine at the live conductor;
    whoever touches it and the sink is the way to earth, and no ordinary breaker trips.
What to do: put in a breaker that opens on a ground fault, or feed the outlet from the load side of a GFCI
    device.
Cannot tell: when where the appliance is plugged or wired, what feeds its outlet or what its breaker guards
    against is not recorded. Which appliances are asked goes by edition: dishwashers since 2014, sump
    pumps since 2020, ranges, fixed ovens, cooktops, dryers and microwaves since 2023 (from memory). A
    receptacle in a place where all of them are guarded is another check's.
Stands: on the line of the device it is plugged into or wired to.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wording import headed
from junctionary.figures import Figures
from junctionary.figures.ground_fault import gfci_asked
from junctionary.figures.ground_fault_wired import appliance_asked
from junctionary.house.model import Circuit, Device, House
from junctionary.house.network import Network
from junctionary.records.circuits import LoadRecord
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.8(D)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, guards: [], feeds: wash, says: "Dishwasher"}
[circuits/wash.yaml]
circuit: wash
name: Dishwasher
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
loads:
  - {id: washer, is: dishwasher, draws: 1200 W, wired: D1.w1}
[rooms/pantry.yaml]
room: pantry
name: Pantry
kind: pantry
[boxes/pantry.yaml]
room: pantry
boxes:
  D1:
    devices: {w1: machine}    #! appliance-without-gfci
    makeup: end-of-run
[devices/all.yaml]
devices:
  machine: {is: appliance, volts: 120 V, leads: [14 AWG black, 14 AWG white, 14 AWG green]}
"""

PASSES = FAILS.replace("guards: []", "guards: [gfci]").replace("    #! appliance-without-gfci", "")

UNTOLD = PASSES.replace("guards: [gfci], ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each appliance of the list, by the outlet it hangs on, or by its breaker where none is told."""
    for circuit in house.circuits.values():
        for load in circuit.loads:
            device = house.devices.get(_outlet(load))
            if device is None or device.id not in figures.guarded:
                if appliance_asked(load, edition_year(circuit.edition)):
                    yield from _by_breaker(house, circuit, load)
            elif appliance_asked(load, edition_year(house.boxes[device.box].edition)):
                yield from _by_outlet(house, figures, device, load)


def _outlet(load: LoadRecord) -> str:
    """The device that a load hangs on, without the half of a duplex."""
    return (load.plugged or load.wired or "").removesuffix(".top").removesuffix(".bottom")


def _by_outlet(
    house: House, figures: Figures, device: Device, load: LoadRecord
) -> Iterator[Fault | CannotTell]:
    asked = gfci_asked(house, device)
    guarded = figures.guarded[device.id]
    held = guarded.against("gfci")
    if held or (asked is not None and asked.places):
        return
    about = (device.id, load.id, *device.circuits, *guarded.breakers)
    if held is None:
        yield CannotTell(about, guarded.lacks, device.place)
        return
    named = headed(load.name or load.is_.replace("-", " "))
    yield Fault(
        place=device.place,
        about=about,
        found=f"{named} ({load.id}) hangs on {device.id}, and nothing on its way to the source opens on a "
        "ground fault.",
        allowed="For that appliance, an outlet that opens on a ground fault, plugged or wired.",
        because="A fault to its case goes to earth through whoever touches it.",
        do="Put in a GFCI breaker, or feed the outlet from the load side of a GFCI device.",
        edition=house.boxes[device.box].edition,
    )


def _by_breaker(house: House, circuit: Circuit, load: LoadRecord) -> Iterator[CannotTell]:
    """An appliance of which only the circuit is told: guarded for certain where its breakers guard it."""
    breakers = [house.breakers[each] for each in circuit.breakers]
    if breakers and all("gfci" in (each.guards or ()) for each in breakers):
        return
    needs = tuple(f"what breaker {each.id} guards against" for each in breakers if each.guards is None)
    needs = needs or (f"where {load.id} is plugged or wired",)
    yield CannotTell((load.id, circuit.id, *circuit.breakers), needs, circuit.place)
