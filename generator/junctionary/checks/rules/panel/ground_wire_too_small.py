"""The ground of a cable is smaller than the breaker ahead of it asks for.

Why it matters: in a fault the ground carries what the breaker lets through until it opens. Too small, it
    lets through too little, or burns off and leaves the metal live.
What to do: replace the cable with one that has the right ground, or put in a smaller breaker. Where the
    circuit was given larger wires than it needs, its ground must have grown with them.
Cannot tell: when the cable or the breaker's rating is not recorded, or the insulation where the wires are
    larger than the breaker asks. A ground as large as the circuit's own wires always does. The ground in
    a cable told by two numbers is taken as such cable is made; armor and metal conduit are not sized
    here, and a circuit without a ground is told of elsewhere.
Stands: on the run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures, RunGround
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "250.122"),
        cite("nec-2023", "250.122(A)"),
        cite("nec-2023", "250.122(B)"),
    ),
    ROUGHED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1+3: {rating: 50 A, feeds: oven, says: Wall oven}
[circuits/oven.yaml]
circuit: oven
name: Wall oven
runs:
  - {id: o1, cable: 6-6-6-12 SER, from: main, to: none}    #! ground-wire-too-small
"""

PASSES = FAILS.replace("6-6-6-12", "6-6-6-10").replace("    #! ground-wire-too-small", "")

UNTOLD = PASSES.replace("rating: 50 A", "rating: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run that has a wire for its ground."""
    for ground in figures.grounds.values():
        conduit = ground.made == "unknown" and bool(house.runs[ground.run].conductors)
        if ground.lacks and not conduit:
            yield CannotTell((ground.run, ground.circuit), ground.lacks, ground.place)
        elif ground.suits is False:
            yield _fault(house, ground)


def _fault(house: House, ground: RunGround) -> Fault:
    assert ground.wire is not None
    assert ground.needs is not None
    breakers = [each for each in house.breakers.values() if each.feeds == ground.circuit]
    ratings = " and ".join(dict.fromkeys(str(each.rating) for each in breakers))
    return Fault(
        place=ground.place,
        about=(ground.run, ground.circuit, *(each.id for each in breakers)),
        found=f"The ground of run {ground.run} is {ground.wire.size} {ground.wire.metal}, behind {ratings}.",
        allowed=f"At least {ground.needs.size} {ground.wire.metal} for run {ground.run}.",
        because="In a fault it passes too little current to trip the breaker at once, or burns off.",
        do=f"Replace run {ground.run} with a cable whose ground is at least {ground.needs.size}.",
        working=ground.needs.worked.steps,
        edition=ground.edition,
    )
