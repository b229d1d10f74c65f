"""The circuit map from left to right, from the breaker to the last box, for a desk, a tablet or paper.

The columns take the width there is. The longest way on stays in line, so a
chain of boxes is a straight line; branches drop below it.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, line
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.map_marks import NOTE_PX, gathered, graded, hit, reached, weight
from junctionary.drawings.symbols import RADIUS_PX, symbol
from junctionary.drawings.tidy_tree import Placed, depth, even_columns, strips
from junctionary.sheets.circuit import CircuitMap, MapNode

WIDE_PX = 1300.0
MIDDLE_PX = 800.0
_FIRST_PX = 62.0
"""From the left edge to the middle of the first column."""

_PITCH_PX = (126.0, 190.0)
"""The least and the most from column to column."""

_HEAD_PX = 34.0
"""What a row keeps above its line for symbols, and for a severity above the words of a run."""

_NAME_PX = 17.0
_LINE_PX = 15.0


@dataclass(frozen=True, slots=True)
class _Field:
    """Its columns, and how far apart they are."""

    columns: int
    pitch_px: float

    def x(self, column: int) -> float:
        return _FIRST_PX + column * self.pitch_px

    def turn(self, column: int) -> float:
        """Where the wire into a column drops, beyond the words of the column before."""
        return self.x(column) - self.pitch_px / 2 - 5

    def words_px(self, column: int) -> float:
        return self.pitch_px - 22 if column else min(self.pitch_px - 22, 2 * _FIRST_PX - 8)

    def run_px(self, forks: bool) -> float:
        """Room for the words of a run: beside a drop there is half as much."""
        return self.pitch_px / 2 - RADIUS_PX + 1 if forks else self.pitch_px - 4 * RADIUS_PX


def wide_map(plan: CircuitMap, drawing_id: str) -> Drawing:
    """The map for a desk, at most 1300 px wide."""
    return _drawn(plan, drawing_id, WIDE_PX, "wide map")


def middle_map(plan: CircuitMap, drawing_id: str) -> Drawing:
    """The map for a tablet and for paper, at most 800 px wide."""
    return _drawn(plan, drawing_id, MIDDLE_PX, "wide middle map")


def _drawn(plan: CircuitMap, drawing_id: str, most_px: float, kind: str) -> Drawing:
    field = _field(depth(plan.root), most_px)
    marks: list[Mark] = []
    top = 0.0
    widest = 0
    for strip in strips(plan.root, field.columns):
        heads, below = _rows(strip, field)
        middles = [top + sum(heads[: row + 1]) + sum(below[:row]) for row in range(len(heads))]
        marks.extend(mark for placed in strip for mark in _wires(placed, middles, field))
        marks.extend(mark for placed in strip for mark in _node(placed, middles[placed.row], field))
        top += sum(heads) + sum(below) + 14
        widest = max(widest, *(placed.column for placed in strip))
    width = field.x(widest) + field.pitch_px / 2
    return Drawing(drawing_id, width, top, plan.title, plan.says, tuple(marks), kind)


def _field(deep: int, most_px: float) -> _Field:
    least, most = _PITCH_PX
    columns = even_columns(deep, int((most_px - _FIRST_PX) / least + 0.5))
    return _Field(columns, min(most, float(int((most_px - _FIRST_PX) / (columns - 0.5)))))


def _rows(strip: tuple[Placed, ...], field: _Field) -> tuple[list[float], list[float]]:
    """How much of each row stands above the line of its symbols, and how much below it."""
    count = 1 + max(placed.row for placed in strip)
    heads, below = [_HEAD_PX] * count, [0.0] * count
    for placed in strip:
        tall = 38 + len(_names(placed, field)) * _NAME_PX + len(_lines(placed, field)) * _LINE_PX
        below[placed.row] = max(below[placed.row], tall)
        run = placed.node.run
        over = _HEAD_PX if run is not None and run.severity else 18.0
        heads[placed.row] = max(heads[placed.row], over + len(_cable(placed, field)) * 14.0)
    return heads, below


def _names(placed: Placed, field: _Field) -> tuple[str, ...]:
    return wrapped(placed.node.name, field.words_px(placed.column), 14, bold=True)


def _lines(placed: Placed, field: _Field) -> tuple[tuple[str, str], ...]:
    """What stands under a name, each line with its kind."""
    node = placed.node
    if placed.carried:
        return (("from above", "note warn"),)
    notes = gathered(node.notes, field.words_px(placed.column))
    return (
        *(((node.severity, "note warn"),) if node.severity else ()),
        *((text, "note") for text in notes),
        *((("goes on below", "note warn"),) if placed.goes_on else ()),
    )


def _cable(placed: Placed, field: _Field) -> tuple[str, ...]:
    """The run into a node and its cable, on one line where it holds both."""
    run = placed.node.run
    if run is None:
        return ()
    room, bold = field.run_px(placed.forks), bool(run.severity)
    whole = f"{run.ref.id} · {run.cable}"
    if width_px(whole, NOTE_PX, bold=bold) <= room:
        return (whole,)
    return tuple(text for each in (run.ref.id, run.cable) for text in wrapped(each, room, NOTE_PX, bold=bold))


def _wires(placed: Placed, middles: list[float], field: _Field) -> Iterator[Mark]:
    run = placed.node.run
    if run is None or placed.parent_row is None:
        return
    x, y = field.x(placed.column), middles[placed.row]
    from_x, from_y = field.x(placed.column - 1), middles[placed.parent_row]
    turn = field.turn(placed.column)
    kind = weight(run)
    if placed.row == placed.parent_row:
        yield line(from_x + RADIUS_PX, y, x - RADIUS_PX, y, kind)
    else:
        yield Stroke(f"M{turn:.1f} {from_y:.1f}V{y:.1f}H{x - RADIUS_PX:.1f}", kind)
    # Beside a drop the words stand at its middle; elsewhere at mid-run, clear of both symbols.
    mid = (turn + x - RADIUS_PX - 3) / 2 if placed.forks else (from_x + x) / 2
    room = field.run_px(placed.forks)
    above = _cable(placed, field)
    first = y - 8 - (len(above) - 1) * 14
    kind = "note warn" if run.severity else "note"
    words = [Lettering(mid, first + i * 14, text, kind, "middle") for i, text in enumerate(above)]
    words += [
        Lettering(mid, y + 17 + i * 14, text, "note", "middle")
        for i, text in enumerate(wrapped(run.length, room, NOTE_PX))
    ]
    if run.severity:
        word, mark = graded(run.severity, mid, first - 15)
        words.insert(0, word)
        yield from mark
    yield Linked(run.ref, f"run {run.ref.id}", (*hit(mid - room / 2, y - 22, room, 44), *words))


def _node(placed: Placed, y: float, field: _Field) -> Iterator[Mark]:
    node, x = placed.node, field.x(placed.column)
    below = y + 38
    words: list[Mark] = []
    for text in _names(placed, field):
        words.append(Lettering(x, below, text, "name", "middle"))
        below += _NAME_PX
    for text, kind in _lines(placed, field):
        if node.severity and text == node.severity:
            word, mark = graded(node.severity, x, below - 2)
            words.append(word)
            yield from mark
        else:
            words.append(Lettering(x, below - 2, text, kind, "middle"))
        below += _LINE_PX
    yield from _ends(placed, x, y)
    yield from reached(node, (*hit(x - 24, y - 24, 48, 48), *symbol(node.symbol, x, y), *words))


def _ends(placed: Placed, x: float, y: float) -> Iterator[Mark]:
    """The bus a breaker stands on; an arrow where a wire goes on below, or comes from above."""
    node: MapNode = placed.node
    if placed.carried:
        yield from _arrow(x - RADIUS_PX - 24, x - RADIUS_PX - 4, y)
    elif node.symbol == "breaker":
        yield line(x - 44, y, x - RADIUS_PX, y, "mid")
        yield line(x - 44, y - 17, x - 44, y + 17, "bus")
    if placed.goes_on:
        yield from _arrow(x + RADIUS_PX + 4, x + RADIUS_PX + 24, y)


def _arrow(from_x: float, to_x: float, y: float) -> Iterator[Stroke]:
    yield line(from_x, y, to_x, y, "mid")
    yield Stroke(f"M{to_x - 7:.1f} {y - 4:.1f}L{to_x:.1f} {y:.1f}L{to_x - 7:.1f} {y + 4:.1f}", "mid")
