"""The facts that checks lack, each told once: the one that would settle most comes first."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from junctionary.checks.engine import rules
from junctionary.checks.finding import SEVERITIES, Unrecorded
from junctionary.house.model import House
from junctionary.marks import Place


@dataclass(frozen=True, slots=True)
class Wanted:
    """One missing fact: what it is about, and the checks it would settle, the gravest first.

    ``place`` is where the first check that lacks it would have it told.
    """

    fact: str
    about: tuple[str, ...]
    rules: tuple[str, ...]
    place: Place | None = None


def wanted(house: House, unrecorded: Iterable[Unrecorded]) -> tuple[Wanted, ...]:
    """Each missing fact once, ranked by the hazards that it would settle, then defects, then advice."""
    settles: dict[tuple[str, str], list[str]] = {}
    about: dict[tuple[str, str], tuple[str, ...]] = {}
    places: dict[tuple[str, str], Place | None] = {}
    for each in unrecorded:
        for need in each.needs:
            # A fact that does not name its subject is another fact for another subject.
            key = (need, "" if _names_it(house, need) else next(iter(each.about), ""))
            settles.setdefault(key, []).append(each.rule)
            places.setdefault(key, each.place)
            about[key] = tuple(dict.fromkeys((*about.get(key, ()), *each.about)))
    ranked = sorted(settles, key=lambda key: _weight(settles[key]), reverse=True)
    return tuple(Wanted(key[0], about[key], _gravest_first(settles[key]), places[key]) for key in ranked)


_SUBJECT = re.compile(r"\b(circuit|room|box|breaker) (?!(?:of|is|in)\b)(\S+)")
_SEVERAL = {"circuit": "circuits", "room": "rooms", "box": "boxes", "breaker": "breakers"}
_PLURAL = {"is": " are", "feeds": " feed", "guards": " guard"}


def alike(facts: Sequence[str], most: int | None = None) -> list[tuple[str, list[int]]]:
    """Facts in fewer words: what is missing of several circuits, rooms, boxes or breakers is one.

    Each with the positions of those it stands for; ``most`` is how many are named.
    """
    groups: dict[tuple[str, ...], list[int]] = {}
    ids: dict[tuple[str, ...], list[str]] = {}
    for position, fact in enumerate(facts):
        match = _SUBJECT.search(fact)
        key = (fact[: match.start()], match[1], fact[match.end() :]) if match else (fact, str(position))
        groups.setdefault(key, []).append(position)
        ids.setdefault(key, []).append(match[2] if match else "")
    return [
        (_of_several(key, ids[key], most) if len(set(ids[key])) > 1 else facts[each[0]], each)
        for key, each in groups.items()
    ]


def _of_several(key: tuple[str, ...], ids: list[str], most: int | None) -> str:
    """``the cables of circuits bath, den and 12 more``."""
    before, kind, after = key
    if before in ("how deep ", "how far ", "which loads ", "what "):
        after = re.sub(r"^ (is|feeds|guards)\b", lambda verb: _PLURAL[verb[1]], after)
    ids = list(dict.fromkeys(ids))
    named = ids[:most]
    more = f" and {len(ids) - len(named)} more" if len(named) < len(ids) else ""
    return f"{before}{_SEVERAL[kind]} {', '.join(named)}{more}{after}"


def _weight(names: list[str]) -> tuple[int, ...]:
    """How many hazards, defects and pieces of advice hang on a fact, by subject."""
    known = rules()
    grades = [known[each].severity for each in names if each in known]
    return tuple(grades.count(severity) for severity in SEVERITIES)


def _gravest_first(names: Iterable[str]) -> tuple[str, ...]:
    known = rules()
    once = dict.fromkeys(names)
    return tuple(
        sorted(once, key=lambda each: SEVERITIES.index(known[each].severity) if each in known else 9)
    )


def _names_it(house: House, need: str) -> bool:
    """Whether the words of a fact say what it is about, as ``the cable of run a1`` does."""
    return any(
        word in each
        for word in need.split()
        for each in (house.boxes, house.runs, house.circuits, house.rooms, house.devices)
    )
