"""What a breaker feeds: what goes dark with it, and what a device depends on.

The utility alone is reckoned with: what a second source keeps alive is told
by the network's zones.
"""

from collections import deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.matters import Matter, circuits_behind, in_order
from junctionary.house.model import Device, House
from junctionary.house.network import Network
from junctionary.house.network.panel_wiring import poles
from junctionary.house.terminals import HALVES


@dataclass(frozen=True, slots=True)
class Dark:
    """What one breaker takes with it.

    ``devices`` lose at least one leg of their supply; ``halves`` are those of
    which one half alone goes dark, as ``K1.r1.top``. ``circuits``
    and ``rooms`` go by the record's word, boxes recorded or not, and
    ``breakers`` stand behind it in subpanels. ``first`` is what matters;
    ``unknown`` are reasons why more may go dark, or less.
    """

    breaker: str
    devices: tuple[str, ...]
    halves: tuple[str, ...]
    circuits: tuple[str, ...]
    rooms: tuple[str, ...]
    breakers: tuple[str, ...]
    first: tuple[Matter, ...]
    unknown: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FedBy:
    """What a device depends on, every switch closed.

    ``breakers`` reach it; where none does by the conductors they are those
    that the record says feed its circuits, and ``by_label`` is set.
    """

    device: str
    breakers: tuple[str, ...]
    by_label: bool
    unknown: tuple[str, ...]


def goes_dark(house: House, network: Network, breaker_id: str) -> Dark:
    """What loses its supply when this breaker is off. KeyError where there is no such breaker."""
    breaker = house.breakers[breaker_id]
    dead, behind = _dead_zones(network, poles(breaker))
    # An inlet brings supply and loses none.
    devices = [each for each in _devices_in(house, network, dead) if each.kind.is_ != "inlet"]
    halves = {device.id: _dark_half(network, device, dead) for device in devices}
    circuits = circuits_behind(house, (breaker_id,), network.index.panels_fed)
    groups = {network.groups.of_zone[each]: None for each in dead if each in network.groups.of_zone}
    groups |= {network.groups.of_circuit[each]: None for each in circuits}
    matters = (each for circuit in circuits for each in network.index.matters[circuit])
    return Dark(
        breaker=breaker_id,
        devices=tuple(each for each, half in halves.items() if half is None),
        halves=tuple(f"{each}.{half}" for each, half in halves.items() if half is not None),
        circuits=circuits,
        rooms=tuple(dict.fromkeys(room for each in circuits for room in house.circuits[each].rooms)),
        breakers=tuple(each for each in behind if each != breaker_id),
        first=in_order(each for each in matters if _may_go(network, each, halves)),
        unknown=tuple(dict.fromkeys(why for each in groups for why in network.groups.each[each].unknown)),
    )


def fed_by(house: House, network: Network, device_id: str) -> FedBy:
    """What a device depends on. KeyError where there is no such device."""
    zones = dict.fromkeys(network.zone_at[each] for each in network.index.carrying.get(device_id, ()))
    direct = tuple(dict.fromkeys(feed.breaker for each in zones for feed in network.zones[each].feeds))
    circuits = (house.circuits[each] for each in house.devices[device_id].circuits if each in house.circuits)
    labels = tuple(dict.fromkeys(breaker for circuit in circuits for breaker in circuit.breakers))
    return FedBy(
        device=device_id,
        breakers=direct or labels,
        by_label=bool(labels) and not direct,
        unknown=tuple(dict.fromkeys(each.reason for one in zones for each in network.zones[one].unknown)),
    )


def _dead_zones(network: Network, opened: Iterable[str]) -> tuple[dict[int, None], dict[str, None]]:
    """The zones that lose all their feeds with these poles, and the breakers behind those."""
    waiting = deque(network.zone_at[each] for each in opened)
    lost: dict[int, int] = {}
    dead: dict[int, None] = {}
    behind: dict[str, None] = {}
    while waiting:
        number = waiting.popleft()
        lost[number] = lost.get(number, 0) + 1
        zone = network.zones[number]
        if lost[number] >= len(zone.feeds) and number not in dead:
            dead[number] = None
            behind.update((feed.breaker, None) for feed in zone.onward)
            waiting.extend(network.zone_at[feed.pole] for feed in zone.onward)
    return dead, behind


def _devices_in(house: House, network: Network, zones: Iterable[int]) -> tuple[Device, ...]:
    """The devices with a terminal other than a ground in these zones, each once."""
    found = {
        point.rpartition(".")[0]: None
        for number in zones
        for point in network.zones[number].points
        if point in network.terminals and network.terminals[point].role != "ground"
    }
    return tuple(house.devices[each] for each in found)


def _dark_half(network: Network, device: Device, dead: Mapping[int, None]) -> str | None:
    """Which half alone goes dark, where the other is fed from elsewhere; None where all of it does."""
    for half, other in (HALVES, HALVES[::-1]):
        own, beside = (network.zone_at.get(f"{device.id}.brass-{each}") for each in (half, other))
        if own in dead and beside is not None and beside not in dead and network.zones[beside].feeds:
            return half
    return None


def _may_go(network: Network, matter: Matter, dark: Mapping[str, str | None]) -> bool:
    """Whether what matters goes dark too: not where the conductors show that another breaker feeds it."""
    if matter.at is None or matter.at in dark:
        return True
    terminals = network.index.carrying.get(matter.at, ())
    return not any(network.zone_of(each).feeds for each in terminals)
