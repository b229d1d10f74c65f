"""Rules' examples: small records in one text, read and judged as a whole record is.

Each file begins with a line such as ``[panels/main.yaml]``; a line at fault
ends in ``#! rule-id``.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from textwrap import dedent

from junctionary.checks.engine import judge
from junctionary.checks.finding import Judgement
from junctionary.figures import Figures, work_out
from junctionary.house.link import link
from junctionary.house.model import House
from junctionary.house.network import Network, network
from junctionary.marks import MarkedList, MarkedMap
from junctionary.problems import Problem
from junctionary.read.loader import load
from junctionary.records import understand

HOUSE = "house.yaml"
USUAL_HOUSE = "house: Example\nreference: nec-2023\n"
"""What an example's house is where it does not say."""

_FILE = re.compile(r"\[(\S+\.yaml)\]\s*")
_MARK = re.compile(r"#! ([a-z-]+)\s*$")


class ExampleError(ValueError):
    """An example that is no record: the message says what could not be understood, and where."""


@dataclass(frozen=True, slots=True)
class Example:
    """An example read, linked, worked out and judged."""

    house: House
    network: Network
    figures: Figures
    judgement: Judgement


def split(text: str) -> dict[str, str]:
    """The files of an example by name, in order, ``house.yaml`` among them; raises ExampleError."""
    files: dict[str, list[str]] = {}
    lines: list[str] | None = None
    for line in dedent(text).strip("\n").splitlines():
        if begins := _FILE.fullmatch(line):
            if begins[1] in files:
                raise ExampleError(f"{begins[1]} begins twice")
            lines = files[begins[1]] = []
        elif lines is None:
            raise ExampleError(
                f"{line!r} stands in no file; begin one with a line such as [panels/main.yaml]"
            )
        else:
            lines.append(line)
    told = {file: "\n".join(lines) + "\n" for file, lines in files.items()}
    return told if HOUSE in told else {HOUSE: USUAL_HOUSE, **told}


def marked(text: str) -> list[tuple[str, str, int]]:
    """Every mark of an example: the rule it names, the file, the line counted from 1."""
    return [
        (found[1], file, number)
        for file, lines in split(text).items()
        for number, line in enumerate(lines.splitlines(), 1)
        if (found := _MARK.search(line))
    ]


def read_example(text: str) -> House:
    """The linked house of an example; raises ExampleError where it has a problem or a warning."""
    trees: list[tuple[str, MarkedMap | MarkedList]] = []
    problems: list[Problem] = []
    for file, lines in split(text).items():
        root, misread = load(lines, file)
        problems += misread
        if isinstance(root, MarkedMap | MarkedList):
            trees.append((file, root))
    records, misunderstood = understand(trees)
    problems += misunderstood
    house = None
    if records is not None:
        house, unlinked = link(records)
        problems += unlinked
    if house is None or problems:
        raise ExampleError("; ".join(_said(problems)) or "the example holds no house")
    return house


def judge_example(text: str) -> Example:
    """An example read, linked, worked out and judged; raises ExampleError, RuleCrashed."""
    house = read_example(text)
    joined = network(house)
    figures = work_out(house, joined)
    return Example(house, joined, figures, judge(house, joined, figures))


def _said(problems: list[Problem]) -> Iterator[str]:
    return (str(each) for each in problems)
