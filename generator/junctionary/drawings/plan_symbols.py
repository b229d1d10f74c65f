"""Symbols on a plan: against their wall, its lines square to it, as ANSI Y32.9 and NECA 100 describe them."""

import math

from junctionary.drawings.ink import Lettering, Mark, Stroke, circle, lettering_px, line, rect
from junctionary.sheets.circuit import Symbol

SWITCHES: dict[str, str] = {"switch": "S", "switch-3": "S3", "switch-4": "S4"}

LEAST_LETTERED_PX = 5.0
"""The radius of symbols from which switches are lettered."""

_SWITCH_PX = 13.0

Vector = tuple[float, float]


def on_plan(
    symbols: tuple[Symbol, ...], x: float, y: float, radius: float, inward: Vector | None
) -> tuple[Mark, ...]:
    """The symbols of one box about a point. ``inward`` points from its wall; None stands free."""
    name = principal(symbols)
    if name in SWITCHES:
        dx, dy = inward or (0.0, 0.0)
        if radius < LEAST_LETTERED_PX:
            # Too small for letters: a stroke out from the wall.
            return (line(x - dx * radius, y - dy * radius, x + dx * radius, y + dy * radius, "mid"),)
        return _switches(symbols, x, y, radius, inward)
    if name == "panel":
        return _panel(x, y, radius, inward)
    return (*_body(name, x, y, radius, inward or (0.0, -1.0)), *_switch_beside(symbols, x, y, radius, inward))


def reach_px(symbols: tuple[Symbol, ...], radius: float, inward: Vector | None) -> tuple[float, float]:
    """How far the symbol of a box reaches from its middle, across and down."""
    name = principal(symbols)
    if name in SWITCHES and radius >= LEAST_LETTERED_PX:
        each = [lettering_px(word, "tag") + 2 for word in switch_words(symbols).split()]
        if _stacks(inward):
            return (max(each) / 2, len(each) * _SWITCH_PX / 2)
        return (sum(each) / 2, _SWITCH_PX / 2)
    if name == "panel" and inward is not None:
        along, deep = 1.5 * radius + 2, 0.55 * radius + 2
        return (deep, along) if _stacks(inward) else (along, deep)
    reach = radius * (1.4 if name in ("light", "fan") and radius >= 10 else 1.15)
    return (reach, reach)


def _stacks(inward: Vector | None) -> bool:
    """On a wall that runs down the drawing letters stand one under another, so that none lies on the wall."""
    return inward is not None and abs(inward[0]) > abs(inward[1])


def _switches(
    symbols: tuple[Symbol, ...], x: float, y: float, radius: float, inward: Vector | None
) -> tuple[Mark, ...]:
    """A letter for each switch along the wall, on a stem from it."""
    words = switch_words(symbols).split()
    across, down = reach_px(symbols, radius, inward)
    marks: list[Mark] = []
    at = -down if _stacks(inward) else -across
    for word in words:
        wide = lettering_px(word, "tag") + 2
        if _stacks(inward):
            middle = (x, y + at + _SWITCH_PX / 2)
            at += _SWITCH_PX
        else:
            middle = (x + at + wide / 2, y)
            at += wide
        marks.append(Lettering(middle[0], middle[1] + 4.2, word, "tag halo", "middle"))
    if inward is not None:
        dx, dy = inward
        deep = across if _stacks(inward) else down
        foot, head = deep + 4, deep
        marks.insert(0, line(x - dx * foot, y - dy * foot, x - dx * head, y - dy * head, "mid"))
    return tuple(marks)


def principal(symbols: tuple[Symbol, ...]) -> Symbol:
    """The symbol that stands for a box: what is not a switch, the guarding receptacle first."""
    others = [each for each in symbols if each not in SWITCHES]
    return "gfci" if "gfci" in others else others[0] if others else symbols[0]


def switch_words(symbols: tuple[Symbol, ...]) -> str:
    """``S S3`` for a switch and a 3-way switch on one strap or side by side."""
    return " ".join(SWITCHES[each] for each in symbols if each in SWITCHES)


def _switch_beside(
    symbols: tuple[Symbol, ...], x: float, y: float, radius: float, inward: Vector | None
) -> tuple[Mark, ...]:
    words = switch_words(symbols)
    return (Lettering(x, y + 4, words, "tag halo", "middle"),) if words and radius >= 10 else ()


def _body(name: Symbol, x: float, y: float, r: float, inward: Vector) -> tuple[Mark, ...]:
    disc = circle(x, y, r, "part")
    ux, uy = inward
    # Across the wall's normal.
    vx, vy = -uy, ux

    def bar(off: float) -> Stroke:
        return line(
            x + vx * off - ux * r * 1.3, y + vy * off - uy * r * 1.3,
            x + vx * off + ux * r * 1.3, y + vy * off + uy * r * 1.3,
            "mid",
        )  # fmt: skip

    if name in ("receptacle", "gfci"):
        return (disc, bar(-r * 0.32), bar(r * 0.32))
    if name == "receptacle-single":
        return (disc, bar(0))
    if name == "receptacle-240":
        tip, foot = 0.66 * r, 0.45 * r
        d = (
            f"M{x + ux * tip:.1f} {y + uy * tip:.1f}"
            f"L{x - ux * foot + vx * foot:.1f} {y - uy * foot + vy * foot:.1f}"
            f"L{x - ux * foot - vx * foot:.1f} {y - uy * foot - vy * foot:.1f}Z"
        )
        return (disc, Stroke(d, "solid"))
    if name in ("light", "fan"):
        rays = tuple(
            line(
                x + math.cos(turn) * r, y + math.sin(turn) * r,
                x + math.cos(turn) * r * 1.45, y + math.sin(turn) * r * 1.45, "mid",
            )
            for turn in (0, math.pi / 2, math.pi, 3 * math.pi / 2)
        )  # fmt: skip
        return (disc, *rays, *(_letter("F", x, y, r) if name == "fan" else ()))
    if name == "appliance":
        return (rect(x - r, y - r, 2 * r, 2 * r, "part"),)
    if name == "inlet":
        a, b = r * 0.5, r * 0.36
        shaft = f"M{x - a:.1f} {y:.1f}H{x + a:.1f}"
        head = f"M{x + a - b:.1f} {y - b:.1f}L{x + a:.1f} {y:.1f}L{x + a - b:.1f} {y + b:.1f}"
        return (disc, Stroke(shaft + head, "mid"))
    if name == "smoke-alarm":
        # Where two letters have no room a ring within stands for them.
        return (disc, *(_letter("SA", x, y, r) if r >= 10 else (circle(x, y, r * 0.45, "mid"),)))
    if name == "unknown":
        return (circle(x, y, r, "part dashed-fine"), *_letter("?", x, y, r))
    return (disc, *(_letter("J", x, y, r) if name == "junction" else ()))


def _letter(letter: str, x: float, y: float, r: float) -> tuple[Mark, ...]:
    """A letter where the symbol has room for it; a small symbol goes without."""
    return (Lettering(x, y + 4.2, letter, "tag", "middle"),) if r >= 6 and letter else ()


def _panel(x: float, y: float, r: float, inward: Vector | None) -> tuple[Mark, ...]:
    ux, uy = inward or (0.0, 1.0)
    vx, vy = -uy, ux
    long, deep = 1.5 * r, 0.55 * r
    corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)]
    points = [(x + vx * long * a + ux * deep * b, y + vy * long * a + uy * deep * b) for a, b in corners]
    d = "M" + "L".join(f"{px:.1f} {py:.1f}" for px, py in points) + "Z"
    half = "M" + "L".join(f"{px:.1f} {py:.1f}" for px, py in (points[0], points[1], points[2])) + "Z"
    return (Stroke(d, "part heavy"), Stroke(half, "solid"))
