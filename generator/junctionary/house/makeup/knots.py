"""What is held together: ties name a knot for each thing, and every knot becomes a joint or a landing."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.makeup.bench import Atom
from junctionary.house.model import Role
from junctionary.marks import Place
from junctionary.problems import Problem

Key = tuple[str, ...]
"""The entry, what flows, and what tells the knot from others: ``("0", "hot", "near", "black")``."""

ROLES: dict[str, Role] = {"neutral": "neutral", "ground": "ground", "armor": "ground"}
ORDER = {"hot": 0, "neutral": 1, "ground": 2}


@dataclass(frozen=True, slots=True)
class Tie:
    """One thing that belongs to one knot."""

    key: Key
    atom: Atom
    word: str


@dataclass(frozen=True, slots=True)
class Doubt:
    """A word that cannot be expanded honestly; no fault where any of ``names`` is written out instead."""

    names: frozenset[str]
    problem: Problem


@dataclass(frozen=True, slots=True)
class Knot:
    """Things that are one electrical point by the words of the make-up."""

    key: Key
    role: Role | None
    word: str
    atoms: tuple[Atom, ...]
    place: Place

    @property
    def wires(self) -> tuple[Atom, ...]:
        """What lies in a connector by itself: conductor ends, leads, the box's screw."""
        return tuple(each for each in self.atoms if each.kind != "terminal")

    @property
    def terminals(self) -> tuple[Atom, ...]:
        """What is reached by a pigtail, or takes the one wire itself."""
        return tuple(each for each in self.atoms if each.kind == "terminal")


def tie_up(ties: Iterable[Tie], places: Mapping[str, Place]) -> tuple[list[Knot], list[Problem]]:
    """The knots of one box, hot ones first, then neutral, then ground; a thing in two of them is a problem.

    ``places`` are those of the entries, by the first part of a key.
    """
    held: dict[Key, dict[str, Atom]] = {}
    words: dict[Key, str] = {}
    where: dict[str, Key] = {}
    problems: list[Problem] = []
    for tie in ties:
        first = where.setdefault(tie.atom.name, tie.key)
        if first != tie.key and tie.atom.kind != "box":
            said = tie.atom.name.partition("/")[2] or tie.atom.name
            problems.append(
                Problem(
                    places[tie.key[0]],
                    f"{said} is told twice, as {words[first]} and as {tie.word}",
                    "each conductor in one place",
                    "name the conductors one by one, or write the joints out",
                )
            )
            continue
        held.setdefault(tie.key, {})[tie.atom.name] = tie.atom
        # The word that says most stays with the knot: "switched" rather than "feed".
        words[tie.key] = words.get(tie.key, tie.word)
    knots = [
        Knot(key, _role(key), words[key], tuple(atoms.values()), places[key[0]])
        for key, atoms in held.items()
    ]
    return sorted(knots, key=lambda knot: ORDER.get(knot.role or "", 0)), list(dict.fromkeys(problems))


def _role(key: Key) -> Role | None:
    if key[1] == "as":
        return None
    return ROLES.get(key[1], "hot")
