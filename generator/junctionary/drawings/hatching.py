"""Hatching: lines at 45 degrees over several rectangles, drawn once where they overlap."""

import math

from junctionary.drawings.ink import Stroke

Rect = tuple[float, float, float, float]
"""Left, top, right, bottom, in px."""


def hatched(rects: list[Rect], step_px: float, kind: str) -> tuple[Stroke, ...]:
    """One stroke of all the lines; none where there is no rectangle."""
    if not rects:
        return ()
    low = min(left + top for left, top, _, _ in rects)
    high = max(right + bottom for _, _, right, bottom in rects)
    said: list[str] = []
    for index in range(math.ceil(low / step_px), math.floor(high / step_px) + 1):
        said += _along(index * step_px, rects)
    return (Stroke("".join(said), kind),) if said else ()


def _along(total: float, rects: list[Rect]) -> list[str]:
    """The parts of the line x + y = total that lie in a rectangle, those that meet as one."""
    spans = sorted(
        (low, high)
        for left, top, right, bottom in rects
        if (low := max(left, total - bottom)) < (high := min(right, total - top))
    )
    kept: list[tuple[float, float]] = []
    for low, high in spans:
        if kept and low <= kept[-1][1]:
            kept[-1] = (kept[-1][0], max(kept[-1][1], high))
        else:
            kept.append((low, high))
    return [f"M{low:.1f} {total - low:.1f}L{high:.1f} {total - high:.1f}" for low, high in kept]
