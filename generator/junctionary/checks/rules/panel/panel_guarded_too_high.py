"""A panel is guarded by a breaker above what the panel is rated for.

Why it matters: the bars of a panel carry all that its circuits draw together. Ahead of them only the main,
    or the breaker of the feeder, opens; where that is larger than the panel, they overheat and nothing opens.
What to do: put in a main or a feeder breaker of no more than the panel's rating, which its label gives, and
    see that the load fits it; or put in a larger panel.
Cannot tell: when the panel's rating is not recorded, or neither its main nor the breaker of its feeder
    is, or what feeds a panel that has no main. The smaller of the two guards it. A panel that the service
    feeds, with no main of its own, is not judged. From memory.
Stands: on the panel's line.
"""

from collections.abc import Iterator
from fractions import Fraction

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.house.model import House, Panel
from junctionary.house.network import Network, is_service_panel
from junctionary.records.values import NONE
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(HAZARD, (cite("nec-2023", "408.36"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
rating: 200 A
main: 200 A
spaces: 8
fed_by: service
bonded: true
breakers:
  1+3: {rating: 100 A, feeds: to-attic, says: Attic panel}
[panels/attic.yaml]
panel: attic    #! panel-guarded-too-high
rating: 60 A
main: none
spaces: 6
fed_by: to-attic
bonded: false
[circuits/to-attic.yaml]
circuit: to-attic
name: Feeder to the attic
purpose: feeder
runs:
  - {id: f1, cable: 2-2-2-4 SER copper, from: main, to: attic}
"""

PASSES = FAILS.replace("rating: 60 A", "rating: 100 A").replace("    #! panel-guarded-too-high", "")

UNTOLD = PASSES.replace("rating: 100 A\nmain: none", "main: none")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each panel by the smaller of its main and its feeder's breaker."""
    for panel in house.panels.values():
        feeder = house.circuits.get(panel.feeder or "")
        feeding = feeder.breakers if feeder is not None else ()
        unfed = panel.record.main is NONE and not feeding
        if unfed and is_service_panel(house, panel):
            continue
        guards = dict(_guards(house, panel, feeding))
        rating = panel.record.rating
        least = min(guards, key=lambda each: guards[each], default=None)
        if isinstance(rating, Quantity) and least is not None and guards[least] <= rating.to("A"):
            continue
        needs = [] if isinstance(rating, Quantity) else [f"the rating of panel {panel.id}"]
        needs += [f"which breaker feeds panel {panel.id}"] if unfed else []
        needs += [
            f"the rating of {each}"
            for each in feeding
            if not isinstance(house.breakers[each].rating, Quantity)
        ]
        if panel.record.main is not NONE and not isinstance(panel.record.main, Quantity):
            needs.append(f"the main of panel {panel.id}, or that it has none")
        if needs or least is None or not isinstance(rating, Quantity):
            yield CannotTell((panel.id, *feeding), tuple(needs), panel.place)
            continue
        yield Fault(
            place=panel.place,
            about=(panel.id, *feeding),
            found=f"Panel {panel.id} is rated {amps(rating.to('A'))}, and {least} ahead of it "
            f"is {amps(guards[least])}.",
            allowed=f"At most {amps(rating.to('A'))} ahead of that panel's bars.",
            because="Its bars overheat before anything opens.",
            do=f"Have a breaker of {amps(rating.to('A'))} or less put in ahead of it, or a larger panel.",
            edition=panel.edition,
        )


def _guards(house: House, panel: Panel, feeding: tuple[str, ...]) -> Iterator[tuple[str, Fraction]]:
    if isinstance(panel.record.main, Quantity):
        yield "the main", panel.record.main.to("A")
    for each in feeding:
        rating = house.breakers[each].rating
        if isinstance(rating, Quantity):
            yield each, rating.to("A")
