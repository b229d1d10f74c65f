"""Two breakers share a neutral, and one can be switched off alone.

Why it matters: with one of them off the neutral still carries the other's current; whoever parts it
    then has up to 240 V on the loads, and a live end in his hand.
What to do: put in a two-pole breaker, or a listed handle tie that moves both handles.
Cannot tell: when only one breaker of the pair is recorded. A tie that is not written counts as none.
    Under editions before 2008 only a pair that meets on one yoke was asked to be tied; that is
    yoke-fed-twice-untied.
Stands: on the line of the first breaker.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import open_together
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.4(B)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, feeds: bench.black, says: "Bench, left"}    #! multiwire-untied
  3: {rating: 20 A, feeds: bench.red, says: "Bench, right"}
[circuits/bench.yaml]
circuit: bench
name: Bench
"""

PASSES = FAILS.replace("breakers:\n", "ties: [[1, 3]]\nbreakers:\n").replace("    #! multiwire-untied", "")

UNTOLD = PASSES.replace("""  3: {rating: 20 A, feeds: bench.red, says: "Bench, right"}\n""", "").replace(
    "ties: [[1, 3]]\n", ""
)

SINCE = 2008


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit of several breakers, by whether one handle moves all."""
    for circuit in house.circuits.values():
        if edition_year(circuit.edition) < SINCE:
            continue
        breakers = [house.breakers[each] for each in circuit.breakers]
        if len(breakers) == 1 and breakers[0].conductor is not None and breakers[0].poles == 1:
            needs = (f"which breaker feeds the other hot beside {circuit.id}.{breakers[0].conductor}",)
            yield CannotTell((circuit.id, breakers[0].id), needs, breakers[0].place)
        elif len(breakers) > 1 and not open_together(house, circuit.breakers):
            yield Fault(
                place=breakers[0].place,
                about=(circuit.id, *circuit.breakers),
                found=f"Breakers {listed(circuit.breakers)} share a neutral, and nothing ties their handles.",
                allowed="One handle, or tied handles, for all hots of a shared neutral.",
                because="With one off, the neutral still carries the other's current.",
                do="Put in a two-pole breaker, or a listed handle tie; until then switch both off together.",
                edition=circuit.edition,
            )
