"""The right side of a narrow make-up: joints and devices one under another, with their ports."""

from collections.abc import Iterator, Sequence

from junctionary.drawings.conductors import letters, wire
from junctionary.drawings.device_faces import WIDE_PART, device_face, has_face
from junctionary.drawings.ink import BOLD, Lettering, Mark, Stroke, rect, size_px
from junctionary.drawings.landings import landing_letters, torque_words
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.makeup_lanes import Port
from junctionary.drawings.terminal_marks import connector_mark, terminal_mark
from junctionary.sheets.box import Conductor, Device, Joint, MakeUp, Terminal

STEP_PX = 22.0
"""From row to row; the rows of this side stand half a step below those of cables."""

EDGE_PX = 9.0
"""From the wall of the box, and from what stands at the right, to what is nearest."""

_LINE_PX = 15.0
_FACE_PX = 34.0
_HOW_PX = 88.0


class Column:
    """Joints and devices one under another, with the ports they are entered by. Filled once, from the top."""

    def __init__(self, wide_px: float, details_px: float, known: dict[str, str]) -> None:
        self.y = 8.0
        self.wide_px = wide_px
        self.ports: dict[str, Port] = {}
        self._room = wide_px - EDGE_PX
        self._details = details_px
        self._known = known
        self._marks: list[tuple[float, Mark]] = []

    def at(self, x: float) -> Iterator[Mark]:
        """The marks with their left edge at x."""
        for _, mark in self._marks:
            yield _moved(mark, x)

    def _head(self, says: Sequence[tuple[str, str]], x: float = 0.0) -> float:
        """Words from the left edge or so far from it, and the first row under them."""
        for text, kind in says:
            for each in wrapped(text, self._room - x, size_px(kind), bold=kind in BOLD):
                self.y += 17 if kind == "name" else _LINE_PX
                self._put(Lettering(x, self.y - 3, each, kind))
        return self._row(self.y + 12)

    @staticmethod
    def _row(least: float) -> float:
        return -(-(least - STEP_PX / 2) // STEP_PX) * STEP_PX + STEP_PX / 2

    def _put(self, *marks: Mark) -> None:
        self._marks += [(self.y, each) for each in marks]

    def joint(self, joint: Joint, makeup: MakeUp) -> None:
        """A connector, a row for each conductor in it: those of cables first, then pigtails."""
        ends = {each.id: each for cable in makeup.cables for each in cable.conductors}
        terminals = {f"{d.id}.{t.name}": t for d in makeup.devices for t in d.terminals}
        order = {name: index for index, name in enumerate([*ends, *terminals])}
        members = sorted(joint.members, key=lambda name: order.get(name, len(order)))
        under = [joint.role, *([f"pigtail {joint.pigtail}"] if joint.pigtail else [])]
        first = self._head(
            (
                (f"{joint.name} · {joint.connector}", "name"),
                (", ".join(each for each in under if each), "note"),
            )
        )
        ys: list[float] = []
        y = first
        for name in members:
            ys.append(y)
            if name in ends:
                tag, said = letters(ends[name].colour, ends[name].marked), name.rpartition(".")[0]
            elif name in terminals:
                colour = terminals[name].colour
                tag, said = letters(colour) if colour else "", name.replace(".", " ")
            else:
                tag, said = "", name.replace(".", " ")
                self._put(*wire(f"M-7 {y:.1f}H0", "bare"))
            self.ports[f"{joint.name}:{name}"] = Port(y, is_left=False)
            y = self._said(tag, said, y)
        self._put(*connector_mark(joint.connector, 0, tuple(ys), by_word=joint.by_word))
        self.y = y - STEP_PX + 22

    def _said(self, tag: str, said: str, y: float) -> float:
        """A row's letters and words beside its port, and the next row."""
        x = 28.0
        if tag:
            self._put(Lettering(x, y + 4, tag, "tag"))
            x += width_px(tag, 11.5, bold=True) + 6
        longest = max((width_px(each, 12) for each in said.split()), default=0.0)
        down = 0 if x + longest <= self._room else 1
        x = 28.0 if down else x
        lines = wrapped(said, self._room - x, 12)
        for index, text in enumerate(lines, down):
            self._put(Lettering(x, y + 4 + index * _LINE_PX, text))
        return self._row(y + STEP_PX + max(len(lines) - 1 + down, 0) * _LINE_PX - 1)

    def device(self, device: Device) -> None:
        """A device with its terminals in rows, what lands on each, how, and how tight."""
        top = self.y + 4
        face = _FACE_PX * WIDE_PART + 8 if has_face(device) else 0.0
        self._head(((f"{device.id} · {device.says}", "name"),), face)
        if face:
            self._put(*device_face(device, 1, top, _FACE_PX))
            self.y = max(self.y, top + _FACE_PX)
        y = first = self._row(self.y + 20)
        end = first
        body: list[Mark] = []
        for terminal in device.terminals:
            name = f"{device.id}.{terminal.name}"
            keys = [*terminal.wires, *([name] if terminal.from_joint else [])]
            for index, key in enumerate(keys or [""]):
                self.ports[f"at:{key}"] = Port(y + index * STEP_PX, is_left=False)
                body += terminal_mark(terminal.how, 13, y + index * STEP_PX, by_word=terminal.by_word)
            words, text_y = self._terminal(terminal, y)
            body += words
            end = max(text_y, y + (len(keys) - 1) * STEP_PX + 4)
            y = self._row(end + 17)
        if device.terminals:
            self._put(rect(0, first - 14, self._room, end + 10 - (first - 14), "part heavy"))
        self._put(*body)
        self.y = end + 24

    def _terminal(self, terminal: Terminal, y: float) -> tuple[list[Mark], float]:
        """A terminal's name, the letters of what lands, and how and how tight: beside them or under them."""
        marks: list[Mark] = [Lettering(28, y + 4, terminal.name, "tag")]
        tag = landing_letters(terminal, self._known)
        beside = 28 + width_px(terminal.name, 11.5, bold=True) + 7
        edge = self._details - 6 if self._details else self._room - 4
        text_y = y + 4
        if tag and beside + width_px(tag, 11.5, bold=True) <= edge:
            marks.append(Lettering(beside, y + 4, tag, "tag"))
        else:
            for text in wrapped(tag.replace("+", " + "), edge - 28, 11.5, bold=True):
                text_y += _LINE_PX
                marks.append(Lettering(28, text_y, text, "tag"))
        details = [each for each in (terminal.how, *torque_words(terminal)) if each]
        if not self._details:
            for said in details:
                missing = "not " in said
                for text in wrapped(said, self._room - 34, 12, bold=missing):
                    text_y += _LINE_PX
                    marks.append(Lettering(28, text_y, text, "note warn" if missing else "note"))
            return marks, text_y
        x, down = self._details, y + 4
        for said in details:
            missing = "not " in said
            wide = width_px(said, 12, bold=missing)
            if x > self._details and x + wide > self._room - 6:
                x, down = self._details, down + _LINE_PX
            for index, text in enumerate(wrapped(said, self._room - 6 - self._details, 12, bold=missing)):
                down += _LINE_PX if index else 0
                marks.append(Lettering(x, down, text, "note warn" if missing else "note"))
            # What follows stands in a column of its own, where that is free.
            x = max(x + wide + 10, self._details + _HOW_PX)
        return marks, max(text_y, down)

    def open_ends(self, ends: Sequence[Conductor]) -> None:
        """Conductors that meet nothing here, each with the word for it."""
        if not ends:
            return
        y = self._head((("ends that meet nothing here", "tag"),))
        for each in ends:
            word = {"capped": "capped", "loose": "loose", "unknown": "unknown", "passing": "passes through"}
            said = word.get(each.state, "not recorded")
            self.ports[f"at:{each.id}"] = Port(y, is_left=False)
            if each.state == "capped":
                self._put(Stroke(f"M0 {y - 7:.1f}v14h8a7 7 0 0 0 0 -14Z", "part"))
            elif each.state not in ("loose", "passing"):
                self._put(Stroke(f"M0 {y:.1f}a6 6 0 1 0 12 0a6 6 0 1 0 -12 0Z", "part dashed-fine"))
            bold = each.state not in ("capped", "passing")
            self._put(Lettering(28, y + 4, each.id.rpartition(".")[0]))
            x = 28 + width_px(each.id.rpartition(".")[0], 12) + 6
            lines = wrapped(said, max(self._room - x, 50.0), 12, bold=bold)
            for index, text in enumerate(lines):
                self._put(Lettering(x, y + 4 + index * _LINE_PX, text, "note warn" if bold else "note"))
            y = self._row(y + STEP_PX + (len(lines) - 1) * _LINE_PX - 1)
        self.y = y - STEP_PX + 22


def _moved(mark: Mark, x: float) -> Mark:
    if isinstance(mark, Lettering):
        return Lettering(mark.x + x, mark.y, mark.text, mark.kind, mark.anchor)
    return mark.moved(x, 0) if isinstance(mark, Stroke) else mark
