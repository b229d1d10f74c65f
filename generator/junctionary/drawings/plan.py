"""A plan, of a room or of a level, wide and laid out anew for a phone.

What is drawn narrow carries the same symbols, smaller, each with the code of
its box; what stands in words beside the wide one is in the lists below it.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, letterings, line, rect
from junctionary.drawings.placing import Extent, Label, line_room, meet, placed
from junctionary.drawings.plan_codes import Code, beyond, side_of
from junctionary.drawings.plan_lines import Arrow, Ends, curves, home_runs
from junctionary.drawings.plan_margins import Margins, dimension_off, dimensioned, margins
from junctionary.drawings.plan_marks import dimension, dimension_room, north_arrow, scale_bar
from junctionary.drawings.plan_names import name_beside, name_in
from junctionary.drawings.plan_reach import far_stretch
from junctionary.drawings.plan_seats import Seat, pointers, seats
from junctionary.drawings.plan_symbols import on_plan
from junctionary.drawings.plan_walls import ToPx, floor_of, gap_of, leaf_room, stands_in, walls_of
from junctionary.sheets.circuit import Symbol
from junctionary.sheets.plan import Inches, Plan, PlanFixture, PlanRoom

NARROW_PX = 340.0
MIDDLE_PX = 690.0


@dataclass(frozen=True, slots=True)
class _Manner:
    """How a plan is laid out: its field, its scale at most, its symbols' radius, and what it carries.

    ``edge_px`` is kept free about a level; a room has what its codes and dimension lines want.
    """

    width_px: float
    tallest_px: float
    most_px_per_in: float
    radius: float
    edge_px: float = 0.0
    is_room: bool = False
    notes: bool = False
    legs: bool = False
    home_runs: Literal["", "space", "panel"] = ""
    codes: bool = True
    names: Literal["", "name", "key"] = ""


_ROOM = _Manner(900, 760, 3.2, 11, is_room=True, notes=True, legs=True, home_runs="panel")
_ROOM_MIDDLE = _Manner(MIDDLE_PX, 680, 2.6, 10, is_room=True, notes=True, legs=True, home_runs="panel")
_ROOM_NARROW = _Manner(NARROW_PX, 470, 1.7, 7, is_room=True, legs=True, home_runs="space")
_LEVEL = _Manner(1040, 1100, 2.0, 7, 58, legs=True, home_runs="space", names="name")
_LEVEL_MIDDLE = _Manner(MIDDLE_PX, 800, 2.0, 6, 40, legs=True, home_runs="space", names="name")
_LEVEL_NARROW = _Manner(NARROW_PX, 520, 1.2, 3, 22, codes=False, names="key")


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


def sign_sample(name: Symbol, *, of_room: bool) -> Drawing:
    """A symbol as the plan of a room or of a level has it, for the key."""
    marks = on_plan((name,), 20, 15, _ROOM_MIDDLE.radius if of_room else _LEVEL.radius, (0.0, 1.0))
    return Drawing(f"sign-{name}", 40, 30, name, "", marks, "sign")


@dataclass(frozen=True, slots=True)
class _Field:
    """The plan laid on its drawing: how inches become px, and what is kept free about it."""

    px: ToPx
    scale: float
    around: Margins
    walls: Extent
    width: float

    @property
    def extent(self) -> Extent:
        """What codes may reach into, down to the foot of the drawing."""
        return (4.0, 4.0, self.width - 4, self.walls[3] + self.around.bottom - 8)


def _drawn(plan: Plan, drawing_id: str, manner: _Manner, kind: str) -> Drawing:
    field = _laid_out(plan, manner)
    px = field.px
    gaps = [gap for gap in plan.gaps if any(stands_in(gap, room) for room in plan.rooms)]
    swings = [each for gap in gaps for each in leaf_room(gap, px)]
    sides = [
        each
        for room in plan.rooms
        for a, b in pairwise((*room.corners, *room.corners[:1]))
        for each in line_room(px(a), px(b), 2)
    ]
    edges = [each for fixture in plan.fixtures for each in _edges(fixture, px)]
    base: list[Mark] = [floor_of(each, px) for each in plan.rooms]
    base += [_fixture(each, px) for each in plan.fixtures]
    for room in plan.rooms:
        base += walls_of(room, plan.gaps, px)
    for gap in gaps:
        base += gap_of(gap, px)
    fails = [far_stretch(each, px) for each in plan.far]
    seated = seats(plan.boxes, px, manner.radius)
    at = {each.box.name: each for each in seated}
    middle = ((field.walls[0] + field.walls[2]) / 2, (field.walls[1] + field.walls[3]) / 2)
    bows, bow_room = curves(_ends(plan, manner), at, middle)
    leads, lead_room = pointers(seated, px)
    symbols = [_symbol(each, manner) for each in seated]
    taken: list[Extent] = [*(each.extent for each in seated), *lead_room]
    taken += [each.extent for each in letterings(tuple(symbols))]
    taken += [each for _, _, takes in fails for each in takes]
    dims, dim_room = _dimensions(plan, field, manner, taken)
    taken += dim_room
    outer = [code for each in seated if manner.is_room and (code := _outer(each, plan, manner)) is not None]
    codes, code_room, set_beyond = beyond(outer, field.walls, field.extent, swings)
    taken += code_room
    labels = [says for _, says, _ in fails]
    hard, soft = [*sides, *swings], [*edges, *bow_room]
    labels += [_code(each, manner) for each in seated if manner.codes and each.box.name not in set_beyond]

    def pointed(taken: list[Extent]) -> tuple[list[Mark], list[Label], list[Extent], float]:
        arrow = Arrow(manner.radius, manner.is_room, manner.home_runs == "panel")
        return home_runs(plan, at, px, [*taken, *hard], bow_room, edges, field.extent, arrow)

    def written(labels: list[Label], taken: list[Extent]) -> tuple[tuple[Mark, ...], float, list[Extent]]:
        return placed(labels, taken, field.extent, hard, soft)

    arrows, words, reached, word_room = _told(labels, taken, pointed if manner.home_runs else None, written)
    taken += word_room
    names: list[Mark] = []
    for fixture in plan.fixtures if manner.notes else ():
        said = _what(fixture, field, [*taken, *hard], edges, bow_room)
        names += said
        taken += [each.extent for each in said]
    for room in plan.rooms if manner.names else ():
        names += _name(room, px, manner, [*taken, *swings], taken, soft)
        taken += [each.extent for each in letterings(tuple(names[-1:]))]
    foot = max(field.extent[3], reached, *(each[3] for each in swings)) + 12
    corner: list[Mark] = []
    if plan.north_deg is not None:
        corner += north_arrow(26, foot + 22, plan.north_deg)
    corner += scale_bar(60, foot + 16, field.scale, plan.scale, field.width - 110)
    stretches = [mark for lines, _, _ in fails for mark in lines]
    marks = (
        *base, *dims, *stretches, *bows, *leads, *arrows, *symbols, *codes, *words, *names, *corner,
    )  # fmt: skip
    return Drawing(drawing_id, field.width, foot + 56, plan.title, plan.says, marks, f"{kind} plan")


_Written = tuple[tuple[Mark, ...], float, list[Extent]]


def _told(
    codes: list[Label],
    taken: list[Extent],
    pointed: Callable[[list[Extent]], tuple[list[Mark], list[Label], list[Extent], float]] | None,
    written: Callable[[list[Label], list[Extent]], _Written],
) -> tuple[list[Mark], tuple[Mark, ...], float, list[Extent]]:
    """The runs to the panels, the codes within the walls: the ones or the others first, as is clearer."""
    words, reached, room = written(codes, taken)
    if pointed is None:
        return [], words, reached, room
    arrows, unsaid, arrow_room, price = pointed([*taken, *room])
    more, lower, more_room = written(unsaid, [*taken, *room, *arrow_room])
    price += _unclear((*words, *more), more_room, [*room, *arrow_room])
    one = (arrows, (*words, *more), max(reached, lower), [*room, *arrow_room, *more_room])
    arrows, unsaid, arrow_room, dear = pointed(taken)
    words, reached, room = written([*unsaid, *codes], [*taken, *arrow_room])
    dear += _unclear(words, room, arrow_room)
    return one if price <= dear else (arrows, words, reached, [*arrow_room, *room])


def _unclear(words: tuple[Mark, ...], room: list[Extent], other: list[Extent]) -> float:
    """What speaks against words with leaders, most of all leaders that cross something."""
    leaders = sum(isinstance(each, Stroke) for each in words)
    return 40.0 * leaders + 300.0 * sum(meet(one, each) for one in room for each in other)


def _laid_out(plan: Plan, manner: _Manner) -> _Field:
    left, top, right, bottom = _bounds(plan)
    provisional = seats(plan.boxes, lambda point: point, 0.1)
    outer = [code for each in provisional if (code := _outer(each, plan, manner)) is not None]
    scale = 0.0
    edge = manner.edge_px
    around = Margins(edge, edge, edge, edge)
    for _ in range(2):
        # A door that opens outward pushes the dimension lines of its side out of its way.
        if manner.is_room:
            around = margins(plan, outer, (left, top, right, bottom), scale, manner.width_px)
        scale = min(
            manner.most_px_per_in,
            (manner.width_px - around.left - around.right) / (right - left),
            (manner.tallest_px - around.top - around.bottom) / (bottom - top),
        )
    wide = (right - left) * scale
    width = min(max(wide + around.left + around.right, 250.0), manner.width_px)
    off_x = around.left + max(width - wide - around.left - around.right, 0.0) / 2

    def px(point: Inches) -> tuple[float, float]:
        return (off_x + (point[0] - left) * scale, around.top + (point[1] - top) * scale)

    return _Field(px, scale, around, (*px((left, top)), *px((right, bottom))), width)


def _bounds(plan: Plan) -> tuple[float, float, float, float]:
    points = [corner for room in plan.rooms for corner in room.corners]
    points += [box.at for box in plan.boxes]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(max(xs), min(xs) + 12), max(max(ys), min(ys) + 12)


def _ends(plan: Plan, manner: _Manner) -> list[Ends]:
    """Every line between two boxes, circuits first."""
    ends: list[Ends] = []
    if manner.is_room:
        ends += [Ends(wire.start, wire.end, 0.1, f"wire w{wire.pattern}") for wire in plan.wires]
    if manner.legs:
        ends += [Ends(a, b, 0.24, "leg") for a, b in plan.controls]
    return ends


def _dimensions(
    plan: Plan, field: _Field, manner: _Manner, taken: list[Extent]
) -> tuple[list[Mark], list[Extent]]:
    """The dimension lines of a room, their words breaking them, and the room they take."""
    marks: list[Mark] = []
    lengths: list[Label] = []
    room: list[Extent] = []
    for side in dimensioned(plan) if manner.is_room else ():
        off = dimension_off(side, _bounds(plan), field.around)
        lines, says = dimension(side, field.px, off)
        marks += lines
        lengths += says
        room += dimension_room(side, field.px, off)
    measures, _, _ = placed(lengths, taken, field.extent)
    marks += [_blank(each.extent) for each in letterings(measures)]
    return [*marks, *measures], [*room, *(each.extent for each in letterings(measures))]


def _fixture(fixture: PlanFixture, px: ToPx) -> Mark:
    points = [px(each) for each in fixture.corners]
    kind = "hair dashed-fine" if fixture.assumed else "hair"
    return Stroke("M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points) + "Z", kind)


def _symbol(each: Seat, manner: _Manner) -> Mark:
    box = each.box
    marks: list[Mark] = [rect(each.x - 12, each.y - 12, 24, 24, "hit")]
    marks += on_plan(box.symbols, each.x, each.y, manner.radius, box.inward)
    return Linked(box.ref, f"{box.ref.kind} {box.name}", tuple(marks))


def _blank(at: Extent) -> Mark:
    return rect(at[0] - 2, at[1] - 1, at[2] - at[0] + 4, at[3] - at[1] + 2, "blank")


def _lines(each: Seat, manner: _Manner) -> tuple[tuple[str, str], ...]:
    """The code of a box, and under it its circuits, its guard and its height."""
    beside = " ".join((*(f"({number})" for number in each.box.circuits), *each.box.notes))
    noted = ((beside, "note"),) if manner.notes and beside else ()
    return ((each.box.name, "tag"), *noted)


def _outer(each: Seat, plan: Plan, manner: _Manner) -> Code | None:
    """The code of a box that stands beyond its wall on a room's own plan, where nothing else is drawn."""
    side = side_of(each, _bounds(plan))
    return Code(each, _lines(each, manner), side) if side is not None else None


def _code(each: Seat, manner: _Manner) -> Label:
    box = each.box
    ux, uy = box.inward or (-0.7, -0.7)
    clear = max(each.radius * 1.2, *each.reach)
    return Label(_lines(each, manner), each.x, each.y, clear, (ux, uy), box.ref, f"{box.ref.kind} {box.name}")


def _name(
    room: PlanRoom, px: ToPx, manner: _Manner, clear: list[Extent], taken: list[Extent], lines: list[Extent]
) -> tuple[Mark, ...]:
    """The name of a room, or its number, in its middle if it can be and never out of it while it has room."""
    text, kind = (room.key, "name") if manner.names == "key" else (room.name, "room")
    corners = [px(each) for each in room.corners]
    ways = ((kind, 6, 4.0, clear), (kind, 2, 4.0, clear), ("tag", 2, 4.0, clear), ("tag", -3, 1.0, clear))
    said = next(
        (
            found
            for how, spare, step, off in (*ways, ("tag", 2, 4.0, taken))
            if (found := name_in(text, corners, how, off, lines, spare, step))
        ),
        (),
    )
    says = f"room {room.name}"
    if said:
        return (Linked(room.ref, says, tuple(said)),)
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    label = Label(
        ((text, kind),), (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2, 0, (0, -1), room.ref, says
    )
    return placed([label], taken, (0.0, 0.0, 1e4, 1e4))[0]


def _what(
    fixture: PlanFixture, field: _Field, taken: list[Extent], edges: list[Extent], bows: list[Extent]
) -> tuple[Lettering, ...]:
    """What a thing is, written on it or close beside it; where neither has room it is left to the list."""
    corners = [field.px(each) for each in fixture.corners]
    text = fixture.what.replace("-", " ")
    said = name_in(text, corners, "note", [*taken, *bows], edges) or name_in(
        text, corners, "note", taken, [*edges, *bows]
    )
    return said or name_beside(text, corners, "note", [*taken, *edges, *bows], field.walls)


def _edges(fixture: PlanFixture, px: ToPx) -> Iterator[Extent]:
    points = [px(each) for each in fixture.corners]
    for a, b in pairwise((*points, *points[:1])):
        yield from line_room(a, b, 1)
