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


@dataclass(frozen=True, slots=True)
class Found:
    """One thing that can be found: its name, where it is, its breakers, and all the words it goes by.

    ``off`` is what must be off or what feeds it, in words; ``id`` is what
    stands on a cover plate or in the record.
    """

    kind: FoundKind
    id: str
    name: str
    place: str
    off: str
    to: Ref
    words: tuple[str, ...]
