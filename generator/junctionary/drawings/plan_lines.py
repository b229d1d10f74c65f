"""The lines of a plan between its boxes: circuits, what switches control, and runs to the panels."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from junctionary.drawings.ink import Lettering, Linked, Mark, Stroke, line
from junctionary.drawings.lettering import width_px
from junctionary.drawings.placing import Extent, Label, inside, line_room, meet
from junctionary.drawings.plan_seats import Seat, edge_of
from junctionary.drawings.plan_walls import ToPx
from junctionary.sheets.plan import Plan

_Point = tuple[float, float]

_TURNS = (0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 7, -7, 8)
"""Eighths of a half turn by which an arrow may turn away from its panel, the least first."""

_SAME_WAY_PX = 8.0


@dataclass(frozen=True, slots=True)
class Ends:
    """A line from box to box, how far it bows as a part of its length, and its class."""

    start: str
    end: str
    bow: float
    kind: str


def curves(ends: Sequence[Ends], at: Mapping[str, Seat], middle: _Point) -> tuple[list[Mark], list[Extent]]:
    """The lines, each bent so that it runs through no other symbol and along no other line; their room."""
    marks: list[Mark] = []
    room: list[Extent] = []
    drawn: list[list[_Point]] = []
    for each in ends:
        a, b = at[each.start], at[each.end]
        others = [seat.extent for seat in at.values() if seat is not a and seat is not b]
        ways = iter(_bows(a, b, middle, each.bow))
        best = next(ways)
        least = _cost(best, others, drawn)
        for bow in ways:
            # Later ways are dearer in themselves: once nothing speaks against one the rest need no look.
            if bow[0] < least and (cost := _cost(bow, others, drawn)) < least:
                best, least = bow, cost
        (x1, y1), (cx, cy), (x2, y2) = best[1]
        marks.append(Stroke(f"M{x1:.1f} {y1:.1f}Q{cx:.1f} {cy:.1f} {x2:.1f} {y2:.1f}", each.kind))
        points = _sampled(best[1], 12)
        drawn.append(points)
        room += [piece for one, other in pairwise(points) for piece in line_room(one, other, 1)]
    return marks, room


_Bow = tuple[float, tuple[_Point, _Point, _Point]]


def _bows(a: Seat, b: Seat, middle: _Point, part: float) -> Iterator[_Bow]:
    """Curves from symbol to symbol, clear of both: towards the middle of the room first, then otherwise."""
    dx, dy = b.x - a.x, b.y - a.y
    length = math.hypot(dx, dy) or 1.0
    nx, ny = -dy / length, dx / length
    mx, my = (a.x + b.x) / 2, (a.y + b.y) / 2
    side = 1.0 if (middle[0] - mx) * nx + (middle[1] - my) * ny >= 0 else -1.0
    for price, factor in ((0, 1.0), (2, 1.7), (3, 0.4), (5, -1.0), (6, 2.4), (7, -1.7)):
        bend = max(length * part, 10.0) * side * factor
        cx, cy = mx + nx * bend, my + ny * bend
        yield price, (edge_of(a, (cx, cy)), (cx, cy), edge_of(b, (cx, cy)))


def _sampled(curve: tuple[_Point, _Point, _Point], steps: int) -> list[_Point]:
    (x1, y1), (cx, cy), (x2, y2) = curve
    return [
        (
            (1 - s) ** 2 * x1 + 2 * s * (1 - s) * cx + s * s * x2,
            (1 - s) ** 2 * y1 + 2 * s * (1 - s) * cy + s * s * y2,
        )
        for s in (step / steps for step in range(steps + 1))
    ]


def _cost(bow: _Bow, others: Sequence[Extent], drawn: Sequence[list[_Point]]) -> float:
    """What speaks against a curve: symbols it runs through, above all, and lines it runs along."""
    points = _sampled(bow[1], 16)
    around = _around(points)
    hit = sum(
        any(left - 2 < x < right + 2 and top - 2 < y < bottom + 2 for x, y in points)
        for left, top, right, bottom in others
        if meet(around, (left - 2, top - 2, right + 2, bottom + 2))
    )
    along = sum(
        sum(min(math.dist(point, other) for other in line) < _SAME_WAY_PX for point in points[3:-3]) > 5
        for line in drawn
        if meet(around, _around(line))
    )
    return bow[0] + 40 * hit + 4 * along


def _around(points: Sequence[_Point]) -> Extent:
    """The room that holds all the points, with half about it of what parts two lines that run together."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    pad = _SAME_WAY_PX / 2
    return (min(xs) - pad, min(ys) - pad, max(xs) + pad, max(ys) + pad)


@dataclass(frozen=True, slots=True)
class Arrow:
    """How the arrow of a run to a panel is drawn, and whether it names the panel or only the space."""

    radius: float
    is_wire: bool
    names_panel: bool


def home_runs(
    plan: Plan,
    at: Mapping[str, Seat],
    px: ToPx,
    taken: Sequence[Extent],
    shunned: Sequence[Extent],
    field: Extent,
    manner: Arrow,
) -> tuple[list[Mark], list[Label], list[Extent]]:
    """An arrow towards its panel for each run there, its words at its point, and the room they take.

    Neither lies on what is taken; both keep off what is shunned where they
    can. Words that find no room at a point are given back as labels.
    """
    marks: list[Mark] = []
    left: list[Label] = []
    room: list[Extent] = []
    for run in plan.home_runs:
        start = at[run.box]
        words = run.panel if manner.names_panel else run.space
        towards = px(run.towards) if run.towards is not None else (start.x, start.y - 100)
        # A pad keeps words from running into their neighbours.
        others = [_padded(each, 2) for each in (*taken, *room) if not _within(each, start.extent)]
        symbols = [each.extent for each in at.values() if each is not start]
        # Where words have no room the arrow goes without; where nothing has, over what is there.
        shape = next(
            found
            for text, clear in ((words, others), ("", symbols), ("", ()))
            if (found := _best(start, text, towards, clear, shunned, field, manner)) is not None or not clear
        )
        foot, tip, said = shape or (edge_of(start, towards), towards, Lettering(0, 0, ""))
        shaft = f"wire w{run.pattern}" if manner.is_wire else "hair"
        arrow = _arrow(foot, tip, shaft, 9.0 if manner.radius > 8 else 6.5)
        says = f"run {run.run.id}"
        marks.append(Linked(run.run, says, (*arrow, said) if said.text else arrow))
        room += line_room(foot, tip, 2)
        if said.text:
            room.append(_padded(said.extent, 3))
        else:
            away = math.dist(foot, tip) or 1.0
            way = ((tip[0] - foot[0]) / away, (tip[1] - foot[1]) / away)
            # On a phone the space of a crowded arrow is left to the list of what feeds the room.
            left.append(Label(((words, "note"),), *tip, 3, way, run.run, says, may_go=not manner.names_panel))
    return marks, left, room


def _padded(at: Extent, by: float) -> Extent:
    return (at[0] - by, at[1], at[2] + by, at[3])


def _within(at: Extent, other: Extent) -> bool:
    return at[0] > other[0] - 4 and at[1] > other[1] - 4 and at[2] < other[2] + 4 and at[3] < other[3] + 4


_Shape = tuple[_Point, _Point, Lettering]


def _best(
    start: Seat,
    words: str,
    towards: _Point,
    taken: Sequence[Extent],
    shunned: Sequence[Extent],
    field: Extent,
    manner: Arrow,
) -> _Shape | None:
    """The arrow that best points to its panel with room for its words; None where none has."""
    angle = math.atan2(towards[1] - start.y, towards[0] - start.x)
    inward = start.box.inward
    best: tuple[float, _Shape] | None = None
    for rank, turn in enumerate(_TURNS):
        ux, uy = math.cos(angle + turn * math.pi / 8), math.sin(angle + turn * math.pi / 8)
        if inward is not None and ux * inward[0] + uy * inward[1] < -0.05:
            continue
        foot = edge_of(start, (start.x + ux * 500, start.y + uy * 500))
        for reach in (1.8, 2.6, 3.6, 5.0):
            cost = rank * 2.5 + reach * 4
            if best is not None and cost >= best[0]:
                break
            tip = (foot[0] + ux * manner.radius * reach, foot[1] + uy * manner.radius * reach)
            said = _at_tip(words, tip, (ux, uy))
            way = line_room(foot, tip, 2)
            if not inside(said.extent, field) or any(
                meet(each, other) for each in (*way, said.extent) for other in taken
            ):
                continue
            cost += 30.0 * any(meet(said.extent, each) for each in shunned)
            cost += 14.0 * any(meet(each, other) for each in way[1:] for other in shunned)
            if best is None or cost < best[0]:
                best = (cost, (foot, tip, said))
    return best[1] if best is not None else None


def _at_tip(words: str, tip: _Point, way: _Point) -> Lettering:
    """Words just beyond the point of an arrow, on the side it points to."""
    wide, tall = width_px(words, 12), 12.6
    ux, uy = way
    x = tip[0] + ux * 3 + (1 if ux > 0 else -1) * wide / 2 * min(1.0, abs(ux) * 1.42)
    y = tip[1] + uy * 3 + (1 if uy > 0 else -1) * tall / 2 * min(1.0, abs(uy) * 1.42)
    return Lettering(x, y + 3.4, words, "note halo", "middle")


def _arrow(foot: _Point, tip: _Point, kind: str, size: float) -> tuple[Mark, ...]:
    away = math.dist(foot, tip) or 1.0
    ux, uy = (tip[0] - foot[0]) / away, (tip[1] - foot[1]) / away
    bx, by = tip[0] - ux * size, tip[1] - uy * size
    wx, wy = -uy * size * 0.38, ux * size * 0.38
    head = f"M{tip[0]:.1f} {tip[1]:.1f}L{bx + wx:.1f} {by + wy:.1f}L{bx - wx:.1f} {by - wy:.1f}Z"
    return (line(*foot, bx, by, kind), Stroke(head, "solid"))
