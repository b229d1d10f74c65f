"""A loop is laid around its screw against the way the screw turns.

Why it matters: the turning head pushes such a loop open and out; the wire is held by its edge and heats.
What to do: lay it again, clockwise, two thirds to three quarters of the way around, no overlap.
Cannot tell: when neither the terminal nor the box says how its loops are turned.
    What is written of a terminal wins over what was seen of the whole box.
Stands: on the terminal's line, or the box's key where the whole box is said to be so.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import BEFORE_MAKE_UP
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (
        cite(
            "practice",
            "A loop is laid clockwise, two thirds to three quarters around the screw, without overlap.",
        ),
    ),
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
  H1:
    devices: {r1: duplex}
    terminals:
      r1.brass: {wire: h1.black, how: loop, turn: counter-clockwise}    #! loop-turned-backwards
      r1.silver: {wire: h1.white, how: loop, turn: clockwise}
      r1.green: {wire: h1.bare, how: loop, turn: clockwise}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
"""

PASSES = FAILS.replace("counter-clockwise", "clockwise").replace("    #! loop-turned-backwards", "")

UNTOLD = PASSES.replace(", turn: clockwise", "")

RIGHT = "clockwise"
NOT_TOLD = (None, "unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box by its loops."""
    for box in house.boxes.values():
        loops = [each for each in box.landings if each.how == "loop"]
        if not loops or box.stage in BEFORE_MAKE_UP:
            continue
        for each in loops:
            if each.turn not in (*NOT_TOLD, RIGHT):
                yield Fault(
                    place=each.place,
                    about=(each.terminal, each.device, box.id),
                    found=f"The loop on {each.terminal} is laid: {each.turn}.",
                    allowed="Clockwise, the way the screw turns.",
                    because="The turning head pushes the loop open, and the wire is held by its edge.",
                    do="With the box proved dead, lay the loop again, clockwise.",
                    edition=box.edition,
                )
        if any(each.turn in NOT_TOLD for each in loops):
            yield from _as_seen(box)


def _as_seen(box: Box) -> Iterator[Fault | CannotTell]:
    seen = box.looked_at.loops if box.looked_at else None
    if seen is None:
        yield CannotTell(
            (box.id, *box.circuits), (f"how the wires in box {box.id} were stripped and laid",), box.place
        )
    elif seen != RIGHT:
        yield Fault(
            place=box.place,
            about=(box.id, *box.circuits),
            found=f"The loops in box {box.id} were seen to be: {seen}.",
            allowed="Clockwise, the way the screws turn.",
            because="The turning head pushes such a loop open, and the wire is held by its edge.",
            do="With the box proved dead, lay the loops again, clockwise.",
            edition=box.edition,
        )
