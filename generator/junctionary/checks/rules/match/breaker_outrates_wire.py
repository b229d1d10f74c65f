"""A breaker is rated above what the smallest wire of its circuit may carry.

Why it matters: the breaker is the wire's only guard. Where it is too large, the wire
    overheats inside the wall and the breaker does not open.
What to do: put in the breaker the smallest wire allows, and hold the receptacles and loads
    against it; or replace the small wire. The wire decides, not the load.
Cannot tell: when a cable, its insulation, the breaker's rating, a run's end or a box's make-up
    is not recorded; when an attic or a bundle on the way would decide it and is not recorded;
    and when a motor or a heat pump may have a larger breaker by its nameplate, which the
    record does not hold: there it speaks only where the recorded draw is above what the wire
    carries. A room that records no temperature is taken at 30 °C, an end of a cable at 60 °C
    terminals unless both ends are lugs marked 75 °C, and a bundle that nobody recorded is not
    seen. A bundle in a sealed hole has a check of its own. Feeders have theirs.
Stands: on the line of the run that limits the circuit, or of the joint whose pigtail does.
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

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "240.4"),
        cite("nec-2023", "240.4(D)"),
        cite("nec-2023", "310.16"),
        cite("nec-2023", "334.80"),
        cite("nec-2023", "110.14(C)(1)"),
    ),
    ROUGHED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, feeds: den, says: "Den, receptacles"}
[circuits/den.yaml]
circuit: den
name: Den receptacles
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1, length: 30 ft}
  - {id: b2, cable: 14/2 NM-B, from: D1, to: D2, length: 9 ft}    #! breaker-outrates-wire
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1: {devices: {r1: duplex}, makeup: pigtailed}
  D2: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("14/2 NM-B", "12/2 NM-B").replace("    #! breaker-outrates-wire", "")

UNTOLD = PASSES.replace("b2, cable: 12/2 NM-B", "b2, cable: unknown")

BY_NAMEPLATE = ("heat-pump", "cooling", "pump")
"""Purposes whose breaker may be larger than the wire by the unit's nameplate (430, 440), from memory."""

UNITS_BY_NAMEPLATE = ("heat-pump", "air-conditioner", "pump", "sump-pump")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each branch circuit's smallest wire against its largest breaker."""
    for circuit in house.circuits.values():
        if figures.circuits[circuit.id].branch:
            yield from _judged(house, circuit, figures)


def _judged(house: House, circuit: Circuit, figures: Figures) -> Iterator[Fault | CannotTell]:
    limit = figures.circuits[circuit.id]
    breakers = [house.breakers[each] for each in circuit.breakers]
    rated = [(each.rating, each) for each in breakers if isinstance(each.rating, Quantity)]
    needs = [f"the rating of {each.id}" for each in breakers if not isinstance(each.rating, Quantity)]
    if not breakers:
        needs.append(f"which breaker feeds circuit {circuit.id}")
    needs += limit.gaps
    # Without the sealed hole: a bundle in one has a rule of its own.
    needs += [lack for wire in limit.wires for lack in wire.without_hole.lacks]
    if rated:
        rating, breaker = max(rated, key=lambda pair: pair[0].to("A"))
        known = [
            (each.without_hole.value, each) for each in limit.wires if each.without_hole.value is not None
        ]
        small = sorted((pair for pair in known if pair[0] < rating.to("A")), key=lambda pair: pair[0])
        # Where the size was only inferred from old cable, a rule of its own speaks.
        small = [pair for pair in small if not is_inferred(house, pair[1].name)]
        nameplate = _by_nameplate(circuit, figures)
        # By its nameplate the breaker may be larger, but never the draw larger than the wire.
        if small and nameplate and not _drawn_over(circuit, figures, [each for _, each in small]):
            yield CannotTell((circuit.id, breaker.id), (nameplate, *needs), breaker.place)
            return
        if small:
            yield _fault(circuit, breaker, rating, [each for _, each in small])
            return
    if needs:
        yield CannotTell((circuit.id, *circuit.breakers), tuple(dict.fromkeys(needs)), circuit.place)


def _by_nameplate(circuit: Circuit, figures: Figures) -> str | None:
    """What must be known besides the wire where a circuit feeds only a motor or a compressor."""
    fixed = [load for load in circuit.loads if load.plugged is None]
    units = [load.id for load in fixed if load.is_ in UNITS_BY_NAMEPLATE or load.motor is True]
    if figures.outlets[circuit.id].counted or not (units or circuit.record.purpose in BY_NAMEPLATE):
        return None
    unit = " and ".join(units) or circuit.name
    return f"the least ampacity and the largest breaker on the nameplate of {unit}"


def _drawn_over(circuit: Circuit, figures: Figures, wires: list[WireLimit]) -> bool:
    """Whether what is recorded to be drawn is certainly more than one of these wires carries."""
    drawn = max((each.least_a for each in figures.loads[circuit.id].poles), default=0)
    return any(each.ampacity.value is not None and drawn > each.ampacity.value for each in wires)


def _fault(circuit: Circuit, breaker: Breaker, rating: Quantity, small: list[WireLimit]) -> Fault:
    limiting, *others = small
    assert limiting.without_hole.value is not None
    allowed = f"{plain(limiting.without_hole.value)} A"
    also = f" Too small as well: {', '.join(each.name for each in others)}." if others else ""
    mend = (
        f"Put in a {allowed} breaker"
        if limiting.without_hole.value
        else "No standard breaker is small enough"
    )
    return Fault(
        place=limiting.place,
        about=(limiting.name, circuit.id, breaker.id, *(each.name for each in others)),
        found=f"Breaker {breaker.id} is rated {rating}, and {limiting.called} is {limiting.what}.{also}",
        allowed=f"At most {allowed} for {limiting.called}.",
        because="The wire overheats inside the wall before the breaker opens.",
        do=f"{mend}, or replace {limiting.called} with wire that may carry {rating}.",
        working=limiting.without_hole.steps,
        edition=limiting.edition,
    )
