"""A receptacle stands where a shock goes to earth, and nothing opens on a ground fault.

Why it matters: beside water, on earth or on concrete a few thousandths of an ampere through a
    person kill, and trip no ordinary breaker.
What to do: put in a GFCI receptacle, feed the receptacle from the load side of one, or put in a breaker
    that opens on a ground fault. Where the record says what guards it, see that it does.
Cannot tell: when what feeds the receptacle or what its breaker guards against is not recorded, and when
    the room, a sink's place or the box's would decide; and of a circuit of which only the rooms are told,
    unless its breaker opens on a ground fault. Since 2023 a pantry with a sink counts as a place for food,
    and so does, in other rooms with one, what is above the counter or holds a refrigerator or an oven.
    Distances are measured on the plan to the nearest edge of the basin, and never through a doorway. Work
    is judged by the edition it was built under: before 2008 what was out of reach in a garage or cellar, or
    kept there for an appliance that stays, was left out; before 1996 what was out of reach from grade, and
    counters far from the sink.
Stands: on the receptacle's line, each on its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures, Guarded
from junctionary.figures.ground_fault import UP_TO_250_V_SINCE, Asked, gfci_asked
from junctionary.house.model import Circuit, Device, House, Room
from junctionary.house.network import Network, breaker_named
from junctionary.sources import cite, edition_year
from junctionary.tables import table

RULE = Rule(DEFECT, (cite("nec-2023", "210.8(A)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [], feeds: wash, says: "Wash room, receptacles"}
[circuits/wash.yaml]
circuit: wash
name: Wash room
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/wash.yaml]
room: wash
name: Wash room
kind: bathroom
[boxes/wash.yaml]
room: wash
boxes:
  D1:
    devices: {r1: duplex}    #! gfci-missing
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("guards: []", "guards: [gfci]").replace("    #! gfci-missing", "")

UNTOLD = PASSES.replace("guards: [gfci], ", "")


NO_RECEPTACLES = ("lighting", "smoke-alarms", "feeder", "source")
PLACES = {
    "bathroom": "bathroom", "kitchen": "kitchen counter near the sink", "laundry": "laundry",
    "garage": "garage",
    "basement": "unfinished basement", "cellar": "unfinished basement", "crawlspace": "crawlspace",
    "outdoors": "outdoors near grade", "porch": "outdoors near grade", "deck": "outdoors near grade",
}  # fmt: skip
"""The place of the table that a kind of room is, or that is the first to be in one."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each receptacle in a place that its edition covers, and each that is said to be guarded."""
    for device in house.devices.values():
        guarded = figures.guarded.get(device.id)
        asked = gfci_asked(house, device)
        if guarded is None or asked is None:
            continue
        claim = _claim(house, device)
        if claim is not None and guarded.by["gfci"] and claim not in guarded.by["gfci"]:
            yield _untrue(house, device, claim, guarded)
        elif not guarded.by["gfci"] and (asked.places or asked.lacks or claim):
            yield _judged(house, device, asked, guarded, claim)
    for circuit in house.circuits.values():
        if not circuit.boxes and circuit.record.purpose not in NO_RECEPTACLES:
            yield from _by_rooms(house, circuit)


def _by_rooms(house: House, circuit: Circuit) -> Iterator[CannotTell]:
    """A circuit of which only the rooms are told: its outlets must be known, or its breaker guard them."""
    rooms = (house.rooms[each] for each in circuit.rooms if each in house.rooms)
    years = [edition_year(room.edition) for room in rooms if _may_ask(room)]
    for breaker in (house.breakers[each] for each in circuit.breakers) if years else ():
        if breaker.poles > 1 and max(years) < UP_TO_250_V_SINCE:
            continue
        if breaker.guards is None:
            needs = f"what breaker {breaker.id} guards against"
            yield CannotTell((circuit.id, breaker.id), (needs,), breaker.place)
        elif "gfci" not in breaker.guards:
            needs = f"the outlets of circuit {circuit.id}"
            yield CannotTell((circuit.id, breaker.id), (needs,), breaker.place)


def _may_ask(room: Room) -> bool:
    """Whether receptacles of such a room are covered by its edition, all of them or some."""
    place = PLACES.get(room.record.kind)
    if place is None:
        return False
    since = table("gfci-places").number(place, "since")
    return since is not None and edition_year(room.edition) >= since


def _claim(house: House, device: Device) -> str | None:
    """What is said to guard it or its circuit, a breaker by its whole name."""
    circuits = (house.circuits[each] for each in device.circuits if each in house.circuits)
    told = (device.guarded_by, *(each.record.guarded_by for each in circuits))
    claim = next((each for each in told if each), None)
    breaker = breaker_named(house, claim) if claim else None
    return breaker.id if breaker else claim


def _judged(
    house: House, device: Device, asked: Asked, guarded: Guarded, claim: str | None
) -> Fault | CannotTell:
    needs = (*guarded.lacks, *(asked.lacks if not asked.places and claim is None else ()))
    if needs:
        return CannotTell((device.id, *guarded.breakers), needs, device.place)
    if not asked.places and claim is not None:
        return _untrue(house, device, claim, guarded)
    where = f"{device.id} is {' and '.join(asked.places)}"
    said = f"; {claim} is said to guard it, and does not" if claim else ""
    return Fault(
        place=device.place,
        about=(device.id, *device.circuits, *guarded.breakers),
        found=f"{where}, and nothing on its way to the source opens on a ground fault{said}.",
        allowed="There, a receptacle that opens on a ground fault.",
        because="A current that kills a person trips no ordinary breaker.",
        do="Put in a GFCI receptacle, feed it from the load side of one, or put in a GFCI breaker.",
        edition=house.boxes[device.box].edition,
    )


def _untrue(house: House, device: Device, claim: str, guarded: Guarded) -> Fault:
    truly = " and ".join(guarded.by["gfci"])
    return Fault(
        place=device.place,
        about=(device.id, claim, *device.circuits),
        found=f"{claim} is said to guard {device.id}, and does not"
        + (f"; {truly} does." if truly else "; nothing does."),
        allowed="A guard that is on its way to the source.",
        because="Who tests or resets the wrong guard believes a receptacle safe that is not.",
        do="Correct guarded_by, or feed the receptacle from the load side of what is named.",
        edition=house.boxes[device.box].edition,
    )
