"""Too little wire is left free in a box.

Why it matters: short wires cannot be brought out to work on; they are strained, nicked, and joined under
    tension in the dark of the box.
What to do: lengthen each with a pigtail in a listed connector, if the box has the room for it; next time,
    leave 6 in from the sheath, and 3 in beyond the opening.
Cannot tell: when the length is not recorded. Boxes that cables only pass through are left alone, as is
    work found so, where nobody took the wires out to measure.
Stands: on the box's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import show_as

RULE = Rule(DEFECT, (cite("nec-2023", "300.14"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: hall, says: "Hall"}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: H1}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:    #! free-conductor-short
    devices: {r1: duplex}
    makeup: end-of-run
    free_conductor: 4 in
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
"""

PASSES = FAILS.replace("4 in", "7 in").replace("    #! free-conductor-short", "")

UNTOLD = PASSES.replace("    free_conductor: 7 in\n", "")

LEAST_IN = 6


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box in which a cable ends."""
    for box in house.boxes.values():
        if not box.runs:
            continue
        if box.free_conductor is None:
            if box.stage != "as-found":
                needs = (f"how much wire is free in box {box.id}",)
                yield CannotTell((box.id, *box.circuits), needs, box.place)
        elif box.free_conductor.to("in") < LEAST_IN:
            yield Fault(
                place=box.place,
                about=(box.id, *box.circuits),
                found=f"Box {box.id} has {show_as(box.free_conductor, house.record.shows)} of free wire.",
                allowed="At least 6 in from where it leaves the sheath.",
                because="Short wires are strained and nicked by whoever works on them.",
                do="With the box proved dead, lengthen them with pigtails, if the box has the room.",
                edition=box.edition,
            )
