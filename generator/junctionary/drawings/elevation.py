"""A wall as it is faced, wide, and cut into pieces one above another for a phone.

Distances from the left end stand under the floor, heights at the left edge,
each by a tick where it is measured: nothing is scaled off the drawing.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

from junctionary.drawings.hatching import hatched
from junctionary.drawings.ink import (
    Drawing,
    Lettering,
    Linked,
    Mark,
    Stroke,
    letterings,
    line,
    rect,
)
from junctionary.drawings.lanes import side_by_side
from junctionary.drawings.lettering import width_px
from junctionary.drawings.placing import Extent, Label, inside, line_room, placed, spread
from junctionary.drawings.wall_boxes import face_size, wall_box
from junctionary.drawings.wall_pieces import Piece, Ruler, breaks, ruler_of
from junctionary.drawings.wall_things import clipped, edge_room, name_of_thing, thing_on_wall, thing_room
from junctionary.sheets.elevation import Elevation, WallBox, WallRun

NARROW_PX = 340.0
_MOST_PIECES = 12
_HATCH_PX = 7.0
_ORDINATE_PX = 44.0
_ROWS_OF_LABELS = 1.4
"""How many labels may on the whole stand above one another before a wall is drawn larger, in pieces."""

_LANES_IN = 12.0
"""What the lanes of one stretch may take together, well within the hatching about it."""


@dataclass(frozen=True, slots=True)
class _Manner:
    width_px: float
    most_px_per_in: float
    least_px_per_in: float
    right_px: float
    cables: bool
    run_label_px: float


_WIDE = _Manner(690, 3.2, 1.3, 22, cables=True, run_label_px=70)
_NARROW = _Manner(NARROW_PX, 2.8, 1.15, 14, cables=False, run_label_px=34)


def wide_elevation(elevation: Elevation) -> Drawing:
    """The wall in one piece where it can be, at most 690 px wide: as a tablet and paper show it unshrunk."""
    return _drawn(elevation, f"{elevation.id}-wide", _WIDE, "wide")


def narrow_elevation(elevation: Elevation) -> Drawing:
    """The wall for a phone, 340 px wide."""
    return _drawn(elevation, f"{elevation.id}-narrow", _NARROW, "narrow")


def _drawn(elevation: Elevation, drawing_id: str, manner: _Manner, kind: str) -> Drawing:
    left = 12 + max((width_px(each.up, 12) for each in elevation.boxes), default=20.0)
    left = max(left, 12 + width_px(elevation.height_words, 12)) + 14
    room = manner.width_px - left - manner.right_px
    ruler = ruler_of(elevation)
    count = _pieces(elevation, ruler, manner, room)
    long = ruler.length / count
    scale = min(manner.most_px_per_in, room / long)
    marks: list[Mark] = []
    top = 10.0
    for index in range(count):
        floor = top + elevation.height * scale + 4
        piece = Piece(ruler, index * long, (index + 1) * long, left, floor, scale)
        drawn, bottom = _piece(elevation, piece, manner, index, count)
        marks += drawn
        top = bottom + 26
    width = min(manner.width_px, left + long * scale + manner.right_px)
    width = max(width, left + width_px(" ".join(elevation.ends), 11.5, bold=True) + 40)
    return Drawing(drawing_id, width, top - 18, elevation.title, elevation.says, tuple(marks), f"{kind} wall")


def _pieces(elevation: Elevation, ruler: Ruler, manner: _Manner, room: float) -> int:
    """The fewest pieces in which all that is said of the wall has room at the size they are drawn."""
    least = max(1, math.ceil(ruler.length * manner.least_px_per_in / room))
    for count in range(least, _MOST_PIECES):
        long = ruler.length / count
        scale = min(manner.most_px_per_in, room / long)
        spans = [(i * long, (i + 1) * long) for i in range(count)]
        fits = all(_has_room(elevation, ruler, manner, span, scale) for span in spans)
        if fits or (scale == manner.most_px_per_in and count > least):
            return count
    return _MOST_PIECES


def _has_room(
    elevation: Elevation, ruler: Ruler, manner: _Manner, span: tuple[float, float], scale: float
) -> bool:
    """Whether the distances stand in one row, the heights beside one another, and the codes on the wall."""
    long = (span[1] - span[0]) * scale
    at = [(words, ruler.flat(along)) for words, along in _distances(elevation)]
    distances = sum(_ordinate_px(words) for words, along in at if span[0] <= along < span[1])
    boxes = [each for each in elevation.boxes if span[0] <= ruler.flat(each.at[0]) < span[1]]
    heights = 14 * (1 + len({each.at[1] for each in boxes}))
    runs = {
        round(run.points[0][0]) for run in elevation.runs if span[0] <= ruler.flat(run.points[0][0]) < span[1]
    }
    codes = sum(width_px(each.name, 11.5) for each in boxes) + manner.run_label_px * len(runs)
    return (
        distances <= max(long, manner.width_px * 0.8)
        and heights <= elevation.height * scale + 20
        and codes <= long * _ROWS_OF_LABELS
    )


def _distances(elevation: Elevation) -> list[tuple[str, float]]:
    """Each distance once, from the left."""
    return sorted({(each.along, each.at[0]) for each in elevation.boxes}, key=lambda each: each[1])


def _ordinate_px(words: str) -> float:
    return width_px(words, 12) + 10


def _piece(
    elevation: Elevation, piece: Piece, manner: _Manner, index: int, count: int
) -> tuple[list[Mark], float]:
    left, right = piece.left_px, piece.left_px + (piece.end - piece.start) * piece.scale
    top, floor = piece.y(elevation.height), piece.floor_px
    frame: Extent = (left, top, right, floor)
    boxes = [each for each in elevation.boxes if piece.holds(each.at[0])]
    back: list[Mark] = [Stroke(f"M{left:.1f} {top:.1f}H{right:.1f}V{floor:.1f}H{left:.1f}Z", "floor")]
    strips = [
        clipped(
            (piece.x(c.left), piece.y(c.foot + c.height), piece.x(c.left + c.width), piece.y(c.foot)), frame
        )
        for c in elevation.cautions
    ]
    back += hatched([each for each in strips if each is not None], _HATCH_PX, "hatch")
    edges: list[Extent] = []
    things = sorted(elevation.things, key=lambda each: not each.breaks_wall)
    for thing in things:
        back += thing_on_wall(thing, piece, frame)
        edges += edge_room(thing, piece, frame)
    back += _edges(frame, first=index == 0, last=index == count - 1, dashed=elevation.height_assumed)
    routes, run_labels, run_room = _runs(elevation.runs, piece, manner, frame)
    faces = [wall_box(each, piece.x(each.at[0]), piece.y(each.at[1]), piece.scale) for each in boxes]
    ordinates, ordinate_bottom = _ordinates(elevation, boxes, piece, left, right + manner.right_px - 4)
    heights = _heights(elevation, boxes, piece, left, top)
    taken = [_box_extent(each, piece) for each in boxes]
    codes = [_code(each, piece) for each in boxes]
    field = (left + 3, top + 3, right - 3, floor - 2)
    cut, cut_room = breaks(piece, frame)
    words, reached, _ = placed([*codes, *run_labels], [*taken, *cut_room], field, run_room, edges)
    taken += [*cut_room, *(each.extent for each in letterings(words)), *_leaders(words)]
    for thing in things:
        said = name_of_thing(thing, piece, frame, taken, [*run_room, *edges])
        taken += [each.extent for each in said]
        words = (*words, *said)
    holes = [hole for each in things if each.breaks_wall and (hole := thing_room(each, piece, frame))]
    back += [_cleared(each, holes) for each in letterings(words) if each.y < field[3]]
    bottom = ordinate_bottom
    if reached > field[3]:
        # What found no room on the wall stands under the distances.
        words = _below(words, field[3], bottom - field[3] + 2)
        bottom += reached - field[3] + 4
    foot, foot_y = _foot(elevation, left, right, bottom, index, count)
    return [*back, *routes, *cut, *faces, *ordinates, *heights, *words, *foot], foot_y


def _leaders(words: tuple[Mark, ...]) -> list[Extent]:
    """The room that leaders among the words take."""
    room: list[Extent] = []
    for each in words:
        if isinstance(each, Stroke) and each.kind == "leader":
            (x1, y1), (x2, y2) = (tuple(float(n) for n in end.split()) for end in each.d[1:].split("L"))
            room += line_room((x1, y1), (x2, y2), 1)
    return room


def _cleared(word: Lettering, holes: list[Extent]) -> Mark:
    """The hatching and the outlines behind a word are broken for it, as a draftsman leaves them out."""
    left, top, right, bottom = word.extent
    # Letters are reckoned wide; what is cleared is not.
    spare = (right - left) * 0.05
    kind = "blank" if any(inside(word.extent, each) for each in holes) else "floor"
    return rect(left + spare - 2, top, right - left - 2 * spare + 4, bottom - top, kind)


def _below(marks: tuple[Mark, ...], line_y: float, by: float) -> tuple[Mark, ...]:
    """Lettering under a line, moved down; all else stays."""
    moved: list[Mark] = []
    for mark in marks:
        if isinstance(mark, Lettering) and mark.y > line_y:
            moved.append(Lettering(mark.x, mark.y + by, mark.text, mark.kind, mark.anchor))
        elif isinstance(mark, Linked):
            moved.append(Linked(mark.to, mark.says, _below(mark.marks, line_y, by)))
        else:
            moved.append(mark)
    return tuple(moved)


def _edges(frame: Extent, *, first: bool, last: bool, dashed: bool) -> list[Mark]:
    """Ceiling, floor and corners; where the wall is cut the edge is a hairline that breaks."""
    left, top, right, floor = frame
    marks: list[Mark] = [
        line(left, top, right, top, "heavy dashed" if dashed else "heavy"),
        line(left, floor, right, floor, "heavy"),
    ]
    for x, whole in ((left, first), (right, last)):
        marks.append(
            line(x, top, x, floor, "heavy") if whole else line(x, top - 6, x, floor + 6, "hair dashed")
        )
    return marks


def _runs(
    runs: tuple[WallRun, ...], piece: Piece, manner: _Manner, frame: Extent
) -> tuple[list[Mark], list[Label], list[Extent]]:
    """Routes as lines, their labels, and the room the lines take.

    Those that go up or down from one box lie side by side and share one label.
    """
    marks: list[Mark] = []
    room: list[Extent] = []
    told: dict[tuple[float, float], list[WallRun]] = {}
    lanes = side_by_side([each.points for each in runs], min(5.0 / piece.scale, _LANES_IN / 6))
    for run, lane in zip(runs, lanes, strict=True):
        points = [(piece.x(x), piece.y(y)) for x, y in lane]
        parts = _inside(points, frame)
        if not parts:
            continue
        weight = "finest" if run.behind else "route"
        kind = (
            f"{weight} {'dashed-fine' if run.behind else 'dashed'}" if run.assumed or run.behind else weight
        )
        d = "".join(f"M{a[0]:.1f} {a[1]:.1f}L{b[0]:.1f} {b[1]:.1f}" for a, b in parts)
        strokes: list[Mark] = [Stroke(d, kind)]
        if run.plates:
            strokes += _plates(parts)
        marks.append(Linked(run.ref, f"run {run.ref.id}", tuple(strokes)))
        room += [each for a, b in parts for each in line_room(a, b, 1.5)]
        longest = max(parts, key=lambda each: math.dist(*each))
        middle = ((longest[0][0] + longest[1][0]) / 2, (longest[0][1] + longest[1][1]) / 2)
        upright = run.points[0][0] == run.points[-1][0]
        told.setdefault((run.points[0][0], -1.0) if upright else middle, []).append(run)
    return marks, _run_labels(told, piece, manner, frame), room


def _run_labels(
    told: dict[tuple[float, float], list[WallRun]], piece: Piece, manner: _Manner, frame: Extent
) -> list[Label]:
    labels = []
    for key, group in told.items():
        if key[1] == -1.0:
            ups = [y for run in group for _, y in run.points]
            x = piece.x(key[0])
            high, low = max(ups), min(ups)
            y = piece.y(high - (high - low) * 0.22)
        else:
            x, y = key
        lines: dict[str, None] = {}
        for run in group:
            text = f"{run.ref.id} · {run.cable}" if manner.cables else run.ref.id
            lines[text] = None
        words = list(lines)
        if not manner.cables and len(words) > 2:
            words = [" ".join(words[i : i + 3]) for i in range(0, len(words), 3)]
        to = group[0].ref if len(lines) == 1 else None
        labels.append(
            Label(tuple((text, "note") for text in words), x, y, 8, (1, 0), to, f"run {group[0].ref.id}")
        )
    return labels


def _inside(
    points: list[tuple[float, float]], frame: Extent
) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    """The stretches between points that lie within the piece; routes run level, upright or slantwise."""
    kept = []
    for (x1, y1), (x2, y2) in pairwise(points):
        if abs(x2 - x1) < 0.01:
            # The other face of the wall may be higher than this one.
            ends = (x1, max(y1, frame[1])), (x2, max(y2, frame[1]))
            if frame[0] - 8 <= x1 <= frame[2] + 8 and ends[0] != ends[1]:
                kept.append(ends)
            continue
        low, high = sorted(((frame[0] - x1) / (x2 - x1), (frame[2] - x1) / (x2 - x1)))
        low, high = max(low, 0.0), min(high, 1.0)
        if low < high:
            kept.append(
                (
                    (x1 + (x2 - x1) * low, y1 + (y2 - y1) * low),
                    (x1 + (x2 - x1) * high, y1 + (y2 - y1) * high),
                )
            )
    return kept


def _plates(parts: list[tuple[tuple[float, float], tuple[float, float]]]) -> list[Mark]:
    """A plate across the middle of each level stretch: the record says that there are some, not where."""
    return [
        rect((x1 + x2) / 2 - 3, (y1 + y2) / 2 - 6, 6, 12, "solid")
        for (x1, y1), (x2, y2) in parts
        if abs(x2 - x1) > abs(y2 - y1)
    ]


def _box_extent(box: WallBox, piece: Piece) -> Extent:
    width, height = face_size(box, piece.scale)
    x, y = piece.x(box.at[0]), piece.y(box.at[1])
    return (x - width / 2 - 1, y - height / 2 - 1, x + width / 2 + 1, y + height / 2 + 1)


def _code(box: WallBox, piece: Piece) -> Label:
    x, y = piece.x(box.at[0]), piece.y(box.at[1])
    width, height = face_size(box, piece.scale)
    kind = "note" if box.behind else "tag"
    return Label(
        ((box.name, kind),),
        x,
        y,
        max(width, height) / 2 + 1,
        (0.7, -0.7),
        box.ref,
        f"{box.ref.kind} {box.name}",
    )


def _ordinates(
    elevation: Elevation, boxes: list[WallBox], piece: Piece, left: float, right: float
) -> tuple[list[Mark], float]:
    """Under the floor: each distance from the left end, by a tick at its place and a leader to its words."""
    floor = piece.floor_px
    here = [(words, along) for words, along in _distances(elevation) if piece.holds(along)]
    if not here:
        return [], floor + 8
    rows = 1 + int(sum(_ordinate_px(words) for words, _ in here) // (right - left + 1))
    marks: list[Mark] = []
    for row in range(rows):
        ours = here[row::rows]
        middles = spread(
            [piece.x(along) for _, along in ours],
            [_ordinate_px(words) for words, _ in ours],
            left - 30,
            right,
        )
        y = floor + _ORDINATE_PX - 14 + row * 18
        for (words, along), middle in zip(ours, middles, strict=True):
            x = piece.x(along)
            marks.append(
                Stroke(
                    f"M{x:.1f} {floor + 2:.1f}V{floor + 9:.1f}L{middle:.1f} {y - 15:.1f}V{y - 11:.1f}", "hair"
                )
            )
            marks.append(Lettering(middle, y, words, "note halo", "middle"))
    return marks, floor + _ORDINATE_PX - 8 + (rows - 1) * 18


def _heights(elevation: Elevation, boxes: list[WallBox], piece: Piece, left: float, top: float) -> list[Mark]:
    """At the left edge: each height once, and the ceiling's."""
    said = {(each.at[1], each.up) for each in boxes if elevation.height > each.at[1]}
    said.add((elevation.height, f"{elevation.height_words}{'?' if elevation.height_assumed else ''}"))
    order = sorted(said, reverse=True)
    middles = spread([piece.y(up) for up, _ in order], [14.0] * len(order), top - 8, piece.floor_px + 2)
    marks: list[Mark] = []
    for (up, words), middle in zip(order, middles, strict=True):
        y = piece.y(up)
        marks.append(Stroke(f"M{left - 2:.1f} {y:.1f}H{left - 7:.1f}L{left - 13:.1f} {middle:.1f}", "hair"))
        marks.append(Lettering(left - 15, middle + 4, words, "note", "end"))
    return marks


def _foot(
    elevation: Elevation, left: float, right: float, y: float, index: int, count: int
) -> tuple[list[Mark], float]:
    """The corners' names, and the whole length between them or that the wall goes on."""
    first, last = elevation.ends
    marks: list[Mark] = []
    base = y + 14
    begin = first if index == 0 else f"from above, piece {index + 1} of {count}"
    marks.append(Lettering(left, base, begin, "tag"))
    used = left + width_px(begin, 11.5, bold=True)
    finish = last if index == count - 1 else "goes on below"
    if index == count - 1:
        finish = f"{elevation.length_words} long, {last}"
    width = width_px(finish, 11.5, bold=True)
    if right - width > used + 8:
        marks.append(Lettering(right, base, finish, "tag", "end"))
    else:
        base += 15
        marks.append(Lettering(left, base, finish, "tag"))
    return marks, base
