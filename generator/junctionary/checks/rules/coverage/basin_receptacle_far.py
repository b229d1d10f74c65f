"""A bathroom basin has no receptacle within 3 ft of its edge.

Why it matters: a hair dryer on a stretched cord falls into the basin.
What to do: put a receptacle, guarded against ground faults, on the wall of the basin or the next one,
    within 3 ft of the basin's outside edge.
Cannot tell: when no basin is recorded, and when the outline, the basin's place, a box's place or its
    devices are not. The distance is measured on the plan. Rooms built before the 2008 edition are left alone.
Stands: on the room's key, one finding a basin.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.receptacles_in import reaches, receptacles_in
from junctionary.figures import Figures
from junctionary.house.model import House, Room
from junctionary.house.network import Network
from junctionary.records.rooms import Thing
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(D)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Wash room"}
[circuits/one.yaml]
circuit: one
name: Wash room
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/wash.yaml]
room: wash    #! basin-receptacle-far
name: Wash room
kind: bathroom
complete: true
outline: [[0 ft, 0 ft], [10 ft, 0 ft], [10 ft, 6 ft], [0 ft, 6 ft]]
walls: [north, east, south, west]
things:
  - {what: basin, wall: north, along: 1 ft, width: 20 in}
[boxes/wash.yaml]
room: wash
boxes:
  D1: {at: {wall: north, along: 7 ft, up: 40 in}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("along: 7 ft", "along: 4 ft").replace("    #! basin-receptacle-far", "")

UNTOLD = PASSES.replace("at: {wall: north, along: 4 ft, up: 40 in}, ", "")

REACH_IN = 36


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each basin of each bathroom against the receptacles of the room."""
    for room in rooms_of(house, "bathroom"):
        basins = [each for each in room.record.things if each.what == "basin"]
        if not basins:
            yield CannotTell((room.id,), (f"where the basin of room {room.id} is",), room.place)
        for basin in basins:
            yield from _judged(house, room, basin)


def _judged(house: House, room: Room, basin: Thing) -> Iterator[Fault | CannotTell]:
    held = receptacles_in(house, room)
    near = reaches(house, room, basin, held, REACH_IN)
    if near is True:
        return
    if near:
        yield CannotTell((room.id,), near, room.place)
        return
    yield Fault(
        place=room.place,
        about=(room.id, *held.boxes),
        found=f"The basin on the {basin.wall} wall of {room.name} has no receptacle within 3 ft.",
        allowed="A receptacle within 3 ft of the outside edge of each basin.",
        because="A hair dryer on a stretched cord falls into the basin.",
        do="Put in a receptacle, guarded against ground faults, beside the basin.",
        edition=room.edition,
    )
