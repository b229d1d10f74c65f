"""Where each symbol of a plan is set: at its place, or as near to it as its neighbours allow."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from junctionary.drawings.ink import Mark, line
from junctionary.drawings.placing import Extent, line_room
from junctionary.drawings.plan_symbols import principal, reach_px
from junctionary.drawings.plan_walls import ToPx
from junctionary.sheets.plan import PlanBox

_SPARE = 1.06
"""How far apart symbols stand, as a multiple of what they need."""


@dataclass(frozen=True, slots=True)
class Seat:
    """A box where its symbol was set: its middle, its radius, and how far it reaches across and down."""

    box: PlanBox
    x: float
    y: float
    radius: float
    reach: tuple[float, float]
    is_moved: bool

    @property
    def extent(self) -> Extent:
        """The room its symbol takes."""
        across, down = self.reach
        return (self.x - across, self.y - down, self.x + across, self.y + down)


def seats(boxes: Iterable[PlanBox], px: ToPx, radius: float) -> list[Seat]:
    """Every box with a place for its symbol; those on ceilings first."""
    done: list[Seat] = []
    for box in sorted(boxes, key=lambda each: each.inward is not None):
        x, y = px(box.at)
        reach = reach_px(box.symbols, radius, box.inward)
        at = (x, y)
        for at in _places(box, x, y, radius, reach):
            if not any(_too_near(at, reach, each) for each in done):
                break
        is_moved = math.dist((x, y), at) > _lift(box, radius, reach) + radius * 0.6
        r = radius * 1.3 if principal(box.symbols) == "panel" else radius
        done.append(Seat(box, *at, r, reach, is_moved))
    return done


def pointers(found: Iterable[Seat], px: ToPx) -> tuple[list[Mark], list[Extent]]:
    """From its place to each symbol that had to stand off it, and the room those lines take."""
    ways = [(px(each.box.at), edge_of(each, px(each.box.at))) for each in found if each.is_moved]
    room = [piece for start, end in ways for piece in line_room(start, end, 1)]
    return [line(*start, *end, "leader") for start, end in ways], room


def edge_of(seat: Seat, towards: tuple[float, float]) -> tuple[float, float]:
    """Where a line leaves a symbol."""
    away = math.hypot(towards[0] - seat.x, towards[1] - seat.y) or 1.0
    ux, uy = (towards[0] - seat.x) / away, (towards[1] - seat.y) / away
    across, down = seat.reach
    off = seat.radius * 1.1
    if abs(across - down) > 0.1:
        # Lettering is left by its edge, a disc by its rim.
        off = min(across / max(abs(ux), 1e-6), down / max(abs(uy), 1e-6)) + 1
    off = min(off, away)
    return (seat.x + ux * off, seat.y + uy * off)


def _too_near(at: tuple[float, float], reach: tuple[float, float], other: Seat) -> bool:
    return all(
        abs(a - b) < (mine + its) * _SPARE
        for a, b, mine, its in zip(at, (other.x, other.y), reach, other.reach, strict=True)
    )


def _lift(box: PlanBox, radius: float, reach: tuple[float, float]) -> float:
    """How far from its wall the middle of a symbol stands; nothing for one that is on none."""
    if box.inward is None:
        return 0.0
    if principal(box.symbols) == "panel":
        return radius * 0.55
    deep = reach[0] if abs(box.inward[0]) > 0.5 else reach[1]
    return max(radius * 1.35, deep + 4)


def _places(
    box: PlanBox, x: float, y: float, radius: float, reach: tuple[float, float]
) -> Iterator[tuple[float, float]]:
    if box.inward is None:
        yield (x, y)
    else:
        ux, uy = box.inward
        lift = _lift(box, radius, reach)
        # A little along the wall, then further into the room.
        for step in range(4):
            deep = lift + step * radius * 2.4
            for slide in (0, 4, -4, 8, -8, 12, -12, 16, -16):
                yield (x + ux * deep - uy * slide, y + uy * deep + ux * slide)
        x, y = x + ux * lift, y + uy * lift
    for ring in range(1, 60):
        for turn in range(16):
            angle = math.pi * turn / 8
            yield (x + math.cos(angle) * ring * radius * 0.8, y + math.sin(angle) * ring * radius * 0.8)
