"""The recorded loads that may run together draw more than the circuit's breaker.

Why it matters: the breaker opens in use, and what matters on the circuit goes dark with the rest; a breaker
    that is made to open often no longer guards as it should.
What to do: move a load to another circuit; or, if two of them never run together, say so in the record
    (`instead_of`).
Cannot tell: when no breaker is recorded, or its rating, or what a load draws, on which leg it is, or
    where the circuit may have cables and devices that are not recorded. A range counts by its demand.
    Where one plugged load alone is too much, one-cord-load-too-large speaks of it, and of a range
    range-circuit-too-small.
Stands: on the circuit's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps, headed
from junctionary.figures import Figures, PoleLoad
from junctionary.house.model import Circuit, House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(
    DEFECT, (cite("nec-2023", "210.23"), cite("nec-2023", "220.60"), cite("nec-2023", "220.55")), ROUGHED
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, feeds: counter, says: Kitchen counter}
[circuits/counter.yaml]
circuit: counter    #! circuit-overloaded
name: Kitchen counter
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: K1}
loads:
  - {id: kettle, is: other, name: Kettle, draws: 1500 W, plugged: K1.r1.top}
  - {id: grill, is: oven, name: Grill, draws: 1400 W, plugged: K1.r1.bottom}
[rooms/kitchen.yaml]
room: kitchen
name: Kitchen
kind: kitchen
[boxes/kitchen.yaml]
room: kitchen
boxes:
  K1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
"""

PASSES = FAILS.replace("K1.r1.bottom}", "K1.r1.bottom, instead_of: kettle}").replace(
    "    #! circuit-overloaded", ""
)

UNTOLD = PASSES.replace("draws: 1500 W, ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each branch circuit's load against its breaker, pole by pole."""
    for circuit in house.circuits.values():
        if figures.circuits[circuit.id].branch:
            yield from _judged(house, circuit, figures)


def _judged(house: House, circuit: Circuit, figures: Figures) -> Iterator[Fault | CannotTell]:
    loads = figures.loads[circuit.id]
    over = [each for each in loads.poles if each.rating_a is not None and each.least_a > each.rating_a]
    for pole in over:
        if not _said_elsewhere(pole, figures):
            yield _fault(house, circuit, pole)
    if over:
        return
    needs = [f"the rating of {each.breaker}" for each in loads.poles if each.rating_a is None]
    if not circuit.breakers:
        needs.append(f"which breaker feeds circuit {circuit.id}")
    needs += loads.lacks
    if needs:
        yield CannotTell((circuit.id, *circuit.breakers), tuple(dict.fromkeys(needs)), circuit.place)


def _said_elsewhere(pole: PoleLoad, figures: Figures) -> bool:
    """Whether one load alone explains it, of which a more particular check speaks."""
    alone = {each.draw.id for each in figures.cord_loads if each.over}
    ranges = {each.draw.id for each in figures.ranges if each.short}
    return any(
        each.id in ranges or (each.id in alone and each.amps.value is not None and each.amps.value > rating)
        for rating in ((pole.rating_a,) if pole.rating_a is not None else ())
        for each in pole.draws
    )


def _fault(house: House, circuit: Circuit, pole: PoleLoad) -> Fault:
    assert pole.rating_a is not None
    drawing = [each for each in pole.draws if each.amps.value]
    least = "at least " if pole.load.value is None else ""
    move = "Move a load to another circuit, or record which of them never run together."
    return Fault(
        place=circuit.place,
        about=(circuit.id, pole.breaker, *(each.id for each in drawing)),
        found=f"{headed(listed(tuple(each.name for each in drawing)))} draw {least}"
        f"{amps(pole.least_a)} together on {pole.breaker}.",
        allowed=f"At most the {amps(pole.rating_a)} of the breaker.",
        because="The breaker opens in use, and everything on the circuit goes dark.",
        do=move if len(drawing) > 1 else "Give it a circuit that carries it.",
        working=pole.load.steps,
        edition=circuit.edition,
    )
