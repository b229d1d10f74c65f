"""E-001: the cover, where to shut off, what is open, and the index of sheets."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.entries import Fact, FindingEntry
from junctionary.sheets.links import Link, Phrase
from junctionary.sheets.plan import Plan
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True)
class RoomEntry:
    """A room, and the codes of its boxes as they stand on their covers; where it has none, its breakers."""

    room: Phrase
    boxes: tuple[Link, ...] = ()
    breakers: tuple[Link, ...] = ()


@dataclass(frozen=True, slots=True)
class LevelEntry:
    """A level and its rooms; ``plan`` leads to its plan, ``plans`` are drawn small."""

    name: str
    rooms: tuple[RoomEntry, ...]
    plan: Phrase = ()
    plans: tuple[Plan, ...] = ()


@dataclass(frozen=True, slots=True)
class IndexLine:
    """One line of the index of sheets."""

    number: str
    sheet: Link
    shows: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Cover(Sheet):
    """What somebody needs in the first half minute."""

    shut_off: tuple[Fact, ...]
    sources: tuple[Fact, ...]
    hazards: tuple[FindingEntry, ...]
    tally: tuple[Fact, ...]
    complete: tuple[Fact, ...]
    levels: tuple[LevelEntry, ...]
    panels: tuple[Fact, ...]
    index: tuple[IndexLine, ...]
    section: ClassVar[str] = "cover"

    @property
    def is_directory(self) -> bool:
        """Whether of some room no more is known than its breakers."""
        return any(room.breakers for level in self.levels for room in level.rooms)

    @property
    def widest_in(self) -> float:
        """The width of the widest plan drawn small, in inches."""
        rooms = [
            [x for room in plan.rooms for x, _ in room.corners]
            for level in self.levels
            for plan in level.plans
        ]
        return max((max(xs) - min(xs) for xs in rooms), default=0.0)
