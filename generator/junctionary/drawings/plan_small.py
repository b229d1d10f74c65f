"""A level for the cover: its rooms, each leading to its sheet, and where a panel stands."""

from collections.abc import Iterator
from itertools import pairwise

from junctionary.drawings.ink import Drawing, Linked, Mark, Stroke
from junctionary.drawings.placing import Extent, Label, line_room, placed
from junctionary.drawings.plan_names import name_in
from junctionary.drawings.plan_symbols import on_plan, principal
from junctionary.drawings.plan_walls import ToPx, floor_of, gap_of, leaf_room, stands_in, walls_of
from junctionary.sheets.plan import Inches, Plan, PlanBox, PlanRoom

_WIDE_PX, _NARROW_PX = 600.0, 330.0
_MARGIN_PX = 6.0
_PANEL_PX = 8.0
"""Half the depth a panel's symbol takes from its wall."""
_SPARE_PX = -1.5
"""Letters are reckoned wide, and here there is no room to spare for that."""


def wide_small(plan: Plan, widest_in: float) -> Drawing:
    """The rooms of a level, for a desk; ``widest_in`` is the width of the widest plan of the house.

    The widest takes 600 px, and all are drawn to one scale. A name that has
    no room is left to the list.
    """
    return _small(plan, widest_in, _WIDE_PX, "wide")


def narrow_small(plan: Plan, widest_in: float) -> Drawing:
    """The same for a phone, 330 px wide."""
    return _small(plan, widest_in, _NARROW_PX, "narrow")


def _small(plan: Plan, widest_in: float, width_px: float, layout: str) -> Drawing:
    points = [corner for room in plan.rooms for corner in room.corners]
    left, top = min(x for x, _ in points), min(y for _, y in points)
    wide, deep = max(x for x, _ in points) - left, max(y for _, y in points) - top
    scale = min((width_px - 2 * _MARGIN_PX) / max(wide, widest_in), (0.9 * width_px - 2 * _MARGIN_PX) / deep)

    def px(point: Inches) -> tuple[float, float]:
        return (_MARGIN_PX + (point[0] - left) * scale, _MARGIN_PX + (point[1] - top) * scale)

    field = (0.0, 0.0, wide * scale + 2 * _MARGIN_PX, deep * scale + 2 * _MARGIN_PX)
    gaps = [gap for gap in plan.gaps if any(stands_in(gap, room) for room in plan.rooms)]
    panels = [box for box in plan.boxes if principal(box.symbols) == "panel"]
    symbols = [_panel(box, px) for box in panels]
    taken: list[Extent] = [each for gap in gaps for each in leaf_room(gap, px)]
    taken += [_about(box, px) for box in panels]
    rooms: list[Mark] = []
    for room in plan.rooms:
        words = name_in(
            room.name, [px(each) for each in room.corners], "note", taken, spare_px=_SPARE_PX, step_px=1.0
        )
        taken += [each.extent for each in words]
        rooms.append(Linked(room.ref, f"room {room.name}", (Stroke(floor_of(room, px).d, "floor"), *words)))
    walls = [each for room in plan.rooms for each in _walls(room, px)]
    named, _, _ = placed([_panel_name(box, px) for box in panels], taken, field, shy_of=walls)
    lines: list[Mark] = []
    for room in plan.rooms:
        lines += walls_of(room, plan.gaps, px)
    for gap in gaps:
        lines += gap_of(gap, px)
    marks = (*rooms, *lines, *symbols, *named)
    return Drawing(
        f"{plan.id}-small-{layout}", field[2], field[3], plan.title, plan.says, marks, f"{layout} small"
    )


def _at(box: PlanBox, px: ToPx) -> Inches:
    """The middle of a panel's symbol, which stands out from its wall."""
    (x, y), (dx, dy) = px(box.at), box.inward or (0.0, 0.0)
    return (x + dx * _PANEL_PX * 0.55, y + dy * _PANEL_PX * 0.55)


def _panel(box: PlanBox, px: ToPx) -> Linked:
    return Linked(box.ref, f"panel {box.name}", on_plan(box.symbols, *_at(box, px), _PANEL_PX, box.inward))


def _about(box: PlanBox, px: ToPx) -> Extent:
    x, y = _at(box, px)
    return (x - 1.5 * _PANEL_PX, y - 1.5 * _PANEL_PX, x + 1.5 * _PANEL_PX, y + 1.5 * _PANEL_PX)


def _panel_name(box: PlanBox, px: ToPx) -> Label:
    return Label(((box.name, "tag"),), *_at(box, px), 1.5 * _PANEL_PX, (0.0, 1.0), may_go=True)


def _walls(room: PlanRoom, px: ToPx) -> Iterator[Extent]:
    """The room its walls take."""
    points = [px(corner) for corner in room.corners]
    for start, end in pairwise((*points, points[0])):
        yield from line_room(start, end, 3)
