"""The index that a search asks: every word with the things it stands in.

Words are folded alike here and where they are searched: small letters, no
accents, no plural s. An id is one word and its parts: ``K1.r1`` is ``k1r1``,
``k1`` and ``r1``.
"""

import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from junctionary.sheets.found import Found

_WORD = re.compile(r"[^\W_]+(?:[.+/][^\W_]+)*")
_PARTS = re.compile(r"[.+/]")


@dataclass(frozen=True, slots=True)
class SearchIndex:
    """``words`` in order; of each, the numbers of the things it stands in, rising."""

    words: tuple[str, ...]
    places: tuple[tuple[int, ...], ...]


def search_index(found: Iterable[Found]) -> SearchIndex:
    """The index of these things, by their position."""
    by: dict[str, dict[int, None]] = {}
    for number, each in enumerate(found):
        for text in each.words:
            for word in words_of(text):
                by.setdefault(word, {})[number] = None
    words = tuple(sorted(by))
    return SearchIndex(words, tuple(tuple(by[each]) for each in words))


def words_of(text: str) -> Iterator[str]:
    """The words of a text, folded; an id whole and in its parts."""
    for match in _WORD.finditer(folded(text)):
        whole = _PARTS.sub(lambda sign: "+" if sign[0] == "+" else "", match[0])
        yield without_s(whole)
        parts = _PARTS.split(match[0])
        if len(parts) > 1:
            yield from map(without_s, parts)


def folded(text: str) -> str:
    """Small letters without accents."""
    apart = unicodedata.normalize("NFKD", text)
    return "".join(each for each in apart if not unicodedata.combining(each)).lower()


def without_s(word: str) -> str:
    """A plain word without the s of several: ``lights`` is ``light``; a code stays as it is."""
    if len(word) > 3 and word.isalpha() and word.endswith("s") and not word.endswith("ss"):
        return word[:-1]
    return word
