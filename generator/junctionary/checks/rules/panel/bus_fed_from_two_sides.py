"""The main and the breaker of a solar plant or a battery let more into a panel's bus than it is made for.

Why it matters: the sun's current and the utility's both flow into the bus, and its circuits together may draw
    the sum of them. Neither breaker sees that sum, and the bus overheats between the two.
What to do: have the plant connected ahead of the main, or a panel with a larger bus or a smaller main put in,
    if the load allows it.
Cannot tell: when the panel's rating, its main, or the rating of the breaker by which the source enters is not
    recorded. Held is the sum of main and source against 120 % of the bus, with the source at the end of the
    bus away from the main, which is not looked at (from memory). Generators, and what an interlock keeps
    from being on together with the main, are left alone.
Stands: on the line of the breaker by which the source enters, of several the first.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.figures.bus import shared_buses
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "705.12"),), ROUGHED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
sources:
  - {id: sun, is: solar, enters: main/2+4, without_utility: stops}
[panels/main.yaml]
panel: main
rating: 100 A
main: 100 A
spaces: 8
fed_by: service
bonded: true
breakers:
  2+4: {rating: 40 A, feeds: sun, says: Solar inverter}    #! bus-fed-from-two-sides
"""

PASSES = FAILS.replace("rating: 40 A", "rating: 20 A").replace("    #! bus-fed-from-two-sides", "")

UNTOLD = PASSES.replace("rating: 100 A\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each bus that a source feeds beside its main."""
    for bus in shared_buses(house):
        first, names = bus.breakers[0], tuple(each.id for each in bus.breakers)
        about = (*names, bus.panel)
        if bus.lacks:
            yield CannotTell(about, bus.lacks, first.place)
        elif bus.enters_a > bus.bears_a:
            yield Fault(
                place=first.place,
                about=about,
                found=f"The main of panel {bus.panel} and {listed(names)} let in {amps(bus.enters_a)}.",
                allowed=f"At most {amps(bus.bears_a)}, which is 120 % of that bus.",
                because="The bus overheats between the two, and neither breaker sees it.",
                do="Have the source connected ahead of the main, or a larger panel or a smaller main put in.",
                working=bus.steps,
                edition=house.panels[bus.panel].edition,
            )
