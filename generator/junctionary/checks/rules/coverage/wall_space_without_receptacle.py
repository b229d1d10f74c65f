"""A stretch of wall in a habitable room is more than 6 ft from the nearest receptacle.

Why it matters: where no outlet is in reach, a cord is laid across a doorway or under a rug, and is
    stepped on until it fails.
What to do: put a receptacle into the stretch that is named, no more than 6 ft from each of its ends,
    while the wall is open.
Cannot tell: when the room's outline, where a door stands, a box's place or its devices are not recorded; and
    in a room without a door, unless a stretch wider than 6 ft is too far.
    A wall space is 2 ft or wider, around corners, between doors, openings, fireplaces, fixed cabinets and
    counters. A receptacle counts up to 5-1/2 ft high, and in a floor within 18 in of the wall; one that a
    wall switch governs whole does not, where it is the light of the room. Rooms built before the 2008
    edition are left alone.
Stands: on the room's key, one finding a room.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.stretches import stretches_words
from junctionary.figures import Figures
from junctionary.figures.coverage import WALL_REACH
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year
from junctionary.units import beside_its_own

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(A)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [gfci, afci], feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den    #! wall-space-without-receptacle
name: Den
kind: den
complete: true
outline: [[0 ft, 0 ft], [12 ft, 0 ft], [12 ft, 10 ft], [0 ft, 10 ft]]
walls: [north, east, south, west]
things:
  - {what: door, wall: south, along: 1 ft, width: 32 in}
[boxes/den.yaml]
room: den
boxes:
  D1: {at: {wall: north, along: 6 ft, up: 14 in}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = (
    FAILS.replace("[12 ft, 0 ft], [12 ft, 10 ft], [0 ft, 10 ft]", "[4 ft, 0 ft], [4 ft, 3 ft], [0 ft, 3 ft]")
    .replace("along: 6 ft", "along: 2 ft")
    .replace("    #! wall-space-without-receptacle", "")
)

UNTOLD = PASSES.replace("outline: [[0 ft, 0 ft], [4 ft, 0 ft], [4 ft, 3 ft], [0 ft, 3 ft]]\n", "")

ASKED_SINCE = 2008


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each habitable room by its outline."""
    for id_, reached in figures.wall_spaces.items():
        room = house.rooms[id_]
        if edition_year(room.edition) < ASKED_SINCE:
            continue
        if reached.lacks:
            yield CannotTell((id_,), reached.lacks, room.place)
        elif reached.far:
            yield Fault(
                place=room.place,
                about=(id_,),
                found=f"In {room.name}, more than {beside_its_own(WALL_REACH, house.record.shows)} "
                f"from a receptacle: {stretches_words(house, reached)}.",
                allowed="No point along the floor line of a wall space more than 6 ft from one.",
                because="Cords are laid across doorways and under rugs to reach what is too far.",
                do="Put a receptacle into each of these stretches.",
                edition=room.edition,
            )
