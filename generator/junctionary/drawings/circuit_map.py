"""The circuit map: from the breaker to the last box, wide for a desk or paper, narrow for a phone.

Wide, the tree reads left to right. The longest way on stays in line and
branches drop below it, so a chain of boxes is a straight line; each leaf has
a row of its own and nothing can overlap. A chain longer than the field goes
on below, from the box where it broke off.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, line, rect
from junctionary.drawings.lettering import wrapped
from junctionary.drawings.symbols import RADIUS_PX, severity_mark, symbol
from junctionary.sheets.circuit import CircuitMap, MapNode, MapRun

COLUMN_PX = 132.0
COLUMNS = 7
NARROW_PX = 340.0
_LINE_PX = 15.0
_NOTE_PX = 12.0
_LANE_PX = 44.0

KINDS = {"space": "breaker"}
"""What a thing is called aloud, where that is not the name of its kind."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A node in its row and column; ``forks``: it has siblings, ``goes_on``: its branches come later."""

    node: MapNode
    column: int
    row: int
    parent_row: int | None
    forks: bool = False
    goes_on: bool = False


def wide_map(plan: CircuitMap, drawing_id: str) -> Drawing:
    """The map laid out for a field of about 950 px."""
    marks: list[Mark] = []
    top = 0.0
    widest = 0
    for strip in _strips(plan.root):
        heights = _row_heights(strip)
        middles = [top + sum(heights[:row]) + 46 for row in range(len(heights))]
        marks.extend(mark for placed in strip for mark in _wires(placed, middles))
        marks.extend(mark for placed in strip for mark in _wide_node(placed, middles[placed.row]))
        top += sum(heights) + 14
        widest = max(widest, *(placed.column for placed in strip))
    width = (widest + 1) * COLUMN_PX
    return Drawing(drawing_id, width, top, plan.title, plan.says, tuple(marks), "wide")


def narrow_map(plan: CircuitMap, drawing_id: str) -> Drawing:
    """The map laid out down a phone, 340 px wide: the supply at the top, branches set in."""
    marks: list[Mark] = []
    rows: list[Mark] = []
    last_y: dict[int, float] = {}
    y = 8.0
    for node, lane, depth_of_parent in _down(plan.root):
        x = 22 + lane * _LANE_PX
        text_x = x + 34
        room = NARROW_PX - text_x - 20
        run_lines = _run_lines(node.run, room) if node.run else ()
        y += len(run_lines) * _LINE_PX + 34
        if node.run is not None and depth_of_parent is not None:
            marks.extend(_drop(node.run, depth_of_parent, last_y[depth_of_parent], x, y))
            first = y - 24 - (len(run_lines) - 1) * _LINE_PX
            kind = "note warn" if node.run.severity else "note"
            words = [Lettering(text_x, first + i * _LINE_PX, text, kind) for i, text in enumerate(run_lines)]
            rows.append(Linked(node.run.ref, f"run {node.run.ref.id}", tuple(words)))
            if node.run.severity:
                rows.extend(severity_mark(node.run.severity, NARROW_PX - 12, first - 4))
        notes = [text for note in node.notes for text in wrapped(note, room, _NOTE_PX)]
        names = wrapped(node.name, room, 14, bold=True)
        words = [Lettering(text_x, y + 5 + i * 17, text, "name") for i, text in enumerate(names)]
        below = y + 5 + (len(names) - 1) * 17
        words += [Lettering(text_x, below + (i + 1) * _LINE_PX, text) for i, text in enumerate(notes)]
        rows.extend(_reached(node, (*_hit(x - 22, y - 22, 44, 44), *symbol(node.symbol, x, y), *words)))
        if node.severity:
            rows.extend(severity_mark(node.severity, NARROW_PX - 12, y))
        last_y[lane] = y
        y = below + len(notes) * _LINE_PX + 6
    return Drawing(drawing_id, NARROW_PX, y + 12, plan.title, plan.says, (*marks, *rows), "narrow")


def _size(node: MapNode) -> int:
    return 1 + max((_size(branch) for branch in node.branches), default=0)


def _onward_first(node: MapNode) -> list[MapNode]:
    """The branches, the one that goes farthest first; the record's order otherwise."""
    return sorted(node.branches, key=_size, reverse=True)


def _strips(root: MapNode) -> Iterator[list[Placed]]:
    waiting = [root]
    while waiting:
        strip: list[Placed] = []
        broken: list[MapNode] = []
        _place(waiting.pop(0), (0, 0, None), False, strip, broken)
        waiting.extend(broken)
        yield strip


def _place(
    node: MapNode,
    at: tuple[int, int, int | None],
    forks: bool,
    strip: list[Placed],
    broken: list[MapNode],
) -> int:
    """Places a node and what hangs on it; gives the next free row."""
    column, row, parent_row = at
    goes_on = bool(node.branches) and column == COLUMNS - 1
    strip.append(Placed(node, column, row, parent_row, forks, goes_on))
    if goes_on:
        broken.append(node)
        return row + 1
    next_row = row
    for branch in _onward_first(node):
        next_row = _place(branch, (column + 1, next_row, row), len(node.branches) > 1, strip, broken)
    return max(next_row, row + 1)


def _down(root: MapNode) -> Iterator[tuple[MapNode, int, int | None]]:
    """Nodes from the top down with their lane and the lane they come from; what goes farthest comes last."""
    waiting: list[tuple[MapNode, int, int | None]] = [(root, 0, None)]
    while waiting:
        node, lane, parent = waiting.pop()
        yield node, lane, parent
        ordered = _onward_first(node)
        for index, branch in enumerate(ordered):
            waiting.append((branch, lane if index == 0 else lane + 1, lane))


def _run_lines(run: MapRun, room: float) -> tuple[str, ...]:
    return wrapped(f"{run.ref.id} · {run.cable} · {run.length}", room, _NOTE_PX, bold=bool(run.severity))


def _drop(run: MapRun, from_lane: int, from_y: float, x: float, y: float) -> Iterator[Stroke]:
    from_x = 22 + from_lane * _LANE_PX
    kind = _weight(run)
    if from_x == x:
        yield line(x, from_y + RADIUS_PX, x, y - RADIUS_PX, kind)
    else:
        yield Stroke(f"M{from_x:.1f} {from_y + RADIUS_PX:.1f}V{y:.1f}H{x - RADIUS_PX:.1f}", kind)


def _weight(run: MapRun) -> str:
    return ("run thin" if run.thin else "run") + (" dashed" if run.dashed else "")


def _note_lines(node: MapNode) -> tuple[str, ...]:
    return tuple(text for note in node.notes for text in wrapped(note, COLUMN_PX - 22, _NOTE_PX))


def _name_lines(node: MapNode) -> tuple[str, ...]:
    return wrapped(node.name, COLUMN_PX - 22, 14, bold=True)


def _row_heights(strip: list[Placed]) -> list[float]:
    heights = [0.0] * (1 + max(placed.row for placed in strip))
    for placed in strip:
        lines = len(_note_lines(placed.node)) + placed.goes_on
        tall = 46 + 38 + len(_name_lines(placed.node)) * 17 + lines * _LINE_PX
        heights[placed.row] = max(heights[placed.row], tall)
    return heights


def _wires(placed: Placed, middles: list[float]) -> Iterator[Mark]:
    run = placed.node.run
    if run is None or placed.parent_row is None:
        return
    x, y = _centre_x(placed.column), middles[placed.row]
    from_x, from_y = x - COLUMN_PX, middles[placed.parent_row]
    turn = from_x + 61
    kind = _weight(run)
    if placed.row == placed.parent_row:
        yield line(from_x + RADIUS_PX, y, x - RADIUS_PX, y, kind)
    else:
        yield Stroke(f"M{turn:.1f} {from_y:.1f}V{y:.1f}H{x - RADIUS_PX:.1f}", kind)
    # Beside a drop there is half the room; elsewhere the words stand at mid-run, clear of both symbols.
    mid, room = ((turn + x - RADIUS_PX) / 2, 52.0) if placed.forks else ((from_x + x) / 2, 64.0)
    above = wrapped(run.cable, room, _NOTE_PX, bold=bool(run.severity))
    first = y - 8 - (len(above) - 1) * 14
    kind = "note warn" if run.severity else "note"
    words = [Lettering(mid, first + i * 14, text, kind, "middle") for i, text in enumerate(above)]
    words += [
        Lettering(mid, y + 17 + i * 14, text, "note", "middle")
        for i, text in enumerate(wrapped(run.length, room, _NOTE_PX))
    ]
    yield Linked(run.ref, f"run {run.ref.id}", (*_hit(mid - room / 2, y - 22, room, 44), *words))
    if run.severity:
        yield from severity_mark(run.severity, mid, first - 20)


def _wide_node(placed: Placed, y: float) -> Iterator[Mark]:
    node, x = placed.node, _centre_x(placed.column)
    below = y + 38
    words: list[Mark] = []
    for text in _name_lines(node):
        words.append(Lettering(x, below, text, "name", "middle"))
        below += 17
    for text in _note_lines(node):
        words.append(Lettering(x, below - 2, text, "note", "middle"))
        below += _LINE_PX
    if placed.goes_on:
        words.append(Lettering(x, below - 2, "goes on below", "note warn", "middle"))
    yield from _reached(node, (*_hit(x - 24, y - 24, 48, 48), *symbol(node.symbol, x, y), *words))
    if node.severity:
        yield from severity_mark(node.severity, x, y - 31)


def _centre_x(column: int) -> float:
    return COLUMN_PX / 2 + column * COLUMN_PX


def _hit(x: float, y: float, width: float, height: float) -> tuple[Stroke, ...]:
    """A finger's room around a link."""
    return (rect(x, y, width, height, "hit"),)


def _reached(node: MapNode, marks: tuple[Mark, ...]) -> tuple[Mark, ...]:
    return (
        marks
        if node.ref is None
        else (Linked(node.ref, f"{KINDS.get(node.ref.kind, node.ref.kind)} {node.name}", marks),)
    )
