"""What a circuit loses, plotted against the way from its panel: every box a point with its name.

The recorded load is a whole line, the design load a dashed one, the limit
that is recommended the heaviest. Both follow the cables, and branch as they do.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from junctionary.drawings.axis import figure_words, round_steps
from junctionary.drawings.ink import Anchor, Drawing, Lettering, Mark, Stroke, circle, line
from junctionary.drawings.lettering import width_px
from junctionary.drawings.placing import Extent, Label, line_room, met, placed
from junctionary.sheets.drop_plot import DropPlot, DropPoint

_Px = tuple[float, float]
_Where = Callable[[DropPoint], float | None]

_RECORDED, _DESIGN = "drop", "drop dashed"
_DASH_PX, _PERIOD_PX = 6.0, 10.0
_KEY_PX = 18.0
_DOT_PX = 3.2


@dataclass(frozen=True, slots=True)
class _Field:
    """The plot's own rectangle in px, and how much a unit of either axis takes in it."""

    left: float
    top: float
    right: float
    bottom: float
    way_px: float
    percent_px: float

    def px(self, way: float, percent: float) -> _Px:
        return (self.left + way * self.way_px, self.bottom - percent * self.percent_px)


def wide_drop(plot: DropPlot, drawing_id: str) -> Drawing:
    """The plot 860 px wide."""
    return _drawn(plot, drawing_id, (860.0, 250.0), 8, "wide drop")


def narrow_drop(plot: DropPlot, drawing_id: str) -> Drawing:
    """The same for a phone, 340 px wide: fewer figures on its axis."""
    return _drawn(plot, drawing_id, (340.0, 260.0), 4, "narrow drop")


def _drawn(plot: DropPlot, drawing_id: str, size_px: _Px, about: int, kind: str) -> Drawing:
    width, tall = size_px
    key, top = _key(plot, width)
    percents = [each for point in plot.points for each in (point.recorded, point.design) if each is not None]
    ways = round_steps(max(each.way for each in plot.points), about)
    heights = round_steps(max(*percents, plot.limit * 1.15), 5)
    left = 8 + max(width_px(f"{figure_words(each)} %", 12) for each in heights)
    right = width - width_px(f"{figure_words(ways[-1])} {plot.unit}", 12) / 2 - 2
    bottom = top + tall
    field = _Field(left, top, right, bottom, (right - left) / ways[-1], tall / heights[-1])
    axes = list(_axes(plot, field, ways, heights))
    lines: list[Mark] = []
    shy: list[Extent] = []
    for of, drawn in ((_design, _dashes), (_recorded, _whole)):
        for a, b in _legs(plot, field, of):
            lines.append(drawn(a, b))
            shy += line_room(a, b, 1.5)
    dots, taken = _dots(plot, field)
    limit, limit_room = _limit(plot, field, [*shy, *taken])
    band = (0.0, bottom - 2, width, bottom + 24)
    words, reached = placed(
        [_label(each, field) for each in plot.points],
        [*taken, *limit_room, band, (0.0, top, left, bottom)],
        (0.0, top - 4, width, bottom + 24),
        shy,
    )
    marks = (*key, *axes, *limit, *lines, *dots, *words)
    return Drawing(drawing_id, width, reached + 18, plot.title, plot.says, marks, kind)


def _recorded(point: DropPoint) -> float | None:
    return point.recorded


def _design(point: DropPoint) -> float | None:
    return point.design


def _key(plot: DropPlot, width: float) -> tuple[list[Mark], float]:
    """Which line is which, in a row or one under another; and where the plot may begin."""
    marks: list[Mark] = []
    x, y = 0.0, 14.0
    told = ((plot.recorded_words, _RECORDED), (plot.design_words, _DESIGN))
    for words, kind in told:
        if not words:
            continue
        wide = 46 + width_px(words, 12)
        if x and x + wide > width:
            x, y = 0.0, y + _KEY_PX
        sample = _whole if kind == _RECORDED else _dashes
        marks += [sample((x, y - 4), (x + 38, y - 4)), *_dot(x + 19, y - 4, kind)]
        marks.append(Lettering(x + 46, y, words))
        x += wide + 26
    return marks, y + 22


def _axes(
    plot: DropPlot, field: _Field, ways: tuple[float, ...], heights: tuple[float, ...]
) -> Iterator[Mark]:
    yield line(field.left, field.top - 4, field.left, field.bottom, "hair")
    yield line(field.left, field.bottom, field.right, field.bottom, "hair")
    for index, way in enumerate(ways):
        x, y = field.px(way, 0)
        yield line(x, y, x, y + 5, "hair")
        last = index == len(ways) - 1
        yield Lettering(x, y + 19, f"{figure_words(way)}{f' {plot.unit}' if last else ''}", "note", "middle")
    for percent in heights:
        x, y = field.px(0, percent)
        yield line(x - 5, y, x, y, "hair")
        yield Lettering(x - 8, y + 4, f"{figure_words(percent)} %", "note", "end")


def _limit(plot: DropPlot, field: _Field, lines: list[Extent]) -> tuple[tuple[Mark, ...], list[Extent]]:
    """The limit from side to side; its words at the end, above it or below, that the fewest lines cross."""
    (x1, y), (x2, _) = field.px(0, plot.limit), (field.right, 0.0)
    long = f"{plot.limit_words}: recommended at most"
    words = long if width_px(long, 11.5, bold=True) < (x2 - x1) * 0.6 else plot.limit_words
    ends: tuple[tuple[float, Anchor], ...] = ((x1 + 6, "start"), (x2 - 2, "end"))
    places = [Lettering(x, base, words, "tag", anchor) for x, anchor in ends for base in (y - 6, y + 15)]
    takes = {each: each.extent for each in places}
    chosen = min(places, key=lambda each: len(list(met(takes[each], lines))))
    return (line(x1, y, x2, y, "heavy"), chosen), [takes[chosen], *line_room((x1, y), (x2, y), 2)]


def _whole(a: _Px, b: _Px) -> Stroke:
    return line(*a, *b, _RECORDED)


def _dashes(a: _Px, b: _Px) -> Stroke:
    """Dashes that fall on the same x for every leg, so that legs on one another stay dashed."""
    (x1, y1), (x2, y2) = a, b
    if x2 - x1 < _DASH_PX:
        return line(*a, *b, _RECORDED)
    slope = (y2 - y1) / (x2 - x1)
    said = []
    for index in range(int(x1 // _PERIOD_PX), int(x2 // _PERIOD_PX) + 1):
        low, high = max(x1, index * _PERIOD_PX), min(x2, index * _PERIOD_PX + _DASH_PX)
        if low < high:
            ends = (low, y1 + (low - x1) * slope, high, y1 + (high - x1) * slope)
            said.append("M{:.1f} {:.1f}L{:.1f} {:.1f}".format(*ends))
    return Stroke("".join(said), _RECORDED)


def _legs(plot: DropPlot, field: _Field, of: _Where) -> Iterator[tuple[_Px, _Px]]:
    """From each point back to the nearest one before it that is plotted, or to the panel."""
    known = {each.name: each for each in plot.points}
    for point in plot.points:
        percent = of(point)
        if percent is None:
            continue
        before = known.get(point.before or "")
        while before is not None and of(before) is None:
            before = known.get(before.before or "")
        start = of(before) if before is not None else None
        yield (
            field.px(before.way if before is not None else 0.0, start or 0.0),
            field.px(point.way, percent),
        )


def _dots(plot: DropPlot, field: _Field) -> tuple[list[Mark], list[Extent]]:
    marks: list[Mark] = []
    taken: list[Extent] = []
    for point in plot.points:
        for percent, kind in ((point.recorded, _RECORDED), (point.design, _DESIGN)):
            if percent is not None:
                x, y = field.px(point.way, percent)
                marks += _dot(x, y, kind)
                taken.append((x - 4, y - 4, x + 4, y + 4))
    return marks, taken


def _dot(x: float, y: float, kind: str) -> tuple[Mark, ...]:
    """A full dot for the recorded load, an open one for the design load."""
    return (circle(x, y, _DOT_PX, "solid" if kind == _RECORDED else "part"),)


def _label(point: DropPoint, field: _Field) -> Label:
    percent = point.design if point.design is not None else point.recorded
    x, y = field.px(point.way, percent or 0.0)
    kind = point.ref.kind
    return Label(((point.name, "tag"),), x, y, 4, (-0.4, -1.0), point.ref, f"{kind} {point.name}")
