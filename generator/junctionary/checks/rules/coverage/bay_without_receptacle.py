"""A garage has fewer receptacles than bays for vehicles, or none.

Why it matters: a cord that crosses the next bay is driven over.
What to do: put a receptacle in each bay, no more than 5-1/2 ft above the floor.
Cannot tell: when the bays, the boxes or a box's height are not recorded. Which bay a receptacle is in is
    not measured, only how many there are, without those that an appliance that stays takes up. A garage
    that stands apart is asked only if it has power. Before the 2017 edition one is enough, at any height;
    garages built before the 2008 edition are left alone.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import has_power, rooms_of
from junctionary.checks.receptacles_in import Held, no_higher_than, not_taken_up, receptacles_in
from junctionary.figures import Figures
from junctionary.house.model import House, Room
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

EACH_BAY_SINCE = 2017
HIGHEST_IN = 66


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each garage by its bays and the receptacles in it, or by whether it has any, as its edition asks."""
    low, free = no_higher_than(HIGHEST_IN), not_taken_up(house)
    for room in rooms_of(house, "garage"):
        powered = has_power(house, room)
        if powered is None:
            yield CannotTell((room.id,), (f"whether {room.id} has power",), room.place)
        elif powered and edition_year(room.edition) >= EACH_BAY_SINCE:
            held = receptacles_in(house, room, lambda box: low(box) if free(box) else False)
            yield from _judged(room, held, room.record.bays)
        elif powered:
            yield from _judged(room, receptacles_in(house, room, free), 1)


def _judged(room: Room, held: Held, needed: int | None) -> Iterator[Fault | CannotTell]:
    if needed is not None and len(held.boxes) >= needed:
        return
    lacks = held.lacks if needed is not None else (f"how many bays {room.id} has", *held.lacks)
    if lacks:
        yield CannotTell((room.id,), lacks, room.place)
        return
    each_bay = edition_year(room.edition) >= EACH_BAY_SINCE
    bays = f"{needed} bay{'s' if needed != 1 else ''} and receptacles in {len(held.boxes) or 'no'} boxes"
    yield Fault(
        place=room.place,
        about=(room.id, *held.boxes),
        found=f"{room.name} has {bays if each_bay else 'no receptacle that is free of an appliance'}.",
        allowed="A receptacle in each bay, no more than 5-1/2 ft high."
        if each_bay
        else "At least one in it.",
        because="A cord that crosses the next bay, or comes from the house, is driven over.",
        do=f"Put a receptacle {'in each bay' if each_bay else 'in it'}, guarded against ground faults.",
        edition=room.edition,
    )
