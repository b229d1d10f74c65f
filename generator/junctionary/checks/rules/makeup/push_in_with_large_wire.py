"""A push-in terminal holds a wire other than 14 AWG solid copper.

Why it matters: its small spring is made for that wire only. A thicker one bends it or is barely
    touched, a metal other than copper creeps away from it, and the joint heats.
What to do: land the wire under the device's screw, looped clockwise and tightened as listed.
Cannot tell: when the size or metal of the wire is not recorded.
Stands: on the terminal's line, or the device's where the landing comes from a word of make-up.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import WireSize

RULE = Rule(HAZARD, (cite("ul-498", "push-in terminals"), cite("nec-2023", "110.3(B)")))

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
                    do="Land it under the screw instead, and tighten it to the listed torque.",
                    edition=box.edition,
                )
            elif any(each.size is None or each.metal is None for each in landing.wires):
                yield CannotTell(about, (f"the wire size and metal on {landing.terminal}",), landing.place)
