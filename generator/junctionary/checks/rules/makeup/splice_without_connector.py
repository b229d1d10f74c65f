"""Conductors are joined with no connector made for it.

Why it matters: twisted and taped wires loosen and char the tape; solder melts in a fault and lets go.
What to do: with the breakers off and the box proved dead, make the joint again in a connector that is
    listed for these conductors.
Cannot tell: when by what a joint is made is unknown or not recorded. The soldered and taped taps of
    knob-and-tube wiring were made so by design, and are left alone.
Stands: on the joint's line, or the box's key where a word of make-up made it.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.open_wiring import is_open_wiring
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "110.14(B)"),), MADE_UP)

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
  H1:
    joints:
      - {join: [h1.black, h2.black], by: tape}    #! splice-without-connector
      - {join: [h1.white, h2.white], by: lever-2}
      - {join: [h1.bare, h2.bare], by: lever-2}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
connectors:
  lever-2: {is: lever, ports: 2, accepts: 20 to 12 AWG copper}
"""

PASSES = FAILS.replace("by: tape", "by: lever-2").replace("    #! splice-without-connector", "")

UNTOLD = PASSES.replace("h2.black], by: lever-2", "h2.black], by: unknown")

WITHOUT = ("solder", "tape")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each joint by what it is made with."""
    for joint in house.joints():
        box = house.boxes[joint.box]
        about = (joint.id, joint.box, *joint.circuits)
        place = joint.place
        if joint.by is None or joint.by is UNKNOWN:
            yield CannotTell(about, (f"by what joint {joint.id} is made",), place)
        elif (joint.by is NONE or joint.by in WITHOUT) and not is_open_wiring(house, joint):
            how = "nothing but their twist" if joint.by is NONE else str(joint.by)
            members = ", ".join(each.name for each in joint.members)
            yield Fault(
                place=place,
                about=about,
                found=f"{members} are held together by {how}.",
                allowed="A connector listed for these conductors.",
                because="Twisted and taped wires loosen and char; solder melts in a fault and lets go.",
                do="With the box proved dead, make the joint again in a listed connector.",
                edition=box.edition,
            )
