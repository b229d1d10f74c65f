"""One run: a cable from one end to another, with its length and route."""

from typing import Annotated

from pydantic import Field

from junctionary.records import words
from junctionary.records.cables import Cable, read_cable
from junctionary.records.reading import Record
from junctionary.records.values import (
    Date,
    Edition,
    Id,
    IdOrSaid,
    Length,
    LengthOrUnknown,
    OneOf,
    Parsed,
    Point,
    Role,
    Said,
    Stage,
    Text,
    When,
)  # fmt: skip


class Evidence(Record):
    """How a fact is known, when, and by which role."""

    shorthand = "how"

    how: Annotated[str, OneOf(choices=words.EVIDENCE, what="kind of evidence")]
    date: Date | None = None
    by: Role | None = None


class RoutePoint(Record):
    """One point of a route: a box, or a point on a wall, a ceiling or a floor."""

    shorthand = "box"

    box: Id | None = None
    room: Id | None = None
    wall: Text | None = None
    along: Length | None = None
    up: Length | None = None
    ceiling: Point | None = None
    floor: Point | None = None


class Supported(Record):
    """How a cable is held: to the first support, and between them."""

    first: Length | None = None
    every: Length | None = None


class RunRecord(Record):
    """One run of a circuit. ``from`` is the supply side.

    ``from_edge`` is how far its holes keep from the face of a stud that a screw may enter.
    """

    id: Id
    cable: (
        Annotated[
            Cable | Said, Parsed(by=read_cable, described="12/2 NM-B, a raceway with wires, or unknown")
        ]
        | None
    ) = None
    from_: Annotated[IdOrSaid | None, Field(alias="from")] = None
    to: IdOrSaid | None = None
    length: LengthOrUnknown | None = None
    through: list[Text] | None = None
    supported: Supported | None = None
    from_edge: Length | None = None
    route: list[RoutePoint] | None = None
    protected: list[Text] | None = None
    buried: Length | None = None
    insulation: Text | None = None
    looked_at: dict[str, Text] | None = None
    made: When | None = None
    installed: When | None = None
    evidence: Evidence | None = None
    stage: Stage | None = None
    built_to: Edition | None = None
    note: Text | None = None
