"""What makes circuits, breakers and zones belong together, each tie with the reason in words."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from junctionary.house.model import House
from junctionary.house.network.unknowns import is_untraced
from junctionary.house.network.zones import Zone

Key = tuple[str, int | str]
"""``("zone", 3)``, ``("circuit", "den")`` or ``("breaker", "main/6")``."""


@dataclass(frozen=True, slots=True)
class Zoned:
    """The zones of a house, and the number of the one each point is in."""

    zones: Sequence[Zone]
    at: Mapping[str, int]
    carrying: Mapping[str, tuple[str, ...]]
    """By device, its terminals other than grounds."""


@dataclass(frozen=True, slots=True)
class Tie:
    """Things that belong together; ``why`` is None where it goes without saying."""

    members: tuple[Key, ...]
    why: str | None = None


def ties_of(house: House, zoned: Zoned) -> Iterable[Tie]:
    """Every tie of a house. Grounds tie nothing, nor does being of no known circuit."""
    yield from _in_zones(house, zoned)
    for circuit in house.circuits.values():
        keys: tuple[Key, ...] = tuple(("breaker", each) for each in circuit.breakers)
        if len(keys) > 1:
            named = " and ".join(circuit.breakers)
            why = f"{named} both feed {called(house, (circuit.id,))}, whose neutral they share"
            yield Tie((("circuit", circuit.id), *keys), why)
        elif keys:
            yield Tie((("circuit", circuit.id), *keys))
    for device in house.devices.values():
        yield from _together(house, zoned, (device.id,), f"come to {device.id}")
    for box in house.boxes.values():
        for strap in box.record.yoke:
            names = tuple(f"{box.id}.{each}" for each in strap)
            yield from _together(house, zoned, names, f"come to one strap in {box.id}")


def traced_circuits(house: House, runs: Iterable[str]) -> list[str]:
    """The circuits of some runs, without the place for runs nobody could trace."""
    circuits = dict.fromkeys(house.runs[each].circuit for each in runs)
    return [each for each in circuits if each in house.circuits and not is_untraced(house, each)]


def _in_zones(house: House, zoned: Zoned) -> Iterable[Tie]:
    where = _where_joined(house, zoned)
    for number, zone in enumerate(zoned.zones):
        if not zone.carries:
            continue
        circuits = traced_circuits(house, zone.runs)
        breakers = tuple(dict.fromkeys(feed.breaker for feed in zone.feeds))
        members: tuple[Key, ...] = (
            ("zone", number),
            *(("circuit", each) for each in circuits),
            *(("breaker", each) for each in breakers),
        )
        why = None
        if len(circuits) > 1:
            why = _meeting(zone, called(house, circuits), where.get(number, ()))
        elif len(breakers) > 1:
            why = f"{listed(breakers)} feed one conductor"
        yield Tie(members, why)


def _meeting(zone: Zone, circuits: str, boxes: Sequence[str]) -> str:
    """How the conductors of several circuits meet in one zone, in words."""
    bars = {edge.b.rpartition("/")[2] for edge in zone.bars}
    if bars == {"neutral", "ground"}:
        return f"neutral and ground of {circuits} meet"
    what = f"the neutrals of {circuits}" if "neutral" in bars and not zone.feeds else circuits
    return f"{what} are joined" + (f" in {listed(boxes)}" if boxes else "")


def listed(names: Iterable[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last


def called(house: House, circuits: Iterable[str]) -> str:
    """Circuits by their names for people, ``“Den” and “Hall, lights”``; one not recorded by its id."""
    return listed(f"“{house.circuits[each].name}”" if each in house.circuits else each for each in circuits)


def _where_joined(house: House, zoned: Zoned) -> dict[int, list[str]]:
    """By zone, the boxes in which conductors of more than one circuit are joined or landed together."""
    found: dict[int, dict[str, None]] = {}
    for box in house.boxes.values():
        held = [(each.id, each.circuits) for each in box.joints]
        for landing in box.landings:
            runs = (wire.run for wire in landing.wires if wire.run is not None)
            circuits = tuple(dict.fromkeys(house.runs[each].circuit for each in runs if each in house.runs))
            held.append((landing.terminal, circuits))
        for point, circuits in held:
            if len(circuits) > 1:
                found.setdefault(zoned.at[point], {})[box.id] = None
    return {number: list(boxes) for number, boxes in found.items()}


def _together(house: House, zoned: Zoned, devices: Iterable[str], how: str) -> Iterable[Tie]:
    """All that comes to some devices, other than grounds, is one hand's reach: it must be dead together."""
    zones: dict[int, None] = {}
    for device in devices:
        for name in zoned.carrying.get(device, ()):
            zones[zoned.at[name]] = None
    wired = [each for each in zones if zoned.zones[each].runs or zoned.zones[each].feeds]
    if len(wired) > 1:
        runs = (run for each in wired for run in zoned.zones[each].runs)
        circuits = traced_circuits(house, runs)
        why = f"{called(house, circuits)} both {how}" if len(circuits) > 1 else None
        yield Tie(tuple(("zone", each) for each in wired), why)
