"""A wall of a large foyer has no receptacle.

Why it matters: a lamp, a vacuum cleaner or a holiday light in the foyer is fed by a cord across the floor on
    which everybody comes in.
What to do: put a receptacle into each wall space that is named, while the wall is open.
Cannot tell: when the foyer's outline, where a door stands, a box's place or its devices are not recorded.
    Asked since the 2011 edition (from memory) of a foyer of more than 60 ft2, of each wall space of 3 ft or
    more between doors, openings and windows that come down to the floor. What is recorded as a hall is no
    foyer.
Stands: on the room's key, one finding a room.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.stretches import stretches_words
from junctionary.figures import Figures
from junctionary.figures.coverage import foyer_walls
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(I)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, guards: [afci], feeds: foyer, says: "Foyer"}
[circuits/foyer.yaml]
circuit: foyer
name: Foyer
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
[rooms/foyer.yaml]
room: foyer    #! foyer-wall-without-receptacle
name: Foyer
kind: foyer
complete: true
outline: [[0 ft, 0 ft], [10 ft, 0 ft], [10 ft, 8 ft], [0 ft, 8 ft]]
things:
  - {what: door, wall: north, along: 6 ft, width: 36 in}
  - {what: opening, wall: south, along: 0 ft, width: 10 ft}
[boxes/foyer.yaml]
room: foyer
boxes:
  D1: {at: {wall: west, along: 2 ft, up: 14 in}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace(
    "wall: north, along: 6 ft, width: 36 in", "wall: east, along: 0 ft, width: 8 ft"
).replace("    #! foyer-wall-without-receptacle", "")

UNTOLD = PASSES.replace("outline: [[0 ft, 0 ft], [10 ft, 0 ft], [10 ft, 8 ft], [0 ft, 8 ft]]\n", "")

ASKED_SINCE = 2011


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each foyer by its outline."""
    for room in rooms_of(house, "foyer"):
        reached = foyer_walls(house, room)
        if edition_year(room.edition) < ASKED_SINCE or reached is None:
            continue
        if reached.lacks:
            yield CannotTell((room.id,), reached.lacks, room.place)
        elif reached.far:
            yield Fault(
                place=room.place,
                about=(room.id,),
                found=f"In {room.name}, wall spaces without a receptacle: {stretches_words(house, reached)}.",
                allowed="In a foyer of more than 60 ft2, one in each wall space of 3 ft or more.",
                because="Cords are laid across the floor on which everybody comes in.",
                do="Put a receptacle into each of these wall spaces.",
                edition=room.edition,
            )
