"""What a search for a fault rests on, as numbers and words, for a page that searches as the command does.

Of the three trees only what some outlet hangs on is kept. Points are numbered
tree by tree; of each the next toward the source, the connection to it, and
whether nothing goes around that.
"""

from dataclasses import dataclass, field
from typing import Any

from junctionary.house.dark import fed_by
from junctionary.house.model import House, Role
from junctionary.house.network import Edge, Network, called
from junctionary.house.sites import Site, sites_of
from junctionary.house.supply import Tree
from junctionary.house.suspects import BRANCH_SIZES, Ways, stands
from junctionary.sheets.naming import said

ROLES: tuple[Role, ...] = ("hot", "neutral", "ground")


@dataclass(slots=True)
class _Drawn:
    """One tree while it is numbered."""

    numbers: dict[str, int] = field(default_factory=dict)
    next: list[int] = field(default_factory=list)
    edge: list[int] = field(default_factory=list)
    only: list[int] = field(default_factory=list)
    stands: list[str] = field(default_factory=list)


@dataclass(slots=True)
class _Edges:
    """The connections that trees share, each once, with the places where it can have failed."""

    known: Ways
    house: House
    numbers: dict[Edge, int] = field(default_factory=dict)
    edges: list[list[Any]] = field(default_factory=list)
    site_numbers: dict[Site, int] = field(default_factory=dict)

    def number(self, edge: Edge) -> int:
        """The number of a connection."""
        if edge not in self.numbers:
            self.numbers[edge] = len(self.edges)
            sites = []
            for site in sites_of(self.known.facts, edge):
                sites.append(self.site_numbers.setdefault(site, len(self.site_numbers)))
            self.edges.append([edge.kind, edge.of, sites])
        return self.numbers[edge]


def suspect_ground(house: House, network: Network, known: Ways) -> dict[str, Any]:
    """Trees, connections, places and outlets, as plain data."""
    edges = _Edges(known, house)
    trees = {role: _Drawn() for role in ROLES}
    supply = known.supply
    outlets = []
    for outlet in supply.outlets.values():
        starts = {
            role: [_number(supply.trees[role], trees[role], edges, each) for each in own]
            for role in ROLES
            if (own := supply.starts[role][outlet.id])
        }
        labels = () if supply.starts["hot"][outlet.id] else fed_by(house, network, outlet.device).breakers
        outlets.append(
            {
                "id": outlet.id,
                "device": outlet.device,
                "box": house.devices[outlet.device].box,
                "face": outlet.is_face,
                "starts": starts,
                "lost": [role for role in ROLES if outlet.id in supply.lost[role]],
                "feeds": [[each.breaker, each.pole, each.leg] for each in supply.feeds[outlet.id]],
                "zones": [network.zone_at[each] for each in supply.starts["neutral"][outlet.id]],
                "labels": list(labels),
                "unknown": _reasons(network, outlet.carries),
                "unknownGround": _reasons(network, outlet.ground),
            }
        )
    return {
        "trees": {
            role: {"next": each.next, "edge": each.edge, "only": each.only, "stands": each.stands}
            for role, each in trees.items()
        },
        "edges": edges.edges,
        "sites": [_site(house, each) for each in edges.site_numbers],
        "outlets": outlets,
        "boxOf": {each.id: each.box for each in house.devices.values()},
        "loads": {
            load.id: load.plugged or load.wired
            for circuit in house.circuits.values()
            for load in circuit.loads
        },
        "feeds": {
            each.id: called(house, (each.feeds,))
            for each in house.breakers.values()
            if isinstance(each.feeds, str)
        },
        "panelNames": {each.id: each.name for each in house.panels.values()},
        "aluminium": [
            each.id
            for each in house.runs.values()
            if any(one.metal == "aluminium" and str(one.size) in BRANCH_SIZES for one in each.conductors)
        ],
    }  # fmt: skip


def _number(tree: Tree, drawn: _Drawn, edges: _Edges, start: str) -> int:
    """The number of a point, after it and all toward the source are numbered."""
    point: str | None = start
    before = -1
    while point is not None:
        new = point not in drawn.numbers
        if new:
            drawn.numbers[point] = len(drawn.next)
            drawn.next.append(-1)
            drawn.edge.append(-1)
            drawn.only.append(int(point in tree.only))
            drawn.stands.append(stands(point))
        if before >= 0:
            drawn.next[before] = drawn.numbers[point]
        if not new:
            break
        before = drawn.numbers[point]
        step = tree.toward[point]
        if step is not None:
            drawn.edge[before] = edges.number(step[0])
        point = step[1] if step is not None else None
    return drawn.numbers[start]


def _reasons(network: Network, points: tuple[str, ...]) -> list[str]:
    return list(dict.fromkeys(each.reason for point in points for each in network.unknown_at(point)))


def _site(house: House, site: Site) -> list[Any]:
    """Id, kind, weight, reasons, box, panel, run, and where it is in words."""
    room = house.rooms.get(site.room or "")
    parts = [room.name if room else "", f"{site.wall} wall" if site.wall else ""]
    parts += [f"{said(house, site.up)} up" if site.up is not None else ""]
    where = ", ".join(each for each in parts if each)
    return [site.id, site.kind, site.weight, list(site.why), site.box, site.panel, site.run, where]
