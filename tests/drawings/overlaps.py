"""Which lettering or wires of a drawing lie on one another."""

import math
import re
from collections.abc import Iterator
from itertools import combinations

from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, letterings

Segment = tuple[float, float, float, float]


def lettering_overlaps(drawing: Drawing) -> list[tuple[str, str]]:
    return [
        (one.text, other.text)
        for one, other in combinations(letterings(drawing.marks), 2)
        if _meet(one, other)
    ]


def lettering_under_wires(drawing: Drawing, kind: str) -> list[str]:
    """Lettering that a straight wire of this kind runs through."""
    wires = [each for stroke in strokes(drawing.marks, kind) for each in drawn_segments(stroke)]
    return [
        each.text
        for each in letterings(drawing.marks)
        for x1, y1, x2, y2 in wires
        if max(min(x1, x2), each.extent[0]) < min(max(x1, x2) + 0.1, each.extent[2])
        and max(min(y1, y2), each.extent[1]) < min(max(y1, y2) + 0.1, each.extent[3])
    ]


def outside(drawing: Drawing) -> list[str]:
    """Lettering that runs out of its drawing."""
    return [
        each.text
        for each in letterings(drawing.marks)
        if each.extent[0] < -1
        or each.extent[1] < -1
        or each.extent[2] > drawing.width_px + 1
        or each.extent[3] > drawing.height_px + 1
    ]


def _meet(one: Lettering, other: Lettering) -> bool:
    a, b = one.extent, other.extent
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def lettering_on_swings(drawing: Drawing) -> list[str]:
    """Lettering that the arc of a door's swing runs through."""
    points = [each for stroke in strokes(drawing.marks, "hair") for each in _arc(stroke.d)]
    return [
        each.text
        for each in letterings(drawing.marks)
        if any(each.extent[0] < x < each.extent[2] and each.extent[1] < y < each.extent[3] for x, y in points)
    ]


def _arc(d: str) -> list[tuple[float, float]]:
    """Points along a quarter circle ``M x y A r r 0 0 sweep x y``; none of a path of another shape."""
    told = re.fullmatch(r"M(\S+) (\S+)A(\S+) \S+ 0 0 ([01]) (\S+) (\S+)", d)
    if told is None:
        return []
    sx, sy, radius, sweep, ex, ey = (float(each) for each in told.groups())
    side = 1 if sweep else -1
    # A quarter's middle lies off half its chord by as much, to the left of the way it is swept.
    cx, cy = (sx + ex) / 2 - side * (ey - sy) / 2, (sy + ey) / 2 + side * (ex - sx) / 2
    start = math.atan2(sy - cy, sx - cx)
    turns = (start + side * math.pi / 2 * step / 24 for step in range(25))
    return [(cx + radius * math.cos(turn), cy + radius * math.sin(turn)) for turn in turns]


def lettering_on_leaders(drawing: Drawing) -> list[str]:
    """Lettering that a leader of the drawing runs through, its ends apart."""
    leaders = [each for stroke in strokes(drawing.marks, "leader") for each in drawn_segments(stroke)]
    return [each.text for each in letterings(drawing.marks) if any(_through(each, line) for line in leaders)]


def _through(word: Lettering, line: Segment) -> bool:
    x1, y1, x2, y2 = line
    left, top, right, bottom = word.extent
    steps = [part / 40 for part in range(1, 40)]
    return any(
        left + 1 < x1 + (x2 - x1) * part < right - 1 and top + 1 < y1 + (y2 - y1) * part < bottom - 1
        for part in steps
    )


def strokes(marks: tuple[Mark, ...], kind: str) -> Iterator[Stroke]:
    for mark in marks:
        if isinstance(mark, Stroke) and kind in mark.kind.split():
            yield mark
        elif isinstance(mark, Linked):
            yield from strokes(mark.marks, kind)


def segments(d: str) -> list[Segment]:
    """The straight parts of a path of M, L, H, V and Q."""
    found: list[Segment] = []
    x = y = 0.0
    for letter, rest in re.findall(r"([MLHVQ])([^MLHVQ]*)", d):
        numbers = [float(each) for each in rest.split()]
        to_x, to_y = (
            (numbers[0], y)
            if letter == "H"
            else (x, numbers[0])
            if letter == "V"
            else (numbers[-2], numbers[-1])
        )
        if letter in "LHV":
            found.append((x, y, to_x, to_y))
        x, y = to_x, to_y
    return found


def drawn_segments(stroke: Stroke) -> list[Segment]:
    """The straight parts of a path where it is drawn."""
    x, y = stroke.shift
    return [(x1 + x, y1 + y, x2 + x, y2 + y) for x1, y1, x2, y2 in segments(stroke.d)]


def wires_on_one_another(drawing: Drawing) -> list[tuple[Segment, Segment]]:
    """Pairs of straight parts of two wires that share more than a crossing."""
    wires = [drawn_segments(each) for each in strokes(drawing.marks, "gap")]
    return [(a, b) for one, other in combinations(wires, 2) for a in one for b in other if _along(a, b)]


def _along(a: Segment, b: Segment) -> bool:
    for fixed, moving in ((0, 1), (1, 0)):
        if a[fixed] == a[fixed + 2] == b[fixed] == b[fixed + 2]:
            low = max(min(a[moving], a[moving + 2]), min(b[moving], b[moving + 2]))
            high = min(max(a[moving], a[moving + 2]), max(b[moving], b[moving + 2]))
            return high - low > 0.5
    return False
