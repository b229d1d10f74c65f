"""A level as small as a postcard: its rooms, each with its name, each leading to its sheet."""

from junctionary.drawings.ink import Drawing, Linked, Mark, Stroke, letterings
from junctionary.drawings.lettering import wrapped
from junctionary.drawings.placing import Extent, Label, placed
from junctionary.drawings.plan_walls import floor_of, gap_of, stands_in, walls_of
from junctionary.sheets.plan import Inches, Plan, PlanRoom

WIDTH_PX = 330.0
_TALLEST_PX = 300.0
_MARGIN_PX = 6.0


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

    field = (0.0, 0.0, wide * scale + 2 * _MARGIN_PX, deep * scale + 2 * _MARGIN_PX)
    rooms: list[Mark] = []
    taken: list[Extent] = []
    for room in plan.rooms:
        floor = floor_of(room, px)
        inside = _inside(room, px(room.corners[0]), scale)
        words, _ = placed([_name(room, inside)], taken, inside)
        taken += [each.extent for each in letterings(words)]
        rooms.append(Linked(room.ref, f"room {room.name}", (Stroke(floor.d, "floor"), *words)))
    lines: list[Mark] = []
    for room in plan.rooms:
        lines += walls_of(room, plan.gaps, px)
    for gap in plan.gaps:
        if any(stands_in(gap, room) for room in plan.rooms):
            lines += gap_of(gap, px)
    marks = (*rooms, *lines)
    return Drawing(f"{plan.id}-small", field[2], field[3], plan.title, plan.says, marks, "small")


def _inside(room: PlanRoom, first: tuple[float, float], scale: float) -> Extent:
    """The room's extent, less its walls."""
    xs = [first[0] + (x - room.corners[0][0]) * scale for x, _ in room.corners]
    ys = [first[1] + (y - room.corners[0][1]) * scale for _, y in room.corners]
    return (min(xs) + 3, min(ys) + 3, max(xs) - 3, max(ys) - 3)


def _name(room: PlanRoom, inside: Extent) -> Label:
    lines = wrapped(room.name, max(inside[2] - inside[0], 20.0), 12)
    middle = ((inside[0] + inside[2]) / 2, (inside[1] + inside[3]) / 2)
    return Label(tuple((each, "note") for each in lines), *middle, -6, (0, 1), may_go=True, on=True)
