"""A range or dryer has an outlet without a ground, which only old circuits may have.

Why it matters: on such an outlet the case of the machine is joined to the neutral. One loose neutral anywhere
    on its way puts the case at the live conductor, beside the sink.
What to do: run a cable with two hots, a neutral and a ground, put in a 14-30R or 14-50R, give the machine a
    four-wire cord, and part its neutral from its case. What was there before the 1996 edition may stay,
    and is still better changed.
Cannot tell: when where a range or a dryer on a two-pole breaker is plugged or wired is not recorded, or the
    face of the outlet it is plugged into. What is wired without an outlet is not judged.
Stands: on the outlet's line, each on its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.receptacles import plugged_into
from junctionary.house.model import Circuit, House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(HAZARD, (cite("nec-2023", "250.140"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  2+4: {rating: 30 A, guards: [gfci], feeds: dryer, says: "Utility room, dryer"}
[circuits/dryer.yaml]
circuit: dryer
name: Dryer
purpose: dryer
runs:
  - {id: b1, cable: 10/3 NM-B, from: main, to: D1}
[rooms/back.yaml]
room: back
name: Utility room
kind: utility
[boxes/back.yaml]
room: back
boxes:
  D1:
    devices: {r1: outlet}    #! frame-on-neutral
    makeup: end-of-run
    capped: [b1.bare]
[devices/all.yaml]
devices:
  outlet: {is: receptacle, face: 10-30R, rating: 30 A, gangs: 2}
"""

PASSES = (
    FAILS.replace("10-30R", "14-30R")
    .replace("    capped: [b1.bare]\n", "")
    .replace("    #! frame-on-neutral", "")
)

UNTOLD = PASSES.replace(
    "purpose: dryer\n", "purpose: dryer\nloads: [{id: dry, is: dryer, draws: 5 kW, volts: 240 V}]\n"
)

OLD_FACES = ("10-30R", "10-50R")
FOUR_WIRES_SINCE = 1996
MACHINES = ("range", "oven", "cooktop", "dryer")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each outlet with two hots, a neutral and no ground that is newer than the 1996 edition."""
    for device in house.devices.values():
        edition = house.boxes[device.box].edition
        if device.kind.face not in OLD_FACES or edition_year(edition) < FOUR_WIRES_SINCE:
            continue
        machines = [each.id for each in plugged_into(house, device)]
        yield Fault(
            place=device.place,
            about=(device.id, *device.circuits, *machines),
            found=f"{device.id} is a {device.kind.face}, which has no ground.",
            allowed="Since the 1996 edition, an outlet with a neutral and a ground, each of its own.",
            because="The machine's case is then joined to the neutral, and live when that comes loose.",
            do="Run a cable with a neutral and a ground, and put in an outlet and a cord with four wires.",
            edition=edition,
        )
    for circuit in house.circuits.values():
        if edition_year(circuit.edition) >= FOUR_WIRES_SINCE:
            yield from _outlets_untold(house, circuit)


def _outlets_untold(house: House, circuit: Circuit) -> Iterator[CannotTell]:
    both_legs = any(house.breakers[each].poles > 1 for each in circuit.breakers)
    for load in circuit.loads if both_legs else ():
        outlet = house.devices.get(str(load.plugged))
        if load.is_ not in MACHINES or load.wired is not None or (outlet and outlet.kind.face):
            continue
        about = (load.id, circuit.id, *circuit.breakers)
        if outlet is not None:
            yield CannotTell((outlet.id, *about), (f"the face of {outlet.id}",), outlet.place)
        elif load.plugged is None:
            yield CannotTell(about, (f"where {load.id} is plugged or wired",), circuit.place)
