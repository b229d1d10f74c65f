"""The clear space before a panel is smaller than somebody needs to work there.

Why it matters: whoever works in a live panel with a shelf at their back cannot get away from it, and in
    an emergency nobody reaches the main in time.
What to do: clear what stands there and keep it clear; it is no place for storage. Where a wall or a
    ceiling is in the way, the panel must move.
Cannot tell: when the width, depth or height kept clear is not recorded. The width counted is at least
    that of a panel of 30 in, as the record does not hold its size. A panel of 200 A or less that is built
    to an edition before the house's may stand where the ceiling is low, as in an existing dwelling.
Stands: on the panel's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import ClearSide, Figures
from junctionary.house.model import House, Panel
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "110.26(A)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main    #! working-space-short
spaces: 8
clear: {width: 30 in, depth: 28 in, height: 6 ft 6 in}
"""

PASSES = FAILS.replace("depth: 28 in", "depth: 3 ft").replace("    #! working-space-short", "")

UNTOLD = PASSES.replace("depth: 3 ft, ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The space before each panel, side by side."""
    for panel in house.panels.values():
        sides = figures.panels[panel.id].sides
        short = [each for each in sides if each.stands == "short"]
        if short:
            yield _fault(panel, short)
        elif needs := tuple(lack for each in sides for lack in each.lacks):
            yield CannotTell((panel.id,), needs, panel.place)


def _fault(panel: Panel, short: list[ClearSide]) -> Fault:
    found = listed(tuple(f"{each.has} of {each.name}" for each in short))
    least = listed(tuple(f"{each.least} of {each.name}" for each in short))
    return Fault(
        place=panel.place,
        about=(panel.id,),
        found=f"Only {found} is kept clear before panel {panel.id}.",
        allowed=f"At least {least}.",
        because="Whoever works there cannot get away from live parts, and nobody reaches the main in time.",
        do=f"Clear the space before panel {panel.id} and keep it clear, or have the panel moved.",
        edition=panel.edition,
    )
