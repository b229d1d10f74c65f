"""A space of a panel stands open, with neither a breaker nor a filler plate in it.

Why it matters: behind the hole are bars at full voltage that no breaker here switches off. A child's finger,
    a screwdriver or a mouse reaches them, and an arc inside comes out.
What to do: snap in a filler plate that is made for this panel; until then keep the door shut and everybody
    away.
Cannot tell: when a space is recorded neither as a breaker nor as `blank`, `unused` or `open`.
Stands: on the panel's line, one finding a panel.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ENERGISED, HAZARD, CannotTell, Fault, Rule
from junctionary.checks.purposes import untold_spaces
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "408.7"),), ENERGISED)

FAILS = """
[panels/main.yaml]
panel: main    #! panel-space-open
spaces: 2
breakers:
  1: {rating: 15 A, feeds: den, says: "Den, receptacles"}
  2: open
[circuits/den.yaml]
circuit: den
name: Den receptacles
"""

PASSES = FAILS.replace("2: open", "2: blank").replace("    #! panel-space-open", "")

UNTOLD = PASSES.replace("  2: blank\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each panel by what is in its spaces."""
    for panel in house.panels.values():
        holes = tuple(space for space, state in panel.fillers.items() if state == "open")
        if holes:
            yield Fault(
                place=panel.place,
                about=(panel.id,),
                found=f"Space {listed(holes)} of panel {panel.id} is open."
                if len(holes) == 1
                else f"Spaces {listed(holes)} of panel {panel.id} are open.",
                allowed="A breaker or a filler plate in every space.",
                because="Behind it are live bars that a finger or a tool reaches.",
                do="Put in filler plates made for this panel; until then keep its door shut.",
                edition=panel.edition,
            )
        elif untold := untold_spaces(panel):
            needs = f"what is in spaces {', '.join(map(str, untold))} of panel {panel.id}"
            yield CannotTell((panel.id,), (needs,), panel.place)
