"""Two single-pole GFCI or AFCI breakers share a neutral.

Why it matters: such a breaker compares what goes out on its hot with what comes back on its neutral. One
    that two of them share comes back through one of them only: they trip with the first load, and somebody
    puts in a breaker that guards nothing to have peace.
What to do: put in one two-pole breaker that guards both legs; or ordinary breakers with a tie, and the guard
    in the first box beyond which each leg has a neutral of its own.
Cannot tell: when what a breaker of such a pair guards against is not recorded.
Stands: on the line of the first breaker that guards.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "110.3(B)"),
        cite(
            "practice", "A shared neutral is guarded by one two-pole breaker, or beyond where its legs part."
        ),
    ),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [afci], feeds: bench.black, says: Bench}    #! shared-neutral-under-two-guards
  3: {rating: 20 A, guards: [afci], feeds: bench.red, says: "Bench, outer end"}
ties: [[1, 3]]
[circuits/bench.yaml]
circuit: bench
name: Bench
"""

PASSES = FAILS.replace("guards: [afci]", "guards: []").replace("    #! shared-neutral-under-two-guards", "")

UNTOLD = PASSES.replace("guards: [], ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit of several single-pole breakers, by what they guard against."""
    for circuit in house.circuits.values():
        breakers = [house.breakers[each] for each in circuit.breakers]
        if len(breakers) < 2 or any(each.poles > 1 for each in breakers):
            continue
        guarding = [each for each in breakers if each.guards]
        untold = [each for each in breakers if each.guards is None]
        if guarding:
            yield Fault(
                place=guarding[0].place,
                about=(circuit.id, *circuit.breakers),
                found=f"Breakers {listed(circuit.breakers)} share a neutral, and "
                f"{listed(tuple(each.id for each in guarding))} "
                f"{'guards' if len(guarding) == 1 else 'guard'} one pole each.",
                allowed="One two-pole breaker where what guards compares a shared neutral.",
                because="The shared neutral carries the other leg's current too, so they trip in use.",
                do="Put in one two-pole breaker that guards both, or guard each leg beyond where they part.",
                edition=circuit.edition,
            )
        elif untold:
            needs = tuple(f"what breaker {each.id} guards against" for each in untold)
            yield CannotTell((circuit.id, *circuit.breakers), needs, untold[0].place)
