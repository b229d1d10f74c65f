"""A light hangs on a circuit of more than 20 A.

Why it matters: a lamp's wires and its holder are thin. A short in them on a large breaker burns them through
    before it opens, and a switch of 15 A stands in the way of all that it lets through.
What to do: feed the light from a circuit of 15 or 20 A. A smaller breaker is a remedy only where nothing
    larger hangs on the circuit.
Cannot tell: when the rating of a breaker that feeds a light is not recorded.
    A fan counts where it has a lead for a light. From memory.
Stands: on the light's line, each on its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.figures.places import SMALL_A, gives_light, is_125_volt
from junctionary.figures.receptacles import circuits_of
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(DEFECT, (cite("nec-2023", "210.23(C)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 30 A, guards: [afci, gfci], feeds: attic, says: "Attic light"}
[circuits/attic.yaml]
circuit: attic
name: Attic light
purpose: lighting
runs:
  - {id: b1, cable: 10/2 NM-B, from: main, to: D1}
[rooms/attic.yaml]
room: attic
name: Attic
kind: attic
[boxes/attic.yaml]
room: attic
boxes:
  D1:
    devices: {f1: lamp}    #! light-on-large-circuit
    makeup: end-of-run
[devices/all.yaml]
devices:
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("rating: 30 A", "rating: 20 A").replace("    #! light-on-large-circuit", "")

UNTOLD = PASSES.replace("rating: 20 A", "rating: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each light by the breakers of the circuits that feed it."""
    for device in house.devices.values():
        if not gives_light(device.kind) or not is_125_volt(device.kind):
            continue
        for circuit in (
            house.circuits[each] for each in circuits_of(house, device) if each in house.circuits
        ):
            breakers = [house.breakers[each] for each in circuit.breakers]
            unrated = [each.id for each in breakers if not isinstance(each.rating, Quantity)]
            large = [
                each
                for each in breakers
                if isinstance(each.rating, Quantity) and each.rating.to("A") > SMALL_A
            ]
            about = (device.id, circuit.id, *circuit.breakers)
            if large and isinstance(large[0].rating, Quantity):
                yield Fault(
                    place=device.place,
                    about=about,
                    found=f"{device.id} is a light, and {large[0].id}, which feeds it, "
                    f"is of {amps(large[0].rating.to('A'))}.",
                    allowed="In a dwelling, lights on circuits of 20 A or less.",
                    because="A short in the lamp's thin wires burns them through before it opens.",
                    do="Feed the light from a circuit of 15 or 20 A.",
                    edition=house.boxes[device.box].edition,
                )
            elif unrated:
                needs = tuple(f"the rating of {each}" for each in unrated)
                yield CannotTell(about, needs, device.place)
