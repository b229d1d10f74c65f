"""E-608: what the record proves, what is wrong and what is still to record, by the stage of the work."""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.entries import Table
from junctionary.sheets.links import Phrase
from junctionary.sheets.titleblock import Sheet


@dataclass(frozen=True, slots=True)
class StageList:
    """One stage: what it comes before, which checks belong to it, and how each room stands.

    ``rooms`` are those of which something is wrong or still to record, ``clear`` the others.
    """

    before: str
    says: str
    rooms: Table
    clear: Phrase


@dataclass(frozen=True, slots=True, kw_only=True)
class ChecklistSheet(Sheet):
    """The stages in the order of the work."""

    stages: tuple[StageList, ...]
    section: ClassVar[str] = "not-recorded"
