"""Which switches govern which outlet: a truth table for each, reckoned from the conductors.

An outlet works when its hot comes to a breaker and its neutral to a bar. Only
the switches that stand on some way to either are in its table; every other
switch has no bearing on it, and protectors are taken as closed.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from junctionary.house.blocks import on_the_way
from junctionary.house.model import Device, House
from junctionary.house.network import Edge, Network
from junctionary.house.network.edges import OPEN_IN_NETS
from junctionary.house.terminals import RECEPTACLES, WIRED, terminals_of

MOST_SWITCHES = 10
"""A table has a row for each setting of all its switches; beyond this none is written."""

CUT = OPEN_IN_NETS | {"service", "bar"}
"""What a way to a pole or a bar does not cross, switches apart."""

SUPPLY = -1
"""The number that stands for every pole, or every bar, at once."""


@dataclass(frozen=True, slots=True)
class Row:
    """One setting: the position of each switch of the table, in its order, and whether the outlet works."""

    states: tuple[int, ...]
    works: bool


@dataclass(frozen=True, slots=True)
class LampTable:
    """What the switches do to one outlet, named by its hot terminal or lead.

    ``rows`` are all settings, none where there are more than ten switches.
    ``always`` toggle the outlet from every setting; ``sometimes`` do so from
    some only; ``never`` from none. ``unknown`` are missing facts that may
    change the table.
    """

    outlet: str
    device: str
    switches: tuple[str, ...]
    rows: tuple[Row, ...]
    always: tuple[str, ...]
    sometimes: tuple[str, ...]
    never: tuple[str, ...]
    unknown: tuple[str, ...]

    def works(self, *states: int) -> bool:
        """Whether the outlet works at this setting; KeyError where the table has no such row."""
        return {row.states: row.works for row in self.rows}[states]


def lamp_tables(house: House, network: Network) -> tuple[LampTable, ...]:
    """The table of every outlet that at least one switch bears on, in the order of the record."""
    return tuple(
        table
        for device in house.devices.values()
        for outlet, back in outlets_of(device)
        if (table := lamp_table(network, device, outlet, back)).switches
    )


def outlets_of(device: Device) -> tuple[tuple[str, str | None], ...]:
    """Each hot terminal or lead of a device with the neutral it works with; None where it has no neutral."""
    name = device.id
    names = {each.name: each.role for each in terminals_of(device.kind)}
    if device.kind.is_ in RECEPTACLES:
        pairs = [("brass-top", "silver-top"), ("brass-bottom", "silver-bottom"), ("brass", "silver")]
        pairs += [("line-brass", "line-silver")]
        return tuple((f"{name}.{hot}", f"{name}.{back}") for hot, back in pairs if hot in names)
    if device.kind.is_ not in WIRED:
        return ()
    back = next((f"{name}.{each}" for each, role in names.items() if role == "neutral"), None)
    return tuple((f"{name}.{each}", back) for each, role in names.items() if role == "hot")


def lamp_table(network: Network, device: Device, outlet: str, back: str | None) -> LampTable:
    """The table of one outlet; one that no switch bears on has none in it, and one row."""
    hot = _Way.of(network, outlet, [feed.pole for feed in network.zone_of(outlet).feeds])
    ways = [hot]
    if back is not None:
        ways.append(_Way.of(network, back, _bar_ends(network, back)))
    switches = tuple(dict.fromkeys(edge.of for way in ways for edge in way.switches))
    points = [outlet] if back is None else [outlet, back]
    unknown = tuple(dict.fromkeys(each.reason for one in points for each in network.unknown_at(one)))
    rows = _rows(ways, switches)
    by_states = {row.states: row.works for row in rows}
    toggles = {
        switch: [by_states[states] is not by_states[_turned(states, at)] for states in by_states]
        for at, switch in enumerate(switches)
    }
    return LampTable(
        outlet=outlet,
        device=device.id,
        switches=switches,
        rows=rows,
        always=tuple(each for each, told in toggles.items() if told and all(told)),
        sometimes=tuple(each for each, told in toggles.items() if any(told) and not all(told)),
        never=tuple(each for each, told in toggles.items() if told and not any(told)),
        unknown=unknown,
    )


def _turned(states: tuple[int, ...], at: int) -> tuple[int, ...]:
    return (*states[:at], 1 - states[at], *states[at + 1 :])


def _rows(ways: Sequence["_Way"], switches: tuple[str, ...]) -> tuple[Row, ...]:
    if len(switches) > MOST_SWITCHES:
        return ()
    return tuple(
        Row(states, all(way.open_to(dict(zip(switches, states, strict=True))) for way in ways))
        for states in product((0, 1), repeat=len(switches))
    )


def _bar_ends(network: Network, point: str) -> list[str]:
    """The conductor ends on a neutral bar, or on a ground bar that is bonded to it."""
    bars = network.zone_of(point).bars
    neutral = [edge.a for edge in bars if edge.b.endswith("/neutral")]
    return neutral or [edge.a for edge in bars if edge.b.rpartition("/")[0] in network.bonded]


@dataclass(frozen=True, slots=True)
class _Way:
    """From a point to what supplies it, nets as numbers and contacts between them."""

    start: int
    switches: tuple[Edge, ...]
    between: tuple[tuple[int, int, Edge], ...]
    fixed: bool

    @classmethod
    def of(cls, network: Network, point: str, supplies: Iterable[str]) -> "_Way":
        """The contacts that stand on some way from a point to any of these."""
        number = _nets_without_protectors(network, point)
        ends = {number[each] for each in supplies if each in number}
        start = number[point]
        told = [
            (SUPPLY if number[edge.a] in ends else number[edge.a],
             SUPPLY if number[edge.b] in ends else number[edge.b], edge)
            for each in number
            for edge in network.at[each]
            if edge.kind == "switch" and edge.a == each
        ]  # fmt: skip
        fixed = start in ends
        used = () if fixed or not ends else on_the_way([(a, b) for a, b, _ in told], SUPPLY, start)
        kept = tuple(told[each] for each in used)
        return cls(start, tuple(edge for _, _, edge in kept), kept, fixed)

    def open_to(self, states: Mapping[str, int]) -> bool:
        """Whether the way is closed from end to end at this setting."""
        reached, grew = {SUPPLY}, True
        while grew and self.start not in reached:
            closed = [(a, b) for a, b, edge in self.between if states[edge.of] == edge.state]
            new = {b for a, b in closed if a in reached} | {a for a, b in closed if b in reached}
            grew = not new <= reached
            reached |= new
        return self.fixed or self.start in reached


def _nets_without_protectors(network: Network, point: str) -> dict[str, int]:
    """For each point of the zone of a point, a number that points joined by more than a switch share."""
    number: dict[str, int] = {}
    for count, first in enumerate(network.zone_of(point).points):
        if first in number:
            continue
        waiting, number[first] = [first], count
        while waiting:
            for edge in network.at[one := waiting.pop()]:
                other = edge.other(one)
                if other not in number and (edge.kind == "protector" or edge.kind not in CUT):
                    number[other] = count
                    waiting.append(other)
    return number
