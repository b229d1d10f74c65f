"""E-61x: a panel, its face and its directory card."""

from dataclasses import dataclass
from typing import ClassVar, Literal

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.entries import Excerpt, Fact, FindingEntry, MissingEntry, Working
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.titleblock import Sheet

SpaceState = Literal["feeds", "unused", "blank", "open", "unknown", "unrecorded", "main"]


@dataclass(frozen=True, slots=True)
class Handle:
    """One breaker in the face: its spaces, what it says, what it feeds.

    ``spaces`` is ``6``, ``2+4`` or ``9a``; ``leg`` is ``A``, ``B``, ``A+B``
    or empty where not known. ``feeds`` is a phrase that links the circuit.
    """

    ref: Ref
    spaces: str
    state: SpaceState
    rating: str = ""
    leg: str = ""
    guards: str = ""
    tied: str = ""
    feeds: Phrase = ()
    says: str = ""
    marks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Position:
    """A place in a column of the face: one handle, or two halves, over one row or more."""

    handles: tuple[Handle, ...]
    rows: int = 1


@dataclass(frozen=True, slots=True)
class FaceRow:
    """One row of the face and its leg. A side is None where a handle from above still covers it."""

    leg: str
    left: Position | None
    right: Position | None


@dataclass(frozen=True, slots=True)
class DirectoryLine:
    """One line of the card for the door: space, rating, and what goes dead."""

    spaces: str
    rating: str
    feeds: Phrase
    serves: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelSheet(Sheet):
    """A panel as it looks with its door open."""

    before: BeforeOpening
    facts: tuple[Fact, ...]
    main: Handle | None
    face: tuple[FaceRow, ...]
    directory: tuple[DirectoryLine, ...]
    workings: tuple[Working, ...] = ()
    findings: tuple[FindingEntry, ...] = ()
    missing: tuple[MissingEntry, ...] = ()
    excerpts: tuple[Excerpt, ...] = ()
    section: ClassVar[str] = "panels"

    def anchors(self) -> tuple[Ref, ...]:
        """Every breaker in the face."""
        sides = [side for row in self.face for side in (row.left, row.right) if side]
        handles = [handle for side in sides for handle in side.handles]
        return tuple(each.ref for each in ([self.main] if self.main else []) + handles)
