"""Every key that a record may have is told to its writer, with an example that is read."""

from collections.abc import Iterator

import pytest

from junctionary.read import load
from junctionary.records import FILES, understand
from junctionary.records.keys import Key, keys, told_of
from junctionary.records.reading import Record


def models() -> Iterator[type[Record]]:
    """Every kind of mapping in a record, from the files down."""
    seen: list[type[Record]] = []
    to_do: list[type[Record]] = list(FILES.values())
    while to_do:
        model = to_do.pop()
        if model not in seen:
            seen.append(model)
            to_do += [each for key in keys(model) for each in key.within]
            yield model


KEYS: list[tuple[type[Record], Key]] = [(model, key) for model in models() for key in keys(model)]
ANSWERS = ("none", "unknown")


def test_every_key_is_told_and_no_other() -> None:
    written = {model.__name__: set(model.keys_of()) for model in models()}
    told: dict[str, set[str]] = {}
    for model in models():
        for base in (each for each in model.__mro__ if told_of(each.__name__)):
            told.setdefault(model.__name__, set()).update(told_of(base.__name__))
    assert told == written


@pytest.mark.parametrize(
    ("model", "key"), KEYS, ids=lambda each: each.name if isinstance(each, Key) else each.__name__
)
def test_its_example_is_read(model: type[Record], key: Key) -> None:
    others = [f"{each.name}: {each.like}\n" for each in keys(model) if each.must and each.name != key.name]
    tree, problems = load("".join([f"{key.name}: {key.like}\n", *others]), "example.yaml")
    assert not problems
    model.model_validate(tree)


def test_a_list_that_is_told_to_be_none_is_empty_and_an_unknown_one_is_not_recorded() -> None:
    text = "circuit: c\nname: C\nloads: none\nserves: unknown\nruns: none\n"
    house, _ = load("house: Hut\nreference: nec-2023\npermits: none\n", "house.yaml")
    circuit, _ = load(text, "circuits/c.yaml")
    records, problems = understand([("house.yaml", house), ("circuits/c.yaml", circuit)])
    assert records is not None
    assert not problems
    assert records.house.permits == []
    assert records.circuits[0].loads == []
    assert "loads" in records.circuits[0].model_fields_set
    assert records.circuits[0].serves is None
