"""E-5xx: one outlet, light or switch: what feeds it, what to try when it is dead, what goes dark with it."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.entries import Fact
from junctionary.sheets.links import Link, Phrase
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True)
class FeedLine:
    """One breaker that feeds it, and where it stands. ``by_label`` where only its label says so."""

    space: Link
    rating: str
    says: str
    at: str
    panel_at: str
    by_label: bool = False


@dataclass(frozen=True, slots=True)
class ResetLine:
    """One thing to reset or to switch before anything is opened, nearest first; where it is, what to do."""

    what: Phrase
    at: str
    do: str


@dataclass(frozen=True, slots=True)
class RoomDark:
    """What goes dark in one room."""

    room: Phrase
    things: Phrase


@dataclass(frozen=True, slots=True, kw_only=True)
class PointSheet(Sheet):
    """One device, as somebody standing before it asks.

    ``doubts`` are what nobody could tell of its supply. ``first`` is what
    matters among all that goes dark with its breaker, ``may_differ`` why more
    may go dark, or less; ``hangs`` is what loses supply when this device
    itself comes out.
    """

    fed: tuple[FeedLine, ...]
    doubts: tuple[str, ...]
    resets: tuple[ResetLine, ...]
    answers: tuple[Fact, ...]
    first: tuple[str, ...]
    dark: tuple[RoomDark, ...]
    may_differ: tuple[str, ...]
    before: BeforeOpening
    ways: tuple[tuple[Phrase, ...], ...]
    hangs: Phrase
    box: Link
    section: ClassVar[str] = "boxes"
