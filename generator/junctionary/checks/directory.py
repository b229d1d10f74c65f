"""What the door of a panel says of its breakers, and whether it says enough."""

import re
from collections.abc import Iterator
from functools import cache

from junctionary.house.model import Breaker, House, Panel, Room
from junctionary.records.values import NONE
from junctionary.records.words import DEVICES, LOADS, ROOM_KINDS, THINGS

USES = frozenset((
    "light", "lights", "lighting", "lamp", "lamps", "plug", "plugs", "outlet", "outlets", "receptacle",
    "receptacles", "socket", "sockets", "switch", "switches", "fan", "fans", "appliance", "appliances",
    "heat", "heater", "heating",
))  # fmt: skip
"""What a circuit may be for, in words that fit many circuits: enough only with a place."""

TELLS_ROOMS_APART = frozenset((
    "spare", "main", "old", "new", "other", "first", "second", "third", "upper", "lower", "front",
    "back",
))  # fmt: skip
"""Words that tell one room from another of its kind, and say nothing without a room."""

SAYS_NOTHING = frozenset((
    "general", "misc", "miscellaneous", "others", "various", "unknown", "tbd", "unlabeled",
    "unlabelled", "unmarked", "mains", "power", "circuit", "circuits", "breaker", "electric",
    "electrical", "house", "home", "all", "some", "extra", "etc", "use", "used", "in", "the", "and",
    "of", "for", "a", "to", "on", "off", "no", "not", "sure", "x", "xx", "v", "volt", "volts", "110v",
    "115v", "120v", "220v", "230v", "240v",
))  # fmt: skip
"""Words that tell one circuit of a house from another in no way."""

PERSONS = frozenset((
    "my", "our", "his", "her", "their", "mum", "mom", "mother", "dad", "father", "son", "daughter",
    "brother", "sister", "baby", "kid", "kids", "child", "children", "boy", "boys", "girl", "girls",
    "teen", "teens", "grandma", "grandpa", "granny", "tenant", "tenants", "lodger", "roommate", "nanny",
))  # fmt: skip
"""Words for somebody of the household; a guest room is a room, whoever the guest."""

LEVELS = frozenset((
    "upstairs", "downstairs", "up", "down", "floor", "ground", "level",
))  # fmt: skip
KIND_OF = {
    "bath": "bathroom", "bed": "bedroom", "br": "bedroom", "lr": "living", "hallway": "hall",
    "rec": "recreation",
    "yard": "outdoors", "outside": "outdoors", "exterior": "outdoors", "outdoor": "outdoors",
}  # fmt: skip
ROOMS = (frozenset(ROOM_KINDS) - {"other"}) | frozenset(KIND_OF) | {"room"}


def feeding(panel: Panel) -> Iterator[Breaker]:
    """The breakers of a panel that feed something, or may: not its main, nor one that feeds ``none``."""
    return (each for each in panel.breakers if each.spaces != ("main",) and each.feeds is not NONE)


def folded(says: str) -> str:
    """An entry without case, spaces and punctuation, by which two are the same."""
    return "".join(words_of(says))


@cache
def words_of(says: str) -> tuple[str, ...]:
    """The words and numbers of an entry, in small letters."""
    return tuple(re.findall(r"[^\W_]+", says.casefold()))


def vague_because(says: str, house: House) -> str | None:
    """Why an entry does not tell its circuit from the others, or None where it does.

    An entry tells by a word of its own (furnace, sink, north), or by a room or
    a level with a use, where the house has no second room of that kind. A room
    without a use is enough where it is one room that no other circuit serves:
    all of it is then what the circuit is for.
    """
    words = words_of(says)
    if not words:
        return "it says nothing"
    if any(not _ordinary(word) for word in words):
        return None
    rooms = [word for word in words if singular(word) in ROOMS]
    levels = [word for word in words if word in LEVELS]
    if not rooms and not levels:
        return "it names no place and no one thing"
    if not any(word in USES for word in words):
        return _why_only_a_place(words, rooms, house)
    if levels or any(word in TELLS_ROOMS_APART or word.isdigit() for word in words):
        return None
    for word in rooms:
        alike = [each.name for each in house.rooms.values() if each.record.kind == KIND_OF.get(word, word)]
        if len(alike) > 1:
            return f"the house has {len(alike)} rooms it may mean, {', '.join(alike)}"
    return None


def _why_only_a_place(words: tuple[str, ...], rooms: list[str], house: House) -> str | None:
    kinds = {KIND_OF.get(each, each) for each in map(singular, rooms)}
    meant = [each for each in house.rooms.values() if each.record.kind in kinds]
    if len(meant) > 1:
        # The words that are left, such as those of a level, tell rooms of one kind apart.
        by_level = [each for each in meant if _level_words(each, house) & set(words)]
        meant = by_level if len(by_level) == 1 else meant
    if len(kinds) != 1 or len(meant) != 1:
        return "it names no use, only a place"
    serving = [each.name for each in house.circuits.values() if meant[0].id in each.rooms]
    if len(serving) > 1:
        return f"it names no use, and {len(serving)} circuits serve {meant[0].name}"
    entries = [each.says for each in house.breakers.values() if each.says]
    naming = [each for each in entries if kinds & {KIND_OF.get(w, w) for w in map(singular, words_of(each))}]
    if len(naming) > 1:
        return f"it names no use, and {len(naming)} entries name such a room"
    return None


def _level_words(room: Room, house: House) -> set[str]:
    """The words of a room's level that no other level has."""
    names = {each.id: set(words_of(each.name)) for each in house.record.levels}
    others = set[str]().union(*(names[each] for each in names if each != room.record.level))
    return names.get(room.record.level or "", set()) - others


def person_in(says: str, house: House) -> str | None:
    """The word of an entry that tells of somebody of the household, or None.

    A word with an apostrophe and s is a person's, unless it is a thing or a place of the house.
    """
    for word in words_of(says):
        if word in PERSONS:
            return word
    for owner in re.findall(r"([^\W\d_]+)(?:['’]s|s['’])(?![^\W_])", says):
        if not _is_thing(singular(owner.casefold()), house):
            return str(owner)
    return None


def _is_thing(word: str, house: House) -> bool:
    rooms = (singular(each) for room in house.rooms.values() for each in words_of(room.name))
    listed = (each for kind in (LOADS, DEVICES, THINGS) for name in kind for each in name.split("-"))
    more = ("house", "guest", "neighbour", "neighbor", "owner", "visitor", "men", "women", "lady", "driver")
    return _ordinary(word) or word in {*rooms, *listed, *more}


def _ordinary(word: str) -> bool:
    known = USES | SAYS_NOTHING | TELLS_ROOMS_APART | LEVELS
    return word in known or word.isdigit() or singular(word) in ROOMS


def singular(word: str) -> str:
    """A word without the s of the plural, a kind of room as it is."""
    return word if word in ROOMS else word.removesuffix("s")
