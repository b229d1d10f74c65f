"""The faces of boxes on a wall, as they look from the room."""

from junctionary.drawings.ink import Linked, Mark, circle, line, rect
from junctionary.sheets.elevation import WallBox


def face_size(box: WallBox, px_per_in: float) -> tuple[float, float]:
    """Width and height of a box's face, in px: true to scale, but never too small to be seen."""
    if box.symbol == "panel":
        return max(14.5 * px_per_in, 16.0), max(30 * px_per_in, 30.0)
    return max(2.4 * px_per_in, 9.0) * min(box.gangs, 4), max(4.2 * px_per_in, 14.0)


def wall_box(box: WallBox, x: float, y: float, px_per_in: float) -> Mark:
    """The face of a box about a point; from behind only its outline, finely dashed."""
    width, height = face_size(box, px_per_in)
    kind = "behind dashed-fine" if box.behind else "part"
    marks: list[Mark] = [
        rect(x - 12, y - 12, 24, 24, "hit"),
        rect(x - width / 2, y - height / 2, width, height, kind),
    ]
    if not box.behind:
        marks += _face(box, x, y, width, height)
    return Linked(box.ref, f"{box.ref.kind} {box.name}", tuple(marks))


def _face(box: WallBox, x: float, y: float, width: float, height: float) -> list[Mark]:
    one = width / max(min(box.gangs, 4), 1)
    if box.symbol in ("receptacle", "gfci", "receptacle-single"):
        rows = (0.0,) if box.symbol == "receptacle-single" else (-height * 0.22, height * 0.22)
        return [
            line(x + dx, y + dy - 2, x + dx, y + dy + 2, "hair")
            for dy in rows
            for dx in (-one * 0.17, one * 0.17)
        ]
    if box.symbol in ("switch", "switch-3", "switch-4"):
        count = max(min(box.gangs, 4), 1)
        middles = [x - width / 2 + one * (i + 0.5) for i in range(count)]
        return [line(m, y - height * 0.22, m, y + height * 0.05, "mid") for m in middles]
    if box.symbol in ("light", "fan", "smoke-alarm"):
        return [circle(x, y, min(width, height) * 0.36, "hair")]
    if box.symbol == "panel":
        return [
            rect(x - width * 0.32, y - height * 0.38, width * 0.64, height * 0.76, "hair"),
            line(x, y - height * 0.38, x, y + height * 0.38, "hair"),
        ]
    if box.symbol == "junction":
        a, b = width / 2, height / 2
        return [line(x - a, y - b, x + a, y + b, "hair"), line(x - a, y + b, x + a, y - b, "hair")]
    return [circle(x, y, min(width, height) * 0.3, "hair")]
