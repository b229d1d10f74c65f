"""The name of a room within its walls: in its middle, or as near to that as what is drawn there lets it."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from junctionary.drawings.ink import Lettering, lettering_px, size_px
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.placing import Extent, line_room, meet

_ON_A_LINE_PX = 70.0
"""How far a name rather moves than lie on a line."""

_BROKEN_PX = 16.0
"""How far a name rather moves than stand in one line more."""

Point = tuple[float, float]


def name_in(
    name: str,
    corners: Sequence[Point],
    kind: str,
    taken: Sequence[Extent],
    lines: Sequence[Extent] = (),
    spare_px: float = 2.0,
    step_px: float = 4.0,
) -> tuple[Lettering, ...]:
    """The name's lines, none of them on what is taken or out of the room, on other lines only at need.

    Empty where it finds no room with so much to spare about it, tried so far from place to place.
    """
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    around: Extent = (min(xs), min(ys), max(xs), max(ys))
    walls = [each for a, b in pairwise((*corners, *corners[:1])) for each in line_room(a, b, 2)]
    strict = [*walls, *(each for each in taken if meet(each, around))]
    soft = [each for each in lines if meet(each, around)]
    best: tuple[float, tuple[str, ...], Point] | None = None
    for broken, said in enumerate(_broken(name)):
        wide = max(lettering_px(each, kind) for each in said)
        tall = len(said) * size_px(kind) * 1.15
        price = broken * _BROKEN_PX
        for away, (x, y) in _middles(around, wide, tall, step_px):
            if best is not None and away + price >= best[0]:
                break
            at = (
                x - wide / 2 - spare_px,
                y - tall / 2 - spare_px / 2,
                x + wide / 2 + spare_px,
                y + tall / 2 + spare_px / 2,
            )
            if any(meet(at, each) for each in strict) or not _inside((x, y), corners):
                continue
            cost = away + price + (_ON_A_LINE_PX if any(meet(at, each) for each in soft) else 0.0)
            if best is None or cost < best[0]:
                best = (cost, said, (x, y))
    if best is None:
        return ()
    _, said, (x, y) = best
    step = size_px(kind) * 1.15
    top = y - len(said) * step / 2
    return tuple(
        Lettering(x, top + index * step + 0.88 * size_px(kind), each, f"{kind} halo", "middle")
        for index, each in enumerate(said)
    )


def _broken(name: str) -> list[tuple[str, ...]]:
    """The name in one line, in two, and so on, as its words allow."""
    ways: list[tuple[str, ...]] = [(name,)]
    longest = max(width_px(word, 12) for word in name.split() or [name])
    for part in (0.62, 0.45, 0.3):
        said = wrapped(name, max(width_px(name, 12) * part, longest), 12)
        if len(said) > len(ways[-1]):
            ways.append(said)
    return ways


def _middles(around: Extent, wide: float, tall: float, step: float) -> Iterator[tuple[float, Point]]:
    """Every place for the middle of a name, nearest to the middle of the room first."""
    left, top, right, bottom = (
        around[0] + wide / 2,
        around[1] + tall / 2,
        around[2] - wide / 2,
        around[3] - tall / 2,
    )
    cx, cy = (around[0] + around[2]) / 2, (around[1] + around[3]) / 2
    across = [cx + i * step for i in _steps(cx - left, step)]
    down = [cy + i * step for i in _steps(cy - top, step)]
    found = [
        (round(((x - cx) ** 2 + (y - cy) ** 2) ** 0.5, 3), (x, y))
        for x in across
        for y in down
        if left <= x <= right and top <= y <= bottom
    ]
    yield from sorted(found)


def _steps(half: float, step: float) -> range:
    count = max(int(half // step), 0)
    return range(-count, count + 1)


def _inside(point: Point, corners: Sequence[Point]) -> bool:
    """Whether a point lies within an outline: a ray from it crosses the outline an odd number of times."""
    x, y = point
    odd = False
    for (x1, y1), (x2, y2) in pairwise((*corners, *corners[:1])):
        if (y1 > y) != (y2 > y) and x < (x2 - x1) * (y - y1) / (y2 - y1) + x1:
            odd = not odd
    return odd


def name_beside(
    name: str, corners: Sequence[Point], kind: str, taken: Sequence[Extent], within: Extent
) -> tuple[Lettering, ...]:
    """The name close beside an outline, free of all that is taken; empty where it has no room there."""
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    left, top, right, bottom = min(xs), min(ys), max(xs), max(ys)
    cx, cy = (left + right) / 2, (top + bottom) / 2
    wide, tall = lettering_px(name, kind), size_px(kind) * 1.1
    below, above = bottom + tall / 2 + 4, top - tall / 2 - 4
    ends = (cx, left + wide / 2 + 6, right - wide / 2 - 6)
    sides = ((right + wide / 2 + 5, cy), (left - wide / 2 - 5, cy))
    for x, y in (*((x, below) for x in ends), *sides, *((x, above) for x in ends)):
        at = (x - wide / 2 - 2, y - tall / 2 - 1, x + wide / 2 + 2, y + tall / 2 + 1)
        inside = at[0] > within[0] and at[1] > within[1] and at[2] < within[2] and at[3] < within[3]
        if inside and not any(meet(at, each) for each in taken):
            return (Lettering(x, y + 0.34 * size_px(kind), name, f"{kind} halo", "middle"),)
    return ()
