"""A connector holds more, fewer or other wires than it is listed for.

Why it matters: a connector grips only the numbers and sizes its maker tried. With too many, one
    wire slips out; with too few or too thin, none is held; and the joint heats where nobody looks.
What to do: use the connector whose listing names exactly these wires, or split the joint in two
    with a jumper between them.
Cannot tell: when the connector is not recorded or unknown, when its listing is not told under
    connectors; when the size or metal of a wire in it is not recorded; or when the make-up of a
    box, or where some conductor in it is joined, is unknown or not recorded. A joint made with no
    connector at all, with solder or with tape is another matter, and so is a wire of a metal that
    the connector is not made for.
Stands: on the joint's line, or the make-up's where the joint comes from a word.
"""

from collections import Counter
from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import untold_in
from junctionary.house.model import House, Joint
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "110.14(B)"),
        cite("nec-2023", "110.3(B)"),
        cite("ul-486c", "listed combinations"),
    ),
    MADE_UP,
)

FAILS = """
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 12/2 NM-B, from: unknown, to: H1}
  - {id: h2, cable: 12/2 NM-B, from: H1, to: unknown}
  - {id: h3, cable: 12/2 NM-B, from: H1, to: unknown}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:
    joints:
      - {join: [h1.black, h2.black, h3.black], by: twist-small}    #! connector-overfilled
    capped: [h1.white, h2.white, h3.white, h1.bare, h2.bare, h3.bare]
[devices/all.yaml]
connectors:
  twist-small: {is: twist-on, holds: ["2 to 4 x 14 AWG", "2 x 12 AWG"]}
"""

PASSES = FAILS.replace("12/2", "14/2").replace("    #! connector-overfilled", "")

UNTOLD = PASSES.replace("by: twist-small", "by: unknown")

BECAUSE = {
    "too many": "It is listed for fewer wires; one of them may slip out.",
    "too few": "It is listed for more wires; these are not gripped.",
    "size not listed": "It is not made for a wire of this size.",
    "mix not listed": "Nobody tried this mix of sizes in it.",
}


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each joint in a connector, against the connector's listing."""
    for box in house.boxes.values():
        if untold := untold_in(box):
            yield CannotTell((box.id, *box.circuits), untold, box.place)
    for joint in house.joints():
        fit = figures.joints.get(joint.id)
        about = (joint.id, joint.box, *joint.circuits)
        if fit is None or fit.fits or fit.verdict == "metal not listed":
            continue
        if fit.fits is None:
            yield CannotTell(about, fit.lacks, joint.place)
        else:
            yield Fault(
                place=joint.place,
                about=about,
                found=f"Joint {joint.id} holds {_held(joint)} in {joint.by}.",
                allowed=f"Listed for {fit.allowed}.",
                because=BECAUSE[fit.verdict],
                do="Use a connector that is listed for exactly these wires.",
                edition=house.boxes[joint.box].edition,
            )


def _held(joint: Joint) -> str:
    wires = Counter(
        f"{each.size or 'a wire of unknown size'} {each.metal or ''}".rstrip() for each in joint.members
    )
    return " + ".join(f"{count} x {wire}" for wire, count in wires.items())
