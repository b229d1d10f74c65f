"""A plan, of a room or of a level, wide and laid out anew for a phone.

What is drawn narrow carries the same symbols, smaller, each with the code of
its box; what stands in words beside the wide one is in the lists below it.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from junctionary.drawings.ink import Drawing, Linked, Mark, Stroke, letterings, line, rect
from junctionary.drawings.placing import Extent, Label, line_room, placed
from junctionary.drawings.plan_marks import dimension, dimension_room, north_arrow, scale_bar
from junctionary.drawings.plan_reach import far_stretch
from junctionary.drawings.plan_symbols import on_plan, principal
from junctionary.drawings.plan_walls import ToPx, floor_of, gap_of, leaf_room, stands_in, walls_of
from junctionary.sheets.plan import Inches, Plan, PlanBox, PlanFixture, PlanGap, PlanRoom

NARROW_PX = 340.0
MIDDLE_PX = 690.0


@dataclass(frozen=True, slots=True)
class _Manner:
    """How a plan is laid out: its field, its scale at most, its symbols' radius, and what it carries."""

    width_px: float
    tallest_px: float
    most_px_per_in: float
    margin_px: float
    radius: float
    notes: bool = False
    wires: bool = False
    legs: bool = False
    home_runs: Literal["", "space", "panel"] = ""
    sides_px: float = 0.0
    codes: bool = True
    names: bool = False
    keys: bool = False


_ROOM = _Manner(900, 720, 3.2, 116, 11, notes=True, wires=True, legs=True, home_runs="panel", sides_px=96)
_ROOM_MIDDLE = _Manner(
    MIDDLE_PX, 640, 2.6, 100, 10, notes=True, wires=True, legs=True, home_runs="panel", sides_px=82
)
_ROOM_NARROW = _Manner(NARROW_PX, 450, 1.7, 54, 7, wires=True, legs=True, home_runs="space", sides_px=30)
_LEVEL = _Manner(1040, 1100, 2.0, 44, 7, legs=True, home_runs="space", names=True)
_LEVEL_MIDDLE = _Manner(MIDDLE_PX, 800, 2.0, 36, 5.5, legs=True, home_runs="space", names=True)
_LEVEL_NARROW = _Manner(NARROW_PX, 520, 1.2, 22, 3, codes=False, keys=True)


def wide_room(plan: Plan) -> Drawing:
    """The plan of a room for a desk, at most 900 px wide."""
    return _drawn(plan, f"{plan.id}-wide", _ROOM, "wide")


def middle_room(plan: Plan) -> Drawing:
    """The same for a tablet and for paper, at most 690 px wide."""
    return _drawn(plan, f"{plan.id}-middle", _ROOM_MIDDLE, "middle")


def narrow_room(plan: Plan) -> Drawing:
    """The same for a phone, at most 340 px wide."""
    return _drawn(plan, f"{plan.id}-narrow", _ROOM_NARROW, "narrow")


def wide_level(plan: Plan) -> Drawing:
    """The plan of a level, with the names of its rooms and the codes of its boxes."""
    return _drawn(plan, f"{plan.id}-wide", _LEVEL, "wide")


def middle_level(plan: Plan) -> Drawing:
    """The same for a tablet and for paper, at most 690 px wide."""
    return _drawn(plan, f"{plan.id}-middle", _LEVEL_MIDDLE, "middle")


def narrow_level(plan: Plan) -> Drawing:
    """The same for a phone: rooms by the number they have in the list under it, boxes as marks."""
    return _drawn(plan, f"{plan.id}-narrow", _LEVEL_NARROW, "narrow")


def line_sample(pattern: int | Literal["leg", "far"], number: int) -> Drawing:
    """A short piece of a line as the numbered line of a key: a circuit's by its pattern, or another's."""
    kind = pattern if isinstance(pattern, str) else f"wire w{pattern}"
    names = {"leg": "from a switch", "far": "out of reach"}
    name = names[pattern] if isinstance(pattern, str) else f"line {pattern + 1}"
    return Drawing(f"line-{number}", 64, 12, name, "", (line(2, 6, 62, 6, kind),), "sample")


@dataclass(frozen=True, slots=True)
class _Set:
    """A box where its symbol was set."""

    box: PlanBox
    x: float
    y: float
    radius: float


def _drawn(plan: Plan, drawing_id: str, manner: _Manner, kind: str) -> Drawing:
    left, top, right, bottom = _bounds(plan)
    beside, below = manner.margin_px, manner.margin_px
    gaps = [gap for gap in plan.gaps if any(stands_in(gap, room) for room in plan.rooms)]
    scale = 0.0
    for _ in range(2):
        # A door that opens outward pushes the dimension lines of its side out of its way.
        out_x, out_y = _outward(gaps, (left, top, right, bottom), scale)
        if manner.sides_px:
            beside = max(beside, out_x + manner.margin_px - manner.sides_px + 10)
            below = max(below, out_y + manner.margin_px - manner.sides_px + 10)
        scale = min(
            manner.most_px_per_in,
            (manner.width_px - 2 * beside) / (right - left),
            (manner.tallest_px - 2 * manner.margin_px) / (bottom - top),
        )
    width = max((right - left) * scale + 2 * beside, 2 * beside + 150)
    width = min(width, manner.width_px)
    off_x = (width - (right - left) * scale) / 2

    def px(point: Inches) -> tuple[float, float]:
        return (off_x + (point[0] - left) * scale, below + (point[1] - top) * scale)

    plan_bottom = below + (bottom - top) * scale
    base: list[Mark] = [floor_of(each, px) for each in plan.rooms]
    base += [_fixture(each, px) for each in plan.fixtures]
    for room in plan.rooms:
        base += walls_of(room, plan.gaps, px)
    for gap in gaps:
        base += gap_of(gap, px)
    fails = [far_stretch(each, px) for each in plan.far]
    dims: list[Mark] = []
    lengths: list[Label] = []
    dim_lines: list[Extent] = []
    if manner.sides_px:
        for side in plan.sides:
            upright = abs(side.end[0] - side.start[0]) < abs(side.end[1] - side.start[1])
            off = manner.sides_px + (beside if upright else below) - manner.margin_px
            lines, says = dimension(side, px, off)
            dims += lines
            lengths += says
            dim_lines += dimension_room(side, px, off)
    sets = _settled(plan.boxes, px, manner.radius)
    at = {each.box.name: each for each in sets}
    middle = ((px((left, top))[0] + px((right, bottom))[0]) / 2, (below + plan_bottom) / 2)
    curves, curve_room = _curves(plan, at, middle, manner)
    symbols = [_symbol(each, px, manner) for each in sets]
    # A dimension line is kept clear of codes; slashes and witness lines are not.
    field = (4.0, 4.0, width - 4, plan_bottom + below - 8)
    taken: list[Extent] = [_extent(each) for each in sets]
    taken += [each.extent for each in letterings(tuple(symbols))]
    taken += [each for _, _, takes in fails for each in takes]
    measures, _ = placed(lengths, taken, field)
    # The words break the line they stand in.
    dims += [_blank(each.extent) for each in letterings(measures)]
    dims += measures
    taken += [*dim_lines, *(each.extent for each in letterings(measures))]
    arrows, arrow_labels, arrow_room = _home_runs(plan, at, px, taken, manner)
    taken += arrow_room
    names = [_name(each, px, manner) for each in plan.rooms] if manner.names or manner.keys else []
    labels = [*names, *(says for _, says, _ in fails)]
    labels += [*(_code(each, manner) for each in sets if manner.codes), *arrow_labels]
    if manner.notes:
        labels += [_what(each, px) for each in plan.fixtures]
    sides = [
        each
        for room in plan.rooms
        for a, b in pairwise((*room.corners, *room.corners[:1]))
        for each in line_room(px(a), px(b), 2)
    ]
    swings = [each for gap in gaps for each in leaf_room(gap, px)]
    edges = [each for fixture in plan.fixtures for each in _edges(fixture, px)]
    words, reached = placed(labels, taken, field, sides, [*edges, *swings, *curve_room])
    foot = max(plan_bottom + below - 8, reached, *(each[3] for each in swings)) + 12
    corner: list[Mark] = []
    if plan.north_deg is not None:
        corner += north_arrow(26, foot + 22, plan.north_deg)
    corner += scale_bar(60, foot + 16, scale, plan.scale, width - 110)
    stretches = [mark for lines, _, _ in fails for mark in lines]
    marks = (*base, *dims, *stretches, *curves, *arrows, *symbols, *words, *corner)
    return Drawing(drawing_id, width, foot + 56, plan.title, plan.says, marks, f"{kind} plan")


def _bounds(plan: Plan) -> tuple[float, float, float, float]:
    points = [corner for room in plan.rooms for corner in room.corners]
    points += [box.at for box in plan.boxes]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(max(xs), min(xs) + 12), max(max(ys), min(ys) + 12)


def _outward(gaps: list[PlanGap], around: Extent, scale: float) -> tuple[float, float]:
    """How far doors stand out of the plan when open, sideways and up or down, in px."""
    left, top, right, bottom = around
    open_ = [leaf.open for gap in gaps for leaf in gap.leaves]
    sideways = max((max(left - x, x - right) for x, _ in open_), default=0.0)
    upright = max((max(top - y, y - bottom) for _, y in open_), default=0.0)
    return max(sideways, 0.0) * scale, max(upright, 0.0) * scale


def _fixture(fixture: PlanFixture, px: ToPx) -> Mark:
    points = [px(each) for each in fixture.corners]
    kind = "hair dashed-fine" if fixture.assumed else "hair"
    return Stroke("M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points) + "Z", kind)


def _settled(boxes: Iterable[PlanBox], px: ToPx, radius: float) -> list[_Set]:
    """Each symbol where it belongs, or as near as those before it allow; those on ceilings first."""
    done: list[_Set] = []
    for box in sorted(boxes, key=lambda each: each.inward is not None):
        x, y = px(box.at)
        r = radius * 1.3 if principal(box.symbols) == "panel" else radius
        for at in _seats(box, x, y, radius):
            if all(math.dist(at, (each.x, each.y)) >= (r + each.radius) * 1.12 for each in done):
                break
        done.append(_Set(box, *at, r))
    return done


def _seats(box: PlanBox, x: float, y: float, radius: float) -> Iterator[tuple[float, float]]:
    if box.inward is not None:
        ux, uy = box.inward
        lift = radius * (0.55 if principal(box.symbols) == "panel" else 1.35)
        for step in range(4):
            deep = lift + step * radius * 2.4
            yield (x + ux * deep, y + uy * deep)
        x, y = x + ux * lift, y + uy * lift
    else:
        yield (x, y)
    for ring in range(1, 60):
        for turn in range(16):
            angle = math.pi * turn / 8
            yield (x + math.cos(angle) * ring * radius * 0.8, y + math.sin(angle) * ring * radius * 0.8)


def _extent(each: _Set) -> Extent:
    reach = each.radius * 1.15
    return (each.x - reach, each.y - reach, each.x + reach, each.y + reach)


def _symbol(each: _Set, px: ToPx, manner: _Manner) -> Mark:
    box = each.box
    x, y = px(box.at)
    marks: list[Mark] = [rect(each.x - 12, each.y - 12, 24, 24, "hit")]
    if math.dist((x, y), (each.x, each.y)) > each.radius * 1.6:
        marks.append(line(x, y, each.x, each.y, "leader"))
    marks += on_plan(box.symbols, each.x, each.y, manner.radius, box.inward)
    return Linked(box.ref, f"{box.ref.kind} {box.name}", tuple(marks))


def _blank(at: Extent) -> Mark:
    return rect(at[0] - 2, at[1] - 1, at[2] - at[0] + 4, at[3] - at[1] + 2, "blank")


def _code(each: _Set, manner: _Manner) -> Label:
    box = each.box
    lines: list[tuple[str, str]] = [(box.name, "tag")]
    if manner.notes:
        beside = " ".join((*(f"({number})" for number in box.circuits), *box.notes))
        lines += [(beside, "note")] if beside else []
    ux, uy = box.inward or (-0.7, -0.7)
    # On a room's own plan codes stand outside its walls, where nothing else is drawn.
    out = -1.0 if manner.sides_px else 1.0
    clear = each.radius * 1.2 if box.inward is None or out > 0 else each.radius * 2.6
    return Label(
        tuple(lines), each.x, each.y, clear, (ux * out, uy * out), box.ref, f"{box.ref.kind} {box.name}"
    )


def _name(room: PlanRoom, px: ToPx, manner: _Manner) -> Label:
    xs, ys = [x for x, _ in room.corners], [y for _, y in room.corners]
    x, y = px(((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2))
    return Label(
        ((room.key if manner.keys else room.name, "name"),), x, y, -6, (0, -1), room.ref, f"room {room.name}"
    )


def _what(fixture: PlanFixture, px: ToPx) -> Label:
    """What a thing is, written on it where there is room."""
    points = [px(each) for each in fixture.corners]
    x, y = (sum(each[axis] for each in points) / len(points) for axis in (0, 1))
    return Label(((fixture.what.replace("-", " "), "note"),), x, y, -6, (0, 1), may_go=True)


def _edges(fixture: PlanFixture, px: ToPx) -> Iterator[Extent]:
    points = [px(each) for each in fixture.corners]
    for a, b in pairwise((*points, *points[:1])):
        yield from line_room(a, b, 1)


def _curves(
    plan: Plan, at: dict[str, _Set], middle: tuple[float, float], manner: _Manner
) -> tuple[list[Mark], list[Extent]]:
    """The lines of circuits and from switches, and the room they take."""
    ends: list[tuple[str, str, float, str]] = []
    if manner.wires:
        ends += [(wire.start, wire.end, 0.1, f"wire w{wire.pattern}") for wire in plan.wires]
    if manner.legs:
        ends += [(a, b, 0.24, "leg") for a, b in plan.controls]
    marks: list[Mark] = []
    room: list[Extent] = []
    for a, b, part, kind in ends:
        (x1, y1), (cx, cy), (x2, y2) = _bow(at[a], at[b], middle, part)
        marks.append(Stroke(f"M{x1:.1f} {y1:.1f}Q{cx:.1f} {cy:.1f} {x2:.1f} {y2:.1f}", kind))
        steps = [step / 6 for step in range(7)]
        points = [
            (
                (1 - s) ** 2 * x1 + 2 * s * (1 - s) * cx + s * s * x2,
                (1 - s) ** 2 * y1 + 2 * s * (1 - s) * cy + s * s * y2,
            )
            for s in steps
        ]
        room += [each for one, other in pairwise(points) for each in line_room(one, other, 1)]
    return marks, room


def _bow(
    a: _Set, b: _Set, middle: tuple[float, float], part: float
) -> tuple[tuple[float, float], tuple[float, float], tuple[float, float]]:
    """A curve from symbol to symbol, bent towards the middle of the room and clear of both."""
    dx, dy = b.x - a.x, b.y - a.y
    length = math.hypot(dx, dy) or 1.0
    nx, ny = -dy / length, dx / length
    mx, my = (a.x + b.x) / 2, (a.y + b.y) / 2
    side = 1.0 if (middle[0] - mx) * nx + (middle[1] - my) * ny >= 0 else -1.0
    bend = max(length * part, 10.0) * side
    cx, cy = mx + nx * bend, my + ny * bend
    ends = []
    for each in (a, b):
        away = math.hypot(cx - each.x, cy - each.y) or 1.0
        off = min(each.radius * 1.1, away)
        ends.append((each.x + (cx - each.x) / away * off, each.y + (cy - each.y) / away * off))
    return ends[0], (cx, cy), ends[1]


def _home_runs(
    plan: Plan, at: dict[str, _Set], px: ToPx, taken: list[Extent], manner: _Manner
) -> tuple[list[Mark], list[Label], list[Extent]]:
    marks: list[Mark] = []
    labels: list[Label] = []
    room: list[Extent] = []
    for run in plan.home_runs if manner.home_runs else ():
        start = at[run.box]
        towards = px(run.towards) if run.towards is not None else (start.x, start.y - 100)
        x, y = _arrow_tip(start, towards, [*taken, *room], manner)
        arrow = _arrow(start, x, y, f"wire w{run.pattern}" if manner.wires else "hair", manner.radius)
        marks.append(Linked(run.run, f"run {run.run.id}", arrow))
        room.append((x - 5, y - 5, x + 5, y + 5))
        away_px = math.hypot(x - start.x, y - start.y) or 1.0
        words = run.panel if manner.home_runs == "panel" else run.space
        away = ((x - start.x) / away_px, (y - start.y) / away_px)
        # On a phone the space of a crowded arrow is left to the list of what feeds the room.
        labels.append(
            Label(((words, "note"),), x, y, 5, away, run.run, f"run {run.run.id}", may_go=not manner.notes)
        )
    return marks, labels, room


def _arrow_tip(
    start: _Set, towards: tuple[float, float], taken: list[Extent], manner: _Manner
) -> tuple[float, float]:
    """Where a home run's arrow ends: towards its panel, or as near to that way as is free, in the room."""
    angle = math.atan2(towards[1] - start.y, towards[0] - start.x)
    inward = start.box.inward
    best = None
    for turn in (0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 7, -7, 8):
        way = angle + turn * math.pi / 8
        ux, uy = math.cos(way), math.sin(way)
        if inward is not None and ux * inward[0] + uy * inward[1] < 0.25:
            continue
        for reach in (2.9, 3.9):
            x, y = start.x + ux * manner.radius * reach, start.y + uy * manner.radius * reach
            best = best or (x, y)
            if not any(e[0] - 6 < x < e[2] + 6 and e[1] - 6 < y < e[3] + 6 for e in taken):
                return x, y
    return best or (start.x, start.y - manner.radius * 3)


def _arrow(start: _Set, x: float, y: float, kind: str, radius: float) -> tuple[Mark, ...]:
    away = math.hypot(x - start.x, y - start.y) or 1.0
    ux, uy = (x - start.x) / away, (y - start.y) / away
    size = 9.0 if radius > 8 else 6.5
    bx, by = x - ux * size, y - uy * size
    wx, wy = -uy * size * 0.38, ux * size * 0.38
    head = f"M{x:.1f} {y:.1f}L{bx + wx:.1f} {by + wy:.1f}L{bx - wx:.1f} {by - wy:.1f}Z"
    off = radius * 1.1
    return (line(start.x + ux * off, start.y + uy * off, bx, by, kind), Stroke(head, "solid"))
