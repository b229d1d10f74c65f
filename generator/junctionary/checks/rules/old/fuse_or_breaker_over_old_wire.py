"""A fuse or breaker is rated above what old wire, whose size is only assumed, may carry.

Why it matters: fuses were swapped for larger ones for decades, and the wire in the wall did not grow; it
    overheats without a sign.
What to do: look at the wire where it is landed, and record its size; until then put in the fuse or breaker
    that the assumed size allows.
Cannot tell: when the rating of the fuse or breaker, or the cable itself, is not recorded.
    Wire that was seen or measured is judged by breaker-outrates-wire.
Stands: on the line of the run that limits the circuit.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.inferred import is_inferred
from junctionary.figures import Figures, WireLimit
from junctionary.formulas.sums import plain
from junctionary.house.model import Breaker, Circuit, House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(HAZARD, (cite("nec-2023", "240.4"), cite("nec-2023", "240.4(D)")), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
kind: fuse-panel
spaces: 8
breakers:
  1: {kind: plug-fuse, rating: 30 A, guards: [], feeds: hall, says: "Hall"}
[circuits/hall.yaml]
circuit: hall
name: Hall
built_to: nec-1956
runs:
  - id: h1    #! fuse-or-breaker-over-old-wire
    cable: 14/2 NM no ground
    from: main
    to: H1
    evidence: assumed
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
built_to: nec-1956
[boxes/hall.yaml]
room: hall
boxes:
  H1: {devices: {r1: two-slot}, makeup: end-of-run}
[devices/all.yaml]
devices:
  two-slot: {is: receptacle, face: 1-15R, rating: 15 A}
breakers:
  plug-fuse: {}
"""

PASSES = FAILS.replace("rating: 30 A", "rating: 15 A").replace("    #! fuse-or-breaker-over-old-wire", "")

UNTOLD = PASSES.replace("rating: 15 A, guards", "guards")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each branch circuit with a run of which the size is assumed."""
    for circuit in house.circuits.values():
        limit = figures.circuits[circuit.id]
        inferred = [each for each in limit.wires if is_inferred(house, each.name)]
        if not limit.branch or not inferred:
            continue
        breakers = [house.breakers[each] for each in circuit.breakers]
        needs = [f"the rating of {each.id}" for each in breakers if not isinstance(each.rating, Quantity)]
        needs += [lack for each in inferred for lack in each.breaker.lacks]
        rated = [each for each in breakers if isinstance(each.rating, Quantity)]
        found = [
            _fault(circuit, breaker, wire)
            for breaker in rated
            for wire in inferred
            if _outrates(breaker, wire)
        ]
        if found:
            yield found[0]
        elif needs:
            yield CannotTell((circuit.id, *circuit.breakers), tuple(dict.fromkeys(needs)), circuit.place)


def _outrates(breaker: Breaker, wire: WireLimit) -> bool:
    most = wire.without_hole.value
    return most is not None and isinstance(breaker.rating, Quantity) and breaker.rating.to("A") > most


def _fault(circuit: Circuit, breaker: Breaker, wire: WireLimit) -> Fault:
    assert wire.without_hole.value is not None
    allowed = f"{plain(wire.without_hole.value)} A"
    return Fault(
        place=wire.place,
        about=(wire.name, circuit.id, breaker.id),
        found=f"The fuse or breaker {breaker.id} is rated {breaker.rating}, "
        f"and {wire.called} is assumed to be {wire.what}.",
        allowed=f"At most {allowed} for that size.",
        because="The wire in the wall overheats without a sign.",
        do=f"Look at the wire where it is landed and record its size; until then, {allowed}.",
        working=wire.without_hole.steps,
        edition=wire.edition,
    )
