"""Puts labels beside what they name so that none lies on another, with a leader where one must stand off.

Deterministic: labels are placed in the order given, each in the nearest free
place, the way it would rather lie first. What finds no place within the
field stands in rows under it, and its leader says whose it is.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import TypeAlias

from junctionary.drawings.ink import Lettering, Linked, Mark, lettering_px, line, size_px
from junctionary.sheets.links import Ref

Extent: TypeAlias = tuple[float, float, float, float]
"""Left, top, right, bottom, in px."""

_RINGS_PX = (0.0, 5.0, 12.0, 20.0, 30.0, 42.0, 56.0, 74.0, 96.0, 124.0)
_LEADER_FROM_PX = 8.0
_SHY_PX = 20.0
"""How far a label goes out of the way of a line."""

_TURNS = 32
_AROUND = tuple(
    (turn, math.cos(turn), math.sin(turn)) for turn in (2 * math.pi * i / _TURNS for i in range(_TURNS))
)
"""The ways a label may lie from what it names: the angle, and x and y of a step that way."""


@dataclass(frozen=True, slots=True)
class Label:
    """Lines of words with their kinds, about a point kept clear by ``clear_px``.

    ``rather`` is the direction it would rather lie in; ``on`` when it would
    rather lie on the point itself. ``may_go`` when it is left out where there
    is no room near by: its words stand in a list too.
    """

    lines: tuple[tuple[str, str], ...]
    x: float
    y: float
    clear_px: float
    rather: tuple[float, float] = (1.0, 0.0)
    to: Ref | None = None
    says: str = ""
    may_go: bool = False
    on: bool = False

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of its lines."""
        return (
            max(lettering_px(text, kind) for text, kind in self.lines),
            sum(_line_px(kind) for _, kind in self.lines),
        )


def _line_px(kind: str) -> float:
    return size_px(kind) * 1.1


def placed(
    labels: Sequence[Label],
    taken: Sequence[Extent],
    field: Extent,
    shy_of: Sequence[Extent] = (),
    lines: Sequence[Extent] = (),
) -> tuple[tuple[Mark, ...], float, list[Extent]]:
    """The labels as marks, how far down the field now reaches, and the room they and their leaders take.

    No label lies on what is taken. What they are ``shy_of``, walls, they lie
    on only where there is no other place; on other ``lines`` only where there
    is none close by.
    """
    occupied = list(taken)
    reach = _RINGS_PX[-1] + 30
    marks: list[Mark] = []
    left, bottom = field[0], field[3]
    row_bottom = bottom
    for label in labels:
        near, nearest = _reached(label, reach), _reached(label, _SHY_PX + 20)
        nearby = met(near, occupied)
        walls = [*nearby, *met(near, shy_of)]
        clear = [*walls, *met(nearest, lines)]
        at = _place(label, nearby, walls, clear, field)
        if at is None and label.may_go:
            continue
        if at is None:
            width, height = label.size
            if left + width > field[2]:
                left, bottom = field[0], row_bottom
            at = (left, bottom + 3, left + width, bottom + 3 + height)
            left += width + 10
            row_bottom = max(row_bottom, at[3] + 3)
        (x1, y1), (x2, y2) = _ends(label, at)
        if math.hypot(x2 - x1, y2 - y1) >= _LEADER_FROM_PX + 3:
            occupied += _way((x1, y1), (x2, y2))
            marks.append(line(x1, y1, x2, y2, "leader"))
        # A little more than it takes, so that it does not run into its neighbours.
        occupied.append((at[0] - 2, at[1], at[2] + 2, at[3]))
        marks += _written(label, at)
    return tuple(marks), row_bottom, occupied[len(taken) :]


def _reached(label: Label, reach_px: float) -> Extent:
    """All the room in which a label may come to lie."""
    width, height = label.size
    off = label.clear_px + reach_px
    return (label.x - off - width, label.y - off - height, label.x + off + width, label.y + off + height)


def _place(
    label: Label,
    occupied: Sequence[Extent],
    walls: Sequence[Extent],
    clear: Sequence[Extent],
    field: Extent,
) -> Extent | None:
    """The best free place; first with a leader that crosses nothing, then with any leader."""
    farthest = _RINGS_PX[2] if label.may_go else _RINGS_PX[-1]
    ways = (
        (clear, walls, min(_SHY_PX, farthest)),
        (walls, walls, farthest),
        (walls, occupied, farthest),
        (walls, (), farthest),
        (occupied, occupied, farthest),
        (occupied, (), farthest),
    )
    # What may be left out is rather left out than set on a wall.
    for all_avoided, uncrossed, limit in ways[:2] if label.may_go else ways:
        for at, stand_off in _places(label):
            if stand_off > limit:
                break
            if not inside(at, field) or is_met(at, all_avoided):
                continue
            if uncrossed and (label.may_go or stand_off >= _LEADER_FROM_PX):
                way = _way(*_ends(label, at))
                if any(not _about(each, label) for step in way for each in met(step, uncrossed)):
                    continue
            return at
    return None


def _way(start: tuple[float, float], end: tuple[float, float]) -> tuple[Extent, ...]:
    """The room of a leader, less its last bit, where it meets its label."""
    length = math.hypot(end[0] - start[0], end[1] - start[1])
    part = max(length - 3, 0.0) / (length or 1.0)
    short = (start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part)
    return line_room(start, short, 0.5)


def line_room(start: tuple[float, float], end: tuple[float, float], pad_px: float) -> tuple[Extent, ...]:
    """The room a straight line takes, as a row of small pieces; one piece where it is level or upright."""
    (x1, y1), (x2, y2) = start, end
    count = 1 if x1 == x2 or y1 == y2 else max(1, int(math.hypot(x2 - x1, y2 - y1) // 6))
    points = [(x1 + (x2 - x1) * i / count, y1 + (y2 - y1) * i / count) for i in range(count + 1)]
    return tuple(
        (min(ax, bx) - pad_px, min(ay, by) - pad_px, max(ax, bx) + pad_px, max(ay, by) + pad_px)
        for (ax, ay), (bx, by) in pairwise(points)
    )


def _places(label: Label) -> Iterator[tuple[Extent, float]]:
    """Where a label may lie, best first: ring by ring outward, by how near to the way it would rather lie."""
    width, height = label.size
    if label.on:
        x, y = label.x - width / 2, label.y - height / 2
        yield (x, y, x + width, y + height), 0.0
    ways = _ways(label.rather)
    for ring in _RINGS_PX:
        off = label.clear_px + 3 + ring
        for x, y, out, down in ways:
            # The near edge of the label, not its middle, keeps the distance.
            middle_x = label.x + x * off + width / 2 * out
            middle_y = label.y + y * off + height / 2 * down
            yield (
                (middle_x - width / 2, middle_y - height / 2, middle_x + width / 2, middle_y + height / 2),
                ring,
            )


@cache
def _ways(rather: tuple[float, float]) -> tuple[tuple[float, float, float, float], ...]:
    """The ways a label may lie, nearest to this one first, and how much of its half sizes goes that way."""
    rx, ry = rather
    return tuple(
        (x, y, _sign(x) * min(1.0, abs(x) * 1.42), _sign(y) * min(1.0, abs(y) * 1.42))
        for _, x, y in sorted(_AROUND, key=lambda way: (-round(way[1] * rx + way[2] * ry, 6), way[0]))
    )


def _sign(value: float) -> float:
    return -1.0 if value < -1e-9 else 1.0 if value > 1e-9 else 0.0


def inside(at: Extent, field: Extent) -> bool:
    """Whether an extent lies in a field."""
    return at[0] >= field[0] and at[1] >= field[1] and at[2] <= field[2] and at[3] <= field[3]


def met(extent: Extent, others: Sequence[Extent]) -> list[Extent]:
    """Those of the others that have room in common with an extent."""
    left, top, right, bottom = extent
    return [
        each for each in others if left < each[2] and each[0] < right and top < each[3] and each[1] < bottom
    ]


def is_met(extent: Extent, others: Sequence[Extent]) -> bool:
    """Whether any of the others has: asked a million times, so it is told without a call for each."""
    left, top, right, bottom = extent
    for x1, y1, x2, y2 in others:  # noqa: SIM110
        if left < x2 and x1 < right and top < y2 and y1 < bottom:
            return True
    return False


def meet(a: Extent, b: Extent) -> bool:
    """Whether two extents have room in common."""
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _about(extent: Extent, label: Label) -> bool:
    """Whether something taken is the very thing a label names: its leader begins there."""
    return extent[0] <= label.x <= extent[2] and extent[1] <= label.y <= extent[3]


def _ends(label: Label, at: Extent) -> tuple[tuple[float, float], tuple[float, float]]:
    """From the edge of what is named to the nearest point of the label."""
    to = (min(max(label.x, at[0]), at[2]), min(max(label.y, at[1]), at[3]))
    away = math.hypot(to[0] - label.x, to[1] - label.y) or 1.0
    part = min(label.clear_px / away, 1.0)
    return (label.x + (to[0] - label.x) * part, label.y + (to[1] - label.y) * part), to


def _written(label: Label, at: Extent) -> tuple[Mark, ...]:
    words: list[Mark] = []
    y = at[1]
    for text, kind in label.lines:
        size = size_px(kind)
        words.append(Lettering(at[0], y + 0.84 * size, text, f"{kind} halo"))
        y += _line_px(kind)
    return (Linked(label.to, label.says, tuple(words)),) if label.to is not None else tuple(words)


def spread(wanted: Sequence[float], widths: Sequence[float], low: float, high: float) -> list[float]:
    """Middles of items in one row, each as near to where it is wanted as the others allow, none overlapping.

    ``wanted`` ascends. Where all of them are wider than the row they run past its end.
    """
    at: list[float] = []
    edge = low
    for want, width in zip(wanted, widths, strict=True):
        at.append(max(want, edge + width / 2))
        edge = at[-1] + width / 2
    edge = max(high, sum(widths) + low)
    for index in range(len(at) - 1, -1, -1):
        at[index] = min(at[index], edge - widths[index] / 2)
        edge = at[index] - widths[index] / 2
    return at
