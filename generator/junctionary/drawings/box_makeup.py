"""The make-up of a box, wire by wire: cables in at the sides, joints in the middle, devices below.

Every conductor has a row of its own where it enters, a column of its own
where it drops, and a track of its own to a terminal; rows of the two sides
and columns of drops and terminals stand half a step apart. So no two wires
ever lie on one another; where they cross, one passes over.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

from junctionary.drawings.box_strip import strip_columns
from junctionary.drawings.conductors import letters, wire
from junctionary.drawings.device_faces import WIDE_PART, device_face, has_face
from junctionary.drawings.ink import (
    Anchor,
    Drawing,
    Lettering,
    Linked,
    Mark,
    Stroke,
    circle,
    line,
    rect,
    route,
)
from junctionary.drawings.landings import landing_letters, lettered, torque_words
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.terminal_marks import terminal_mark
from junctionary.sheets.box import Cable, Conductor, Device, Joint, MakeUp

GRID_PX = 20.0
WIDEST_PX = 1080.0
_SHEATH_PX = 128.0
_INSIDE_PX = 160.0
_TERMINAL_PX = 100.0
_FACE_PX = 42.0


@dataclass(frozen=True, slots=True)
class _Way:
    """One wire from a joint or a cable down to a terminal."""

    start: tuple[tuple[float, float], ...]
    x: float
    terminal_x: float
    colour: str
    marked: str


@dataclass(frozen=True, slots=True)
class _Row:
    """A conductor where it comes out of its sheath."""

    conductor: Conductor
    x: float
    y: float
    is_left: bool


def wide_makeup(makeup: MakeUp, drawing_id: str) -> Drawing:
    """The make-up for a field of up to 1080 px; a fuller box is drawn as strips."""
    left, right = _sides(makeup.cables)
    columns = _columns(makeup)
    inside = max(
        sum(width for _, width in columns) + GRID_PX,
        sum(_device_width(device) for device in makeup.devices) + GRID_PX,
        240.0,
    )
    inside = -(-inside // GRID_PX) * GRID_PX
    left_px = _INSIDE_PX + (-_INSIDE_PX % GRID_PX)
    width = left_px + inside + (_INSIDE_PX if right else 24)
    if width > WIDEST_PX:
        return strip_columns(makeup, drawing_id)
    return _drawn(makeup, drawing_id, left, right, columns, left_px, inside, width)


def _drawn(
    makeup: MakeUp,
    drawing_id: str,
    left: tuple[Cable, ...],
    right: tuple[Cable, ...],
    columns: list[tuple[Joint | Conductor, float]],
    box_left: float,
    inside: float,
    width: float,
) -> Drawing:
    left_rows, left_marks, left_end = _cables(left, 0.0, is_left=True)
    right_rows, right_marks, right_end = _cables(right, width, is_left=False)
    rows = {row.conductor.id: row for row in (*left_rows, *right_rows)}
    last_row = max((row.y for row in rows.values()), default=40)
    joints_y = last_row + 34
    terminals, device_marks_of = _devices(makeup, box_left, inside)
    wires: list[Stroke] = []
    over: list[Mark] = []
    ways: list[_Way] = []
    x = box_left + GRID_PX
    for item, item_width in columns:
        if isinstance(item, Joint):
            joint_wires, joint_marks, joint_ways = _joint(item, makeup, rows, x, joints_y, terminals)
            wires += joint_wires
            over += joint_marks
            ways += joint_ways
        else:
            row = rows[item.id]
            target = terminals.get(item.id)
            if target is not None:
                ways.append(_Way(((row.x, row.y), (x, row.y)), x, target, item.colour, item.marked))
            else:
                path = route(((row.x, row.y), (x, row.y), (x, joints_y)))
                wires += wire(path, item.colour, item.marked)
                over += _loose_end(item, x, joints_y)
        x += item_width
    tallest = max((len(_joint_label(joint, makeup)) for joint in makeup.joints), default=0)
    track_y = joints_y + max(44, 14 * tallest + 12)
    ordered = _tracks(ways)
    devices_y = track_y + len(ordered) * 12 + 26
    for index, way in enumerate(ordered):
        y = track_y + index * 12
        points = (*way.start, (way.x, y), (way.terminal_x, y), (way.terminal_x, devices_y))
        wires += wire(route(points), way.colour, way.marked)
    device_marks, devices_end = device_marks_of(devices_y) if makeup.devices else ([], track_y)
    bottom = max(left_end, right_end, devices_end + 14)
    words = wrapped(makeup.enclosure, width - 20, 12)
    captions = [Lettering(box_left, bottom + 18 + i * 15, text) for i, text in enumerate(words)]
    frame = rect(box_left, 20, inside, bottom - 20, "heavy")
    marks = (frame, *wires, *left_marks, *right_marks, *over, *device_marks, *captions)
    height = bottom + 24 + 15 * len(words)
    return Drawing(drawing_id, width, height, makeup.title, makeup.says, marks, "wide makeup")


def _sides(cables: tuple[Cable, ...]) -> tuple[tuple[Cable, ...], tuple[Cable, ...]]:
    """Supply to the left, onward to the right; what is not known goes where there is more room."""
    left = [cable for cable in cables if cable.side == "feed"]
    right = [cable for cable in cables if cable.side == "onward"]
    for cable in cables:
        if cable.side == "unknown":
            (left if len(left) <= len(right) else right).append(cable)
    while len(right) > len(left) + 2:
        left.append(right.pop())
    return tuple(left), tuple(right)


def _cables(cables: tuple[Cable, ...], edge: float, *, is_left: bool) -> tuple[list[_Row], list[Mark], float]:
    """Each cable at its edge, what it is in its sheath; its conductors come out of it in rows."""
    rows: list[_Row] = []
    marks: list[Mark] = []
    y = 24.0
    sheath_x = edge if is_left else edge - _SHEATH_PX
    outer: Anchor = "start" if is_left else "end"
    inner: Anchor = "end" if is_left else "start"
    wire_x = edge + _SHEATH_PX if is_left else edge - _SHEATH_PX
    outer_x = edge + 9 if is_left else edge - 9
    tag_x = wire_x - 7 if is_left else wire_x + 7
    step = 0.0 if is_left else GRID_PX / 2
    for cable in cables:
        first = -(-(y + 13) // GRID_PX) * GRID_PX + step
        tags = [letters(each.colour, each.marked) for each in cable.conductors] or ["?"]
        room = _SHEATH_PX - 24 - max(width_px(each, 11.5, bold=True) for each in tags)
        end = cable.other_end if isinstance(cable.other_end, str) else cable.other_end.text
        side = {"feed": "from", "onward": "to", "unknown": "to or from"}[cable.side]
        said = [
            text for each in (cable.cable, cable.length, f"{side} {end}") for text in wrapped(each, room, 12)
        ]
        tall = max((len(tags) - 1) * GRID_PX + 26, 27 + 15 * len(said))
        body: list[Mark] = [rect(sheath_x, first - 13, _SHEATH_PX, tall, "part")]
        body.append(Lettering(outer_x, first + 4, cable.id, "name", outer))
        body += [
            Lettering(outer_x, first + 4 + 15 * i, text, "note", outer) for i, text in enumerate(said, 1)
        ]
        for index, tag in enumerate(tags):
            body.append(Lettering(tag_x, first + index * GRID_PX + 4, tag, "tag", inner))
        for index, conductor in enumerate(cable.conductors):
            rows.append(_Row(conductor, wire_x, first + index * GRID_PX, is_left))
        marks.append(Linked(cable.ref, f"run {cable.id}", tuple(body)))
        y = first - 13 + tall + 12
    return rows, marks, y


def _columns(makeup: MakeUp) -> list[tuple[Joint | Conductor, float]]:
    """What drops in which order, and the room each takes: through joints first, then by where they land."""
    order = {
        name: index
        for index, name in enumerate(
            f"{device.id}.{terminal.name}" for device in makeup.devices for terminal in device.terminals
        )
    }
    landed = {
        wire_id: f"{device.id}.{terminal.name}"
        for device in makeup.devices
        for terminal in device.terminals
        for wire_id in terminal.wires
    }

    def joint_place(joint: Joint) -> float:
        places = [order[name] for name in joint.members if name in order]
        if joint.role == "ground":
            return 1000.0
        return sum(places) / len(places) if places else -1.0

    items: list[tuple[float, Joint | Conductor, float]] = []
    for joint in makeup.joints:
        label = max((width_px(text, 12) for text in _joint_label(joint, makeup)), default=0)
        room = -(-(len(joint.members) * GRID_PX + label + 18) // GRID_PX) * GRID_PX
        items.append((joint_place(joint), joint, room))
    for cable in makeup.cables:
        for each in cable.conductors:
            if each.state == "landed" and each.id in landed:
                items.append((order[landed[each.id]], each, GRID_PX))
            elif each.state not in ("joined", "passing"):
                items.append((1001.0, each, GRID_PX * 5))
    return [(item, room) for _, item, room in sorted(items, key=lambda entry: entry[0])]


def _joint_label(joint: Joint, makeup: MakeUp) -> tuple[str, ...]:
    """Its name and connector; what it joins that has no wire in the drawing."""
    drawn = {each.id for cable in makeup.cables for each in cable.conductors}
    drawn |= {f"{device.id}.{each.name}" for device in makeup.devices for each in device.terminals}
    says = [joint.connector, *(f"with {name}" for name in joint.members if name not in drawn)]
    says += [f"pigtail {joint.pigtail}"] if joint.pigtail else []
    return (joint.name, *(text for each in says for text in wrapped(each, 104, 12)))


def _joint(
    joint: Joint,
    makeup: MakeUp,
    rows: dict[str, _Row],
    x: float,
    y: float,
    terminals: dict[str, float],
) -> tuple[list[Stroke], list[Mark], list[_Way]]:
    wires: list[Stroke] = []
    ways: list[_Way] = []
    colours = {
        f"{device.id}.{terminal.name}": terminal.colour
        for device in makeup.devices
        for terminal in device.terminals
    }
    members = sorted(joint.members, key=lambda name: 2 if name not in rows else not rows[name].is_left)
    for index, name in enumerate(members):
        port = x + index * GRID_PX
        if name in rows:
            row = rows[name]
            path = route(((row.x, row.y), (port, row.y), (port, y)))
            wires += wire(path, row.conductor.colour, row.conductor.marked)
        elif name in terminals:
            ways.append(_Way(((port, y + 20),), port, terminals[name], colours.get(name, "other"), ""))
        else:
            # A bonding screw, a jumper or another joint: a short tail with its own words.
            wires += wire(route(((port, y + 20), (port, y + 34))), "bare")
    span = (len(members) - 1) * GRID_PX
    marks: list[Mark] = [*_connector(joint, x, y, span, len(members))]
    for index, text in enumerate(_joint_label(joint, makeup)):
        kind = "tag" if index == 0 else "note"
        marks.append(Lettering(x + span + 16, y + 5 + index * 14, text, kind))
    return wires, marks, ways


def _connector(joint: Joint, x: float, y: float, span: float, ports: int) -> tuple[Stroke, ...]:
    """Dashed where its kind is not known, or where the joint follows from a word and was not seen."""
    name = joint.connector
    seen = "part dashed-fine" if joint.by_word else "part"
    if "twist" in name:
        d = f"M{x - 10:.1f} {y:.1f}h{span + 20:.1f}l-6 22h{-(span + 8):.1f}Z"
        ribs = (line(x + i * GRID_PX, y + 5, x + i * GRID_PX, y + 17, "hair") for i in range(ports))
        return (Stroke(d, seen), *ribs)
    known = any(word in name for word in ("lever", "push", "crimp", "screw"))
    body = rect(x - 10, y, span + 20, 22, seen if known else "part dashed-fine")
    return (body, *(rect(x + i * GRID_PX - 5, y + 4, 10, 8, "hair") for i in range(ports)))


def _loose_end(conductor: Conductor, x: float, y: float) -> tuple[Mark, ...]:
    word = {"capped": "capped", "loose": "loose", "unknown": "unknown"}.get(conductor.state, "not recorded")
    cap: tuple[Stroke, ...] = ()
    if conductor.state == "capped":
        cap = (Stroke(f"M{x - 7} {y}h14v8a7 7 0 0 1 -14 0Z", "part"),)
    elif conductor.state != "loose":
        cap = (circle(x, y + 6, 6, "part dashed-fine"),)
    return (*cap, Lettering(x - 8, y + 30, word, "note warn" if conductor.state != "capped" else "note"))


def _device_width(device: Device) -> float:
    return max(len(device.terminals), 1) * _TERMINAL_PX + GRID_PX


_Drawn: TypeAlias = Callable[[float], tuple[list[Mark], float]]


def _devices(makeup: MakeUp, box_left: float, inside: float) -> tuple[dict[str, float], _Drawn]:
    """Where each terminal stands, and how the devices are drawn once their height is known."""
    devices = makeup.devices
    known = lettered(makeup)
    taken = sum(_device_width(device) for device in devices)
    x = box_left + ((inside - taken) / 2 // GRID_PX) * GRID_PX + GRID_PX / 2
    terminals: dict[str, float] = {}
    lefts: list[float] = []
    for device in devices:
        lefts.append(x)
        for index, terminal in enumerate(device.terminals):
            middle = x + 40 + index * _TERMINAL_PX
            terminals[f"{device.id}.{terminal.name}"] = middle
            for number, wire_id in enumerate(terminal.wires):
                # A second wire under one plate stands one step to the right.
                terminals[wire_id] = middle + (number + bool(terminal.from_joint)) * GRID_PX
        x += _device_width(device)

    def drawn(y: float) -> tuple[list[Mark], float]:
        marks: list[Mark] = []
        end = y
        for device, left in zip(devices, lefts, strict=True):
            device_marks, device_end = _device(device, left, y, known)
            marks += device_marks
            end = max(end, device_end)
        return marks, end

    return terminals, drawn


def _device(device: Device, left: float, y: float, known: dict[str, str]) -> tuple[list[Mark], float]:
    width = _device_width(device) - GRID_PX
    words: list[Mark] = []
    deepest = y + 30
    for index, terminal in enumerate(device.terminals):
        x = left + 40 + index * _TERMINAL_PX
        count = len(terminal.wires) + bool(terminal.from_joint)
        words += terminal_mark(terminal.how, x, y + 14, by_word=terminal.by_word)
        if count > 1:
            words.append(rect(x - 9, y + 5, 18 + (count - 1) * GRID_PX, 18, "mid"))
        coded = landing_letters(terminal, known)
        beside = x + 12 + max(count - 1, 0) * GRID_PX
        # Letters that have no room beside the screw stand under the terminal's name.
        fits = beside + width_px(coded, 11.5, bold=True) <= x + _TERMINAL_PX - 36
        if coded and fits:
            words.append(Lettering(beside, y + 18, coded, "tag"))
        text_y = y + 38
        words.append(Lettering(x - 32, text_y, terminal.name, "tag"))
        under = "" if fits else coded.replace("+", " + ")
        for text in (under, terminal.how, *torque_words(terminal)):
            missing = "not " in text
            for each in wrapped(text, _TERMINAL_PX - 4, 12, bold=missing):
                text_y += 15
                words.append(Lettering(x - 32, text_y, each, "note warn" if missing else "note"))
        deepest = max(deepest, text_y)
    body = rect(left, y, width, deepest - y + 12, "part heavy")
    end = deepest + 14
    beside = 0.0
    if has_face(device):
        words += device_face(device, left + 1, end + 6, _FACE_PX)
        beside = _FACE_PX * WIDE_PART + 9
    face_end = end + 6 + _FACE_PX if beside else end
    for text in wrapped(f"{device.id} · {device.says}", width - beside, 14, bold=True):
        end += 17
        words.append(Lettering(left + beside, end, text, "name"))
    return [body, *words], max(end, face_end)


def _tracks(ways: list[_Way]) -> list[_Way]:
    """Ways from the topmost track down, so that those going one way do not cross one another."""
    to_right = sorted((way for way in ways if way.terminal_x >= way.x), key=lambda way: -way.x)
    to_left = sorted((way for way in ways if way.terminal_x < way.x), key=lambda way: way.x)
    return [*to_right, *to_left]
