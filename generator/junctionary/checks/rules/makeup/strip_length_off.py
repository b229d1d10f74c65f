"""A wire is stripped longer or shorter than its terminal asks.

Why it matters: bare copper that shows can touch what is beside it; insulation under a screw keeps the
    screw from the copper, and the joint heats.
What to do: with the breakers off and the box proved dead, strip by the gauge on the back of the device, and
    land the wire again.
Cannot tell: when a bare length is recorded and the device's gauge is not, and when nobody noted
    how the wires of a box were stripped. A difference of 1/8 in is let pass. Practice.
Stands: on the terminal's line, or the box's key where the whole box is said to be so.
"""

from collections.abc import Iterator
from fractions import Fraction

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import BEFORE_MAKE_UP
from junctionary.house.model import Box, House, Landing
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import Quantity, show_as

RULE = Rule(DEFECT, (cite("nec-2023", "110.12"), cite("nec-2023", "110.3(B)")), MADE_UP)

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
    looked_at: {strip: to gauge}
    terminals:
      r1.brass: {wire: h1.black, how: loop, bare: 1-1/4 in}    #! strip-length-off
      r1.silver: {wire: h1.white, how: loop, bare: 5/8 in}
      r1.green: {wire: h1.bare, how: loop}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
"""

PASSES = FAILS.replace("1-1/4 in", "5/8 in").replace("    #! strip-length-off", "")

UNTOLD = PASSES.replace(", strip: 5/8 in", "")

LET_PASS_IN = Fraction(1, 8)
RIGHT = "to gauge"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each bare length that was measured, then each box as it was seen."""
    for box in house.boxes.values():
        if box.stage in BEFORE_MAKE_UP or not box.landings:
            continue
        measured = [each for each in box.landings if each.bare is not None]
        for each in measured:
            yield from _measured(house, box, each)
        if len(measured) < len(box.landings):
            yield from _as_seen(box)


def _measured(house: House, box: Box, landing: Landing) -> Iterator[Fault | CannotTell]:
    device = house.devices.get(landing.device)
    if device is None or landing.bare is None:
        return
    gauge = device.kind.strip
    about = (landing.terminal, landing.device, box.id)
    if gauge is None:
        needs = (f"how much wire {device.kind_id} asks to be stripped",)
        yield CannotTell(about, needs, landing.place)
        return
    off = landing.bare.to("in") - gauge.to("in")
    if abs(off) <= LET_PASS_IN:
        return
    yield Fault(
        place=landing.place,
        about=about,
        found=f"{landing.terminal} has {_said(house, landing.bare)} of bare wire.",
        allowed=f"{_said(house, gauge)}, as the device asks.",
        because="Bare copper that shows can touch what is beside it."
        if off > 0
        else "Insulation under the screw keeps it from the copper, and the joint heats.",
        do="With the box proved dead, cut or strip the wire by the device's gauge, and land it again.",
        edition=box.edition,
    )


def _as_seen(box: Box) -> Iterator[Fault | CannotTell]:
    seen = box.looked_at.strip if box.looked_at else None
    if seen is None:
        yield CannotTell(
            (box.id, *box.circuits), (f"how the wires in box {box.id} were stripped and laid",), box.place
        )
    elif seen != RIGHT:
        yield Fault(
            place=box.place,
            about=(box.id, *box.circuits),
            found=f"The wires in box {box.id} were seen to be stripped: {seen}.",
            allowed="By the gauge of each device.",
            because="Too long, bare copper shows; too short, the screw sits on insulation.",
            do="With the box proved dead, strip them by the gauge, and land them again.",
            edition=box.edition,
        )


def _said(house: House, length: Quantity) -> str:
    return show_as(length, house.record.shows)
