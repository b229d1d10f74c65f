"""Cables share a sealed hole, and a breaker is too large for what they may carry there.

Why it matters: cables packed into a foamed or caulked hole warm one another. Each may carry less
    there than alone, and its breaker does not know it.
What to do: give the cables holes of their own while the wall is open, or leave no more than two
    in one; or put in the smaller breaker.
Cannot tell: when a cable in the hole, the breaker of one or its rating is not recorded. A hole that
    nobody recorded is not seen.
Stands: on the line of each run whose breaker becomes too large.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures, WireLimit
from junctionary.formulas.sums import plain
from junctionary.house.model import Circuit, House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(HAZARD, (cite("nec-2023", "334.80"), cite("nec-2023", "310.15(C)(1)")), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, feeds: one, says: Workbench receptacle}
  2: {rating: 20 A, feeds: two, says: Freezer}
  3: {rating: 20 A, feeds: six, says: Door opener}
  5: {rating: 15 A, feeds: five, says: Garage lights}
  6: {rating: 15 A, feeds: four, says: Yard lights}
[circuits/one.yaml]
circuit: one
name: Workbench
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: G1}    #! bundle-in-sealed-hole
[circuits/two.yaml]
circuit: two
name: Freezer
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: G1}    #! bundle-in-sealed-hole
[circuits/six.yaml]
circuit: six
name: Door opener
runs:
  - {id: c1, cable: 12/2 NM-B, from: main, to: G1}    #! bundle-in-sealed-hole
[circuits/four.yaml]
circuit: four
name: Yard lights
runs:
  - {id: d1, cable: 14/2 NM-B, from: main, to: G1}
[circuits/five.yaml]
circuit: five
name: Garage lights
runs:
  - {id: e1, cable: 14/2 NM-B, from: main, to: G1}
[rooms/garage.yaml]
room: garage
name: Garage
kind: garage
bundles:
  - {id: hole-1, is: sealed-hole, with: foam, runs: [a1, b1, c1, d1, e1]}
[boxes/garage.yaml]
room: garage
boxes:
  G1: {capped: [a1, b1, c1, d1, e1]}
"""

PASSES = FAILS.replace("runs: [a1, b1, c1, d1, e1]}", "runs: [a1, b1]}").replace(
    "    #! bundle-in-sealed-hole", ""
)

UNTOLD = PASSES.replace("runs: [a1, b1]}", "runs: [a1, b1, c1]}").replace(
    "c1, cable: 12/2 NM-B", "c1, cable: unknown"
)


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run in a sealed hole: its breaker with the hole, where it would do without."""
    for circuit in house.circuits.values():
        limit = figures.circuits[circuit.id]
        for wire in limit.wires if limit.branch else ():
            if wire.hole is not None:
                yield from _judged(house, circuit, wire)


def _judged(house: House, circuit: Circuit, wire: WireLimit) -> Iterator[Fault | CannotTell]:
    about = (wire.name, circuit.id, *circuit.breakers)
    ratings = {each: house.breakers[each].rating for each in circuit.breakers}
    rated = [each for each in ratings.values() if isinstance(each, Quantity)]
    needs = [f"the rating of {each}" for each, said in ratings.items() if not isinstance(said, Quantity)]
    if not ratings:
        needs.append(f"which breaker feeds circuit {circuit.id}")
    rating = max(rated, default=None)
    alone, here = wire.without_hole.value, wire.breaker.value
    if rating is not None and alone is not None and alone < rating.to("A"):
        return  # Too small without the hole: breaker-outrates-wire speaks.
    if rating is not None and here is not None and here < rating.to("A"):
        yield Fault(
            place=wire.place,
            about=about,
            found=f"Run {wire.name}, {wire.what} on {rating}, lies in sealed hole {wire.hole}.",
            allowed=f"At most {plain(here)} A in this hole.",
            because="Cables in a sealed hole warm one another and cannot shed the heat.",
            do=f"Give {wire.name} another hole, or put in a {plain(here)} A breaker.",
            working=wire.breaker.steps,
            edition=wire.edition,
        )
    elif needs or here is None:
        lacks = (*needs, *wire.breaker.lacks)
        yield CannotTell((wire.name, circuit.id), tuple(dict.fromkeys(lacks)), wire.place)
