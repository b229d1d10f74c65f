"""A laundry has no receptacle.

Why it matters: a washer that finds no outlet is fed by a cord through the door.
What to do: put a 20 A receptacle within 6 ft of the machines.
Cannot tell: when the room's boxes, or what is in one of them, is not recorded. Rooms built before the
    2008 edition are left alone.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.receptacles_in import bare_rooms
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(F)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Laundry"}
[circuits/one.yaml]
circuit: one
name: Laundry
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/laundry.yaml]
room: laundry    #! laundry-receptacle-missing
name: Laundry
kind: laundry
complete: true
[boxes/laundry.yaml]
room: laundry
boxes:
  D1: {devices: {f1: lamp}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("{f1: lamp}, makeup: end-of-run", "{f1: lamp, r1: duplex}, makeup: pigtailed").replace(
    "    #! laundry-receptacle-missing", ""
)

UNTOLD = PASSES.replace("{devices: {f1: lamp, r1: duplex}, makeup: pigtailed}", "{makeup: unknown}")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each laundry, by the receptacles in it."""
    for room, doubt in bare_rooms(house, rooms_of(house, "laundry")):
        yield doubt or Fault(
            place=room.place,
            about=(room.id,),
            found=f"{room.name} has no 120 V receptacle.",
            allowed="At least one receptacle in a laundry.",
            because="A washer is then fed by a cord from another room.",
            do="Put in a receptacle within 6 ft of the machines, on the laundry's circuit.",
            edition=room.edition,
        )
