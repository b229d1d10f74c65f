"""The calculated load is more than the service may supply, by every method the code gives.

Why it matters: the main breaker opens on the coldest evening, or the service conductors and the
    panel run hot for years without anybody noticing.
What to do: take load off, let two loads share by an interlock or a controller so that they never
    run together, or have the utility and an electrician put in a larger service.
Cannot tell: when the service's rating, the floor area, the purpose of a circuit, what a breaker
    feeds or what a load draws is not recorded, and the loads that are recorded fit. The standard
    method and the optional one are both worked out, and for a house older than its reference edition that
    of an existing dwelling; one that comes out small enough is enough, but the optional one only for a
    service of 100 A or more with two legs. The loads sheet shows each.
    A load is too large for certain as soon as what is recorded already is.
Stands: on the line of the panel where the service is disconnected.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.formulas.dwelling import DemandLoad
from junctionary.formulas.sums import plain
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import decimal

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "220.45"),
        cite("nec-2023", "220.82(B)"),
        cite("nec-2023", "220.82(C)"),
        cite("nec-2023", "230.79(C)"),
    ),
    ROUGHED,
)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
floor_area: 1500 ft2
service: {system: 120/240 V, rating: 100 A, disconnect: main}
[panels/main.yaml]
panel: main    #! service-overloaded
main: 100 A
spaces: 8
fed_by: service
breakers:
  1+3: {rating: 60 A, feeds: heat, says: "Heat, cellar"}
  2+4: {rating: 60 A, feeds: car, says: "Car charger, drive"}
  5: {rating: 20 A, feeds: den, says: "Den, receptacles"}
[circuits/heat.yaml]
circuit: heat
name: Electric furnace
purpose: heating
loads: [{id: furnace, is: furnace, draws: 18 kW, volts: 240 V, fastened: true}]
[circuits/car.yaml]
circuit: car
name: Car charger
purpose: car-charger
loads: [{id: car-1, is: car-charger, draws: 40 A, volts: 240 V, fastened: true}]
[circuits/den.yaml]
circuit: den
name: Den receptacles
purpose: receptacles
"""

PASSES = FAILS.replace("draws: 18 kW", "draws: 9 kW").replace("    #! service-overloaded", "")

UNTOLD = PASSES.replace("floor_area: 1500 ft2\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The service's rating against the load by each method."""
    service = figures.service
    if service.passes is True:
        return
    panel = house.panels.get(service.panel or "")
    place = panel.place if panel else house.record.place
    about = (panel.id,) if panel else tuple(house.panels) or ("service",)
    if service.passes is None or service.rating_a is None:
        needs = [] if service.rating_a is not None else ["the rating of the service"]
        needs += [lack for each in service.methods for lack in each.amps.lacks]
        yield CannotTell(about, tuple(dict.fromkeys(needs)), place)
        return
    smallest = min(service.methods, key=lambda each: each.least_a)
    yield Fault(
        place=place,
        about=about,
        found=f"The service is rated {plain(service.rating_a)} A, and the load is "
        f"{'; '.join(map(_said, service.methods))}.",
        allowed=f"At most {plain(service.rating_a)} A by one of these methods.",
        because="The main opens when the house needs it most, or the service runs hot.",
        do="Take load off, keep two loads from running together, or have a larger service put in.",
        working=(*smallest.va.steps, *smallest.amps.steps),
        edition=service.edition,
    )


def _said(load: DemandLoad) -> str:
    least = "at least " if load.amps.lacks else ""
    return f"{least}{decimal(load.least_a, 0)} A by the {load.method}"
