"""What stands in the spaces of a panel: breakers with their handles, fuses, filler plates, openings."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from junctionary.drawings.ink import Anchor, Lettering, Mark, Stroke, circle, line, rect
from junctionary.sheets.face import Handle, Slot


@dataclass(frozen=True, slots=True)
class Body:
    """The outline of one body in px, its spaces from the top down, and which way is outward (-1 or 1)."""

    x: float
    y: float
    width: float
    height: float
    outward: int
    slots: tuple[Slot, ...] = ()

    @property
    def middle(self) -> float:
        """Half way down."""
        return self.y + self.height / 2

    def out(self, distance: float) -> float:
        """The x so far inward of its outer edge."""
        return self.x + self.width - distance if self.outward > 0 else self.x + distance

    def middles(self) -> tuple[float, ...]:
        """The height of the middle of each of its spaces."""
        count = len(self.slots) or 1
        return tuple(self.y + self.height * (index + 0.5) / count for index in range(count))


_WELLS = {True: (13.0, 3.0), False: (27.0, 5.5)}
"""The width of the opening a handle moves in and half that of the handle, on a phone and elsewhere."""

EMPTY = {"blank": "blank", "open": "open", "unrecorded": "?"}
"""What is lettered in a space that holds no breaker."""


def in_spaces(body: Body, handle: Handle, numbered: bool) -> Iterator[Mark]:
    """A breaker, a fuse, or what closes an empty space. ``numbered``: its number stands on the body."""
    if handle.state in EMPTY:
        yield from _empty(body, handle, numbered)
        return
    outline = "part dashed-fine" if handle.state == "unknown" else "part"
    yield rect(body.x, body.y, body.width, body.height, outline)
    anchor: Anchor = "end" if body.outward > 0 else "start"
    if numbered:
        for slot, y in zip(body.slots, body.middles(), strict=True):
            if is_short(slot):
                yield Lettering(body.out(4), y + 4, slot.number, "tag", anchor)
    else:
        halves = any(slot.half for slot in body.slots)
        guards = "" if halves else handle.guards
        drop = -3.5 if guards else 4
        yield Lettering(body.out(9), body.middle + drop, handle.rating or "?", "tag", anchor)
        if guards:
            yield Lettering(body.out(9), body.middle + 11.5, guards, "note", anchor)
    for y in body.middles():
        yield from _actuator(body, handle, y, numbered)
    yield from joined(body.middles(), toggle_x(body, numbered, handle.is_off))


def main_in(body: Body, main: Handle) -> Iterator[Mark]:
    """The main above the spaces, its handle upright."""
    middle = body.x + body.width / 2
    yield rect(body.x, body.y, body.width, body.height, "part heavy")
    yield rect(middle - 9, body.y + 8, 18, body.height - 16, "hair")
    yield rect(middle - 6, body.y + 11, 12, body.height / 2 - 12, "solid")
    yield Lettering(middle - 15, body.middle + 4, "main", "tag", "end")
    yield Lettering(middle + 15, body.middle + 4, main.rating or "?", "tag")


def is_short(slot: Slot) -> bool:
    """Whether the name of a space has room on the cover; a word is called out instead."""
    return len(slot.number) <= 3


def toggle_x(body: Body, numbered: bool, is_off: bool = False) -> float:
    """The middle of a handle: inward when it is on, as it is usually drawn, outward when it is kept off."""
    well, half = _WELLS[numbered]
    inner = body.x if body.outward > 0 else body.x + body.width
    return inner + body.outward * (4 + (well - 1.8 - half if is_off else 1.8 + half))


def joined(middles: Sequence[float], x: float) -> Iterator[Stroke]:
    """The bar from the first to the last of several handles."""
    if len(middles) > 1:
        yield rect(x - 2, middles[0], 4, middles[-1] - middles[0], "solid")


def _empty(body: Body, handle: Handle, numbered: bool) -> Iterator[Mark]:
    kind = {"blank": "hair", "open": "mid dashed-fine", "unrecorded": "hair dashed-fine"}[handle.state]
    inset = 2.5
    yield rect(body.x + inset, body.y, body.width - 2 * inset, body.height, kind)
    middle = body.x + body.width / 2
    said = EMPTY[handle.state]
    if not numbered or not is_short(body.slots[0]):
        yield Lettering(middle, body.middle + 4, said, "note", "middle")
        return
    # On a phone the number takes the body, and the words would not fit beside it: a sign is enough.
    anchor: Anchor = "end" if body.outward > 0 else "start"
    yield Lettering(body.out(6), body.middle + 4, body.slots[0].number, "note", anchor)
    x, y = body.x + (body.width - 13 if body.outward < 0 else 13), body.middle
    if handle.state == "unrecorded":
        yield Lettering(x, y + 4, "?", "tag", "middle")
    elif handle.state == "blank":
        yield line(x - 5, y + 4, x + 5, y - 4, "hair")


def _actuator(body: Body, handle: Handle, y: float, numbered: bool) -> Iterator[Mark]:
    well, half = _WELLS[numbered]
    height = min(17.0, body.height / (len(body.slots) or 1) * 0.55)
    inner = body.x + 4 if body.outward > 0 else body.x + body.width - 4 - well
    if handle.device == "plug-fuse":
        radius = min(9.0, height / 2 + 1)
        yield circle(inner + well / 2, y, radius, "part")
        yield circle(inner + well / 2, y, radius / 2.2, "hair")
        return
    if handle.device == "cartridge-fuse":
        yield rect(inner, y - height / 3, well, height / 1.5, "part")
        yield line(inner, y, inner + well, y, "hair")
        return
    yield rect(inner, y - height / 2, well, height, "hair")
    x = toggle_x(body, numbered, handle.is_off)
    yield rect(x - half, y - height / 2 + 1.8, 2 * half, height - 3.6, "solid")
