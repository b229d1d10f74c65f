"""What several sheets share: facts, findings, what is missing, sums written out, the record behind a page."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from junctionary.sheets.links import Phrase, Ref

Severity = Literal["hazard", "defect", "advice", "unrecorded"]
SEVERITIES: tuple[Severity, ...] = ("hazard", "defect", "advice", "unrecorded")
SEVERITY_MEANS: dict[Severity, str] = {
    "hazard": "could hurt somebody: before it is energised again",
    "defect": "short of the rule cited",
    "advice": "good practice",
    "unrecorded": "cannot be judged: a fact is missing",
}


@dataclass(frozen=True, slots=True)
class Fact:
    """One thing known, with its name."""

    what: str
    value: Phrase


@dataclass(frozen=True, slots=True)
class FindingEntry:
    """A finding in the five parts of its message, and where it stands.

    ``place`` is ``file:line:column`` in the record; ``about`` links the things it concerns;
    ``accepted`` says who lets it stand, when and why.
    """

    ref: Ref
    severity: Severity
    rule: Ref
    says: str
    about: Phrase
    found: str
    allowed: str
    because: str
    do: str
    source: str
    place: str
    accepted: str = ""


@dataclass(frozen=True, slots=True)
class MissingEntry:
    """A fact the record does not hold, and what could be told with it.

    ``names`` are what the breakers and rooms that ``what`` names by id are called; empty once that is said.
    """

    what: str
    about: Phrase
    settles: Phrase
    names: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class WorkingLine:
    """One line of a sum: what, how it is reckoned, its figure as printed, and the clause it rests on.

    ``within``: it is in the figure of a line below, and not added by itself.
    """

    what: str
    how: str
    figure: str
    is_sum: bool = False
    source: str = ""
    within: bool = False


@dataclass(frozen=True, slots=True)
class Working:
    """A figure with its sum written out and what it rests on."""

    title: str
    unit: str
    lines: tuple[WorkingLine, ...]
    says: str
    source: str


@dataclass(frozen=True, slots=True)
class Excerpt:
    """The lines of the record behind a page."""

    file: str
    first_line: int
    text: str


@dataclass(frozen=True, slots=True)
class Row:
    """One row of a table; ``ref`` is what can be linked to there."""

    cells: tuple[Phrase, ...]
    ref: Ref | None = None


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under heads; the first column names the row. ``figures`` are the columns that hold numbers."""

    heads: tuple[str, ...]
    rows: tuple[Row, ...]
    figures: tuple[int, ...] = ()
    caption: str = ""

    def refs(self) -> tuple[Ref, ...]:
        """What can be linked to in this table."""
        return tuple(row.ref for row in self.rows if row.ref is not None)
