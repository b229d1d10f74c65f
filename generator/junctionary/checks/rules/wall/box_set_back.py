"""A box is set back from the face of the wall.

Why it matters: in the gap between box and wall an arc reaches wood, paper or panelling.
What to do: put an extension ring on the box, so that its edge comes to the face.
Cannot tell: when how far it is set back is not recorded, for the box or as the practice of the house;
    and when it is 1/4 in or less and the surface around it is not recorded. Boxes found so are left alone.
Stands: on the box's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.records.values import NONE
from junctionary.records.words import BURNS
from junctionary.sources import cite
from junctionary.units import read_quantity, show_as

RULE = Rule(DEFECT, (cite("nec-2023", "314.20"),), ROUGHED)

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
  H1:    #! box-set-back
    devices: {r1: duplex}
    makeup: end-of-run
    set_back: 3/8 in
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("3/8 in", "0 in").replace("    #! box-set-back", "")

UNTOLD = PASSES.replace("    set_back: 0 in\n", "")

MOST = read_quantity("1/4 in", "length")
AS_FOUND = "as-found"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box with a device, whose edge is behind a plate."""
    practice = house.record.practice
    for box in house.boxes.values():
        if not box.devices or box.stage == AS_FOUND or box.record.size is NONE:
            continue
        back = box.record.set_back or (practice.set_back if practice else None)
        if back is None:
            yield CannotTell((box.id, *box.circuits), (f"how far box {box.id} is set back",), box.place)
        elif back > MOST or (back.magnitude and box.record.surface in BURNS):
            yield _fault(house, box, show_as(back, house.record.shows))
        elif back.magnitude and box.record.surface is None:
            needs = (f"the surface around box {box.id}",)
            yield CannotTell((box.id, *box.circuits), needs, box.place)


def _fault(house: House, box: Box, back: str) -> Fault:
    return Fault(
        place=box.place,
        about=(box.id, *box.circuits),
        found=f"Box {box.id} is set back {back} from the face of the wall.",
        allowed="At most 1/4 in in plaster or board; not at all in wood.",
        because="In the gap an arc reaches what can burn.",
        do="Put an extension ring on it.",
        edition=box.edition,
    )
