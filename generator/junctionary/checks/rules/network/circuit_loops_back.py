"""A circuit comes back on itself by two ways.

Why it matters: current divides between two cables as it will. One break leaves everything working and
    unnoticed, and a fault cannot be found by halving the circuit.
What to do: open one run of the loop at both its ends and cap it, with the circuit proved dead.
Cannot tell: when the far end of a live run, or the make-up of a box with several, is unknown
    or not recorded. Every switch counts as open; grounds may well meet by several ways.
Stands: on the line of the run that closes the loop, the last of them in the record; that run may be opened.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wired import doubts_in
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Edge, Network, listed
from junctionary.house.network.disjoint import DisjointSets
from junctionary.house.network.edges import OPEN_IN_NETS
from junctionary.sources import cite

RULE = Rule(
    ADVICE,
    (
        cite("practice", "A branch circuit spreads out from its panel and nowhere comes back on itself."),
        cite("nec-2023", "300.3(B)"),
    ),
    ROUGHED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: b2, cable: 14/2 NM-B, from: D1, to: D2}
  - {id: b3, cable: 14/2 NM-B, from: D2, to: D1}    #! circuit-loops-back
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    joints:
      - {join: [b1.black, b2.black, b3.black]}
      - {join: [b1.white, b2.white, b3.white]}
      - {join: [b1.bare, b2.bare, b3.bare]}
  D2:
    joints:
      - {join: [b2.black, b3.black]}
      - {join: [b2.white, b3.white]}
      - {join: [b2.bare, b3.bare]}
"""

PASSES = (
    FAILS.replace("b2.black, b3.black]", "b2.black]")
    .replace("b2.white, b3.white]", "b2.white]")
    .replace("    #! circuit-loops-back", "")
    .replace(
        "  D2:",
        "    capped: [b3.black, b3.white]\n  D2:\n    capped: [b2.black, b2.white, b3.black, b3.white]",
    )
    .replace("      - {join: [b2.black]}\n      - {join: [b2.white]}\n", "")
)  # fmt: skip

UNTOLD = (
    PASSES.replace("from: D2, to: D1", "from: D1, to: unknown")
    .replace("    capped: [b3.black, b3.white]\n", "")
    .replace(", b3.black, b3.white]", "]")
    .replace("{join: [b1.black, b2.black]}", "{join: [b1.black, b2.black, b3.black]}")
    .replace("{join: [b2.bare, b3.bare]}", "{join: [b2.bare, box.screw]}")
)  # fmt: skip

APART = OPEN_IN_NETS | {"bar", "service", "bus", "feeder", "conductor"}


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each live conductor of each run, by whether its two ends were joined already."""
    numbers = {point: number for number, point in enumerate(network.at)}
    sets = DisjointSets(len(numbers))
    for edge in network.edges:
        if edge.kind not in APART:
            sets.join(numbers[edge.a], numbers[edge.b])
    closing: dict[str, Edge] = {}
    for edge in (each for each in network.edges if each.kind == "conductor"):
        if not network.zone_of(edge.a).feeds:
            continue
        run = house.runs[edge.of]
        if run.to.kind in ("unknown", "unrecorded"):
            yield CannotTell((run.id, run.circuit), (f"where {run.id} goes",), run.place)
        if sets.root(numbers[edge.a]) == sets.root(numbers[edge.b]):
            closing.setdefault(edge.of, edge)
        sets.join(numbers[edge.a], numbers[edge.b])
    for box in house.boxes.values():
        live = [each for each in box.runs if _is_live(network, each)]
        if len(live) > 1 and (needs := doubts_in(network, box)):
            yield CannotTell((box.id, *live), needs, box.place)
    for id_, edge in closing.items():
        run = house.runs[id_]
        breakers = dict.fromkeys(feed.breaker for feed in network.zone_of(edge.a).feeds)
        yield Fault(
            place=run.place,
            about=(id_, run.circuit, *breakers),
            found=f"Run {id_} closes a loop: its two ends are joined by another way as well.",
            allowed="One way from any point of a circuit to its breaker.",
            because="Current divides as it will, and a break in the loop is not noticed.",
            do=f"With {listed(breakers)} off and proved dead, open {id_} at both ends and cap it.",
            edition=run.edition,
        )


def _is_live(network: Network, run: str) -> bool:
    return any(network.zone_of(each.a).feeds for each in network.index.conductors.get(run, ()))
