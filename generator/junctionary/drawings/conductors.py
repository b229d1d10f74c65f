"""Conductors as drawn: the colour of their insulation, and letters for who cannot tell colours apart."""

from junctionary.drawings.ink import Stroke

LETTERS = {
    "black": "BK", "white": "WH", "red": "RD", "blue": "BU", "brown": "BN", "orange": "OG",
    "yellow": "YE", "green": "GN", "grey": "GY", "gray": "GY", "violet": "VT", "purple": "VT",
    "pink": "PK", "green-yellow": "GNYE", "bare": "bare", "armor": "armor", "armour": "armor",
}  # fmt: skip
"""After IEC 60757; a bare conductor has no insulation and no code, and is called bare."""


def letters(colour: str, marked: str = "") -> str:
    """``BK``; white re-marked black ``WH>BK``, white with a red stripe ``WH/RD``; others are spelt out."""
    base, _, stripe = colour.partition("-")
    striped = colour not in LETTERS and base in LETTERS and stripe in LETTERS
    code = f"{LETTERS[base]}/{LETTERS[stripe]}" if striped else LETTERS.get(colour, colour)
    return f"{code}>{LETTERS.get(marked, marked)}" if marked else code


def colour_class(colour: str) -> str:
    """The class that gives the colour; ``c-other`` for one that has none."""
    known = {"gray": "grey", "purple": "violet", "armour": "bare", "armor": "bare", "green-yellow": "green"}
    base = colour if colour in LETTERS else colour.partition("-")[0]
    return f"c-{known.get(base, base)}" if base in LETTERS else "c-other"


def wire(d: str, colour: str, marked: str = "") -> tuple[Stroke, ...]:
    """A conductor along a path: a gap where it passes over, its edge, its colour, its re-marking."""
    thin = " thin" if colour in ("bare", "armor", "armour") else ""
    strokes = (
        Stroke(d, "gap"),
        Stroke(d, f"edge{thin} {colour_class(colour)}"),
        Stroke(d, f"core{thin} {colour_class(colour)}"),
    )
    stripe = "" if colour in LETTERS else colour.partition("-")[2]
    over = marked or stripe
    return (*strokes, Stroke(d, f"core marking {colour_class(over)}")) if over else strokes
