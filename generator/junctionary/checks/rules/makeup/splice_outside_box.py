"""Conductors are joined where there is no box.

Why it matters: a joint that heats in the open sets fire to the framing or the insulation around it; nobody
    finds it again behind the plaster.
What to do: with the breakers off and the box proved dead, put the joint into a box that stays reachable, or
    replace the cable from box to box.
Cannot tell: when whether there is a box is unknown. Taps of knob-and-tube wiring stand in the open by
    design, and are left alone.
Stands: on the box's key, which here names the place of the joint.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.open_wiring import is_open_wiring
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "300.15"),), ROUGHED)

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
  H1:    #! splice-outside-box
    size: none
    makeup: splice-through
    splice: [lever-2]
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
connectors:
  lever-2: {is: lever, ports: 2, accepts: 20 to 12 AWG copper}
"""

PASSES = FAILS.replace("size: none", "size: {of: plastic, volume: 20 in3}").replace(
    "    #! splice-outside-box", ""
)

UNTOLD = PASSES.replace("size: {of: plastic, volume: 20 in3}", "size: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each place where conductors are joined."""
    for box in house.boxes.values():
        joints = [each for each in box.joints if not is_open_wiring(house, each)]
        if not joints or box.record.size not in (NONE, UNKNOWN):
            continue
        if box.record.size is UNKNOWN:
            yield CannotTell((box.id, *box.circuits), (f"whether {box.id} is a box",), box.place)
            continue
        yield Fault(
            place=box.place,
            about=(box.id, *(each.id for each in joints), *box.circuits),
            found=f"Conductors are joined at {box.id}, and there is no box.",
            allowed="Joints in a box that stays reachable.",
            because="A joint that heats in the open sets fire to what is around it.",
            do="With the circuit proved dead, put the joint into a box, or run a whole cable.",
            edition=box.edition,
        )
