"""Lanes for the conductors of a make-up between its two sides: none shares a stretch of one with another."""

from collections.abc import Sequence
from dataclasses import dataclass

_CLEAR_PX = 12.0
"""What two wires in one lane keep between them."""


@dataclass(frozen=True, slots=True)
class Port:
    """Where a conductor ends: its height at its side; ``is_left`` at a cable."""

    y: float
    is_left: bool


@dataclass(frozen=True, slots=True)
class Wire:
    """A conductor between two ports."""

    start: Port
    end: Port
    colour: str
    marked: str = ""

    @property
    def span(self) -> tuple[float, float]:
        """The heights between which it runs in its lane."""
        return (min(self.start.y, self.end.y), max(self.start.y, self.end.y))


def lanes_of(wires: Sequence[Wire]) -> list[int]:
    """The lane of each wire, from the left, so that those that run together cross as little as can be."""
    ordered = sorted(range(len(wires)), key=lambda index: _rank(wires[index]))
    strict = _assigned(wires, ordered, in_order=True)
    loose = _assigned(wires, ordered, in_order=False)
    # A few lanes more are worth fewer crossings; many more are not.
    return strict if max(strict, default=0) <= max(loose, default=0) + 3 else loose


def _rank(each: Wire) -> tuple[int, float]:
    """First those that rise, the upper leftmost; then those that fall, the lower leftmost; then pigtails."""
    if not each.start.is_left:
        return (2, each.span[0] - each.span[1])
    return (0, each.start.y) if each.end.y < each.start.y else (1, -each.start.y)


def _assigned(wires: Sequence[Wire], ordered: Sequence[int], *, in_order: bool) -> list[int]:
    lanes = [0] * len(wires)
    done: list[int] = []
    for index in ordered:
        low, high = wires[index].span
        met = [
            lanes[other]
            for other in done
            if wires[other].span[0] - _CLEAR_PX < high and low < wires[other].span[1] + _CLEAR_PX
        ]
        if in_order:
            lanes[index] = max(met, default=-1) + 1
        else:
            lanes[index] = next(lane for lane in range(len(wires)) if lane not in met)
        done.append(index)
    return lanes
