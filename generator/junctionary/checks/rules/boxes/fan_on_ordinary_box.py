"""A ceiling fan hangs from a box that is not made for fans.

Why it matters: a fan is heavy and shakes for years. An ordinary box is held by two nails and its
    screws are small; it works loose, and the fan comes down while it turns.
What to do: put in a box that is listed and marked for a fan of this weight, fixed to the framing, or a
    brace made for it.
Cannot tell: when it is not recorded whether the box is marked for a fan (``rated_for_fan``). A fan
    with ``canopy: none``, such as one in a bathroom's ceiling with a housing of its own, hangs from no
    box.
Stands: on the box's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.records.boxes import BoxSize
from junctionary.records.values import NONE
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "314.27(C)"),), ROUGHED)

FAILS = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: unknown, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:    #! fan-on-ordinary-box
    size: {shape: octagonal, of: steel, volume: 21 in3, rated_for_fan: false}
    devices: {f1: paddle-fan}
    capped: [b1]
[devices/all.yaml]
devices:
  paddle-fan: {is: fan, canopy: domed}
"""

PASSES = FAILS.replace("rated_for_fan: false", "rated_for_fan: true").replace(
    "    #! fan-on-ordinary-box", ""
)

UNTOLD = PASSES.replace(", rated_for_fan: true", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each fan that hangs from its box."""
    for box in house.boxes.values():
        hung = [each for each in box.devices if each.kind.is_ == "fan" and each.kind.canopy != "none"]
        if not hung or box.record.size is NONE:
            continue
        fan = hung[0]
        rated = box.record.size.rated_for_fan if isinstance(box.record.size, BoxSize) else None
        if rated is False:
            yield Fault(
                place=box.place,
                about=(box.id, fan.id, *box.circuits),
                found=f"Fan {fan.id} hangs from a box that is not marked for a fan.",
                allowed="A box or brace that is listed and marked to hold a fan of this weight.",
                because="It works loose, and the fan comes down while it turns.",
                do="Leave the fan off until a box made for fans is fixed to the framing.",
                edition=box.edition,
            )
        elif rated is not True:
            need = f"whether box {box.id} is marked for a fan"
            yield CannotTell((box.id, fan.id, *box.circuits), (need,), box.place)
