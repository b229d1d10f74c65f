"""How many receptacles a circuit has, and whether each suits its breaker."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from junctionary.figures.gaps import unseen_on
from junctionary.formulas.fit import Fit
from junctionary.formulas.receptacle import receptacle_fit
from junctionary.formulas.sums import plain
from junctionary.house.model import Circuit, Device, House
from junctionary.house.network import Network
from junctionary.house.terminals import RECEPTACLES, terminals_of
from junctionary.records.circuits import LoadRecord
from junctionary.records.devices import DeviceKind
from junctionary.sources import cite_in
from junctionary.tables import table
from junctionary.units import Quantity

DUPLEX_FACES = ("1-15R", "5-15R", "5-20R")
STAYS = (
    "refrigerator", "freezer", "washer", "dryer", "dishwasher", "disposer", "microwave", "range",
    "furnace", "water-heater", "sump-pump", "garage-door", "hood",
)  # fmt: skip
"""Appliances that are not easily moved from one place to another, for which a receptacle may be kept."""


@dataclass(frozen=True, slots=True)
class ReceptacleCount:
    """The receptacles of a circuit, a duplex as two; ``lacks`` says why there may be more."""

    circuit: str
    counted: int
    devices: tuple[str, ...]
    lacks: tuple[str, ...]

    @property
    def several(self) -> bool | None:
        """Whether there are two or more; None where that is not recorded."""
        return True if self.counted > 1 else None if self.lacks else False

    @property
    def outlets(self) -> int | None:
        """How many, as far as a rule turns on it: exact at nought and one; None where not recorded."""
        return None if self.several is None else self.counted


@dataclass(frozen=True, slots=True)
class ReceptacleMatch:
    """One receptacle held against its circuit's breaker, both in A; None where a rating is not recorded."""

    device: str
    circuit: str | None
    breaker: str | None
    rating_a: Fraction | None
    breaker_a: Fraction | None
    count: ReceptacleCount | None
    fit: Fit


def outlets_of(kind: DeviceKind) -> int:
    """How many receptacles a device is: a duplex two, a face for 240 V one, a switch none."""
    if kind.is_ not in RECEPTACLES:
        return 0
    if kind.outlets is not None:
        return kind.outlets
    return 2 if kind.face is None or kind.face in DUPLEX_FACES else 1


def plugged_into(house: House, device: Device) -> tuple[LoadRecord, ...]:
    """The loads that the record plugs into a receptacle or one of its halves."""
    names = (device.id, f"{device.id}.top", f"{device.id}.bottom")
    return tuple(
        load for circuit in house.circuits.values() for load in circuit.loads if load.plugged in names
    )


def is_taken_up(house: House, device: Device) -> bool:
    """Whether appliances that stay take all of a receptacle: one of a single, two of a duplex."""
    staying = sum(each.is_ in STAYS for each in plugged_into(house, device))
    return 0 < outlets_of(device.kind) <= staying


def rating_of(kind: DeviceKind) -> Fraction | None:
    """A receptacle's rating in A: as told, or else by its face (NEMA WD 6); None where neither is."""
    if kind.rating is not None:
        return kind.rating.to("A")
    faces = table("receptacle-faces")
    return faces.number(kind.face, "amps") if kind.face and kind.face in faces else None


def receptacle_count(house: House, circuit: Circuit) -> ReceptacleCount:
    """The receptacles of one circuit; each half of one fed by two circuits counts on its own."""
    devices = [
        each
        for each in house.devices.values()
        if circuit.id in circuits_of(house, each) and outlets_of(each.kind)
    ]
    counted = 0
    for device in devices:
        shared = len(circuits_of(house, device)) > 1
        counted += 1 if shared else outlets_of(device.kind)
    faceless = (f"the face of {each.id}" for each in devices if not _face_told(each.kind))
    gaps = tuple(dict.fromkeys((*unseen_on(house, circuit), *faceless)))
    return ReceptacleCount(circuit.id, counted, tuple(each.id for each in devices), gaps)


def _face_told(kind: DeviceKind) -> bool:
    """Whether a device's face is a known one; where none is told it is a duplex, as the record defines."""
    return kind.outlets is not None or kind.face is None or kind.face in table("receptacle-faces")


def circuits_of(house: House, device: Device) -> tuple[str, ...]:
    """The circuits that feed a device: those landed on it, or the only one in its box if none is."""
    box = house.boxes[device.box]
    return device.circuits or (box.circuits if len(box.circuits) == 1 else ())


def receptacle_matches(
    house: House, network: Network, device: Device, counts: Mapping[str, ReceptacleCount]
) -> tuple[ReceptacleMatch, ...]:
    """A receptacle against each breaker that feeds it; empty for what is no receptacle."""
    if not outlets_of(device.kind):
        return ()
    return tuple(_matches(house, network, device, counts))


def _matches(
    house: House, network: Network, device: Device, counts: Mapping[str, ReceptacleCount]
) -> Iterator[ReceptacleMatch]:
    edition = house.boxes[device.box].edition
    rating = rating_of(device.kind)
    circuits = circuits_of(house, device)
    if not circuits:
        fit = _cannot_tell(edition, (f"which circuit feeds {device.id}",))
        yield ReceptacleMatch(device.id, None, None, rating, None, None, fit)
    for circuit in circuits:
        count = counts.get(circuit)
        breaker, breaker_a, lacks = _breaker(house, _breakers(house, network, device, circuit), circuit)
        if rating is None:
            lacks = (*lacks, f"the rating of {device.id}")
        if breaker_a is None or rating is None:
            fit = _cannot_tell(edition, lacks)
        else:
            outlets = count.outlets if count else None
            fit = receptacle_fit(breaker_a, rating, outlets, edition)
            if outlets is None and count and fit.fits is None:
                fit = replace(fit, lacks=count.lacks)
        yield ReceptacleMatch(device.id, circuit, breaker, rating, breaker_a, count, fit)


def _breakers(house: House, network: Network, device: Device, circuit: str) -> tuple[str, ...]:
    """The breakers of the circuit that make the device live, or all of the circuit's where nothing tells."""
    ids = house.circuits[circuit].breakers if circuit in house.circuits else ()
    names = [f"{device.id}.{each.name}" for each in terminals_of(device.kind) if each.role == "hot"]
    live = {breaker for name in names for breaker in network.breakers_of(name)}
    return tuple(each for each in ids if each in live) or ids


def _breaker(
    house: House, ids: tuple[str, ...], circuit: str
) -> tuple[str | None, Fraction | None, tuple[str, ...]]:
    """One of these breakers and its rating in A, or what is missing; of two the first, if they agree."""
    if not ids:
        return None, None, (f"which breaker feeds circuit {circuit}",)
    ratings = {each: house.breakers[each].rating for each in ids}
    unrated = tuple(
        f"the rating of {each}" for each, rating in ratings.items() if not isinstance(rating, Quantity)
    )
    if unrated:
        return ids[0], None, unrated
    amperes = {each: rating.to("A") for each, rating in ratings.items() if isinstance(rating, Quantity)}
    if len(set(amperes.values())) > 1:
        either = " or ".join(f"{each} ({plain(amps)} A)" for each, amps in amperes.items())
        return ids[0], None, (f"which leg of circuit {circuit} feeds it: {either}",)
    return ids[0], amperes[ids[0]], ()


def _cannot_tell(edition: str, lacks: tuple[str, ...]) -> Fit:
    return Fit("cannot tell", "not known", (cite_in(edition, "210.21(B)(3)"),), lacks)
