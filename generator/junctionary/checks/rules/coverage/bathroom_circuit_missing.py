"""The receptacles of a bathroom hang on no 20 A circuit.

Why it matters: a hair dryer takes nearly all that a 15 A circuit carries; with the light beside it the
    breaker trips and leaves the room dark.
What to do: feed the bathroom's receptacles from a 20 A circuit for bathrooms.
Cannot tell: when no receptacle of the room is recorded and others may be there, or what feeds one, its
    breaker or its rating is not recorded. What else hangs on the circuit is another check's matter.
    Rooms built before the 2008 edition are left alone.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import is_twenty, rooms_of
from junctionary.figures import Figures
from junctionary.figures.gaps import boxes_untold
from junctionary.figures.places import is_125_volt
from junctionary.figures.receptacles import circuits_of
from junctionary.house.model import Device, House, Room
from junctionary.house.network import Network
from junctionary.house.terminals import RECEPTACLES
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.11(C)(3)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [gfci], feeds: wash, says: "Wash room"}
[circuits/wash.yaml]
circuit: wash
name: Wash room
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/wash.yaml]
room: wash    #! bathroom-circuit-missing
name: Wash room
kind: bathroom
[boxes/wash.yaml]
room: wash
boxes:
  D1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("rating: 15 A, guards", "rating: 20 A, guards").replace(
    "    #! bathroom-circuit-missing", ""
)

UNTOLD = FAILS.replace("rating: 15 A, guards", "guards").replace("    #! bathroom-circuit-missing", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each bathroom by the circuits of its receptacles."""
    for room in rooms_of(house, "bathroom"):
        circuits = _circuits(house, room)
        twenty = {each: is_twenty(house, house.circuits[each]) for each in circuits}
        if any(each is True for each in twenty.values()):
            continue
        needs = [f"the rating of circuit {id_}" for id_, each in twenty.items() if each is None]
        needs += [
            f"which circuit feeds {each.id}" for each in _held(house, room) if not circuits_of(house, each)
        ]
        needs += [] if circuits or _held(house, room) else boxes_untold(room)
        if needs:
            yield CannotTell((room.id, *circuits), tuple(needs), room.place)
            continue
        if not circuits:
            continue
        yield Fault(
            place=room.place,
            about=(room.id, *circuits),
            found=f"The receptacles of {room.name} hang on {', '.join(circuits)}, which is no 20 A circuit.",
            allowed="At least one 20 A circuit for bathroom receptacles.",
            because="A hair dryer takes nearly all that a 15 A circuit carries.",
            do="Feed them from a 20 A circuit for bathrooms.",
            edition=room.edition,
        )


def _circuits(house: House, room: Room) -> tuple[str, ...]:
    """The circuits of the room's 120 V receptacles; where no box is told, those that are for bathrooms."""
    fed = [
        circuit
        for device in _held(house, room)
        for circuit in circuits_of(house, device)
        if circuit in house.circuits
    ]
    if not room.boxes:
        fed = [each for each in room.circuits if house.circuits[each].record.purpose == "bathroom"]
    return tuple(dict.fromkeys(fed))


def _held(house: House, room: Room) -> list[Device]:
    devices = (each for id_ in room.boxes for each in house.boxes[id_].devices)
    return [each for each in devices if each.kind.is_ in RECEPTACLES and is_125_volt(each.kind)]
