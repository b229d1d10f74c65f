"""A fault at the end of a circuit may not open its breaker at once.

Why it matters: where the wire is long and thin it holds the current of a short circuit back. Below
    its pick-up the breaker waits for its thermal part: for seconds the fault goes on arcing, and
    metal that ought to be dead stays live. It is no breach of the code, which sets no time.
What to do: put in larger wire, its ground with it, for the run that holds back most, bring the circuit
    in from a panel that is nearer, or put in a breaker listed to open at a smaller current.
Cannot tell: when the fault current at the service is not recorded (fault_level, or transformer and
    drop), or a length, a cable, a breaker or its rating; of a fuse that does not say. A breaker
    that records no trips_at_once is taken to open at once from 10 times its rating (practice).
    Resistances are those at 75 °C, and all impedances are added as plain numbers: the true
    current is somewhat larger.
Stands: on the line of the run that holds the current back most.
"""

from collections.abc import Iterator

from junctionary.checks.faults import unless_service
from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import CircuitFault, Figures
from junctionary.formulas.sums import plain
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import decimal

RULE = Rule(
    ADVICE,
    (
        cite("practice", "A breaker of a dwelling opens at once from about 10 times its rating"),
        cite("iec-60364-4-41", "411.4"),
    ),
    ROUGHED,
)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
service: {fault_level: {line_to_neutral: 5 kA, at: main}}
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, feeds: gate, says: "Gate, receptacle"}
[circuits/gate.yaml]
circuit: gate
name: Gate receptacle
runs:
  - {id: g1, cable: 12/2 UF-B, from: main, to: G1, length: 160 ft}    #! breaker-slow-at-end
[rooms/drive.yaml]
room: drive
name: Drive
kind: outdoors
[boxes/drive.yaml]
room: drive
boxes:
  G1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
"""

PASSES = FAILS.replace("12/2", "10/2").replace("160 ft", "120 ft").replace("    #! breaker-slow-at-end", "")

UNTOLD = PASSES.replace("service: {fault_level: {line_to_neutral: 5 kA, at: main}}\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit's smallest fault against its breaker's pick-up."""
    untold = []
    for fault in figures.faults.values():
        if fault.at_once is False:
            yield _fault(house, fault)
        elif fault.at_once is None:
            needs = [*fault.lacks, *fault.pick_up.lacks]
            needs += [lack for end in fault.boxes.values() if end.least for lack in end.least.lacks]
            untold.append((fault.circuit, needs))
    yield from unless_service(house, untold)


def _fault(house: House, fault: CircuitFault) -> Fault:
    worst, circuit = fault.worst, house.circuits[fault.circuit]
    assert worst is not None
    assert worst.at_most is not None
    assert fault.pick_up.value is not None
    run = house.runs[worst.most_in] if worst.most_in else None
    known = worst.least is not None and worst.least.value is not None
    flows = f"{'about' if known else 'at most'} {decimal(worst.at_most, 0)} A"
    larger = f"Put larger wire, ground and all, in run {run.id}" if run else "Put in larger wire"
    about = (run.id if run else None, circuit.id, fault.breaker, worst.at)
    return Fault(
        place=run.place if run else circuit.place,
        about=tuple(each for each in about if each is not None),
        found=f"A short circuit at {worst.at} lets through {flows}.",
        allowed=f"At least {plain(fault.pick_up.value)} A, from where {fault.breaker} opens at once.",
        because="Below that the breaker waits for seconds while the fault arcs.",
        do=f"{larger}, or put in a breaker that is listed to open at once at less.",
        working=(*fault.pick_up.steps, *(worst.least.steps if worst.least else ())),
        edition=circuit.edition,
    )
