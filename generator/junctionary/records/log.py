"""log.yaml: inspections, tests, trips and changes, each dated and about something by id."""

from typing import Annotated

from pydantic import Field

from junctionary.records import words
from junctionary.records.reading import Record
from junctionary.records.values import Date, OneOf, Parsed, Reference, Role, Text, refused, shown
from junctionary.units import KINDS, Quantity, UnitError, read_quantity

MEASURED = ("torque", "voltage", "current", "resistance", "time", "length", "temperature")


def read_measured(value: object) -> Quantity:
    """A measured quantity of any kind a test gives: ``121.3 V``, ``14 in-lb``, ``0.4 ohm``."""
    if isinstance(value, str):
        for kind in MEASURED:
            try:
                return read_quantity(value, kind)
            except UnitError:
                continue
    raise refused(
        shown(value),
        f"a measured value with its unit, such as {', '.join(KINDS[kind].example for kind in MEASURED[:3])}",
        "write the value with its unit",
    )


def read_several(value: object) -> tuple[str, ...]:
    """One id or a list of them."""
    values = value if isinstance(value, list) else [value]
    if not values or not all(isinstance(each, str) and each.strip() for each in values):
        raise refused(shown(value), "an id, or a list of ids", "write about: K1.r1, or about: [K1, K2]")
    return tuple(values)


Measured = Annotated[Quantity, Parsed(by=read_measured, described="a measured value with its unit")]
Several = Annotated[tuple[str, ...], Parsed(by=read_several, described="an id, or a list of ids")]


class LogEntry(Record):
    """One entry: an inspection, a test, a trip or a change."""

    date: Date
    inspection: Annotated[str, OneOf(choices=words.INSPECTIONS, what="inspection")] | None = None
    test: Annotated[str, OneOf(choices=words.TESTS, what="test")] | None = None
    trip: Reference | None = None
    change: Text | None = None
    about: Several | None = None
    permit: Text | None = None
    result: Annotated[str, OneOf(choices=("pass", "fail", "partly", "unknown"), what="result")] | None = None
    value: Measured | None = None
    load: Measured | None = None
    with_: Annotated[Text | None, Field(alias="with")] = None
    while_: Annotated[Several | None, Field(alias="while")] = None
    died: Several | None = None
    by: Role | None = None
    note: Text | None = None
