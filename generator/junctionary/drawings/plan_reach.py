"""What no receptacle reaches, on a plan: a heavy dashed line along the foot of the wall, with its length."""

import math
from itertools import pairwise

from junctionary.drawings.ink import Mark, Stroke, line
from junctionary.drawings.placing import Extent, Label, line_room
from junctionary.drawings.plan_walls import ToPx
from junctionary.sheets.plan import PlanFar

_OFF_PX = 7.0
_TICK_PX = 5.0

_Px = tuple[float, float]


def far_stretch(far: PlanFar, px: ToPx) -> tuple[tuple[Mark, ...], Label, tuple[Extent, ...]]:
    """The line, just inside the room, with a tick at each end; its length as a label; the room it takes."""
    foot = [px(each) for each in far.corners]
    points = _inside(foot)
    d = "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
    ticks = (_tick(points[0], points[1]), _tick(points[-1], points[-2]))
    room = tuple(each for a, b in pairwise(points) for each in line_room(a, b, 3))
    (x, y), (nx, ny) = _middle(points)
    return (Stroke(d, "far"), *ticks), Label(((far.says, "tag"),), x, y, 4, (nx, ny)), room


def _inside(foot: list[_Px]) -> list[_Px]:
    """The same line moved off the wall into the room, which lies to its right; corners are mitred."""
    ways = [_normal(a, b) for a, b in pairwise(foot)]
    moved = []
    for index, (x, y) in enumerate(foot):
        before, after = ways[max(index - 1, 0)], ways[min(index, len(ways) - 1)]
        nx, ny = before if before == after else (before[0] + after[0], before[1] + after[1])
        # Two sides that double back on one another leave no mitre.
        scale = 2 / (nx * nx + ny * ny) if before != after and nx * nx + ny * ny > 0.1 else 1.0
        moved.append((x + nx * scale * _OFF_PX, y + ny * scale * _OFF_PX))
    return moved


def _normal(a: _Px, b: _Px) -> _Px:
    """Square to a side, a px long, into the room."""
    length = math.dist(a, b) or 1.0
    return (-(b[1] - a[1]) / length, (b[0] - a[0]) / length)


def _tick(at: _Px, towards: _Px) -> Mark:
    nx, ny = _normal(at, towards)
    (x, y) = at
    return line(x - nx * _TICK_PX, y - ny * _TICK_PX, x + nx * _TICK_PX, y + ny * _TICK_PX, "mid")


def _middle(points: list[_Px]) -> tuple[_Px, _Px]:
    """Half way along its longest side, and which way is into the room there."""
    a, b = max(pairwise(points), key=lambda ends: math.dist(*ends))
    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2), _normal(a, b)
