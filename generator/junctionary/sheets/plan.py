"""E-1xx: a plan, of a room or of a level: what stands where, in inches of the house's frame.

x runs east and y south, as the record has it; all lengths are in inches.
"""

from dataclasses import dataclass
from typing import ClassVar, Literal, TypeAlias

from junctionary.sheets.circuit import Symbol
from junctionary.sheets.entries import Table
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.titleblock import Sheet

Inches: TypeAlias = tuple[float, float]


@dataclass(frozen=True, slots=True)
class PlanRoom:
    """A room's outline; ``key`` is its number in the list beside a level's plan.

    ``unbuilt`` are the stretches of a garden's outline along which no room stands.
    """

    ref: Ref
    name: str
    corners: tuple[Inches, ...]
    key: str = ""
    unbuilt: tuple[tuple[Inches, Inches], ...] = ()


@dataclass(frozen=True, slots=True)
class PlanLeaf:
    """A door's leaf: where it hangs, and its free edge open, square to the wall, and shut."""

    hinge: Inches
    open: Inches
    shut: Inches


@dataclass(frozen=True, slots=True)
class PlanGap:
    """What breaks a wall: a door, an opening, a window.

    A door has ``leaves`` where its hinges and its swing are recorded; ``slides`` where it has no hinges.
    """

    what: Literal["door", "opening", "window"]
    start: Inches
    end: Inches
    leaves: tuple[PlanLeaf, ...] = ()
    slides: bool = False

    @property
    def middle(self) -> Inches:
        """Half way across it."""
        return ((self.start[0] + self.end[0]) / 2, (self.start[1] + self.end[1]) / 2)


@dataclass(frozen=True, slots=True)
class PlanFixture:
    """What stands along a wall or free; ``assumed`` where its depth is a usual one and not recorded."""

    what: str
    corners: tuple[Inches, ...]
    assumed: bool


@dataclass(frozen=True, slots=True)
class PlanBox:
    """A box, or a panel. ``inward`` points from its wall into the room; None on a ceiling or floor.

    ``symbols`` are its devices; ``notes`` what stands beside the symbol:
    ``GF``, ``WP``, its height; ``circuits`` the numbers of its circuits.
    """

    ref: Ref
    name: str
    symbols: tuple[Symbol, ...]
    at: Inches
    inward: Inches | None
    circuits: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PlanWire:
    """A run between two boxes of the plan, by the number of its circuit's line."""

    run: Ref
    start: str
    end: str
    pattern: int


@dataclass(frozen=True, slots=True)
class HomeRun:
    """A run from a box of the plan to a panel.

    ``panel`` names it with its space, ``main 6``; ``space`` is the number of
    its circuit, ``6``; ``towards`` is where the panel stands.
    """

    run: Ref
    box: str
    panel: str
    space: str
    towards: Inches | None
    pattern: int


@dataclass(frozen=True, slots=True)
class PlanCircuit:
    """A circuit of the plan: its number, the pattern of its line, and what it is."""

    number: str
    pattern: int
    says: Phrase


@dataclass(frozen=True, slots=True)
class PlanSide:
    """The length of one side of an outline, in words."""

    start: Inches
    end: Inches
    says: str


@dataclass(frozen=True, slots=True)
class PlanFar:
    """A stretch of wall or counter too far from a receptacle, by its corners, and its length in words.

    It runs with the room on its right. ``limit`` is how far is too far, in the
    house's units and then the code's own. ``only_today``: asked for by today's
    edition alone.
    """

    corners: tuple[Inches, ...]
    says: str
    is_counter: bool
    only_today: bool
    limit: str

    @property
    def kind(self) -> str:
        """What the line says, for the key."""
        what = "counter" if self.is_counter else "wall"
        asked = ", asked by today’s edition" if self.only_today else ""
        return f"{what} more than {self.limit} from a receptacle{asked}"


@dataclass(frozen=True, slots=True)
class Plan:
    """What is drawn. ``north_deg`` is how far north lies clockwise from the plan's up; None: not recorded.

    ``controls`` pairs a box of a switch with a box of what it controls;
    ``signs`` are the symbols on it and what each means, for its key.
    """

    id: str
    title: str
    says: str
    rooms: tuple[PlanRoom, ...]
    gaps: tuple[PlanGap, ...] = ()
    fixtures: tuple[PlanFixture, ...] = ()
    boxes: tuple[PlanBox, ...] = ()
    wires: tuple[PlanWire, ...] = ()
    home_runs: tuple[HomeRun, ...] = ()
    controls: tuple[tuple[str, str], ...] = ()
    circuits: tuple[PlanCircuit, ...] = ()
    sides: tuple[PlanSide, ...] = ()
    far: tuple[PlanFar, ...] = ()
    north_deg: float | None = None
    scale: tuple[tuple[float, str], ...] = ()
    unplaced: tuple[Phrase, ...] = ()
    signs: tuple[tuple[Symbol, str], ...] = ()

    @property
    def far_kinds(self) -> tuple[str, ...]:
        """What the heavy dashed lines say, each thing once."""
        return tuple(dict.fromkeys(each.kind for each in self.far))


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelSheet(Sheet):
    """A level: a plan for each building on it, its rooms, and the rooms that have no outline."""

    plans: tuple[Plan, ...]
    rooms: Table
    not_drawn: Table
    section: ClassVar[str] = "rooms"

    @property
    def signs(self) -> tuple[tuple[Symbol, str], ...]:
        """The symbols of all its plans, each once."""
        return tuple(dict.fromkeys(each for plan in self.plans for each in plan.signs))
