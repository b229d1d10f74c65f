"""The face of a panel, in elevation: breakers as they stand, called out on both sides.

Wide for a desk or paper and narrow for a phone; small where only some of its
breakers are to be found. Both legs run down the middle as they do behind the
cover, lettered where they reach a space.
"""

from collections.abc import Iterator

from junctionary.drawings.breakers import EMPTY, Body, in_spaces, is_short, joined, main_in, toggle_x
from junctionary.drawings.callouts import spread
from junctionary.drawings.ink import SIZES_PX, Anchor, Drawing, Lettering, Linked, Mark, Stroke, line, rect
from junctionary.drawings.lettering import width_px
from junctionary.drawings.panel_layout import (
    GAP_PX,
    LINE_PX,
    NARROW,
    WIDE,
    FacePlan,
    Item,
    Layout,
    bodies_of,
    laid_out,
    sides,
)
from junctionary.drawings.symbols import severity_mark
from junctionary.sheets.face import LitFace, PanelFace
from junctionary.sheets.links import Ref

_SMALL_PITCH_PX = 10.0
_SMALL_BODY_PX = 25.0


def wide_face(face: PanelFace, drawing_id: str) -> Drawing:
    """The face laid out for a laptop or a sheet of paper."""
    return _drawn(face, WIDE, drawing_id, "wide")


def narrow_face(face: PanelFace, drawing_id: str) -> Drawing:
    """The face laid out for a phone."""
    return _drawn(face, NARROW, drawing_id, "narrow")


def small_face(small: LitFace, drawing_id: str) -> Drawing:
    """The face without words, but for the numbers of the breakers that are marked."""
    face, pitch = small.face, _SMALL_PITCH_PX
    labels = {"left": [0.0], "right": [0.0]}
    for each in face.handles:
        if each.ref in small.lit:
            for side in sides(each):
                labels[side].append(_tag_px(_spaces_said(each.ref)))
    if face.main and face.main.ref in small.lit:
        labels["right"].append(_tag_px("main"))
    room = max(*labels["left"], *labels["right"]) + 16
    edge = 6 + _SMALL_BODY_PX + 6
    middle, top = room + edge, 34.0 if face.main else 10.0
    edges = [top + pitch * row for row in range(face.rows + 1)]
    height = edges[-1] + 8
    columns = {"left": (middle - 6 - _SMALL_BODY_PX, _SMALL_BODY_PX), "right": (middle + 6, _SMALL_BODY_PX)}
    marks: list[Mark] = [rect(middle - edge, 1, 2 * edge, height - 2, "mid")]
    told: dict[str, list[tuple[Body, str]]] = {"left": [], "right": []}
    if face.main:
        main = Body(middle - 20, 8, 40, 18, 1)
        lit = face.main.ref in small.lit
        marks.append(rect(main.x, main.y, main.width, main.height, "solid" if lit else "hair"))
        told["right"] += [(main, "main")] if lit else []
    plain: list[str] = []
    for each in face.handles:
        for side in sides(each):
            for body in bodies_of(each, side, columns[side], edges):
                shape = rect(body.x, body.y, body.width, body.height, "solid")
                if each.ref in small.lit:
                    marks.append(shape)
                    told[side].append((body, _spaces_said(each.ref)))
                elif each.state not in EMPTY:
                    plain.append(shape.d)
    marks.append(Stroke("".join(plain), "hair"))
    for side, outward in (("left", -1), ("right", 1)):
        marks.extend(_small_labels(told[side], outward, middle + outward * edge, height))
    shown = ", ".join(_spaces_said(each) for each in sorted(small.lit))
    says = f"{face.says} Marked: {shown}." if shown else face.says
    return Drawing(drawing_id, 2 * middle, height, face.title, says, tuple(marks), "small")


def _small_labels(told: list[tuple[Body, str]], outward: int, edge: float, height: float) -> Iterator[Mark]:
    told = sorted(told, key=lambda each: each[0].middle)
    tops = spread([body.middle for body, _ in told], [13.0] * len(told), 0, height)
    anchor: Anchor = "end" if outward < 0 else "start"
    for (body, words), y in zip(told, tops, strict=True):
        yield Stroke(
            f"M{body.out(0):.1f} {body.middle:.1f}L{edge + outward * 2:.1f} {body.middle:.1f}"
            f"L{edge + outward * 10:.1f} {y + 6.5:.1f}",
            "hair",
        )
        yield Lettering(edge + outward * 14, y + 10.5, words, "tag", anchor)


def _tag_px(words: str) -> float:
    return width_px(words, SIZES_PX["tag"], bold=True)


def _spaces_said(ref: Ref) -> str:
    return ref.id.rpartition("/")[2]


def _drawn(face: PanelFace, layout: Layout, drawing_id: str, kind: str) -> Drawing:
    plan = laid_out(face, layout)
    middle = layout.width / 2
    marks: list[Mark] = [rect(middle - layout.edge, 1.5, 2 * layout.edge, plan.height - 3, "heavy")]
    if not layout.numbered:
        marks.append(rect(middle - layout.edge + 5, 6.5, 2 * layout.edge - 10, plan.height - 13, "hair"))
    marks.extend(_legs(face, plan, layout))
    for item in plan.items:
        marks.extend(_item(item, layout))
    marks.extend(_ties(plan, layout))
    return Drawing(drawing_id, layout.width, plan.height, face.title, face.says, tuple(marks), kind)


def _item(item: Item, layout: Layout) -> Iterator[Mark]:
    handle = item.handle
    marks: list[Mark] = []
    for body in item.bodies:
        if handle.state == "main":
            marks.extend(main_in(body, handle))
        else:
            marks.extend(in_spaces(body, handle, layout.numbered))
            marks.extend(() if layout.numbered else _numbers(body))
    marks.extend(_callout(item, layout) if item.lines else ())
    if handle.to is None:
        yield from marks
    else:
        yield Linked(handle.to, f"breaker {handle.ref.id.replace('/', ' ')}", tuple(marks))


def _numbers(body: Body) -> Iterator[Lettering]:
    """The number of each space, on the cover beside it."""
    anchor: Anchor = "end" if body.outward < 0 else "start"
    for slot, y in zip(body.slots, body.middles(), strict=True):
        if is_short(slot):
            yield Lettering(body.out(-5), y + 4, slot.number, "tag", anchor)


def _callout(item: Item, layout: Layout) -> Iterator[Mark]:
    """The words beside what they name, on a leader that bends where they stand off."""
    outward = -1 if item.side == "left" else 1
    body = item.bodies[0]
    edge = layout.width / 2 + outward * layout.edge
    words_x = edge + outward * layout.leader
    from_x = body.out(0) if item.handle.state == "main" else edge
    to_y = item.words_y + item.tall / 2
    yield Stroke(
        f"M{from_x:.1f} {body.middle:.1f}L{edge + outward * layout.leader * 0.15:.1f} {body.middle:.1f}"
        f"L{words_x - outward * layout.leader * 0.3:.1f} {to_y:.1f}"
        f"L{words_x - outward * layout.leader * 0.18:.1f} {to_y:.1f}",
        "hair",
    )
    anchor: Anchor = "end" if outward < 0 else "start"
    for index, (kind, text) in enumerate(item.lines):
        y = item.words_y + GAP_PX / 2 + (index + 0.78) * LINE_PX
        if kind == "severity" and item.handle.severity:
            yield from severity_mark(item.handle.severity, words_x + outward * 8, y - 4.5)
            yield Lettering(words_x + outward * 21, y, text, "note warn", anchor)
        else:
            yield Lettering(words_x, y, text, kind, anchor)


def _legs(face: PanelFace, plan: FacePlan, layout: Layout) -> Iterator[Mark]:
    """Both legs down the middle; each letter stands where its leg reaches a space."""
    middle = layout.width / 2
    x_of = {"A": middle - layout.leg, "B": middle + layout.leg}
    reach: dict[tuple[int, str], dict[str, bool]] = {}
    for handle in face.handles:
        for slot in handle.slots:
            sides_fed = reach.setdefault((slot.row, slot.leg), {})
            sides_fed[slot.side] = sides_fed.get(slot.side, False) or handle.state not in EMPTY
    for leg, x in x_of.items():
        rows = [row for row, each in reach if each == leg]
        if rows:
            if face.main:
                yield line(x, 1.5, x, 24, "mid")
            yield line(x, 76 if face.main else 1.5, x, plan.middle(max(rows)), "mid")
    for (row, leg), fed in reach.items():
        y = plan.middle(row)
        for side, outward in (("left", -1), ("right", 1)):
            if leg and fed.get(side):
                yield line(x_of[leg], y, middle + outward * layout.spine / 2, y, "hair")
        if leg:
            yield from _letter(x_of[leg], y, leg)
        elif any(other != leg for at, other in reach if at == row):
            for side in fed:
                yield from _letter(middle + (1 if side == "right" else -1) * (layout.spine / 2 - 4.3), y, "?")
        else:
            yield from _letter(middle, y, "?")


def _letter(x: float, y: float, letter: str) -> Iterator[Mark]:
    yield rect(x - 4.5, y - 8, 9, 16, "part quiet")
    yield Lettering(x, y + 4, letter, "tag", "middle")


def _ties(plan: FacePlan, layout: Layout) -> Iterator[Stroke]:
    """The bars between handles tied to one another where they stand side by side in a column."""
    at = {item.handle.ref: item for item in plan.items}
    for item in plan.items:
        for ref in item.handle.tied:
            other = at.get(ref)
            if other is None or other.side != item.side:
                continue
            upper, lower = item.bodies[-1], other.bodies[0]
            if 0 <= lower.y - upper.y - upper.height < 6:
                x = toggle_x(upper, layout.numbered)
                yield from joined((upper.middles()[-1], lower.middles()[0]), x)
