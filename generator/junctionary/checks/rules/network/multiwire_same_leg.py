"""Both hots of a shared neutral are on one leg.

Why it matters: on opposite legs the neutral carries the difference of the two currents; on one leg it
    carries their sum, up to twice what its wire may carry, and no breaker notices.
What to do: with the panel's main off and its bus proved dead, move one of the breakers to a space on the
    other leg, with its partner, and tie the two.
Cannot tell: when the leg of a space is unknown, or when only one breaker of the pair is recorded. Spaces
    side by side in a row are on one leg; those above each other are not, unless the panel says otherwise.
Stands: on the later breaker's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Breaker, Circuit, House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "Article 100"),
        cite(
            "practice",
            "The hots of a shared neutral stand on opposite legs, so that it carries their difference.",
        ),
    ),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, feeds: bench.black, says: "Bench, left"}
  2: {rating: 20 A, feeds: bench.red, says: "Bench, right"}    #! multiwire-same-leg
ties: [[1, 2]]
[circuits/bench.yaml]
circuit: bench
name: Bench
"""

PASSES = (
    FAILS.replace("  2: {", "  3: {").replace("[[1, 2]]", "[[1, 3]]").replace("    #! multiwire-same-leg", "")
)

ALONE = """  2: {rating: 20 A, feeds: bench.red, says: "Bench, right"}    #! multiwire-same-leg
ties: [[1, 2]]
"""

UNTOLD = FAILS.replace(ALONE, "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit of several breakers, by the legs of their poles."""
    for circuit in house.circuits.values():
        breakers = [house.breakers[each] for each in circuit.breakers]
        if len(breakers) == 1 and breakers[0].conductor is not None and breakers[0].poles == 1:
            needs = (f"which breaker feeds the other hot beside {circuit.id}.{breakers[0].conductor}",)
            yield CannotTell((circuit.id, breakers[0].id), needs, breakers[0].place)
        if len(breakers) < 2:
            continue
        legs: dict[str, Breaker] = {}
        for breaker in breakers:
            for leg in breaker.legs:
                if leg is None:
                    yield CannotTell(
                        (circuit.id, breaker.id), (f"which leg {breaker.id} is on",), breaker.place
                    )
                elif leg in legs and legs[leg] is not breaker:
                    yield _told(circuit, legs[leg], breaker, leg)
                else:
                    legs[leg] = breaker


def _told(circuit: Circuit, first: Breaker, second: Breaker, leg: str) -> Fault:
    return Fault(
        place=second.place,
        about=(circuit.id, first.id, second.id),
        found=f"Breakers {first.id} and {second.id} share a neutral, and both are on leg {leg}.",
        allowed="Breakers that share a neutral on opposite legs.",
        because="Its neutral carries the sum of both currents, and no breaker guards it.",
        do=f"Move {second.id} to a space on the other leg, beside {first.id}, and tie the two.",
        edition=circuit.edition,
    )
