"""The lines of a plan between its boxes: circuits, what switches control, and runs to the panels."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from junctionary.drawings.ink import Lettering, Linked, Mark, Stroke, line, rect
from junctionary.drawings.lettering import width_px
from junctionary.drawings.placing import Extent, Label, inside, is_met, line_room, meet, met
from junctionary.drawings.plan_seats import Seat, edge_of
from junctionary.drawings.plan_walls import ToPx
from junctionary.sheets.links import Ref
from junctionary.sheets.plan import HomeRun, Plan

_Point = tuple[float, float]
_Shape = tuple[_Point, _Point, Lettering]

_TURNS = tuple(sorted(range(-15, 17), key=abs))
"""Sixteenths of a half turn by which an arrow may turn away from its panel, the least first."""

_REACHES = (1.8, 2.6, 3.6, 4.6, 5.8, 7.0, 8.2, 9.4, 10.6, 11.8, 13.0, 14.2, 15.4)
"""How far an arrow may reach, as a multiple of the radius of symbols."""

_CLEAR_PX = 2.0
"""What words of an arrow keep between themselves and anything else."""

_TOUCHES = 300.0
"""What speaks against words that touch a line, in the same measure as a turn and a length."""

_CROSSED, _ALONG = 5.0, 12.0
"""What speaks against each 6 px of an arrow that lie on a line; and besides where it runs along the line."""

_BREAK = 12.0
"""What speaks against breaking the edge of a thing for words, besides the length that is broken."""

_MISTAKEN_PX, _MISTAKEN = 11.0, 320.0
"""How near words may come to the symbol of another box, whose they would seem, and what speaks against it."""

_ROUNDS, _DEAR = 12, 80.0
"""How often arrows are set anew, in another order, while one of them has so much against it."""

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
    edges: Sequence[Extent],
    field: Extent,
    manner: Arrow,
) -> tuple[list[Mark], list[Label], list[Extent], float]:
    """An arrow towards its panel for each run there, its words at its point, the room they take, their price.

    Neither lies on what is taken; both keep off what is shunned where they
    can; words break the edges of things where nothing else is free. Words
    that find no room at a point are given back as labels.
    """
    order = tuple(plan.home_runs)
    tried: set[tuple[Ref, ...]] = set()
    best: tuple[float, list[_Found]] | None = None
    while len(tried) < _ROUNDS and (names := tuple(run.run for run in order)) not in tried:
        tried.add(names)
        found = _pointed(order, at, px, taken, shunned, edges, field, manner)
        total = sum(each.price for each in found)
        if best is None or total < best[0]:
            best = (total, found)
        if max((each.price for each in found), default=0.0) < _DEAR:
            break
        # What paid most for its place chooses sooner the next time.
        first, *rest = sorted(found, key=lambda each: -each.price)
        order = tuple(each.run for each in (first, *rest))
        if tuple(run.run for run in order) in tried:
            order = tuple(each.run for each in (*rest[:1], first, *rest[1:]))
    marks: list[Mark] = []
    left: list[Label] = []
    room: list[Extent] = []
    for each in best[1] if best is not None else ():
        foot, tip, said = each.shape
        if each.price >= _TOUCHES and not manner.names_panel:
            # The space of a crowded arrow is left to the list of what feeds the room.
            said = Lettering(0, 0, "")
        shaft = f"wire w{each.run.pattern}" if manner.is_wire else "hair"
        arrow = _arrow(foot, tip, shaft, 9.0 if manner.radius > 8 else 6.5)
        says = f"run {each.run.run.id}"
        about = _padded(said.extent, _CLEAR_PX)
        if said.text and any(meet(about, edge) for edge in edges):
            marks.append(rect(about[0], about[1], about[2] - about[0], about[3] - about[1], "floor"))
        marks.append(Linked(each.run.run, says, (*arrow, said) if said.text else arrow))
        room += line_room(foot, tip, 2)
        if said.text:
            room.append(_padded(said.extent, _CLEAR_PX))
        if not said.text and manner.names_panel:
            away = math.dist(foot, tip) or 1.0
            way = ((tip[0] - foot[0]) / away, (tip[1] - foot[1]) / away)
            left.append(Label(((each.run.panel, "note"),), *tip, 3, way, each.run.run, says))
    return marks, left, room, best[0] if best is not None else 0.0


@dataclass(frozen=True, slots=True)
class _Found:
    """The arrow found for a run, and what speaks against it."""

    run: HomeRun
    price: float
    shape: _Shape


def _pointed(
    runs: Sequence[HomeRun],
    at: Mapping[str, Seat],
    px: ToPx,
    taken: Sequence[Extent],
    shunned: Sequence[Extent],
    edges: Sequence[Extent],
    field: Extent,
    manner: Arrow,
) -> list[_Found]:
    """An arrow for each run, in this order, none on the words or the shaft of one before it."""
    done: list[_Found] = []
    words_room: list[Extent] = []
    crossed = list(shunned)
    for run in runs:
        start = at[run.box]
        words = run.panel if manner.names_panel else run.space
        towards = px(run.towards) if run.towards is not None else (start.x, start.y - 100)
        others: list[Extent] = []
        here: list[Extent] = []
        for each in (*taken, *words_room):
            if _holds(each, (start.x, start.y)):
                here.append(each)
            elif not _within(each, start.extent):
                # A pad keeps words from running into their neighbours.
                others.append(_padded(each, _CLEAR_PX))
        symbols = [each.extent for each in at.values() if each is not start]
        # Where words have no room the arrow goes without; where nothing has, over what is there.
        tries = ((words, others, 0.0), ("", symbols, 2 * _TOUCHES), ("", (), 3 * _TOUCHES))
        none = (3 * _TOUCHES, (edge_of(start, towards), towards, Lettering(0, 0, "")))
        price, shape = next(
            (
                (found[0] + more, found[1])
                for text, clear, more in tries
                if (
                    found := _best(
                        start, text, towards, clear, [*crossed, *here], edges, symbols, field, manner
                    )
                )
                is not None
            ),
            none,
        )
        done.append(_Found(run, price, shape))
        foot, tip, said = shape
        crossed += line_room(foot, tip, 4)
        if said.text:
            words_room.append(_padded(said.extent, _CLEAR_PX))
    return done


def _shared(at: Extent, line: Extent) -> float:
    """How much of a line words cover."""
    return max(min(at[2], line[2]) - max(at[0], line[0]), min(at[3], line[3]) - max(at[1], line[1]))


def _holds(at: Extent, point: _Point) -> bool:
    return at[0] <= point[0] <= at[2] and at[1] <= point[1] <= at[3]


def _padded(at: Extent, by: float) -> Extent:
    return (at[0] - by, at[1] - by, at[2] + by, at[3] + by)


def _within(at: Extent, other: Extent) -> bool:
    return at[0] > other[0] - 4 and at[1] > other[1] - 4 and at[2] < other[2] + 4 and at[3] < other[3] + 4


def _best(
    start: Seat,
    words: str,
    towards: _Point,
    taken: Sequence[Extent],
    shunned: Sequence[Extent],
    edges: Sequence[Extent],
    symbols: Sequence[Extent],
    field: Extent,
    manner: Arrow,
) -> tuple[float, _Shape] | None:
    """The arrow that best points to its panel with room for its words; None where none has."""
    angle = math.atan2(towards[1] - start.y, towards[0] - start.x)
    inward = start.box.inward
    apart_px = _MISTAKEN_PX * min(manner.radius / 10, 1.0)
    off = manner.radius * (_REACHES[-1] + 2) + width_px(words, 12) + 12
    around = (start.x - off, start.y - off, start.x + off, start.y + off)
    taken, shunned, edges = (met(around, each) for each in (taken, shunned, edges))
    best: tuple[float, _Shape] | None = None
    for rank, turn in enumerate(_TURNS):
        ux, uy = math.cos(angle + turn * math.pi / 16), math.sin(angle + turn * math.pi / 16)
        if inward is not None and ux * inward[0] + uy * inward[1] < -0.05:
            continue
        foot = edge_of(start, (start.x + ux * 500, start.y + uy * 500))
        at, crossed, along = foot, 0.0, 0
        for reach in _REACHES:
            cost = rank * 1.25 + reach * 4 + crossed
            if best is not None and cost >= best[0]:
                break
            tip = (foot[0] + ux * manner.radius * reach, foot[1] + uy * manner.radius * reach)
            way = line_room(at, tip, 2)
            if any(is_met(each, taken) for each in way):
                break
            more = way[1:] if at == foot else way
            for each in more:
                along = along + 1 if is_met(each, shunned) else 0
                crossed += is_met(each, edges) + (along > 0) * _CROSSED + (along > 2) * _ALONG
            at = tip
            for aside in (0, 1, -1):
                said = _at_tip(words, tip, (ux, uy), aside)
                price = rank * 1.25 + reach * 4 + crossed + 8.0 * abs(aside)
                if best is not None and price >= best[0]:
                    continue
                if not inside(said.extent, field) or is_met(said.extent, taken):
                    continue
                about = _padded(said.extent, _CLEAR_PX)
                price += _TOUCHES * is_met(about, shunned)
                price += sum(_BREAK + 0.3 * _shared(about, each) for each in met(about, edges))
                price += _MISTAKEN * is_met(_padded(said.extent, apart_px), symbols)
                if best is None or price < best[0]:
                    best = (price, (foot, tip, said))
    return best


def _at_tip(words: str, tip: _Point, way: _Point, aside: int) -> Lettering:
    """Words just beyond the point of an arrow, on the side it points to, or a quarter turn aside of that."""
    wide, tall = width_px(words, 12), 12.6
    ux, uy = (way[0] - aside * way[1], way[1] + aside * way[0]) if aside else way
    off = 7 if aside else 3
    x = tip[0] + ux * off + (1 if ux > 0 else -1) * wide / 2 * min(1.0, abs(ux) * 1.42)
    y = tip[1] + uy * off + (1 if uy > 0 else -1) * tall / 2 * min(1.0, abs(uy) * 1.42)
    return Lettering(x, y + 3.4, words, "note halo", "middle")


def _arrow(foot: _Point, tip: _Point, kind: str, size: float) -> tuple[Mark, ...]:
    away = math.dist(foot, tip) or 1.0
    ux, uy = (tip[0] - foot[0]) / away, (tip[1] - foot[1]) / away
    bx, by = tip[0] - ux * size, tip[1] - uy * size
    wx, wy = -uy * size * 0.38, ux * size * 0.38
    head = f"M{tip[0]:.1f} {tip[1]:.1f}L{bx + wx:.1f} {by + wy:.1f}L{bx - wx:.1f} {by - wy:.1f}Z"
    return (line(*foot, bx, by, kind), Stroke(head, "solid"))
