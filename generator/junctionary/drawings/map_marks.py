"""What the wide and the narrow circuit map have alike: a node's notes, its link, the weight of a run."""

from junctionary.drawings.ink import Lettering, Linked, Mark, Stroke, rect
from junctionary.drawings.lettering import width_px, wrapped
from junctionary.drawings.symbols import severity_mark
from junctionary.sheets.circuit import MapNode, MapRun
from junctionary.sheets.entries import Severity

NOTE_PX = 12.0

KINDS = {"space": "breaker"}
"""What a thing is called aloud, where that is not the name of its kind."""


def gathered(notes: tuple[str, ...], room_px: float) -> tuple[str, ...]:
    """The notes in lines: the first alone, of the rest as many on a line as it holds."""
    first, rest = notes[:1], notes[1:]
    lines: list[str] = []
    for note in rest:
        longer = f"{lines[-1]} · {note}" if lines else note
        if lines and width_px(longer, NOTE_PX) <= room_px:
            lines[-1] = longer
        else:
            lines.append(note)
    return tuple(text for each in (*first, *lines) for text in wrapped(each, room_px, NOTE_PX))


def graded(severity: Severity, x: float, y: float) -> tuple[Lettering, tuple[Stroke, ...]]:
    """The word of a severity about a middle, on its base line, and its mark before it."""
    wide = width_px(severity, NOTE_PX, bold=True)
    return (
        Lettering(x + 9, y, severity, "note warn", "middle"),
        severity_mark(severity, x + 9 - wide * 0.47 - 12, y - 4.5),
    )


def weight(run: MapRun) -> str:
    """How a run is drawn: thin where it is smaller than the one before, dashed where its end is not known."""
    return ("run thin" if run.thin else "run") + (" dashed" if run.dashed else "")


def hit(x: float, y: float, width: float, height: float) -> tuple[Stroke, ...]:
    """A finger's room around a link."""
    return (rect(x, y, width, height, "hit"),)


def reached(node: MapNode, marks: tuple[Mark, ...]) -> tuple[Mark, ...]:
    """The marks of a node, leading to its sheet where it has one."""
    if node.ref is None:
        return marks
    return (Linked(node.ref, f"{KINDS.get(node.ref.kind, node.ref.kind)} {node.name}", marks),)
