"""The service of a house is rated below 100 A.

Why it matters: a range, a dryer and a water heater together are more than a smaller one gives; nothing can be
    added to such a house, and its main opens in use.
What to do: have the utility and a licensed electrician put in a service of 100 A or more.
Cannot tell: when neither the service's rating nor its main is recorded. The smaller of the two counts. A
    service whose panel was built before the 2008 edition is left alone; whether it carries the load
    has a check of its own.
Stands: on the line of the panel where the service is disconnected.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import HELD_SINCE
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.formulas.dwelling import amount
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "230.79(C)"),), ROUGHED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
floor_area: 600 ft2
service: {system: 120/240 V, rating: 60 A, disconnect: main, electrodes: [rod, rod]}
[panels/main.yaml]
panel: main    #! service-too-small
main: 60 A
rating: 100 A
spaces: 2
fed_by: service
bonded: true
breakers:
  1: {rating: 20 A, feeds: den, says: "Den, receptacles"}
  2: {rating: 20 A, feeds: up, says: "Loft, receptacles"}
[circuits/den.yaml]
circuit: den
name: Den receptacles
purpose: receptacles
[circuits/up.yaml]
circuit: up
name: Loft receptacles
purpose: receptacles
"""

PASSES = FAILS.replace("60 A", "100 A").replace("    #! service-too-small", "")

UNTOLD = PASSES.replace("rating: 100 A, disconnect", "disconnect").replace("main: 100 A\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The service's rating against the least for a house."""
    panel = house.panels.get(figures.service.panel or "")
    if panel is None or edition_year(panel.edition) < HELD_SINCE:
        return
    rating, least = figures.service.rating_a, amount("smallest dwelling service", "current")
    if rating is None:
        yield CannotTell((panel.id,), ("the rating of the service",), panel.place)
    elif rating < least:
        yield Fault(
            place=panel.place,
            about=(panel.id,),
            found=f"The service is rated {amps(rating)}.",
            allowed=f"At least {amps(least)} for a house.",
            because="It gives too little for the machines of a house, and nothing can be added to it.",
            do=f"Have a service of {amps(least)} or more put in.",
            edition=panel.edition,
        )
