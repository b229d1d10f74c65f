"""The walls of a plan: outlines in the heaviest line, broken where a door, an opening or a window is."""

import math
from collections.abc import Callable, Iterator
from itertools import pairwise

from junctionary.drawings.ink import Mark, Stroke, line
from junctionary.sheets.plan import Inches, PlanGap, PlanRoom

ToPx = Callable[[Inches], tuple[float, float]]

_SAME_WALL_IN = 16.0
"""A door told by the room on the other side of a wall breaks this face of it too."""


def floor_of(room: PlanRoom, px: ToPx) -> Stroke:
    """The room's floor, as the paper the rest is drawn on."""
    points = [px(each) for each in room.corners]
    return Stroke("M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points) + "Z", "floor")


def walls_of(room: PlanRoom, gaps: tuple[PlanGap, ...], px: ToPx) -> Iterator[Mark]:
    """Each side of the outline, less what breaks it."""
    for start, end in pairwise((*room.corners, *room.corners[:1])):
        length = math.dist(start, end)
        ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        open_ = sorted(span for gap in gaps if (span := _span(start, (ux, uy), length, gap)) is not None)
        at = 0.0
        for low, high in [*open_, (length, length)]:
            if low > at:
                a = (start[0] + ux * at, start[1] + uy * at)
                b = (start[0] + ux * low, start[1] + uy * low)
                yield line(*px(a), *px(b), "heavy wall")
            at = max(at, high)


def _span(start: Inches, along: Inches, length: float, gap: PlanGap) -> tuple[float, float] | None:
    ends = []
    for point in (gap.start, gap.end):
        dx, dy = point[0] - start[0], point[1] - start[1]
        if abs(dx * along[1] - dy * along[0]) > _SAME_WALL_IN:
            return None
        ends.append(dx * along[0] + dy * along[1])
    low, high = max(0.0, min(ends)), min(length, max(ends))
    # A gap in a wall square to this one shows no width along it.
    across = abs(ends[1] - ends[0]) < 0.5 * math.dist(gap.start, gap.end)
    return None if across or high - low < 1 else (low, high)


def stands_in(gap: PlanGap, room: PlanRoom) -> bool:
    """Whether the gap breaks a side of the room."""
    for start, end in pairwise((*room.corners, *room.corners[:1])):
        length = math.dist(start, end)
        along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
        if _span(start, along, length, gap) is not None:
            return True
    return False


def gap_of(gap: PlanGap, px: ToPx) -> Iterator[Mark]:
    """Jambs; across them a hairline for a door, two for a window, nothing for an opening."""
    (x1, y1), (x2, y2) = px(gap.start), px(gap.end)
    length = math.hypot(x2 - x1, y2 - y1) or 1.0
    nx, ny = -(y2 - y1) / length, (x2 - x1) / length
    for x, y in ((x1, y1), (x2, y2)):
        yield line(x - nx * 4, y - ny * 4, x + nx * 4, y + ny * 4, "mid")
    offsets = {"door": (0.0,), "window": (-2.5, 2.5), "opening": ()}[gap.what]
    for off in offsets:
        kind = "hair dashed-fine" if gap.what == "door" else "hair"
        yield line(x1 + nx * off, y1 + ny * off, x2 + nx * off, y2 + ny * off, kind)
