"""Symbols of the drawings, drawn afresh after the construction-drawing standards (ANSI Y32.9, NECA 100)."""

from junctionary.drawings.ink import Lettering, Mark, Stroke, circle, line, rect
from junctionary.sheets.circuit import Symbol
from junctionary.sheets.entries import Severity

RADIUS_PX = 15.0


def symbol(name: Symbol, x: float, y: float) -> tuple[Mark, ...]:
    """The symbol about its centre, 30 px across."""
    r = RADIUS_PX
    disc = circle(x, y, r, "part")
    if name in ("receptacle", "gfci"):
        bars = tuple(line(x + dx, y - 21, x + dx, y + 21, "mid") for dx in (-4.5, 4.5))
        word = (Lettering(x + 9, y + 23, "GF", "tag"),) if name == "gfci" else ()
        return (disc, *bars, *word)
    if name == "receptacle-single":
        return (disc, line(x, y - 21, x, y + 21, "mid"))
    if name == "receptacle-240":
        return (disc, Stroke(f"M{x - 9} {y + 6}L{x} {y - 10}L{x + 9} {y + 6}Z", "solid"))
    if name in ("switch", "switch-3", "switch-4"):
        ways = {"switch": "S", "switch-3": "S3", "switch-4": "S4"}[name]
        return (rect(x - r, y - r, 2 * r, 2 * r, "part quiet"), Lettering(x, y + 5, ways, "name", "middle"))
    if name in ("light", "fan"):
        rays = tuple(
            line(x + dx * r, y + dy * r, x + dx * (r + 6), y + dy * (r + 6), "mid")
            for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1))
        )
        return (disc, *rays, *((Lettering(x, y + 5, "F", "name", "middle"),) if name == "fan" else ()))
    if name in ("junction", "smoke-alarm", "unknown"):
        letter = {"junction": "J", "smoke-alarm": "SA", "unknown": "?"}[name]
        kind = "part dashed" if name == "unknown" else "part"
        size, drop = ("tag", 4) if len(letter) > 1 else ("name", 5)
        return (circle(x, y, r, kind), Lettering(x, y + drop, letter, size, "middle"))
    if name == "panel":
        return (rect(x - 11, y - r, 22, 2 * r, "part heavy"), rect(x - 11, y - r, 11, 2 * r, "solid"))
    if name == "breaker":
        arc = Stroke(f"M{x - 11} {y}A14 14 0 0 1 {x + 11} {y}", "heavy")
        return (circle(x - 12, y, 2.5, "solid"), circle(x + 12, y, 2.5, "solid"), arc)
    if name == "inlet":
        return (disc, Stroke(f"M{x - 7} {y}H{x + 6}M{x + 1} {y - 5}L{x + 7} {y}L{x + 1} {y + 5}", "mid"))
    return (rect(x - r, y - r, 2 * r, 2 * r, "part"),)


def severity_mark(severity: Severity, x: float, y: float) -> tuple[Stroke, ...]:
    """The mark of a severity, 14 px across: told by its shape, never by a colour."""
    if severity == "hazard":
        return (
            Stroke(f"M{x} {y - 7}L{x + 8} {y + 7}H{x - 8}Z", "solid"),
            Stroke(f"M{x} {y - 2}V{y + 2.5}M{x} {y + 4}V{y + 5.6}", "knock"),
        )
    if severity == "defect":
        return (Stroke(f"M{x} {y - 6.5}L{x + 7.5} {y + 6.5}H{x - 7.5}Z", "mark"),)
    if severity == "advice":
        return (circle(x, y, 6, "mark"),)
    return (rect(x - 6, y - 6, 12, 12, "mark dashed-fine"),)
