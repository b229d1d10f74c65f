"""Cross references: what a word on a sheet points to, before anybody knows its file name."""

from collections.abc import Iterable
from typing import Literal, NamedTuple, TypeAlias

Kind = Literal[
    "panel", "space", "circuit", "level", "room", "box", "device", "joint", "run",
    "rule", "finding", "today", "note", "term", "sheet", "card", "point",
]  # fmt: skip


class Ref(NamedTuple):
    """One thing of the house or of the manual, by kind and id.

    Ids are those of the record (``K1``, ``K1.r1``, ``main/6``); a joint is
    ``box/name``. The kind ``sheet`` names the sheets there is one of:
    ``cover``, ``panels``, ``circuits``, ``rooms``, ``boxes``, ``splices``,
    ``loads``, ``findings``, ``not-recorded``, ``notes``, ``terms``, ``rules``,
    ``one-line``. A ``card`` is the directory card of a panel.
    """

    kind: Kind
    id: str


class Link(NamedTuple):
    """Words that lead to the page, or the part of a page, where a thing stands."""

    text: str
    to: Ref


Phrase: TypeAlias = tuple[str | Link, ...]
"""Words in reading order, some of which are links."""


def plain(phrase: Phrase) -> str:
    """The words of a phrase without its links."""
    return "".join(piece if isinstance(piece, str) else piece.text for piece in phrase)


def listed(pieces: tuple[str | Link, ...], last: str = "and") -> Phrase:
    """The pieces as a spoken list: ``a, b and c``; where one holds a comma itself, ``a, of b; c; and d``."""
    said: list[str | Link] = []
    comma, end = joints(plain((piece,)) for piece in pieces)
    for index, piece in enumerate(pieces):
        if index:
            said.append(f"{end}{last} " if index == len(pieces) - 1 else comma)
        said.append(piece)
    return tuple(said)


def joints(names: Iterable[str]) -> tuple[str, str]:
    """What stands between the names of a list, and before its last word: semicolons where one has a comma."""
    return ("; ", "; ") if any("," in each for each in names) else (", ", " ")


def in_a_row(names: Iterable[str]) -> str:
    """Names one after another, with no ``and``: ``a, b``; ``a, of b; c`` where one holds a comma."""
    told = tuple(names)
    return joints(told)[0].join(told)
