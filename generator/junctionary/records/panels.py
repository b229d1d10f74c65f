"""panels/*.yaml: one panel, its spaces, and what each breaker feeds."""

from typing import Annotated, Any

from pydantic import Discriminator, Tag

from junctionary.records import words
from junctionary.records.places import At
from junctionary.records.reading import Record
from junctionary.records.runs import Evidence
from junctionary.records.values import (
    NONE,
    UNKNOWN,
    Count,
    Current,
    CurrentOrSaid,
    CurrentOrUnknown,
    Date,
    Edition,
    Id,
    IdOrUnknown,
    Length,
    OneOf,
    Parsed,
    Said,
    Shaped,
    Space,
    Stage,
    Temperature,
    Text,
    When,
    YesNoUnknown,
    refused,
    shown,
)  # fmt: skip

Feeds = Annotated[
    str | Said,
    Shaped(
        what="a circuit, or one conductor of a circuit",
        pattern=r"[A-Za-z0-9][A-Za-z0-9_-]*(?:\.[a-z-]+)?",
        example="kitchen-left or den.black",
        said=(UNKNOWN, NONE),
    ),
]


class BreakerRecord(Record):
    """What stands in one space (or the two of a two-pole breaker): a breaker or a fuse."""

    kind: Id | None = None
    rating: CurrentOrUnknown | None = None
    guards: list[Annotated[str, OneOf(choices=words.GUARDS, what="kind of protection")]] | None = None
    feeds: Feeds | None = None
    says: Text | None = None
    trips_at_once: Current | None = None
    lands: dict[str, Space] | None = None
    marked: dict[str, Text] | None = None
    kept_off: YesNoUnknown | None = None
    made: When | None = None
    installed: When | None = None
    evidence: Evidence | None = None
    note: Text | None = None


class FillerPlate(Record):
    """A space with no breaker: ``blank`` is a filler plate, ``unused`` a breaker that feeds nothing."""

    shorthand = "state"

    state: Annotated[str, OneOf(choices=("unused", "blank", "open"), what="state of a space")]


def _space_tag(value: Any) -> str:
    return "state" if isinstance(value, str) else "breaker"


InSpace = Annotated[
    Annotated[BreakerRecord, Tag("breaker")] | Annotated[FillerPlate, Tag("state")], Discriminator(_space_tag)
]


class Clear(Record):
    """The clear space in front of a panel."""

    width: Length | None = None
    depth: Length | None = None
    height: Length | None = None


def read_surge_type(value: object) -> int:
    """The type on the device's label: 1, 2 or 3; raises ``refused``."""
    if value in (1, 2, 3) and not isinstance(value, bool):
        return int(str(value))
    raise refused(shown(value), "the type on its label: 1, 2 or 3", "write type: 1, 2 or 3, or unknown")


class Surge(Record):
    """A surge protective device. ``connected``: ahead of the main, at the lugs, built in, or on a breaker."""

    type: Annotated[int | Said, Parsed(by=read_surge_type, described="1, 2 or 3", said=(UNKNOWN,))] | None = (
        None
    )
    connected: (
        Annotated[
            str | Said,
            Shaped(
                what="where it is connected",
                pattern=rf"{'|'.join(words.SURGE_AT)}|\d+[ab]?(?:\+\d+[ab]?)*",
                example="before-main, lugs, built-in, or the breaker's spaces 39+41",
                said=(UNKNOWN,),
            ),
        ]
        | None
    ) = None
    made: When | None = None
    installed: When | None = None
    evidence: Evidence | None = None
    note: Text | None = None


def _surge_tag(value: Any) -> str:
    return "said" if isinstance(value, str) else "surge"


SurgeOrSaid = Annotated[
    Annotated[Surge, Tag("surge")]
    | Annotated[
        Said, OneOf(what="answer", otherwise="{type: 2, connected: lugs}", said=(NONE, UNKNOWN)), Tag("said")
    ],
    Discriminator(_surge_tag),
]


MOST_SPACES = 200


def read_spaces(value: object) -> int:
    """How many spaces a panel has; raises ``refused``."""
    if isinstance(value, int) and not isinstance(value, bool) and 1 <= value <= MOST_SPACES:
        return value
    expected = f"how many spaces the panel has, from 1 to {MOST_SPACES}"
    raise refused(shown(value), expected, "count its spaces, empty ones too")


class PanelRecord(Record):
    """One panel. ``circuits`` is how many poles its label allows, where half-size breakers may stand."""

    panel: Id
    name: Text | None = None
    kind: Annotated[str, OneOf(choices=words.PANEL_KINDS, what="kind of panel")] = "breaker-panel"
    at: At | None = None
    rating: CurrentOrUnknown | None = None
    main: CurrentOrSaid | None = None
    spaces: Annotated[int, Parsed(by=read_spaces, described="a whole number")]
    circuits: Count | None = None
    fed_by: IdOrUnknown | None = None
    bonded: YesNoUnknown | None = None
    lugs: Temperature | None = None
    legs: dict[str, Annotated[str, OneOf(choices=("A", "B"), what="leg")]] | None = None
    clear: Clear | None = None
    breakers: dict[str, InSpace] = {}
    ties: list[list[Space]] = []
    interlocks: list[list[Space]] = []
    directory_dated: Date | None = None
    surge: SurgeOrSaid | None = None
    made: When | None = None
    installed: When | None = None
    built_to: Edition | None = None
    stage: Stage | None = None
    evidence: Evidence | None = None
    note: Text | None = None
