"""E-61x-card: the directory card of a panel, to print and put on its door."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.face import Slot
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True)
class CardEntry:
    """One breaker on the card: its spaces, what it feeds, in which rooms, its rating."""

    ref: Ref
    slots: tuple[Slot, ...]
    what: str
    where: str = ""
    rating: str = ""


@dataclass(frozen=True, slots=True)
class DoorCard:
    """The card: two columns of so many rows as the face has; ``foot`` is what stands below them."""

    title: str
    says: str
    name: str
    under: str
    rows: int
    entries: tuple[CardEntry, ...]
    foot: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardSheet(Sheet):
    """The card on a sheet of its own, Letter or A4."""

    card: DoorCard
    panel: Link
    section: ClassVar[str] = "panels"
