"""Single values of a record: what may stand there, and what to say when it may not.

Each class here is put in an ``Annotated`` type. It reads one value, gives the
typed one, and knows its JSON Schema. A value that cannot be read raises a
``PydanticCustomError`` that carries the three phrases of a problem.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from enum import Enum
from typing import Annotated, Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from junctionary.problems import MISSPELT, nearest
from junctionary.records import words
from junctionary.units import KINDS, Quantity, UnitError, WireSize, read_quantity, read_wire_size


class Said(Enum):
    """Two answers that are no value: looked and there is none; looked and cannot tell."""

    NONE = "none"
    UNKNOWN = "unknown"

    def __str__(self) -> str:
        return self.value


UNKNOWN = Said.UNKNOWN
NONE = Said.NONE


def refused(found: str, expected: str, do: str) -> PydanticCustomError:
    """The error a value raises: the three phrases of a problem."""
    return PydanticCustomError("record", "{found}", {"found": found, "expected": expected, "do": do})


def shown(value: object) -> str:
    """A value as a message names it."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dict):
        return "a mapping"
    if isinstance(value, list):
        return "a list"
    if value is None:
        return "nothing"
    return f"{value!r}" if isinstance(value, str) else str(value)


@dataclass(frozen=True)
class Leaf:
    """Reads one value; ``said`` names the answers allowed in its place."""

    said: tuple[Said, ...] = ()

    expected = "a value"
    example = ""

    def read(self, value: object) -> Any:
        """The typed value; raises ``PydanticCustomError``."""
        raise NotImplementedError

    def schema(self) -> dict[str, Any]:
        """Its JSON Schema, without the answers that stand in its place."""
        return {"type": "string"}

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.answer_or_value)

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        schema, said = self.schema(), [each.value for each in self.said]
        if not said:
            return schema
        return {"enum": said} if schema == {"enum": []} else {"anyOf": [schema, {"enum": said}]}

    def answer_or_value(self, value: object) -> Any:
        """One of the answers, or the typed value; raises ``PydanticCustomError``."""
        for answer in self.said:
            if value == answer.value:
                return answer
        return self.read(value)


@dataclass(frozen=True)
class Of(Leaf):
    """A quantity of one kind, with its unit: ``Of(kind="current", above_zero=True)`` reads ``20 A``.

    ``above_zero`` refuses a zero: of what a sum divides by, and of what cannot be nought.
    """

    kind: str = "length"
    above_zero: bool = False

    def read(self, value: object) -> Quantity:
        if not isinstance(value, str):
            called, example = KINDS[self.kind].called, KINDS[self.kind].example
            bare = isinstance(value, (int, float)) and not isinstance(value, bool)
            unit = example.partition(" ")[2]
            raise refused(
                f"{shown(value)} has no unit" if bare else shown(value),
                f"{called} with its unit, such as {example}",
                f"write its unit after it, such as {value} {unit}" if bare else f"write it like {example}",
            )
        try:
            read = read_quantity(value, self.kind)
        except UnitError as error:
            raise refused(error.found, error.expected, error.do) from None
        if self.above_zero and read.magnitude == 0:
            raise refused(
                f"{value} is nothing", f"a {self.kind} above zero", "leave it out if it is not known"
            )
        return read

    def schema(self) -> dict[str, Any]:
        return {
            "type": "string",
            "description": f"{KINDS[self.kind].called} with its unit",
            "examples": [KINDS[self.kind].example],
        }


@dataclass(frozen=True)
class Wire(Leaf):
    """A conductor size: ``14 AWG``, ``4/0 AWG``, ``250 kcmil``."""

    def read(self, value: object) -> WireSize:
        if not isinstance(value, str):
            raise refused(shown(value), "a conductor size such as 14 AWG", "write the size with AWG or kcmil")
        try:
            return read_wire_size(value)
        except UnitError as error:
            raise refused(error.found, error.expected, error.do) from None


@dataclass(frozen=True)
class OneOf(Leaf):
    """One word of a closed list; ``otherwise`` names what may stand there that is no word."""

    choices: tuple[str, ...] = ()
    what: str = "word"
    otherwise: str = ""

    def read(self, value: object) -> str:
        if isinstance(value, str) and value in self.choices:
            return value
        known = tuple(dict.fromkeys((*self.choices, *map(str, self.said))))
        found = f"{shown(value)} is no {self.what} known here"
        word = str(value) if isinstance(value, (str, int)) and not isinstance(value, bool) else ""
        if meant := nearest(word, known, MISSPELT):
            raise refused(found, f"{meant!r}, the nearest known word", f"write {meant}")
        parts = [each for each in known if word and word in each.split("-")]
        near = parts[0] if len(parts) == 1 else nearest(word, known)
        listed = ", or ".join(filter(None, (f"one of {', '.join(known)}", self.otherwise)))
        choose = f"write {near} if that is meant, else another of these"
        raise refused(found, listed, choose if near else f"choose a known {self.what}")

    def schema(self) -> dict[str, Any]:
        return {"enum": list(self.choices)}


@dataclass(frozen=True)
class Shaped(Leaf):
    """Text of a given shape."""

    what: str = "text"
    pattern: str = r".*\S.*"
    example: str = "text"

    def read(self, value: object) -> str:
        if isinstance(value, bool) or not isinstance(value, (str, int, float)):
            raise refused(shown(value), self.what, f"write {self.what}, for example {self.example}")
        if not isinstance(value, str):
            raise refused(f"the number {value}", self.what, f'put it in quotes if it is meant: "{value}"')
        if not re.fullmatch(self.pattern, value, re.DOTALL):
            raise refused(
                f"{shown(value)} is not {self.what}",
                f"{self.what} such as {self.example}",
                f"write it like {self.example}",
            )
        return value

    def schema(self) -> dict[str, Any]:
        return {"type": "string", "pattern": f"^(?:{self.pattern})$"}


@dataclass(frozen=True)
class Day(Shaped):
    """A day of the calendar."""

    what: str = "a date"
    pattern: str = r"\d{4}-\d{2}-\d{2}"
    example: str = "2026-03-04"

    def read(self, value: object) -> str:
        if not isinstance(value, str):
            raise refused(shown(value), "a date such as 2026-03-04", "write year, month and day")
        return _on_calendar(super().read(value))


def _on_calendar(day: str) -> str:
    try:
        date.fromisoformat(day)
    except ValueError:
        expected = "a day of the calendar, as year, month and day"
        raise refused(f"there is no {day}", expected, "correct the month or the day") from None
    return day


@dataclass(frozen=True)
class Parsed(Leaf):
    """A value read by a function that may raise ``refused(...)``."""

    by: Callable[[object], Any] = str
    described: str = "text"

    def read(self, value: object) -> Any:
        return self.by(value)

    def schema(self) -> dict[str, Any]:
        return {"description": self.described}


def _yes_no(value: object) -> bool:
    if isinstance(value, bool):
        return value
    raise refused(shown(value), "true or false", "write true or false")


MOST = 9999


def _count(value: object) -> int:
    if isinstance(value, int) and not isinstance(value, bool) and value >= 0:
        if value > MOST:
            raise refused(shown(value), "a number that a house may have", "check the number")
        return value
    raise refused(shown(value), "a whole number", "write a whole number such as 2")


def _when(value: object) -> str:
    """A year, a month or a day, as far as it is known."""
    if isinstance(value, int) and not isinstance(value, bool):
        value = str(value)
    if not isinstance(value, str) or not re.fullmatch(
        r"(?:18|19|20)\d\d(?:-(?:0[1-9]|1[0-2])(?:-\d\d)?)?", value
    ):
        raise refused(
            shown(value),
            "a year, a month or a day, such as 1957, 2025-10 or 2025-10-11",
            "write as much of the date as is known, the year first",
        )
    return _on_calendar(value) if value.count("-") == 2 else value


def _space(value: object) -> str:
    if isinstance(value, int) and not isinstance(value, bool):
        return str(value)
    if isinstance(value, str) and value.strip():
        return value
    raise refused(
        shown(value), "a space of the panel or a bar, such as 6 or neutral-bar/7", "name the space or bar"
    )


ID = r"[A-Za-z0-9][A-Za-z0-9_-]*"

Id = Annotated[str, Shaped(what="an id", pattern=ID, example="K3")]
IdOrUnknown = Annotated[str | Said, Shaped(what="an id", pattern=ID, example="K3", said=(UNKNOWN,))]
IdOrSaid = Annotated[str | Said, Shaped(what="an id", pattern=ID, example="K3", said=(UNKNOWN, NONE))]
Reference = Annotated[
    str,
    Shaped(what="an id, or parts joined by dots", pattern=rf"{ID}(?:[/.+]{ID})*", example="K3.r1"),
]
Text = Annotated[str, Shaped(what="text", example='"Kitchen counter, left of the sink"')]
Date = Annotated[str, Day()]
When = Annotated[str | Said, Parsed(by=_when, described="1957, 2025-10 or 2025-10-11", said=(UNKNOWN,))]
DateOrNone = Annotated[str | Said, Day(said=(NONE,))]
YesNo = Annotated[bool, Parsed(by=_yes_no, described="true or false")]
YesNoUnknown = Annotated[bool | Said, Parsed(by=_yes_no, described="true or false", said=(UNKNOWN,))]
Count = Annotated[int, Parsed(by=_count, described="a whole number")]
Space = Annotated[str, Parsed(by=_space, described="a space or a bar")]

Length = Annotated[Quantity, Of(kind="length")]
LengthOrUnknown = Annotated[Quantity | Said, Of(kind="length", said=(UNKNOWN,))]
Height = Annotated[Quantity, Of(kind="height")]
Area = Annotated[Quantity, Of(kind="area")]
Volume = Annotated[Quantity, Of(kind="volume")]
VolumeOrUnknown = Annotated[Quantity | Said, Of(kind="volume", said=(UNKNOWN,))]
Weight = Annotated[Quantity, Of(kind="weight")]
Current = Annotated[Quantity, Of(kind="current", above_zero=True)]
CurrentOrUnknown = Annotated[Quantity | Said, Of(kind="current", above_zero=True, said=(UNKNOWN,))]
CurrentOrSaid = Annotated[Quantity | Said, Of(kind="current", above_zero=True, said=(UNKNOWN, NONE))]
Voltage = Annotated[Quantity, Of(kind="voltage", above_zero=True)]
Load = Annotated[Quantity, Of(kind="load")]
Rating = Annotated[Quantity, Of(kind="load", above_zero=True)]
TorqueOrSaid = Annotated[Quantity | Said, Of(kind="torque", above_zero=True, said=(UNKNOWN, NONE))]
Temperature = Annotated[Quantity, Of(kind="temperature")]
Angle = Annotated[Quantity, Of(kind="angle")]
Size = Annotated[WireSize, Wire()]

Edition = Annotated[str, OneOf(choices=words.EDITIONS, what="edition")]
Stage = Annotated[str, OneOf(choices=words.STAGES, what="stage")]
Role = Annotated[str, OneOf(choices=words.ROLES, what="role")]
Metal = Annotated[str, OneOf(choices=words.METALS, what="metal")]
WayToLand = Annotated[str, OneOf(choices=words.WAYS_TO_LAND, what="way to land a conductor")]
Point = Annotated[tuple[Quantity, Quantity], Parsed(by=lambda value: read_point(value), described="[x, y]")]


def read_point(value: object) -> tuple[Quantity, Quantity]:
    """``[x, y]`` in the house's frame: two lengths, which may be negative."""
    if not isinstance(value, list) or len(value) != 2:
        raise refused(shown(value), "a point [x, y] of two lengths", "write it like [7 ft, 5 ft]")
    read = Of(kind="position").read
    return read(value[0]), read(value[1])
