"""Every connection of the demo house opened in turn: the true place is always among the suspects.

What is dead then is worked out here, by plain reachability over the network
less that connection. It shares no code with the search. Places that explain
the same dead and live points are equals: no mark can tell them apart, and
among them the order is that of practice alone.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest

from junctionary.house.link import link
from junctionary.house.model import House
from junctionary.house.network import Edge, Network, network
from junctionary.house.suspects import Suspicion, Ways, suspects, ways
from junctionary.house.terminals import terminals_of
from junctionary.read.folder import read_record
from junctionary.records import understand

CONTENT = Path(__file__).parents[2] / "content"
MOST_BEFORE = 8
"""How many likelier places, by practice, may stand before the true one among its equals."""

SHOWN = ("receptacle", "gfci-receptacle", "luminaire", "fan", "smoke-alarm", "appliance")
Dead = frozenset[str]


@dataclass(frozen=True)
class Opened:
    """One connection open: what is dead, and by which role the first of the dead lost its supply."""

    edges: tuple[Edge, ...]
    dead: Dead
    reading: str | None


@dataclass(frozen=True)
class Demo:
    house: House
    net: Network
    outlets: dict[str, tuple[str, ...]]
    faults: tuple[Opened, ...]


@cache
def demo() -> Demo:
    files, _ = read_record(CONTENT)
    records, _ = understand([(tree.source.file, tree.root) for tree in files.trees])
    assert records is not None
    house, _ = link(records)
    assert house is not None
    net = network(house)
    outlets = dict(points(house))
    return Demo(house, net, outlets, tuple(opened(net, outlets)))


def points(house: House) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Each outlet and the terminals that it needs, written down anew."""
    for id_, device in house.devices.items():
        names = [
            each.name
            for each in terminals_of(device.kind)
            if each.role != "ground" and not each.name.startswith("line-") and each.name != "orange"
        ]
        if device.kind.is_ not in SHOWN:
            continue
        if "brass-top" in names:
            for half in ("top", "bottom"):
                yield f"{id_}.{half}", (f"{id_}.brass-{half}", f"{id_}.silver-{half}")
        elif device.kind.is_ == "fan" and {"black", "blue"} <= set(names):
            for hot in ("black", "blue"):
                yield f"{id_}.{hot}", (f"{id_}.{hot}", f"{id_}.white")
        else:
            yield id_, tuple(f"{id_}.{each}" for each in names)


@dataclass(frozen=True)
class Reach:
    """The points by number, so that what is reached is a row of bits."""

    number: dict[str, int]
    beside: list[list[tuple[int, int]]]
    roots: list[int]

    def without(self, edges: set[int]) -> bytearray:
        found = bytearray(len(self.beside))
        waiting = list(self.roots)
        for each in waiting:
            found[each] = 1
        while waiting:
            for edge, other in self.beside[waiting.pop()]:
                if not found[other] and edge not in edges:
                    found[other] = 1
                    waiting.append(other)
        return found


def reach(net: Network, never: tuple[str, ...], roots: tuple[str, ...]) -> Reach:
    number = {point: each for each, point in enumerate(net.at)}
    beside: list[list[tuple[int, int]]] = [[] for _ in number]
    for each, edge in enumerate(net.edges):
        if edge.kind not in never:
            beside[number[edge.a]].append((each, number[edge.b]))
            beside[number[edge.b]].append((each, number[edge.a]))
    return Reach(number, beside, [number[root] for root in roots])


def opened(net: Network, outlets: dict[str, tuple[str, ...]]) -> Iterator[Opened]:
    """Every connection open in turn; the contacts of a GFCI device open together."""
    hot = reach(net, ("bar", "bond"), ("service/A", "service/B"))
    back = reach(net, ("breaker", "main", "feeder", "bus"), ("service/neutral",))
    whole = {"hot": hot.without(set()), "back": back.without(set())}
    needs = [
        (
            id_,
            [
                (role, at)
                for at in (hot.number[each] for each in terminals)
                for role in whole
                if whole[role][at]
            ],
        )
        for id_, terminals in outlets.items()
    ]
    together: dict[str, set[int]] = {}
    for number, edge in enumerate(net.edges):
        key = f"device {edge.of}" if edge.kind == "protector" else f"edge {number}"
        together.setdefault(key, set()).add(number)
    for numbers in together.values():
        edges = tuple(net.edges[number] for number in numbers)
        left = dict(whole)
        for role, some in (("hot", hot), ("back", back)):
            if any(whole[role][some.number[edge.a]] for edge in edges):
                left[role] = some.without(numbers)
        lost = {id_: [role for role, each in need if not left[role][each]] for id_, need in needs}
        dead = [id_ for id_, roles in lost.items() if roles]
        reading = None
        if dead:
            roles = set(lost[dead[0]])
            reading = "neither" if len(roles) > 1 else "neutral-only" if roles == {"hot"} else "hot-only"
        yield Opened(edges, frozenset(dead), reading)


@cache
def by_place() -> dict[str, set[Dead]]:
    """By place, what goes dead by each of its connections, so that each is known by what it would do."""
    found: dict[str, set[Dead]] = {}
    for fault in demo().faults:
        for place in places(fault):
            found.setdefault(place, set()).add(fault.dead)
    return found


def places(fault: Opened) -> set[str]:
    """By which names the place of a fault may be told: either end of a wire, its run, its breaker, a tab."""
    names = {name for edge in fault.edges for name in (edge.of, edge.a, edge.b)}
    names |= {edge.a.removesuffix("-top") for edge in fault.edges if edge.kind == "tab"}
    return names | {
        breaker.id
        for breaker in demo().house.breakers.values()
        for space in breaker.spaces
        if f"{breaker.panel}/{space}" in names
    }


@cache
def searched() -> Ways:
    return ways(demo().house, demo().net)


def search(fault: Opened, *, read: bool) -> Suspicion:
    case = demo()
    dead = [each for each in case.outlets if each in fault.dead]
    live = [each for each in case.outlets if each not in fault.dead]
    readings = {dead[0]: fault.reading} if read and fault.reading else {}
    return suspects(case.house, case.net, dead, live, readings, searched())


def rank(fault: Opened, found: Suspicion) -> int | None:
    """How many places of greater weight are listed before the true one; None where it is not listed."""
    true = places(fault)
    own = [each.site.weight for each in found.suspects if each.site.id in true]
    return sum(each.site.weight > max(own) for each in found.suspects) if own else None


@pytest.mark.parametrize("read", [False, True])
def test_the_true_place_is_first_or_among_the_equals_of_the_first(read: bool) -> None:
    ranks: Counter[int] = Counter()
    for fault in demo().faults:
        if not fault.dead:
            continue
        found = search(fault, read=read)
        place = rank(fault, found)
        assert place is not None, f"{fault.edges[0]} is not among the suspects: {found.unexplained}"
        ranks[place] += 1
        for each in found.suspects:
            # An equal: open there, the very same points would be dead, so that no mark tells it apart.
            assert fault.dead in by_place()[each.site.id], f"{each.site.id} does not explain {fault.edges[0]}"
    print(f"rank by weight among equals, {'with' if read else 'without'} a reading: {sorted(ranks.items())}")
    assert ranks[0] > sum(ranks.values()) / 2
    assert max(ranks) <= MOST_BEFORE


def test_what_takes_nothing_along_gives_no_suspects() -> None:
    quiet = [fault for fault in demo().faults if not fault.dead]
    assert quiet
    assert {edge.kind for fault in quiet for edge in fault.edges} >= {"joint", "conductor"}
    found = search(quiet[0], read=False)
    assert found.suspects == ()
    assert found.unexplained == ("nothing was told to be dead",)
