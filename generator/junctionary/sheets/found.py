"""What can be looked up: everything of the house that has a place in the manual, with its breaker."""

from dataclasses import dataclass
from typing import Literal

from junctionary.sheets.links import Ref

FoundKind = Literal["point", "appliance", "box", "room", "circuit", "breaker", "panel", "cable", "sheet"]
HEADINGS: dict[FoundKind, str] = {
    "point": "Outlets, lights and switches",
    "appliance": "Appliances",
    "breaker": "Breakers",
    "box": "Boxes",
    "room": "Rooms",
    "circuit": "Circuits",
    "panel": "Panels and sources",
    "cable": "Cables",
    "sheet": "Sheets",
}

WORTH: dict[FoundKind, float] = {
    "appliance": 1.05,
    "breaker": 0.85,
    "box": 0.85,
    "circuit": 0.85,
    "cable": 0.8,
    "sheet": 0.7,
}
"""Of things that a text fits alike, what most people mean comes first: 1 for the kinds not named here."""


@dataclass(frozen=True, slots=True)
class Found:
    """One thing that can be found: its name, where it is, its breakers, and all the words it goes by.

    ``off`` is what must be off or what feeds it, in words; ``id`` is what
    stands on a cover plate or in the record; ``reset`` is what costs nothing
    to try where it is dead. ``words`` name the thing itself, ``room`` the room
    it is in, ``near`` where in there: who types one of the first means it,
    who types one of the last may mean what it stands beside.
    """

    kind: FoundKind
    id: str
    name: str
    place: str
    off: str
    to: Ref
    words: tuple[str, ...]
    room: tuple[str, ...] = ()
    near: tuple[str, ...] = ()
    reset: str = ""
