"""A permit was never closed.

Why it matters: work of which nobody saw the end is a question at every sale and every claim, and what it
    covers may never have passed its last inspection.
What to do: ask the authority that gave it which inspections are still wanted, have them done, and write
    the day it was closed.
Cannot tell: when the record does not say which permits the work was done under (`permits: none` where there
    is none), or whether one is closed.
Stands: on the permit's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.permits import inspections_of, is_left_open
from junctionary.sources import cite

RULE = Rule(ADVICE, (cite("practice", "A permit is closed by its last inspection."),), ENERGISED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
permits:
  - {number: B-114, issued: 2026-03-02, covers: [den], closed: none}    #! permit-left-open
[rooms/den.yaml]
room: den
name: Den
kind: den
stage: energised
"""

PASSES = FAILS.replace("closed: none", "closed: 2026-07-20").replace("    #! permit-left-open", "")

UNTOLD = PASSES.replace(", closed: 2026-07-20", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each permit; what is under way may be open."""
    if house.record.permits is None:
        yield CannotTell(tuple(house.panels), ("which permits the work was done under",), house.record.place)
    for permit in house.record.permits or ():
        about = tuple(permit.covers or house.panels)
        if permit.closed is None:
            yield CannotTell(about, (f"whether permit {permit.number} is closed",), permit.place)
        elif is_left_open(house, permit):
            logged = inspections_of(house, permit)
            seen = ", ".join(f"{each.inspection} {each.result or 'not recorded'}" for each in logged)
            yield Fault(
                place=permit.place,
                about=about,
                found=f"Permit {permit.number} is open; inspected under it: {seen or 'nothing logged'}.",
                allowed="A permit is closed once all that it covers has passed.",
                because="Whoever buys or insures the house will ask for it.",
                do="Ask its authority what is still wanted, and write the day it is closed.",
            )
