"""The directory card: two columns as the spaces stand, to put on the door; one column on a phone."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from junctionary.drawings.ink import SIZES_PX, Drawing, Lettering, Mark, line, rect
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.panel_layout import together
from junctionary.sheets.card import CardEntry, DoorCard
from junctionary.sheets.face import Side

WIDE_PX = 700.0
NARROW_PX = 340.0
TALL_PX = 940.0
"""What a card of that width may be tall, to fill a sheet of either size."""

HEADING = "DIRECTORY OF CIRCUITS"

_SHRUNK = 0.8
_LINE_PX = 14.5
_PAD_PX = 7.0
_EDGE_PX = 16.0


@dataclass(frozen=True, slots=True)
class Cell:
    """One entry in its column, from top to bottom, with its lines."""

    entry: CardEntry
    lines: tuple[tuple[str, str], ...]
    top: float = 0.0
    bottom: float = 0.0

    @property
    def tall(self) -> float:
        """What its words need."""
        return len(self.lines) * _LINE_PX + _PAD_PX


@dataclass(frozen=True, slots=True)
class Column:
    """The left edge of a column, its width, and what of it the numbers and the ratings take."""

    x: float
    width: float
    numbers: float
    ratings: float

    @property
    def room(self) -> float:
        """What is left for words."""
        return self.width - self.numbers - self.ratings - 10


def wide_card(card: DoorCard, drawing_id: str) -> Drawing:
    """The card for paper. Rooms are left out where with them it would have to shrink too far."""
    drawing = _two_columns(card, drawing_id)
    if drawing.height_px * _SHRUNK > TALL_PX:
        bare = tuple(replace(each, where="") for each in card.entries)
        drawing = _two_columns(replace(card, entries=bare), drawing_id)
    return drawing


def narrow_card(card: DoorCard, drawing_id: str) -> Drawing:
    """The card down a phone, by number."""
    column = Column(1.5, NARROW_PX - 3, _numbers_px(card.entries), _ratings_px(card.entries))
    marks, y = _head(card, 0, NARROW_PX)
    top = y
    for entry in sorted(card.entries, key=_order):
        cell = Cell(entry, _lines(entry, column.room))
        tall = max(cell.tall, 30.0, len(entry.slots) * 15 + _PAD_PX)
        marks.extend(_cell(replace(cell, top=y, bottom=y + tall), column))
        y += tall
    marks.append(rect(column.x, top, column.width, y - top, "mid"))
    feet, y = _foot(card, 2, NARROW_PX - 4, y + 18)
    return Drawing(drawing_id, NARROW_PX, y + 6, card.title, card.says, (*marks, *feet), "narrow")


def _order(entry: CardEntry) -> tuple[int, str, str]:
    slot = entry.slots[0]
    return slot.row, slot.side, slot.half


def _two_columns(card: DoorCard, drawing_id: str) -> Drawing:
    numbers, ratings = _numbers_px(card.entries), _ratings_px(card.entries)
    inner = WIDE_PX - 2 * _EDGE_PX - 28
    width = (inner - 14) / 2
    columns: dict[Side, Column] = {
        "left": Column(_EDGE_PX + 14, width, numbers, ratings),
        "right": Column(WIDE_PX - _EDGE_PX - 14 - width, width, numbers, ratings),
    }
    marks, top = _head(card, _EDGE_PX + 14, inner)
    room = columns["left"].room
    parts = [part for entry in card.entries for part in _parts(entry)]
    cells = [Cell(each, _lines(each, room)) for each in parts]
    edges = [top]
    for tall in _rows(cells, card.rows):
        edges.append(edges[-1] + tall)
    for cell in cells:
        marks.extend(_cell(_stood(cell, edges), columns[cell.entry.slots[0].side]))
    for column in columns.values():
        marks.append(rect(column.x, top, column.width, edges[-1] - top, "mid"))
    feet, bottom = _foot(card, _EDGE_PX + 14, inner, edges[-1] + 22)
    height = bottom + 10 + _EDGE_PX
    frame = rect(_EDGE_PX, _EDGE_PX, WIDE_PX - 2 * _EDGE_PX, height - 2 * _EDGE_PX, "heavy")
    return Drawing(
        drawing_id, WIDE_PX, height, card.title, card.says, (frame, *_cut(height), *marks, *feet), "wide"
    )


def _parts(entry: CardEntry) -> Iterator[CardEntry]:
    """An entry for each of its spaces, or group of them, that do not touch one another."""
    for side in ("left", "right"):
        for slots in together([slot for slot in entry.slots if slot.side == side]):
            yield replace(entry, slots=slots)


def _rows(cells: Sequence[Cell], rows: int) -> list[float]:
    """The height of each row: what its words need, those of a double breaker shared between its rows."""
    tall = [22.0] * rows
    for cell in sorted(cells, key=lambda each: len(each.entry.slots)):
        own = sorted({slot.row for slot in cell.entry.slots})
        halves = 2 if len(own) == 1 and cell.entry.slots[0].half else 1
        short = cell.tall * halves - sum(tall[row] for row in own)
        for row in own:
            tall[row] += max(0.0, short / len(own))
    return tall


def _stood(cell: Cell, edges: Sequence[float]) -> Cell:
    first, last = cell.entry.slots[0], cell.entry.slots[-1]
    top, bottom = edges[first.row], edges[last.row + 1]
    if first.half == "b":
        top = (top + edges[first.row + 1]) / 2
    if last.half == "a":
        bottom = (edges[last.row] + bottom) / 2
    return replace(cell, top=top, bottom=bottom)


def _lines(entry: CardEntry, room: float) -> tuple[tuple[str, str], ...]:
    what = [("word", text) for text in wrapped(entry.what, room, SIZES_PX["word"])]
    where = [("note", text) for text in wrapped(entry.where, room, SIZES_PX["note"])]
    return (*what, *where)


def _cell(cell: Cell, column: Column) -> Iterator[Mark]:
    right = column.x + column.width
    yield line(column.x, cell.bottom, right, cell.bottom, "hair")
    yield line(column.x + column.numbers, cell.top, column.x + column.numbers, cell.bottom, "hair")
    slots = cell.entry.slots
    for index, slot in enumerate(slots):
        y = cell.top + (cell.bottom - cell.top) * (index + 0.5) / len(slots)
        yield Lettering(column.x + column.numbers / 2, y + 4, slot.number, "tag", "middle")
    middle = (cell.top + cell.bottom) / 2
    first = middle - len(cell.lines) * _LINE_PX / 2 + 0.78 * _LINE_PX
    for index, (kind, text) in enumerate(cell.lines):
        yield Lettering(column.x + column.numbers + 7, first + index * _LINE_PX, text, kind)
    if cell.entry.rating:
        yield Lettering(right - 6, middle + 4, cell.entry.rating, "tag", "end")


def _numbers_px(entries: Sequence[CardEntry]) -> float:
    widths = [width_px(slot.number, SIZES_PX["tag"], bold=True) for each in entries for slot in each.slots]
    return max((*widths, 22.0)) + 12


def _ratings_px(entries: Sequence[CardEntry]) -> float:
    return max((*(width_px(each.rating, SIZES_PX["tag"], bold=True) for each in entries), 30.0)) + 8


def _head(card: DoorCard, x: float, width: float) -> tuple[list[Mark], float]:
    """What stands above the columns, and where they begin."""
    y = _EDGE_PX + 28
    marks: list[Mark] = [Lettering(x, y, HEADING, "tag")]
    y += 25
    for text in wrapped(card.name, width, SIZES_PX["head"], bold=True):
        marks.append(Lettering(x, y, text, "head"))
        y += 24
    y -= 4
    for text in wrapped(card.under, width, SIZES_PX["note"]):
        marks.append(Lettering(x, y, text, "note"))
        y += _LINE_PX
    return marks, y + 2


def _foot(card: DoorCard, x: float, width: float, y: float) -> tuple[list[Mark], float]:
    marks: list[Mark] = []
    for kind, texts in groupby(card.foot, lambda text: "note" if text is card.foot[-1] else "word"):
        for text in texts:
            for part in wrapped(text, width, SIZES_PX[kind]):
                marks.append(Lettering(x, y, part, kind))
                y += _LINE_PX + 1
    return marks, y


def _cut(height: float) -> Iterator[Mark]:
    """Marks at the corners to cut along."""
    for x, inward in ((0.0, 1), (WIDE_PX, -1)):
        for y, down in ((0.0, 1), (height, -1)):
            corner_x, corner_y = x + inward * _EDGE_PX / 2, y + down * _EDGE_PX / 2
            yield line(x, corner_y, corner_x - inward, corner_y, "hair")
            yield line(corner_x, y, corner_x, corner_y - down, "hair")
