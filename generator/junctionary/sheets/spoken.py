"""Breakers as people speak of them, where an answer names them by id.

The lookups of a page say the same with `themes/drafting/assets/off-words.js`.
"""

import re
from collections.abc import Iterable, Mapping

from junctionary.house.model import House
from junctionary.house.network import listed
from junctionary.house.panels import MAIN
from junctionary.sheets.naming import breaker_words

_ID = r"[^\s,;:()/]+/[^\s,;:()/]*[^\s,;:()/.]"
_IDS = re.compile(rf"{_ID}(?:(?:, | and ){_ID})*")
_SPACES = re.compile(r"[\d+]+[ab]?")
_NAMED = {MAIN: "the main breaker", "neutral": "the neutral bar", "ground": "the ground bar"}


def panels_spoken(house: House) -> dict[str, str]:
    """By id, a panel in a sentence: ``the main panel`` for ``Main panel``, ``panel LP-2`` for ``LP-2``."""
    return {each.id: _panel(each.name) for each in house.panels.values()}


def _panel(name: str) -> str:
    if "panel" not in name.lower():
        return f"panel {name}"
    first = name.partition(" ")[0]
    if first == "Panel":
        return f"p{name[1:]}"
    # A word that goes on in small letters has its capital from standing first.
    return f"the {name[0].lower()}{name[1:]}" if first[1:].islower() else name


def breakers_spoken(house: House, breakers: Iterable[str]) -> str:
    """``breaker 17 in the main panel``, ``breakers 6 and 8 in the main panel``: a panel is named once."""
    return _spoken(panels_spoken(house), breakers)


def handle_words(house: House, breaker: str) -> str:
    """A breaker in a list of what to switch off: ``main 6``, ``main breaker in the workshop panel``."""
    if breaker.partition("/")[2] == MAIN:
        return breakers_spoken(house, (breaker,)).removeprefix("the ")
    return breaker_words(breaker)


def spoken(house: House, text: str) -> str:
    """A text of an answer with its breakers, poles and bars as people speak of them; other ids stay."""
    return in_words(panels_spoken(house), text)


def in_words(panels: Mapping[str, str], text: str) -> str:
    """``spoken``, with the panels already in words."""

    def said(found: re.Match[str]) -> str:
        ids = re.split(r", | and ", found[0])
        return _spoken(panels, ids) if all(each.partition("/")[0] in panels for each in ids) else found[0]

    return _IDS.sub(said, text)


def _spoken(panels: Mapping[str, str], ids: Iterable[str]) -> str:
    by: dict[str, dict[str, list[str]]] = {}
    for each in ids:
        panel, _, rest = each.partition("/")
        kind = "breaker" if _SPACES.fullmatch(rest) else rest
        by.setdefault(panel, {}).setdefault(kind, []).append(rest)
    parts = (
        f"{listed(_kind(*each) for each in kinds.items())} in {panels.get(panel, f'panel {panel}')}"
        for panel, kinds in by.items()
    )
    return listed(parts) if by else ""


def _kind(kind: str, found: list[str]) -> str:
    if kind == "breaker":
        return f"breaker{'s' if found[1:] else ''} {listed(found)}"
    return _NAMED.get(kind, kind)
