"""The make-up of a box where it must be narrow: cables down the left, joints and devices down the right.

Between them every conductor runs from where it enters to where it ends, in a
lane of its own. Rows of the two sides stand half a step apart and no two
wires share a stretch of a lane, so that none lies on another; where they
cross, one passes over.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from junctionary.drawings.conductors import letters, wire
from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, Stroke, rect, route
from junctionary.drawings.landings import lettered
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.makeup_column import EDGE_PX, STEP_PX, Column
from junctionary.drawings.makeup_lanes import Port, Wire, lanes_of
from junctionary.sheets.box import Cable, Conductor, MakeUp

_LINE_PX = 15.0


@dataclass(frozen=True, slots=True)
class _Manner:
    """Widths in px: of the cables, the least of what is said at the right, of the whole, and lane to lane.

    ``details_px`` is where beside a terminal's name it stands how it is made; 0: under it.
    """

    cables_px: float
    words_px: float
    most_px: float
    lane_px: tuple[float, float]
    details_px: float
    fills: bool
    kind: str


_NARROW = _Manner(76, 122, 340, (7.6, 10), 0, fills=True, kind="narrow makeup")
_MIDDLE = _Manner(136, 414, 734, (9.5, 12), 142, fills=False, kind="middle makeup")
_WIDE = _Manner(150, 420, 1080, (12, 14), 144, fills=False, kind="wide makeup")


def narrow_routed(makeup: MakeUp, drawing_id: str) -> Drawing | None:
    """The make-up for a phone, 340 px wide; None where its wires are too many for that."""
    return _drawn(makeup, drawing_id, _NARROW)


def middle_routed(makeup: MakeUp, drawing_id: str) -> Drawing | None:
    """The same for a tablet and for paper, at most 734 px wide."""
    return _drawn(makeup, drawing_id, _MIDDLE)


def wide_routed(makeup: MakeUp, drawing_id: str) -> Drawing | None:
    """The same for a desk, at most 1080 px wide, where a box is too full to have cables at both sides."""
    return _drawn(makeup, drawing_id, _WIDE)


@dataclass(frozen=True, slots=True)
class _Laid:
    """Both sides and the lane of every wire between them."""

    cables: tuple[Mark, ...]
    column: Column
    wires: tuple[Wire, ...]
    lanes: tuple[int, ...]
    bottom: float

    @property
    def count(self) -> int:
        """How many lanes there are."""
        return max(self.lanes, default=0) + 1


def _laid(makeup: MakeUp, manner: _Manner, words_px: float) -> _Laid:
    cables, ports, left_end = _cables(makeup.cables, manner)
    column = Column(words_px, manner.details_px, lettered(makeup))
    for joint in makeup.joints:
        column.joint(joint, makeup)
    for device in makeup.devices:
        column.device(device)
    column.open_ends([each for cable in makeup.cables for each in cable.conductors if _is_open(each, column)])
    wires = _wires(makeup, ports, column)
    return _Laid(tuple(cables), column, tuple(wires), tuple(lanes_of(wires)), max(left_end, column.y) + 4)


def _drawn(makeup: MakeUp, drawing_id: str, manner: _Manner) -> Drawing | None:
    least, most = manner.lane_px
    edges = manner.cables_px + 2 * EDGE_PX
    laid = _laid(makeup, manner, manner.words_px)
    if manner.fills:
        # What the lanes do not need the words have; with more room for them fewer lines are needed.
        words = manner.most_px - edges - laid.count * most
        wider = _laid(makeup, manner, max(words, manner.words_px))
        laid = wider if wider.count <= laid.count else laid
    room = manner.most_px - edges - laid.column.wide_px
    pitch = min(room / laid.count, most)
    if pitch < least:
        return None
    right = edges + (room if manner.fills else max(laid.count * pitch, 40.0))
    lane_0 = (manner.cables_px + right - (laid.count - 1) * pitch) / 2
    width = right + laid.column.wide_px
    wires: list[Stroke] = []
    for each, lane in sorted(zip(laid.wires, laid.lanes, strict=True), key=lambda pair: -pair[1]):
        x = lane_0 + lane * pitch
        ends = [(manner.cables_px - 8 if port.is_left else right, port.y) for port in (each.start, each.end)]
        points = (ends[0], (x, ends[0][1]), (x, ends[1][1]), ends[1])
        wires += wire(route(points, 5), each.colour, each.marked)
    said = wrapped(makeup.enclosure, width - 4, 12)
    left = manner.cables_px if all(width_px(each, 12) < width - manner.cables_px for each in said) else 0
    captions = [Lettering(left, laid.bottom + 18 + i * _LINE_PX, text) for i, text in enumerate(said)]
    frame = rect(manner.cables_px, 1.5, width - manner.cables_px - 1.5, laid.bottom - 1.5, "heavy")
    marks = (frame, *wires, *laid.cables, *laid.column.at(right), *captions)
    height = laid.bottom + 10 + _LINE_PX * len(said)
    return Drawing(drawing_id, width, height, makeup.title, makeup.says, marks, manner.kind)


def _cables(cables: Sequence[Cable], manner: _Manner) -> tuple[list[Mark], dict[str, Port], float]:
    """Each cable with its conductors in rows, and the ports they leave by; supply first.

    What is said of it stands in its sheath where that is wide, else above it.
    """
    marks: list[Mark] = []
    ports: dict[str, Port] = {}
    wide = manner.cables_px - 8
    within = wide > 110
    y = 6.0
    for cable in sorted(cables, key=lambda each: each.side != "feed"):
        side = {"feed": "from", "onward": "to", "unknown": "to or from"}[cable.side]
        end = cable.other_end if isinstance(cable.other_end, str) else cable.other_end.text
        tags = [letters(each.colour, each.marked) for each in cable.conductors] or ["?"]
        tag_px = max(width_px(each, 11.5, bold=True) for each in tags)
        room = wide - tag_px - 22 if within else wide + 2
        said = [
            text for each in (cable.cable, cable.length, f"{side} {end}") for text in wrapped(each, room, 12)
        ]
        said_px = 18 + _LINE_PX * len(said)
        first = -(-(y + (14 if within else said_px + 15)) // STEP_PX) * STEP_PX
        rows_px = (len(tags) - 1) * STEP_PX + 24
        sheath_px = max(rows_px, said_px + 8) if within else rows_px
        words_y = first - 12 if within else y
        x = 8.0 if within else 0.0
        body: list[Mark] = [rect(0.8, first - 12, wide - 0.8, sheath_px, "part")]
        body.append(Lettering(x, words_y + 16, cable.id, "name"))
        body += [Lettering(x, words_y + 16 + _LINE_PX * (i + 1), text) for i, text in enumerate(said)]
        for index, tag in enumerate(tags):
            row = first + index * STEP_PX
            body.append(Lettering(wide - 7, row + 4, tag, "tag", "end"))
        for index, conductor in enumerate(cable.conductors):
            ports[conductor.id] = Port(first + index * STEP_PX, is_left=True)
        marks.append(Linked(cable.ref, f"run {cable.id}", tuple(body)))
        y = first - 12 + sheath_px + (12 if within else 8)
    return marks, ports, y


def _is_open(conductor: Conductor, column: Column) -> bool:
    return f"at:{conductor.id}" not in column.ports and not any(
        key.endswith(f":{conductor.id}") for key in column.ports
    )


def _wires(makeup: MakeUp, left: dict[str, Port], column: Column) -> list[Wire]:
    """Every conductor from its cable to its end, and every pigtail from its joint to its terminal."""
    found: list[Wire] = []
    for cable in makeup.cables:
        for each in cable.conductors:
            ends = [f"at:{each.id}", *(f"{joint.name}:{each.id}" for joint in makeup.joints)]
            found += [
                Wire(left[each.id], column.ports[key], each.colour, each.marked)
                for key in ends
                if key in column.ports
            ]
    for joint in makeup.joints:
        for device in makeup.devices:
            for terminal in device.terminals:
                name = f"{device.id}.{terminal.name}"
                start, end = column.ports.get(f"{joint.name}:{name}"), column.ports.get(f"at:{name}")
                if start is not None and end is not None:
                    found.append(Wire(start, end, terminal.colour or "other"))
    return found
