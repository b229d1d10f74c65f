"""A cable is not held often enough.

Why it matters: a cable that hangs loose is caught, pulled and stood on, and drags at the joint in its box.
    At a single-gang plastic box without a clamp the staple is all that holds it.
What to do: staple it within 12 in of each box and every 4-1/2 ft, across its flat side and not too tight;
    within 8 in of a single-gang plastic box that has no clamp, its sheath 1/4 in or more inside the box.
Cannot tell: when how it is held is not recorded, for the run or as the practice of the house; or, between
    8 and 12 in, what a box at its end is of, its gangs or its clamps. Holes in the framing count as support.
    Larger boxes are taken to hold their cables themselves. Metal-clad cable has lengths of its own and is
    left alone, as are cables found in closed walls, in raceways and underground.
Stands: on the run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.in_walls import is_in_walls
from junctionary.figures import Figures
from junctionary.house.model import Box, House, Run
from junctionary.house.network import Network
from junctionary.records.boxes import BoxSize
from junctionary.records.cables import Cable
from junctionary.records.values import NONE
from junctionary.sources import cite
from junctionary.units import read_quantity, show_as

RULE = Rule(
    DEFECT,
    (cite("nec-2023", "334.30"), cite("nec-2023", "314.17(C)"), cite("nec-2023", "320.30")),
    ROUGHED,
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
  - id: h1    #! cable-unsupported
    cable: 14/2 NM-B
    from: main
    to: H1
    supported: {first: 8 in, every: 6 ft}
  - id: h2    #! cable-unsupported
    cable: 14/2 NM-B
    from: H1
    to: H2
    supported: {first: 10 in, every: 4 ft}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1: {devices: {r1: duplex}, makeup: {feed: h1, onward: [h2]}}
  H2: {size: {gangs: 1, of: plastic, volume: 20 in3, clamps: none}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
"""

PASSES = (
    FAILS.replace("every: 6 ft", "every: 4 ft")
    .replace("first: 10 in", "first: 8 in")
    .replace("    #! cable-unsupported", "")
)

UNTOLD = PASSES.replace("    supported: {first: 8 in, every: 4 ft}\n", "", 1)

FIRST = read_quantity("12 in", "length")
FIRST_UNCLAMPED = read_quantity("8 in", "length")
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
        clamps = {each.id: _clamps(each) for each in _boxes(house, run)}
        unclamped = [id_ for id_, clamped in clamps.items() if clamped is False]
        most = FIRST_UNCLAMPED if unclamped else FIRST
        far = [
            f"{word} {show_as(length, house.record.shows)}"
            for word, length, limit in (("first support at", first, most), ("then every", every, EVERY))
            if length is not None and length > limit
        ]
        if far:
            yield Fault(
                place=run.place,
                about=(run.id, run.circuit, *unclamped),
                found=f"Run {run.id}: {', '.join(far)}.",
                allowed=f"The first within {_within(unclamped)}, then every 4-1/2 ft.",
                because="A cable that hangs loose is caught, pulled, and drags at the joint in its box.",
                do="Staple it where it hangs.",
                edition=run.edition,
            )
            continue
        needs = [f"how run {run.id} is held"] if first is None or every is None else []
        if first is not None and first > FIRST_UNCLAMPED:
            untold = (id_ for id_, clamped in clamps.items() if clamped is None)
            needs += [f"the gangs, material and clamps of box {id_}" for id_ in untold]
        if needs:
            yield CannotTell((run.id, run.circuit), tuple(needs), run.place)


def _boxes(house: House, run: Run) -> list[Box]:
    """The boxes at its ends."""
    return [house.boxes[end.id] for end in run.ends if end.id is not None and end.id in house.boxes]


def _clamps(box: Box) -> bool | None:
    """Whether a box holds its cables itself; None where it may be a single-gang plastic one without a clamp.

    Only that one may do without (314.17(C), exception); metal boxes and larger plastic ones hold theirs.
    """
    size = box.record.size
    if size is NONE:
        return True
    if not isinstance(size, BoxSize):
        return None
    other = size.of not in (None, "plastic") or size.is_metal is True
    larger = size.gangs is not None and size.gangs > 1
    unlike = size.shape not in (None, "device")
    if other or larger or unlike or size.clamps in ("inside", "outside"):
        return True
    known = size.of == "plastic" and size.gangs == 1 and size.clamps == "none"
    return False if known else None


def _within(unclamped: list[str]) -> str:
    if not unclamped:
        return "12 in of the box"
    return f"8 in of {' and '.join(unclamped)}, single-gang plastic without a clamp"
