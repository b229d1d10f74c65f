"""The load of each circuit, pole by pole: what it draws, what is left, what its neutral carries."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from junctionary.figures.circuits import CircuitLimit
from junctionary.figures.draws import Draw, together
from junctionary.figures.gaps import unseen_on
from junctionary.figures.receptacles import ReceptacleMatch
from junctionary.formulas.circuit_load import (
    Part,
    Room,
    connected_load,
    most_continuous,
    neutral_current,
    range_demand,
    room_left,
    sized_load,
)
from junctionary.formulas.receptacle import largest_cord_load
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, Worked, lacking
from junctionary.house.model import Circuit, House
from junctionary.house.network import poles
from junctionary.units import Quantity


@dataclass(frozen=True, slots=True)
class PoleLoad:
    """The load on one pole of a circuit, or on both of a breaker where all its loads are across both legs.

    ``draws`` may run together; ``left_out`` never run with them. ``connected`` is
    all of them as they are, ``load`` the same with a range by its demand, ``sized`` the load with
    125 % of what is continuous; each lacks what is not recorded, and then ``least_a`` and
    ``least_sized_a`` are what is certain. ``continuous_a`` is continuous, ``unsure`` may be, and
    ``perhaps_sized_a`` is what it must be sized for if they are. ``most_continuous`` is what may be
    continuous at most, and ``rating_a`` the breaker's. ``room`` is what can still be added; None where
    the breaker's rating is not recorded, and where the circuit has no light and no receptacle left free.
    """

    circuit: str
    breaker: str
    poles: tuple[str, ...]
    legs: tuple[str, ...]
    draws: tuple[Draw, ...]
    left_out: tuple[Draw, ...]
    connected: Worked
    load: Worked
    sized: Worked
    continuous_a: Fraction
    unsure: tuple[Draw, ...]
    perhaps_sized_a: Fraction
    most_continuous: Worked | None
    rating_a: Fraction | None
    room: Room | None

    @property
    def least_a(self) -> Fraction:
        """The load in A as far as it is recorded."""
        return self.load.steps[-1].value

    @property
    def least_sized_a(self) -> Fraction:
        """What it must be sized for, in A, as far as it is recorded."""
        return self.sized.steps[-1].value


@dataclass(frozen=True, slots=True)
class NeutralLoad:
    """What the shared neutral of a multiwire circuit carries, in A: with all recorded loads on, and at most.

    At most is with the loads of one leg alone, or with all where both hots are on one leg; where
    something is not recorded it may be more, and ``now`` lacks that.
    """

    first: PoleLoad
    second: PoleLoad
    now: Worked
    most_a: Fraction
    one_leg: bool


@dataclass(frozen=True, slots=True)
class CircuitLoads:
    """The loads of one circuit; ``draws`` are all on it, and ``lacks`` is all that may hide more.

    ``untold`` are draws of which it is not known on which pole they are. ``neutral`` is None
    where no two poles share one, or where a leg is not known.
    """

    circuit: str
    draws: tuple[Draw, ...]
    poles: tuple[PoleLoad, ...]
    untold: tuple[Draw, ...]
    neutral: NeutralLoad | None
    lacks: tuple[str, ...]


def circuit_loads(
    house: House,
    circuit: Circuit,
    draws: Iterable[Draw],
    limit: CircuitLimit,
    matches: Mapping[str, tuple[ReceptacleMatch, ...]],
) -> CircuitLoads:
    """The loads of one circuit, from the draws on it."""
    own = tuple(draws)
    on_pole: dict[str, list[Draw]] = {
        pole: [] for each in circuit.breakers for pole in poles(house.breakers[each])
    }
    untold = []
    for draw in own:
        at = [feed.pole for feed in draw.connection.feeds if feed.pole in on_pole]
        if not at and len(on_pole) == 1:
            at = list(on_pole)
        if not at:
            untold.append(draw)
        for pole in at:
            on_pole[pole].append(draw)
    faces = _matches(house, circuit, matches)
    # What devices draw by their kind tells a circuit of lamps; of what is plugged in only the record tells.
    drawn = "loads" in circuit.record.model_fields_set or (own and not faces)
    gaps = (
        *unseen_on(house, circuit),
        *(() if drawn else (f"what is drawn on circuit {circuit.id}",)),
        *(lack for each in own for lack in each.amps.lacks),
        *(lack for each in untold for lack in _where(each)),
    )
    lacks = tuple(dict.fromkeys(gaps))
    found = tuple(
        _pole_load(house, circuit, group, on_pole[group[0]], lacks, limit, faces)
        for group in _alike(on_pole, len(circuit.breakers) == 1)
    )
    return CircuitLoads(circuit.id, own, found, tuple(untold), _neutral(found, lacks), lacks)


def _where(draw: Draw) -> tuple[str, ...]:
    return draw.connection.lacks or (f"which leg feeds {draw.id}",)


def _alike(on_pole: Mapping[str, list[Draw]], one_breaker: bool) -> Iterator[tuple[str, ...]]:
    """Poles with the very same loads, all of them across both legs, are told once."""
    loads = list(on_pole.values())
    across = all(each.connection.returns == "leg" for own in loads for each in own)
    if len(loads) == 2 and across and loads[0] == loads[1] and (loads[0] or one_breaker):
        yield tuple(on_pole)
    else:
        yield from ((pole,) for pole in on_pole)


def _pole_load(
    house: House,
    circuit: Circuit,
    group: tuple[str, ...],
    draws: Iterable[Draw],
    lacks: tuple[str, ...],
    limit: CircuitLimit,
    faces: tuple[ReceptacleMatch, ...],
) -> PoleLoad:
    breaker = next(each for each in circuit.breakers if group[0] in poles(house.breakers[each]))
    rating = house.breakers[breaker].rating
    rating_a = rating.to("A") if isinstance(rating, Quantity) else None
    all_ = tuple(draws)
    kept = together(all_)
    edition = circuit.edition
    known = [each for each in kept if each.amps.value is not None]
    parts = [Part(each.amps.steps[-1], each.continuous is True) for each in known]
    by_demand = [Part(_by_demand(each, edition), each.continuous is True) for each in known]
    perhaps = [
        replace(each, continuous=each.continuous or draw.continuous is None)
        for each, draw in zip(by_demand, known, strict=True)
    ]
    legs = house.breakers[breaker].legs
    of_pole = dict(zip(poles(house.breakers[breaker]), legs, strict=True))
    load, sized = connected_load(by_demand, lacks), sized_load(by_demand, edition, lacks)
    return PoleLoad(
        circuit=circuit.id,
        breaker=breaker,
        poles=group,
        legs=tuple(leg for pole in group if (leg := of_pole.get(pole)) is not None),
        draws=kept,
        left_out=tuple(each for each in all_ if each not in kept),
        connected=connected_load(parts, lacks),
        load=load,
        sized=sized,
        continuous_a=sum((each.drawn.value for each in by_demand if each.continuous), Fraction(0)),
        unsure=tuple(each for each in known if each.continuous is None),
        perhaps_sized_a=sized_load(perhaps, edition).steps[-1].value,
        most_continuous=most_continuous(rating_a, edition) if rating_a is not None else None,
        rating_a=rating_a,
        room=_room(circuit, rating_a, sized, limit, faces, lacks)
        if _takes_more(circuit, all_, faces)
        else None,
    )


def _by_demand(draw: Draw, edition: str) -> Step:
    """A range counts by its demand on its own circuit; everything else as it draws."""
    if draw.is_ == "range" and draw.volt_amps.value is not None and draw.volts is not None:
        return range_demand(draw.id, draw.volt_amps.value, draw.volts, edition)
    return draw.amps.steps[-1]


def _room(
    circuit: Circuit,
    rating_a: Fraction | None,
    sized: Worked,
    limit: CircuitLimit,
    faces: tuple[ReceptacleMatch, ...],
    lacks: tuple[str, ...],
) -> Room | None:
    """What can still be added behind the breaker, or less where the wire allows less; None where unrated."""
    if rating_a is None or not limit.branch:
        return None
    wire = limit.limiting
    wire_a = wire.breaker.value if wire is not None else None
    allowed, rated = rating_a, f"the {plain(rating_a)} A breaker"
    if wire is not None and wire_a is not None and wire_a < rating_a:
        allowed, rated = wire_a, f"the {plain(wire_a)} A that {wire.called} allows"
    gaps = (*lacks, *limit.breaker.lacks)
    return room_left(
        allowed, rated, sized.steps[-1].value, _cord(circuit, rating_a, faces), circuit.edition, gaps
    )


def _takes_more(circuit: Circuit, draws: Iterable[Draw], faces: tuple[ReceptacleMatch, ...]) -> bool:
    """Whether anything can be added: not where one appliance has the circuit and its only receptacle."""
    kept = tuple(draws)
    count = next((each.count for each in faces if each.count), None)
    plugged = sum(1 for each in kept if each.plugged)
    free = not circuit.boxes if count is None else bool(count.lacks) or count.counted > plugged
    return free or any(each.is_ == "lighting" and not each.plugged for each in kept)


def _matches(
    house: House, circuit: Circuit, matches: Mapping[str, tuple[ReceptacleMatch, ...]]
) -> tuple[ReceptacleMatch, ...]:
    """The receptacles of a circuit, each held against its breaker."""
    devices = (device.id for box in circuit.boxes for device in house.boxes[box].devices)
    return tuple(each for id_ in devices for each in matches.get(id_, ()) if each.circuit == circuit.id)


def _cord(circuit: Circuit, rating_a: Fraction, faces: tuple[ReceptacleMatch, ...]) -> Worked | None:
    """The most one plugged load may draw in any receptacle of a circuit, None where it has none."""
    limits = [
        largest_cord_load(
            rating_a, each.rating_a, each.count.outlets if each.count else None, circuit.edition
        )
        for each in faces
        if each.rating_a is not None
    ]
    known = [each for each in limits if each.value is not None]
    return max(known, key=lambda each: each.value or Fraction(0), default=limits[0] if limits else None)


def _neutral(found: tuple[PoleLoad, ...], lacks: tuple[str, ...]) -> NeutralLoad | None:
    """The shared neutral of two poles; None for one pole, for loads across both alone, or an unknown leg."""
    if len(found) != 2 or not all(each.legs for each in found):
        return None
    first, second = found
    one_leg = first.legs == second.legs
    back = _sent_back(first), _sent_back(second)
    now = neutral_current(back, "same" if one_leg else "opposite")
    most = now.steps[-1].value if one_leg else max(value for _, value in back)
    if lacks:
        # What is not known may be on either leg, and make the difference smaller or larger.
        now = lacking(lacks, "A", now.steps, now.cites)
    return NeutralLoad(first, second, now, most, one_leg)


def _sent_back(pole: PoleLoad) -> tuple[str, Fraction]:
    drawn = (each.amps.value for each in pole.draws if each.connection.returns == "neutral")
    return f"{pole.poles[0]}, leg {pole.legs[0]},", sum((each for each in drawn if each), Fraction(0))
