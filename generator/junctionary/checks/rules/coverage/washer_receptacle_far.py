"""A washer has no receptacle within 6 ft.

Why it matters: its cord is no longer than that. What lengthens it lies in the wet behind the machine, and
    heats where the two are joined.
What to do: put a receptacle, guarded against ground faults, on the laundry's circuit within 6 ft of it.
Cannot tell: when the room's outline, the washer's place, a box's place or its devices are not recorded. The
    distance is measured on the plan, in the room the washer stands in. A laundry with no receptacle at all
    has a check of its own. Rooms built before the 2008 edition are left alone.
Stands: on the room's key, one finding a washer.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.receptacles_in import reaches, receptacles_in
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.records.words import ROOM_KINDS
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.50(C)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Laundry"}
[circuits/one.yaml]
circuit: one
name: Laundry
purpose: laundry
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/laundry.yaml]
room: laundry    #! washer-receptacle-far
name: Laundry
kind: laundry
complete: true
outline: [[0 ft, 0 ft], [14 ft, 0 ft], [14 ft, 8 ft], [0 ft, 8 ft]]
things:
  - {what: washer, wall: north, along: 1 ft, width: 27 in}
[boxes/laundry.yaml]
room: laundry
boxes:
  D1: {at: {wall: north, along: 12 ft, up: 42 in}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("along: 12 ft", "along: 4 ft").replace("    #! washer-receptacle-far", "")

UNTOLD = PASSES.replace("at: {wall: north, along: 4 ft, up: 42 in}, ", "")

REACH_IN = 72


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each washer against the receptacles of the room it stands in."""
    for room in rooms_of(house, *ROOM_KINDS):
        washers = [each for each in room.record.things if each.what == "washer"]
        if not washers:
            continue
        held = receptacles_in(house, room)
        for washer in washers:
            near = reaches(house, room, washer, held, REACH_IN)
            if near is True or (not held.boxes and room.record.kind == "laundry"):
                continue
            if near:
                yield CannotTell((room.id,), near, room.place)
                continue
            yield Fault(
                place=room.place,
                about=(room.id, *held.boxes),
                found=f"The washer on the {washer.wall} wall of {room.name} has no receptacle within 6 ft.",
                allowed="A receptacle within 6 ft of where the washer stands.",
                because="Its cord does not reach, and what lengthens it lies in the wet.",
                do="Put in a receptacle within 6 ft of it, guarded against ground faults.",
                edition=room.edition,
            )
