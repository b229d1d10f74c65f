"""A box holds more than its volume allows.

Why it matters: wires folded into too small a box are crushed, their insulation is cut, their
    connectors are pulled, and their heat stays in.
What to do: put in a deeper box or one with more gangs, add a listed extension ring, or take a cable
    or a device out of it.
Cannot tell: when the box's volume, whether it has clamps inside or a fixture stud, a cable, a loop,
    a luminaire's leads or canopy, or the make-up is not recorded. A box with 4 AWG or larger is
    sized by its cable entries, which nothing here judges.
Stands: on the box's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures, Fill
from junctionary.formulas.sums import exact
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (cite("nec-2023", "314.16"), cite("nec-2023", "314.16(A)"), cite("nec-2023", "314.16(B)")),
    ROUGHED,
)

FAILS = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: unknown, to: D1}
  - {id: b2, cable: 12/2 NM-B, from: D1, to: unknown}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:    #! box-overfilled
    size: {gangs: 1, of: plastic, volume: 14 in3, clamps: none}
    devices: {r1: duplex}
    makeup: pigtailed
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
"""

PASSES = FAILS.replace("14 in3", "18 in3").replace("    #! box-overfilled", "")

UNTOLD = PASSES.replace("volume: 18 in3", "volume: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box by its fill."""
    for box in house.boxes.values():
        fill = figures.fill.get(box.id)
        if fill is None or fill.fits:
            continue
        if fill.fits is None:
            yield CannotTell((box.id, *box.circuits), fill.lacks, box.place)
        else:
            yield _fault(box, fill)


def _fault(box: Box, fill: Fill) -> Fault:
    room = fill.volume.value
    assert room is not None
    least = "at least " if fill.filled.value is None else ""
    return Fault(
        place=box.place,
        about=(box.id, *box.circuits),
        found=f"Box {box.id} needs {least}{exact(fill.least)} in3.",
        allowed=f"{exact(room)} in3, its volume.",
        because="Wires are crushed, and their heat stays in.",
        do=f"Put in a box of {exact(fill.least)} in3 or more, or take a cable or a device out of it.",
        working=(*fill.volume.steps, *fill.filled.steps),
        edition=fill.edition,
    )
