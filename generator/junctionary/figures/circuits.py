"""The largest breaker each circuit may have, and the run that limits it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from junctionary.figures.gaps import unseen_on
from junctionary.figures.wire import WireLimit, pigtail_limit
from junctionary.formulas.worked import Worked, lacking
from junctionary.house.model import Circuit, House

NO_BRANCH_CIRCUITS = ("feeder", "source")
"""What hangs on a feeder is counted circuit by circuit, and a source is no load."""


@dataclass(frozen=True, slots=True)
class CircuitLimit:
    """The largest breaker that may guard every wire of a circuit, in A.

    ``wires`` are its runs, then its pigtails that are thinner than their cables;
    ``limiting`` is the one that allows least, of those that are known. ``gaps``
    say what the circuit may have besides. ``breaker`` lacks whatever is missing
    anywhere on it, even where ``limiting`` already allows less than the breaker has.
    ``branch`` is False for feeders and for the runs of a source.
    """

    circuit: str
    branch: bool
    wires: tuple[WireLimit, ...]
    limiting: WireLimit | None
    gaps: tuple[str, ...]
    breaker: Worked


def circuit_limit(house: House, circuit: Circuit, runs: Mapping[str, WireLimit]) -> CircuitLimit:
    """The limit of one circuit, from the limits of all runs."""
    branch = circuit.record.purpose not in NO_BRANCH_CIRCUITS
    wires = (*(runs[each] for each in circuit.runs), *_pigtails(house, circuit))
    known = [each for each in wires if each.breaker.value is not None]
    limiting = min(known, key=lambda each: each.breaker.value or 0, default=None)
    gaps = tuple(dict.fromkeys(unseen_on(house, circuit)))
    lacks = [*gaps, *(lack for each in wires for lack in each.breaker.lacks)]
    if limiting is None or lacks:
        steps = limiting.breaker.steps if limiting else ()
        return CircuitLimit(circuit.id, branch, wires, limiting, gaps, lacking(lacks, "A", steps))
    return CircuitLimit(circuit.id, branch, wires, limiting, gaps, limiting.breaker)


def _pigtails(house: House, circuit: Circuit) -> Iterator[WireLimit]:
    for box in (house.boxes[each] for each in circuit.boxes):
        for joint in box.joints:
            # A grounding pigtail carries no load; its size is another matter.
            if circuit.id in joint.circuits and joint.role != "ground":
                limit = pigtail_limit(joint, circuit.id, box.edition)
                if limit is not None:
                    yield limit
