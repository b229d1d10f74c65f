"""The circuit map: from the breaker to the last box, wide for a desk or paper, narrow for a phone.

Wide, the tree reads left to right. The longest way on stays in line and
branches drop below it, so a chain of boxes is a straight line; each leaf has
a row of its own and nothing can overlap. A chain longer than the field goes
on below, from the box where it broke off.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, line, rect
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.symbols import RADIUS_PX, severity_mark, symbol
from junctionary.sheets.circuit import CircuitMap, MapNode, MapRun
from junctionary.sheets.entries import Severity

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
        heights, heads = _row_heights(strip)
        middles = [top + sum(heights[:row]) + heads[row] for row in range(len(heights))]
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
        text_x = x + 38
        room = NARROW_PX - text_x - 20
        run_room = room - _severity_px(node.run.severity) if node.run else room
        run_lines = _run_lines(node.run, run_room) if node.run else ()
        y += len(run_lines) * _LINE_PX + 34
        if node.run is not None and depth_of_parent is not None:
            marks.extend(_drop(node.run, depth_of_parent, last_y[depth_of_parent], x, y))
            first = y - 24 - (len(run_lines) - 1) * _LINE_PX
            kind = "note warn" if node.run.severity else "note"
            words = [Lettering(text_x, first + i * _LINE_PX, text, kind) for i, text in enumerate(run_lines)]
            rows.append(Linked(node.run.ref, f"run {node.run.ref.id}", tuple(words)))
            rows.extend(_graded(node.run.severity, first - 4))
        notes = [text for note in _gathered(node.notes) for text in wrapped(note, room, _NOTE_PX)]
        names = wrapped(node.name, room - _severity_px(node.severity), 14, bold=True)
        words = [Lettering(text_x, y + 5 + i * 17, text, "name") for i, text in enumerate(names)]
        below = y + 5 + (len(names) - 1) * 17
        words += [Lettering(text_x, below + (i + 1) * _LINE_PX, text) for i, text in enumerate(notes)]
        rows.extend(_reached(node, (*_hit(x - 22, y - 22, 44, 44), *symbol(node.symbol, x, y), *words)))
        rows.extend(_graded(node.severity, y))
        last_y[lane] = y
        y = below + len(notes) * _LINE_PX + 6
    return Drawing(drawing_id, NARROW_PX, y + 12, plan.title, plan.says, (*marks, *rows), "narrow")


def _gathered(notes: tuple[str, ...]) -> tuple[str, ...]:
    """The first note, and the rest run on: a phone is narrow, but wider than a column."""
    # A point stays with what it follows, so that no line begins with one.
    return (*notes[:1], "\u00a0· ".join(notes[1:])) if len(notes) > 1 else notes


def _severity_px(severity: Severity | None) -> float:
    return width_px(severity, 11.5, bold=True) + 8 if severity else 0.0


def _graded(severity: Severity | None, y: float) -> Iterator[Mark]:
    """The word and the mark of a severity at the edge of a phone's drawing."""
    if severity:
        yield Lettering(NARROW_PX - 24, y + 4, severity, "tag warn", "end")
        yield from severity_mark(severity, NARROW_PX - 12, y)


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


def _row_heights(strip: list[Placed]) -> tuple[list[float], list[float]]:
    """How tall each row is, and how much of it stands above the line of its symbols."""
    count = 1 + max(placed.row for placed in strip)
    heads, below = [46.0] * count, [0.0] * count
    for placed in strip:
        node = placed.node
        lines = len(_note_lines(node)) + placed.goes_on + (node.severity is not None)
        tall = 38 + len(_name_lines(node)) * 17 + lines * _LINE_PX
        below[placed.row] = max(below[placed.row], tall)
        if node.run is not None and node.run.severity:
            heads[placed.row] = max(heads[placed.row], 46 + len(_cable_lines(placed)) * 14.0)
    return [head + tall for head, tall in zip(heads, below, strict=True)], heads


def _cable_lines(placed: Placed) -> tuple[str, ...]:
    """What the cable into a node is called: beside a drop there is half the room."""
    run = placed.node.run
    if run is None:
        return ()
    return wrapped(run.cable, 52.0 if placed.forks else 64.0, _NOTE_PX, bold=bool(run.severity))


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
    above = _cable_lines(placed)
    first = y - 8 - (len(above) - 1) * 14
    kind = "note warn" if run.severity else "note"
    words = [Lettering(mid, first + i * 14, text, kind, "middle") for i, text in enumerate(above)]
    words += [
        Lettering(mid, y + 17 + i * 14, text, "note", "middle")
        for i, text in enumerate(wrapped(run.length, room, _NOTE_PX))
    ]
    if run.severity:
        words.insert(0, Lettering(mid, first - 15, run.severity, "note warn", "middle"))
        yield from severity_mark(run.severity, mid, first - 35)
    yield Linked(run.ref, f"run {run.ref.id}", (*_hit(mid - room / 2, y - 22, room, 44), *words))


def _wide_node(placed: Placed, y: float) -> Iterator[Mark]:
    node, x = placed.node, _centre_x(placed.column)
    below = y + 38
    words: list[Mark] = []
    for text in _name_lines(node):
        words.append(Lettering(x, below, text, "name", "middle"))
        below += 17
    if node.severity:
        words.append(Lettering(x, below - 2, node.severity, "note warn", "middle"))
        below += _LINE_PX
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
