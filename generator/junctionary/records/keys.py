"""The keys of the record, told to whoever writes one: what each says, how it is written, its closed list."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, get_args

from pydantic.fields import FieldInfo

from junctionary.records.reading import Record
from junctionary.records.values import OneOf
from junctionary.sources.datafiles import load_datafile


@dataclass(frozen=True, slots=True)
class Key:
    """One key: what it says, an example of it, the words it may choose from, and what its value holds."""

    name: str
    says: str
    like: str
    must: bool
    words: tuple[str, ...]
    within: tuple[type[Record], ...]


@cache
def keys(model: type[Record]) -> tuple[Key, ...]:
    """Every key of a record, in its order. Raises KeyError for one that ``keys.yaml`` has not."""
    told = _told(model)
    return tuple(_key(field.alias or name, field, told) for name, field in model.model_fields.items())


def example(model: type[Record], way: Sequence[int | str]) -> str | None:
    """How the value at the end of a way into a record is written, ``key: value``; None where no key tells."""
    at: tuple[type[Record], ...] = (model,)
    found = None
    for step in way:
        if key := next((key for each in at for key in keys(each) if key.name == step), None):
            found, at = f"{key.name}: {key.like}", key.within
    return found


def _key(name: str, field: FieldInfo, told: dict[str, list[str]]) -> Key:
    says, like = told[name]
    parts = list(_parts((field.annotation, *field.metadata)))
    words = next((each for each in parts if isinstance(each, OneOf) and each.choices), None)
    within = tuple(each for each in parts if isinstance(each, type) and issubclass(each, Record))
    choices = words.choices if words and not within else ()
    return Key(name, says, like, field.is_required(), choices, within)


def _parts(annotated: Any) -> Iterator[Any]:
    """Every type and reader that an annotation is made of, the outer before the inner."""
    if isinstance(annotated, tuple):
        for each in annotated:
            yield from _parts(each)
        return
    yield annotated
    yield from _parts((*get_args(annotated), *getattr(annotated, "__metadata__", ())))


def told_of(record: str) -> dict[str, list[str]]:
    """What ``keys.yaml`` tells of a record by its name: for each key its words and an example."""
    return _file().get(record, {})


@cache
def _file() -> dict[str, dict[str, list[str]]]:
    return load_datafile(Path(__file__).with_name("keys.yaml"))


def _told(model: type[Record]) -> dict[str, list[str]]:
    """What is told of a record, with what is told of those it extends."""
    found: dict[str, list[str]] = {}
    for each in reversed(model.__mro__):
        found |= told_of(each.__name__)
    return found
