"""A circuit has outlets in rooms where nothing opens on an arc.

Why it matters: a loose screw, a nail in a cable or a crushed cord arcs and sets fire to what is
    beside it, at a current that trips no ordinary breaker.
What to do: put in a breaker that guards against arcs, or the first device of the circuit that does,
    with its cable to the panel as the code asks.
Cannot tell: when what a breaker guards against, its rating, the circuit's cables or the kind of a room is
    not recorded. Work is judged by the edition it was built under; what was added later to an old
    circuit has the edition of its own box. Since 2014 a switch there counts as an outlet does.
Stands: on the breaker's line, one finding a breaker.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.drawn_at import volts_of
from junctionary.figures.places import afci_since, branch_breakers, is_125_volt, small_breaker
from junctionary.figures.protection import guards_of_kind
from junctionary.house.model import Breaker, Circuit, Device, House
from junctionary.house.network import Network
from junctionary.house.terminals import is_across
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.12(B)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, guards: [], feeds: den, says: "Den"}    #! afci-missing
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A}
"""

PASSES = FAILS.replace("guards: []", "guards: [afci]").replace("    #! afci-missing", "")

UNTOLD = PASSES.replace("guards: [afci], ", "")

SWITCHES = ("switch", "dimmer", "timer", "sensor")
DEVICES_SINCE = 2014
ON_BOTH_LEGS = (
    "range", "dryer", "water-heater", "heating", "cooling", "heat-pump", "car-charger", "pump", "feeder",
    "source",
)  # fmt: skip
"""Purposes for which a two-pole breaker feeds no outlet of 120 V that is covered."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit's outlets in the rooms that are covered, breaker by breaker."""
    for circuit in house.circuits.values():
        yield from _by_outlets(house, circuit, figures)
        yield from _by_switches(house, circuit, figures)
        if not circuit.boxes:
            yield from _by_rooms(house, circuit)


def _by_outlets(house: House, circuit: Circuit, figures: Figures) -> Iterator[Fault | CannotTell]:
    bare: dict[str, list[str]] = {}
    for id_ in circuit.devices:
        device = house.devices[id_]
        box = house.boxes[device.box]
        room = house.rooms.get(box.room)
        if id_ not in figures.guarded or room is None or not _is_at_120(house, circuit, device):
            continue
        since = afci_since(room.record.kind)
        guarded = figures.guarded[id_]
        breakers = branch_breakers(house, guarded.breakers)
        small = small_breaker(house, breakers)
        if since is None or edition_year(box.edition) < since or small is False:
            continue
        held = guarded.against("afci")
        if held is None:
            yield CannotTell((id_, circuit.id, *guarded.breakers), guarded.lacks, device.place)
        elif not held and small is None:
            needs = tuple(f"the rating of {each}" for each in breakers)
            yield CannotTell((id_, circuit.id, *guarded.breakers), needs, device.place)
        elif not held:
            bare.setdefault(breakers[0], []).append(id_)
    for breaker, devices in bare.items():
        yield _fault(house, circuit, house.breakers[breaker], devices)


def _by_switches(house: House, circuit: Circuit, figures: Figures) -> Iterator[Fault | CannotTell]:
    """A circuit that has switches there and no outlet: since 2014 devices are covered as outlets are."""
    switches = [
        each
        for each in (house.devices[id_] for id_ in circuit.devices)
        if each.kind.is_ in SWITCHES and _covers_devices(house, each)
    ]
    others = (house.devices[each] for each in circuit.devices if each in figures.guarded)
    breakers = [house.breakers[each] for each in circuit.breakers]
    if (
        not switches
        or any(_covers(house, each) for each in others)
        or any(each.poles > 1 for each in breakers)
    ):
        return
    # A first device that guards against arcs may stand anywhere on the way.
    if any("afci" in guards_of_kind(house.devices[each].kind) for each in circuit.devices):
        return
    ids = [each.id for each in switches]
    for breaker in breakers:
        small = small_breaker(house, (breaker.id,))
        if small is False or "afci" in (breaker.guards or ()):
            continue
        if breaker.guards is None or small is None:
            needs = [f"what breaker {breaker.id} guards against"] if breaker.guards is None else []
            needs += [f"the rating of {breaker.id}"] if small is None else []
            yield CannotTell((circuit.id, breaker.id, *ids), tuple(needs), breaker.place)
        else:
            yield _fault(house, circuit, breaker, ids)


def _covers(house: House, device: Device) -> bool:
    """Whether the edition of a device's box covers outlets in its room."""
    box = house.boxes[device.box]
    room = house.rooms.get(box.room)
    since = afci_since(room.record.kind) if room is not None else None
    return since is not None and edition_year(box.edition) >= since


def _covers_devices(house: House, device: Device) -> bool:
    return _covers(house, device) and edition_year(house.boxes[device.box].edition) >= DEVICES_SINCE


def _is_at_120(house: House, circuit: Circuit, device: Device) -> bool:
    """Whether an outlet is on 120 V; what is fed by a two-pole breaker's two wires alone is not."""
    volts = volts_of(house, circuit, device)
    return is_125_volt(device.kind) and (volts is None or not is_across(volts))


def _fault(house: House, circuit: Circuit, breaker: Breaker, devices: list[str]) -> Fault:
    boxes = [house.boxes[house.devices[each].box] for each in devices]
    rooms = ", ".join(dict.fromkeys(house.rooms[each.room].name for each in boxes))
    newest = max((each.edition for each in boxes), key=edition_year)
    return Fault(
        place=breaker.place,
        about=(breaker.id, circuit.id, *devices),
        found=f"Nothing on the way from {breaker.id} to {', '.join(devices)} opens on an arc ({rooms}).",
        allowed="Arc-fault protection for every 120 V outlet there on 15 and 20 A circuits.",
        because="A loose connection or a damaged cord can arc and set fire without tripping the breaker.",
        do="Put in a breaker that guards against arcs, or a first device that does where the code allows it.",
        edition=newest,
    )


def _by_rooms(house: House, circuit: Circuit) -> Iterator[CannotTell]:
    """A circuit of which only the rooms are told: its outlets must be known, or its breaker guard them."""
    covered = [
        room
        for room in (house.rooms[each] for each in circuit.rooms if each in house.rooms)
        if (since := afci_since(room.record.kind)) is not None and edition_year(room.edition) >= since
    ]
    breakers = [house.breakers[each] for each in circuit.breakers]
    both_legs = any(each.poles > 1 for each in breakers) and circuit.record.purpose in ON_BOTH_LEGS
    if not covered or both_legs:
        return
    for breaker in breakers:
        if breaker.guards is None:
            yield CannotTell(
                (circuit.id, breaker.id), (f"what breaker {breaker.id} guards against",), breaker.place
            )
        elif "afci" not in breaker.guards and small_breaker(house, (breaker.id,)) is not False:
            yield CannotTell(
                (circuit.id, breaker.id), (f"the outlets of circuit {circuit.id}",), breaker.place
            )
