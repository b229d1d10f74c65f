"""Where everything in the face of a panel goes: rows of one pitch, words spread beside them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from junctionary.drawings.breakers import EMPTY, Body, is_short
from junctionary.drawings.callouts import spread
from junctionary.drawings.ink import SIZES_PX
from junctionary.drawings.lettering import wrapped
from junctionary.sheets.face import Handle, PanelFace, Side, Slot
from junctionary.sheets.links import Ref

LINE_PX = 15.0
GAP_PX = 7.0
_START_PX = 8.0


@dataclass(frozen=True, slots=True)
class Layout:
    """Widths of one layout in px. ``numbered``: numbers stand on the breakers, ratings among the words."""

    width: float
    spine: float
    body: float
    gutter: float
    leader: float
    pitch: float
    numbered: bool

    @property
    def edge(self) -> float:
        """From the middle of the panel to its edge."""
        return self.spine / 2 + self.body + self.gutter

    @property
    def leg(self) -> float:
        """From the middle to the line of a leg: both letters find room abreast, and a doubt beside them."""
        return max(4.8, self.spine / 2 - 18.6)

    @property
    def room(self) -> float:
        """What the words of one side may take."""
        return self.width / 2 - self.edge - self.leader


WIDE = Layout(834, 62, 98, 41, 26, 40, numbered=False)
NARROW = Layout(340, 36, 49, 5, 9, 34, numbered=True)
"""The longest of the usual words, ``receptacles`` and a comma, has room beside it."""


@dataclass(frozen=True, slots=True)
class Item:
    """What stands in one column: its bodies, and the lines beside it, each with its kind."""

    handle: Handle
    side: Side
    bodies: tuple[Body, ...]
    lines: tuple[tuple[str, str], ...]
    words_y: float = 0.0

    @property
    def tall(self) -> float:
        """The height of its words, with the gap to the next."""
        return len(self.lines) * LINE_PX + GAP_PX


@dataclass(frozen=True, slots=True)
class FacePlan:
    """Every item in its place, the edges of the rows from the top down, and the whole height."""

    items: tuple[Item, ...]
    edges: tuple[float, ...]
    height: float

    def middle(self, row: int) -> float:
        """Half way down a row."""
        return (self.edges[row] + self.edges[row + 1]) / 2


def laid_out(face: PanelFace, layout: Layout) -> FacePlan:
    """The face in this layout.

    Where words may be led to from afar the rows keep one pitch, the least
    that lets the words of both sides stand clear; where they may not, each
    row is as tall as its own words.
    """
    main = [_main(face.main, layout)] if face.main else []
    top = max(96.0, *(each.tall + 2 * _START_PX for each in main)) if main else 34.0
    flat = _items(face, layout, tuple(map(float, range(face.rows + 1))))
    rows = _own_rows(face, layout, flat) if layout.numbered else _even_rows(face, layout, [*main, *flat], top)
    edges = [top]
    for tall in rows:
        edges.append(edges[-1] + tall)
    height = edges[-1] + 16
    items: list[Item] = []
    placed = [*main, *_items(face, layout, tuple(edges))]
    for side in ("left", "right"):
        ours = [each for each in placed if each.side == side]
        told = sorted((each for each in ours if each.lines), key=lambda each: each.bodies[0].middle)
        middles = [each.bodies[0].middle for each in told]
        tops = spread(middles, [each.tall for each in told], _START_PX, height - 8)
        items += [each for each in ours if not each.lines]
        items += [replace(each, words_y=y) for each, y in zip(told, tops, strict=True)]
    return FacePlan(tuple(items), tuple(edges), height)


def _even_rows(face: PanelFace, layout: Layout, items: list[Item], top: float) -> list[float]:
    pitch = layout.pitch
    for side in ("left", "right"):
        tall = sum(each.tall for each in items if each.side == side and each.lines)
        pitch = max(pitch, (tall + _START_PX - top) / max(face.rows, 1))
    return [pitch] * face.rows


def _own_rows(face: PanelFace, layout: Layout, items: list[Item]) -> list[float]:
    rows = [layout.pitch] * face.rows
    for item in sorted(items, key=lambda each: len(each.bodies[0].slots)):
        if not item.lines:
            continue
        slots = item.bodies[0].slots
        halves = {slot.half for slot in slots} != {""}
        own = sorted({slot.row for slot in slots})
        # A half-size breaker has half its row; the words of a double one may use both rows.
        short = item.tall * (2 if halves and len(own) == 1 else 1) - sum(rows[row] for row in own)
        for row in own:
            rows[row] += max(0.0, short / len(own))
    return rows


def spots(face: PanelFace, layout: Layout) -> dict[Ref, tuple[float, float, float, float]]:
    """How far each thing keeps from top, right, bottom and left of the drawing, in percent."""
    plan = laid_out(face, layout)
    found: dict[Ref, tuple[float, float, float, float]] = {}
    for item in plan.items:
        left = min(each.x for each in item.bodies)
        right = max(each.x + each.width for each in item.bodies)
        first = item.bodies[0]
        found.setdefault(
            item.handle.ref,
            (
                100 * first.y / plan.height,
                100 - 100 * right / layout.width,
                100 - 100 * (first.y + first.height) / plan.height,
                100 * left / layout.width,
            ),
        )
    return found


def bodies_of(
    handle: Handle, side: Side, column: tuple[float, float], edges: Sequence[float]
) -> tuple[Body, ...]:
    """The bodies of a handle in one column, which is told by its left edge and its width.

    ``edges`` are the heights between the rows.
    """
    slots = [slot for slot in handle.slots if slot.side == side]
    return tuple(_body(group, side, column, edges) for group in together(slots))


def sides(handle: Handle) -> tuple[Side, ...]:
    """The columns a handle stands in; one, unless the record says otherwise."""
    return tuple(dict.fromkeys(slot.side for slot in handle.slots))


def _items(face: PanelFace, layout: Layout, edges: Sequence[float]) -> list[Item]:
    middle = layout.width / 2
    columns: dict[Side, tuple[float, float]] = {
        "left": (middle - layout.spine / 2 - layout.body, layout.body),
        "right": (middle + layout.spine / 2, layout.body),
    }
    return [
        Item(each, side, bodies_of(each, side, columns[side], edges), _lines(each, layout))
        for each in face.handles
        for side in sides(each)
    ]


def _main(main: Handle, layout: Layout) -> Item:
    width = 116.0 if layout.numbered else 148.0
    body = Body(layout.width / 2 - width / 2, 24, width, 52, 1)
    return Item(main, "right", (body,), _lines(main, layout))


def _body(group: tuple[Slot, ...], side: Side, column: tuple[float, float], edges: Sequence[float]) -> Body:
    first, last = group[0], group[-1]
    y, end = edges[first.row], edges[last.row + 1]
    if first.half == "b":
        y = (y + edges[first.row + 1]) / 2
    if last.half == "a":
        end = (edges[last.row] + end) / 2
    inset = min(2.0, (edges[first.row + 1] - edges[first.row]) / 24)
    return Body(column[0], y + inset, column[1], end - y - 2 * inset, 1 if side == "right" else -1, group)


def together(slots: Sequence[Slot]) -> Iterator[tuple[Slot, ...]]:
    """Slots that touch one another down a column, each group one body."""
    group: list[Slot] = []
    for slot in sorted(slots, key=lambda each: (each.row, each.half)):
        if group and not _touch(group[-1], slot):
            yield tuple(group)
            group = []
        group.append(slot)
    if group:
        yield tuple(group)


def _touch(upper: Slot, lower: Slot) -> bool:
    if lower.row == upper.row:
        return True
    return lower.row == upper.row + 1 and upper.half != "a" and lower.half != "b"


def _lines(handle: Handle, layout: Layout) -> tuple[tuple[str, str], ...]:
    """The words beside what stands in the face, line by line with their kinds; none beside a plain filler."""
    named = [slot.number for slot in handle.slots if not is_short(slot)]
    if handle.state in EMPTY and not named:
        return ()
    halves = any(slot.half for slot in handle.slots)
    aside = [
        handle.rating if layout.numbered and handle.state != "main" else "",
        handle.guards if layout.numbered or halves else "",
    ]
    notes = [each for each in aside if each]
    lines = [("tag", text) for text in wrapped(" + ".join(named), layout.room, SIZES_PX["tag"], bold=True)]
    lines += [("word", text) for text in wrapped(handle.words, layout.room, SIZES_PX["word"])]
    lines += [
        ("note", text) for text in wrapped(" · ".join([*notes, *handle.notes]), layout.room, SIZES_PX["note"])
    ]
    if handle.severity:
        lines.append(("severity", handle.severity))
    return tuple(lines)
