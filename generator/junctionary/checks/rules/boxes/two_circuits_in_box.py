"""More than one circuit is in a box.

Why it matters: whoever switches off the breaker of the device in front of him takes the rest of the
    box for dead too.
What to do: write all its breakers inside the plate and in the manual, and switch off every one of them
    before the box is opened.
Cannot tell: when a cable in the box could not be traced, and only one other circuit is in it.
Stands: on the box's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, is_untraced, listed
from junctionary.house.network.ties import traced_circuits
from junctionary.sources import cite

RULE = Rule(
    ADVICE, (cite("practice", "A box with more than one circuit says so, and names every breaker."),), MADE_UP
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: den, says: "Den"}
  3: {rating: 15 A, feeds: hall, says: "Hall"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:    #! two-circuits-in-box
    capped: [b1, h1]
"""

PASSES = (
    FAILS.replace("[b1, h1]", "[b1]")
    .replace("from: main, to: D1}\n[rooms", "from: main, to: unknown}\n[rooms")
    .replace("    #! two-circuits-in-box", "")
)

UNTOLD = (
    FAILS.replace("name: Hall", "name: Hall\npurpose: untraced")
    .replace("    #! two-circuits-in-box", "")
    .replace('  3: {rating: 15 A, feeds: hall, says: "Hall"}\n', "")
)


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box, by the circuits of the runs that end in it or pass through it."""
    for box in house.boxes.values():
        runs = (*box.runs, *(each.run for each in box.passing))
        circuits = tuple(traced_circuits(house, runs))
        untraced = [each for each in runs if is_untraced(house, house.runs[each].circuit)]
        if len(circuits) > 1:
            breakers = dict.fromkeys(each for one in circuits for each in house.circuits[one].breakers)
            off = f"Switch off {listed(breakers)}" if breakers else "Find and switch off their breakers"
            yield Fault(
                place=box.place,
                about=(box.id, *circuits),
                found=f"Circuits {listed(circuits)} are in {box.id}.",
                allowed="One circuit in a box, or every breaker named on it.",
                because="With one of them off, the rest of the box is still live.",
                do=f"{off} before it is opened, and write that inside its plate.",
                edition=box.edition,
            )
        elif circuits and untraced:
            yield CannotTell((box.id, *circuits), (f"which circuit {listed(untraced)} is of",), box.place)
