"""The make-up of a box as terminal strips: each cable, joint and device with its conductors, one to a line.

For a box too full to be drawn wire by wire. Nothing in it can cross.
"""

from dataclasses import dataclass

from junctionary.drawings.box_routed import middle_routed, narrow_routed, wide_routed
from junctionary.drawings.conductors import letters, wire
from junctionary.drawings.ink import Drawing, Lettering, Linked, Mark, circle, letterings, line, rect
from junctionary.drawings.landings import landing_letters, lettered, torque_words
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.sheets.box import Cable, Conductor, Device, Joint, MakeUp, Terminal
from junctionary.sheets.links import plain

STRIP_PX = 340.0
MIDDLE_PX = 734.0
LEAST_PX = 150.0
GAP_PX = 30.0
_ROW_PX = 23.0
_LINE_PX = 15.0
_STUB = (26.0, 70.0)
_TAG_X = 77.0


@dataclass(frozen=True, slots=True)
class Strip:
    """Marks that take so much height from the top of their place."""

    marks: tuple[Mark, ...]
    height_px: float


@dataclass(frozen=True, slots=True)
class _Line:
    colour: str
    marked: str
    words: tuple[str, ...]
    end: str = ""
    by_word: bool = False


def narrow_makeup(makeup: MakeUp, drawing_id: str) -> Drawing:
    """The make-up for a phone; where wires have no room cables, joints and devices one under another."""
    drawn = narrow_routed(makeup, drawing_id)
    if drawn is not None:
        return drawn
    marks, y = _column(strips(makeup), 0, 4)
    return Drawing(drawing_id, STRIP_PX, y, makeup.title, makeup.says, tuple(marks), "narrow makeup")


def strip_columns(makeup: MakeUp, drawing_id: str) -> Drawing:
    """For a box too full for the wide drawing: cables to the left of all else, or three columns of strips."""
    return wide_routed(makeup, drawing_id) or _in_columns(makeup, drawing_id, _by_kind(makeup), "wide makeup")


def middle_makeup(makeup: MakeUp, drawing_id: str) -> Drawing:
    """For a tablet and for paper: wire by wire, else in columns: three where they have room, or two."""
    routed = middle_routed(makeup, drawing_id)
    if routed is not None:
        return routed
    drawn = _in_columns(makeup, drawing_id, _by_kind(makeup), "middle makeup")
    if drawn.width_px <= MIDDLE_PX:
        return drawn
    every = strips(makeup)
    return _in_columns(makeup, drawing_id, _halved(every), "middle makeup")


def _by_kind(makeup: MakeUp) -> tuple[tuple[Strip, ...], ...]:
    parts: tuple[tuple[Cable | Joint | Device, ...], ...] = (makeup.cables, makeup.joints, makeup.devices)
    return tuple(tuple(_strip_of(each, makeup) for each in group) for group in parts)


def _halved(every: tuple[Strip, ...]) -> tuple[tuple[Strip, ...], ...]:
    """In their order, broken where the taller of the two columns is lowest."""

    def tallest(cut: int) -> float:
        return max(sum(each.height_px for each in part) for part in (every[:cut], every[cut:]))

    cut = min(range(len(every) + 1), key=tallest)
    return every[:cut], every[cut:]


def _in_columns(makeup: MakeUp, drawing_id: str, groups: tuple[tuple[Strip, ...], ...], kind: str) -> Drawing:
    marks: list[Mark] = []
    tallest = x = 0.0
    for group in groups:
        if group:
            column, y = _column(group, x, 4)
            marks.extend(column)
            tallest = max(tallest, y)
            reach = max((each.extent[2] for each in letterings(tuple(column))), default=x)
            x = max(reach, x + LEAST_PX) + GAP_PX
    x = max(x - GAP_PX, LEAST_PX)
    return Drawing(drawing_id, x, tallest, makeup.title, makeup.says, tuple(marks), kind)


def strips(makeup: MakeUp) -> tuple[Strip, ...]:
    """Every strip of the make-up."""
    parts: tuple[Cable | Joint | Device, ...] = (*makeup.cables, *makeup.joints, *makeup.devices)
    return tuple(_strip_of(each, makeup) for each in parts)


def _column(group: tuple[Strip, ...], x: float, y: float) -> tuple[list[Mark], float]:
    marks: list[Mark] = []
    for strip in group:
        marks.extend(_moved(mark, x, y) for mark in strip.marks)
        y += strip.height_px + 16
    return marks, y


def _moved(mark: Mark, x: float, y: float) -> Mark:
    if isinstance(mark, Lettering):
        return Lettering(mark.x + x, mark.y + y, mark.text, mark.kind, mark.anchor)
    if isinstance(mark, Linked):
        return Linked(mark.to, mark.says, tuple(_moved(each, x, y) for each in mark.marks))
    return mark.moved(x, y)


def _strip_of(part: Cable | Joint | Device, makeup: MakeUp) -> Strip:
    if isinstance(part, Cable):
        end = part.other_end if isinstance(part.other_end, str) else part.other_end.text
        side = {"feed": "feed, from", "onward": "onward, to", "unknown": "to or from"}[part.side]
        heading = f"{part.id} · {part.cable} · {part.length}"
        lines = tuple(
            _Line(each.colour, each.marked, wrapped(said_end(each), 210, 12)) for each in part.conductors
        )
        return _strip("cable", heading, f"{side} {end}", lines, Linked(part.ref, f"run {part.id}", ()))
    if isinstance(part, Joint):
        heading = f"{part.name} · {part.connector}"
        under = " · ".join(word for word in (part.role, part.known_by) if word)
        lines = tuple(_member(name, makeup) for name in part.members)
        return _strip("joint", heading, under, lines, None)
    known = lettered(makeup)
    lines = tuple(
        _Line(terminal.colour, "", _terminal_words(terminal, known), terminal.name, terminal.by_word)
        for terminal in part.terminals
    )
    return _strip("device", f"{part.id} · {part.says}", plain(part.feeds), lines, None)


def said_end(conductor: Conductor) -> str:
    """Where a conductor goes, in words."""
    if conductor.state in ("joined", "landed"):
        return f"to {conductor.meets}"
    return {"not-recorded": "not recorded", "passing": "passes through"}.get(conductor.state, conductor.state)


def _landed(wires: tuple[str, ...], joint: str) -> str:
    said = [wire_id.replace(".", " ") for wire_id in wires] + ([f"pigtail from {joint}"] if joint else [])
    return ", ".join(said) or "nothing recorded"


def _terminal_words(terminal: Terminal, known: dict[str, str]) -> tuple[str, ...]:
    """``BK, cn1 black · loop · 14 in-lb listed, set to 14 in-lb``."""
    lands = _landed(terminal.wires, terminal.from_joint)
    coded = ", ".join(each for each in (landing_letters(terminal, known), lands) if each)
    torque = ", ".join(torque_words(terminal))
    return tuple(" · ".join(each for each in (coded, terminal.how, torque) if each).split())


def _member(name: str, makeup: MakeUp) -> _Line:
    for cable in makeup.cables:
        for each in cable.conductors:
            if each.id == name:
                return _Line(each.colour, each.marked, wrapped(name.replace(".", " "), 210, 12))
    for device in makeup.devices:
        for terminal in device.terminals:
            if f"{device.id}.{terminal.name}" == name:
                return _Line(terminal.colour, "", wrapped(f"to {device.id} {terminal.name}", 210, 12))
    # The box itself, a bonding screw or another joint: no insulation, so neither colour nor letters.
    return _Line("", "", wrapped(name.replace(".", " "), 210, 12))


def _strip(kind: str, heading: str, under: str, lines: tuple[_Line, ...], to: Linked | None) -> Strip:
    words: list[Mark] = []
    y = 0.0
    for text in wrapped(heading, STRIP_PX - 10, 14, bold=True):
        y += 17
        words.append(Lettering(0, y - 3, text, "name"))
    for text in wrapped(under, STRIP_PX - 10, 12):
        y += _LINE_PX
        words.append(Lettering(0, y - 3, text))
    marks: list[Mark] = [Linked(to.to, to.says, tuple(words))] if to else words
    top = y + 4
    y = top + 4
    ports: list[Mark] = []
    tags = [each.end or (letters(each.colour, each.marked) if each.colour else "") for each in lines]
    # What is said begins at one edge, unless a tag is too long for that.
    edge = max((_TAG_X + width_px(tag, 11.5, bold=True) + 8 for tag in tags), default=0.0)
    edge = min(max(_TAG_X + 36, edge), _TAG_X + 100)
    for each, tag in zip(lines, tags, strict=True):
        middle = y + _ROW_PX / 2
        if each.colour:
            path = f"M{_STUB[0] - 4:.1f} {middle:.1f}H{_STUB[1]:.1f}"
            ports.extend(wire(path, each.colour, each.marked)[1:])
        ports.append(_port(kind, middle, by_word=each.by_word))
        tag_width = width_px(tag, 11.5, bold=True)
        if tag:
            ports.append(Lettering(_TAG_X, middle + 4, tag, "tag"))
        text_x = max(edge, _TAG_X + tag_width + 8)
        for index, text in enumerate(wrapped(" ".join(each.words), STRIP_PX - text_x - 4, 12)):
            ports.append(Lettering(text_x, middle + 4 + index * _LINE_PX, text))
            y += _LINE_PX if index else 0
        y += _ROW_PX
    bottom = max(y + 2, top + 14)
    body = rect(0, top, 22, bottom - top, "part heavy" if kind == "device" else "part")
    return Strip((*marks, body, *ports), bottom)


def _port(kind: str, y: float, *, by_word: bool) -> Mark:
    if kind == "device":
        return circle(11, y, 6, "part dashed-fine" if by_word else "part")
    if kind == "joint":
        return rect(6, y - 5, 10, 10, "hair")
    return line(2, y, 20, y, "hair")
