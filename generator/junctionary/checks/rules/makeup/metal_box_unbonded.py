"""A metal box is not joined to the equipment ground that comes into it.

Why it matters: a hot wire that touches such a box makes it live, and no breaker opens. Whoever next
    touches the box or a plate's screw completes the circuit.
What to do: with the breakers off and the box proved dead, join a ground pigtail to a ground screw or
    clip in the box.
Cannot tell: when it is not recorded what the box is made of and no bond is told; or when the make-up,
    or where the grounds in it are joined, is unknown or not recorded. A box into which no cable brings
    a ground is not judged here, nor one that is not made up yet.
Stands: on the box's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import BEFORE_MAKE_UP, untold_in
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.records.boxes import BoxSize
from junctionary.records.values import NONE
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "250.148(C)"), cite("nec-2023", "314.4")), MADE_UP)

FAILS = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: unknown, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:    #! metal-box-unbonded
    size: {standard: 4 x 2-1/8 square, of: steel}
    devices: {r1: duplex}
    terminals: {r1.brass: b1.black, r1.silver: b1.white, r1.green: b1.bare}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
"""

PASSES = FAILS.replace(
    ", r1.green: b1.bare}", "}\n    joints: [{join: [b1.bare, r1.green, box.screw]}]"
).replace("    #! metal-box-unbonded", "")

UNTOLD = FAILS.replace("{standard: 4 x 2-1/8 square, of: steel}", "{volume: 30 in3}").replace(
    "    #! metal-box-unbonded", ""
)


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box that is made up and has a grounding conductor in it."""
    for box in house.boxes.values():
        size = box.record.size
        if box.stage in BEFORE_MAKE_UP or size is NONE or _bonded(box) or not _has_ground(house, box):
            continue
        metal = size.is_metal if isinstance(size, BoxSize) else None
        about = (box.id, *box.circuits)
        if metal is False:
            continue
        if untold := untold_in(box):
            yield CannotTell(about, untold, box.place)
        elif metal is None:
            yield CannotTell(about, (f"what box {box.id} is made of",), box.place)
        else:
            yield Fault(
                place=box.place,
                about=about,
                found=f"Nothing joins box {box.id}, which is of metal, to the ground in it.",
                allowed="A metal box is joined to the equipment grounds that come into it.",
                because="A hot wire that touches it makes it live, and no breaker opens.",
                do=f"With {box.id} proved dead, bring a pigtail from its grounds to a screw in the box.",
                edition=box.edition,
            )


def _bonded(box: Box) -> bool:
    return any(each.kind == "box" for joint in box.joints for each in joint.members) or any(
        landing.terminal == f"{box.id}/box" for landing in box.landings
    )


def _has_ground(house: House, box: Box) -> bool:
    return any(
        wire.is_ground and wire.colour != "armor" for run in box.runs for wire in house.runs[run].conductors
    )
