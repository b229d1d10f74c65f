"""A hallway of 10 ft or more has no receptacle.

Why it matters: a lamp or a vacuum cleaner in a long hall is fed by a cord from a room, across its door.
What to do: put in a receptacle.
Cannot tell: when the hall's outline or its boxes are not recorded. Its length is taken along its longer
    side, or around its corner, as that of a passage of its area. Rooms built before the 2008 edition are
    left alone.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.receptacles_in import receptacles_in
from junctionary.figures import Figures
from junctionary.house.geometry import shape
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(H)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Hall"}
[circuits/one.yaml]
circuit: one
name: Hall
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/hall.yaml]
room: hall    #! hallway-without-receptacle
name: Hall
kind: hall
complete: true
outline: [[0 ft, 0 ft], [14 ft, 0 ft], [14 ft, 4 ft], [0 ft, 4 ft]]
[boxes/hall.yaml]
room: hall
boxes:
  D1: {devices: {f1: lamp}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("{f1: lamp}", "{r1: duplex}").replace("    #! hallway-without-receptacle", "")

UNTOLD = PASSES.replace("{devices: {r1: duplex}, makeup: end-of-run}", "{makeup: unknown}")

LONG_IN = 120


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each hallway by its outline and the receptacles in it."""
    for room in rooms_of(house, "hall"):
        held = receptacles_in(house, room)
        made = shape(room.record)
        if held.boxes or (made is not None and max(float(made.longest_in), made.run_in) < LONG_IN):
            continue
        lacks = held.lacks if made else (*held.lacks, f"the outline of room {room.id}")
        if lacks:
            yield CannotTell((room.id,), lacks, room.place)
            continue
        yield Fault(
            place=room.place,
            about=(room.id,),
            found=f"{room.name} is 10 ft long or longer and has no receptacle.",
            allowed="At least one receptacle in a hallway of 10 ft or more.",
            because="Cords are laid across the doors of rooms to reach it.",
            do="Put in a receptacle.",
            edition=room.edition,
        )
