"""A published table: where it comes from, its columns, its rows as printed."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any

from junctionary.problems import nearest
from junctionary.sources import Citation, cite, cite_for, edition_year
from junctionary.sources.datafiles import load_datafile

BLANK = "-"
"""Printed where the publication gives no value."""

_FOLDER = Path(__file__).parent


class UnknownKeyError(LookupError):
    """A table, row or column that is not there; the message names the nearest."""


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its name, its unit (``text`` for words), and whether it is part of the key.

    An ``alias`` column holds another name for its row; ``at`` is the condition
    its values hold for, such as ``60 C``.
    """

    name: str
    unit: str
    key: bool = False
    alias: bool = False
    at: str | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """One row, its digits kept as they were printed."""

    table: str
    printed: Mapping[str, str]

    def text(self, column: str) -> str:
        """What is printed in a column; raises UnknownKeyError."""
        if column not in self.printed:
            raise UnknownKeyError(_unknown(f"{self.table} has no column {column!r}", column, self.printed))
        return self.printed[column]

    def number(self, column: str) -> Fraction | None:
        """The exact value printed in a column, in the column's unit; None where it is blank."""
        found = self.text(column)
        return None if found == BLANK else _exact(found)

    def numbers(self, column: str) -> tuple[Fraction, ...]:
        """All values printed in a column that holds several, such as ``15 20``."""
        found = self.text(column)
        return () if found == BLANK else tuple(map(_exact, found.split()))


@dataclass(frozen=True, slots=True)
class Table:
    """One published table, looked up by what its key columns hold."""

    name: str
    title: str
    publication: str
    clause: str
    confirmed: str
    columns: Mapping[str, Column]
    rows: tuple[Row, ...]
    promises: tuple[str, ...]
    second_sources: tuple[Mapping[str, Any], ...]
    note: str | None
    _by_key: Mapping[tuple[str, ...], Row]

    @property
    def cite(self) -> Citation:
        """The publication and clause the values were taken from."""
        return cite(self.publication, self.clause)

    @property
    def keys(self) -> tuple[tuple[str, ...], ...]:
        """Every key, aliases included, as tuples of printed text."""
        return tuple(self._by_key)

    def __contains__(self, key: str | tuple[str, ...]) -> bool:
        return _as_key(key) in self._by_key

    def __iter__(self) -> Iterator[Row]:
        return iter(self.rows)

    def row(self, key: str | tuple[str, ...]) -> Row:
        """The row of a key, or of one of its aliases; raises UnknownKeyError, naming the nearest."""
        wanted = _as_key(key)
        if wanted not in self._by_key:
            known = {" / ".join(each): each for each in self._by_key}
            asked = " / ".join(wanted)
            raise UnknownKeyError(_unknown(f"{self.name} has no row {asked!r}", asked, known))
        return self._by_key[wanted]

    def number(self, key: str | tuple[str, ...], column: str) -> Fraction | None:
        """The exact value of one cell, in its column's unit; None where it is blank."""
        return self.row(key).number(column)

    def first_at_or_above(self, column: str, value: Fraction) -> Row | None:
        """The first row whose value in a rising column reaches ``value``; None past the end."""
        for each in self.rows:
            found = each.number(column)
            if found is not None and found >= value:
                return each
        return None

    def cite_for(self, edition: str) -> Citation:
        """The table as that NEC edition numbers it, or its own source where that is no NEC clause."""
        numbered = cite_for(edition, self.clause) if self.publication.startswith("nec-") else None
        return numbered or self.cite


@cache
def tables() -> tuple[str, ...]:
    """The names of all tables held here, sorted."""
    return tuple(sorted(each.stem for each in _FOLDER.glob("*.yaml")))


@cache
def table(name: str, edition: str | None = None) -> Table:
    """One table; raises UnknownKeyError, naming the nearest known.

    With an ``edition`` such as ``nec-2008``, the printing that edition had, where
    an ``earlier`` printing is held; without one, the newest.
    """
    if name not in tables():
        raise UnknownKeyError(_unknown(f"no table {name!r} here", name, dict.fromkeys(tables())))
    data = load_datafile(_FOLDER / f"{name}.yaml")
    earlier = data.get("earlier")
    if earlier and edition and edition_year(edition) <= int(earlier["through"]):
        return table(earlier["table"], edition)
    return _read(name, data)


@cache
def _exact(printed: str) -> Fraction:
    return Fraction(printed)


def _read(name: str, data: Mapping[str, Any]) -> Table:
    columns = {
        each: Column(
            name=each,
            unit=told["unit"],
            key=told.get("key") == "true",
            alias=told.get("alias") == "true",
            at=told.get("at"),
        )
        for each, told in data["columns"].items()
    }
    rows, by_key = [], {}
    for printed in data["rows"]:
        if len(printed) != len(columns):
            raise ValueError(f"{name}: row {printed} does not have {len(columns)} values")
        row = Row(name, MappingProxyType(dict(zip(columns, printed, strict=True))))
        rows.append(row)
        for key in _keys(row, columns.values()):
            if key in by_key:
                raise ValueError(f"{name}: row {key} stands twice")
            by_key[key] = row
    return Table(
        name=name,
        title=data["title"],
        publication=data["source"]["publication"],
        clause=data["source"]["clause"],
        confirmed=data["confirmed"],
        columns=MappingProxyType(columns),
        rows=tuple(rows),
        promises=tuple(data["promises"]),
        second_sources=tuple(data.get("second_sources", ())),
        note=data.get("note"),
        _by_key=MappingProxyType(by_key),
    )


def _keys(row: Row, columns: Any) -> Iterator[tuple[str, ...]]:
    yield tuple(row.printed[each.name] for each in columns if each.key)
    for each in columns:
        if each.alias and row.printed[each.name] != BLANK:
            yield (row.printed[each.name],)


def _as_key(key: str | tuple[str, ...]) -> tuple[str, ...]:
    return (key,) if isinstance(key, str) else key


def _unknown(what: str, word: str, known: Mapping[str, Any]) -> str:
    close = nearest(word, known)
    return f"{what}; the nearest known is {close!r}" if close else f"{what}; known are {', '.join(known)}"
