"""The loads as bars on one scale of amperes: service by each method, legs, feeders, each with its limit.

Three layouts: for a desk, for a tablet and paper, and for a phone.

A calculated load is hatched, what goes beyond its limit is hatched closely. A
leg is cut into its loads, every other one hatched, numbered as in its list.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.drawings.axis import figure_words, round_steps
from junctionary.drawings.hatching import hatched
from junctionary.drawings.ink import Drawing, Lettering, Mark, line, rect
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.sheets.links import plain
from junctionary.sheets.loads import Calculation, LegBar, LoadsSheet

WIDE_PX = 1300.0
MIDDLE_PX = 800.0
NARROW_PX = 340.0
_BAR_PX = 26.0
_LINE_PX = 15.0
_TOP_PX = 26.0


@dataclass(frozen=True, slots=True)
class _Bar:
    """A row: its words, its length, its limit, the lengths of its parts where it is a leg; all in A.

    ``whole`` is False where more may belong to it than is recorded.
    """

    name: str
    says: str
    amps: float
    limit_a: float | None
    whole: bool
    of_service: bool
    parts: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class _Field:
    """Where the bars stand: from which x, how many px an ampere takes, and the words' room."""

    left: float
    px_per_a: float
    words_px: float
    beside: bool

    def x(self, amps: float) -> float:
        return self.left + amps * self.px_per_a


def wide_bars(sheet: LoadsSheet, drawing_id: str) -> Drawing:
    """The bars with their words to the left, 1300 px wide."""
    return _drawn(sheet, drawing_id, WIDE_PX, 300.0, "wide bars")


def middle_bars(sheet: LoadsSheet, drawing_id: str) -> Drawing:
    """The same for a tablet and for paper, 800 px wide."""
    return _drawn(sheet, drawing_id, MIDDLE_PX, 236.0, "wide middle bars")


def narrow_bars(sheet: LoadsSheet, drawing_id: str) -> Drawing:
    """The bars for a phone, 340 px wide, their words above them."""
    return _drawn(sheet, drawing_id, NARROW_PX, 0.0, "narrow bars")


def _drawn(sheet: LoadsSheet, drawing_id: str, width: float, words_px: float, kind: str) -> Drawing:
    bars = _bars(sheet)
    steps = round_steps(max(max(each.amps, each.limit_a or 0) for each in bars), 6 if words_px else 4)
    left = words_px or 8.0
    # The last figure of the axis reaches half its width beyond the scale.
    last = width_px(f"{figure_words(steps[-1])} A", 12)
    scale = (width - left - max(8.0, last / 2)) / steps[-1]
    field = _Field(left, scale, (words_px or width) - 14, bool(words_px))
    marks: list[Mark] = []
    y = _TOP_PX
    service_end = y
    for bar in bars:
        row, y = _row(bar, field, y)
        marks += row
        if bar.of_service:
            service_end = y
    limits = {each.limit_a for each in bars if each.of_service and each.limit_a is not None}
    for limit in limits:
        x = field.x(limit)
        if field.beside:
            marks.append(line(x, _TOP_PX - 6, x, service_end - 6, "heavy"))
        words = f"service {figure_words(limit)} A"
        half = width_px(words, 11.5, bold=True) / 2
        at = min(max(x, half), width - half)
        marks.append(Lettering(at, _TOP_PX - 11, words, "tag", "middle"))
    marks += _axis(steps, field, y)
    says = f"Bars in amperes: {'; '.join(f'{each.name} {each.says}' for each in bars)}."
    return Drawing(drawing_id, width, y + 24, "Loads against their limits", says, tuple(marks), kind)


def _bars(sheet: LoadsSheet) -> tuple[_Bar, ...]:
    return (
        *(_calculated(each.heading, each, of_service=True) for each in sheet.methods),
        *(_leg(each) for each in sheet.legs),
        *(_calculated(plain(each.heading), each.load, of_service=False) for each in sheet.feeders),
    )


def _calculated(name: str, load: Calculation, *, of_service: bool) -> _Bar:
    limit = None if load.limit_a is None else float(load.limit_a)
    amps = float(load.amps)
    says = f"{'' if load.complete else 'at least '}{amps:.1f} A"
    if limit is not None:
        left = limit - amps
        says += f", {left:.1f} A to spare" if left >= 0 and load.complete else ""
        says += f", {-left:.1f} A over {figure_words(limit)} A" if left < 0 else ""
    return _Bar(name, says, amps, limit, load.complete, of_service)


def _leg(leg: LegBar) -> _Bar:
    parts = [each.va for each in leg.loads] + ([leg.motor_va] if leg.motor_va else [])
    return _Bar(
        f"Leg {leg.leg}, all nameplates at once",
        f"{'' if leg.complete else 'at least '}{float(leg.amps):.1f} A",
        float(leg.amps),
        None if leg.limit_a is None else float(leg.limit_a),
        leg.complete,
        True,
        tuple(float(each / leg.volts) for each in parts),
    )


def _row(bar: _Bar, field: _Field, y: float) -> tuple[list[Mark], float]:
    """One bar with its words, and where the next begins."""
    names = wrapped(bar.name, field.words_px, 13)
    says = wrapped(bar.says, field.words_px, 12)
    marks: list[Mark] = []
    text_y = y
    for index, text in enumerate((*names, *says)):
        text_y += _LINE_PX
        is_name = index < len(names)
        over = not is_name and " over " in bar.says
        kind = "word" if is_name else "note warn" if over else "note"
        marks.append(Lettering(0, text_y - 3, text, kind))
    top = y + 3 if field.beside else text_y + 3
    marks += _bar(bar, field, top)
    return marks, max(top + _BAR_PX, text_y) + 14


def _bar(bar: _Bar, field: _Field, y: float) -> Iterator[Mark]:
    left, right, bottom = field.x(0), field.x(bar.amps), y + _BAR_PX
    if bar.parts:
        yield from _parts(bar, field, y)
    else:
        limit = min(field.x(bar.limit_a), right) if bar.limit_a is not None else right
        yield from hatched([(left, y, limit, bottom)], 9, "hatch")
        yield from hatched([(limit, y, right, bottom)] if limit < right else [], 3.6, "over")
    yield rect(left, y, right - left, _BAR_PX, "mid")
    if not bar.whole:
        # An open end: what is missing would lengthen it.
        yield line(right, y, right + 14, y, "hair dashed-fine")
        yield line(right, bottom, right + 14, bottom, "hair dashed-fine")
    if bar.limit_a is not None and not (bar.of_service and field.beside):
        # Where words stand above the bars, the service's limit is drawn bar by bar, clear of them.
        x = field.x(bar.limit_a)
        yield line(x, y - 5, x, bottom + 5, "heavy")
    if bar.limit_a is not None and not bar.of_service:
        yield Lettering(field.x(bar.limit_a) + 7, y + 17, f"{figure_words(bar.limit_a)} A breaker", "tag")


def _parts(bar: _Bar, field: _Field, y: float) -> Iterator[Mark]:
    """The loads of a leg, every other one hatched; numbered where the number has room."""
    at = 0.0
    bottom = y + _BAR_PX
    for number, amps in enumerate(bar.parts, 1):
        left, right = field.x(at), field.x(at + amps)
        at += amps
        if number % 2 == 0:
            yield from hatched([(left, y, right, bottom)], 5, "hatch")
        yield line(right, y, right, bottom, "hair")
        words = str(number)
        wide = width_px(words, 11.5, bold=True)
        left, right = _clear(left, right, field.x(bar.limit_a) if bar.limit_a is not None else left)
        if right - left >= wide + 5:
            middle = (left + right) / 2
            if number % 2 == 0:
                yield rect(middle - wide / 2 - 1, y + 6, wide + 2, 14, "blank")
            yield Lettering(middle, y + 17, words, "tag", "middle")


def _clear(left: float, right: float, limit_x: float) -> tuple[float, float]:
    """The larger side of a load that the limit's line cuts."""
    if not left < limit_x < right:
        return left, right
    return (left, limit_x) if limit_x - left > right - limit_x else (limit_x, right)


def _axis(steps: tuple[float, ...], field: _Field, y: float) -> Iterator[Mark]:
    yield line(field.x(0), y, field.x(steps[-1]), y, "hair")
    for index, value in enumerate(steps):
        x = field.x(value)
        yield line(x, y, x, y + 5, "hair")
        last = index == len(steps) - 1
        yield Lettering(x, y + 18, f"{figure_words(value)}{' A' if last else ''}", "note", "middle")
