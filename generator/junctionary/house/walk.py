"""Walks over the network: the fewest joints from a point to a breaker or a bar, and on from panel to panel."""

from collections import deque
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.model import House
from junctionary.house.network import Edge, Network, is_service_panel
from junctionary.house.network.edges import OPEN_IN_ZONES
from junctionary.house.network.panel_wiring import SERVICE


@dataclass(frozen=True, slots=True)
class Walk:
    """Points in order, one more than the edges between them; ``complete`` when it came to the utility's panel."""

    points: tuple[str, ...]
    edges: tuple[Edge, ...]
    complete: bool


def hot_walks(network: Network, start: str) -> tuple[Walk, ...]:
    """From a point to every breaker pole that makes it live, and on to the utility; none where no pole does."""
    zone = network.zone_of(start)
    found = _reach(network, start, [feed.pole for feed in zone.feeds])
    walks = []
    for feed in zone.feeds:
        if feed.pole in found:
            edges = [*found[feed.pole], _pole(network, feed.pole, feed.supply)]
            walks.append(_walk(start, *_onward(network, edges, feed.supply)))
    if not zone.feeds and (line := _unswitched(network, start)) is not None:
        walks.append(_walk(start, [line], True))
    return tuple(walks)


def _onward(network: Network, edges: list[Edge], supply: str) -> tuple[list[Edge], bool]:
    """From the supply side of a breaker, panel by panel, until the utility or the end of the record."""
    seen: set[int] = set()
    while not supply.startswith(f"{SERVICE}/"):
        number = network.zone_at[supply]
        feeds = network.zones[number].feeds
        if number in seen or not feeds:
            line = _unswitched(network, supply)
            return (edges, False) if line is None else ([*edges, line], True)
        seen.add(number)
        between = _reach(network, supply, [feeds[0].pole])[feeds[0].pole]
        edges = [*edges, *between, _pole(network, feeds[0].pole, feeds[0].supply)]
        supply = feeds[0].supply
    return edges, True


def _unswitched(network: Network, bus: str) -> Edge | None:
    """The service conductors of a panel without a main."""
    return next((edge for edge in network.at[bus] if edge.kind == "service" and edge.b == bus), None)


def _pole(network: Network, pole: str, supply: str) -> Edge:
    return next(
        edge
        for edge in network.at[pole]
        if edge.kind in ("breaker", "main") and (edge.a, edge.b) == (supply, pole)
    )


def bar_walk(house: House, network: Network, start: str, role: str, circuits: frozenset[str]) -> Walk | None:
    """From a point to a panel's bar for this role, and on to that of the panel the utility feeds, or None.

    The runs of ``circuits`` are preferred: the grounds of several circuits
    meet in many a box, and the way back by the point's own is asked for.
    """
    if start.endswith((f"/{role}",)) and start in _bars(house):
        bar, edges = start, list[Edge]()
    else:
        first = _to_bar(house, network, start, role, circuits) or _to_bar(house, network, start, role, None)
        if first is None:
            return None
        bar, edges = first
    seen: set[str] = set()
    while True:
        panel = house.panels[bar.rpartition("/")[0]]
        if is_service_panel(house, panel):
            return _walk(start, edges, True)
        onward = None if panel.id in seen else _by_feeder(house, network, bar, panel.feeder, role)
        if onward is None:
            return _walk(start, edges, False)
        seen.add(panel.id)
        bar, edges = onward[0], [*edges, *onward[1]]
