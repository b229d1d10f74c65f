"""Codes of boxes outside the walls of a room's plan: each over against its symbol, or joined to it."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from junctionary.drawings.ink import Lettering, Linked, Mark, Stroke, lettering_px
from junctionary.drawings.placing import Extent, spread
from junctionary.drawings.plan_seats import Seat
from junctionary.sheets.plan import Inches

Side = Literal["top", "right", "bottom", "left"]

OFF_PX = 15.0
"""From a wall to the codes beyond it."""

_LINE_PX = 14.0
_APART_PX = 9.0
_EDGE_IN = 3.0
_FARTHEST_PX = 60.0


@dataclass(frozen=True, slots=True)
class Code:
    """The code of a box, with what stands under it, for one side of the plan."""

    seat: Seat
    lines: tuple[tuple[str, str], ...]
    side: Side

    @property
    def wide_px(self) -> float:
        """Its width."""
        return max(lettering_px(text, kind) for text, kind in self.lines)

    @property
    def tall_px(self) -> float:
        """Its height."""
        return _LINE_PX * len(self.lines)


def side_of(seat: Seat, bounds: tuple[float, float, float, float]) -> Side | None:
    """The side of the plan beyond whose wall a box has its code; None for one that stands within."""
    inward = seat.box.inward
    if inward is None or seat.is_moved:
        return None
    left, top, right, bottom = bounds
    x, y = seat.box.at
    ways: tuple[tuple[Side, Inches, float], ...] = (
        ("top", (0, 1), abs(y - top)),
        ("right", (-1, 0), abs(right - x)),
        ("bottom", (0, -1), abs(bottom - y)),
        ("left", (1, 0), abs(x - left)),
    )
    return next(
        (side for side, (ux, uy), off in ways if off < _EDGE_IN and inward[0] * ux + inward[1] * uy > 0.9),
        None,
    )


def depth_px(codes: Sequence[Code], side: Side, length_px: float) -> float:
    """How far the codes of a side reach from its wall; nothing where it has none."""
    ours = [each for each in codes if each.side == side]
    if not ours:
        return 0.0
    if side in ("left", "right"):
        return OFF_PX + max(each.wide_px for each in ours)
    return OFF_PX + _rows(ours, length_px) * max(each.tall_px for each in ours)


def _rows(ours: Sequence[Code], length_px: float) -> int:
    return 1 if sum(each.wide_px + _APART_PX for each in ours) <= length_px else 2


def beyond(
    codes: Sequence[Code], walls: Extent, field: Extent, swings: Sequence[Extent]
) -> tuple[list[Mark], list[Extent], frozenset[str]]:
    """The codes of every side as marks, the room they take, and the boxes whose codes these are.

    ``walls`` is the plan's extent, ``field`` what the codes may reach into;
    ``swings`` are what open doors take up beyond the walls. A code that would
    stand far from its box is left out, to be set within.
    """
    marks: list[Mark] = []
    room: list[Extent] = []
    done: set[str] = set()
    for side in ("top", "right", "bottom", "left"):
        ours = [each for each in codes if each.side == side]
        placed = _set(ours, side, walls, field, swings)
        near = [each for each, at in placed if _off(each, at) <= _FARTHEST_PX]
        for each, at in placed if len(near) == len(ours) else _set(near, side, walls, field, swings):
            marks += _written(each, at, walls)
            room.append(at)
            done.add(each.seat.box.name)
    return marks, room, frozenset(done)


def _off(code: Code, at: Extent) -> float:
    """How far along its side a code stands from its box."""
    if code.side in ("top", "bottom"):
        return abs((at[0] + at[2]) / 2 - code.seat.x)
    return abs((at[1] + at[3]) / 2 - code.seat.y)


def _set(
    ours: list[Code], side: Side, walls: Extent, field: Extent, swings: Sequence[Extent]
) -> list[tuple[Code, Extent]]:
    """Where each code of one side stands, in one row, or in two where one is too short."""
    if not ours:
        return []
    flat = side in ("top", "bottom")
    ours = sorted(ours, key=lambda each: each.seat.x if flat else each.seat.y)
    low, high = (field[0], field[2]) if flat else (field[1], field[3])
    rows = _rows(ours, high - low) if flat else 1
    done: list[tuple[Code, Extent]] = []
    for row in range(rows):
        line = ours[row::rows]
        sizes = [each.wide_px + _APART_PX if flat else each.tall_px + 3 for each in line]
        wanted = [each.seat.x if flat else each.seat.y for each in line]
        deep = OFF_PX + row * max(each.tall_px for each in ours)
        barred = [span for each in swings if (span := _barred(each, side, walls, deep))]
        for each, middle in zip(line, _spread(wanted, sizes, low, high, barred), strict=True):
            done.append((each, _at(each, side, walls, middle, deep)))
    return done


def _barred(swing: Extent, side: Side, walls: Extent, deep: float) -> tuple[float, float] | None:
    """The stretch of a side beyond which an open door stands as far out as codes do."""
    left, top, right, bottom = walls
    far = 30.0
    reaches = {
        "top": swing[1] < top - 2 and swing[3] > top - deep - far,
        "bottom": swing[3] > bottom + 2 and swing[1] < bottom + deep + far,
        "left": swing[0] < left - 2,
        "right": swing[2] > right + 2,
    }[side]
    if not reaches:
        return None
    return (swing[0], swing[2]) if side in ("top", "bottom") else (swing[1], swing[3])


def _spread(
    wanted: Sequence[float],
    sizes: Sequence[float],
    low: float,
    high: float,
    barred: Sequence[tuple[float, float]],
) -> list[float]:
    """Middles in a row that keeps off what is barred: each goes to the free stretch nearest to it."""
    free: list[tuple[float, float]] = []
    at = low
    for start, end in sorted(barred):
        if start - at > 12:
            free.append((at, start - 3))
        at = max(at, end + 3)
    if high - at > 12:
        free.append((at, high))
    free = [each for each in free if each[1] - each[0] >= max(sizes)] or [(low, high)]
    held: list[list[int]] = [[] for _ in free]
    for index, want in enumerate(wanted):
        room = [
            max(start + sizes[index] / 2 - want, want - (end - sizes[index] / 2), 0.0)
            + 1000 * (sum(sizes[each] for each in held[number]) + sizes[index] > end - start)
            for number, (start, end) in enumerate(free)
        ]
        held[room.index(min(room))].append(index)
    middles = [0.0] * len(wanted)
    for (start, end), ours in zip(free, held, strict=True):
        for index, middle in zip(
            ours, spread([wanted[i] for i in ours], [sizes[i] for i in ours], start, end), strict=True
        ):
            middles[index] = middle
    return middles


def _at(code: Code, side: Side, walls: Extent, middle: float, deep: float) -> Extent:
    wide, tall = code.wide_px, code.tall_px
    left, top, right, bottom = walls
    if side == "top":
        return (middle - wide / 2, top - deep - tall, middle + wide / 2, top - deep)
    if side == "bottom":
        return (middle - wide / 2, bottom + deep, middle + wide / 2, bottom + deep + tall)
    if side == "left":
        return (left - deep - wide, middle - tall / 2, left - deep, middle + tall / 2)
    return (right + deep, middle - tall / 2, right + deep + wide, middle + tall / 2)


def _written(code: Code, at: Extent, walls: Extent) -> list[Mark]:
    seat, side = code.seat, code.side
    anchor = {"top": "middle", "bottom": "middle", "left": "end", "right": "start"}[side]
    x = {"start": at[0], "middle": (at[0] + at[2]) / 2, "end": at[2]}[anchor]
    words: list[Mark] = []
    for index, (text, kind) in enumerate(code.lines):
        words.append(Lettering(x, at[1] + index * _LINE_PX + 10.6, text, f"{kind} halo", anchor))  # type: ignore[arg-type]
    ref = seat.box.ref
    marks: list[Mark] = [Linked(ref, f"{ref.kind} {seat.box.name}", tuple(words))]
    middle = ((at[0] + at[2]) / 2, (at[1] + at[3]) / 2)
    if _off(code, at) > 3:
        left, top, right, bottom = walls
        d = {
            "top": f"M{seat.x:.1f} {top - 3:.1f}V{top - 6:.1f}L{middle[0]:.1f} {at[3] + 1:.1f}",
            "bottom": f"M{seat.x:.1f} {bottom + 3:.1f}V{bottom + 6:.1f}L{middle[0]:.1f} {at[1] - 1:.1f}",
            "left": f"M{left - 3:.1f} {seat.y:.1f}H{left - 5:.1f}L{at[2] + 3:.1f} {middle[1]:.1f}",
            "right": f"M{right + 3:.1f} {seat.y:.1f}H{right + 5:.1f}L{at[0] - 3:.1f} {middle[1]:.1f}",
        }[side]
        marks.append(Stroke(d, "hair"))
    return marks
