"""A box was closed with no note of how its wires were found.

Why it matters: a nick, a long strip or a loop laid backwards can be seen for the ten minutes before the
    plate goes on, and not again for years.
What to do: when the box is next open and proved dead, look at sheath, insulation, copper, strip and loops,
    and note it.
Cannot tell: when the stage of the box is not recorded, so that nobody knows whether it is closed.
Stands: on the box's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    ADVICE,
    (cite("practice", "Sheath, insulation, copper, strip and loops are looked at before a box is closed."),),
    MADE_UP,
)

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
  H1:    #! workmanship-not-looked-at
    devices: {r1: duplex}
    makeup: end-of-run
    stage: energised
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
"""

PASSES = FAILS.replace(
    "stage: energised",
    "stage: energised\n    looked_at: {sheath: sound, insulation: sound, copper: sound, strip: to gauge}",
).replace("    #! workmanship-not-looked-at", "")

UNTOLD = FAILS.replace("    stage: energised\n", "").replace("    #! workmanship-not-looked-at", "")

CLOSED = ("made-up", "energised", "verified")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box that is closed and in which a cable ends."""
    for box in house.boxes.values():
        seen = box.looked_at
        noted = seen is not None and any((seen.sheath, seen.insulation, seen.copper, seen.strip, seen.loops))
        if noted or not box.runs:
            continue
        if box.stage is None:
            yield CannotTell((box.id, *box.circuits), (f"at which stage box {box.id} is",), box.place)
        elif box.stage in CLOSED:
            yield Fault(
                place=box.place,
                about=(box.id, *box.circuits),
                found=f"Box {box.id} is {box.stage}, and nothing says that its wires were looked at.",
                allowed="A note of sheath, insulation, copper, strip and loops.",
                because="What is wrong with them cannot be seen once the plate is on.",
                do="When the box is next open and proved dead, look at them and note it.",
                edition=box.edition,
            )
