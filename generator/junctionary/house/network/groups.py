"""Which circuits must be dead together: the closure that isolation rests on, worked out once for a house.

Circuits are of one group where any of their conductors other than grounds
meet short of a panel's bars, where two of them come to one device or to one
strap, and where one circuit has several breakers. Whoever opens a box switches
off the breakers of every group of which a conductor is in it.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from junctionary.house.model import House
from junctionary.house.network.disjoint import DisjointSets
from junctionary.house.network.ties import Tie, Zoned, called, ties_of
from junctionary.house.network.unknowns import Unknown, is_untraced


@dataclass(frozen=True, slots=True)
class Group:
    """Circuits that must be dead together.

    ``breakers`` stand in the order of the record. ``why`` says of a breaker
    what ties it to the others; ``sources`` are second sources that make some
    of it live themselves; ``unknown`` are reasons why more may belong to it;
    ``may_join`` are groups it may meet in a box whose make-up is not known,
    each with the reason.
    """

    circuits: tuple[str, ...]
    breakers: tuple[str, ...]
    why: Mapping[str, tuple[str, ...]]
    sources: tuple[str, ...]
    unknown: tuple[str, ...]
    may_join: tuple[tuple[int, str], ...]


@dataclass(frozen=True, slots=True)
class Groups:
    """Every group of a house; a zone or a circuit is of one, a run may be of several."""

    each: tuple[Group, ...]
    of_zone: Mapping[int, int]
    of_circuit: Mapping[str, int]
    of_run: Mapping[str, tuple[int, ...]]


@dataclass(slots=True)
class _Gathering:
    """What is found of one group, thing by thing."""

    circuits: dict[str, None] = field(default_factory=dict)
    breakers: dict[str, None] = field(default_factory=dict)
    why: dict[str, dict[str, None]] = field(default_factory=dict)
    sources: dict[str, None] = field(default_factory=dict)
    unknown: dict[str, None] = field(default_factory=dict)
    may_join: dict[tuple[int, str], None] = field(default_factory=dict)


def groups_of(house: House, zoned: Zoned, unknowns: Iterable[Unknown]) -> Groups:
    """Every group of the house; near-linear in its conductors."""
    ties = tuple(ties_of(house, zoned))
    keys: list[tuple[str, int | str]] = [
        *(("zone", number) for number, zone in enumerate(zoned.zones) if zone.carries),
        *(("circuit", each) for each in house.circuits),
        *(("breaker", each) for each in house.breakers),
    ]
    numbers = {key: number for number, key in enumerate(keys)}
    sets = DisjointSets(len(keys))
    for tie in ties:
        for other in tie.members[1:]:
            sets.join(numbers[tie.members[0]], numbers[other])
    parts = dict(zip(keys, sets.numbered(), strict=True))
    found = [_Gathering() for _ in range(max(parts.values(), default=-1) + 1)]
    for (kind, each), number in parts.items():
        if isinstance(each, int):
            _from_zone(found[number], zoned, each)
        elif kind == "breaker":
            found[number].breakers[each] = None
        elif not is_untraced(house, each):
            found[number].circuits[each] = None
    for tie in ties:
        gathering = found[parts[tie.members[0]]]
        for breaker in _breakers_of(house, zoned, tie):
            if tie.why is not None:
                gathering.why.setdefault(breaker, {})[tie.why] = None
    of_zone = {each: number for (_, each), number in parts.items() if isinstance(each, int)}
    of_circuit = {each: parts["circuit", each] for each in house.circuits}
    of_run = _groups_of_runs(house, zoned, of_zone, of_circuit)
    _put_in_doubt(found, unknowns, zoned, of_zone, of_run)
    _unfed(house, found, zoned, of_circuit)
    order = {each: number for number, each in enumerate(house.breakers)}
    return Groups(tuple(_frozen(each, order) for each in found), of_zone, of_circuit, of_run)


def _frozen(found: _Gathering, order: Mapping[str, int]) -> Group:
    return Group(
        circuits=tuple(found.circuits),
        breakers=tuple(sorted(found.breakers, key=order.__getitem__)),
        why={each: tuple(reasons) for each, reasons in found.why.items()},
        sources=tuple(found.sources),
        unknown=tuple(found.unknown),
        may_join=tuple(found.may_join),
    )


def _from_zone(found: _Gathering, zoned: Zoned, number: int) -> None:
    """What a zone itself brings: its sources, and the breakers through which one can feed back into it."""
    zone = zoned.zones[number]
    found.sources.update(dict.fromkeys(zone.sources))
    for feed in zone.backfed:
        found.breakers[feed.breaker] = None
        found.why.setdefault(feed.breaker, {})["a second source can feed back through it"] = None


def _breakers_of(house: House, zoned: Zoned, tie: Tie) -> Iterable[str]:
    """The breakers that a tie brings in: named, feeding a circuit of it, or making a zone of it live."""
    for kind, each in tie.members:
        if kind == "breaker":
            yield str(each)
        elif kind == "circuit":
            yield from house.circuits[str(each)].breakers
        elif isinstance(each, int):
            yield from (feed.breaker for feed in zoned.zones[each].feeds)


def _groups_of_runs(
    house: House, zoned: Zoned, of_zone: Mapping[int, int], of_circuit: Mapping[str, int]
) -> dict[str, tuple[int, ...]]:
    """By run: the group of its circuit, and those that its conductors meet."""
    found: dict[str, dict[int, None]] = {
        run.id: {of_circuit[run.circuit]: None}
        if run.circuit in of_circuit and not is_untraced(house, run.circuit)
        else {}
        for run in house.runs.values()
    }
    for number, group in of_zone.items():
        for run_id in zoned.zones[number].runs:
            found[run_id][group] = None
    return {run_id: tuple(groups) for run_id, groups in found.items()}


def _put_in_doubt(
    found: list[_Gathering],
    unknowns: Iterable[Unknown],
    zoned: Zoned,
    of_zone: Mapping[int, int],
    of_run: Mapping[str, tuple[int, ...]],
) -> None:
    """Note each missing fact with every group that it touches.

    A ground is followed by the circuits of its runs only: grounds meet all
    over a house, and one end that nobody wrote down would put all of it in
    doubt.
    """
    for unknown in unknowns:
        touched: dict[int, None] = {}
        for point in unknown.points:
            group = of_zone.get(zoned.at.get(point, -1))
            if group is not None:
                touched[group] = None
        for run in unknown.runs:
            touched.update(dict.fromkeys(of_run.get(run, ())))
        for group in touched:
            found[group].unknown[unknown.reason] = None
            if unknown.box is not None:
                others = (each for each in touched if each != group)
                found[group].may_join.update(
                    dict.fromkeys((each, f"may be joined to it: {unknown.reason}") for each in others)
                )


def _unfed(house: House, found: list[_Gathering], zoned: Zoned, of_circuit: Mapping[str, int]) -> None:
    """Circuits of which nothing tells the breaker, by the panels' words or by the conductors."""
    fed = {
        house.runs[run].circuit
        for zone in zoned.zones
        if zone.feeds or zone.sources
        for run in zone.runs
        if zone.carries
    }
    for circuit in house.circuits.values():
        silent = circuit.runs and not circuit.breakers and circuit.id not in fed
        if silent and not is_untraced(house, circuit.id):
            reason = f"no breaker is recorded as feeding {called(house, (circuit.id,))}"
            found[of_circuit[circuit.id]].unknown[reason] = None
