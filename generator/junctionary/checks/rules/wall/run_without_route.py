"""A cable is about to be covered, and nothing tells its way.

Why it matters: without a route the manual can only assume one, and whoever drills relies on it.
What to do: while the wall is open, write the points at which the cable turns, or photograph it and list
    what the photo shows.
Cannot tell: when the stage of the run is not recorded, for it or for its circuit. Only runs that are roughed
    in are judged.
Stands: on the run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.in_walls import is_in_walls
from junctionary.figures import Figures
from junctionary.house.model import House, Run
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(ADVICE, (cite("practice", "The way of every cable is noted before it is covered."),), ROUGHED)

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
  - {id: h1, cable: 14/2 NM-B, from: main, to: H1, stage: roughed}    #! run-without-route
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

PASSES = FAILS.replace(
    "stage: roughed}", "stage: roughed, route: [{room: hall, wall: north, along: 1 ft, up: 14 in}, H1]}"
).replace("    #! run-without-route", "")

UNTOLD = FAILS.replace(", stage: roughed", "").replace("    #! run-without-route", "")

OPEN = "roughed"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each cable in an open wall."""
    for run in house.runs.values():
        if not is_in_walls(run) or run.record.route or _is_shown(house, run):
            continue
        stage = run.stage or _stage_of_ends(house, run)
        if stage is None:
            yield CannotTell((run.id, run.circuit), (f"at which stage run {run.id} is",), run.place)
        elif stage == OPEN:
            yield Fault(
                place=run.place,
                about=(run.id, run.circuit),
                found=f"Run {run.id} is roughed in and has no route.",
                allowed="The points at which it turns, or a photo that shows it.",
                because="Whoever drills later relies on an assumed way.",
                do="Write its points while the wall is open.",
                edition=run.edition,
            )


def _is_shown(house: House, run: Run) -> bool:
    return any(run.id in each.shows for each in house.photos)


def _stage_of_ends(house: House, run: Run) -> str | None:
    """The stage of the box at an end, where the run says none itself."""
    boxes = (house.boxes[end.id] for end in run.ends if end.kind == "box" and end.id is not None)
    return next((each.stage for each in boxes if each.stage is not None), None)
