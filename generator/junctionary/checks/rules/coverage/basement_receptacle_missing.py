"""A basement or cellar has no receptacle but those kept for an appliance.

Why it matters: whoever works at the water heater or the pump down there does so at the end of a cord.
What to do: put in a receptacle, guarded against ground faults.
Cannot tell: when the room's boxes, or what is in one of them, is not recorded. Rooms built before the
    2008 edition are left alone. One that a pump, a freezer or another appliance that stays takes up does
    not count.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.receptacles_in import bare_rooms, not_taken_up
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(G)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Cellar"}
[circuits/one.yaml]
circuit: one
name: Cellar
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/cellar.yaml]
room: cellar    #! basement-receptacle-missing
name: Cellar
kind: basement
complete: true
[boxes/cellar.yaml]
room: cellar
boxes:
  D1: {devices: {f1: lamp}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("{f1: lamp}, makeup: end-of-run", "{f1: lamp, r1: duplex}, makeup: pigtailed").replace(
    "    #! basement-receptacle-missing", ""
)

UNTOLD = PASSES.replace("{devices: {f1: lamp, r1: duplex}, makeup: pigtailed}", "{makeup: unknown}")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each cellar, by the receptacles in it."""
    for room, doubt in bare_rooms(house, rooms_of(house, "basement", "cellar"), not_taken_up(house)):
        yield doubt or Fault(
            place=room.place,
            about=(room.id,),
            found=f"{room.name} has no 120 V receptacle that is free of an appliance.",
            allowed="At least one receptacle in each basement, beside those for specific equipment.",
            because="Work down there is done at the end of a long cord.",
            do="Put in a receptacle that opens on a ground fault.",
            edition=room.edition,
        )
