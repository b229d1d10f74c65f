"""One file of a record, read and understood by itself."""

from collections.abc import Callable
from typing import Any

import pytest

from junctionary.read.loader import load
from junctionary.records import Records, understand

HOUSE = "house: Tern Cottage\nreference: nec-2023\n"


def understood(file: str, text: str) -> tuple[Records | None, list[str]]:
    """What a file beside the smallest house.yaml is understood as, and each problem in full."""
    trees: list[tuple[str, Any]] = []
    problems = []
    for name, content in ({"house.yaml": HOUSE} | {file: text}).items():
        tree, wrong = load(content, name)
        problems += wrong
        trees.append((name, tree))
    records, wrong = understand(trees)
    return records, [str(each) for each in problems + wrong]


@pytest.fixture
def records_of() -> Callable[[str, str], Records]:
    """From a file's name and text to the records, which must be without a problem."""

    def made(file: str, text: str) -> Records:
        records, problems = understood(file, text)
        assert records is not None
        assert problems == []
        return records

    return made


@pytest.fixture
def problems_of() -> Callable[[str, str], list[str]]:
    """From a file's name and text to its problems, each in full."""
    return lambda file, text: understood(file, text)[1]
