"""E-1xx: a room, what is in it, what feeds it, what to switch off."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.elevation import Elevation
from junctionary.sheets.entries import Excerpt, Fact, FindingEntry, MissingEntry, Table
from junctionary.sheets.plan import Plan
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomSheet(Sheet):
    """A room: its plan and its walls, its boxes, its circuits, what only passes through.

    ``plan`` is None where the outline is not recorded; ``walls`` are empty then.
    ``bare`` names the walls of which nothing is recorded; ``reach`` is how far
    the caution goes to each side of a box or a route.
    """

    before: BeforeOpening
    facts: tuple[Fact, ...]
    boxes: Table
    fed_by: Table
    things: Table
    passes: Table
    plan: Plan | None = None
    walls: tuple[Elevation, ...] = ()
    bare: tuple[str, ...] = ()
    reach: str = ""
    findings: tuple[FindingEntry, ...] = ()
    today: tuple[FindingEntry, ...] = ()
    missing: tuple[MissingEntry, ...] = ()
    excerpts: tuple[Excerpt, ...] = ()
    section: ClassVar[str] = "rooms"
