"""YAML text to a tree that knows its places.

Built from parser events rather than from a ready-made loader: events tell
line and column, duplicate keys can be seen, and anchors, tags and bottomless
nesting can be refused before they cost anything.
"""

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from junctionary.marks import MarkedList, MarkedMap, Place
from junctionary.problems import Problem
from junctionary.read.faults import UNSEEN, clipped, explain, unprintable
from junctionary.read.scalars import Scalar, plain_value
from junctionary.read.source import lines_of

PARSER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""libyaml's parser where PyYAML was built with it, else the one in Python: same trees, five times slower."""

MAX_DEPTH = 40
MAX_NODES = 500_000

Node = MarkedMap | MarkedList | Scalar

_JOINED_HASH = re.compile(r"[ \t]+#(?=[^\s!#])")


@dataclass(slots=True)
class _Level:
    """One collection being filled; in a mapping keys and values take turns.

    ``key`` is the one whose value comes next, or None where that value is
    to be dropped: its key was refused.
    """

    into: MarkedMap | MarkedList
    key_due: bool = True
    key: str | None = None


@dataclass(slots=True)
class _Reading:
    """One file being read: what is open, what was found wrong so far."""

    file: str
    lines: tuple[str, ...]
    hashes: bool
    problems: list[Problem] = field(default_factory=list)
    open: list[_Level] = field(default_factory=list)
    root: Node = None
    nodes: int = 0

    def place(self, mark: Any) -> Place:
        return Place(self.file, mark.line + 1, mark.column + 1)

    def refuse(self, place: Place, found: str, expected: str, do: str, stops: bool = True) -> None:
        self.problems.append(Problem(place, found, expected, do, stops))


class _EnoughError(Exception):
    """The file asks for more than any record needs; the problem is already noted."""


def load(text: str, file: str) -> tuple[Node, list[Problem]]:
    """The tree of one file, and every problem and warning found in it, in order.

    The tree is made of MarkedMap, MarkedList, str, int, float, bool and
    None; keys are text as written, and of two equal keys the first counts.
    It is None for an empty file or one that cannot be parsed to its end;
    anything else found wrong leaves the rest of the tree standing.
    """
    text = text.removeprefix("\ufeff")
    if problems := unprintable(text, file):
        return None, problems
    reading = _Reading(file, lines_of(text), _JOINED_HASH.search(text) is not None)
    parser = PARSER(text)
    try:
        _document(parser, reading)
    except yaml.MarkedYAMLError as error:
        reading.root = None
        told = explain(error, file, reading.lines)
        # A comment that swallowed a bracket is said once, as what it is.
        reading.problems = [problem for problem in reading.problems if problem.place != told.place]
        reading.problems.append(told)
    except (yaml.YAMLError, ValueError) as error:
        reading.root = None
        reading.refuse(
            Place(file, 1, 1),
            f"this cannot be read as YAML: {clipped(str(error))}",
            "YAML text",
            "save it as text",
        )
    except _EnoughError:
        reading.root = None
    finally:
        parser.dispose()
    if reading.root is None and not reading.problems:
        reading.refuse(
            Place(file, 1, 1), "the file is empty", "something recorded", "fill it in or remove it"
        )
    return reading.root, sorted(reading.problems, key=lambda problem: problem.place)


def _document(parser: Any, reading: _Reading) -> None:
    """Read the first document, and refuse a second."""
    seen = 0
    while parser.check_event():
        event = parser.get_event()
        if isinstance(event, yaml.NodeEvent):
            _node(event, reading)
        elif isinstance(event, yaml.CollectionEndEvent):
            reading.open.pop()
        elif isinstance(event, yaml.DocumentStartEvent):
            seen += 1
            if seen > 1:
                reading.refuse(
                    reading.place(event.start_mark),
                    "a second document begins here",
                    "one document in a file",
                    "remove the three hyphens, or move what follows into a file of its own",
                )
                return


def _node(event: Any, reading: _Reading) -> None:
    """Take in one scalar or alias, or the start of a collection."""
    place = reading.place(event.start_mark)
    reading.nodes += 1
    if reading.nodes > MAX_NODES:
        reading.refuse(place, f"more than {MAX_NODES} values in one file", "a smaller file", "split the file")
        raise _EnoughError
    value = _value(event, place, reading)
    level = reading.open[-1] if reading.open else None
    if level is None:
        reading.root = value
    elif isinstance(level.into, MarkedList):
        level.into.append(value)
        level.into.item_places.append(place)
    elif level.key_due:
        level.key, level.key_due = _key(event, place, level.into, reading), False
    else:
        level.key_due = True
        if level.key is not None:
            level.into[level.key] = value
            level.into.value_places[level.key] = place
    if isinstance(value, MarkedMap | MarkedList):
        if len(reading.open) >= MAX_DEPTH:
            reading.refuse(place, "too many levels of nesting", f"at most {MAX_DEPTH}", "write it flatter")
            raise _EnoughError
        reading.open.append(_Level(value))


def _value(event: Any, place: Place, reading: _Reading) -> Node:
    """What an event stands for, a collection still empty."""
    if event.anchor is not None:
        alias = isinstance(event, yaml.AliasEvent)
        _refuse_mark(
            f"{'*' if alias else '&'}{event.anchor}", "an alias" if alias else "an anchor", place, reading
        )
        if alias:
            return None
    if event.tag is not None:
        _refuse_mark(event.tag.replace("tag:yaml.org,2002:", "!!"), "a tag", place, reading)
    if isinstance(event, yaml.MappingStartEvent):
        return MarkedMap(place)
    if isinstance(event, yaml.SequenceStartEvent):
        return MarkedList(place)
    if event.style not in (None, ""):
        if unseen := UNSEEN.search(event.value):
            reading.refuse(
                place,
                f"an escape for U+{ord(unseen[0]):04X}, which nobody can see",
                "plain text",
                "leave it out",
            )
            return None
        return str(event.value)
    if reading.hashes:
        _warn_of_hash(event, reading)
    value = plain_value(event.value)
    if isinstance(value, float) and "." not in event.value:
        # An id such as 7e1 is text to a reader of YAML 1.1, and looks it to whoever wrote it.
        reading.refuse(
            place,
            f"{event.value} is read as the number {value:g}",
            "quotes around an id that looks like a power of ten",
            f'write "{event.value}" if it is an id',
            stops=False,
        )
    return value


def _refuse_mark(sign: str, called: str, place: Place, reading: _Reading) -> None:
    reading.refuse(
        place,
        f"{clipped(sign)} is {called}, which a record does not use",
        "a value written out",
        "write the value in each place where it holds, or put quotes around it if it is text",
    )


def _warn_of_hash(event: Any, reading: _Reading) -> None:
    """Warn of "Kitchen #2", where YAML reads a comment and whoever wrote it meant a number."""
    end = event.end_mark
    line = reading.lines[end.line] if end.line < len(reading.lines) else ""
    if lost := _JOINED_HASH.match(line, end.column):
        rest = clipped(line[lost.end() - 1 :])
        reading.refuse(
            Place(reading.file, end.line + 1, lost.end()),
            f"{rest} is read as a comment",
            "a space after the # of a comment, or quotes around text that holds one",
            f"write # {rest[1:].lstrip()} if it is a comment, or put the whole value in quotes",
            stops=False,
        )


def _key(event: Any, place: Place, into: MarkedMap, reading: _Reading) -> str | None:
    """The key as written, or None, with a problem noted, where it cannot be used."""
    if not isinstance(event, yaml.ScalarEvent):
        if not isinstance(event, yaml.AliasEvent):
            reading.refuse(
                place, "a key is a list or a mapping", "a word", "put quotes around it if it is text"
            )
        return None
    key = str(event.value)
    plain = event.style in (None, "")
    if plain and key == "<<":
        _refuse_mark(key, "a merge key", place, reading)
        return None
    if not key:
        reading.refuse(place, "there is no key before the colon", "a word", "write the key")
        return None
    if key in into.key_places:
        first = into.key_places[key].line
        reading.refuse(
            place,
            f"{clipped(key)} is told twice, first on line {first}",
            "each key once",
            "keep the one that holds, or give one of them its own name",
        )
        return None
    into.key_places[key] = place
    return key
