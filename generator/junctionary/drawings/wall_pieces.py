"""A wall that is long: cut into pieces, and broken where a long stretch of it holds nothing.

A ruler lays the wall flat: inches along it become inches of drawing, the
same but for what is broken out, so that all that is drawn keeps its order.
"""

from dataclasses import dataclass
from itertools import pairwise

from junctionary.drawings.ink import Lettering, Mark, Stroke, rect
from junctionary.drawings.lettering import width_px
from junctionary.drawings.placing import Extent
from junctionary.sheets.elevation import Elevation

_EMPTY_IN = 150.0
"""A stretch with nothing on it, longer than this, is broken out."""

_KEPT_IN = 24.0
"""How much of it is still drawn at each side of the break."""

_BREAK_IN = 36.0
"""How wide the break itself is drawn."""

_SAID = ("left out:", "no box")


@dataclass(frozen=True, slots=True)
class Ruler:
    """From inches along a wall to inches of its drawing. ``cuts`` are what is broken out, from the left."""

    wall: float
    cuts: tuple[tuple[float, float], ...] = ()

    def flat(self, along: float) -> float:
        """Where a distance along the wall lies on the drawing."""
        off = 0.0
        for start, end in self.cuts:
            if along <= start:
                break
            done = min(1.0, (along - start) / (end - start))
            off += (end - start - _BREAK_IN) * done
        return along - off

    @property
    def length(self) -> float:
        """The length of the drawing."""
        return self.flat(self.wall)


def ruler_of(elevation: Elevation) -> Ruler:
    """The wall with its empty stretches broken out; one that is empty from end to end is left whole."""
    held = [each.at[0] for each in elevation.boxes]
    held += [x for run in elevation.runs for x, _ in run.points]
    held += [x for each in elevation.things for x in (each.left, each.left + each.width)]
    marks = sorted({0.0, elevation.length, *(x for x in held if 0 < x < elevation.length)})
    covered = [(each.left, each.left + each.width) for each in elevation.things]
    cuts = tuple(
        (start + _KEPT_IN, end - _KEPT_IN)
        for start, end in pairwise(marks)
        if end - start > _EMPTY_IN and not any(a <= start and end <= b for a, b in covered)
    )
    return Ruler(elevation.length, cuts if held else ())


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of the drawing on the field: where it starts and ends, and how inches become px."""

    ruler: Ruler
    start: float
    end: float
    left_px: float
    floor_px: float
    scale: float

    def x(self, along: float) -> float:
        """Px from the left of the field, of a distance along the wall."""
        return self.left_px + (self.ruler.flat(along) - self.start) * self.scale

    def y(self, up: float) -> float:
        """Px from the top of the field, of a height."""
        return self.floor_px - up * self.scale

    def holds(self, along: float) -> bool:
        """Whether a distance along the wall lies in this piece."""
        at = self.ruler.flat(along)
        return self.start - 0.01 <= at < self.end - 0.01 or (
            abs(at - self.end) < 0.01 and along == self.ruler.wall
        )


def breaks(piece: Piece, frame: Extent) -> tuple[list[Mark], list[Extent]]:
    """The break lines of what is broken out in a piece, with words that say so, and the room they take."""
    marks: list[Mark] = []
    room: list[Extent] = []
    for cut in piece.ruler.cuts:
        left, right = max(piece.x(cut[0]), frame[0]), min(piece.x(cut[1]), frame[2])
        if right - left < 4:
            continue
        top, floor = frame[1], frame[3]
        marks.append(rect(left, top - 3, right - left, floor - top + 6, "blank"))
        marks += [_zigzag(x, top - 6, floor + 6) for x in (left, right)]
        room.append((left - 5, top, right + 5, floor))
        if right - left > max(width_px(each, 12) for each in _SAID) + 4:
            y = top + (floor - top) / 4
            marks += [
                Lettering((left + right) / 2, y + 14 * i, each, "note", "middle")
                for i, each in enumerate(_SAID)
            ]
    return marks, room


def _zigzag(x: float, top: float, floor: float) -> Stroke:
    """A break line: upright, with a kink at its middle."""
    y = (top + floor) / 2
    points = ((0.0, y - 9), (-5.0, y - 3), (5.0, y + 3), (0.0, y + 9), (0.0, floor))
    return Stroke(f"M{x:.1f} {top:.1f}" + "".join(f"L{x + dx:.1f} {at:.1f}" for dx, at in points), "hair")
