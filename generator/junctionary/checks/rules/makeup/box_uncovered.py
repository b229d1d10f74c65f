"""A box stands open.

Why it matters: live joints are within reach of a hand, and what burns in the box is not kept in it.
What to do: with the breakers off and the box proved dead, put on a blank cover, or the device, lampholder
    or canopy that belongs there.
Cannot tell: when a box without a device has no cover recorded. A box with a device is taken to be closed by
    its plate or canopy unless its cover is said to be none. Boxes not made up yet are left alone.
Stands: on the box's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import BEFORE_MAKE_UP
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "314.25"),), ENERGISED)

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
  - {id: h2, cable: 14/2 NM-B, from: H1, to: unknown}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:    #! box-uncovered
    makeup: splice-through
    cover: none
    splice: [lever-2]
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
connectors:
  lever-2: {is: lever, ports: 2, accepts: 20 to 12 AWG copper}
"""

PASSES = FAILS.replace("cover: none", "cover: blank").replace("    #! box-uncovered", "")

UNTOLD = PASSES.replace("    cover: blank\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box by what closes it."""
    for box in house.boxes.values():
        cover = box.record.cover
        if box.stage in BEFORE_MAKE_UP or box.record.size is NONE:
            continue
        if cover == "none" or cover is NONE:
            yield Fault(
                place=box.place,
                about=(box.id, *box.circuits),
                found=f"Box {box.id} has no cover.",
                allowed="A cover, a plate, a lampholder or a canopy on every finished box.",
                because="Live joints are within reach of a hand.",
                do="With the box proved dead, close it.",
                edition=box.edition,
            )
        elif cover is UNKNOWN or (cover is None and not box.devices):
            yield CannotTell((box.id, *box.circuits), (f"the cover of box {box.id}",), box.place)
