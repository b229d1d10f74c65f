"""A cable in the ground lies too shallow.

Why it matters: a spade goes in 12 in without a thought, and cuts what lies there.
What to do: lay it deeper, put it in conduit that may lie so, or feed it at 120 V and 20 A behind a GFCI, for
    which 12 in is enough.
Cannot tell: when a run between two buildings has no depth recorded, or its cable is not known. A GFCI
    device before the run counts where the run leads to one box and guards all that is in it. Depth is to
    the top of the cable. Slabs, drives and roads are not judged: other depths hold there.
Stands: on the run's line.
"""

from collections.abc import Iterator
from fractions import Fraction

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.places import OPEN_AIR
from junctionary.house.model import End, House, Run
from junctionary.house.network import Network, is_ground
from junctionary.records.cables import Cable
from junctionary.sources import cite
from junctionary.tables import table
from junctionary.units import Quantity, show_as

RULE = Rule(DEFECT, (cite("nec-2023", "300.5"),), ROUGHED)

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
  - {id: h1, cable: 14/2 UF-B, from: main, to: H1, buried: 10 in}    #! burial-too-shallow
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

PASSES = FAILS.replace("buried: 10 in", "buried: 24 in").replace("    #! burial-too-shallow", "")

UNTOLD = PASSES.replace("cable: 14/2 UF-B", "cable: unknown")

SMALL_A = 20
HOT_AND_NEUTRAL = 2
AS_RIGID = {"IMC": "RMC"}


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run that is buried, or leads from one building to another."""
    for run in house.runs.values():
        depth = run.record.buried
        if depth is None:
            buildings = {each for end in run.ends if (each := _building(house, end)) is not None}
            if len(buildings) > 1:
                yield CannotTell((run.id, run.circuit), (f"how deep run {run.id} lies",), run.place)
            continue
        least = _least_in(house, run, figures)
        if least is None:
            yield CannotTell((run.id, run.circuit), (f"the cable of run {run.id}",), run.place)
        elif depth.to("in") < least:
            allowed = show_as(Quantity(least, "in", "length"), house.record.shows)
            yield Fault(
                place=run.place,
                about=(run.id, run.circuit),
                found=f"Run {run.id} lies {show_as(depth, house.record.shows)} deep.",
                allowed=f"{allowed} for what it is.",
                because="A spade cuts what lies there.",
                do="Lay it deeper, or in a conduit that may lie so.",
                edition=run.edition,
            )


def _least_in(house: House, run: Run, figures: Figures) -> Fraction | None:
    """How deep a run must lie, in inches; None where its cable is not known."""
    if not isinstance(run.cable, Cable):
        return None
    depths = table("burial-depths")
    told = AS_RIGID.get(run.cable.kind, run.cable.kind)
    kind = told if told in depths else "cable"
    least = depths.number(kind, "cover")
    small = depths.number("small guarded circuit", "cover")
    if kind != "cable" or least is None or small is None:
        return least
    return min(least, small) if _is_small_and_guarded(house, run, figures) else least


def _is_small_and_guarded(house: House, run: Run, figures: Figures) -> bool:
    """Whether it is a 120 V circuit of 20 A or less on which every outlet opens on a ground fault."""
    circuit = house.circuits.get(run.circuit)
    if circuit is None or len(circuit.breakers) != 1:
        return False
    breaker = house.breakers[circuit.breakers[0]]
    rating = breaker.rating
    small = breaker.poles == 1 and isinstance(rating, Quantity) and rating.to("A") <= SMALL_A
    return small and ("gfci" in (breaker.guards or ()) or _is_behind_guard(house, run, figures))


def _is_behind_guard(house: House, run: Run, figures: Figures) -> bool:
    """Whether a GFCI device before a two-wire run guards it: all at its far end hangs on one elsewhere."""
    box = house.boxes.get(run.to.id or "") if run.to.kind == "box" else None
    wires = [each for each in run.conductors if not is_ground(each)]
    if box is None or not box.devices or len(wires) != HOT_AND_NEUTRAL:
        return False
    if sum(house.runs[each].to.id == box.id for each in box.runs) > 1:
        return False
    held = [figures.guarded.get(each.id) for each in box.devices]
    elsewhere = {each.id for each in house.devices.values() if each.box != box.id}
    return all(each is not None and elsewhere & set(each.by["gfci"]) for each in held)


def _building(house: House, end: End) -> str | None:
    """The building in which a run ends; the garden is of none, and so is the outside of a wall."""
    at = house.panels[end.id].record.at if end.kind == "panel" and end.id is not None else None
    name = house.boxes[end.id].room if end.kind == "box" and end.id is not None else at.room if at else None
    room = house.rooms.get(name) if name is not None else None
    return room.record.building if room and room.record.kind not in OPEN_AIR else None
