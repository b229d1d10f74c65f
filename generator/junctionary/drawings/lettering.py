"""How much room words take in a drawing, reckoned for the widest face a reader is likely to have."""

import re
from functools import cache

_UNIT = re.compile(r"(?<=\d) (?=(?:%|A|AWG|V|VA|W|ft|in|in-lb|in3|ft2|m|mm|cm|N)(?![\w-]))")
_PARTS = re.compile(r"[^-]+-*|-+")
_HELD = "\u00a0"
_NARROW = frozenset("iljtfrI.,:;'|!()[]/- ·")
_BROAD = frozenset("mwMW%@&—")
_BOLD = 1.12


def width_px(text: str, size_px: float, *, bold: bool = False) -> float:
    """The width of a line of text, in px, on the generous side."""
    return _ems(text) * size_px * (_BOLD if bold else 1)


# The same few words stand in a thousand drawings.
@cache
def _ems(text: str) -> float:
    return sum(
        0.42 if char in _NARROW else 0.98 if char in _BROAD else 0.72 if char.isupper() else 0.64
        for char in text
    )


@cache
def wrapped(text: str, width_limit_px: float, size_px: float, *, bold: bool = False) -> tuple[str, ...]:
    """The text in lines no wider than the limit, broken at spaces, and inside a word only at need.

    A figure keeps its unit: ``14 AWG`` stays on one line.
    """
    lines: list[str] = []
    line = ""
    for word in (each.replace(_HELD, " ") for each in _UNIT.sub(_HELD, text).split(" ") if each):
        longer = f"{line} {word}".strip()
        if width_px(longer, size_px, bold=bold) <= width_limit_px:
            line = longer
            continue
        if line:
            lines.append(line)
        *whole, line = _pieces(word, width_limit_px, size_px, bold=bold)
        lines.extend(whole)
    if line:
        lines.append(line)
    return tuple(lines)


def _pieces(word: str, width_limit_px: float, size_px: float, *, bold: bool) -> list[str]:
    """A word that is too long, broken after its hyphens, and elsewhere only at need."""
    pieces = [""]
    for part in _PARTS.findall(word):
        if pieces[-1] and width_px(pieces[-1] + part, size_px, bold=bold) > width_limit_px:
            pieces.append("")
        for char in part:
            if pieces[-1] and width_px(pieces[-1] + char, size_px, bold=bold) > width_limit_px:
                pieces.append("")
            pieces[-1] += char
    return pieces
