"""What the wire of each circuit loses on the way: at the recorded load, and at design load."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from junctionary.figures.cabling import Cabling, cabling_of, feeders_of, way_before
from junctionary.figures.circuits import NO_BRANCH_CIRCUITS
from junctionary.figures.design_load import design_legs, design_load, is_outlet
from junctionary.figures.drawn_at import LINE_TO_NEUTRAL, line_to_line
from junctionary.figures.draws import Draw, draws_on, together
from junctionary.formulas.voltage_drop import Part, Span, drop_along, drop_limits, flows, lost_in
from junctionary.formulas.worked import Worked, lacking
from junctionary.house.model import Circuit, House


@dataclass(frozen=True, slots=True)
class Drawn:
    """A load at a box of a circuit: its current in A, and the leg or the two legs it hangs between."""

    circuit: str
    box: str
    amps: Fraction
    legs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Lost:
    """What is lost on the way to one box, or to the panel that a feeder ends in, in V.

    ``volts`` is the nominal voltage between ``legs``, or from the one leg to the
    neutral. ``from_panel`` counts the circuit's own cables, ``from_service`` the
    feeders before them too. Where something is missing ``least`` is what the
    recorded part loses from the panel, if that is a bound. ``most_in`` is the run that loses most.
    """

    at: str
    legs: tuple[str, ...]
    volts: Fraction
    from_panel: Worked
    from_service: Worked
    least: Fraction | None
    most_in: str | None

    @property
    def percent(self) -> Fraction | None:
        """Of the nominal voltage, from the panel; None where it is not known."""
        return None if self.from_panel.value is None else self.from_panel.value / self.volts * 100

    @property
    def percent_from_service(self) -> Fraction | None:
        """Of the nominal voltage, from the service; None where it is not known."""
        return None if self.from_service.value is None else self.from_service.value / self.volts * 100

    @property
    def within(self) -> bool | None:
        """Whether the limits recommended are kept; None where that cannot be told."""
        alone, together = drop_limits()
        known, whole = self.least_percent, self.percent_from_service
        if (known is not None and known > alone) or (whole is not None and whole > together):
            return False
        return None if self.percent is None or whole is None else True

    @property
    def least_percent(self) -> Fraction | None:
        """What is lost at least from the panel, of the nominal voltage."""
        known = self.from_panel.value if self.from_panel.value is not None else self.least
        return None if known is None else known / self.volts * 100


@dataclass(frozen=True, slots=True)
class CircuitDrop:
    """The voltage drop of one circuit, by box in each mapping.

    ``recorded`` is with all that is recorded as drawn; ``design`` with the design
    load drawn at that box alone; ``spread`` with it drawn in equal parts at the
    ``outlets``. ``lacks`` says why there may be more to it; ``untold`` what of the
    recorded load is not known. ``drawn`` says whether any load is recorded, or that there is none.
    """

    circuit: str
    panel: str | None
    branch: bool
    outlets: tuple[str, ...]
    design_load: Worked
    recorded: Mapping[str, Lost]
    design: Mapping[str, Lost]
    spread: Mapping[str, Lost]
    drawn: bool
    lacks: tuple[str, ...]
    untold: tuple[str, ...]

    def worst(self, case: Mapping[str, Lost]) -> Lost | None:
        """The outlet that loses most, as far as it is known; any box where no outlet is recorded."""
        found = [case[each] for each in self.outlets or case if each in case]
        return max(found, key=lambda each: each.least_percent or Fraction(0), default=None)


@dataclass(frozen=True, slots=True)
class _Case:
    """One way of loading the house: what each cable carries, and why it is not all known."""

    amps: Mapping[str, Mapping[str, Fraction]]
    untold: tuple[str, ...] = ()
    untold_before: tuple[str, ...] = ()


def drops_of(house: House, draws: Mapping[str, Draw]) -> dict[str, CircuitDrop]:
    """The voltage drop of every circuit, at what the record says is drawn, and at design load."""
    loads, untold = recorded_loads(house, draws)
    return drops_at(house, loads, untold)


def recorded_loads(
    house: House, draws: Mapping[str, Draw]
) -> tuple[tuple[Drawn, ...], dict[str, tuple[str, ...]]]:
    """What is recorded as drawn, to a thousandth of an ampere, and by circuit what is missing of it."""
    loads: list[Drawn] = []
    untold: dict[str, tuple[str, ...]] = {}
    for circuit in house.circuits:
        lacks: list[str] = []
        for draw in together(draws_on(draws, circuit)):
            legs = tuple(feed.leg or feed.pole for feed in draw.connection.feeds)
            lacks += draw.amps.lacks
            if draw.box is None:
                lacks.append(f"where {draw.id} is plugged or wired")
            elif not legs:
                lacks += draw.connection.lacks
            elif draw.amps.value is not None:
                loads.append(Drawn(circuit, draw.box, Fraction(round(draw.amps.value * 1000), 1000), legs))
        untold[circuit] = tuple(dict.fromkeys(lacks))
    for draw in draws.values():
        # What nobody knows the circuit of may hang on any that comes to its box.
        for circuit in house.boxes[draw.box].circuits if draw.circuit is None and draw.box else ():
            if circuit in untold:
                untold[circuit] = (*untold[circuit], f"which circuit feeds {draw.id}")
    return tuple(loads), untold


def drops_at(
    house: House, loads: Iterable[Drawn], untold: Mapping[str, tuple[str, ...]] | None = None
) -> dict[str, CircuitDrop]:
    """The voltage drop of every circuit with these loads; ``untold`` is what is missing, by circuit."""
    loads, untold = tuple(loads), untold or {}
    cablings = {each.id: cabling_of(house, each) for each in house.circuits.values()}
    feeders = {panel: feeders_of(house, cablings, panel) for panel in house.panels}
    carried = flows(
        (
            (*way_before(house, cablings, feeders.get(cabling.panel or "")), *cabling.ways[load.box]),
            load.amps,
            load.legs,
        )
        for load in loads
        if load.box in (cabling := cablings[load.circuit]).ways
    )
    return {
        each.id: _circuit_drop(_Fed(house, each, cablings, feeders), loads, carried, untold)
        for each in house.circuits.values()
    }


@dataclass(frozen=True, slots=True)
class _Fed:
    """One circuit with what its drop rests on."""

    house: House
    circuit: Circuit
    cablings: Mapping[str, Cabling]
    feeders: Mapping[str, tuple[str, ...] | None]

    @property
    def cabling(self) -> Cabling:
        return self.cablings[self.circuit.id]


def _circuit_drop(
    fed: _Fed,
    loads: Sequence[Drawn],
    carried: Mapping[str, Mapping[str, Fraction]],
    untold: Mapping[str, tuple[str, ...]],
) -> CircuitDrop:
    cabling, id_ = fed.cabling, fed.circuit.id
    own = [each for each in loads if each.circuit == id_]
    outlets = tuple(each for each in cabling.boxes if is_outlet(fed.house, fed.circuit, each))
    unreached = [each.box for each in own if each.box not in cabling.ways]
    astray = [f"how box {each} is reached from the panel" for each in unreached]
    missing = tuple(dict.fromkeys((*untold.get(id_, ()), *astray, *_untold_beyond(fed, untold))))
    load = design_load(fed.house, fed.circuit)
    legs = design_legs(fed.house, fed.circuit, outlets, neutral=fed.cabling.neutral)
    drawn_legs = list(dict.fromkeys(each.legs for each in own)) or _each_leg(fed, carried) or [legs]
    recorded = _Case(carried, missing, _untold_before(fed, untold))
    one = {run: dict.fromkeys(legs, load.value or Fraction(0)) for run in cabling.wired}
    even = _evenly(fed, load, legs, outlets or cabling.boxes)
    return CircuitDrop(
        circuit=id_,
        panel=cabling.panel,
        branch=fed.circuit.record.purpose not in NO_BRANCH_CIRCUITS,
        outlets=outlets,
        design_load=load,
        recorded=_at_all(fed, drawn_legs, recorded),
        design=_at_all(fed, [legs], _design_case(fed, load, one)),
        spread=_at_all(fed, [legs], _design_case(fed, load, even)),
        drawn=any(run in carried for run in cabling.wired) or "loads" in fed.circuit.record.model_fields_set,
        lacks=cabling.lacks,
        untold=missing,
    )


def _each_leg(fed: _Fed, carried: Mapping[str, Mapping[str, Fraction]]) -> list[tuple[str, ...]]:
    """Each leg alone of a feeder with a neutral: the one that carries more loses more."""
    if not fed.cabling.neutral:
        return []
    return list(dict.fromkeys((leg,) for run in fed.cabling.wired for leg in carried.get(run, {})))


def _untold_before(fed: _Fed, untold: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """What is missing of all that the feeders before this circuit carry."""
    feeders = fed.feeders.get(fed.cabling.panel or "") or ()
    return tuple(lack for each in feeders for lack in _untold_through(fed, each, untold))


def _untold_beyond(fed: _Fed, untold: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """What is missing of all that a feeder carries."""
    return _untold_through(fed, fed.circuit.id, untold)


def _untold_through(fed: _Fed, feeder: str, untold: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    beyond = (
        each for each, lacks in untold.items()
        if lacks and feeder in (fed.feeders.get(fed.cablings[each].panel or "") or ())
    )  # fmt: skip
    return tuple(f"all that circuit {each} draws" for each in beyond)


def _evenly(
    fed: _Fed, load: Worked, legs: tuple[str, ...], boxes: Sequence[str]
) -> dict[str, dict[str, Fraction]]:
    """What each cable carries where the boxes draw the load in equal parts, to a thousandth of an A."""
    share = Fraction(round((load.value or 0) / len(boxes) * 1000), 1000) if boxes else Fraction(0)
    return flows((fed.cabling.ways[box], share, legs) for box in boxes)


def _design_case(fed: _Fed, load: Worked, own: Mapping[str, Mapping[str, Fraction]]) -> _Case:
    """The circuit carries what it is told, and each feeder before it its own design load on every leg."""
    amps, lacks = dict(own), list[str]()
    for feeder in fed.feeders.get(fed.cabling.panel or "") or ():
        before = design_load(fed.house, fed.house.circuits[feeder])
        lacks += before.lacks
        legs = [leg for each in fed.house.circuits[feeder].breakers
                for leg in fed.house.breakers[each].legs if leg]  # fmt: skip
        each_leg = dict.fromkeys(legs, before.value or Fraction(0))
        amps |= dict.fromkeys(fed.cablings[feeder].wired, each_leg)
    return _Case(amps, load.lacks, tuple(lacks))


def _at_all(fed: _Fed, choices: Sequence[tuple[str, ...]], case: _Case) -> Mapping[str, Lost]:
    parts = {legs: _parts(fed, legs, case) for legs in choices}
    found = {}
    for box in fed.cabling.boxes:
        lost = [_lost(fed, box, legs, case, parts[legs]) for legs in _reaching(fed, box, choices, case)]
        found[box] = max(lost, key=lambda each: each.least_percent or Fraction(0))
    return MappingProxyType(found)


def _reaching(
    fed: _Fed, box: str, choices: Sequence[tuple[str, ...]], case: _Case
) -> Sequence[tuple[str, ...]]:
    """Those of the choices whose legs carry current to the box, or as near to it as any does."""
    for run in reversed(fed.cabling.ways[box]):
        found = [legs for legs in choices if case.amps.get(run, {}).keys() >= set(legs)]
        if found:
            return found
    return choices


def _parts(fed: _Fed, legs: tuple[str, ...], case: _Case) -> dict[str, Part]:
    """What each cable loses, those of the feeders before among them."""
    edition = fed.circuit.edition
    found = {}
    for each in (*(fed.feeders.get(fed.cabling.panel or "") or ()), fed.circuit.id):
        for run, wired in fed.cablings[each].wired.items():
            amps = case.amps.get(run, {})
            span = Span(f"run {run}", wired.feet, wired.hot, wired.neutral, amps, wired.lacks)
            found[run] = lost_in(span, legs, edition)
    return found


def _lost(fed: _Fed, box: str, legs: tuple[str, ...], case: _Case, parts: Mapping[str, Part]) -> Lost:
    cabling, house = fed.cabling, fed.house
    feeders = fed.feeders.get(cabling.panel or "")
    way = cabling.ways[box]
    own = [parts[run] for run in way]
    along = drop_along(own)
    # Currents of two legs add as plain numbers only where the legs are opposite.
    odd = _odd_phases(house, cabling.poles)
    near = (*case.untold, *odd, *(cabling.lacks if cabling.loops else ()))
    far = list(case.untold_before)
    if feeders:
        far += _odd_phases(house, cabling.poles + 1)
    if feeders is None:
        far.append(f"what feeds panel {cabling.panel}")
    if feeders and not set(legs) <= {"A", "B"}:
        far.append(f"the leg of {' and '.join(fed.circuit.breakers)}")
    before = [parts[run] for run in way_before(house, fed.cablings, feeders)]
    whole = drop_along([*before, *own]) if before else along
    single = cabling.poles == 1 and not odd and not cabling.loops
    heaviest = max(
        ((part.lost.value, run) for run, part in zip(way, own, strict=True) if part.lost), default=None
    )
    return Lost(
        at=box,
        legs=legs,
        volts=LINE_TO_NEUTRAL if len(legs) == 1 else line_to_line(house),
        from_panel=_with_lacks(along.lost, near),
        from_service=_with_lacks(whole.lost, (*near, *far)),
        least=along.known if single and along.known > 0 else None,
        most_in=heaviest[1] if heaviest else None,
    )


def _with_lacks(worked: Worked, lacks: Iterable[str]) -> Worked:
    all_ = (*worked.lacks, *lacks)
    return lacking(all_, "V", worked.steps, worked.cites) if all_ else worked


def _odd_phases(house: House, legs: int) -> tuple[str, ...]:
    system = house.record.service.system if house.record.service else None
    if system == "120/208 V" and legs > 1:
        return ("how the currents of two legs of a 120/208 V supply add",)
    return ()
