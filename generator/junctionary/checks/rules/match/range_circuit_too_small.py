"""A household range of 8-3/4 kW or more is on a circuit of less than 40 A.

Why it matters: with several of its elements on it draws more than the breaker lets through, for an hour at
    a time; the breaker opens in the middle of a meal, and the cable runs hot before it does.
What to do: give it a circuit of at least 40 A, with wire and receptacle to match.
Cannot tell: when what the range draws, or its breaker's rating, is not recorded.
Stands: on the breaker's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures, RangeCircuit
from junctionary.formulas.sums import plain
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.19(C)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  2+4: {rating: 30 A, feeds: range, says: Range}    #! range-circuit-too-small
[circuits/range.yaml]
circuit: range
name: Range
purpose: range
loads:
  - {id: cooker, is: range, draws: 10 kW, volts: 240 V}
"""

PASSES = FAILS.replace("rating: 30 A", "rating: 40 A").replace("    #! range-circuit-too-small", "")

UNTOLD = PASSES.replace("draws: 10 kW, ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each range against the breaker that feeds it."""
    for each in figures.ranges:
        lacks = each.least.lacks if each.least is not None else ()
        about = (each.breaker, each.draw.id)
        if each.short:
            yield _fault(house, each)
        elif lacks:
            yield CannotTell(about, lacks, each.draw.place)
        elif each.least is not None and each.rating_a is None:
            yield CannotTell(about, (f"the rating of {each.breaker}",), house.breakers[each.breaker].place)


def _fault(house: House, found: RangeCircuit) -> Fault:
    assert found.rating_a is not None
    assert found.least is not None
    assert found.least.value is not None
    assert found.draw.volt_amps.value is not None
    circuit = house.circuits[found.draw.circuit or ""]
    return Fault(
        place=house.breakers[found.breaker].place,
        about=(found.breaker, circuit.id, found.draw.id),
        found=f"Breaker {found.breaker} is rated {amps(found.rating_a)} and feeds a range of "
        f"{plain(found.draw.volt_amps.value / 1000)} kW.",
        allowed=f"At least {amps(found.least.value)} for a range of 8-3/4 kW or more.",
        because="With several elements on it draws more than that, and the breaker opens.",
        do=f"Put it on a circuit of {amps(found.least.value)} or more, with wire and receptacle to match.",
        working=found.least.steps,
        edition=circuit.edition,
    )
