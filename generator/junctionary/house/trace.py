"""The way from any point back to its source, joint by joint, for hot, neutral and ground.

Every switch counts as closed. The hot way runs through the breaker and the
bus, and where the panel is a subpanel through its feeder, to the utility; the
neutral and ground ways to the bars of the panel the utility feeds. A loop in the
wiring has two ways; the one with fewest joints is given.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from junctionary.house.model import House, Role
from junctionary.house.network import Edge, Network
from junctionary.house.terminals import HALVES
from junctionary.house.walk import Walk, bar_walk, hot_walks
from junctionary.units import Quantity


@dataclass(frozen=True, slots=True)
class Length:
    """How long some runs are together: ``total`` is None where any is unrecorded.

    ``known`` is the sum of those recorded, in ft; ``missing`` are the others.
    """

    total: Quantity | None
    known: Quantity
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Protector:
    """What guards a way: a breaker or a GFCI device, and against what (gfci, afci).

    ``guards`` is None where it is not recorded what a breaker guards against.
    """

    id: str
    guards: tuple[str, ...] | None


@dataclass(frozen=True, slots=True)
class Way:
    """One way from a point toward its source, edge by edge.

    ``points`` are one more than ``edges``, the start first. ``complete`` when
    it ends at the utility, or at the bar of the panel that the utility feeds;
    otherwise it stops where the record does. ``breakers`` and ``protectors``
    stand nearest first.
    """

    role: Role
    points: tuple[str, ...]
    edges: tuple[Edge, ...]
    complete: bool
    breakers: tuple[str, ...]
    protectors: tuple[Protector, ...]
    runs: tuple[str, ...]
    length: Length


@dataclass(frozen=True, slots=True)
class Path:
    """The ways of one thing: several hot ones where it has two legs, or where two breakers reach it.

    A role with no way is an empty tuple: nothing recorded leads there.
    ``unknown`` says what the starting points meet that nobody could tell.
    """

    of: str
    hot: tuple[Way, ...]
    neutral: tuple[Way, ...]
    ground: tuple[Way, ...]
    unknown: tuple[str, ...]


def trace(house: House, network: Network, of: str) -> Path:
    """The ways of a device (``K1.r1``), half of one (``K1.r1.top``), a terminal, or any point of the network.

    A terminal is traced with the other terminals of its half, or of its side
    of a GFCI device. KeyError where nothing has that name.
    """
    starts = starts_of(house, network, of)
    circuits = frozenset(
        house.runs[run].circuit
        for role in ("hot", "neutral")
        for start in starts[role]
        for run in network.zone_of(start).runs
    )
    hot = [walk for start in starts["hot"] for walk in hot_walks(network, start)]
    neutral, ground = (
        [bar_walk(house, network, start, role, circuits) for start in starts[role]]
        for role in ("neutral", "ground")
    )
    everywhere = dict.fromkeys(start for points in starts.values() for start in points)
    reasons = (reason for start in everywhere for reason in network.roles(start).unknown)
    return Path(
        of=of,
        hot=_ways(house, "hot", hot),
        neutral=_ways(house, "neutral", neutral),
        ground=_ways(house, "ground", ground),
        unknown=tuple(dict.fromkeys(reasons)),
    )


def starts_of(house: House, network: Network, of: str) -> Mapping[str, tuple[str, ...]]:
    """By role, the points from which a thing is traced. KeyError where nothing has that name."""
    if of in house.devices:
        return _by_role(network, network.index.terminals[of])
    device, _, part = of.rpartition(".")
    if device not in house.devices:
        network.zone_of(of)
        return {"hot": (of,), "neutral": (of,), "ground": (of,)}
    own = network.index.terminals[device]
    if part not in HALVES and of not in own:
        raise KeyError(of)
    side, _, half = part.rpartition("-") if part not in HALVES else ("", "", part)
    alike = [each for each in own if half in HALVES and each.endswith(f"-{half}")]
    alike = alike or [each for each in own if side in ("line", "load") and f".{side}-" in each]
    if not alike and part in HALVES:
        raise KeyError(of)
    grounds = [each for each in own if network.terminals[each].role == "ground"]
    return _by_role(network, tuple(dict.fromkeys((*(alike or [of]), *grounds))))


def length_of(house: House, runs: Iterable[str]) -> Length:
    """How long these runs are together, and which of them have no length on record."""
    known, missing = Fraction(0), []
    for each in runs:
        length = house.runs[each].length
        if isinstance(length, Quantity):
            known += length.to("ft")
        else:
            missing.append(each)
    total = Quantity(known, "ft", "length")
    return Length(None if missing else total, total, tuple(missing))


def _by_role(network: Network, names: Iterable[str]) -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {"hot": [], "neutral": [], "ground": []}
    for name in names:
        role = network.terminals[name].role
        found[role if role in found else "hot"].append(name)
    return {role: tuple(each) for role, each in found.items()}


def _ways(house: House, role: Role, walks: Iterable[Walk | None]) -> tuple[Way, ...]:
    """Each way once: a terminal through which another's way leads needs none of its own."""
    some = [walk for walk in walks if walk is not None]
    through = {point for walk in some for point in walk.points[1:]}
    return tuple(_way(house, role, walk) for walk in some if walk.points[0] not in through)


def _way(house: House, role: Role, walk: Walk) -> Way:
    runs = tuple(dict.fromkeys(edge.of for edge in walk.edges if edge.kind == "conductor"))
    return Way(
        role=role,
        points=walk.points,
        edges=walk.edges,
        complete=walk.complete,
        breakers=tuple(dict.fromkeys(edge.of for edge in walk.edges if edge.kind in ("breaker", "main"))),
        protectors=tuple(_protectors(house, walk.edges)),
        runs=runs,
        length=length_of(house, runs),
    )


def _protectors(house: House, edges: Iterable[Edge]) -> Iterable[Protector]:
    for edge in edges:
        if edge.kind == "protector":
            yield Protector(edge.of, ("gfci",))
        elif edge.kind == "breaker":
            guards = house.breakers[edge.of].guards
            if guards is None or guards:
                yield Protector(edge.of, guards)
