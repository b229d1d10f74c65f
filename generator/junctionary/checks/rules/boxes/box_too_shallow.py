"""A box is not deep enough for the devices and wires in it.

Why it matters: a box may have the volume and still be so shallow that the device presses the wires
    against its back, cuts them, and cannot be screwed home without force.
What to do: put in a deeper box, or a listed extension ring on it, or a shallower device.
Cannot tell: when the box's depth, or how far a device goes into it, is not recorded; when a ring or
    cover adds to the depth; when a wire size or the make-up is not recorded. The depth of a standard metal
    box is taken by its trade size. Boxes without a device, and those with wire above 4 AWG, are not
    judged here.
Stands: on the box's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.formulas.sums import plain
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "314.24"), cite("nec-2023", "314.24(B)")), ROUGHED)

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
  D1:    #! box-too-shallow
    size: {gangs: 1, of: plastic, volume: 18 in3, clamps: none, depth: 2 in}
    devices: {s1: timer}
    capped: [b1]
[devices/all.yaml]
devices:
  timer: {is: timer, depth: 2 in}
"""

PASSES = FAILS.replace("depth: 2 in}\n    devices", "depth: 2-1/4 in}\n    devices").replace(
    "    #! box-too-shallow", ""
)

UNTOLD = PASSES.replace(", depth: 2-1/4 in}", "}")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box with a device in it."""
    for depth in figures.depths.values():
        box = house.boxes[depth.box]
        if depth.fits is None:
            yield CannotTell((box.id, *box.circuits), depth.lacks, box.place)
        elif not depth.fits:
            assert depth.has_in is not None
            yield Fault(
                place=box.place,
                about=(box.id, *box.circuits),
                found=f"Box {box.id} is {plain(depth.has_in)} in deep.",
                allowed=f"At least {plain(depth.least_in)} in, for its wires and devices.",
                because="The device presses the wires against the back of the box and cuts them.",
                do="Put in a deeper box, a listed extension ring, or a shallower device.",
                working=depth.wanted.steps,
                edition=depth.edition,
            )
