"""Words of checks and figures as a sheet says them: names for ids, and units as they are printed."""

import re
from collections.abc import Mapping

from junctionary.house.model import House
from junctionary.house.network import listed
from junctionary.sheets.naming import breaker_words, raised

_BREAKER = re.compile(r"(?<![\w./-])[\w-]+/[\w+]+")
_ROOMS = re.compile(r"\brooms? ([\w-]+(?:, [\w-]+)*)")


def names_in(house: House, words: str) -> dict[str, str]:
    """What the breakers and rooms that some words name by id are called on a sheet."""
    breakers = (each for each in _BREAKER.findall(words) if each in house.breakers)
    rooms = (each for told in _ROOMS.findall(words) for each in told.split(", ") if each in house.rooms)
    return {
        **{each: breaker_words(each) for each in breakers},
        **{each: f"“{house.rooms[each].name}”" for each in rooms},
    }


def on_sheet(house: House, words: str) -> str:
    """``main 36`` for ``main/36``, ``“Guest bedroom”`` for ``room guest``, ``20 in³`` for ``20 in3``."""
    return with_names(words, names_in(house, words))


def with_names(words: str, names: Mapping[str, str]) -> str:
    """The same, of words whose ids are already named: so that facts alike may first be told in one."""

    def rooms(match: re.Match[str]) -> str:
        told = match[1].split(", ")
        return listed(names[each] for each in told) if all(each in names for each in told) else match[0]

    return raised(_ROOMS.sub(rooms, _BREAKER.sub(lambda each: names.get(each[0], each[0]), words)))
