"""The circuit map down a phone: the supply at the top, branches set in, what goes farthest last."""

from collections.abc import Iterator

from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, line
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.map_marks import NOTE_PX, gathered, hit, reached, weight
from junctionary.drawings.one_line_parts import upright
from junctionary.drawings.symbols import RADIUS_PX, severity_mark, symbol
from junctionary.drawings.tidy_tree import onward_first
from junctionary.sheets.circuit import CircuitMap, MapNode, MapRun
from junctionary.sheets.entries import Severity

NARROW_PX = 340.0
_LINE_PX = 15.0
_LANE_PX = 44.0


def narrow_map(plan: CircuitMap, drawing_id: str) -> Drawing:
    """The map laid out down a phone, 340 px wide: the supply at the top, branches set in."""
    marks: list[Mark] = []
    rows: list[Mark] = []
    last_y: dict[int, float] = {}
    y = 8.0
    for node, lane, lane_of_parent in _down(plan.root):
        x = 22 + lane * _LANE_PX
        text_x = x + 38
        room = NARROW_PX - text_x - 20
        run_room = room - _severity_px(node.run.severity) if node.run else room
        run_lines = _run_lines(node.run, run_room) if node.run else ()
        y += len(run_lines) * _LINE_PX + 34
        if node.run is not None and lane_of_parent is not None:
            marks.extend(_drop(node.run, lane_of_parent, last_y[lane_of_parent], x, y))
            first = y - 24 - (len(run_lines) - 1) * _LINE_PX
            kind = "note warn" if node.run.severity else "note"
            words = [Lettering(text_x, first + i * _LINE_PX, text, kind) for i, text in enumerate(run_lines)]
            rows.append(Linked(node.run.ref, f"run {node.run.ref.id}", tuple(words)))
            rows.extend(_graded(node.run.severity, first - 4))
        notes = gathered(node.notes, room)
        names = wrapped(node.name, room - _severity_px(node.severity), 14, bold=True)
        words = [Lettering(text_x, y + 5 + i * 17, text, "name") for i, text in enumerate(names)]
        below = y + 5 + (len(names) - 1) * 17
        words += [Lettering(text_x, below + (i + 1) * _LINE_PX, text) for i, text in enumerate(notes)]
        rows.extend(reached(node, (*hit(x - 22, y - 22, 44, 44), *_sign(node, x, y), *words)))
        rows.extend(_graded(node.severity, y))
        last_y[lane] = y
        y = below + len(notes) * _LINE_PX + 6
    return Drawing(drawing_id, NARROW_PX, y + 12, plan.title, plan.says, (*marks, *rows), "narrow")


def _sign(node: MapNode, x: float, y: float) -> Iterator[Mark]:
    """The symbol of a node; a breaker hangs on the bus of its panel."""
    if node.symbol == "breaker":
        yield line(x - 17, y - 26, x + 17, y - 26, "bus")
        yield line(x, y - 26, x, y - 14, "mid")
        yield from upright(x, y, "breaker")
    else:
        yield from symbol(node.symbol, x, y)


def _severity_px(severity: Severity | None) -> float:
    return width_px(severity, 11.5, bold=True) + 8 if severity else 0.0


def _graded(severity: Severity | None, y: float) -> Iterator[Mark]:
    """The word and the mark of a severity at the edge of the drawing."""
    if severity:
        yield Lettering(NARROW_PX - 24, y + 4, severity, "tag warn", "end")
        yield from severity_mark(severity, NARROW_PX - 12, y)


def _down(root: MapNode) -> Iterator[tuple[MapNode, int, int | None]]:
    """Nodes from the top down with their lane and the lane they come from; what goes farthest comes last."""
    waiting: list[tuple[MapNode, int, int | None]] = [(root, 0, None)]
    while waiting:
        node, lane, parent = waiting.pop()
        yield node, lane, parent
        ordered = onward_first(node)
        for index, branch in enumerate(ordered):
            waiting.append((branch, lane if index == 0 else lane + 1, lane))


def _run_lines(run: MapRun, room: float) -> tuple[str, ...]:
    return wrapped(f"{run.ref.id} · {run.cable} · {run.length}", room, NOTE_PX, bold=bool(run.severity))


def _drop(run: MapRun, from_lane: int, from_y: float, x: float, y: float) -> Iterator[Stroke]:
    from_x = 22 + from_lane * _LANE_PX
    kind = weight(run)
    if from_x == x:
        yield line(x, from_y + RADIUS_PX, x, y - RADIUS_PX, kind)
    else:
        yield Stroke(f"M{from_x:.1f} {from_y + RADIUS_PX:.1f}V{y:.1f}H{x - RADIUS_PX:.1f}", kind)
