"""A fault heats a wire beyond what its insulation stands before the breaker has cut it off.

Why it matters: near the panel a short circuit draws thousands of amperes. A thin wire, the ground of a
    large cable above all, may be spoilt by it though the breaker opens as it should.
What to do: put in a cable with larger conductors, or a larger ground; after a short circuit in this
    run, look at its insulation before it is used again.
Cannot tell: when the fault current at the service is not recorded and the wire might not stand the
    most there can be, or a cable, a length, the breaker or its rating is missing. The breaker is taken to
    cut the fault off within one cycle, 1/60 s (practice); its maker's let-through is not in the
    record. k is that of thermoplastic insulation in a cable. A breaker that does not open at once
    has a check of its own, and here says nothing. Faults are taken from a leg to the neutral or
    the ground in a box, not along the cable.
Stands: on the line of the run whose smallest conductor it is.
"""

from collections.abc import Iterator

from junctionary.checks.faults import unless_service
from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import CircuitFault, Figures, Heat
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import decimal

RULE = Rule(ADVICE, (cite("iec-60364-4-43", "Table 43A"), cite("iec-60364-5-54", "543.1.2")), ROUGHED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
service: {fault_level: {line_to_neutral: 9 kA, at: main}}
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, feeds: hall, says: "Hall, receptacle"}
[circuits/hall.yaml]
circuit: hall
name: Hall receptacle
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: H1, length: 5 ft}    #! fault-heat-over-wire
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("length: 5 ft", "length: 20 ft").replace("    #! fault-heat-over-wire", "")

UNTOLD = FAILS.replace("service: {fault_level: {line_to_neutral: 9 kA, at: main}}\n", "").replace(
    "    #! fault-heat-over-wire", ""
)


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit's hottest conductor, where the breaker opens at once."""
    untold = []
    for fault in figures.faults.values():
        heat = fault.heat
        if fault.at_once is False:
            continue
        if heat is not None and heat.fits is False and fault.pick_up.value is not None:
            yield _fault(house, fault, heat)
        else:
            needs = [*fault.lacks, *fault.pick_up.lacks]
            if heat is not None and heat.fits is not True:
                needs += heat.area.lacks
            untold.append((fault.circuit, needs))
    yield from unless_service(house, untold)


def _fault(house: House, fault: CircuitFault, heat: Heat) -> Fault:
    run = house.runs[heat.run]
    assert heat.area.value is not None
    return Fault(
        place=run.place,
        about=(run.id, fault.circuit, heat.at),
        found=f"A short circuit at {heat.at} wants {decimal(heat.area.value, 2)} mm² of wire, and the "
        f"{heat.wire} in run {run.id} has {decimal(heat.has, 2)} mm².",
        allowed=f"At most what {decimal(heat.has, 2)} mm² takes until the breaker has opened.",
        because="The insulation is spoilt by the heat of one short circuit.",
        do=f"Put larger wire in run {run.id}, and look it over after any short circuit there.",
        working=heat.area.steps,
        edition=house.circuits[fault.circuit].edition,
    )
