"""Random valid houses link, nothing is found wrong with them, and a graph library (networkx) agrees.

The graph is made from the simulator's own walk over boxes, runs and panels,
which shares no code with the network.
"""

import itertools
from collections.abc import Callable
from functools import cache
from random import Random

import networkx as nx
import pytest
from random_houses import as_text, random_house
from simulator import Part, parts_of

from junctionary.checks.engine import judge
from junctionary.checks.examples import read_example
from junctionary.figures import work_out
from junctionary.house.model import House
from junctionary.house.network import Network, network
from junctionary.house.trace import trace

SEEDS = range(20)
UTILITY = ("service/A", "service/B")


@cache
def drawn(seed: int) -> tuple[House, Network, tuple[Part, ...]]:
    house = read_example(as_text(random_house(Random(seed), 3)))
    return house, network(house), tuple(parts_of(house))


def graph_of(seed: int, keep: Callable[[Part], bool] = lambda _: True) -> nx.Graph:
    _, _, parts = drawn(seed)
    graph = nx.Graph()
    for part in parts:
        graph.add_nodes_from((part.a, part.b))
        if keep(part):
            graph.add_edge(part.a, part.b, opens=part.opens)
    return graph


def is_breaker(part: Part) -> bool:
    return part.opens is not None and "/" in part.opens


def is_bar(part: Part) -> bool:
    return part.b.endswith(("/neutral", "/ground"))


@pytest.mark.parametrize("hundred", range(3))
def test_a_random_house_links_without_a_problem(hundred: int) -> None:
    for seed in range(100 * hundred, 100 * hundred + 100):
        house = read_example(as_text(random_house(Random(seed), 1 + seed % 2)))
        assert network(house).unknowns == (), seed


@pytest.mark.parametrize("seed", SEEDS)
def test_nothing_is_found_wrong_with_a_random_house(seed: int) -> None:
    house, net, _ = drawn(seed)
    said = judge(house, net, work_out(house, net))
    assert [each for each in said.findings if each.severity in ("hazard", "defect")] == []


@pytest.mark.parametrize("seed", SEEDS)
def test_nets_are_the_components_with_all_that_opens_open(seed: int) -> None:
    house, net, _ = drawn(seed)
    graph = graph_of(seed, lambda part: part.opens is None and part.of not in house.panels)
    for component in nx.connected_components(graph):
        assert set(net.net_of(next(iter(component))).points) & set(graph) == component


@pytest.mark.parametrize("seed", SEEDS)
def test_zones_are_the_components_short_of_breakers_and_bars(seed: int) -> None:
    _, net, _ = drawn(seed)
    graph = graph_of(seed, lambda part: not is_breaker(part) and not is_bar(part))
    for component in nx.connected_components(graph):
        assert set(net.zone_of(next(iter(component))).points) & set(graph) == component


@pytest.mark.parametrize("seed", SEEDS)
def test_a_way_is_made_of_what_is_joined_and_comes_home(seed: int) -> None:
    house, net, _ = drawn(seed)
    graph = graph_of(seed)
    for device in house.devices:
        path = trace(house, net, device)
        for way in (*path.hot, *path.neutral, *path.ground):
            assert all(graph.has_edge(*pair) for pair in zip(way.points, way.points[1:], strict=False))
            assert way.complete
            assert way.points[-1] in (UTILITY if way.role == "hot" else ("main/neutral", "main/ground"))


@pytest.mark.parametrize("seed", SEEDS)
def test_a_hot_way_is_as_short_as_any(seed: int) -> None:
    house, net, _ = drawn(seed)
    graph = graph_of(seed, lambda part: not is_bar(part))
    for device in house.devices:
        for way in trace(house, net, device).hot:
            assert len(way.edges) == nx.shortest_path_length(graph, way.points[0], way.points[-1])


@pytest.mark.parametrize("seed", SEEDS)
def test_breakers_and_protectors_of_a_hot_way_are_cut_edges_between_it_and_the_utility(seed: int) -> None:
    house, net, _ = drawn(seed)
    graph = graph_of(seed)
    bridges = {frozenset(each) for each in nx.bridges(graph)}
    guards = {each.id for each in house.devices.values() if each.kind.is_ == "gfci-receptacle"}
    for device in house.devices:
        for way in trace(house, net, device).hot:
            shortest = nx.shortest_path(graph, way.points[0], way.points[-1])
            pairs = itertools.pairwise(shortest)
            cuts = {graph.edges[pair]["opens"] for pair in pairs if frozenset(pair) in bridges}
            told = {*way.breakers, *(each.id for each in way.protectors)}
            assert told == {each for each in cuts if each in guards or each in house.breakers}
