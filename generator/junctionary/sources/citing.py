"""Naming a clause of a publication, so that a misspelt one cannot pass."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import NamedTuple

from junctionary.problems import nearest
from junctionary.sources.datafiles import load_datafile

CONFIRMED = ("two", "one", "partly", "memory", "practice")
"""How a clause is known: two or more public pages (or one and a computation), one page,
part of it, recalled and still to be confirmed, or common practice with no publication."""

NUMBERING = "nec-2023"
"""The edition whose clause numbers ``cite_for`` is spoken to in."""

EARLIEST = "the earliest edition held here"
"""What a citation adds where older work is judged by an edition that is not the one it was built to."""

_FOLDER = Path(__file__).parent


class UnknownSourceError(LookupError):
    """A publication or clause that no file beside this module holds."""


@dataclass(frozen=True, slots=True)
class Clause:
    """One clause: its number, what it asks in our words, how that is confirmed.

    ``root`` is the same for one rule in every edition, however it was numbered.
    """

    number: str
    says: str
    confirmed: str
    root: str


@dataclass(frozen=True, slots=True)
class Publication:
    """One publication and the clauses of it that are cited here."""

    id: str
    short: str
    title: str
    publisher: str
    year: int | None
    what: str
    clauses: Mapping[str, Clause]
    any_sentence: bool = False


class Citation(NamedTuple):
    """One clause, ready to be shown: ``str()`` gives ``NEC 2023, 240.4(D)``."""

    publication: str
    short: str
    title: str
    clause: str
    summary: str
    confirmed: str

    def __str__(self) -> str:
        return f"{self.short}{':' if self.confirmed == 'practice' else ','} {self.clause}"


@cache
def cite(publication_id: str, clause: str) -> Citation:
    """The citation of one clause; raises UnknownSourceError, naming the nearest known.

    ``cite("practice", "...")`` takes any sentence, for there is no publication behind it.
    """
    found = publication(publication_id)
    if found.any_sentence:
        return Citation(found.id, found.short, found.title, clause, clause, "practice")
    if clause not in found.clauses:
        raise UnknownSourceError(_unknown(f"{found.id} has no clause {clause!r} here", clause, found.clauses))
    return _citation(found, found.clauses[clause])


@cache
def cite_for(edition: str, clause: str) -> Citation | None:
    """The same rule as that edition numbers it, or None where the edition has no such rule.

    ``clause`` is numbered as in the 2023 edition, or else as in the newest edition
    that knows it. An edition older than all files here is answered from the oldest,
    and the citation says that it is the earliest held here.
    """
    root = _root(clause)
    found = publication(known_edition(edition))
    cited = next((_citation(found, each) for each in found.clauses.values() if each.root == root), None)
    if cited is not None and edition_year(edition) < edition_year(found.id):
        return cited._replace(short=f"{cited.short} ({EARLIEST})")
    return cited


def cite_in(edition: str, clause: str) -> Citation:
    """As ``cite_for``, for a rule that every edition has; raises UnknownSourceError where one does not."""
    found = cite_for(edition, clause)
    if found is None:
        raise UnknownSourceError(f"{known_edition(edition)} has no rule that is {clause} in {NUMBERING}")
    return found


@cache
def edition_year(edition: str) -> int:
    """The year in an edition's name: ``nec-2023`` gives 2023; raises UnknownSourceError."""
    match = re.fullmatch(r"[a-z]+-(\d{4})", edition)
    if match is None:
        raise UnknownSourceError(_unknown(f"{edition!r} names no edition", edition, _nec_editions()))
    return int(match[1])


@cache
def known_edition(edition: str) -> str:
    """The file that speaks for an NEC edition: its own, the last before it, or the oldest."""
    if not edition.startswith("nec-"):
        raise UnknownSourceError(_unknown(f"{edition!r} is no NEC edition", edition, _nec_editions()))
    year = edition_year(edition)
    earlier = [each for each in _nec_editions() if edition_year(each) <= year]
    return earlier[-1] if earlier else _nec_editions()[0]


@cache
def publications() -> tuple[str, ...]:
    """The ids of all publications held here, sorted."""
    return tuple(sorted(each.stem for each in _FOLDER.glob("*.yaml")))


@cache
def publication(publication_id: str) -> Publication:
    """One publication with its clauses; raises UnknownSourceError, naming the nearest known.

    A file that ``follows`` an earlier edition holds only what changed: ``moved``
    (old number to new), ``dropped``, ``every_clause`` (one mark for all it takes
    over), and the clauses it adds or says anew.
    """
    if publication_id not in publications():
        raise UnknownSourceError(
            _unknown(f"no publication {publication_id!r} here", publication_id, publications())
        )
    data = load_datafile(_FOLDER / f"{publication_id}.yaml")
    clauses = _carried_over(data, publication_id)
    for number, told in data.get("clauses", {}).items():
        before = clauses.get(number)
        says = told.get("says") or (before.says if before else None)
        confirmed = told.get("confirmed") or (before.confirmed if before else None)
        if says is None or confirmed not in CONFIRMED:
            raise ValueError(f"{publication_id}, {number}: needs `says`, and `confirmed` out of {CONFIRMED}")
        root = before.root if before else f"{publication_id} {number}"
        clauses[number] = Clause(number, says, confirmed, root)
    return Publication(
        id=publication_id,
        short=data["short"],
        title=data["title"],
        publisher=data["publisher"],
        year=int(data["year"]) if data.get("year") else None,
        what=data["what"],
        clauses=MappingProxyType(clauses),
        any_sentence=data.get("any_sentence") == "true",
    )


def _carried_over(data: Mapping[str, object], publication_id: str) -> dict[str, Clause]:
    followed = data.get("follows")
    if not isinstance(followed, str):
        return {}
    moved, dropped = data.get("moved", {}), data.get("dropped", [])
    assert isinstance(moved, dict)
    assert isinstance(dropped, list)
    before = publication(followed).clauses
    for number in (*moved, *dropped):
        if number not in before:
            raise UnknownSourceError(f"{publication_id} changes {number}, which {followed} does not hold")
    # An edition whose text nobody here has seen says so of every clause it takes over.
    mark = data.get("every_clause")
    carried: dict[str, Clause] = {}
    for number, each in before.items():
        if number not in dropped:
            here = moved.get(number, number)
            carried[here] = Clause(here, each.says, str(mark or each.confirmed), each.root)
    return carried


@cache
def _nec_editions() -> tuple[str, ...]:
    return tuple(each for each in publications() if each.startswith("nec-"))


@cache
def _root(clause: str) -> str:
    for edition in (NUMBERING, *reversed(_nec_editions())):
        found = publication(edition).clauses
        if clause in found:
            return found[clause].root
    raise UnknownSourceError(_unknown(f"no NEC edition here has a clause {clause!r}", clause, found))


def _citation(found: Publication, clause: Clause) -> Citation:
    return Citation(found.id, found.short, found.title, clause.number, clause.says, clause.confirmed)


def _unknown(what: str, word: str, known: Mapping[str, object] | tuple[str, ...]) -> str:
    close = nearest(word, known)
    return f"{what}; the nearest known is {close!r}" if close else f"{what}; known are {', '.join(known)}"
