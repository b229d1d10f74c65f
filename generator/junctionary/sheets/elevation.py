"""E-2xx: a wall as it is faced: boxes, routes, what stands against it, and where not to drill.

All lengths are in inches, along from the wall's left end and up from the floor.
"""

from dataclasses import dataclass
from typing import TypeAlias

from junctionary.sheets.circuit import Symbol
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.photo import Photo

OnWall: TypeAlias = tuple[float, float]


@dataclass(frozen=True, slots=True)
class WallBox:
    """A box; ``along`` and ``up`` in words. ``behind`` when it opens on the other face of the wall."""

    ref: Ref
    name: str
    symbol: Symbol
    gangs: int
    at: OnWall
    along: str
    up: str
    behind: bool = False


@dataclass(frozen=True, slots=True)
class WallRun:
    """A part of a run, and its cable, ``12/2``; ``untold`` when nothing tells which way it leaves its box."""

    ref: Ref
    cable: str
    points: tuple[OnWall, ...]
    assumed: bool
    plates: bool = False
    behind: bool = False
    untold: bool = False


@dataclass(frozen=True, slots=True)
class WallThing:
    """What breaks the wall or stands against it; ``assumed`` where a height is a usual one, not recorded.

    ``hinged`` is the side a door hangs on, ``left``, ``right`` or ``both``; empty where it is not told.
    """

    what: str
    left: float
    width: float
    up: float
    height: float
    assumed: bool
    hinged: str = ""

    @property
    def breaks_wall(self) -> bool:
        """Whether it is a hole in the wall."""
        return self.what in ("door", "opening", "window")


@dataclass(frozen=True, slots=True)
class Caution:
    """A strip of the wall, left, foot, width, height, in which cables are recorded or to be expected."""

    left: float
    foot: float
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Elevation:
    """One wall.

    ``height`` is a usual one where ``height_assumed``; ``ends`` name its two
    corners; ``astray`` are boxes told to be on it at no place that can be drawn.
    """

    id: str
    number: str
    title: str
    says: str
    length: float
    height: float
    height_assumed: bool
    ends: tuple[str, str]
    length_words: str
    height_words: str
    boxes: tuple[WallBox, ...] = ()
    runs: tuple[WallRun, ...] = ()
    things: tuple[WallThing, ...] = ()
    cautions: tuple[Caution, ...] = ()
    notes: tuple[Phrase, ...] = ()
    photos: tuple[Photo, ...] = ()
    astray: tuple[str, ...] = ()

    @property
    def is_bare(self) -> bool:
        """Whether nothing at all is recorded of this wall, on either face."""
        return not (self.boxes or self.runs or self.things or self.photos or self.astray)
