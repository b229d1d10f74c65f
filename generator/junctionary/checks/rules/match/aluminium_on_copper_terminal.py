"""A wire is on a terminal or in a connector that is not made for its metal.

Why it matters: aluminium creeps and grows a skin that does not conduct. Under a screw made for copper, or
    beside copper in an ordinary connector, the joint loosens by itself, heats, and can set fire to the
    wall long after it was made.
What to do: do not use the circuit until it is mended. Have every such joint remade by somebody who does
    this work: with a device marked for aluminium, or a copper pigtail in a connector that is listed for
    both metals.
Cannot tell: when the metal of a wire is not recorded; when what a terminal accepts is not recorded and the
    wire on it is not copper; or when a box's make-up, or where some conductor in it is, is unknown or not
    recorded. A terminal that accepts sizes and names no metal is one of those. A device marked
    aluminium-rated takes both. The breakers and bars of a panel are not described in the record and not
    judged here.
Stands: on the terminal's or joint's line, or that of the device or make-up where it comes from a word.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import untold_in
from junctionary.house.model import Box, House, Joint, Landing, Member
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "110.14"), cite("nec-2023", "406.3(C)")), MADE_UP)

FAILS = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM aluminium, from: unknown, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}
    terminals:
      r1.brass: b1.black    #! aluminium-on-copper-terminal
      r1.silver: b1.white    #! aluminium-on-copper-terminal
      r1.green: b1.bare    #! aluminium-on-copper-terminal
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, accepts: 14 to 10 AWG copper}
"""

PASSES = FAILS.replace("10 AWG copper}", "10 AWG copper or aluminium}").replace(
    "    #! aluminium-on-copper-terminal", ""
)

UNTOLD = PASSES.replace(", accepts: 14 to 10 AWG copper or aluminium", "")

COPPER = "copper"
BECAUSE = "The joint loosens by itself and heats until it burns."


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each terminal and each joint in a connector, by the metal of its wires."""
    for box in house.boxes.values():
        if untold := untold_in(box):
            yield CannotTell((box.id, *box.circuits), untold, box.place)
        for landing in box.landings:
            yield from _landed(house, box, landing)
        for joint in box.joints:
            fit = figures.joints.get(joint.id)
            if fit is not None and fit.verdict == "metal not listed":
                yield _joined(box, joint, fit.allowed)


def _landed(house: House, box: Box, landing: Landing) -> Iterator[Fault | CannotTell]:
    device = house.devices.get(landing.device)
    if device is None:
        return
    about = (landing.terminal, landing.device, box.id)
    accepts = device.kind.accepts
    metals = accepts.metals if accepts else ()
    if "aluminium-rated" in (device.kind.marks or ()):
        metals = (*metals, COPPER, "aluminium")
    wires = [each for each in landing.wires if each.kind == "conductor" or each.metal is not None]
    wrong = [each for each in wires if each.metal and metals and each.metal not in metals]
    if wrong:
        yield Fault(
            place=landing.place,
            about=(*about, *(each.name for each in wrong)),
            found=f"{landing.terminal} holds {_wire(wrong[0])}.",
            allowed=f"{' or '.join(dict.fromkeys(metals)).capitalize()}, as its terminals accept.",
            because=BECAUSE,
            do="Leave the circuit off until this is remade with parts that are made for both metals.",
            edition=box.edition,
        )
        return
    if any(each.metal is None for each in wires):
        yield CannotTell(about, (f"the metal of the wire on {landing.terminal}",), landing.place)
    if not metals and any(each.metal not in (None, COPPER) for each in wires):
        yield CannotTell(about, (f"which metals the terminals of {device.id} accept",), landing.place)


def _joined(box: Box, joint: Joint, allowed: str) -> Fault:
    metals = dict.fromkeys(each.metal for each in joint.members if each.metal)
    return Fault(
        place=joint.place,
        about=(joint.id, box.id, *joint.circuits),
        found=f"Joint {joint.id} holds {' and '.join(metals)} in {joint.by}.",
        allowed=f"Listed for {allowed}.",
        because=BECAUSE,
        do="Leave the circuit off until this is remade with a connector that is listed for it.",
        edition=box.edition,
    )


def _wire(wire: Member) -> str:
    return f"{wire.size or 'a wire of'} {wire.metal}"
