"""What the lookups share: the house they ask, a name that nothing has, the cautions, an answer as data."""

import json
import sys
from argparse import Namespace
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from typing import Any

from junctionary.cli.opening import link_record, record_folder
from junctionary.cli.saying import counted, problem_lines
from junctionary.house.model import House
from junctionary.house.network import listed
from junctionary.house.switching_off import Isolation, Off
from junctionary.marks import Place
from junctionary.problems import nearest
from junctionary.sheets.caution import CAUTIONS, STEPS, UNKNOWN
from junctionary.sheets.second_sources import stopping
from junctionary.units import Quantity

DEFERS = "An aid, not a certificate: the local code, the inspector and a licensed electrician decide."


def asked_house(asked: Namespace) -> House | None:
    """The house of the record asked for; None where it cannot be read, which is told."""
    linked = link_record(record_folder(asked))
    for problem in linked.problems:
        for line in problem_lines(linked.folder, linked.files, problem):
            print(line, file=sys.stderr)
    if linked.house is None:
        stopping = sum(problem.stops for problem in linked.problems)
        told = f"The record cannot be read: {counted(stopping, 'problem')}. Nothing was answered."
        print(told, file=sys.stderr)
    return linked.house


def no_such(name: str, known: Iterable[str], what: str, house: House | None = None) -> int:
    """Tell that nothing has this name, and what else has it or which is nearest; the exit code."""
    near = nearest(name, known)
    hint = f"; the nearest is {near}" if near else ""
    print(f"{what} is called {name!r}{_named_else(house, name) if house else ''}{hint}", file=sys.stderr)
    return 2


def _named_else(house: House, name: str) -> str:
    """``: that is a room, with K1 and K2``: what has a name that was not meant, and what to give instead."""
    if name in house.boxes:
        return _with("box", [each.id for each in house.boxes[name].devices])
    if name in house.rooms:
        return _with("room", house.rooms[name].boxes)
    if name in house.circuits:
        return _with("circuit", house.circuits[name].boxes)
    if name in house.runs:
        return _with("run", [f"{name}.{each.colour}" for each in house.runs[name].conductors])
    return ""


def _with(kind: str, within: Sequence[str]) -> str:
    return f": that is a {kind}, with {listed(within)}" if within else f": that is a {kind}"


def give(asked: Namespace, house: House, answer: object, lines: Iterable[str]) -> int:
    """Print an answer as asked, with the cautions; the exit code."""
    if asked.format == "json":
        cautions = [*STEPS, *CAUTIONS, DEFERS]
        whole = {"house": house.name, "cautions": cautions, "answer": plain(answer)}
        print(json.dumps(whole, indent=2, ensure_ascii=False))
    else:
        for line in lines:
            print(line)
    return 0


def caution_lines() -> Iterator[str]:
    """The cautions: what is done before anything is opened, and who decides."""
    yield "Before you open anything:"
    yield from (f"  {number}. {step}" for number, step in enumerate(STEPS, 1))
    yield from (f"  - {each}" for each in CAUTIONS)
    yield DEFERS


def off_lines(house: House, isolation: Isolation, indent: str = "") -> Iterator[str]:
    """What must be off before something is opened; where it is unknown, that first."""
    if isolation.unknown:
        yield f"{indent}{UNKNOWN.upper()}: {', '.join(isolation.mains) or 'no main is recorded'}"
        yield from (f"{indent}  because {reason}" for reason in isolation.unknown)
    yield from (_off_line(each, indent) for each in isolation.breakers)
    for each in isolation.sources:
        yield f"{_off_line(each, indent)} (a second source): {stopping(house, house.sources[each.id])}"
    yield from (f"{indent}stays live  {each}" for each in isolation.stays_live)


def _off_line(off: Off, indent: str) -> str:
    return f"{indent}off  {off.id}: {'; '.join(off.why)}"


def plain(value: object) -> Any:
    """An answer as JSON has it: quantities, sizes and places as their words, the rest by its fields."""
    if value is None or isinstance(value, bool | int | float):
        return value
    if isinstance(value, Quantity | Place):
        return str(value)
    if is_dataclass(value) and not isinstance(value, type):
        return {each.name: plain(getattr(value, each.name)) for each in fields(value)}
    if isinstance(value, Mapping):
        return {str(key): plain(each) for key, each in value.items()}
    if isinstance(value, list | tuple | set | frozenset):
        return [plain(each) for each in value]
    return str(value)
