"""How near the lines of a drawing come to its words."""

import math
import re
from collections.abc import Iterator

from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke

Point = tuple[float, float]

UNSEEN = frozenset({"hit", "blank", "floor"})
"""Strokes that show no line of their own."""

COVERS = frozenset({"blank", "floor"})
"""Strokes that hide what is drawn before them."""

_STEP_PX = 0.5
_NUMBERS = {"M": 2, "L": 2, "H": 1, "V": 1, "Q": 4, "A": 7, "Z": 0}


def touched(drawing: Drawing, words: set[str], least_px: float) -> list[str]:
    """Those of the words to which a line comes nearer than this, but the arrow they stand at."""
    inked = list(_inked(drawing))
    return [
        word.text
        for owner, word in _words(drawing.marks, None)
        if word.text in words
        and any(_nearest(path, word) < least_px for its, path in inked if its is None or its is not owner)
    ]


def _inked(drawing: Drawing) -> Iterator[tuple[Linked | None, list[Point]]]:
    """The points of every line that are seen: what a later blank lies on is not."""
    every = list(_strokes(drawing.marks, None))
    blanks = [
        (index, (min(xs), min(ys), max(xs), max(ys)))
        for index, (_, stroke) in enumerate(every)
        if COVERS & set(stroke.kind.split())
        for xs, ys in [zip(*_points(stroke), strict=True)]
    ]
    for index, (owner, stroke) in enumerate(every):
        if not UNSEEN & set(stroke.kind.split()):
            over = [blank for later, blank in blanks if later > index]
            yield (
                owner,
                [
                    (x, y)
                    for x, y in _points(stroke)
                    if not any(left < x < right and top < y < bottom for left, top, right, bottom in over)
                ],
            )


def _nearest(path: list[Point], word: Lettering) -> float:
    """From a path to the figures and letters of a word; these have no descenders."""
    left, _, right, _ = word.extent
    top, bottom = word.y - 0.73 * word.size_px, word.y
    return min(
        (math.hypot(max(left - x, 0.0, x - right), max(top - y, 0.0, y - bottom)) for x, y in path),
        default=math.inf,
    )


def _strokes(marks: tuple[Mark, ...], owner: Linked | None) -> Iterator[tuple[Linked | None, Stroke]]:
    for mark in marks:
        if isinstance(mark, Stroke):
            yield owner, mark
        elif isinstance(mark, Linked):
            yield from _strokes(mark.marks, mark)


def _words(marks: tuple[Mark, ...], owner: Linked | None) -> Iterator[tuple[Linked | None, Lettering]]:
    for mark in marks:
        if isinstance(mark, Lettering):
            yield owner, mark
        elif isinstance(mark, Linked):
            yield from _words(mark.marks, mark)


def _points(stroke: Stroke) -> list[Point]:
    """Points along a path of M, L, H, V, Q, A and Z, half a pixel apart."""
    dx, dy = stroke.shift
    points: list[Point] = []
    x = y = start_x = start_y = 0.0
    for letter, rest in re.findall(r"([A-Za-z])([^A-Za-z]*)", stroke.d):
        told = [float(each) for each in rest.split()]
        kind = letter.upper()
        count = _NUMBERS[kind]
        for index in range(0, max(len(told), 1), max(count, 1)):
            part = told[index : index + count]
            if letter.islower():
                shift = {"H": [x], "V": [y], "A": [0, 0, 0, 0, 0, x, y]}.get(kind, [x, y] * (count // 2))
                part = [a + b for a, b in zip(part, shift, strict=True)]
            if kind == "M":
                x, y = start_x, start_y = part[0], part[1]
                continue
            end = {
                "H": (part[0] if part else x, y),
                "V": (x, part[0] if part else y),
                "Z": (start_x, start_y),
            }.get(kind, (part[-2], part[-1]) if len(part) > 1 else (x, y))
            points += [(px + dx, py + dy) for px, py in _piece(kind, (x, y), part, end)]
            x, y = end
    return points


def _piece(kind: str, start: Point, told: list[float], end: Point) -> Iterator[Point]:
    (x, y), (to_x, to_y) = start, end
    if kind == "A":
        yield from _arc(start, told[0], bool(told[3]), bool(told[4]), end)
        return
    cx, cy = (told[0], told[1]) if kind == "Q" else ((x + to_x) / 2, (y + to_y) / 2)
    length = math.hypot(cx - x, cy - y) + math.hypot(to_x - cx, to_y - cy)
    count = max(1, int(length / _STEP_PX))
    for step in range(count + 1):
        s = step / count
        yield (
            (1 - s) ** 2 * x + 2 * s * (1 - s) * cx + s * s * to_x,
            (1 - s) ** 2 * y + 2 * s * (1 - s) * cy + s * s * to_y,
        )


def _arc(start: Point, radius: float, large: bool, sweep: bool, end: Point) -> Iterator[Point]:
    (x, y), (to_x, to_y) = start, end
    half = math.hypot(to_x - x, to_y - y) / 2
    radius = max(radius, half)
    off = math.sqrt(max(radius**2 - half**2, 0.0)) * (1 if large != sweep else -1)
    ux, uy = (to_x - x) / (2 * half), (to_y - y) / (2 * half)
    cx, cy = (x + to_x) / 2 - uy * off, (y + to_y) / 2 + ux * off
    first, last = math.atan2(y - cy, x - cx), math.atan2(to_y - cy, to_x - cx)
    turn = (last - first) % (2 * math.pi) if sweep else -((first - last) % (2 * math.pi))
    count = max(1, int(abs(turn) * radius / _STEP_PX))
    for step in range(count + 1):
        angle = first + turn * step / count
        yield (cx + radius * math.cos(angle), cy + radius * math.sin(angle))
