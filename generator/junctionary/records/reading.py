"""The base of every record: keeps the places, and turns its faults into problems."""

from dataclasses import dataclass, field
from typing import Any, ClassVar, Self

from pydantic import BaseModel, ConfigDict, PrivateAttr, ValidationError, ValidationInfo, model_validator
from pydantic_core import ErrorDetails

from junctionary.marks import MarkedList, MarkedMap, Place
from junctionary.problems import Problem, nearest
from junctionary.records.values import refused, shown

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
            info.context.problems += [_unknown_key(key, data, known) for key in unknown]
        made: Self = handler({key: value for key, value in data.items() if key in known})
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


def _unknown_key(key: str, data: MarkedMap, known: list[str]) -> Problem:
    near = nearest(key, known)
    return Problem(
        data.key_places[key],
        f"unknown key {key!r}",
        f"{near!r}, the nearest known key" if near else f"one of {', '.join(known)}",
        f"write {near} or take the key out" if near else "take the key out",
    )


def problems_of(error: ValidationError, root: MarkedMap | MarkedList) -> list[Problem]:
    """Every fault pydantic found in one tree, each at its place."""
    found = [_problem_of(each, root) for each in error.errors(include_url=False)]
    return list(dict.fromkeys(found))


def _problem_of(detail: ErrorDetails, root: MarkedMap | MarkedList) -> Problem:
    place = root.place
    at: Any = root
    for step, after in zip(detail["loc"], (*detail["loc"][1:], None), strict=True):
        if isinstance(at, MarkedMap) and after == "[key]":
            place = at.key_places.get(str(step), place)
            break
        if isinstance(at, MarkedMap) and step in at:
            place, at = at.value_places[str(step)], at[str(step)]
        elif isinstance(at, MarkedList) and isinstance(step, int) and step < len(at):
            place, at = at.item_places[step], at[step]
    context = detail.get("ctx", {})
    if detail["type"] == "record":
        return Problem(place, context["found"], context["expected"], context["do"])
    if detail["type"] == "missing":
        key = str(detail["loc"][-1])
        return Problem(place, f"no {key!r} here", f"the key {key!r}", f"add {key}:")
    if detail["type"] in ("list_type", "tuple_type"):
        return Problem(place, shown(detail["input"]), "a list", "write it as a list: [one, two]")
    if detail["type"] == "dict_type":
        return Problem(
            place, shown(detail["input"]), "a mapping", "write it as keys and values: {key: value}"
        )
    return Problem(place, f"{shown(detail['input'])}", detail["msg"].lower(), "correct the value")
