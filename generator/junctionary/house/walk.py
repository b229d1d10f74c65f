"""Walks over the network: fewest joints from a point to a breaker or a bar, and on from panel to panel."""

from collections import deque
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.model import House
from junctionary.house.network import Edge, Network, is_service_panel
from junctionary.house.network.edges import OPEN_IN_ZONES
from junctionary.house.network.panel_wiring import SERVICE


@dataclass(frozen=True, slots=True)
class Walk:
    """Points in order, one more than the edges between; ``complete`` when it came to the utility's panel."""

    points: tuple[str, ...]
    edges: tuple[Edge, ...]
    complete: bool


def hot_walks(network: Network, start: str) -> tuple[Walk, ...]:
    """From a point to every breaker pole that makes it live, and on to the utility; empty where none does."""
    feeds = network.zone_of(start).feeds
    found = _reach(network, start, [feed.pole for feed in feeds])
    walks = [_onward(network, start, [*found[feed.pole], feed.edge], feed.supply) for feed in feeds]
    line = None if feeds else _unswitched(network, start)
    return (*walks, _walk(start, [line], complete=True)) if line is not None else tuple(walks)


def _onward(network: Network, start: str, edges: list[Edge], supply: str) -> Walk:
    """On from the supply side of a breaker, panel by panel, until the utility or the end of the record."""
    seen: set[int] = set()
    while not supply.startswith(f"{SERVICE}/"):
        number = network.zone_at[supply]
        feeds = network.zones[number].feeds
        if number in seen or not feeds:
            line = _unswitched(network, supply)
            return _walk(start, edges if line is None else [*edges, line], complete=line is not None)
        seen.add(number)
        edges = [*edges, *_reach(network, supply, [feeds[0].pole])[feeds[0].pole], feeds[0].edge]
        supply = feeds[0].supply
    return _walk(start, edges, complete=True)


def _unswitched(network: Network, bus: str) -> Edge | None:
    """The service conductors of a panel without a main."""
    return next((edge for edge in network.at[bus] if edge.kind == "service" and edge.b == bus), None)


def bar_walk(house: House, network: Network, start: str, role: str, circuits: frozenset[str]) -> Walk | None:
    """From a point to a panel's bar, and on to that of the panel the utility feeds; None where no bar is met.

    ``role`` is neutral or ground. The runs of ``circuits`` are preferred: the
    grounds of several circuits meet in many a box, and it is the way by the
    point's own that is asked for.
    """
    edges: list[Edge] = []
    bar = start
    if not _is_bar(house, start, role):
        first = _to_bar(house, network, start, role, circuits) or _to_bar(house, network, start, role, None)
        if first is None:
            return None
        edges, bar = first, first[-1].b
    seen: set[str] = set()
    while True:
        panel = house.panels[bar.rpartition("/")[0]]
        onward = None if panel.id in seen else _by_feeder(house, network, bar, panel.feeder)
        if is_service_panel(house, panel) or onward is None:
            return _walk(start, edges, complete=is_service_panel(house, panel))
        seen.add(panel.id)
        edges, bar = [*edges, *onward], onward[-1].b


def _is_bar(house: House, point: str, role: str) -> bool:
    panel, _, bar = point.rpartition("/")
    return bar == role and panel in house.panels


def _to_bar(
    house: House, network: Network, start: str, role: str, circuits: frozenset[str] | None
) -> list[Edge] | None:
    """Edges to the nearest bar of this role, or to the other bar of a panel where the two are bonded."""
    zone = network.zone_of(start)
    if role == "neutral" and not zone.carries:
        return None
    own = {edge.a: edge for edge in zone.bars if edge.b.endswith(f"/{role}")}
    if not own and (role == "neutral" or not zone.carries):
        own = {edge.a: edge for edge in zone.bars if edge.b.rpartition("/")[0] in network.bonded}

    def allowed(edge: Edge) -> bool:
        return circuits is None or edge.kind != "conductor" or house.runs[edge.of].circuit in circuits

    found = _reach(network, start, own, allowed, first_only=True)
    return next(([*edges, own[point]] for point, edges in found.items()), None)


def _by_feeder(house: House, network: Network, bar: str, feeder: str | None) -> list[Edge] | None:
    """Edges from a subpanel's bar back along its feeder to the bar it comes from."""
    panel, _, role = bar.rpartition("/")
    for edge in network.at[bar]:
        if edge.kind == "bar" and house.runs[edge.of].circuit == feeder:
            bars = network.zone_of(edge.a).bars
            others = {each.a: each for each in bars if each.b.rpartition("/")[0] != panel}
            exact = {point: each for point, each in others.items() if each.b.endswith(f"/{role}")}
            found = _reach(network, edge.a, exact or others, first_only=True)
            for point, edges in found.items():
                return [edge, *edges, others[point]]
    return None


def _anything(_: Edge) -> bool:
    return True


def _reach(
    network: Network,
    start: str,
    targets: Iterable[str],
    allowed: Callable[[Edge], bool] = _anything,
    *,
    first_only: bool = False,
) -> dict[str, list[Edge]]:
    """The fewest edges to each target without leaving the zone, or to the nearest target alone."""
    left = set(targets)
    found: dict[str, list[Edge]] = {}
    came: dict[str, tuple[str, Edge] | None] = {start: None}
    waiting = deque([start] if left else [])
    while waiting and left:
        point = waiting.popleft()
        if point in left:
            left.discard(point)
            found[point] = _back(came, point)
            if first_only:
                break
        for edge in network.at[point]:
            other = edge.other(point)
            if edge.kind not in OPEN_IN_ZONES and other not in came and allowed(edge):
                came[other] = (point, edge)
                waiting.append(other)
    return found


def _back(came: Mapping[str, tuple[str, Edge] | None], point: str) -> list[Edge]:
    edges: list[Edge] = []
    while (step := came[point]) is not None:
        point, edge = step
        edges.append(edge)
    return edges[::-1]


def _walk(start: str, edges: Iterable[Edge], *, complete: bool) -> Walk:
    points, edges = [start], tuple(edges)
    for edge in edges:
        points.append(edge.other(points[-1]))
    return Walk(tuple(points), edges, complete)
