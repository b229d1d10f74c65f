"""E-006 to E-009: what is looked up by answering a few questions, each with its list for paper."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.entries import Fact, Table, Working
from junctionary.sheets.links import Link, Phrase
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True)
class Choices:
    """Things to choose from under one heading: each its value in the address and its words."""

    heading: str
    choices: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MakeDeadSheet(Sheet):
    """Choose boxes, tick off what must be off, then test. ``table`` has the list of every box, for paper."""

    boxes: tuple[Choices, ...]
    test: tuple[str, ...]
    table: Table
    section: ClassVar[str] = "make-dead"


@dataclass(frozen=True, slots=True, kw_only=True)
class WhereToLookSheet(Sheet):
    """Mark what is dead and what works; the answer is where to look. ``table`` has the resets of every point.

    ``signs`` stop any search. ``readings`` are what a meter may show. ``trips`` is what to do when a
    breaker trips instead, and ``on_it`` what is on each.
    """

    signs: tuple[str, ...]
    starts: tuple[Choices, ...]
    readings: tuple[tuple[str, str], ...]
    table: Table
    trips: tuple[str, ...]
    on_it: Table
    section: ClassVar[str] = "where-to-look"


@dataclass(frozen=True, slots=True, kw_only=True)
class OneMoreSheet(Sheet):
    """Choose a point and what is to be added; the answer is what is free. ``table`` has every box, for paper.

    ``usual`` and ``recorded`` pair watts, with an h where for hours, with the words for a load.
    """

    points: tuple[Choices, ...]
    usual: tuple[tuple[str, str], ...]
    recorded: tuple[tuple[str, str], ...]
    heeded: tuple[str, ...]
    table: Table
    section: ClassVar[str] = "one-more"


@dataclass(frozen=True, slots=True)
class SourceCard:
    """One source: what is known of it, what it can keep alive, what to switch and in which order.

    ``cannot`` says what of it is more than the source can carry, and ``load`` is that worked out.
    """

    name: Link
    facts: tuple[Fact, ...]
    warning: str
    keeps: tuple[Phrase, ...]
    over: tuple[Phrase, ...]
    back: tuple[Phrase, ...]
    cannot: tuple[str, ...] = ()
    load: tuple[Working, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class OutageSheet(Sheet):
    """The outage card: ``stays_live`` with the main off, ``all_dead`` what to switch off for all."""

    stays_live: tuple[Phrase, ...]
    all_dead: tuple[Phrase, ...]
    cards: tuple[SourceCard, ...]
    cautions: tuple[str, ...]
    section: ClassVar[str] = "outage"
