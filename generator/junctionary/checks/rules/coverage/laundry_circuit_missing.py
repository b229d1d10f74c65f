"""A laundry has no 20 A circuit of its own.

Why it matters: a washer and an iron on a shared circuit overload it while nobody stands by.
What to do: run a 20 A circuit for the laundry's receptacles and nothing else.
Cannot tell: when the purpose of a circuit, its breaker or its rating is not recorded and would decide.
    Where no room is a laundry, one in which a washer stands is. Rooms built before the 2008 edition are left
    alone. A multiwire circuit counts for each hot.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of, shortage
from junctionary.figures import Figures
from junctionary.house.model import House, Room
from junctionary.house.network import Network
from junctionary.records.words import ROOM_KINDS
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.11(C)(2)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 4
breakers:
  2: blank
  4: blank
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Laundry, one"}
  3: {rating: 20 A, guards: [gfci, afci], feeds: two, says: "Laundry, two"}
[circuits/one.yaml]
circuit: one
name: Laundry, one
purpose: general
serves: [laundry]
[circuits/two.yaml]
circuit: two
name: Laundry, two
purpose: general
serves: [laundry]
[rooms/laundry.yaml]
room: laundry    #! laundry-circuit-missing
name: Laundry
kind: laundry
"""

PASSES = FAILS.replace("purpose: general", "purpose: laundry").replace("    #! laundry-circuit-missing", "")

UNTOLD = FAILS.replace("purpose: general\n", "").replace("    #! laundry-circuit-missing", "")

NEEDED = 1


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The laundry, against the circuits of that purpose in the whole house."""
    washed_in = [
        *rooms_of(house, "laundry"),
        *(each for each in rooms_of(house, *ROOM_KINDS) if _washes(each)),
    ]
    short = shortage(house, washed_in, "laundry", NEEDED)
    if short is None:
        return
    room, counted = short
    if counted.lacks:
        yield CannotTell((room.id,), counted.lacks, room.place)
        return
    yield Fault(
        place=room.place,
        about=(room.id,),
        found=f"No 20 A circuit of the house is for {room.name}.",
        allowed="At least one 20 A circuit for the laundry's receptacles.",
        because="A washer and an iron on a shared circuit overload it.",
        do="Run a 20 A circuit for the laundry's receptacles alone.",
        edition=room.edition,
    )


def _washes(room: Room) -> bool:
    return any(each.what == "washer" for each in room.record.things)
