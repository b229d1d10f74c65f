"""A level as small as a postcard: its rooms, each with its name, each leading to its sheet."""

from junctionary.drawings.ink import Drawing, Linked, Mark, Stroke
from junctionary.drawings.placing import Extent
from junctionary.drawings.plan_names import name_in
from junctionary.drawings.plan_walls import floor_of, gap_of, leaf_room, stands_in, walls_of
from junctionary.sheets.plan import Inches, Plan

WIDTH_PX = 330.0
_TALLEST_PX = 300.0
_MARGIN_PX = 6.0
_SPARE_PX = -1.5
"""Letters are reckoned wide, and here there is no room to spare for that."""


def small_level(plan: Plan, widest_in: float) -> Drawing:
    """The rooms of a level for the cover; a name that has no room is left to the list.

    ``widest_in`` is the width of the widest plan beside it, which takes 330
    px: all are drawn to one scale.
    """
    points = [corner for room in plan.rooms for corner in room.corners]
    left, top = min(x for x, _ in points), min(y for _, y in points)
    wide, deep = max(x for x, _ in points) - left, max(y for _, y in points) - top
    scale = min((WIDTH_PX - 2 * _MARGIN_PX) / max(wide, widest_in), (_TALLEST_PX - 2 * _MARGIN_PX) / deep)

    def px(point: Inches) -> tuple[float, float]:
        return (_MARGIN_PX + (point[0] - left) * scale, _MARGIN_PX + (point[1] - top) * scale)

    gaps = [gap for gap in plan.gaps if any(stands_in(gap, room) for room in plan.rooms)]
    taken: list[Extent] = [each for gap in gaps for each in leaf_room(gap, px)]
    rooms: list[Mark] = []
    for room in plan.rooms:
        words = name_in(
            room.name, [px(each) for each in room.corners], "note", taken, spare_px=_SPARE_PX, step_px=1.0
        )
        taken += [each.extent for each in words]
        rooms.append(Linked(room.ref, f"room {room.name}", (Stroke(floor_of(room, px).d, "floor"), *words)))
    lines: list[Mark] = []
    for room in plan.rooms:
        lines += walls_of(room, plan.gaps, px)
    for gap in gaps:
        lines += gap_of(gap, px)
    width, height = wide * scale + 2 * _MARGIN_PX, deep * scale + 2 * _MARGIN_PX
    marks = (*rooms, *lines)
    return Drawing(f"{plan.id}-small", width, height, plan.title, plan.says, marks, "small")
