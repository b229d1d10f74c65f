"""Where a run lies: how warm it is there, and how many other conductors lie with it.

Each answer is a pair, the kindest and the harshest the record allows, with what
would settle between them; where both give the same breaker, nothing is missing.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from junctionary.house.model import House, Run
from junctionary.records.rooms import Bundle
from junctionary.records.words import NEUTRAL_COLOURS

BASE_C = Fraction(30)
"""What the tables of ampacity are printed for, and what a room takes that records no other (practice)."""

UNRECORDED_ATTIC_C = Fraction(60)
"""The warmest an attic is taken to become where nobody recorded it (practice)."""

ATTIC_WORDS = ("attic", "roof")
SHORT_BUNDLE_IN = 24
CABLES_IN_SEALED_HOLE = 2


@dataclass(frozen=True, slots=True)
class Warmth:
    """The ambient in °C, at the kindest and the harshest; ``missing`` is what tells them apart."""

    kindest_c: Fraction
    harshest_c: Fraction
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Company:
    """How many current-carrying conductors lie together; None where a cable among them is not known.

    ``without_hole`` leaves out the sealed hole ``hole``, which has a check of its own.
    """

    kindest: int | None
    harshest: int | None
    without_hole: int | None
    hole: str | None
    missing: tuple[str, ...]


def warmth_along(house: House, run: Run) -> Warmth:
    """How warm it is along a run, by the rooms of its ends, its route and what it goes through."""
    kindest, harshest, missing = BASE_C, BASE_C, []
    for place in dict.fromkeys(_places(house, run)):
        room = house.rooms.get(place)
        if room and room.record.ambient:
            recorded = room.record.ambient.to("C")
            kindest, harshest = max(kindest, recorded), max(harshest, recorded)
        elif room.record.kind == "attic" if room else any(word in place.lower() for word in ATTIC_WORDS):
            harshest = max(harshest, UNRECORDED_ATTIC_C)
            missing.append(f"how warm it becomes in {room.name if room else place}")
    return Warmth(kindest, harshest, tuple(missing))


def _places(house: House, run: Run) -> Iterator[str]:
    """The ids of rooms a run lies in, and words for places that are no room of the record."""
    for end in run.ends:
        if end.id is not None and end.id in house.panels:
            at = house.panels[end.id].record.at
            if at and at.room:
                yield at.room
        elif end.id is not None and end.id in house.boxes:
            yield from _places_of_box(house, end.id)
    yield from run.record.through or ()
    for point in run.record.route or ():
        if point.room:
            yield point.room
        if point.box and point.box in house.boxes:
            yield from _places_of_box(house, point.box)


def _places_of_box(house: House, box_id: str) -> Iterator[str]:
    box = house.boxes[box_id]
    yield box.room
    if box.record.at and box.record.at.above:
        yield box.record.at.above
    if box.record.at and box.record.at.room:
        yield box.record.at.room


def company_of(house: House, run: Run) -> Company:
    """How many current-carrying conductors lie together along a run, its own among them.

    A sealed hole counts where more than two cables share it (334.80), any other
    bundle where it is longer than 24 in. A bundle nobody recorded is not seen.
    """
    own = current_carrying(house, run)
    kindest, harshest, without_hole = own, own, own
    hole: str | None = None
    missing: list[str] = []
    for bundle in (
        each for room in house.rooms.values() for each in room.record.bundles if run.id in each.runs
    ):
        together, unknown = _together(house, bundle)
        missing += unknown
        if bundle.is_ == "sealed-hole":
            if len(bundle.runs) > CABLES_IN_SEALED_HOLE:
                hole = bundle.id
                kindest, harshest = _most(kindest, together), _most(harshest, together)
        elif bundle.length is None and bundle.with_ is None:
            harshest = _most(harshest, together)
            missing.append(f"how long the bundle {bundle.id} is")
        elif bundle.with_ is not None or (bundle.length and bundle.length.to("in") > SHORT_BUNDLE_IN):
            kindest, harshest = _most(kindest, together), _most(harshest, together)
            without_hole = _most(without_hole, together)
    return Company(kindest, harshest, without_hole, hole, tuple(missing))


def current_carrying(house: House, run: Run) -> int | None:
    """The conductors of a run that carry current: no ground, and no neutral of a balanced pair of legs."""
    if not run.conductors:
        return None
    carrying = [each for each in run.conductors if not each.is_ground]
    neutrals = [each for each in carrying if each.colour in NEUTRAL_COLOURS]
    circuit = house.circuits.get(run.circuit)
    legs = {leg for each in (circuit.breakers if circuit else ()) for leg in house.breakers[each].legs}
    balanced = legs >= {"A", "B"} and len(neutrals) == 1 and len(carrying) - len(neutrals) == len(legs)
    return len(carrying) - (1 if balanced else 0)


def _together(house: House, bundle: Bundle) -> tuple[int | None, list[str]]:
    counts = {
        each: current_carrying(house, house.runs[each]) if each in house.runs else None
        for each in bundle.runs
    }
    unknown = [
        f"the cable of run {each}, which lies in bundle {bundle.id}"
        for each in counts
        if counts[each] is None
    ]
    known = [each for each in counts.values() if each is not None]
    return (None if unknown else sum(known)), unknown


def _most(one: int | None, other: int | None) -> int | None:
    return None if one is None or other is None else max(one, other)
