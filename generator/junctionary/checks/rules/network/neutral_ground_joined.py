"""Neutral and ground are joined outside the service.

Why it matters: part of every load's current comes back on the grounds and on metal, which may be
    touched, and no guard against ground faults can work behind it.
What to do: with the circuit off and the box proved dead, part the two at the joint. They meet in one place
    only, at the service.
Cannot tell: when a box with both has a make-up that is unknown or not recorded. A bond in a
    subpanel is another matter.
Stands: on the line of the joint or the terminal where the two meet; else on the limiting run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import circuits_on, meeting_of, neutral_or_ground
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "250.24(A)"),
        cite("nec-2023", "250.142(B)"),
    ),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}
    joints:
      - {join: [b1.white, b1.bare, r1.silver, r1.green]}    #! neutral-ground-joined
    terminals:
      r1.brass: b1.black
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace(
    "[b1.white, b1.bare, r1.silver, r1.green]}    #! neutral-ground-joined", "[b1.white, r1.silver]}"
).replace("r1.brass: b1.black", "r1.brass: b1.black\n      r1.green: b1.bare")

UNTOLD = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: unknown, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1: {makeup: unknown}
"""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each piece of conductor that lies on a neutral bar and on a ground bar at once."""
    for zone in network.zones:
        bars = {edge.b.rpartition("/")[2] for edge in zone.bars}
        if zone.carries and {"neutral", "ground"} <= bars and not zone.feeds:
            met = meeting_of(house, frozenset(zone.points), neutral_or_ground)
            place, at = met or (house.runs[zone.runs[0]].place, zone.runs[0])
            yield Fault(
                place=place,
                about=(at, *zone.runs, *circuits_on(house, zone)),
                found=f"Neutral and ground of {listed(zone.runs)} are joined at {at}.",
                allowed="Neutral and ground meet at the service and nowhere after it.",
                because="The grounds carry current, and no ground-fault guard can work there.",
                do=f"With the circuit proved dead, part neutral and ground at {at}.",
            )
    for box in house.boxes.values():
        if needs := tuple(each.reason for each in network.index.unknown_of_box.get(box.id, ())):
            yield CannotTell((box.id,), needs, box.place)
