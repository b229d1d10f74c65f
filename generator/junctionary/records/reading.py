"""The base of every record: keeps the places, and turns its faults into problems."""

from dataclasses import dataclass, field
from functools import cache
from typing import Any, ClassVar, Self, get_args, get_origin

from pydantic import BaseModel, ConfigDict, PrivateAttr, ValidationInfo, model_validator

from junctionary.marks import MarkedList, MarkedMap, Place
from junctionary.problems import MISSPELT, Problem, nearest
from junctionary.records.values import NONE, UNKNOWN, refused, shown

PRINTERS_QUOTES = "\u201c\u201d\u201e\u2018\u2019\u00ab\u00bb"

NOWHERE = Place("", 0, 0)
"""The place of a bare value: it has none of its own, the key it stands under has."""


def word_or_map(value: object) -> str:
    """The tag of what may be a bare word or a mapping."""
    return "word" if isinstance(value, str) else "map"


@dataclass(slots=True)
class Reading:
    """What is gathered while one file is read: its unknown keys, as problems."""

    problems: list[Problem] = field(default_factory=list)


class Record(BaseModel):
    """A mapping of the record: frozen, typed, and knowing its places."""

    model_config = ConfigDict(frozen=True, extra="forbid", arbitrary_types_allowed=True)

    shorthand: ClassVar[str | None] = None
    """The key that a bare value stands for: ``evidence: seen`` is ``evidence: {how: seen}``."""

    _source: MarkedMap = PrivateAttr()

    @model_validator(mode="wrap")
    @classmethod
    def _keep_places(cls, data: Any, handler: Any, info: ValidationInfo) -> Self:
        if cls.shorthand and isinstance(data, str):
            bare, data = data, MarkedMap(NOWHERE)
            data[cls.shorthand] = bare
        if not isinstance(data, MarkedMap):
            example = ", ".join(f"{key}: ..." for key in cls.keys_of()[:2])
            raise refused(shown(data), f"a mapping such as {{{example}}}", "write it as keys and values")
        known = cls.keys_of()
        unknown = [key for key in data if key not in known]
        if unknown and isinstance(info.context, Reading):
            due = [each.alias or name for name, each in cls.model_fields.items() if each.is_required()]
            absent = [each for each in due if each not in data]
            info.context.problems += [_unknown_key(key, data, known, absent) for key in unknown]
        lists = _lists(cls)
        made: Self = handler(
            {
                key: [] if key in lists and value == str(NONE) else value
                for key, value in data.items()
                if key in known and not (key in lists and value == str(UNKNOWN))
            }
        )
        made._source = data
        return made

    @classmethod
    def keys_of(cls) -> list[str]:
        """The keys this record knows, as written."""
        return [each.alias or name for name, each in cls.model_fields.items()]

    @property
    def place(self) -> Place:
        """Where the mapping itself begins."""
        return self._source.place

    def place_of(self, key: str) -> Place:
        """Where a key stands, or the mapping itself when the key is not written."""
        return self._source.key_places.get(key, self._source.place)

    def value_place(self, key: str, *inner: str | int) -> Place:
        """Where a key's value stands, or a value inside it; the nearest place outside it when not written."""
        place = self.place_of(key)
        at: Any = self._source
        for step in (key, *inner):
            if isinstance(at, MarkedMap) and step in at:
                place = at.value_places[str(step)]
                at = at[str(step)]
            elif isinstance(at, MarkedList) and isinstance(step, int) and step < len(at):
                place = at.item_places[step]
                at = at[step]
            else:
                break
        return place

    def key_place(self, key: str, inner: str) -> Place:
        """Where ``inner`` stands as a key of the mapping under ``key``."""
        at = self._source.get(key)
        if isinstance(at, MarkedMap) and inner in at.key_places:
            return at.key_places[inner]
        return self.place_of(key)


@cache
def _lists(model: type[Record]) -> frozenset[str]:
    """The keys that take a list: ``none`` is an empty one, ``unknown`` tells no more than nothing does."""
    return frozenset(
        each.alias or name
        for name, each in model.model_fields.items()
        if list in (get_origin(each.annotation), *map(get_origin, get_args(each.annotation)))
    )


def _unknown_key(key: str, data: MarkedMap, known: list[str], absent: list[str]) -> Problem:
    place, found = data.key_places[key], f"unknown key {key!r}"
    if any(sign in key for sign in PRINTERS_QUOTES):
        do = f'write " for {key[-1]} and where that begins'
        return Problem(place, found, "plain quotes around a value that holds a comma", do)
    if near := nearest(key, known, MISSPELT) or nearest(key, absent):
        return Problem(place, found, f"{near!r}, the nearest known key", f"write {near} or take the key out")
    do = "take the key out; junctionary explain tells what each key of a file says"
    holds = isinstance(data[key], MarkedMap | MarkedList)
    if near := (None if holds else next(iter(absent), None)) or nearest(key, known):
        do = f"write {near} if that is meant, else take the key out"
    return Problem(place, found, f"one of {', '.join(known)}", do)
