"""The walls of a plan: outlines in the heaviest line, broken where a door, an opening or a window is."""

import math
from collections.abc import Callable, Iterator
from itertools import pairwise

from junctionary.drawings.ink import Mark, Stroke, line
from junctionary.drawings.placing import Extent, line_room
from junctionary.sheets.plan import Inches, PlanGap, PlanLeaf, PlanRoom

ToPx = Callable[[Inches], tuple[float, float]]

_SAME_WALL_IN = 16.0
"""A door told by the room on the other side of a wall breaks this face of it too."""


def floor_of(room: PlanRoom, px: ToPx) -> Stroke:
    """The room's floor, as the paper the rest is drawn on."""
    points = [px(each) for each in room.corners]
    return Stroke("M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points) + "Z", "floor")


def walls_of(room: PlanRoom, gaps: tuple[PlanGap, ...], px: ToPx) -> Iterator[Mark]:
    """Each side of the outline, less what breaks it; dashed where nothing is built."""
    for start, end in pairwise((*room.corners, *room.corners[:1])):
        length = math.dist(start, end)
        ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        breaking = [*gaps, *(PlanGap("opening", a, b) for a, b in room.unbuilt)]
        open_ = sorted(span for gap in breaking if (span := _span(start, (ux, uy), length, gap)) is not None)
        at = 0.0
        for low, high in [*open_, (length, length)]:
            if low > at:
                a = (start[0] + ux * at, start[1] + uy * at)
                b = (start[0] + ux * low, start[1] + uy * low)
                yield line(*px(a), *px(b), "heavy wall")
            at = max(at, high)
    for a, b in room.unbuilt:
        yield line(*px(a), *px(b), "hair dashed")


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
    """Jambs; across them the leaf and its swing for a door, two hairlines for a window.

    An opening has nothing across it. A door whose hinges or swing are not
    recorded has a dashed hairline for a leaf that cannot be drawn.
    """
    (x1, y1), (x2, y2) = px(gap.start), px(gap.end)
    length = math.hypot(x2 - x1, y2 - y1) or 1.0
    nx, ny = -(y2 - y1) / length, (x2 - x1) / length
    for x, y in ((x1, y1), (x2, y2)):
        yield line(x - nx * 4, y - ny * 4, x + nx * 4, y + ny * 4, "mid")
    for leaf in gap.leaves:
        yield from _leaf(leaf, px)
    if gap.slides:
        # Two panels side by side, each a little past the middle.
        ux, uy = (x2 - x1) * 0.56, (y2 - y1) * 0.56
        yield line(x1 + nx * 2, y1 + ny * 2, x1 + ux + nx * 2, y1 + uy + ny * 2, "mid")
        yield line(x2 - nx * 2, y2 - ny * 2, x2 - ux - nx * 2, y2 - uy - ny * 2, "mid")
    offsets: tuple[float, ...] = (-2.5, 2.5) if gap.what == "window" else ()
    if gap.what == "door" and not gap.leaves and not gap.slides:
        offsets = (0.0,)
    for off in offsets:
        kind = "hair dashed-fine" if gap.what == "door" else "hair"
        yield line(x1 + nx * off, y1 + ny * off, x2 + nx * off, y2 + ny * off, kind)


def _leaf(leaf: PlanLeaf, px: ToPx) -> Iterator[Mark]:
    """The leaf standing open, and the quarter circle it sweeps."""
    (hx, hy), (ox, oy), (sx, sy) = px(leaf.hinge), px(leaf.open), px(leaf.shut)
    radius = math.hypot(ox - hx, oy - hy)
    clockwise = int((sx - hx) * (oy - hy) - (sy - hy) * (ox - hx) > 0)
    yield line(hx, hy, ox, oy, "mid")
    yield Stroke(f"M{sx:.1f} {sy:.1f}A{radius:.1f} {radius:.1f} 0 0 {clockwise} {ox:.1f} {oy:.1f}", "hair")


def leaf_room(gap: PlanGap, px: ToPx) -> Iterator[Extent]:
    """What the leaves of a door and their swing take up."""
    for leaf in gap.leaves:
        (hx, hy), (ox, oy), (sx, sy) = px(leaf.hinge), px(leaf.open), px(leaf.shut)
        yield from line_room((hx, hy), (ox, oy), 2)
        turn, way = math.atan2(oy - hy, ox - hx), math.atan2(sy - hy, sx - hx)
        sweep = (way - turn + math.pi) % (2 * math.pi) - math.pi
        radius = math.hypot(ox - hx, oy - hy)
        arc = [turn + sweep * step / 8 for step in range(9)]
        points = [(hx + radius * math.cos(each), hy + radius * math.sin(each)) for each in arc]
        for one, other in pairwise(points):
            yield from line_room(one, other, 2)
