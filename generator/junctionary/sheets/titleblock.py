"""The title block every sheet carries, and how sheets are numbered.

Numbers follow the national CAD convention: discipline letter, sheet type,
two digits in sequence, and a suffix of one's own. E-0xx general, E-1xx plans,
E-2xx elevations, E-5xx details, E-6xx schedules and diagrams.
"""

from dataclasses import dataclass
from typing import ClassVar

from junctionary.sheets.links import Phrase, Ref

NOT_A_CERTIFICATE = (
    "An aid, not a certificate. The local code, the inspector and a licensed electrician decide."
)

GENERAL = {
    "cover": "E-001", "notes": "E-002", "terms": "E-003", "rules": "E-004",
    "find": "E-005", "make-dead": "E-006", "where-to-look": "E-007", "outage": "E-008",
    "one-more": "E-009", "statement": "E-010",
    "rooms": "E-100", "boxes": "E-500",
    "panels": "E-601", "circuits": "E-602", "splices": "E-603", "loads": "E-604",
    "findings": "E-605", "not-recorded": "E-606", "one-line": "E-607",
    "checklist": "E-608", "history": "E-609",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What stands in the corner of a sheet, as words."""

    house: str
    sheet: str
    number: str
    record_date: str
    digest: str
    known_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """What every sheet has: its title block, what it is about, a heading and one line under it."""

    title: TitleBlock
    ref: Ref
    heading: str
    lead: Phrase = ()
    section: ClassVar[str] = ""

    def anchors(self) -> tuple[Ref, ...]:
        """The things, besides the sheet's own, that can be linked to on this page."""
        return ()


def room_number(position: int) -> str:
    """The plan of a room: ``E-103`` for the third."""
    return f"E-1{position:02d}"


def level_number(position: int) -> str:
    """The plan of a level: ``E-100-1`` for the lowest."""
    return f"{GENERAL['rooms']}-{position}"


def elevation_number(room_position: int, wall: str) -> str:
    """The elevation of a wall, numbered as its room's plan is: ``E-203-north``."""
    return f"E-2{room_position:02d}-{wall}"


def box_number(room_position: int, box: str) -> str:
    """The detail of a box, numbered as its room's plan is: ``E-503-K1``.

    Position 0 is a box whose room is not known.
    """
    return f"E-5{room_position:02d}-{box}"


def panel_number(position: int) -> str:
    """The schedule of a panel: ``E-611`` for the first."""
    return f"E-{610 + position}"


def card_number(position: int) -> str:
    """The directory card of a panel, numbered as its schedule is: ``E-611-card``."""
    return f"{panel_number(position)}-card"


def circuit_number(panel_position: int, spaces: str) -> str:
    """The diagram of a circuit, by panel and space: ``E-621-14``.

    Position 0 is a circuit no panel feeds; its id then takes the place of the space.
    """
    return f"E-{620 + panel_position}-{spaces}"


def note_number(position: int) -> str:
    """A note: ``E-011`` for the first."""
    return f"E-{10 + position:03d}"


def rule_number(rule: str) -> str:
    """The page of a rule."""
    return f"{GENERAL['rules']}-{rule}"
