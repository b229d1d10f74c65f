"""E-002 and on: the owner's notes, the words and symbols, and a page for every rule."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.circuit import Symbol
from junctionary.sheets.entries import Excerpt, Fact, FindingEntry, Severity
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteSheet(Sheet):
    """One note: who wrote it, when, and its Markdown as written."""

    written_by: str
    written_on: str
    markdown: str
    section: ClassVar[str] = "notes"


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetySheet(Sheet):
    """The cautions that hold everywhere, then the notes of this house."""

    steps: tuple[str, ...]
    cautions: tuple[str, ...]
    emergency: tuple[Fact, ...]
    notes: tuple[Phrase, ...]
    section: ClassVar[str] = "notes"


@dataclass(frozen=True, slots=True, kw_only=True)
class RulePage(Sheet):
    """What one check looks at, why, on what authority, how and when to mend it, and where it was met here."""

    severity: Severity
    stage: str
    parts: tuple[tuple[str, str], ...]
    cites: tuple[str, ...]
    fails: Excerpt | None
    passes: Excerpt | None
    met: tuple[FindingEntry, ...]
    section: ClassVar[str] = "findings"


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade, as this manual uses it."""

    ref: Ref
    word: str
    means: str


@dataclass(frozen=True, slots=True)
class ColourCode:
    """An insulation colour and the letters that stand for it in a drawing."""

    colour: str
    letters: str


@dataclass(frozen=True, slots=True)
class SymbolEntry:
    """A symbol of the drawings and what it stands for."""

    symbol: Symbol
    means: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TermsSheet(Sheet):
    """The legend."""

    terms: tuple[Term, ...]
    colours: tuple[ColourCode, ...]
    symbols: tuple[SymbolEntry, ...]
    severities: tuple[tuple[Severity, str], ...]
    section: ClassVar[str] = "terms"

    def anchors(self) -> tuple[Ref, ...]:
        """Every word."""
        return tuple(term.ref for term in self.terms)
