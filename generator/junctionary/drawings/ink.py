"""What a drawing is made of, and how it becomes SVG: the one place that writes SVG and escapes it."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from typing import Literal, NamedTuple, TypeAlias

from markupsafe import Markup, escape

from junctionary.drawings.lettering import width_px
from junctionary.sheets.links import Ref

Address: TypeAlias = Callable[[Ref], str | None]
"""Where a thing stands, as a relative URL; None where the manual has no place for it."""

Anchor = Literal["start", "middle", "end"]
SIZES_PX = {"head": 20.0, "name": 14.0, "word": 13.0, "room": 12.0, "note": 12.0, "tag": 11.5}
BOLD = frozenset({"head", "name", "room", "tag"})

CAPITALS = {"room": 0.1}
"""Kinds that are set in capitals, and how far apart, as a part of their size."""


def size_px(kind: str) -> float:
    """Height of letters of a kind, in px."""
    return SIZES_PX[kind.split()[0]]


@cache
def lettering_px(text: str, kind: str) -> float:
    """Width of a line of text of a kind, in px, on the generous side."""
    head = kind.split()[0]
    bold = head in BOLD or "warn" in kind
    if head in CAPITALS:
        return width_px(text.upper(), SIZES_PX[head], bold=bold) + CAPITALS[head] * SIZES_PX[head] * len(text)
    return width_px(text, SIZES_PX[head], bold=bold)


class Stroke(NamedTuple):
    """A path, with the class for its weight or colour: ``heavy``, ``mid``, ``hair``, ``core c-black``."""

    d: str
    kind: str
    shift: tuple[float, float] = (0.0, 0.0)

    def moved(self, x: float, y: float) -> "Stroke":
        """The same path elsewhere."""
        return Stroke(self.d, self.kind, (self.shift[0] + x, self.shift[1] + y))


class Lettering(NamedTuple):
    """One line of text. ``kind`` is one of ``SIZES_PX``, with ``warn`` added for what is wrong."""

    x: float
    y: float
    text: str
    kind: str = "note"
    anchor: Anchor = "start"

    @property
    def size_px(self) -> float:
        """Height of its letters, in px."""
        return size_px(self.kind)

    @property
    def extent(self) -> tuple[float, float, float, float]:
        """Left, top, right, bottom of the room it takes, in px."""
        width = lettering_px(self.text, self.kind)
        left = self.x - {"start": 0.0, "middle": width / 2, "end": width}[self.anchor]
        return (left, self.y - 0.8 * self.size_px, left + width, self.y + 0.25 * self.size_px)


class Linked(NamedTuple):
    """Marks that together lead somewhere."""

    to: Ref
    says: str
    marks: tuple["Mark", ...]


Mark: TypeAlias = Stroke | Lettering | Linked


@dataclass(frozen=True, slots=True)
class Drawing:
    """Marks on a field of so many px, with a title and a description for who cannot see it."""

    id: str
    width_px: float
    height_px: float
    title: str
    says: str
    marks: tuple[Mark, ...]
    kind: str = ""


def rect(x: float, y: float, width: float, height: float, kind: str) -> Stroke:
    """A rectangle."""
    return Stroke(f"M{_n(x)} {_n(y)}h{_n(width)}v{_n(height)}h{_n(-width)}Z", kind)


def line(x1: float, y1: float, x2: float, y2: float, kind: str) -> Stroke:
    """A straight line."""
    return Stroke(f"M{_n(x1)} {_n(y1)}L{_n(x2)} {_n(y2)}", kind)


def circle(x: float, y: float, radius: float, kind: str) -> Stroke:
    """A circle about its centre."""
    r, d = _n(radius), _n(2 * radius)
    return Stroke(f"M{_n(x - radius)} {_n(y)}a{r} {r} 0 1 0 {d} 0a{r} {r} 0 1 0 {_n(-2 * radius)} 0Z", kind)


def route(points: tuple[tuple[float, float], ...], radius: float = 7) -> str:
    """The path through points joined by straight lines, its corners rounded."""
    (x, y), *rest = points
    said = [f"M{_n(x)} {_n(y)}"]
    for index, (x1, y1) in enumerate(rest):
        if index == len(rest) - 1:
            said.append(f"L{_n(x1)} {_n(y1)}")
            break
        x2, y2 = rest[index + 1]
        before, after = abs(x1 - x) + abs(y1 - y), abs(x2 - x1) + abs(y2 - y1)
        bend = min(radius, before / 2, after / 2)
        if bend:
            ax, ay = x1 - (x1 - x) / before * bend, y1 - (y1 - y) / before * bend
            bx, by = x1 + (x2 - x1) / after * bend, y1 + (y2 - y1) / after * bend
            said.append(f"L{_n(ax)} {_n(ay)}Q{_n(x1)} {_n(y1)} {_n(bx)} {_n(by)}")
        x, y = x1, y1
    return "".join(said)


def letterings(marks: tuple[Mark, ...]) -> Iterator[Lettering]:
    """Every line of text among the marks."""
    for mark in marks:
        if isinstance(mark, Lettering):
            yield mark
        elif isinstance(mark, Linked):
            yield from letterings(mark.marks)


def svg(drawing: Drawing, address: Address) -> Markup:
    """The drawing as an inline ``<svg>``; links with no address become plain marks."""
    width, height, id_ = _n(drawing.width_px), _n(drawing.height_px), escape(drawing.id)
    return Markup(
        f'<svg class="drawing {escape(drawing.kind)}" viewBox="0 0 {width} {height}"'
        f' width="{width}" height="{height}" role="group" aria-labelledby="{id_}-t {id_}-d">'
        f'<title id="{id_}-t">{escape(drawing.title)}</title>'
        f'<desc id="{id_}-d">{escape(drawing.says)}</desc>'
        f"{''.join(_mark(mark, address) for mark in drawing.marks)}</svg>"
    )


def _mark(mark: Mark, address: Address) -> str:
    """One mark as SVG, its words escaped; a drawing has thousands, so all is plain text till it is whole."""
    if isinstance(mark, Stroke):
        x, y = mark.shift
        moved = f' transform="translate({_n(x)} {_n(y)})"' if x or y else ""
        return f'<path d="{mark.d}" class="{mark.kind}"{moved}/>'
    if isinstance(mark, Lettering):
        anchor = f' text-anchor="{mark.anchor}"' if mark.anchor != "start" else ""
        return (
            f'<text x="{_n(mark.x)}" y="{_n(mark.y)}" class="{mark.kind}"{anchor}>{_words(mark.text)}</text>'
        )
    inner = " ".join(_mark(each, address) for each in mark.marks)
    href = address(mark.to)
    if href is None:
        return f"<g>{inner}</g>"
    return f'<a href="{escape(href)}" aria-label="{escape(_spoken(mark))}">{inner}</a>'


def _spoken(mark: Linked) -> str:
    """What a link is called aloud: what it leads to, and every word it shows, in their order."""
    shown = " ".join(each.text for each in letterings(mark.marks))
    kind, _, name = mark.says.partition(" ")
    return f"{kind} {shown}" if shown.startswith(name) else f"{mark.says}: {shown}"


@cache
def _words(text: str) -> str:
    return str(escape(text))


@cache
def _n(value: float) -> str:
    text = f"{value:.1f}".removesuffix(".0")
    return "0" if text == "-0" else text
