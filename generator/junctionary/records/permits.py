"""A permit that work was done under: who gave it, what it covers, whether it was closed."""

from typing import Annotated

from pydantic import Field

from junctionary.records.reading import Record
from junctionary.records.values import Date, DateOrNone, Reference, Role, Text


class Permit(Record):
    """One permit, as on its paper. ``closed: none`` is one still open; ``covers`` are ids of the record."""

    number: Text
    authority: Text | None = None
    for_: Annotated[Text | None, Field(alias="for")] = None
    covers: list[Reference] | None = None
    applied: Date | None = None
    issued: Date | None = None
    closed: DateOrNone | None = None
    by: Role | None = None
    note: Text | None = None
