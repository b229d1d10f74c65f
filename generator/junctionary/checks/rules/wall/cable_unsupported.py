"""A cable is not held often enough.

Why it matters: a cable that hangs loose is caught, pulled and stood on, and drags at the joint in its box.
What to do: staple it within 12 in of each box, 8 in of a single-gang plastic one without clamps, and every
    4-1/2 ft, across its flat side and not too tight.
Cannot tell: when how it is held is not recorded, for the run or as the practice of the house; or when it is
    held within 12 in of a single-gang plastic box, and not 8, and nobody told whether that has clamps.
    Holes in the framing count as support. Metal-clad cable has lengths of its own and is left alone, as
    are cables found in closed walls, in raceways and underground.
Stands: on the run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.in_walls import is_in_walls
from junctionary.figures import Figures
from junctionary.house.model import House, Run
from junctionary.house.network import Network
from junctionary.records.boxes import BoxSize
from junctionary.records.cables import Cable
from junctionary.records.values import UNKNOWN
from junctionary.sources import cite
from junctionary.units import read_quantity, show_as

RULE = Rule(DEFECT, (cite("nec-2023", "334.30"), cite("nec-2023", "314.17(C)")), ROUGHED)

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
  - id: h1    #! cable-unsupported
    cable: 14/2 NM-B
    from: main
    to: H1
    supported: {first: 8 in, every: 6 ft}
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

PASSES = FAILS.replace("every: 6 ft", "every: 4 ft").replace("    #! cable-unsupported", "")

UNTOLD = PASSES.replace("    supported: {first: 8 in, every: 4 ft}\n", "")

FIRST = read_quantity("12 in", "length")
FIRST_WITHOUT_CLAMPS = read_quantity("8 in", "length")
EVERY = read_quantity("4 ft 6 in", "length")
METAL_CLAD = "MC"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each cable in a wall that somebody saw open."""
    practice = house.record.practice
    for run in house.runs.values():
        if not is_in_walls(run) or (isinstance(run.cable, Cable) and run.cable.kind == METAL_CLAD):
            continue
        held = run.record.supported or (practice.supported if practice else None)
        first, every = (held.first, held.every) if held else (None, None)
        plain = _single_gang_plastic(house, run)
        unclamped = [box for box, size in plain if size.clamps == "none"]
        within = FIRST_WITHOUT_CLAMPS if unclamped else FIRST
        far = [
            f"{word} {show_as(length, house.record.shows)}"
            for word, length, most in (("first support at", first, within), ("then every", every, EVERY))
            if length is not None and length > most
        ]
        untold = [box for box, size in plain if size.clamps in (None, UNKNOWN)]
        if far:
            at = f", 8 in at {unclamped[0]} as nothing in it clamps the cable" if unclamped else ""
            yield Fault(
                place=run.place,
                about=(run.id, run.circuit),
                found=f"Run {run.id}: {', '.join(far)}.",
                allowed=f"The first within 12 in of the box{at}, then every 4-1/2 ft.",
                because="A cable that hangs loose is caught, pulled, and drags at the joint in its box.",
                do="Staple it where it hangs.",
                edition=run.edition,
            )
        elif first is None or every is None:
            yield CannotTell((run.id, run.circuit), (f"how run {run.id} is held",), run.place)
        elif untold and first > FIRST_WITHOUT_CLAMPS:
            needs = tuple(f"whether box {each} has clamps" for each in untold)
            yield CannotTell((*untold, run.id, run.circuit), needs, run.place)


def _single_gang_plastic(house: House, run: Run) -> list[tuple[str, BoxSize]]:
    """The boxes at a run's ends that may stand without clamps, and then want the cable held nearer."""
    found = []
    for end in run.ends:
        box = house.boxes.get(end.id or "")
        size = box.record.size if box else None
        if box and isinstance(size, BoxSize) and size.gangs == 1 and size.is_metal is False:
            found.append((box.id, size))
    return found
