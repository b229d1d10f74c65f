"""A circuit's voltage drop: a row for each box, moved right by what is lost on the way to it.

Two staircases go down the rows and branch as the cables do, each step as wide
as what its cable loses: one of middle weight with full dots at the recorded
load, a hairline with rings at the design load. The limit that is recommended
is the heaviest line. A row holds one box, so no name can meet another.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from junctionary.drawings.axis import figure_words, round_steps
from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, circle, line, rect
from junctionary.drawings.lettering import width_px
from junctionary.sheets.drop_plot import DropPlot, DropPoint

_Where = Callable[[DropPoint], float | None]

ROW_PX = 24.0
_KEY_PX = 18.0
_DOT_PX, _RING_PX = 2.8, 4.6


@dataclass(frozen=True, slots=True)
class _Field:
    """The plot's own rectangle in px, its rows by box, a percent's width, and where nothing is lost."""

    left: float
    top: float
    right: float
    percent_px: float
    nought: float
    points: tuple[DropPoint, ...]

    @property
    def bottom(self) -> float:
        return self.y(len(self.points)) + ROW_PX * 0.75

    def x(self, percent: float) -> float:
        return self.nought + percent * self.percent_px

    def y(self, row: int) -> float:
        """The panel stands in row 0, the first box in row 1."""
        return self.top + (row + 0.5) * ROW_PX


def wide_drop(plot: DropPlot, drawing_id: str) -> Drawing:
    """The plot 800 px wide."""
    return _drawn(plot, drawing_id, 800.0, "wide drop")


def narrow_drop(plot: DropPlot, drawing_id: str) -> Drawing:
    """The same for a phone, 340 px wide."""
    return _drawn(plot, drawing_id, 340.0, "narrow drop")


def _drawn(plot: DropPlot, drawing_id: str, width: float, kind: str) -> Drawing:
    key, top = _key(plot, width)
    percents = [each for point in plot.points for each in (point.recorded, point.design) if each is not None]
    steps = round_steps(max(*percents, plot.limit * 1.15), 6 if width > 400 else 4)
    names = ("panel", *(each.name for each in plot.points))
    names_px = max(width_px(each, 11.5, bold=True) for each in names)
    ways_px = max(width_px(each, 12) for each in (plot.unit, *map(_way, plot.points)))
    left = names_px + 14 + ways_px + 14
    right = width - width_px(f"{figure_words(steps[-1])} %", 12) / 2 - 2
    # The other leg's current in a shared neutral can lift a box above the panel: left of nought.
    rises = math.ceil(-min(0.0, *percents) / steps[1] - 1e-9)
    steps = (*(-steps[1] * each for each in range(rises, 0, -1)), *steps)
    percent_px = (right - left) / (steps[-1] - steps[0])
    field = _Field(left, top + 20, right, percent_px, left - steps[0] * percent_px, plot.points)
    marks = (
        *key,
        *_axis(field, steps),
        *_guides(field),
        *_limit(plot, field),
        *_stairs(field, _design, "hair"),
        *_stairs(field, _recorded, "mid"),
        *_dots(field),
        *_names(plot, field, names_px),
    )
    return Drawing(drawing_id, width, field.bottom + 26, plot.title, plot.says, marks, kind)


def _recorded(point: DropPoint) -> float | None:
    return point.recorded


def _design(point: DropPoint) -> float | None:
    return point.design


def _way(point: DropPoint) -> str:
    return f"{point.way:.0f}"


def _key(plot: DropPlot, width: float) -> tuple[list[Mark], float]:
    """Which line is which, in a row or one under another; and where the plot may begin."""
    marks: list[Mark] = []
    x, y = 0.0, 14.0
    told = ((plot.recorded_words, "mid", _dot), (plot.design_words, "hair", _ring))
    for words, kind, sign in told:
        if not words:
            continue
        wide = 46 + width_px(words, 12)
        if x and x + wide > width:
            x, y = 0.0, y + _KEY_PX
        marks += [line(x, y - 4, x + 38, y - 4, kind), sign(x + 19, y - 4)]
        marks.append(Lettering(x + 46, y, words))
        x += wide + 26
    return marks, y + 22


def _axis(field: _Field, steps: tuple[float, ...]) -> Iterator[Mark]:
    yield line(field.left, field.bottom, field.right, field.bottom, "hair")
    for percent in steps:
        x = field.x(percent)
        yield line(x, field.top, x, field.bottom, "hair" if percent == 0 else "grid")
        yield line(x, field.bottom, x, field.bottom + 5, "hair")
        figure = figure_words(percent).replace("-", "\N{MINUS SIGN}")
        yield Lettering(x, field.bottom + 19, f"{figure} %", "note", "middle")


def _guides(field: _Field) -> Iterator[Stroke]:
    """From each name to its farthest mark."""
    for row, point in enumerate(field.points, 1):
        y = field.y(row)
        yield line(field.left, y, field.x(max(point.recorded or 0, point.design or 0)), y, "grid")


def _limit(plot: DropPlot, field: _Field) -> Iterator[Mark]:
    """The limit from top to bottom, and over it what it is."""
    x = field.x(plot.limit)
    long = f"{plot.limit_words}: recommended at most"
    fits = width_px(long, 11.5, bold=True) < field.right - field.left
    words = long if fits else plot.limit_words
    half = width_px(words, 11.5, bold=True) / 2
    at = max(min(x, field.right - half), half)
    yield line(x, field.top - 6, x, field.bottom, "heavy")
    yield Lettering(at, field.top - 11, words, "tag", "middle")


def _stairs(field: _Field, of: _Where, kind: str) -> Iterator[Stroke]:
    """From each box up to the row of the nearest one before it that is plotted, or to the panel's."""
    rows = {each.name: row for row, each in enumerate(field.points, 1)}
    known = {each.name: each for each in field.points}
    down: dict[int, tuple[float, int]] = {}
    steps = []
    for point in field.points:
        percent = of(point)
        if percent is None:
            continue
        before = known.get(point.before or "")
        while before is not None and of(before) is None:
            before = known.get(before.before or "")
        start = of(before) if before is not None else None
        row, from_row = rows[point.name], rows[before.name] if before is not None else 0
        down[from_row] = (field.x(start or 0.0), row)
        steps.append(f"M{field.x(start or 0.0):.1f} {field.y(row):.1f}H{field.x(percent):.1f}")
    falls = [f"M{x:.1f} {field.y(row):.1f}V{field.y(last):.1f}" for row, (x, last) in down.items()]
    if steps:
        yield Stroke("".join((*falls, *steps)), kind)


def _dots(field: _Field) -> Iterator[Stroke]:
    """The rings first, so that a dot on a ring is seen in it."""
    for row, point in enumerate(field.points, 1):
        if point.design is not None:
            yield _ring(field.x(point.design), field.y(row))
        if point.recorded is not None:
            yield _dot(field.x(point.recorded), field.y(row))


def _dot(x: float, y: float) -> Stroke:
    return circle(x, y, _DOT_PX, "solid")


def _ring(x: float, y: float) -> Stroke:
    return circle(x, y, _RING_PX, "hole")


def _names(plot: DropPlot, field: _Field, names_px: float) -> Iterator[Mark]:
    """Each box and how far it is from the panel along the cable."""
    ways_x = field.left - 14
    yield Lettering(ways_x, field.top - 11, plot.unit, "note", "end")
    yield Lettering(0, field.y(0) + 4, "panel")
    yield Lettering(ways_x, field.y(0) + 4, "0", "note", "end")
    for row, point in enumerate(field.points, 1):
        y = field.y(row)
        hit = rect(0, y - ROW_PX / 2, names_px, ROW_PX, "hit")
        name = Lettering(0, y + 4, point.name, "tag")
        yield Linked(point.ref, f"{point.ref.kind} {point.name}", (hit, name))
        yield Lettering(ways_x, y + 4, _way(point), "note", "end")
