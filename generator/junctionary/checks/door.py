"""What an entry on a panel's door names, against what its circuit serves."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from junctionary.checks.directory import (
    KIND_OF,
    LEVELS,
    ROOMS,
    SAYS_NOTHING,
    TELLS_ROOMS_APART,
    USES,
    singular,
    words_of,
)
from junctionary.figures import Figures
from junctionary.house.model import Circuit, House
from junctionary.records.words import ROOM_KINDS

ROOMS_ALIKE = (
    frozenset(("porch", "deck", "outdoors")),
    frozenset(("cellar", "basement", "crawlspace")),
    frozenset(("hall", "foyer", "stair")),
    frozenset(("living", "family", "den", "recreation", "library", "sunroom")),
    frozenset(("laundry", "utility")),
    frozenset(("kitchen", "pantry")),
    frozenset(("garage", "workshop")),
)  # fmt: skip
"""Kinds of room that one person calls by the one word and another by the other."""

LOADS_ALIKE = (
    frozenset(("range", "oven", "cooktop")),
    frozenset(("refrigerator", "freezer")),
    frozenset(("washer", "dryer")),
    frozenset(("dishwasher", "disposer")),
    frozenset(("microwave", "hood")),
    frozenset(("pump", "sump-pump")),
    frozenset(("heat-pump", "air-conditioner", "air-handler", "furnace", "space-heater")),
    frozenset(("water-heater",)),
    frozenset(("car-charger",)),
    frozenset(("garage-door",)),
)  # fmt: skip
"""Loads that are easily called by one another's name, or share a circuit; others are not judged by name."""

SPOKEN = {
    "range hood": "hood", "heat pump": "heat-pump", "air conditioner": "air-conditioner",
    "air conditioning": "air-conditioner", "air handler": "air-handler", "water heater": "water-heater",
    "hot water": "water-heater", "car charger": "car-charger", "ev charger": "car-charger",
    "sump pump": "sump-pump", "garage door": "garage-door", "space heater": "space-heater",
    "washing machine": "washer", "stove": "range", "range": "range", "oven": "oven", "cooktop": "cooktop",
    "fridge": "refrigerator", "refrigerator": "refrigerator", "freezer": "freezer", "dryer": "dryer",
    "washer": "washer", "dishwasher": "dishwasher", "disposer": "disposer", "disposal": "disposer",
    "microwave": "microwave", "furnace": "furnace", "pump": "pump",
}  # fmt: skip
"""What a door calls a load, the longer phrases first, and its kind in the record."""

BY_PURPOSE = {
    "range": "range", "dryer": "dryer", "water-heater": "water-heater", "heating": "furnace",
    "cooling": "air-conditioner", "heat-pump": "heat-pump", "car-charger": "car-charger", "pump": "pump",
    "laundry": "washer", "small-appliance": "refrigerator",
}  # fmt: skip

GENERAL = USES | SAYS_NOTHING | TELLS_ROOMS_APART | LEVELS | {
    "north", "south", "east", "west", "left", "right", "wall", "side", "corner", "window", "opening",
    "by", "over", "under", "near", "behind", "with", "its", "everything",
}  # fmt: skip
"""Words that two entries may share and still be of two circuits."""


@dataclass(frozen=True, slots=True)
class Named:
    """What a text names: ``rooms`` are sets of rooms of which it may mean any, ``loads`` kinds of load."""

    rooms: tuple[frozenset[str], ...]
    loads: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Served:
    """What a circuit touches: rooms, kinds of load, and the words it is told by; ``gaps`` may hide more."""

    rooms: frozenset[str]
    loads: frozenset[str]
    words: frozenset[str]
    gaps: tuple[str, ...]


def named_in(says: str, house: House) -> Named:
    """The rooms of the house and the kinds of load that a text names."""
    words = [singular(each) for each in words_of(says)]
    loads = [load for phrase, load in SPOKEN.items() if _take(words, phrase.split())]
    rooms = []
    by_length = sorted(house.rooms.values(), key=lambda each: -len(words_of(each.name)))
    for room in by_length:
        name = [singular(each) for each in words_of(room.name)]
        if len(name) > 1 and _take(words, name):
            rooms.append(frozenset(each.id for each in by_length if each.name == room.name))
    for word in words:
        alike = _alike(KIND_OF.get(word, word), ROOMS_ALIKE) & set(ROOM_KINDS)
        meant = (each for each in by_length if each.record.kind in alike or words_of(each.name) == (word,))
        if found := frozenset(each.id for each in meant):
            rooms.append(found)
    return Named(tuple(rooms), tuple(dict.fromkeys(loads)))


def served_by(circuit: Circuit, house: House, figures: Figures) -> Served:
    """What a circuit touches, by its boxes, its loads, its purpose and its name."""
    name = named_in(circuit.name, house)
    rooms = set(circuit.rooms).union(*name.rooms)
    for run in (house.runs[each] for each in circuit.runs):
        for end in run.ends:
            at = house.panels[end.id].record.at if end.kind == "panel" and end.id is not None else None
            if at is not None and at.room is not None and end is run.to:
                rooms.add(at.room)
    loads = {each.is_ for each in circuit.loads} | set(name.loads)
    if circuit.record.purpose in BY_PURPOSE:
        loads.add(BY_PURPOSE[circuit.record.purpose])
    words = {word for text in _texts(circuit, house, rooms) for word in words_of(text)}
    gaps = () if circuit.record.serves is not None else figures.circuits[circuit.id].gaps
    return Served(frozenset(rooms), frozenset(loads), frozenset(map(singular, words)), gaps)


def shares_a_word(says: str, served: Served) -> bool:
    """Whether an entry has a word of its own in common with what its circuit is told by."""
    own = {singular(each) for each in words_of(says) if each not in GENERAL and not each.isdigit()}
    return any(each in served.words for each in own if each not in ROOMS)


def any_named(named: Named, served: Served) -> bool:
    """Whether anything named is touched."""
    alike = frozenset[str]().union(*(_alike(each, LOADS_ALIKE) for each in served.loads))
    return any(each & served.rooms for each in named.rooms) or any(each in alike for each in named.loads)


def doubts(named: Named, served: Served, circuit: Circuit, house: House) -> Iterator[str]:
    """The facts without which it is not sure that the circuit touches nothing of what is named."""
    yield from served.gaps
    if named.rooms and not served.rooms:
        yield f"which rooms circuit {circuit.id} serves"
    others = (each for each in house.circuits.values() if each is not circuit)
    elsewhere = {load.is_ for each in others for load in each.loads}
    sure = bool(served.loads) or any(_alike(each, LOADS_ALIKE) & elsewhere for each in named.loads)
    if named.loads and not sure:
        yield f"what circuit {circuit.id} feeds"


def _texts(circuit: Circuit, house: House, rooms: Iterable[str]) -> Iterator[str]:
    yield circuit.name
    for load in circuit.loads:
        yield load.name or load.is_
    for id_ in circuit.boxes:
        yield house.boxes[id_].name or ""
    for id_ in circuit.devices:
        yield house.devices[id_].kind_id
    for each in rooms:
        yield house.rooms[each].name if each in house.rooms else ""


def _alike(word: str, groups: Iterable[frozenset[str]]) -> frozenset[str]:
    return next((each for each in groups if word in each), frozenset((word,)))


def _take(words: list[str], phrase: list[str]) -> bool:
    """Whether a phrase stands in the words, which then lose it."""
    for at in range(len(words) - len(phrase) + 1):
        if phrase and words[at : at + len(phrase)] == phrase:
            # What was before and what came after it must not read as one.
            words[at : at + len(phrase)] = [""]
            return True
    return False
