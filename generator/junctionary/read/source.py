"""The files of a record as they stand on disk, and their lines."""

import hashlib
import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from junctionary.marks import Place

_BREAK = re.compile(r"\r\n|\r|\n")


@dataclass(frozen=True, slots=True)
class Source:
    """One file of a record.

    ``file`` is relative to the record's folder, with forward slashes;
    ``sha256`` is of the bytes as they stand. ``text`` is empty for a
    picture, and has replacement characters where a file is not UTF-8.
    """

    file: str
    text: str
    sha256: str


def digest(sources: Iterable[Source]) -> str:
    """One digest of all files, whatever their order: SHA-256 of "sha256  file" lines sorted by file."""
    ordered = sorted(sources, key=lambda source: source.file)
    lines = (f"{source.sha256}  {source.file}\n" for source in ordered)
    return hashlib.sha256("".join(lines).encode("utf-8", "surrogateescape")).hexdigest()


# Many problems may point into one file, which is then split only once.
@lru_cache(maxsize=16)
def lines_of(text: str) -> tuple[str, ...]:
    """The lines of a text, counted as an editor counts them, without their ends."""
    return tuple(_BREAK.split(text))


def source_line(place: Place, sources: Iterable[Source]) -> str | None:
    """The line of the record a place points at, or None where there is no such line."""
    for source in sources:
        if source.file == place.file:
            lines = lines_of(source.text)
            return lines[place.line - 1] if 0 < place.line <= len(lines) else None
    return None


def caret(place: Place, line: str) -> str:
    """What to set under the line so that a ``^`` stands at the place; tabs stay tabs."""
    before = line[: place.column - 1].ljust(place.column - 1)
    return "".join("\t" if each == "\t" else " " for each in before) + "^"


def place_after(file: str, text: str) -> Place:
    """The place of what comes right after this much of a file's text."""
    lines = _BREAK.split(text)
    return Place(file, len(lines), len(lines[-1]) + 1)
