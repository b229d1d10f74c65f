"""Where a breaker stands on the face of its panel, in words somebody before it can follow."""

import re

from junctionary.house.model import Breaker, House
from junctionary.sheets.naming import where

_SPACE = re.compile(r"(\d+)([ab]?)")


def face_words(house: House, breaker: Breaker) -> str:
    """``Main panel, left side, 9th from the top``; a space that is a word is named as it is."""
    return f"{house.panels[breaker.panel].name}, {face_place(breaker) or 'the main breaker'}"


def face_place(breaker: Breaker) -> str:
    """Where in its panel: ``left side, 9th from the top``; nothing for the main."""
    if breaker.spaces == ("main",):
        return ""
    numbers = [match for each in breaker.spaces if (match := _SPACE.fullmatch(each))]
    if not numbers:
        return f"marked {' and '.join(breaker.spaces)}"
    first = int(numbers[0][1])
    side = "left" if first % 2 else "right"
    rows = list(dict.fromkeys((int(match[1]) + 1) // 2 for match in numbers))
    said = ordinal(rows[0]) if len(rows) == 1 else f"{ordinal(rows[0])} and {ordinal(rows[-1])}"
    half = {"a": ", first of two in one space", "b": ", second of two in one space"}.get(numbers[0][2], "")
    return f"{side} side, {said} from the top{half}"


def panel_words(house: House, panel_id: str) -> str:
    """Where a panel is: ``Laundry, east wall, 60 in up``."""
    at = house.panels[panel_id].record.at
    room = house.rooms.get(at.room) if at is not None and at.room is not None else None
    return ", ".join(each for each in (room.name if room else "", where(house, at)) if each)


def ordinal(number: int) -> str:
    """``1st``, ``2nd``, ``13th``."""
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"
