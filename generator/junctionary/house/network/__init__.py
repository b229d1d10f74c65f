"""The conductor network of a house: what is connected to what, from the make-up and not from colours.

Points are named as answers name them: conductor end ``K1/a1.black``, joint
``K1/j1``, terminal ``K1.r1.brass-top``, box metal ``K1/box``, jumper
``K1/g1``, breaker load terminal ``main/6``, bus ``main/A``, bar
``main/neutral``, the utility ``service/A``. Loads are no edges.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.model import House
from junctionary.house.network.edges import SWITCHED, Edge, EdgeKind
from junctionary.house.network.groups import Group, Groups, groups_of
from junctionary.house.network.index import Index, carrying_of, index_of
from junctionary.house.network.panel_ends import breaker_named, is_ground, landing_edges
from junctionary.house.network.panel_wiring import (
    bar_of,
    buses,
    has_main,
    is_service_panel,
    panel_edges,
    poles,
)  # fmt: skip
from junctionary.house.network.second_sources import entering, entries_of
from junctionary.house.network.ties import Zoned, called, listed
from junctionary.house.network.unknowns import Unknown, end_name, is_untraced, unknowns_of
from junctionary.house.network.wiring import (
    box_edges,
    device_edges,
    run_edges,
    spoken_colours,
    terminals_of_all,
)  # fmt: skip
from junctionary.house.network.zones import Feed, Net, Zone, nets_of, zones_of
from junctionary.house.terminals import Terminal

__all__ = [
    "SWITCHED",
    "Edge",
    "EdgeKind",
    "Feed",
    "Group",
    "Groups",
    "Index",
    "Net",
    "Network",
    "Roles",
    "Unknown",
    "Zone",
    "bar_of",
    "breaker_named",
    "called",
    "end_name",
    "entering",
    "has_main",
    "is_ground",
    "is_service_panel",
    "is_untraced",
    "listed",
    "network",
    "poles",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Roles:
    """What a point is, every switch closed: live from these poles, on the way to these panels' bars.

    ``neutral`` and ``ground`` are panels; ``sources`` are second sources that
    make it live themselves; ``unknown`` says what the point meets that nobody
    could tell or wrote down.
    """

    hot: tuple[Feed, ...]
    neutral: tuple[str, ...]
    ground: tuple[str, ...]
    sources: tuple[str, ...]
    unknown: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Network:
    """The graph of a house's conductors, built once, and what is asked of it.

    ``at`` gives the edges that meet a point, and has every point as a key.
    ``entries`` are the points each second source makes live; ``bonded`` the
    panels whose neutral and ground are joined.
    """

    edges: tuple[Edge, ...]
    at: Mapping[str, tuple[Edge, ...]]
    terminals: Mapping[str, Terminal]
    nets: tuple[Net, ...]
    zones: tuple[Zone, ...]
    net_at: Mapping[str, int]
    zone_at: Mapping[str, int]
    groups: Groups
    entries: Mapping[str, tuple[str, ...]]
    unknowns: tuple[Unknown, ...]
    bonded: frozenset[str]
    index: Index

    def net_of(self, point: str) -> Net:
        """The net a point is on: every switch, breaker and bond open. KeyError where no such point is."""
        return self.nets[self.net_at[point]]

    def zone_of(self, point: str) -> Zone:
        """The zone a point is in: every switch closed, cut at breakers, buses and bars. KeyError likewise."""
        return self.zones[self.zone_at[point]]

    def roles(self, point: str) -> Roles:
        """What a point is with every switch closed. KeyError where there is no such point."""
        zone = self.zone_of(point)
        bars = [tuple(edge.b.rsplit("/", 1)) for edge in zone.bars]
        bars += [tuple(point.rsplit("/", 1))] if point.endswith(("/neutral", "/ground")) else []
        neutral = {panel: None for panel, bar in bars if bar == "neutral"}
        ground = {panel: None for panel, bar in bars if bar == "ground"}
        if not zone.carries:
            # Where neutral and ground are bonded, grounds may lie on either bar.
            ground |= {panel: None for panel in neutral if panel in self.bonded}
            neutral = {panel: None for panel in neutral if panel not in self.bonded}
        elif not neutral:
            neutral = {panel: None for panel in ground if panel in self.bonded}
        return Roles(
            hot=zone.feeds,
            neutral=tuple(neutral),
            ground=tuple(ground),
            sources=zone.sources,
            unknown=tuple(each.reason for each in zone.unknown),
        )

    def breakers_of(self, point: str) -> tuple[str, ...]:
        """The breakers that make a point live with every switch closed, each once."""
        return tuple(dict.fromkeys(feed.breaker for feed in self.zone_of(point).feeds))

    def unknown_at(self, point: str) -> tuple[Unknown, ...]:
        """The missing facts that a point meets, every switch closed."""
        return self.zone_of(point).unknown


def network(house: House) -> Network:
    """The network of a house, in time near-linear in its conductors."""
    spoken = spoken_colours(house)
    landings, nowhere = landing_edges(house, spoken)
    outside = [*box_edges(house), *run_edges(house, spoken), *landings, *panel_edges(house)]
    wired = {point: None for edge in outside for point in (edge.a, edge.b)}
    edges = (*outside, *device_edges(house, wired))
    terminals = terminals_of_all(house)
    entries = entries_of(house, terminals)
    points = _points(house, edges, terminals, entries)
    unknowns = (*unknowns_of(house, spoken), *nowhere)
    nets, net_numbers = nets_of(house, points, edges)
    zones, zone_numbers = zones_of(house, points, edges, terminals, entries, unknowns)
    zone_at = dict(zip(points, zone_numbers, strict=True))
    return Network(
        edges=edges,
        at=_adjacency(points, edges),
        terminals=terminals,
        nets=nets,
        zones=zones,
        net_at=dict(zip(points, net_numbers, strict=True)),
        zone_at=zone_at,
        groups=groups_of(house, Zoned(zones, zone_at, carrying_of(terminals)), unknowns),
        entries=entries,
        unknowns=unknowns,
        bonded=frozenset(each.id for each in house.panels.values() if each.record.bonded is True),
        index=index_of(house, edges, terminals, unknowns, entries),
    )


def _points(
    house: House,
    edges: Iterable[Edge],
    terminals: Mapping[str, Terminal],
    entries: Mapping[str, tuple[str, ...]],
) -> dict[str, int]:
    """Every point with its number: what edges meet, and what is there though nothing meets it."""
    names = [point for edge in edges for point in (edge.a, edge.b)]
    names += terminals
    for panel in house.panels.values():
        names += [*buses(panel), bar_of(panel.id, "neutral"), bar_of(panel.id, "ground")]
    for box in house.boxes.values():
        names += [f"{box.id}/box", *box.capped, *box.loose, *box.untold]
    names += [point for each in entries.values() for point in each]
    return {name: number for number, name in enumerate(dict.fromkeys(names))}


def _adjacency(points: Iterable[str], edges: Iterable[Edge]) -> dict[str, tuple[Edge, ...]]:
    found: dict[str, list[Edge]] = {point: [] for point in points}
    for edge in edges:
        found[edge.a].append(edge)
        found[edge.b].append(edge)
    return {point: tuple(each) for point, each in found.items()}
