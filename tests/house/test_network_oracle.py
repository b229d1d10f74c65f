"""The network agrees with a graph library, on houses joined at random.

The oracle (networkx) knows only what was joined to what; it shares no code
with the network. Isolation is held against the closure written as its
definition reads: add, until nothing more is added.
"""

from collections.abc import Callable
from dataclasses import dataclass

import networkx as nx
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from junctionary.house.isolate import isolate
from junctionary.house.model import House
from junctionary.house.network import network
from junctionary.house.trace import trace

CABLES = {"12/2 NM-B": ("black", "white", "bare"), "12/3 NM-B": ("black", "red", "white", "bare")}
AT_PANEL = {"white": "main/neutral", "bare": "main/ground"}


@dataclass(frozen=True)
class Joined:
    """A house as it was joined: runs by id (circuit, cable, ends), and in each box who is held together."""

    circuits: tuple[str, ...]
    runs: dict[str, tuple[str, str, str, str]]
    held: dict[str, tuple[tuple[str, ...], ...]]
    switches: tuple[str, ...]

    def text(self) -> str:
        breakers = "".join(f"  {2 * n + 1}: {{feeds: {each}}}\n" for n, each in enumerate(self.circuits))
        files = [f"[panels/main.yaml]\npanel: main\nspaces: 12\nmain: 100 A\nbreakers:\n{breakers}"]
        for circuit in self.circuits:
            runs = "".join(
                f"  - {{id: {id_}, cable: {cable}, from: {from_}, to: {to}}}\n"
                for id_, (owner, cable, from_, to) in self.runs.items()
                if owner == circuit
            )
            head = f"[circuits/{circuit}.yaml]\ncircuit: {circuit}\nname: {circuit}\n"
            files.append(head + (f"runs:\n{runs}" if runs else ""))
        boxes = ""
        for box, groups in self.held.items():
            device = "    devices: {s1: switch}\n" if box in self.switches else ""
            joints = "".join(f"      - {{join: [{', '.join(each)}]}}\n" for each in groups if len(each) > 1)
            capped = [each for group in groups if len(group) == 1 for each in group if "s1" not in each]
            boxes += f"  {box}:\n    name: of {box}\n{device}"
            boxes += f"    joints:\n{joints}" if joints else ""
            boxes += f"    capped: [{', '.join(capped)}]\n" if capped else ""
        files += [
            "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n",
            f"[boxes/den.yaml]\nroom: den\nboxes:\n{boxes}",
        ]
        files.append("[devices/all.yaml]\ndevices:\n  switch: {is: switch, ways: 1}\n")
        return "\n".join(files)

    def ends(self, run: str) -> list[tuple[str, str, str]]:
        """By conductor of a run: its colour and its two ends."""
        _, cable, from_, to = self.runs[run]
        return [(colour, f"{from_}/{run}.{colour}", f"{to}/{run}.{colour}") for colour in CABLES[cable]]

    def graph(self, *, bars: bool, switches: bool) -> nx.Graph:
        """What is joined; on request with the bars of the panel, and with every switch closed."""
        graph = nx.Graph()
        for run, (circuit, _, from_, to) in self.runs.items():
            for colour, one, other in self.ends(run):
                graph.add_edge(one, other)
                for place, end in ((from_, one), (to, other)):
                    if place == "main" and colour == "black":
                        graph.add_edge(end, f"main/{2 * self.circuits.index(circuit) + 1}")
                    elif place == "main" and colour in AT_PANEL and bars:
                        graph.add_edge(end, AT_PANEL[colour])
        for box, groups in self.held.items():
            for group in groups:
                names = [f"{box}.{each}" if each.startswith("s1") else f"{box}/{each}" for each in group]
                graph.add_nodes_from(names)
                nx.add_star(graph, names)
            if box in self.switches and switches:
                graph.add_edge(f"{box}.s1.brass-1", f"{box}.s1.brass-2")
        return graph

    def to_switch_off(self, box: str) -> set[str]:
        """The closure as it is defined, by adding until nothing more is added."""
        circuit_of = {
            end: self.runs[run][0] for run in self.runs for _, *both in self.ends(run) for end in both
        }
        circuit_of |= {f"main/{2 * number + 1}": each for number, each in enumerate(self.circuits)}
        parts = [
            part
            for part in nx.connected_components(self.graph(bars=False, switches=True))
            if not all(name.endswith((".bare", ".green")) for name in part)
        ]
        found = {circuit for end, circuit in circuit_of.items() if end.startswith(f"{box}/")}
        live = [part for part in parts if any(name.startswith((f"{box}/", f"{box}.")) for name in part)]
        while True:
            found |= {circuit_of[name] for part in live for name in part if name in circuit_of}
            more = [
                part
                for part in parts
                if part not in live and any(circuit_of.get(name) in found for name in part)
            ]
            if not more:
                return {
                    f"main/{2 * number + 1}" for number, each in enumerate(self.circuits) if each in found
                }
            live += more


@st.composite
def joined(draw: st.DrawFn) -> Joined:
    """Two to four circuits over two to five boxes, the ends in each box held together at random."""
    circuits = tuple(f"c{each}" for each in range(draw(st.integers(2, 4))))
    boxes = [f"K{each}" for each in range(1, draw(st.integers(2, 5)) + 1)]
    runs: dict[str, tuple[str, str, str, str]] = {}
    for number in range(draw(st.integers(4, 12))):
        from_, to = draw(st.sampled_from(["main", *boxes])), draw(st.sampled_from(boxes))
        if from_ != to:
            circuit, cable = draw(st.sampled_from(circuits)), draw(st.sampled_from(sorted(CABLES)))
            runs[f"r{number}"] = (circuit, cable, from_, to)
    switches = tuple(each for each in boxes if draw(st.booleans()))
    held = {}
    for box in boxes:
        ends = [
            f"{run}.{colour}"
            for run, (_, cable, *places) in runs.items()
            if box in places
            for colour in CABLES[cable]
        ]
        ends += ["s1.brass-1", "s1.brass-2", "s1.green"] if box in switches else []
        by_colour = {
            colour: number for number, colour in enumerate(("black", "white", "red", "bare", "green"))
        }
        numbers = draw(st.lists(st.integers(5, 5 + len(ends)), min_size=len(ends), max_size=len(ends)))
        if draw(st.booleans()):
            # As a careful hand would, like with like, and a few ends elsewhere.
            likes = [
                by_colour.get(each.partition(".")[2], number)
                for each, number in zip(ends, numbers, strict=True)
            ]
            numbers = [
                draw(st.sampled_from([like, like, like, other]))
                for like, other in zip(likes, numbers, strict=True)
            ]
        groups: dict[int, list[str]] = {}
        for end, number in zip(ends, numbers, strict=True):
            groups.setdefault(number, []).append(end)
        held[box] = tuple(tuple(each) for each in groups.values())
    return Joined(circuits, runs, held, switches)


quietly = settings(
    max_examples=50,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
HouseOf = Callable[[str], House]


@quietly
@given(joined())
def test_nets_are_the_components_with_every_switch_open(house_of: HouseOf, made: Joined) -> None:
    net = network(house_of(made.text()))
    graph = made.graph(bars=True, switches=False)
    for component in nx.connected_components(graph):
        assert {point for point in net.net_of(next(iter(component))).points if point in graph} == component


@quietly
@given(joined())
def test_zones_are_the_components_with_switches_closed_and_bars_apart(
    house_of: HouseOf, made: Joined
) -> None:
    net = network(house_of(made.text()))
    graph = made.graph(bars=False, switches=True)
    for component in nx.connected_components(graph):
        assert {point for point in net.zone_of(next(iter(component))).points if point in graph} == component


@quietly
@given(joined())
def test_isolation_is_the_closure_as_it_is_defined(house_of: HouseOf, made: Joined) -> None:
    house = house_of(made.text())
    net = network(house)
    for box in house.boxes:
        found = isolate(house, net, box)
        assert {each.id for each in found.breakers} == made.to_switch_off(box)
        assert found.breakers or found.unknown


@quietly
@given(joined())
def test_a_hot_way_is_as_short_as_any(house_of: HouseOf, made: Joined) -> None:
    house = house_of(made.text())
    net = network(house)
    graph = nx.Graph((edge.a, edge.b) for edge in net.edges if edge.kind not in ("breaker", "main", "bar"))
    for box in made.switches:
        for way in trace(house, net, f"{box}.s1.brass-1").hot:
            pole = next(edge.b for edge in way.edges if edge.kind == "breaker")
            assert way.points.index(pole) == nx.shortest_path_length(graph, way.points[0], pole)
