"""E-61x: a panel, its face and the schedule of its breakers."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.entries import Excerpt, Fact, FindingEntry, MissingEntry, Table, Working
from junctionary.sheets.face import PanelFace
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelSheet(Sheet):
    """A panel as it looks with its door open."""

    before: BeforeOpening
    facts: tuple[Fact, ...]
    face: PanelFace
    card: Link
    schedule: Table
    signs: tuple[Fact, ...] = ()
    workings: tuple[Working, ...] = ()
    findings: tuple[FindingEntry, ...] = ()
    missing: tuple[MissingEntry, ...] = ()
    excerpts: tuple[Excerpt, ...] = ()
    section: ClassVar[str] = "panels"

    def anchors(self) -> tuple[Ref, ...]:
        """Every space in the face."""
        main = (self.face.main.ref,) if self.face.main else ()
        return (*main, *(each.ref for each in self.face.handles))
