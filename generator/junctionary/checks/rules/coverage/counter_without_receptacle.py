"""A stretch of kitchen counter is more than 24 in from the nearest receptacle.

Why it matters: appliance cords are short; where no outlet is in reach they are stretched over the sink
    or the cooktop.
What to do: put a receptacle above the counter into the stretch that is named, no more than 24 in from
    each of its ends.
Cannot tell: when the room's outline, where a counter, sink or range stands, or a box's place is not
    recorded. A counter piece is 12 in or wider along the wall, and ends at a sink, range, cooktop or
    refrigerator. A counter is taken to be 36 in high, and a receptacle counts up to 20 in above it.
    Islands have a check of their own. Kitchens built before the 2008 edition are left alone.
Stands: on the room's key, one finding a room.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.stretches import stretches_words
from junctionary.figures import Figures
from junctionary.figures.coverage import COUNTER_REACH
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year
from junctionary.units import beside_its_own

RULE = Rule(DEFECT, (cite("nec-2023", "210.52(C)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [gfci, afci], feeds: counter, says: "Kitchen counter"}
[circuits/counter.yaml]
circuit: counter
name: Kitchen counter
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
  - {id: b2, cable: 12/2 NM-B, from: D1, to: D2}
[rooms/kitchen.yaml]
room: kitchen    #! counter-without-receptacle
name: Kitchen
kind: kitchen
complete: true
outline: [[0 ft, 0 ft], [8 ft, 0 ft], [8 ft, 6 ft], [0 ft, 6 ft]]
walls: [north, east, south, west]
things:
  - {what: counter, wall: north, along: 0 ft, width: 8 ft}
  - {what: sink, wall: north, along: 3 ft, width: 2 ft}
[boxes/kitchen.yaml]
room: kitchen
boxes:
  D1: {at: {wall: north, along: 18 in, up: 44 in}, devices: {r1: duplex}, makeup: pigtailed}
  D2: {at: {wall: south, along: 3 ft, up: 14 in}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("width: 8 ft}", "width: 3 ft}").replace("    #! counter-without-receptacle", "")

UNTOLD = PASSES.replace("along: 0 ft, width: 3 ft}", "along: 0 ft}")

ASKED_SINCE = 2008


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each kitchen, pantry and dining room by its outline."""
    for id_, reached in figures.counters.items():
        room = house.rooms[id_]
        if edition_year(room.edition) < ASKED_SINCE:
            continue
        if reached.lacks and (reached.spaces or room.record.kind == "kitchen"):
            yield CannotTell((id_,), reached.lacks, room.place)
        elif reached.far:
            yield Fault(
                place=room.place,
                about=(id_,),
                found=f"In {room.name}, counter more than "
                f"{beside_its_own(COUNTER_REACH, house.record.shows)} from a receptacle: "
                f"{stretches_words(house, reached)}.",
                allowed="No point along the wall line of a counter more than 24 in from one.",
                because="Cords are stretched over the sink or the cooktop to reach what is too far.",
                do="Put a receptacle above each of these stretches.",
                edition=room.edition,
            )
