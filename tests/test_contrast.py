"""Contrast of every pair of colours in the style sheets, by the formula of WCAG 2.2, in both schemes."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import product
from pathlib import Path

import pytest

THEMES = Path(__file__).parents[1] / "themes"
SHEETS = {
    "drafting": (THEMES / "drafting/assets/style.css",),
    "plain": (THEMES / "drafting/assets/style.css", THEMES / "plain/assets/plain.css"),
}
TEXT, GRAPHIC = 4.5, 3.0
"""Success criteria 1.4.3 and 1.4.11 at level AA; large text is held to the same as small."""
INSULATION = frozenset(
    ("black", "white", "red", "blue", "brown", "orange", "yellow", "green", "grey", "violet", "pink", "bare")
)
FAINT = "faint"
"""A hairline between rows that are parted by whitespace already, and the ground under a pointer."""
NO_COLOURS = frozenset({"heavy", "mid", "w", "n"})
"""Variables that are no colour: weights of line, and where a mark lies on the face of a panel."""


def luminance(colour: str) -> float:
    """Relative luminance of ``#rgb`` or ``#rrggbb``; WCAG 2.2."""
    digits = colour.removeprefix("#")
    full = digits if len(digits) == 6 else "".join(2 * each for each in digits)
    parts = [int(full[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    r, g, b = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours; WCAG 2.2."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def inverted(colour: str) -> str:
    """What white laid over by difference makes of a colour, as on a space that is landed on."""
    digits = colour.removeprefix("#")
    full = digits if len(digits) == 6 else "".join(2 * each for each in digits)
    return f"#{0xFFFFFF - int(full, 16):06x}"


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000", "#fff", 21),
        ("#0000ff", "#fff", 8.59),
        ("#0000ff", "#ff0000", 2.15),
        ("#767676", "#ffffff", 4.54),
        ("#777777", "#ffffff", 4.48),
    ],
)
def test_the_formula_gives_published_ratios(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)


@dataclass(slots=True)
class Colours:
    """The variables of both schemes, and what they are used for."""

    light: dict[str, str] = field(default_factory=dict)
    dark: dict[str, str] = field(default_factory=dict)
    text: set[str] = field(default_factory=set)
    ground: set[str] = field(default_factory=set)
    graphic: set[str] = field(default_factory=set)


def rules(css: str, within: str = "") -> Iterator[tuple[str, str, str]]:
    """Each rule: the condition it stands in, its selector, its declarations."""
    at = 0
    while match := re.compile(r"\s*([^{}]+?)\s*\{").match(css, at):
        end, depth = match.end(), 1
        while depth:
            depth += {"{": 1, "}": -1}.get(css[end], 0)
            end += 1
        body = css[match.end() : end - 1]
        if match[1].startswith(("@media", "@supports")):
            yield from rules(body, f"{within} {match[1]}")
        elif not match[1].startswith("@page"):
            yield within, match[1], body
        at = end
    assert not css[at:].strip(), f"not read: {css[at : at + 80]}"


def used(value: str) -> Iterator[str]:
    """The colours a value names: a variable's name, or the colour as written."""
    for name, other in re.findall(r"var\(--([\w-]+)\)|(#[0-9a-fA-F]{3,8}\b)", value):
        yield name or other


def read(theme: str) -> Colours:
    kept = Colours()
    for sheet in SHEETS[theme]:
        css = re.sub(r"/\*.*?\*/", "", sheet.read_text("utf-8"), flags=re.DOTALL)
        for within, selector, body in rules(css):
            declared = [each.partition(":")[::2] for each in body.split(";") if ":" in each]
            for name, value in ((name.strip(), value.strip()) for name, value in declared):
                if name.startswith("--"):
                    if value.startswith("#"):
                        scheme = kept.dark if "dark" in within else kept.light
                        scheme[name[2:]] = value
                    continue
                for colour in used(value):
                    of_text = name == "color" or (name == "fill" and "text" in selector)
                    of_ground = name == "background" or (name == "fill" and not of_text)
                    (kept.text if of_text else kept.ground if of_ground else kept.graphic).add(colour)
    return kept


def schemes(theme: str) -> Iterator[tuple[Colours, dict[str, str]]]:
    colours = read(theme)
    literal = {each: each for each in colours.text | colours.ground | colours.graphic if each.startswith("#")}
    light = {**colours.light, **literal}
    yield colours, light
    yield colours, {**light, **colours.dark}


@pytest.mark.parametrize("theme", SHEETS)
def test_the_style_sheet_is_read_with_its_text_its_grounds_and_its_lines(theme: str) -> None:
    colours = read(theme)
    assert {"ink", "soft"} <= colours.text
    assert {"paper", "panel"} <= colours.ground
    assert {"ink", "line"} <= colours.graphic
    assert colours.dark


@pytest.mark.parametrize("theme", SHEETS)
def test_every_text_stands_out_from_every_ground(theme: str) -> None:
    for colours, value in schemes(theme):
        # White as such is on paper alone, or laid by difference over what is landed on.
        grounds = {each for each in colours.ground if not each.startswith("#")} - INSULATION
        for text, ground in product(colours.text, grounds - {"ink"}):
            ratio = contrast(value[text], value[ground])
            assert ratio >= TEXT, f"{text} on {ground}: {ratio:.2f}"
            turned = contrast(inverted(value[text]), inverted(value[ground]))
            assert turned >= TEXT, f"{text} on {ground}, landed on: {turned:.2f}"


@pytest.mark.parametrize("theme", SHEETS)
def test_every_text_stands_out_from_white_paper(theme: str) -> None:
    colours, value = next(schemes(theme))
    assert {name: value[name] for name in colours.text if contrast(value[name], "#fff") < TEXT} == {}


@pytest.mark.parametrize("theme", SHEETS)
def test_every_line_that_says_something_stands_out_from_paper_and_panel(theme: str) -> None:
    for colours, value in schemes(theme):
        # Laid on paper-coloured gaps, they part lines that cross; a core's colour is told by its letters.
        lines = colours.graphic - NO_COLOURS - INSULATION - {FAINT, "paper", "panel"}
        for line, ground in product(lines, ("paper", "panel")):
            ratio = contrast(value[line], value[ground])
            assert ratio >= GRAPHIC, f"{line} on {ground}: {ratio:.2f}"


@pytest.mark.parametrize("theme", SHEETS)
def test_the_edge_of_a_conductor_stands_out_where_its_core_may_not(theme: str) -> None:
    for _, value in schemes(theme):
        for core, ground in product(INSULATION, ("paper", "panel")):
            edge = value["bare-edge" if core == "bare" else "wire-edge"]
            best = max(contrast(edge, value[ground]), contrast(value[core], value[ground]))
            assert best >= GRAPHIC, f"{core} on {ground}: {best:.2f}"
