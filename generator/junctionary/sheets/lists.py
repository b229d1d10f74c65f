"""Schedules of the whole house: panels, circuits, rooms, boxes, splices; findings; what is missing."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.entries import FindingEntry, MissingEntry, Severity, Table
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True)
class Group:
    """Rows that belong together, under their own heading."""

    heading: str
    says: Phrase
    table: Table


@dataclass(frozen=True, slots=True, kw_only=True)
class ListSheet(Sheet):
    """All of one kind; ``ref.id`` says which: panels, circuits, rooms, boxes."""

    groups: tuple[Group, ...]

    def anchors(self) -> tuple[Ref, ...]:
        """What only a list shows: the rows that carry an anchor of their own."""
        return tuple(ref for group in self.groups for ref in group.table.refs())


@dataclass(frozen=True, slots=True)
class SpliceLine:
    """One joint of a box: what meets in it, in what connector."""

    joint: Link
    joins: str
    connector: str


@dataclass(frozen=True, slots=True)
class SpliceBox:
    """A box with its joints; ``reached`` is empty where nothing is recorded of that."""

    box: Link
    where: Phrase
    reached: str
    circuits: Phrase
    joints: tuple[SpliceLine, ...]


@dataclass(frozen=True, slots=True)
class SpliceGroup:
    """Boxes whose joints are reached alike."""

    heading: str
    says: str
    boxes: tuple[SpliceBox, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SplicesSheet(Sheet):
    """Every joint in the house; those buried or hard to reach come first."""

    before: BeforeOpening
    groups: tuple[SpliceGroup, ...]
    section: ClassVar[str] = "splices"


@dataclass(frozen=True, slots=True)
class FindingGroup:
    """The findings of one severity."""

    severity: Severity
    findings: tuple[FindingEntry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingsSheet(Sheet):
    """What was found, hazards first; then what today's edition would ask of older work besides."""

    groups: tuple[FindingGroup, ...]
    today: tuple[FindingEntry, ...]
    edition: str
    section: ClassVar[str] = "findings"

    def anchors(self) -> tuple[Ref, ...]:
        """Every finding."""
        found = tuple(finding.ref for group in self.groups for finding in group.findings)
        return (*found, *(each.ref for each in self.today))


@dataclass(frozen=True, slots=True)
class Judged:
    """How much can be judged: those of which a check cannot tell, then those of which all can be judged."""

    lacking: Table
    whole: Phrase


@dataclass(frozen=True, slots=True, kw_only=True)
class NotRecordedSheet(Sheet):
    """What the record does not hold, most useful first; then what can be judged of each room and circuit."""

    missing: tuple[MissingEntry, ...]
    rooms: Judged
    circuits: Judged
    section: ClassVar[str] = "not-recorded"
