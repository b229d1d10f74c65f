"""Each feeder: the load fed through it, what its breaker is, what its conductors carry."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from junctionary.figures.circuits import NO_BRANCH_CIRCUITS
from junctionary.figures.draws import Draw
from junctionary.figures.dwelling_parts import GENERAL, is_outside, legs_of, sort_loads, untold_breakers
from junctionary.figures.places import is_detached
from junctionary.figures.wire import WireLimit
from junctionary.formulas.ampacity import NEXT_SIZE_UP_TO_A
from junctionary.formulas.dwelling import DemandLoad, Dwelling, amount, amount_cite
from junctionary.formulas.dwelling_service import WHOLE_LOAD_A, feeder_size, whole_amps
from junctionary.formulas.dwelling_standard import neutral_load, standard_load
from junctionary.formulas.standard_rating import rating_at_or_below
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Worked, finished, lacking, step
from junctionary.house.model import Circuit, House, Panel
from junctionary.house.network import is_service_panel
from junctionary.sources import cite_in
from junctionary.units import Quantity


@dataclass(frozen=True, slots=True)
class FeederLoad:
    """One feeder, by the panel it feeds.

    ``breaker`` is what guards it and ``breaker_a`` its rating, None where not recorded;
    ``wire`` is the run that allows least, of those known; ``allowed`` the largest breaker for
    all its conductors, in A. ``whole``: it carries the dwelling's whole load, where 310.12 holds.
    ``carries_load``, ``wire_fits``: the load is within the breaker, and the conductors are
    large enough for both; None where that cannot be told. ``sized`` is what both must be for, in A: the
    load, and a quarter more of a car charger, which runs for hours; ``sized_a`` is what is certain of it.
    """

    panel: str
    circuit: str
    breaker: str | None
    breaker_a: Fraction | None
    load: DemandLoad
    sized: Worked
    sized_a: Fraction
    neutral: DemandLoad
    wire: WireLimit | None
    ampacity: Worked
    allowed: Worked
    whole: bool
    lacks: tuple[str, ...]
    carries_load: bool | None
    wire_fits: bool | None


def feeder_loads(
    house: House, draws: Mapping[str, Draw], wires: Mapping[str, WireLimit], area_ft2: Fraction | None
) -> dict[str, FeederLoad]:
    """Every feeder of a house, by the panel it feeds."""
    fed = {each.id: each.feeder for each in house.panels.values() if each.feeder in house.circuits}
    return {
        panel: _feeder(house, draws, wires, house.panels[panel], house.circuits[feeder], area_ft2)
        for panel, feeder in fed.items()
        if feeder is not None
    }


def panels_below(house: House, panel: str) -> tuple[str, ...]:
    """A panel and every panel fed from it, nearest first, each once."""
    found = [panel]
    for each in found:
        for other in house.panels.values():
            feeder = house.circuits.get(other.feeder or "")
            if feeder and other.id not in found and each in _panels_of(house, feeder):
                found.append(other.id)
    return tuple(found)


def circuits_below(house: House, panels: Iterable[str]) -> tuple[Circuit, ...]:
    """The circuits that breakers of these panels feed, but for feeders and sources."""
    wanted = set(panels)
    return tuple(
        each
        for each in house.circuits.values()
        if each.record.purpose not in NO_BRANCH_CIRCUITS and wanted & _panels_of(house, each)
    )


def _panels_of(house: House, circuit: Circuit) -> set[str]:
    return {house.breakers[each].panel for each in circuit.breakers}


def _feeder(
    house: House,
    draws: Mapping[str, Draw],
    wires: Mapping[str, WireLimit],
    panel: Panel,
    circuit: Circuit,
    area_ft2: Fraction | None,
) -> FeederLoad:
    below = panels_below(house, panel.id)
    dwelling = _fed(
        house, draws, circuits_below(house, below), area_ft2, tuple(untold_breakers(house, below))
    )
    load = standard_load(dwelling, circuit.edition)
    breaker, breaker_a, lacks = _breaker(house, circuit)
    whole = _is_whole(house, panel, circuit)
    limits = [wires[each] for each in circuit.runs]
    known = [each for each in limits if each.ampacity.value is not None]
    wire = min(known, key=lambda each: each.ampacity.value or 0, default=None)
    gaps = [lack for each in limits for lack in each.breaker.lacks] or (
        [] if limits else [f"the cable of circuit {circuit.id}"]
    )
    ampacity = lacking(gaps, "A") if gaps or wire is None else wire.ampacity
    allowed = _allowed(limits, gaps, ampacity, circuit.edition, whole)
    sized, sized_a = feeder_size(dwelling, load)
    carries = _carries(sized, sized_a, breaker_a)
    return FeederLoad(
        panel=panel.id,
        circuit=circuit.id,
        breaker=breaker,
        breaker_a=breaker_a,
        load=load,
        sized=sized,
        sized_a=sized_a,
        neutral=neutral_load(dwelling, circuit.edition),
        wire=wire,
        ampacity=ampacity,
        allowed=allowed,
        whole=whole,
        lacks=lacks,
        carries_load=carries,
        wire_fits=_wire_fits(sized_a, breaker_a, wire, ampacity, allowed, whole),
    )


def _fed(
    house: House,
    draws: Mapping[str, Draw],
    circuits: tuple[Circuit, ...],
    area_ft2: Fraction | None,
    gaps: tuple[str, ...],
) -> Dwelling:
    """What a feeder feeds; of general lighting the share that its lighting circuits are of all."""
    lit = [
        each
        for each in house.circuits.values()
        if each.breakers and each.record.purpose in GENERAL and not is_outside(house, each)
    ]
    here = {each.id for each in circuits}
    whole = sum(legs_of(house, each) for each in lit)
    part = sum(legs_of(house, each) for each in lit if each.id in here)
    area = Fraction(0) if not part else None if area_ft2 is None else area_ft2 * part / whole
    fed = sort_loads(house, draws, circuits, area)
    return replace(fed, lacks=(*gaps, *fed.lacks))


def _breaker(house: House, circuit: Circuit) -> tuple[str | None, Fraction | None, tuple[str, ...]]:
    if not circuit.breakers:
        return None, None, (f"which breaker feeds circuit {circuit.id}",)
    first = house.breakers[circuit.breakers[0]]
    if not isinstance(first.rating, Quantity):
        return first.id, None, (f"the rating of {first.id}",)
    return first.id, first.rating.to("A"), ()


def _is_whole(house: House, panel: Panel, circuit: Circuit) -> bool:
    """Whether a feeder carries the dwelling's whole load: all that its supply feeds goes through it."""
    service = house.record.service
    if service is None or service.system != "120/240 V" or not circuit.breakers:
        return False
    supply = house.breakers[circuit.breakers[0]].panel
    others = [
        each
        for each in house.panels[supply].breakers
        if each.spaces != ("main",) and each.feeds != circuit.id
    ]
    at = panel.record.at
    room = house.rooms.get(at.room) if at and at.room else None
    apart = room is not None and is_detached(house, room)
    return is_service_panel(house, house.panels[supply]) and not others and not apart


def _allowed(limits: list[WireLimit], gaps: list[str], ampacity: Worked, edition: str, whole: bool) -> Worked:
    """The largest breaker for the feeder's conductors: the next size up, or by 310.12."""
    if gaps or ampacity.value is None:
        return lacking(gaps or ampacity.lacks, "A")
    usual = min((each.breaker for each in limits), key=lambda each: each.value or 0)
    if not whole or usual.value is None:
        return usual
    percent = plain(amount("dwelling service conductors", "percent"))
    clause = amount_cite("dwelling service conductors", edition)
    reach = step(f"what it is {percent} % of", f"{plain(ampacity.value)} / {percent} %", "A", clause)
    rating = rating_at_or_below(min(reach.value, Fraction(NEXT_SIZE_UP_TO_A)), edition)
    if rating is None or not WHOLE_LOAD_A[0] <= rating <= WHOLE_LOAD_A[1] or rating < usual.value:
        return usual
    last = step("largest standard rating within it", plain(rating), "A", cite_in(edition, "240.6(A)"))
    return finished(rating, "A", (*ampacity.steps, reach, last))


def _carries(sized: Worked, sized_a: Fraction, breaker_a: Fraction | None) -> bool | None:
    if breaker_a is None:
        return None
    if whole_amps(sized_a) > breaker_a:
        return False
    return None if sized.value is None else True


def _wire_fits(
    sized_a: Fraction,
    breaker_a: Fraction | None,
    wire: WireLimit | None,
    ampacity: Worked,
    allowed: Worked,
    whole: bool,
) -> bool | None:
    """False as soon as any known run is too small for the breaker, or for what is certain of the load."""
    if wire is not None and not whole:
        too_small = (
            wire.breaker.value is not None and breaker_a is not None and wire.breaker.value < breaker_a
        )
        if too_small or (wire.ampacity.value is not None and wire.ampacity.value < whole_amps(sized_a)):
            return False
    if allowed.value is not None and breaker_a is not None and allowed.value < breaker_a:
        return False
    if breaker_a is None or allowed.value is None or ampacity.value is None:
        return None
    # The conductors are large enough for the breaker; a load that is not all known is the load's own gap.
    return True
