"""E-1xx: a room, what is in it, what feeds it, what to switch off."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.entries import Excerpt, Fact, FindingEntry, MissingEntry, Table
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomSheet(Sheet):
    """A room: its boxes along each wall, its circuits, what only passes through."""

    before: BeforeOpening
    facts: tuple[Fact, ...]
    boxes: Table
    fed_by: Table
    things: Table
    passes: Table
    findings: tuple[FindingEntry, ...] = ()
    today: tuple[FindingEntry, ...] = ()
    missing: tuple[MissingEntry, ...] = ()
    excerpts: tuple[Excerpt, ...] = ()
    section: ClassVar[str] = "rooms"
