"""The face of a panel as plain data: what stands in each space; and small ones that show some breakers."""

from dataclasses import dataclass
from typing import Literal

from junctionary.sheets.entries import Severity
from junctionary.sheets.links import Link, Phrase, Ref, plain

SpaceState = Literal["feeds", "unused", "blank", "open", "unknown", "unrecorded", "main"]
Side = Literal["left", "right"]
Device = Literal["breaker", "plug-fuse", "cartridge-fuse"]

STATE_WORDS: dict[SpaceState, str] = {
    "unused": "spare: a breaker that feeds nothing",
    "blank": "blank: a filler plate",
    "open": "open: no breaker and no filler plate",
    "unrecorded": "not recorded",
}
"""What is said of a space that feeds nothing, or of which nothing is known."""


@dataclass(frozen=True, slots=True)
class Slot:
    """One space of the face: its number, its row from the top (0 first), its column, its leg.

    ``half`` is ``a`` for the upper half of a space, ``b`` for the lower;
    ``leg`` is empty where nothing tells it.
    """

    number: str
    row: int
    side: Side
    half: Literal["", "a", "b"] = ""
    leg: str = ""


@dataclass(frozen=True, slots=True)
class Handle:
    """What stands in one space or more of the face.

    ``feeds`` is a phrase that links the circuit; ``guards`` is ``GF``, ``AF``
    or ``GF+AF``; ``notes`` are what else is said beside it: its ties, that it is
    kept off. ``is_off`` when its handle is drawn outward.
    """

    ref: Ref
    slots: tuple[Slot, ...]
    state: SpaceState
    rating: str = ""
    feeds: Phrase = ()
    guards: str = ""
    notes: tuple[str, ...] = ()
    tied: tuple[Ref, ...] = ()
    is_off: bool = False
    device: Device = "breaker"
    severity: Severity | None = None

    @property
    def to(self) -> Ref | None:
        """The circuit or source it feeds, where that is known."""
        return next((piece.to for piece in self.feeds if isinstance(piece, Link)), None)

    @property
    def words(self) -> str:
        """What it feeds, or what stands in the space."""
        return plain(self.feeds) or STATE_WORDS.get(self.state, "")


@dataclass(frozen=True, slots=True)
class PanelFace:
    """The face of a panel: so many rows of two spaces, what stands in them, and the main above."""

    ref: Ref
    title: str
    says: str
    rows: int
    main: Handle | None
    handles: tuple[Handle, ...]


@dataclass(frozen=True, slots=True)
class LitFace:
    """A small face with some of its breakers marked."""

    face: PanelFace
    name: str
    lit: frozenset[Ref]
