"""rooms/*.yaml: one room: its kind, outline, walls, and what stands along them."""

from typing import Annotated

from pydantic import AfterValidator, Field

from junctionary.records import words
from junctionary.records.house import Practice
from junctionary.records.reading import Record
from junctionary.records.runs import Evidence
from junctionary.records.values import (
    NONE,
    UNKNOWN,
    Count,
    Edition,
    Id,
    IdOrUnknown,
    Length,
    OneOf,
    Point,
    Said,
    Shaped,
    Stage,
    Temperature,
    Text,
    YesNoUnknown,
    refused,
)  # fmt: skip


class Thing(Record):
    """Something in or along a wall: a door, a window, a counter, a sink.

    ``hinged`` is the side a door hangs on as one faces it from this room,
    ``both`` for a pair, ``none`` where it slides; ``swings_into`` the room it opens into.
    """

    what: Annotated[str, OneOf(choices=words.THINGS, what="thing along a wall")]
    wall: Text
    along: Length | None = None
    width: Length | None = None
    up: Length | None = None
    height: Length | None = None
    depth: Length | None = None
    to: IdOrUnknown | None = None
    hinged: (
        Annotated[
            str | Said,
            Shaped(
                what="the side a door is hinged on",
                pattern="left|right|both",
                example="left",
                said=(UNKNOWN, NONE),
            ),
        ]
        | None
    ) = None
    swings_into: IdOrUnknown | None = None
    note: Text | None = None


def _enough_corners(outline: list[Point]) -> list[Point]:
    if len(outline) < 3:
        found = f"{len(outline)} corners"
        raise refused(found, "three corners or more", "add the others, or take the island out")
    return outline


class Island(Record):
    """An island or peninsula counter; its outline has three corners or more."""

    outline: Annotated[list[Point], AfterValidator(_enough_corners)]
    name: Text | None = None


class Bundle(Record):
    """Runs that lie together where they cannot shed heat."""

    id: Id
    is_: Annotated[
        str, OneOf(choices=("sealed-hole", "conduit", "touching"), what="kind of bundle"), Field(alias="is")
    ]
    with_: Annotated[Text | None, Field(alias="with")] = None
    runs: list[Id]
    length: Length | None = None


class Stairs(Record):
    """A stair: how many risers, and where it leads."""

    risers: Count
    to: Id | None = None


class RoomRecord(Record):
    """One room, or an outdoor area. ``complete`` says that every box of it is in the record."""

    room: Id
    name: Text
    kind: Annotated[str, OneOf(choices=words.ROOM_KINDS, what="kind of room")]
    level: Id | None = None
    building: Id | None = None
    finished: YesNoUnknown | None = None
    complete: YesNoUnknown | None = None
    ceiling: Length | None = None
    outline: list[Point] | None = None
    walls: list[Text] | None = None
    things: list[Thing] = []
    islands: list[Island] = []
    ambient: Temperature | None = None
    bundles: list[Bundle] = []
    bays: Count | None = None
    stairs: Stairs | None = None
    side: Text | None = None
    exposed: (
        Annotated[
            str | Said, Shaped(what="damp or wet", pattern="dry|damp|wet", example="damp", said=(UNKNOWN,))
        ]
        | None
    ) = None
    practice: Practice | None = None
    stage: Stage | None = None
    built_to: Edition | None = None
    evidence: Evidence | None = None
    note: Text | None = None
