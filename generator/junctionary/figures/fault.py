"""What flows into a fault at each circuit's end, whether its breaker opens at once, how hot the wire gets."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from junctionary.figures.cabling import Cabling, Wired, cabling_of, feeders_of, way_before
from junctionary.figures.circuits import NO_BRANCH_CIRCUITS
from junctionary.formulas.fault import (
    FaultCurrent,
    Loop,
    adiabatic_k,
    area_mm2,
    fault_current,
    least_area,
    pick_up,
    source_from_level,
    source_from_transformer,
)
from junctionary.formulas.resistance import Wire
from junctionary.formulas.worked import Worked, finished, lacking
from junctionary.house.model import Breaker, Circuit, House
from junctionary.records.words import BREAKER_KINDS
from junctionary.sources import cite
from junctionary.units import Quantity

CLEARED_S = Fraction(1, 60)
CLEARED = cite(
    "practice", "A breaker that opens at once is taken to have cut the fault off within one cycle, 1/60 s"
)
UNTOLD_SERVICE = "the fault current at the service (fault_level, or transformer and drop)"


@dataclass(frozen=True, slots=True)
class EndFault:
    """A fault in one box: from a leg to the neutral, and from a leg to the ground.

    Either is None where the cables there have no such conductor. ``most_in`` is
    the run that holds the current back most.
    """

    at: str
    to_neutral: FaultCurrent | None
    to_ground: FaultCurrent | None
    most_in: str | None

    @property
    def both(self) -> tuple[FaultCurrent, ...]:
        """The faults there can be."""
        return tuple(each for each in (self.to_neutral, self.to_ground) if each is not None)

    @property
    def least(self) -> Worked | None:
        """The smaller current, in A, or the one that lacks something; None where there can be no fault."""
        found = [each.flows for each in self.both]
        known = [each for each in found if each.value is not None]
        if len(known) < len(found):
            return next(each for each in found if each.value is None)
        return min(known, key=lambda each: each.value or 0, default=None)

    @property
    def at_most(self) -> Fraction | None:
        """An upper bound in A for the smaller current."""
        return min((each.most for each in self.both if each.most is not None), default=None)


@dataclass(frozen=True, slots=True)
class Heat:
    """A fault's heat in the smallest conductor on its way: the area it wants, in mm², and the one it has.

    ``fits`` is None where it cannot be told: ``area`` then lacks something.
    """

    at: str
    run: str
    wire: Wire
    has: Fraction
    area: Worked
    fits: bool | None


@dataclass(frozen=True, slots=True)
class CircuitFault:
    """The faults of one circuit by box.

    ``at_once`` says whether the breaker's pick-up is reached at the worst outlet; None where that
    cannot be told. ``heat`` is the worst. ``lacks`` says why there may be boxes not seen.
    """

    circuit: str
    breaker: str | None
    branch: bool
    pick_up: Worked
    boxes: Mapping[str, EndFault]
    worst: EndFault | None
    at_once: bool | None
    heat: Heat | None
    lacks: tuple[str, ...]


def faults_of(house: House) -> dict[str, CircuitFault]:
    """The faults of every circuit."""
    source = source_of(house)
    cablings = {each.id: cabling_of(house, each) for each in house.circuits.values()}
    return {each.id: _circuit_fault(house, each, source, cablings) for each in house.circuits.values()}


def source_of(house: House) -> Worked:
    """The impedance in ohm before the service, from what the record tells of the fault current there."""
    service = house.record.service
    if service is not None and service.fault_level is not None:
        return source_from_level(service.fault_level.line_to_neutral.to("A"))
    if service is not None and service.transformer is not None:
        told, drop = service.transformer, service.drop
        if drop is None:
            return lacking(["the service drop: its size, metal and length"], "ohm")
        wire = Wire(drop.size, drop.metal) if drop.metal else None
        feet = Fraction(round(drop.length.to("ft") * 100), 100)
        loop = Loop("the service drop", feet, wire, wire, () if wire else ("the metal of the service drop",))
        return source_from_transformer(told.rating.to("kVA"), told.impedance, [loop], house.edition)
    return lacking([UNTOLD_SERVICE], "ohm")


def _circuit_fault(
    house: House, circuit: Circuit, source: Worked, cablings: Mapping[str, Cabling]
) -> CircuitFault:
    cabling = cablings[circuit.id]
    feeders = feeders_of(house, cablings, cabling.panel)
    known_at = service.fault_level.at if (service := house.record.service) and service.fault_level else None
    if feeders is None and cabling.panel:
        source = lacking((*source.lacks, f"what feeds panel {cabling.panel}"), "ohm", source.steps)
    elif known_at is not None and house.panels[known_at].feeder is not None:
        # Told at a subpanel, it holds for what hangs on that panel alone.
        feeder = house.panels[known_at].feeder
        if feeder in (feeders or ()) or cabling.panel == known_at:
            feeders = (feeders or ())[(feeders or ()).index(feeder) + 1 :]
        else:
            source = lacking([UNTOLD_SERVICE], "ohm")
    before = [wired for each in feeders or () for wired in cablings[each].wired.values()]
    way_in = [each for run in way_before(house, cablings, feeders) for each in before if each.run == run]
    ways = {box: [*way_in, *(cabling.wired[run] for run in cabling.ways[box])] for box in cabling.boxes}
    boxes = {box: _end_fault(box, way, cabling, source, circuit.edition) for box, way in ways.items()}
    breaker = _breaker(house, circuit)
    opens = _pick_up(house, circuit, breaker)
    worst = _worst(boxes.values())
    heats = [each for box, way in ways.items() for each in _heats(boxes[box], way, cabling)]
    return CircuitFault(
        circuit=circuit.id,
        breaker=breaker.id if breaker else None,
        branch=circuit.record.purpose not in NO_BRANCH_CIRCUITS,
        pick_up=opens,
        boxes=MappingProxyType(boxes),
        worst=worst,
        at_once=_at_once(opens, tuple(boxes.values()), cabling),
        heat=max(heats, key=_weight, default=None),
        lacks=cabling.lacks,
    )


def _end_fault(box: str, way: Sequence[Wired], cabling: Cabling, source: Worked, edition: str) -> EndFault:
    to_neutral = None
    if cabling.neutral and all(each.neutral or each.lacks for each in way):
        to_neutral = fault_current(source, [_loop(each, each.neutral) for each in way], edition)
    to_ground = None
    if way and all(each.ground or each.lacks for each in way):
        to_ground = fault_current(source, [_loop(each, each.ground) for each in way], edition)
    long = [each for each in way if each.feet is not None and each.hot is not None]
    heaviest = max(long, key=lambda each: (each.feet or 0) / _thinnest(each).size.circular_mils, default=None)
    return EndFault(box, to_neutral, to_ground, heaviest.run if heaviest else None)


def _loop(wired: Wired, back: Wire | None) -> Loop:
    return Loop(f"run {wired.run}", wired.feet, wired.hot, back, wired.lacks)


def _thinnest(wired: Wired) -> Wire:
    wires = [each for each in (wired.hot, wired.neutral, wired.ground) if each is not None]
    return min(wires, key=lambda each: each.size)


def _worst(ends: Iterable[EndFault]) -> EndFault | None:
    """The end with the smallest current; one that lacks something counts at its upper bound."""
    return min(
        (each for each in ends if each.at_most is not None), key=lambda each: each.at_most or 0, default=None
    )


def _breaker(house: House, circuit: Circuit) -> Breaker | None:
    """The circuit's breaker; of two the larger, which is the slower."""
    found = [house.breakers[each] for each in circuit.breakers]
    rated = [(each.rating.to("A"), each) for each in found if isinstance(each.rating, Quantity)]
    return max(rated, key=lambda pair: pair[0])[1] if rated else next(iter(found), None)


def _pick_up(house: House, circuit: Circuit, breaker: Breaker | None) -> Worked:
    if breaker is None:
        return lacking([f"which breaker feeds circuit {circuit.id}"], "A")
    told = breaker.record.trips_at_once or (breaker.kind.trips_at_once if breaker.kind else None)
    if told is None and _is_fuse(house, breaker):
        return lacking([f"from which current fuse {breaker.id} opens at once"], "A")
    if not isinstance(breaker.rating, Quantity):
        if told is not None:
            return pick_up(Fraction(0), told.to("A"))
        return lacking([f"the rating of {breaker.id}"], "A")
    return pick_up(breaker.rating.to("A"), told.to("A") if told else None)


def _is_fuse(house: House, breaker: Breaker) -> bool:
    return breaker.record.kind in BREAKER_KINDS or house.panels[breaker.panel].record.kind == "fuse-panel"


def _at_once(opens: Worked, ends: Sequence[EndFault], cabling: Cabling) -> bool | None:
    """Whether every fault reaches the pick-up: no, once one is known not to; yes, only when all are known."""
    if opens.value is None:
        return None
    if any(each.at_most is not None and each.at_most < opens.value for each in ends):
        return False
    known = [each.least for each in ends if each.both]
    if cabling.lacks or not known or any(each is None or each.value is None for each in known):
        return None
    return True


def _heats(end: EndFault, way: Sequence[Wired], cabling: Cabling) -> Iterable[Heat]:
    """The heat of each fault there in the smallest conductor that carries it."""
    for fault, role in ((end.to_neutral, "neutral"), (end.to_ground, "ground")):
        carrying = [
            (wire, each.run)
            for each in way
            if each.run in cabling.wired
            for wire in (each.hot, getattr(each, role))
            if wire is not None
        ]
        if fault is None or not carrying:
            continue
        wire, run = min(carrying, key=lambda pair: (pair[0].size, pair[1]))
        yield _heat(end.at, fault, wire, run)


def _heat(at: str, fault: FaultCurrent, wire: Wire, run: str) -> Heat:
    k, has = adiabatic_k(wire), area_mm2(wire)
    if k is None:
        return Heat(at, run, wire, has, lacking([f"k for {wire.metal}"], "mm²"), None)
    current = fault.flows.value if fault.flows.value is not None else fault.most
    if current is None:
        return Heat(at, run, wire, has, lacking(fault.flows.lacks, "mm²"), None)
    area = least_area(current, CLEARED_S, k)
    assert area.value is not None
    fits = area.value <= has
    if fault.flows.value is None and not fits:
        # The current is no more than this, and may be less.
        return Heat(at, run, wire, has, lacking(fault.flows.lacks, "mm²", area.steps), None)
    return Heat(at, run, wire, has, finished(area.value, area.unit, area.steps, (CLEARED,)), fits)


def _weight(heat: Heat) -> tuple[int, Fraction]:
    """A heat too great before one that cannot be told, before one that fits."""
    rank = {False: 2, None: 1, True: 0}[heat.fits]
    return rank, (heat.area.value or Fraction(0)) / heat.has
