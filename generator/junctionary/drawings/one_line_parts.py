"""Parts of a one-line diagram, after the trade's usual signs: sources, meter, breakers, fuses, grounds."""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.drawings.ink import Lettering, Mark, Stroke, circle, line, rect
from junctionary.sheets.one_line import SURGE, Bond, Device

RADIUS_PX = 15.0


@dataclass(frozen=True, slots=True)
class Drawn:
    """Marks, and how far down they reach."""

    marks: tuple[Mark, ...]
    bottom: float


def source(x: float, y: float, sign: str) -> Iterator[Mark]:
    """A source in its circle, a wave for the utility, its letters for another; surge protection to ground."""
    if sign == SURGE:
        yield rect(x - RADIUS_PX, y - 11, 2 * RADIUS_PX, 22, "part")
        yield Lettering(x, y + 4.2, sign, "note", "middle")
        yield line(x, y + 11, x, y + 15, "mid")
        yield from earth(x, y + 15)
        return
    yield circle(x, y, RADIUS_PX, "part heavy" if sign == "U" else "part")
    if sign == "U":
        yield Stroke(f"M{x - 9:.1f} {y:.1f}q4.5 -9 9 0q4.5 9 9 0", "mid")
    elif sign:
        yield Lettering(x, y + 4.2, sign, "tag", "middle")


def circuits(x: float, y: float) -> Iterator[Mark]:
    """The arrow that says there is more below."""
    yield Stroke(f"M{x - 5:.1f} {y - 9:.1f}L{x:.1f} {y:.1f}L{x + 5:.1f} {y - 9:.1f}", "mid")


def upright(x: float, y: float, device: Device) -> Iterator[Mark]:
    """A breaker or fuse in a wire that runs down, 32 px from end to end."""
    if device == "fuse":
        yield rect(x - 5, y - 12, 10, 24, "part")
        yield line(x, y - 16, x, y + 16, "mid")
    elif device == "none":
        yield line(x, y - 16, x, y + 16, "mid")
    else:
        shape = "heavy" if device == "breaker" else "heavy dashed-fine"
        yield circle(x, y - 14, 2.4, "solid")
        yield circle(x, y + 14, 2.4, "solid")
        yield Stroke(f"M{x:.1f} {y - 14:.1f}A17 17 0 0 1 {x:.1f} {y + 14:.1f}", shape)


def lying(x: float, y: float) -> Iterator[Mark]:
    """A breaker in a wire that runs across, 28 px from end to end."""
    yield circle(x - 14, y, 2.4, "solid")
    yield circle(x + 14, y, 2.4, "solid")
    yield Stroke(f"M{x - 14:.1f} {y:.1f}A17 17 0 0 1 {x + 14:.1f} {y:.1f}", "heavy")


def bars(x: float, y: float, bond: Bond) -> Iterator[Mark]:
    """The neutral bar over the ground bar, joined by a bond, kept apart, or dashed where nobody knows."""
    for at, letter in ((y, "N"), (y + 30, "G")):
        yield rect(x - 10, at - 8, 20, 16, "part")
        yield Lettering(x, at + 4.2, letter, "tag", "middle")
    if bond == "joined":
        yield line(x, y + 8, x, y + 22, "heavy")
    elif bond == "unknown":
        yield line(x, y + 8, x, y + 22, "mid dashed-fine")


def earth(x: float, y: float) -> Iterator[Mark]:
    """The ground sign, 10 px deep below its point."""
    for half, down in ((11.0, 0.0), (7.0, 5.0), (3.0, 10.0)):
        yield line(x - half, y + down, x + half, y + down, "mid")
