"""A receptacle hangs on push-in terminals.

Why it matters: the spring holds the wire by a thin edge; with load and the years it loosens and heats, and
    everything behind it goes dead or burns.
What to do: when the box is next open and proved dead, move the wires to the screws, with a loop or under
    the clamp plate.
Cannot tell: when how a terminal is landed is not recorded and the device has push-in holes, and when a box's
    make-up is not recorded. A wire that is too large for such a hole is another check's matter.
Stands: on the terminal's line, or the device's where a word of make-up landed it. One finding a device.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.landed import fits_push_in, how_landed, may_be_push_in
from junctionary.figures import Figures
from junctionary.figures.gaps import untold_in
from junctionary.house.model import House, Landing
from junctionary.house.network import Network
from junctionary.house.terminals import RECEPTACLES
from junctionary.sources import cite

RULE = Rule(
    ADVICE,
    (cite("practice", "A push-in terminal is the first to loosen; a screw is preferred to it."),),
    MADE_UP,
)

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
    terminals:
      r1.brass: {wire: h1.black, how: push-in}    #! push-in-termination
      r1.silver: {wire: h1.white, how: push-in}
      r1.green: {wire: h1.bare, how: loop}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
"""

PASSES = FAILS.replace("push-in}", "loop}").replace("    #! push-in-termination", "")

UNTOLD = PASSES.replace("how: loop", "how: ").replace(", how: }", "}")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each receptacle by how its wires are landed."""
    for box in house.boxes.values():
        if untold := untold_in(box):
            yield CannotTell((box.id, *box.circuits), untold, box.place)
        for device in box.devices:
            if device.kind.is_ not in RECEPTACLES:
                continue
            landed = [each for each in box.landings if each.device == device.id]
            pushed = [each for each in landed if each.how == "push-in" and fits_push_in(each)]
            if pushed:
                yield _fault(pushed, device.circuits, box.edition)
                continue
            if any(each.how is None and may_be_push_in(house, each) for each in landed):
                needs = (how_landed(device.id),)
                yield CannotTell((device.id, box.id, *device.circuits), needs, device.place)


def _fault(pushed: list[Landing], circuits: tuple[str, ...], edition: str) -> Fault:
    first = min(pushed, key=lambda each: each.place)
    terminals = ", ".join(each.terminal for each in pushed)
    return Fault(
        place=first.place,
        about=(first.device, first.box, *circuits),
        found=f"Pushed in: {terminals}.",
        allowed="A screw, with a loop around it or a clamp plate over the wire.",
        because="A push-in terminal loosens and heats, and all behind it goes dead or burns.",
        do="When the box is next open and proved dead, move these wires to the screws.",
        edition=edition,
    )
