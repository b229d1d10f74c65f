"""What each load and each device of a house draws, where, and on which legs.

One list for whoever reckons with loads: the load of a circuit, its voltage
drop, the service. ``draws_of`` gives, by id,

- every load of ``loads:`` (its id is the load's), plugged, wired or neither;
- every device that draws (a lamp, a fan, an appliance, a smoke alarm; its id is
  the device's), but for one that a load is ``wired`` to: the load speaks for it,
  and where the load tells no draw it is the one of the device's kind.

Nothing is left out for being unknown: what is not recorded has ``amps`` that
lacks it. Of loads that never run together (``instead_of``) all are in the
list; ``together`` picks those that may run at once.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.drawn_at import LINE_TO_NEUTRAL, Connection, connection_of, line_to_line, volts_of
from junctionary.figures.receptacles import circuits_of
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Worked, finished, lacking, step
from junctionary.house.model import Circuit, Device, House
from junctionary.house.network import Network
from junctionary.house.outlets import Outlet, outlets_of
from junctionary.house.terminals import WIRED
from junctionary.marks import Place
from junctionary.records.circuits import LoadRecord
from junctionary.units import Quantity

IS_OF_DEVICE = {"luminaire": "lighting", "fan": "fan", "smoke-alarm": "alarm"}
"""Which word of the list of loads a device's own draw goes under."""

LONG = ("water-heater", "car-charger", "network", "alarm")
"""Loads taken as continuous where nobody says: they may run three hours on end (practice)."""

LONG_WHERE_FASTENED = ("space-heater",)
"""Likewise, where fastened in place (practice)."""

NEVER_LONG = (
    "range", "oven", "cooktop", "dryer", "washer", "dishwasher", "disposer", "microwave", "refrigerator",
    "freezer", "tool", "garage-door", "sump-pump", "lighting",
)  # fmt: skip
"""Loads taken as not continuous where nobody says: they run in spells, and a dwelling's lamps are
not counted as continuous (practice)."""

FIXED = (
    "dishwasher", "disposer", "hood", "water-heater", "furnace", "air-handler", "heat-pump", "garage-door",
)  # fmt: skip
"""Loads taken as fastened in place where nobody says (practice); so is what is wired."""


@dataclass(frozen=True, slots=True)
class Draw:
    """What one load or device draws, in A at its nominal voltage, and in VA.

    ``amps`` and ``volt_amps`` lack what is not recorded; watts are taken as
    volt-amperes, as the record holds no power factor. ``volts`` is None where
    nothing tells it, and then ``amps`` is known only where the draw is told in A.

    ``device`` is what it is plugged or wired into, ``box`` where that stands;
    either may be None. ``connection`` has the terminals there, the poles that
    feed it (one for a load from leg to neutral, two for one across both legs),
    and whether the neutral carries its current back.

    ``fastened``, ``continuous`` are as recorded, or by the kind of load where
    nobody says; None where neither tells. ``taken`` says what was taken for granted.
    ``instead_of`` is a load it never runs with, ``part_of`` one it belongs to.
    ``recorded`` is False for a device's own draw.
    """

    id: str
    name: str
    is_: str
    circuit: str | None
    device: str | None
    box: str | None
    amps: Worked
    volt_amps: Worked
    volts: Fraction | None
    connection: Connection
    plugged: bool
    fastened: bool | None
    continuous: bool | None
    motor: bool | None
    instead_of: str | None
    part_of: str | None
    taken: tuple[str, ...]
    recorded: bool
    place: Place


def draws_of(house: House, network: Network) -> dict[str, Draw]:
    """Every draw of a house by its id: the loads of each circuit, then the devices."""
    outlets: dict[str, list[Outlet]] = {}
    for outlet in outlets_of(house).values():
        outlets.setdefault(outlet.device, []).append(outlet)
    loads = [(circuit, load) for circuit in house.circuits.values() for load in circuit.loads]
    spoken_for = {device.id for _, load in loads if load.wired and (device := at_of(house, load.wired)[0])}
    draws = [_of_load(house, network, circuit, load, outlets) for circuit, load in loads]
    draws += [
        _of_device(house, network, device, outlets)
        for device in house.devices.values()
        if device.id not in spoken_for and (device.kind.is_ in WIRED or device.kind.draws is not None)
    ]
    return {each.id: each for each in draws}


def draws_on(draws: Mapping[str, Draw], circuit: str) -> tuple[Draw, ...]:
    """The draws on one circuit, in the order of the list."""
    return tuple(each for each in draws.values() if each.circuit == circuit)


def by_circuit(draws: Mapping[str, Draw]) -> dict[str | None, tuple[Draw, ...]]:
    """The draws of each circuit that has any; under None those of which it is not known."""
    found: dict[str | None, list[Draw]] = {}
    for each in draws.values():
        found.setdefault(each.circuit, []).append(each)
    return {circuit: tuple(each) for circuit, each in found.items()}


def at_of(house: House, said: str) -> tuple[Device | None, str | None]:
    """The device that ``K2.r1`` or ``K2.r1.top`` names, and which half or terminal of it."""
    if said in house.devices:
        return house.devices[said], None
    whole, _, part = said.rpartition(".")
    return house.devices.get(whole), part if whole in house.devices else None


def _of_load(
    house: House,
    network: Network,
    circuit: Circuit,
    load: LoadRecord,
    outlets: Mapping[str, Iterable[Outlet]],
) -> Draw:
    name = load.called
    said = load.plugged or load.wired
    device, part = at_of(house, said) if said else (None, None)
    box = device.box if device else said if said in house.boxes else None
    draws = load.draws
    if draws is None and device is not None and load.wired is not None:
        draws = device.kind.draws
    volts = load.volts.to("V") if load.volts else volts_of(house, circuit, device)
    connection = connection_of(house, network, circuit, device, part, volts, outlets, load.id)
    fastened, fixed = _fastened(load)
    continuous, long = _continuous(load, fastened)
    return Draw(
        id=load.id,
        name=name,
        is_=load.is_,
        circuit=circuit.id,
        device=device.id if device else None,
        box=box,
        amps=_amps(name, load.id, draws, volts),
        volt_amps=_volt_amps(name, load.id, draws, volts),
        volts=volts,
        connection=connection,
        plugged=load.plugged is not None,
        fastened=fastened,
        continuous=continuous,
        motor=load.motor if isinstance(load.motor, bool) else None,
        instead_of=load.instead_of,
        part_of=load.part_of,
        taken=(*fixed, *long, *_by_watts(draws, volts)),
        recorded=True,
        place=load.place,
    )


def _of_device(
    house: House, network: Network, device: Device, outlets: Mapping[str, Iterable[Outlet]]
) -> Draw:
    circuits = circuits_of(house, device)
    circuit = house.circuits.get(circuits[0]) if len(circuits) == 1 else None
    kind = device.kind
    name = f"{kind.name or kind.is_.replace('-', ' ')} {device.id}"
    volts = volts_of(house, circuit, device)
    return Draw(
        id=device.id,
        name=name,
        is_=IS_OF_DEVICE.get(kind.is_, "other"),
        circuit=circuit.id if circuit else None,
        device=device.id,
        box=device.box,
        amps=_amps(name, device.id, kind.draws, volts),
        volt_amps=_volt_amps(name, device.id, kind.draws, volts),
        volts=volts,
        connection=connection_of(house, network, circuit, device, None, volts, outlets, device.id),
        plugged=False,
        fastened=True,
        continuous={"smoke-alarm": True, "luminaire": False}.get(kind.is_),
        motor=True if kind.is_ == "fan" else None,
        instead_of=None,
        part_of=None,
        taken=_by_watts(kind.draws, volts),
        recorded=False,
        place=device.place,
    )


def _amps(name: str, id_: str, draws: Quantity | None, volts: Fraction | None) -> Worked:
    if draws is None:
        return lacking([f"what {id_} draws"], "A")
    if draws.unit in ("A", "mA"):
        drawn = step(f"{name} draws", plain(draws.to("A")), "A")
        return finished(drawn.value, "A", [drawn])
    if volts is None:
        return lacking([f"the voltage of {id_}"], "A")
    drawn = step(f"{name}, {draws} at {plain(volts)} V", f"{plain(_watts(draws))} / {plain(volts)}", "A")
    return finished(drawn.value, "A", [drawn])


def _volt_amps(name: str, id_: str, draws: Quantity | None, volts: Fraction | None) -> Worked:
    if draws is None:
        return lacking([f"what {id_} draws"], "VA")
    if draws.unit not in ("A", "mA"):
        drawn = step(f"{name} draws", plain(_watts(draws)), "VA")
    elif volts is None:
        return lacking([f"the voltage of {id_}"], "VA")
    else:
        drawn = step(f"{name}, {draws} at {plain(volts)} V", f"{plain(draws.to('A'))} × {plain(volts)}", "VA")
    return finished(drawn.value, "VA", [drawn])


def _watts(draws: Quantity) -> Fraction:
    return draws.to("VA" if draws.unit.endswith("VA") else "W")


def _by_watts(draws: Quantity | None, volts: Fraction | None) -> tuple[str, ...]:
    """What is taken for granted where watts are turned into amperes."""
    if draws is None or volts is None or draws.unit not in ("W", "kW"):
        return ()
    return ("watts are taken as volt-amperes, as no power factor is recorded",)


def _fastened(load: LoadRecord) -> tuple[bool | None, tuple[str, ...]]:
    if isinstance(load.fastened, bool):
        return load.fastened, ()
    if load.wired is not None or (load.fastened is None and load.is_ in FIXED):
        return True, (f"{load.id} is fastened in place, by its kind",)
    return None, ()


def _continuous(load: LoadRecord, fastened: bool | None) -> tuple[bool | None, tuple[str, ...]]:
    if isinstance(load.continuous, bool):
        return load.continuous, ()
    if load.is_ in LONG or (load.is_ in LONG_WHERE_FASTENED and fastened):
        return True, (f"{load.id} is continuous, by its kind",)
    if load.continuous is None and load.is_ in NEVER_LONG:
        return False, (f"{load.id} is not continuous, by its kind",)
    return None, ()


def together(draws: Iterable[Draw]) -> tuple[Draw, ...]:
    """The heaviest set, by known VA, of which no two are told never to run together.

    A draw that is not known counts as nothing here and stays in wherever it may.
    Of three loads only those pairs exclude one another that the record names.
    """
    kept = tuple(draws)
    barred: dict[str, set[str]] = {}
    ids = {each.id for each in kept}
    for each in kept:
        if each.instead_of in ids and each.instead_of is not None:
            barred.setdefault(each.id, set()).add(each.instead_of)
            barred.setdefault(each.instead_of, set()).add(each.id)
    out: set[str] = set()
    for group in _groups(barred):
        weights = {
            each.id: each.volt_amps.value or each.amps.value or Fraction(0)
            for each in kept
            if each.id in group
        }
        out |= group - _heaviest(sorted(group, key=lambda id_: (-weights[id_], id_)), weights, barred)
    return tuple(each for each in kept if each.id not in out)


def _groups(barred: Mapping[str, set[str]]) -> Iterator[set[str]]:
    seen: set[str] = set()
    for first in barred:
        if first in seen:
            continue
        group, waiting = set[str](), [first]
        while waiting:
            each = waiting.pop()
            if each not in group:
                group.add(each)
                waiting += barred[each]
        seen |= group
        yield group


def _heaviest(left: list[str], weights: Mapping[str, Fraction], barred: Mapping[str, set[str]]) -> set[str]:
    """The heaviest choice of which no two bar each other; every choice is tried, for the groups are small."""
    if not left:
        return set()
    first, *rest = left
    without = [each for each in rest if each not in barred[first]]
    taken = {first} | _heaviest(without, weights, barred)
    if len(without) == len(rest):
        return taken
    left_out = _heaviest(rest, weights, barred)
    weigh = [sum((weights[each] for each in chosen), Fraction(0)) for chosen in (taken, left_out)]
    return taken if weigh[0] >= weigh[1] else left_out


__all__ = [
    "LINE_TO_NEUTRAL", "Connection", "Draw", "at_of", "by_circuit", "draws_of", "draws_on", "line_to_line",
    "together",
]  # fmt: skip
