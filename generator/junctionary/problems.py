"""What a record got wrong: a problem stops publishing, a warning does not.

A problem means the record could not be understood. Findings, which judge a
record that was understood, are another thing and live in ``checks``.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

from junctionary.marks import Place


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that could not be understood, and what to do about it.

    ``found`` and ``expected`` are phrases, ``do`` is an instruction. A
    problem with ``stops=False`` is a warning: said, and then passed over.
    """

    place: Place
    found: str
    expected: str
    do: str
    stops: bool = True

    def __str__(self) -> str:
        return f"{self.place}: {self.found}; expected {self.expected}; {self.do}"


MISSPELT = 0.75
"""From this likeness on a word is taken for a misspelling; below it another may have been meant. Practice."""


def nearest(word: str, known: Iterable[str], likeness: float = 0.6) -> str | None:
    """The known word most like this one, or None when none is near."""
    words = {each.lower(): each for each in known}
    close = get_close_matches(word.lower(), words, n=1, cutoff=likeness)
    return words[close[0]] if close else None
