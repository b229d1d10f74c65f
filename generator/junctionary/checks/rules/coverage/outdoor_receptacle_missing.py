"""The front or the back of the house has no receptacle outdoors.

Why it matters: garden tools are then fed through a window or a door, on a cord that is shut in it.
What to do: put in a weather-resistant receptacle with an in-use cover, guarded against ground faults, no
    more than 6-1/2 ft above grade.
Cannot tell: when outdoor areas are recorded and none with this side, or what is in its boxes is not. A
    record without any outdoor area is left alone. Areas built before the 2008 edition are left alone.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.receptacles_in import no_higher_than, receptacles_in
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(E)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Back garden"}
[circuits/one.yaml]
circuit: one
name: Back garden
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
  - {id: a2, cable: 12/2 NM-B, from: D1, to: P1}
[rooms/porch.yaml]
room: porch
name: Front porch
kind: porch
side: front
exposed: damp
[boxes/porch.yaml]
room: porch
boxes:
  P1: {at: {wall: south, along: 4 ft, up: 14 in}, devices: {r1: duplex}, makeup: end-of-run}
[rooms/garden.yaml]
room: garden    #! outdoor-receptacle-missing
name: Back garden
kind: outdoors
complete: true
side: back
exposed: wet
[boxes/garden.yaml]
room: garden
boxes:
  D1: {at: {wall: north, along: 4 ft, up: 7 ft}, devices: {r1: duplex}, makeup: pigtailed, cover: in-use}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("up: 7 ft", "up: 2 ft").replace("    #! outdoor-receptacle-missing", "")

UNTOLD = PASSES.replace("at: {wall: north, along: 4 ft, up: 2 ft}, ", "")

SIDES = ("front", "back")
DWELLING = ("kitchen", "bedroom", "living")
"""Rooms by which a house is known to be one that people live in."""
HIGHEST_IN = 78


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Front and back, each by the outdoor areas recorded there."""
    outside = list(rooms_of(house, "outdoors", "porch", "deck"))
    for side in SIDES:
        areas = [each for each in outside if each.record.side == side]
        held = {each.id: receptacles_in(house, each, no_higher_than(HIGHEST_IN)) for each in areas}
        told = outside or list(rooms_of(house, *DWELLING))[:1]
        if not areas and told:
            needs = (f"the outdoor area at the {side} of the house",)
            yield CannotTell(tuple(each.id for each in told), needs, told[0].place)
        if not areas or any(each.boxes for each in held.values()):
            continue
        lacks = tuple(lack for each in held.values() for lack in each.lacks)
        first = areas[0]
        if lacks:
            yield CannotTell(tuple(held), lacks, first.place)
            continue
        yield Fault(
            place=first.place,
            about=tuple(held),
            found=f"Outdoors at the {side} there is no receptacle within reach from grade.",
            allowed="One at the front and one at the back, no more than 6-1/2 ft above grade.",
            because="Tools are then fed through a window or a door, on a cord that is shut in it.",
            do="Put in a weather-resistant receptacle that opens on a ground fault, with an in-use cover.",
            edition=first.edition,
        )
