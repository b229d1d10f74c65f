"""What is kept free about a room's plan: codes of boxes beyond its walls, then dimension lines."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from junctionary.drawings.lettering import width_px
from junctionary.drawings.plan_codes import Code, Side, depth_px
from junctionary.drawings.plan_walls import stands_in
from junctionary.sheets.plan import Inches, Plan, PlanSide

_LEAST_PX = 22.0
_DIMENSION_PX = 16.0
"""From what lies nearest to the walls to the dimension line beyond it."""

_INNER_PX = 20.0
"""How far off a side that is not an outermost one its dimension line stands."""

_EDGE_IN = 3.0

_Bounds = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Margins:
    """Px kept free beyond each side of the walls; ``lines`` say how far off dimension lines stand."""

    left: float
    top: float
    right: float
    bottom: float
    lines: tuple[tuple[Side, float], ...] = ()


def dimensioned(plan: Plan) -> tuple[PlanSide, ...]:
    """The sides that have a dimension line: of two that lie over against each other, alike, only one.

    Of those the upper and the left one.
    """
    kept: dict[tuple[bool, float, float, str], PlanSide] = {}
    for side in plan.sides:
        upright = _is_upright(side)
        along = sorted((side.start[1], side.end[1]) if upright else (side.start[0], side.end[0]))
        key = (upright, round(along[0]), round(along[1]), side.says)
        other = kept.get(key)
        axis = 0 if upright else 1
        if other is None or side.start[axis] < other.start[axis]:
            kept[key] = side
    return tuple(kept.values())


def margins(plan: Plan, codes: Sequence[Code], bounds: _Bounds, scale: float, width_px_: float) -> Margins:
    """What codes, doors that open outward and dimension lines want beyond each side at this scale."""
    out = dict(_outward(plan, bounds))
    deep: dict[Side, float] = {}
    lines: dict[Side, float] = {}
    sides: tuple[Side, ...] = ("left", "top", "right", "bottom")
    for side in sides:
        near = max(depth_px(codes, side, width_px_ - 8), out[side] * scale)
        deep[side] = max(near + 10, _LEAST_PX)
        said = [each.says for each in dimensioned(plan) if _side(each, bounds) == side]
        if said:
            lines[side] = near + _DIMENSION_PX
            half = max(width_px(each, 12) for each in said) / 2 if side in ("left", "right") else 8.0
            deep[side] = lines[side] + half + 8
    return Margins(deep["left"], deep["top"], deep["right"], deep["bottom"], tuple(lines.items()))


def dimension_off(side: PlanSide, bounds: _Bounds, around: Margins) -> float:
    """How far beyond its side a dimension line stands, in px."""
    where = _side(side, bounds)
    return next((off for each, off in around.lines if each == where), _INNER_PX)


def _is_upright(side: PlanSide) -> bool:
    return abs(side.end[0] - side.start[0]) < abs(side.end[1] - side.start[1])


def _side(side: PlanSide, bounds: _Bounds) -> Side | None:
    """Which outermost side of the plan this is; None for one that is set back."""
    left, top, right, bottom = bounds
    (x1, y1), (x2, y2) = side.start, side.end
    if _is_upright(side):
        if max(abs(x1 - left), abs(x2 - left)) < _EDGE_IN and y2 < y1:
            return "left"
        return "right" if max(abs(x1 - right), abs(x2 - right)) < _EDGE_IN and y2 > y1 else None
    if max(abs(y1 - top), abs(y2 - top)) < _EDGE_IN and x2 > x1:
        return "top"
    return "bottom" if max(abs(y1 - bottom), abs(y2 - bottom)) < _EDGE_IN and x2 < x1 else None


def _outward(plan: Plan, bounds: _Bounds) -> Iterator[tuple[Side, float]]:
    """How far doors stand out of the plan when open, in inches, side by side."""
    left, top, right, bottom = bounds
    open_: list[Inches] = [
        leaf.open
        for gap in plan.gaps
        if any(stands_in(gap, room) for room in plan.rooms)
        for leaf in gap.leaves
    ]
    yield "left", max((left - x for x, _ in open_), default=0.0)
    yield "top", max((top - y for _, y in open_), default=0.0)
    yield "right", max((x - right for x, _ in open_), default=0.0)
    yield "bottom", max((y - bottom for _, y in open_), default=0.0)
