"""A cable lies where its kind may not be.

Why it matters: the paper and the jacket of NM-B draw water and rot, its insulation is eaten away, and
    nobody sees it inside a wall, under a deck or in the ground until it shorts or makes something live.
What to do: replace that part with a cable made for the place, or a raceway with wire made for wet places,
    joined in a box where it is dry.
Cannot tell: when it is not recorded whether a place is dry (a cellar, a crawlspace, a porch, a deck), where a
    cable between two outdoor boxes or two buildings goes, what the cable is, or what a cable of its
    kind is marked for. A cable that ends in one outdoor box is taken to come through the wall into its
    back. Rooms and attics are taken as dry unless they are recorded as ``exposed``. What each kind of
    cable is for is from memory.
Stands: on the run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import End, House, Room, Run
from junctionary.house.network import Network
from junctionary.records.cables import Cable
from junctionary.records.values import UNKNOWN
from junctionary.sources import cite
from junctionary.tables import table

RULE = Rule(
    DEFECT, (cite("nec-2023", "334.12"), cite("nec-2023", "340.10"), cite("nec-2023", "310.10(C)")), ROUGHED
)

FAILS = """
[circuits/yard.yaml]
circuit: yard
name: Yard
runs:
  - {id: y1, cable: 12/2 NM-B, from: unknown, to: Y1, buried: 24 in}    #! cable-in-wrong-place
[rooms/yard.yaml]
room: yard
name: Yard
kind: outdoors
[boxes/yard.yaml]
room: yard
boxes:
  Y1: {capped: [y1]}
"""

PASSES = FAILS.replace("NM-B", "UF-B").replace("    #! cable-in-wrong-place", "")

UNTOLD = PASSES.replace("12/2 UF-B", "unknown")

MAY_BE_DAMP = ("cellar", "basement", "crawlspace", "porch", "deck")
HARDNESS = ("dry", "damp", "wet", "buried")
WET_MARKS = ("W", "USE", "UF")
"""What stands in the marking of insulation that is made for wet places: THWN, XHHW, RHW, TW."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run, by the hardest place on its way."""
    for run in house.runs.values():
        places, needs = _way(house, run)
        hard = max(places, key=lambda each: HARDNESS.index(each[0]), default=("dry", ""))
        about = (run.id, run.circuit)
        if hard[0] != "dry":
            allowed = _allowed(run, hard[0])
            if allowed is False:
                yield _fault(run, *hard)
                continue
            if isinstance(allowed, str):
                needs = [allowed, *needs]
        # A cable that may be anywhere needs no answer to where it is.
        if needs and (hard[0] != "dry" or _allowed(run, "buried") is not True):
            yield CannotTell(about, tuple(needs), run.place)


def _fault(run: Run, place: str, where: str) -> Fault:
    assert isinstance(run.cable, Cable)
    what = "Wire without a mark for wet places" if run.cable.raceway else run.cable.kind
    state = "in the ground" if place == "buried" else f"a {place} place"
    return Fault(
        place=run.place,
        about=(run.id, run.circuit),
        found=f"Run {run.id}, {run.cable.text}, is {where}: {state}.",
        allowed=f"{what} where it is dry; here a kind that is made for it.",
        because="Water gets into it, its insulation goes, and nobody sees it until it shorts.",
        do=f"Replace it {where} with a cable or wire that is made for the place.",
        edition=run.edition,
    )


def _way(house: House, run: Run) -> tuple[list[tuple[str, str]], list[str]]:
    """The places a run is known to lie in, each with its words, and what is not known of its way."""
    places: list[tuple[str, str]] = []
    needs: list[str] = []
    buried = run.record.buried
    if buried is not None:
        places.append(("buried", f"{buried} deep"))
    told = [*(run.record.through or ()), *(each.room for each in run.record.route or () if each.room)]
    for room in (house.rooms[each] for each in told if each in house.rooms):
        exposure = _exposure(room)
        if exposure is None:
            needs.append(f"whether {room.name.lower()} is dry, damp or wet")
        else:
            places.append((exposure, f"in the {room.name.lower()}"))
    ends = [_room(house, end) for end in run.ends]
    known = [each for each in ends if each is not None]
    if buried is None and not told and len(known) == len(ends):
        if all(_outdoors(house, end, room) for end, room in zip(run.ends, known, strict=True)):
            needs.append(f"which way run {run.id} goes between two outdoor boxes")
        elif len({each.record.building for each in known if each.record.building}) > 1:
            needs.append(f"how run {run.id} goes from one building to the other")
    return places, needs


def _exposure(room: Room) -> str | None:
    """``dry``, ``damp`` or ``wet``; None where it is not known."""
    said = room.record.exposed
    if said is not None:
        return None if said is UNKNOWN else str(said)
    if room.record.kind == "outdoors":
        return "wet"
    return None if room.record.kind in MAY_BE_DAMP else "dry"


def _outdoors(house: House, end: End, room: Room) -> bool:
    box = house.boxes.get(end.id or "") if end.kind == "box" else None
    said = box.record.exposed if box else None
    return (said or _exposure(room)) in ("damp", "wet")


def _room(house: House, end: End) -> Room | None:
    box = house.boxes.get(end.id or "") if end.kind == "box" else None
    if box is not None:
        return house.rooms.get(box.room)
    panel = house.panels.get(end.id or "") if end.kind == "panel" else None
    at = panel.record.at if panel else None
    return house.rooms.get(at.room) if at and at.room else None


def _allowed(run: Run, place: str) -> bool | str:
    """Whether a run's cable may be in a place, or what is missing to tell."""
    if not isinstance(run.cable, Cable):
        return f"the cable of run {run.id}"
    if run.cable.raceway is not None:
        if place in ("dry", "damp"):
            return True
        marking = run.record.insulation or run.cable.insulation
        if marking is None:
            return f"what insulation the wires of run {run.id} have"
        return any(each in marking.upper() for each in WET_MARKS)
    printed = table("cable-places")
    word = printed.row(run.cable.kind).text(place) if run.cable.kind in printed and place != "dry" else "-"
    if word == "-":
        return f"whether the {run.cable.kind} of run {run.id} is marked for {place} places"
    return word == "yes"
