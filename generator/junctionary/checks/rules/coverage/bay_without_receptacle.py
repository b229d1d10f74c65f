"""A garage has fewer receptacles than bays for vehicles.

Why it matters: a cord that crosses the next bay is driven over.
What to do: put a receptacle in each bay, no more than 5-1/2 ft above the floor.
Cannot tell: when the bays, the boxes or a box's height are not recorded. Which bay a receptacle is in is
    not measured, only how many there are; nor what an appliance that stays takes up is counted. A garage that
    stands apart is asked only if it has power. Garages built before the 2017 edition are left alone.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import has_power, rooms_of
from junctionary.checks.receptacles_in import no_higher_than, not_taken_up, receptacles_in
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(G)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Garage"}
[circuits/one.yaml]
circuit: one
name: Garage
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/garage.yaml]
room: garage    #! bay-without-receptacle
name: Garage
kind: garage
complete: true
bays: 2
[boxes/garage.yaml]
room: garage
boxes:
  D1: {at: {wall: north, along: 4 ft, up: 48 in}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant, weather-resistant]}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("bays: 2", "bays: 1").replace("    #! bay-without-receptacle", "")

UNTOLD = PASSES.replace("bays: 1\n", "")

ASKED_SINCE = 2017
HIGHEST_IN = 66


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each garage by its bays and the receptacles in it."""
    low, free = no_higher_than(HIGHEST_IN), not_taken_up(house)
    for room in rooms_of(house, "garage"):
        powered = has_power(house, room)
        if edition_year(room.edition) < ASKED_SINCE or powered is False:
            continue
        if powered is None:
            yield CannotTell((room.id,), (f"whether {room.id} has power",), room.place)
            continue
        held = receptacles_in(house, room, lambda box: low(box) if free(box) else False)
        bays = room.record.bays
        if bays is not None and len(held.boxes) >= bays:
            continue
        lacks = held.lacks if bays is not None else (f"how many bays {room.id} has", *held.lacks)
        if lacks:
            yield CannotTell((room.id,), lacks, room.place)
            continue
        yield Fault(
            place=room.place,
            about=(room.id, *held.boxes),
            found=f"{room.name} has {bays} bay{'s' if bays != 1 else ''} "
            f"and receptacles in {len(held.boxes) or 'no'} boxes.",
            allowed="A receptacle in each bay, no more than 5-1/2 ft high.",
            because="A cord that crosses the next bay is driven over.",
            do="Put a receptacle in each bay.",
            edition=room.edition,
        )
