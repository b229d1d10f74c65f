"""What a plan carries besides walls and symbols: dimension lines, the north arrow, the scale bar."""

import math

from junctionary.drawings.ink import Lettering, Mark, Stroke, line, rect
from junctionary.drawings.placing import Extent, Label, line_room
from junctionary.drawings.plan_walls import ToPx
from junctionary.sheets.plan import PlanSide

_SHORTEST_PX = 16.0
_SHORTEST_BAR_PX = 44.0


def dimension(side: PlanSide, px: ToPx, off_px: float) -> tuple[tuple[Mark, ...], tuple[Label, ...]]:
    """A dimension line outside a side, with slashes at its ends, and its length as a label.

    The side runs clockwise, so that outside lies to its left. A side too
    short to be measured on the drawing has none.
    """
    (x1, y1), (x2, y2) = px(side.start), px(side.end)
    length = math.hypot(x2 - x1, y2 - y1)
    if length < _SHORTEST_PX:
        return (), ()
    ux, uy = (x2 - x1) / length, (y2 - y1) / length
    nx, ny = uy, -ux
    ax, ay, bx, by = x1 + nx * off_px, y1 + ny * off_px, x2 + nx * off_px, y2 + ny * off_px
    marks = [line(ax, ay, bx, by, "hair")]
    for x, y in ((ax, ay), (bx, by)):
        marks.append(line(x - nx * 6, y - ny * 6, x + nx * 4, y + ny * 4, "hair"))
        marks.append(line(x - 4, y + 4, x + 4, y - 4, "mid"))
    middle = ((ax + bx) / 2, (ay + by) / 2)
    return tuple(marks), (Label(((side.says, "note"),), *middle, 0, (-nx, -ny), on=True),)


def dimension_room(side: PlanSide, px: ToPx, off_px: float) -> tuple[Extent, ...]:
    """What a dimension line takes up, its words apart, so that no code is set on it."""
    (x1, y1), (x2, y2) = px(side.start), px(side.end)
    length = math.hypot(x2 - x1, y2 - y1)
    nx, ny = (y2 - y1) / length * off_px, -(x2 - x1) / length * off_px
    return line_room((x1 + nx, y1 + ny), (x2 + nx, y2 + ny), 3)


def north_arrow(x: float, y: float, deg: float) -> tuple[Mark, ...]:
    """A needle 34 px long through a point, its northern half filled, and its letter."""
    turn = math.radians(deg)
    ux, uy = math.sin(turn), -math.cos(turn)
    vx, vy = -uy, ux
    tip, tail = (x + ux * 17, y + uy * 17), (x - ux * 17, y - uy * 17)
    sides = ((x + vx * 5, y + vy * 5), (x - vx * 5, y - vy * 5))

    def triangle(*points: tuple[float, float]) -> str:
        return "M" + "L".join(f"{px:.1f} {py:.1f}" for px, py in points) + "Z"

    return (
        Stroke(triangle(tip, *sides), "solid"),
        Stroke(triangle(tail, *sides), "hair"),
        Lettering(x + ux * 25, y + uy * 25 + 4, "N", "tag", "middle"),
    )


def scale_bar(
    x: float, y: float, px_per_in: float, steps: tuple[tuple[float, str], ...], room_px: float
) -> tuple[Mark, ...]:
    """A bar of two halves, one filled, as long as the room for it allows; empty where none fits."""
    for length_in, says in steps:
        long = length_in * px_per_in
        if _SHORTEST_BAR_PX <= long <= room_px:
            return (
                rect(x, y, long / 2, 5, "solid"),
                rect(x, y, long, 5, "hair"),
                Lettering(x, y + 18, "0", "note", "start"),
                Lettering(x + long, y + 18, says, "note", "middle"),
            )
    return ()
