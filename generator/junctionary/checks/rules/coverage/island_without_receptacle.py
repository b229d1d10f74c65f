"""A kitchen island or peninsula has too few receptacles for the edition it was built under.

Why it matters: a mixer or a griddle on the island is fed by a cord across the passage, where somebody
    walks into it and pulls hot fat down.
What to do: put in the receptacles, at the places the edition allows; since the 2023 edition none is asked
    for, and cords over the edge have been the reason.
Cannot tell: when whether every box of the kitchen is recorded, or where one stands, is not said. A receptacle
    counts where its box stands within the island's outline. Through the 2017 edition one is asked for an
    island of 24 in by 12 in or more; in 2020 one for the first 9 ft2 and one for each 18 ft2 more or part.
    Kitchens built before the 2008 edition are left alone.
Stands: on the room's key, one finding an island.
"""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.checks.receptacles_in import receptacles_in
from junctionary.figures import Figures
from junctionary.house.geometry import Point, area_in2, contains, inches, shape, spot
from junctionary.house.model import House, Room
from junctionary.house.network import Network
from junctionary.records.rooms import Island
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2020", "210.52(C)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci, afci], feeds: island, says: "Kitchen island"}
[circuits/island.yaml]
circuit: island
name: Kitchen island
built_to: nec-2020
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/kitchen.yaml]
room: kitchen    #! island-without-receptacle
name: Kitchen
kind: kitchen
complete: true
built_to: nec-2020
outline: [[0 ft, 0 ft], [14 ft, 0 ft], [14 ft, 12 ft], [0 ft, 12 ft]]
islands: [{outline: [[4 ft, 4 ft], [9 ft, 4 ft], [9 ft, 7 ft], [4 ft, 7 ft]]}]
[boxes/kitchen.yaml]
room: kitchen
boxes:
  D1: {at: {floor: [5 ft, 5 ft]}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("[9 ft, 4 ft], [9 ft, 7 ft]", "[7 ft, 4 ft], [7 ft, 7 ft]").replace(
    "    #! island-without-receptacle", ""
)

UNTOLD = FAILS.replace("at: {floor: [5 ft, 5 ft]}, ", "").replace("    #! island-without-receptacle", "")

BY_AREA_SINCE = 2020
NO_LONGER_SINCE = 2023
SMALLEST_IN = (24, 12)
FIRST_IN2 = 9 * 144
FURTHER_IN2 = 18 * 144


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each island of each kitchen by the receptacles that stand in it."""
    for room in rooms_of(house, "kitchen"):
        if edition_year(room.edition) < NO_LONGER_SINCE:
            for island in room.record.islands:
                yield from _judged(house, room, island)


def _judged(house: House, room: Room, island: Island) -> Iterator[Fault | CannotTell]:
    outline = tuple((inches(x), inches(y)) for x, y in island.outline)
    asked = _asked(outline, edition_year(room.edition))
    held = receptacles_in(house, room)
    made = shape(room.record)
    spots = {each: spot(house.boxes[each].record.at, made) for each in held.boxes}
    there = [id_ for id_, place in spots.items() if place is not None and contains(outline, place.point)]
    if len(there) >= asked:
        return
    needs = (*(f"where box {id_} is" for id_, place in spots.items() if place is None), *held.lacks)
    if needs:
        yield CannotTell((room.id,), needs, room.place)
        return
    yield Fault(
        place=room.place,
        about=(room.id, *there),
        found=f"{island.name or 'An island'} of {room.name} has receptacles in {len(there) or 'no'} boxes.",
        allowed=f"At least {asked} for an island of its size.",
        because="A cord across the passage is walked into, and pulls down what is hot.",
        do="Put in what is missing, where the edition allows it.",
        edition=room.edition,
    )


def _asked(outline: tuple[Point, ...], year: int) -> int:
    if year >= BY_AREA_SINCE:
        over = max(Fraction(0), area_in2(outline) - FIRST_IN2)
        return 1 + ceil(over / FURTHER_IN2)
    sides = sorted((max(each) - min(each) for each in zip(*outline, strict=True)), reverse=True)
    return int(all(side >= least for side, least in zip(sides, SMALLEST_IN, strict=True)))
