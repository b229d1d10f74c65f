"""What guards each outlet: what on its way to the source opens on a ground fault or on an arc."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from junctionary.figures.receptacles import circuits_of
from junctionary.house.model import Device, House
from junctionary.house.network import Network
from junctionary.house.outlets import Outlet
from junctionary.house.supply import Supply, supply
from junctionary.house.terminals import GFCI
from junctionary.records.devices import DeviceKind
from junctionary.records.words import GUARDS


@dataclass(frozen=True, slots=True)
class Guarded:
    """What guards one device against ground faults and against arcs.

    ``by`` names, for each guard, the breakers and devices on every way to it.
    ``lacks`` are the facts without which more may guard it. ``breakers`` are
    those on its way, or those its circuit is labelled with where no way leads to one.
    """

    device: str
    breakers: tuple[str, ...]
    by: Mapping[str, tuple[str, ...]]
    lacks: tuple[str, ...]

    def against(self, guard: str) -> bool | None:
        """Whether it is guarded; None where a missing fact decides."""
        return True if self.by[guard] else None if self.lacks else False


def guards_of_kind(kind: DeviceKind) -> tuple[str, ...]:
    """What a kind of device guards against: as told, else ground faults where it is a GFCI device."""
    if kind.guards is not None:
        return tuple(kind.guards)
    return ("gfci",) if kind.is_ in GFCI else ()


def guarded_devices(house: House, network: Network) -> dict[str, Guarded]:
    """Every device that has an outlet, by its id."""
    held = supply(house, network)
    outlets: dict[str, list[Outlet]] = {}
    for outlet in held.outlets.values():
        outlets.setdefault(outlet.device, []).append(outlet)
    return {id_: _guarded(house, held, house.devices[id_], own) for id_, own in outlets.items()}


def _guarded(house: House, held: Supply, device: Device, outlets: list[Outlet]) -> Guarded:
    ways = [way for outlet in outlets for way in _ways(held, outlet)]
    breakers = [each for way in ways for each in way if each in house.breakers]
    lacks: list[str] = []
    if not ways or any(outlet.id in held.lost["hot"] for outlet in outlets):
        # Where no way leads to a breaker, the one that the circuit is labelled with is taken at its word;
        # but what lies between the two may guard it as well, and is not known.
        labelled = [
            breaker
            for circuit in circuits_of(house, device)
            if circuit in house.circuits
            for breaker in house.circuits[circuit].breakers
        ]
        ways += [(each,) for each in labelled]
        breakers += labelled
        lacks.append(f"what feeds {device.id}")
    by = {guard: _on_every(house, ways, guard) for guard in GUARDS}
    untold = (each for each in breakers if house.breakers[each].guards is None)
    lacks += [f"what breaker {each} guards against" for each in untold]
    return Guarded(
        device.id, tuple(dict.fromkeys(breakers)), MappingProxyType(by), tuple(dict.fromkeys(lacks))
    )


def _ways(held: Supply, outlet: Outlet) -> Iterator[tuple[str, ...]]:
    """From each hot terminal of an outlet, the guards and breakers on its way to the source."""
    for start in held.starts["hot"][outlet.id]:
        trail = held.trees["hot"].trail(start)
        yield tuple(edge.of for edge in trail if edge.kind in ("protector", "breaker"))


def _on_every(house: House, ways: list[tuple[str, ...]], guard: str) -> tuple[str, ...]:
    """What guards every way; nothing where one way is without."""
    found: dict[str, None] = {}
    for way in ways:
        here = [each for each in way if guard in _guards(house, each)]
        if not here:
            return ()
        found |= dict.fromkeys(here)
    return tuple(found)


def _guards(house: House, id_: str) -> tuple[str, ...]:
    if id_ in house.breakers:
        return house.breakers[id_].guards or ()
    return guards_of_kind(house.devices[id_].kind)
