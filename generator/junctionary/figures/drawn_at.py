"""At what voltage a load or device draws, by which terminals, and which poles feed it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from junctionary.house.model import Circuit, Device, House
from junctionary.house.network import Feed, Network, poles
from junctionary.house.outlets import Outlet
from junctionary.house.terminals import is_across, terminals_of
from junctionary.tables import table

LINE_TO_NEUTRAL = Fraction(120)
"""Nominal volts from a leg to the neutral (220.5(A))."""

LINE_TO_LINE = {"120/208 V": Fraction(208)}
AT_120 = ("luminaire", "fan", "smoke-alarm", "doorbell-transformer")
"""Devices that are at 120 V where nothing says otherwise and a neutral comes to them."""


@dataclass(frozen=True, slots=True)
class Connection:
    """How a draw is connected.

    ``terminals`` are those at which its current enters and leaves, of the
    half or device it is at; empty where that is not recorded. ``feeds`` are
    the poles that make it live: one for a load from a leg to the neutral, two for
    one across both legs; empty where that is not known, and then ``lacks``
    says what would tell. ``returns`` is by what its current goes back.
    """

    terminals: tuple[str, ...]
    feeds: tuple[Feed, ...]
    returns: Literal["neutral", "leg"] | None
    lacks: tuple[str, ...]

    @property
    def legs(self) -> tuple[str, ...]:
        """The legs of its poles that are known, A or B, each once."""
        return tuple(dict.fromkeys(each.leg for each in self.feeds if each.leg is not None))


def line_to_line(house: House) -> Fraction:
    """Nominal volts between the two legs: 240, or 208 where the service is told to be 120/208 V."""
    service = house.record.service
    return LINE_TO_LINE.get((service.system if service else None) or "", 2 * LINE_TO_NEUTRAL)


def volts_of(house: House, circuit: Circuit | None, device: Device | None) -> Fraction | None:
    """The nominal voltage of what hangs on a device, or on a circuit where none is told.

    By the device's kind, its face, its leads, and at last by the circuit's
    breaker and cable; None where these leave it open. A face with two hots and a
    neutral counts as across both legs, as a range and a dryer do (220.5(A)).
    """
    both = line_to_line(house)
    if device is not None:
        kind = device.kind
        if kind.volts is not None:
            return kind.volts.to("V")
        faces = table("receptacle-faces")
        if kind.face is not None and kind.face in faces:
            return both if faces.number(kind.face, "hots") == 2 else LINE_TO_NEUTRAL
        if kind.leads or kind.is_ in AT_120:
            named = [each.role for each in terminals_of(kind)]
            if "neutral" in named and (kind.is_ in AT_120 or named.count("hot") == 1):
                return LINE_TO_NEUTRAL
            if "neutral" not in named and named.count("hot") == 2:
                return both
    return _volts_of_circuit(house, circuit, both) if circuit is not None else None


def _volts_of_circuit(house: House, circuit: Circuit, both: Fraction) -> Fraction | None:
    breakers = [house.breakers[each] for each in circuit.breakers]
    if len(breakers) == 1 and breakers[0].poles == 1 and breakers[0].conductor is None:
        return LINE_TO_NEUTRAL
    if len(breakers) == 1 and breakers[0].poles == 2 and circuit.runs:
        # Two insulated wires on two poles leave none for a neutral.
        carrying = [
            [each for each in house.runs[run].conductors if not each.is_ground] for run in circuit.runs
        ]
        if all(len(each) == 2 for each in carrying):
            return both
    return None


def connection_of(
    house: House,
    network: Network,
    circuit: Circuit | None,
    device: Device | None,
    part: str | None,
    volts: Fraction | None,
    outlets: Mapping[str, Iterable[Outlet]],
    called: str,
) -> Connection:
    """How a draw at a device, or anywhere on a circuit where ``device`` is None, is connected.

    The conductors tell where they can; else the circuit's breakers do, where they leave no choice.
    """
    wanted = 2 if volts is not None and is_across(volts) else 1
    returns: Literal["neutral", "leg"] | None = None if volts is None else "leg" if wanted == 2 else "neutral"
    terminals: tuple[str, ...] = ()
    if device is not None:
        choices = _choices(network, device, part, outlets)
        found = {tuple(feeds): terminals for terminals, feeds in reversed(choices) if feeds}
        if volts is not None and len(found) == 1:
            feeds, terminals = next(iter(found.items()))
            if len(feeds) == wanted:
                return Connection(terminals, feeds, returns, ())
        if len(found) > 1:
            return Connection((), (), returns, (f"which half of {device.id} {called} is plugged into",))
        terminals = next(iter(found.values()), ())
    if volts is None:
        return Connection(terminals, (), None, (f"the voltage of {called}",))
    feeds = _feeds_of_circuit(house, network, circuit)
    if len(feeds) == wanted:
        return Connection(terminals, feeds, returns, ())
    return Connection(terminals, (), returns, (f"which leg feeds {called}",))


def _choices(
    network: Network, device: Device, part: str | None, outlets: Mapping[str, Iterable[Outlet]]
) -> list[tuple[tuple[str, ...], list[Feed]]]:
    """The places of a device where a load may hang, each with the poles that feed it."""
    own = [each.carries for each in outlets.get(device.id, ()) if part is None or each.half == part]
    if not own:
        own = [network.index.carrying.get(device.id, ())]
    return [(terminals, _feeds(network, terminals)) for terminals in own]


def _feeds(network: Network, terminals: Iterable[str]) -> list[Feed]:
    found = {feed.pole: feed for name in terminals for feed in network.zone_of(name).feeds}
    return list(found.values())


def _feeds_of_circuit(house: House, network: Network, circuit: Circuit | None) -> tuple[Feed, ...]:
    ends = [pole for each in (circuit.breakers if circuit else ()) for pole in poles(house.breakers[each])]
    found = {feed.pole: feed for pole in ends for feed in network.zone_of(pole).feeds if feed.pole == pole}
    return tuple(found.values())
