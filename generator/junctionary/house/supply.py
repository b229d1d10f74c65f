"""What each point hangs on: for hot, neutral and ground, the connections without which it has no supply.

For each role one tree from the source outward, every switch closed. A
connection belongs to a point's way only where nothing goes around it: of two
travelers, or of a loop, neither does. One walk of the network for each role,
so near-linear in the house.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

from junctionary.house.model import House, Role
from junctionary.house.network import Edge, Feed, Network, bar_of, is_service_panel
from junctionary.house.network.panel_wiring import SERVICE, buses
from junctionary.house.outlets import Outlet, outlets_of

HOT_NEVER = frozenset({"bar", "bond"})
RETURN_NEVER = frozenset({"breaker", "main", "feeder", "bus"})


@dataclass(frozen=True, slots=True)
class Tree:
    """By point, the connection toward the source and the point at its other end; roots have None.

    ``only`` are the points whose connection nothing goes around.
    """

    toward: Mapping[str, tuple[Edge, str] | None]
    only: frozenset[str]

    def way(self, start: str) -> Iterator[str]:
        """The points from here to the source whose connection toward it nothing goes around."""
        point = start
        while (step := self.toward.get(point)) is not None:
            if point in self.only:
                yield point
            point = step[1]

    def trail(self, start: str) -> Iterator[Edge]:
        """Every connection from here to the source, those that something goes around among them."""
        point = start
        while (step := self.toward.get(point)) is not None:
            yield step[0]
            point = step[1]

    def prove(self, start: str, proved: set[str]) -> None:
        """Add what a point that works proves whole; what is proved already is not walked again."""
        point = start
        while point not in proved and (step := self.toward.get(point)) is not None:
            proved.add(point)
            point = step[1]

    def edge(self, point: str) -> Edge:
        """The connection of a point toward the source. KeyError for a root, or where no way leads."""
        step = self.toward[point]
        if step is None:
            raise KeyError(point)
        return step[0]


@dataclass(frozen=True, slots=True)
class Supply:
    """The three trees, every outlet, and by outlet and role the terminals from which its way starts.

    ``feeds`` are the poles that make an outlet live, every switch closed.
    An outlet whose recorded terminals lead to no source in a role it needs is in ``lost`` of that role.
    """

    trees: Mapping[Role, Tree]
    outlets: Mapping[str, Outlet]
    starts: Mapping[Role, Mapping[str, tuple[str, ...]]]
    lost: Mapping[Role, frozenset[str]]
    feeds: Mapping[str, tuple[Feed, ...]]


def supply(house: House, network: Network) -> Supply:
    """What every outlet hangs on; worked out once, and asked often."""
    hot_roots, neutral_roots, ground_roots = _roots(house, network)
    trees: dict[Role, Tree] = {
        "hot": _grown(network, hot_roots, lambda edge: edge.kind not in HOT_NEVER),
        "neutral": _grown(network, neutral_roots, _may_return),
        "ground": _grown(network, ground_roots, _may_return),
    }
    outlets = outlets_of(house)
    starts: dict[Role, dict[str, tuple[str, ...]]] = {"hot": {}, "neutral": {}, "ground": {}}
    lost: dict[Role, set[str]] = {"hot": set(), "neutral": set(), "ground": set()}
    for outlet in outlets.values():
        hot = tuple(each for each in outlet.carries if each in trees["hot"].toward)
        back = tuple(each for each in outlet.carries if each in trees["neutral"].toward and each not in hot)
        rest = [each for each in outlet.carries if each not in hot and each not in back]
        starts["hot"][outlet.id] = hot
        starts["neutral"][outlet.id] = back
        starts["ground"][outlet.id] = tuple(each for each in outlet.ground if each in trees["ground"].toward)
        for each in rest:
            role = network.terminals[each].role
            lost["neutral" if role == "neutral" else "hot"].add(outlet.id)
        if not hot:
            lost["hot"].add(outlet.id)
        if not starts["ground"][outlet.id]:
            lost["ground"].add(outlet.id)
    feeds = {
        id_: tuple(dict.fromkeys(feed for start in own for feed in network.zone_of(start).feeds))
        for id_, own in starts["hot"].items()
    }
    return Supply(trees, outlets, starts, {role: frozenset(each) for role, each in lost.items()}, feeds)


def _may_return(edge: Edge) -> bool:
    return edge.kind not in RETURN_NEVER and not edge.a.startswith((f"{SERVICE}/A", f"{SERVICE}/B"))


def _roots(house: House, network: Network) -> tuple[list[str], list[str], list[str]]:
    """Where each role comes from: the utility, and the bus and bars of a panel whose feed nothing tells."""
    hot = [each for each in network.at if each.startswith(f"{SERVICE}/") and each != f"{SERVICE}/neutral"]
    neutral = [each for each in network.at if each == f"{SERVICE}/neutral"]
    ground = list(neutral)
    for panel in house.panels.values():
        if is_service_panel(house, panel):
            ground.append(bar_of(panel.id, "ground"))
        elif panel.feeder is None:
            hot += buses(panel)
            neutral.append(bar_of(panel.id, "neutral"))
            ground.append(bar_of(panel.id, "ground"))
    return hot, neutral, ground


def _grown(network: Network, roots: Iterable[str], allowed: Callable[[Edge], bool]) -> Tree:
    """The tree from the roots, depth first, and which of its connections nothing goes around.

    A connection has nothing around it where no point beyond it reaches a point before it, or a root.
    """
    toward: dict[str, tuple[Edge, str] | None] = dict.fromkeys(roots)
    number: dict[str, int] = dict.fromkeys(toward, 0)
    low: dict[str, int] = dict(number)
    only: set[str] = set()
    for root in tuple(toward):
        trail: list[tuple[str, Edge | None, Iterator[Edge]]] = [(root, None, iter(network.at[root]))]
        while trail:
            point, came, left = trail[-1]
            edge = next(left, None)
            if edge is None:
                trail.pop()
                if trail:
                    before = trail[-1][0]
                    low[before] = min(low[before], low[point])
                    if low[point] > number[before]:
                        only.add(point)
                continue
            if edge is came or not allowed(edge):
                continue
            other = edge.other(point)
            if other in number:
                low[point] = min(low[point], number[other])
            else:
                toward[other] = (edge, point)
                number[other] = low[other] = len(number)
                trail.append((other, edge, iter(network.at[other])))
    return Tree(toward, frozenset(only))
