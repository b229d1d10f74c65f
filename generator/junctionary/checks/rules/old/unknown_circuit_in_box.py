"""A cable of which nobody knows the circuit is in a box.

Why it matters: no list of breakers makes that box safe to open. The cable may be live from any of
    them, or from none today and from one tomorrow.
What to do: before opening it switch off the main and every other source, and still test every
    conductor. Then trace the cable, with a tester that puts a tone on it, and record what it belongs to or
    take it out.
Cannot tell: when the make-up of a box is unknown or not recorded and no run is recorded into it.
Stands: on the box's line. One finding a box.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, is_untraced, listed
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (cite("practice", "Before a box is opened, the circuit of every conductor in it is known."),),
    ROUGHED,
)

FAILS = """
[circuits/old.yaml]
circuit: old
name: Nobody could trace these
purpose: untraced
runs:
  - {id: u1, cable: 14/2 NM-B, from: unknown, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:    #! unknown-circuit-in-box
    capped: [u1]
"""

PASSES = FAILS.replace("purpose: untraced", "purpose: general").replace("    #! unknown-circuit-in-box", "")

UNTOLD = """
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1: {makeup: unknown}
"""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box, by the runs that end in it or pass through it."""
    for box in house.boxes.values():
        runs = (*box.runs, *(each.run for each in box.passing))
        untraced = tuple(each for each in runs if is_untraced(house, house.runs[each].circuit))
        if untraced:
            yield Fault(
                place=box.place,
                about=(box.id, *untraced),
                found=f"Nobody could trace which circuit {listed(untraced)} in {box.id} is of.",
                allowed="The circuit of every conductor in a box is known.",
                because="No list of breakers makes this box dead for certain.",
                do="Switch off the main and every other source, and still test every conductor;"
                " then trace the cable and record it.",
                edition=box.edition,
            )
        elif not runs and box.makeup_unknown:
            yield CannotTell((box.id,), (f"which runs come to {box.id}",), box.place)
