"""Nets and zones: what is one electrical point, with every switch open and with every switch closed.

A net has every switch, breaker and bond open. A zone has the contacts of
switches and GFCI devices closed, and is cut at breakers and at the panels'
buses and bars: so two neutrals that meet only at a bar are two zones, and
two that are joined in a box are one.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from junctionary.house.model import House
from junctionary.house.network.disjoint import DisjointSets
from junctionary.house.network.edges import OPEN_IN_NETS, OPEN_IN_ZONES, Edge
from junctionary.house.network.panel_ends import is_ground
from junctionary.house.network.unknowns import Unknown
from junctionary.house.terminals import Terminal


@dataclass(frozen=True, slots=True)
class Feed:
    """One pole that makes a zone live: its breaker, its load terminal, the point before it, its leg."""

    breaker: str
    pole: str
    supply: str
    leg: str | None
    edge: Edge


@dataclass(frozen=True, slots=True)
class Net:
    """One electrical point with every switch, breaker and bond open.

    ``feeds`` are the breaker poles on it; ``neutral`` and ``ground`` the
    panels whose bars are on it.
    """

    points: tuple[str, ...]
    feeds: tuple[Feed, ...]
    neutral: tuple[str, ...]
    ground: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Zone:
    """What is one point with every switch closed, short of breakers and of the panels' buses and bars.

    ``feeds`` make it live, ``onward`` are the poles it supplies; ``bars`` are
    the landings of its conductors on bars; ``runs`` have a conductor in it.
    ``sources`` are second sources that make it live themselves, ``backfed``
    the poles of ``onward`` behind which there is one. It ``carries`` unless
    only grounds, and what is bonded, are in it. ``unknown`` says what it meets
    that nobody could tell or nobody wrote down.
    """

    points: tuple[str, ...]
    feeds: tuple[Feed, ...]
    onward: tuple[Feed, ...]
    bars: tuple[Edge, ...]
    runs: tuple[str, ...]
    sources: tuple[str, ...]
    backfed: tuple[Feed, ...]
    carries: bool
    unknown: tuple[Unknown, ...]


def numbered(points: Mapping[str, int], edges: Iterable[Edge], open_kinds: frozenset[str]) -> list[int]:
    """For each point the number of its part when edges of these kinds are open; near-linear in the edges."""
    sets = DisjointSets(len(points))
    for edge in edges:
        if edge.kind not in open_kinds:
            sets.join(points[edge.a], points[edge.b])
    return sets.numbered()


def parts(points: Mapping[str, int], numbers: Sequence[int]) -> list[list[str]]:
    """The points of each part, by its number."""
    found: list[list[str]] = [[] for _ in range(max(numbers, default=-1) + 1)]
    for point, number in zip(points, numbers, strict=True):
        found[number].append(point)
    return found


def feed_of(house: House, edge: Edge) -> Feed:
    """The pole of a breaker's or a main's edge."""
    breaker = house.breakers.get(edge.of)
    leg = None
    if breaker is not None and edge.kind == "breaker":
        space = edge.b.rpartition("/")[2]
        leg = dict(zip(breaker.spaces, breaker.legs, strict=True)).get(space)
    elif edge.kind == "main":
        bus = edge.b.rpartition("/")[2]
        leg = bus if bus in ("A", "B") else None
    return Feed(edge.of, edge.b, edge.a, leg, edge)


def nets_of(
    house: House, points: Mapping[str, int], edges: Iterable[Edge]
) -> tuple[tuple[Net, ...], list[int]]:
    """Every net, and for each point the number of its net."""
    edges = list(edges)
    numbers = numbered(points, edges, OPEN_IN_NETS)
    feeds: dict[int, list[Feed]] = {}
    for edge in edges:
        if edge.kind in ("breaker", "main"):
            feeds.setdefault(numbers[points[edge.b]], []).append(feed_of(house, edge))
    bars: dict[tuple[int, str], list[str]] = {}
    for panel in house.panels:
        for bar in ("neutral", "ground"):
            bars.setdefault((numbers[points[f"{panel}/{bar}"]], bar), []).append(panel)
    nets = tuple(
        Net(
            points=tuple(each),
            feeds=tuple(feeds.get(number, ())),
            neutral=tuple(bars.get((number, "neutral"), ())),
            ground=tuple(bars.get((number, "ground"), ())),
        )
        for number, each in enumerate(parts(points, numbers))
    )
    return nets, numbers


@dataclass(slots=True)
class _Gathering:
    """What is found of one zone, edge by edge."""

    feeds: list[Feed]
    onward: list[Feed]
    bars: list[Edge]
    runs: dict[str, None]
    sources: dict[str, None]
    unknown: dict[Unknown, None]
    carries: bool = False
    behind: bool = False
    """Whether a second source can make it live."""


def zones_of(
    house: House,
    points: Mapping[str, int],
    edges: Iterable[Edge],
    terminals: Mapping[str, Terminal],
    entries: Mapping[str, tuple[str, ...]],
    unknowns: Iterable[Unknown],
) -> tuple[tuple[Zone, ...], list[int]]:
    """Every zone, and for each point the number of its zone."""
    edges = list(edges)
    numbers = numbered(points, edges, OPEN_IN_ZONES)
    members = parts(points, numbers)
    found = [_Gathering([], [], [], {}, {}, {}) for _ in members]
    for edge in edges:
        zone = found[numbers[points[edge.b]]]
        if edge.kind in ("breaker", "main"):
            feed = feed_of(house, edge)
            supply = found[numbers[points[edge.a]]]
            zone.feeds.append(feed)
            supply.onward.append(feed)
            zone.carries = supply.carries = True
        elif edge.kind == "bar":
            found[numbers[points[edge.a]]].bars.append(edge)
        elif edge.kind == "conductor":
            zone.runs[edge.of] = None
            zone.carries = zone.carries or not is_ground(edge.a.rpartition(".")[2])
        elif edge.kind in ("bus", "feeder"):
            zone.carries = True
    for name, terminal in terminals.items():
        if terminal.role != "ground":
            found[numbers[points[name]]].carries = True
    for source, names in entries.items():
        for name in names:
            zone = found[numbers[points[name]]]
            zone.sources[source] = None
            zone.carries = True
    for unknown in unknowns:
        for name in unknown.points:
            if name in points:
                found[numbers[points[name]]].unknown[unknown] = None
    _mark_behind(found, numbers, points)
    return tuple(
        Zone(
            points=tuple(each),
            feeds=tuple(zone.feeds),
            onward=tuple(zone.onward),
            bars=tuple(zone.bars),
            runs=tuple(zone.runs),
            sources=tuple(zone.sources),
            backfed=tuple(feed for feed in zone.onward if found[numbers[points[feed.pole]]].behind),
            carries=zone.carries,
            unknown=tuple(zone.unknown),
        )
        for each, zone in zip(members, found, strict=True)
    ), numbers


def _mark_behind(found: list[_Gathering], numbers: Sequence[int], points: Mapping[str, int]) -> None:
    """Follow every second source toward the service, through each breaker that stands between."""
    waiting = [zone for zone in found if zone.sources]
    while waiting:
        zone = waiting.pop()
        if not zone.behind:
            zone.behind = True
            waiting += [found[numbers[points[feed.supply]]] for feed in zone.feeds]
