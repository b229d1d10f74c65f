"""A cable runs closer to the face of a stud than a screw goes in, with no plate before it.

Why it matters: a screw for a shelf or a picture goes 1-1/4 in into the stud and through the cable.
What to do: before the wall closes, put a steel plate 1/16 in thick before each such hole, or bore deeper in.
Cannot tell: when neither plates nor the distance from the edge is recorded, for the run or as the
    practice of the house. Cables found in closed walls, in raceways and underground are left alone.
Stands: on the run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.in_walls import is_in_walls
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import read_quantity, show_as

RULE = Rule(DEFECT, (cite("nec-2023", "300.4(A)"), cite("nec-2023", "300.4(D)")), ROUGHED)

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
  - {id: h1, cable: 14/2 NM-B, from: main, to: H1, from_edge: 3/4 in}    #! cable-near-stud-face
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("from_edge: 3/4 in", "from_edge: 3/4 in, protected: [plates]").replace(
    "    #! cable-near-stud-face", ""
)

UNTOLD = PASSES.replace(", from_edge: 3/4 in, protected: [plates]", "")

LEAST = read_quantity("1-1/4 in", "length")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each cable in a wall that somebody saw open."""
    practice = house.record.practice
    for run in house.runs.values():
        if not is_in_walls(run) or run.record.protected:
            continue
        edge = run.record.from_edge or (practice.from_edge if practice else None)
        if edge is None:
            yield CannotTell(
                (run.id, run.circuit), (f"how far run {run.id} keeps from the face of studs",), run.place
            )
        elif edge < LEAST:
            yield Fault(
                place=run.place,
                about=(run.id, run.circuit),
                found=f"Run {run.id} keeps {show_as(edge, house.record.shows)} from the face of a stud.",
                allowed=f"{show_as(LEAST, house.record.shows)}, or a steel plate 1/16 in thick before it.",
                because="A screw that goes into the stud goes into the cable.",
                do="Put a steel plate before each hole that is closer.",
                edition=run.edition,
            )
