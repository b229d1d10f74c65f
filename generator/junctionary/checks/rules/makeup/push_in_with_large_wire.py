"""A push-in terminal holds a wire other than 14 AWG solid copper.

Why it matters: its small spring is made for that wire only. A thicker one bends it or is barely
    touched, a metal other than copper creeps away from it, and the joint heats.
What to do: with the breakers off and the box proved dead, land the wire under the device's screw, looped
    clockwise and tightened as listed.
Cannot tell: when the size or metal of the wire is not recorded; when it is not recorded how a wire
    other than 14 AWG copper is landed, on a device that may have push-in terminals; or when a
    box's make-up, or where some conductor in it is landed, is unknown or not recorded.
Stands: on the terminal's line, or the device's where the landing comes from a word of make-up.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.landed import fits_push_in, how_landed, may_be_push_in
from junctionary.figures import Figures
from junctionary.figures.gaps import untold_in
from junctionary.house.model import House, Landing
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import WireSize

RULE = Rule(HAZARD, (cite("ul-498", "push-in terminals"), cite("nec-2023", "110.3(B)")), MADE_UP)

FAILS = """
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 12/2 NM-B, from: unknown, to: H1}
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
      r1.brass: {wire: h1.black, how: push-in}    #! push-in-with-large-wire
      r1.silver: {wire: h1.white, how: loop}
      r1.green: {wire: h1.bare, how: loop}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("12/2 NM-B", "14/2 NM-B").replace("    #! push-in-with-large-wire", "")

UNTOLD = PASSES.replace("14/2 NM-B", "unknown")

TAKES = WireSize("14 AWG")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each push-in landing, by the size and metal of its wires."""
    for box in house.boxes.values():
        if untold := untold_in(box):
            yield CannotTell((box.id, *box.circuits), untold, box.place)
        untold_ways = [each for each in box.landings if each.how is None and _may_be_push_in(house, each)]
        for id_, place in {each.device: each.place for each in reversed(untold_ways)}.items():
            yield CannotTell((id_, box.id, *box.circuits), (how_landed(id_),), place)
        for landing in box.landings:
            if landing.how != "push-in":
                continue
            about = (landing.terminal, landing.device, box.id)
            large = [
                each
                for each in landing.wires
                if each.size not in (None, TAKES) or each.metal not in (None, "copper")
            ]
            if large:
                wire = large[0]
                yield Fault(
                    place=landing.place,
                    about=(*about, *(each.name for each in large)),
                    found=f"{landing.terminal} holds {wire.size or 'a wire'} {wire.metal or ''}".rstrip()
                    + " by push-in.",
                    allowed="14 AWG solid copper only.",
                    because="Its spring is made for that wire; another makes poor contact and heats.",
                    do="With the box proved dead, land it under the screw, tightened to the listed torque.",
                    edition=box.edition,
                )
            elif any(each.size is None or each.metal is None for each in landing.wires):
                yield CannotTell(about, (f"the wire size and metal on {landing.terminal}",), landing.place)


def _may_be_push_in(house: House, landing: Landing) -> bool:
    """Whether a landing of which nobody told the way may be a push-in of a wire that is too large for one."""
    return may_be_push_in(house, landing) and not fits_push_in(landing)
