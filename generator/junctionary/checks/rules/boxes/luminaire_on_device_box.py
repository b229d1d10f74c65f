"""A luminaire hangs from a box that is made for switches and receptacles.

Why it matters: a device box has two small screws for a device's strap. Under the pull of a luminaire
    they strip or tear out, and the luminaire hangs by its wires.
What to do: put in a round, octagonal or square box that is made to hold a luminaire.
Cannot tell: when the shape of the box or, on a wall, the weight of the luminaire or where the box is, is not
    recorded. On a wall a luminaire of 6 lb or less may be on a device box. A box recorded with
    gangs is a device box unless its shape says otherwise. A luminaire with ``canopy: none`` stands by
    itself and hangs from no box.
Stands: on the box's line.
"""

from collections.abc import Iterator
from fractions import Fraction

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network
from junctionary.records.boxes import BoxSize
from junctionary.records.values import NONE
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(DEFECT, (cite("nec-2023", "314.27(A)"),), ROUGHED)

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
  D1:    #! luminaire-on-device-box
    at: {ceiling: [5 ft, 5 ft]}
    size: {gangs: 1, of: plastic, volume: 20 in3}
    devices: {f1: lamp}
    capped: [b1]
[devices/all.yaml]
devices:
  lamp: {is: luminaire, canopy: domed}
"""

PASSES = FAILS.replace("gangs: 1", "shape: round").replace("    #! luminaire-on-device-box", "")

UNTOLD = PASSES.replace("shape: round, ", "")

MADE_FOR_ONE = ("round", "octagonal", "square")
LIGHT = Quantity(Fraction(6), "lb", "weight")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each luminaire that hangs from its box."""
    for box in house.boxes.values():
        hung = [each for each in box.devices if each.kind.is_ == "luminaire" and each.kind.canopy != "none"]
        if hung and box.record.size is not NONE:
            yield from _judged(box, hung[0])


def _judged(box: Box, lamp: Device) -> Iterator[Fault | CannotTell]:
    shape = _shape(box)
    about = (box.id, lamp.id, *box.circuits)
    if shape in MADE_FOR_ONE:
        return
    if shape is None:
        yield CannotTell(about, (f"the shape of box {box.id}",), box.place)
        return
    at = box.record.at
    weight = lamp.kind.weight
    if at is None or (at.wall is None and at.ceiling is None):
        yield CannotTell(about, (f"where box {box.id} is",), box.place)
    elif at.wall is not None and weight is None:
        yield CannotTell(about, (f"the weight of {lamp.id}",), box.place)
    elif at.wall is None or (weight is not None and weight > LIGHT):
        heavy = f" and weighs {weight}" if at.wall is not None else ""
        yield Fault(
            place=box.place,
            about=about,
            found=f"Luminaire {lamp.id} is on a device box{heavy}.",
            allowed="A box made for luminaires; a device box in a wall for one of 6 lb (2.7 kg) or less.",
            because="Its small screws tear out, and the luminaire hangs by its wires.",
            do="Put in a round, octagonal or square box that is made for a luminaire.",
            edition=box.edition,
        )


def _shape(box: Box) -> str | None:
    """The shape told, or that of the trade size; ``device`` for a box told by its gangs."""
    size = box.record.size
    if not isinstance(size, BoxSize):
        return None
    if size.shape is not None:
        return size.shape
    words = (size.standard or "").split()
    named = next((each for each in (*MADE_FOR_ONE, "device") if each in words), None)
    return named or ("device" if size.gangs else None)
