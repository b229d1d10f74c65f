"""Where every sheet and every thing on it stands in the manual, and how one page points to another."""

import posixpath
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache
from urllib.parse import quote

from junctionary.sheets.links import Ref
from junctionary.sheets.titleblock import Sheet

# A file of one of these names cannot be kept on some memory sticks' host systems.
_RESERVED = re.compile(r"(?i)(con|prn|aux|nul|com\d|lpt\d)(\..*)?$")


@dataclass(frozen=True, slots=True)
class AddressBook:
    """``paths``: the file of each sheet. ``places``: the file and fragment of all that can be linked.

    ``numbers``: by file, the number in the title block of the sheet.
    """

    paths: Mapping[Ref, str]
    places: Mapping[Ref, tuple[str, str]]
    numbers: Mapping[str, str] = field(default_factory=dict)

    def url(self, from_path: str, to: Ref) -> str | None:
        """The relative URL from one page to a thing, or None where the manual has no place for it."""
        place = self.places.get(to)
        if place is None:
            return None
        path, fragment = place
        if path == from_path:
            return _hash(fragment) or quote(posixpath.basename(path))
        return _way(from_path.rpartition("/")[0], path) + _hash(fragment)

    def number(self, from_path: str, to: Ref) -> str | None:
        """The number of the sheet a thing stands on; None on that sheet itself, and where it has no place."""
        path, _ = self.places.get(to, (from_path, ""))
        return None if path == from_path else self.numbers.get(path)


@cache
def _hash(fragment: str) -> str:
    return f"#{quote(fragment, safe='/.+-_~')}" if fragment else ""


@cache
def _way(folder: str, path: str) -> str:
    """The relative URL of one file of the manual from the files of one folder."""
    if folder and path.startswith(f"{folder}/"):
        return quote(path.removeprefix(f"{folder}/"))
    return "../" * (folder.count("/") + bool(folder)) + quote(path)


def address_book(sheets: Iterable[Sheet]) -> AddressBook:
    """The book of these sheets. Names that differ only in capitals get a number: some drives cannot tell."""
    paths: dict[Ref, str] = {}
    places: dict[Ref, tuple[str, str]] = {}
    numbers: dict[str, str] = {}
    taken: set[str] = set()
    for sheet in sheets:
        stem = _stem(sheet.ref)
        path, number = f"{stem}.html", 1
        while path.casefold() in taken:
            number += 1
            path = f"{stem}-{number}.html"
        taken.add(path.casefold())
        paths[sheet.ref] = path
        numbers[path] = sheet.title.number
        # A page of one's own is a better place than a row in a list.
        places[sheet.ref] = (path, "")
        for ref in sheet.anchors():
            if places.get(ref, ("", "row"))[1]:
                places[ref] = (path, fragment(ref))
    return AddressBook(paths, places, numbers)


def fragment(ref: Ref) -> str:
    """The id of a thing within its page: ``device-K1.r1``."""
    return f"{ref.kind}-" + re.sub(r"\s+", "_", ref.id)


def _stem(ref: Ref) -> str:
    if ref == Ref("sheet", "cover"):
        return "index"
    name = re.sub(r"[^\w.-]", "-", ref.id).strip(".") or "-"
    if _RESERVED.match(name):
        name = f"_{name}"
    return name if ref.kind == "sheet" else f"{ref.kind}/{name}"
