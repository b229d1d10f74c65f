"""The index that a search asks: every word with the things it stands in.

Words are folded alike here and where they are searched: small letters, no
accents, no ending of several. An id is one word and its parts: ``K1.r1`` is
``k1r1``, ``k1`` and ``r1``; so is what a hyphen joins: ``water-heater`` is
``waterheater``, ``water`` and ``heater``.
"""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from junctionary.sheets.found import Found

_WORD = re.compile(r"[^\W_]+(?:[.+/-][^\W_]+)*")
_PARTS = re.compile(r"[.+/-]")
_APOSTROPHE = re.compile(r"['’]")
LEVELS = 3
"""How closely a word may belong to a thing: 0 beside it, 1 its room, 2 itself."""


@dataclass(frozen=True, slots=True)
class SearchIndex:
    """``words`` in order; of each, the things it stands in: number times ``LEVELS`` plus level, rising."""

    words: tuple[str, ...]
    places: tuple[tuple[int, ...], ...]


def search_index(found: Iterable[Found]) -> SearchIndex:
    """The index of these things, by their position."""
    by: dict[str, dict[int, int]] = {}
    for number, each in enumerate(found):
        for level, texts in enumerate((each.near, each.room, each.words)):
            for text in texts:
                for word in words_of(text):
                    by.setdefault(word, {})[number] = level
    words = tuple(sorted(by))
    return SearchIndex(
        words, tuple(tuple(LEVELS * at + level for at, level in by[each].items()) for each in words)
    )


def words_of(text: str) -> Iterator[str]:
    """The words of a text, folded; an id, and what a hyphen joins, whole and in parts."""
    for match in _WORD.finditer(folded(text)):
        whole = _PARTS.sub(lambda sign: "+" if sign[0] == "+" else "", match[0])
        yield without_s(whole)
        parts = _PARTS.split(match[0])
        if len(parts) > 1:
            yield from map(without_s, parts)


def folded(text: str) -> str:
    """Small letters without accents and apostrophes."""
    apart = _APOSTROPHE.sub("", unicodedata.normalize("NFKD", text))
    return "".join(each for each in apart if not unicodedata.combining(each)).lower()


def without_s(word: str) -> str:
    """A plain word without the ending of several: ``lights``, ``switches``; a code stays as it is."""
    if len(word) < 4 or not word.isalpha() or not word.endswith("s") or word.endswith("ss"):
        return word
    if word.endswith(("ches", "shes", "xes", "sses")):
        return word[:-2]
    return f"{word[:-3]}y" if word.endswith("ies") and len(word) > 4 else word[:-1]
