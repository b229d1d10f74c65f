"""boxes/*.yaml: the boxes of one room: where each is, its volume, its devices, its make-up."""

from typing import Annotated

from pydantic import BeforeValidator, Discriminator, Field, Tag

from junctionary.records import words
from junctionary.records.cables import Conductor, read_wire
from junctionary.records.house import UsualTorque
from junctionary.records.places import At
from junctionary.records.reading import Record, word_or_map
from junctionary.records.runs import Evidence
from junctionary.records.values import (
    NONE,
    UNKNOWN,
    Count,
    Date,
    Edition,
    Id,
    Length,
    OneOf,
    Parsed,
    Reference,
    Said,
    Shaped,
    Size,
    Stage,
    Text,
    TorqueOrSaid,
    Volume,
    VolumeOrUnknown,
    WayToLand,
    When,
    YesNoUnknown,
    refused,
    shown,
)  # fmt: skip

Colour = Annotated[str, OneOf(choices=words.COLOURS, what="colour")]


Split = Annotated[str, OneOf(choices=words.SPLITS, what="removed tab")]


def read_references(value: object) -> tuple[str, ...]:
    """One id, or a list of ids: runs, conductors, terminals."""
    values = value if isinstance(value, list) else [value]
    read = Shaped(
        what="an id, or parts joined by dots", pattern=r"[A-Za-z0-9][\w-]*(?:\.[\w-]+)*", example="a1.black"
    ).read
    return tuple(read(each) for each in values)


References = Annotated[tuple[str, ...], Parsed(by=read_references, described="an id or a list of ids")]


class ThreeWay(Record):
    """How a 3-way switch is landed: its common, and where its travelers go."""

    common: Reference
    travelers: References


class FourWay(Record):
    """How a 4-way switch is landed: the travelers in and out."""

    in_: Annotated[References, Field(alias="in")]
    out: References


class MakeupEntry(Record):
    """The make-up of one circuit in one box, in few words."""

    shorthand = "word"

    word: Annotated[str, OneOf(choices=words.MAKEUP_WORDS, what="word of make-up")] | None = None
    feed: Reference | None = None
    onward: References = ()
    guarded: References = ()
    through: Id | None = None
    takes: Colour | None = None
    switched: dict[Id, References] = {}
    loop: Id | None = None
    three_way: dict[Id, ThreeWay] = {}
    four_way: dict[Id, FourWay] = {}
    devices: list[Id] | None = None


Material = Annotated[str, OneOf(choices=words.BOX_MATERIALS, what="material of a box")]


class Addition(Record):
    """What adds volume to a box: a ring, an extension, a domed cover.

    ``standard`` is the trade size of a metal extension ring without a mark.
    """

    what: Text
    volume: Volume | None = None
    standard: Text | None = None


class Barrier(Record):
    """A barrier that divides a box: what it is of, and its marked volume."""

    shorthand = "of"

    of: Material | None = None
    volume: Volume | None = None


class BoxSize(Record):
    """What encloses the joints: its gangs, material and volume."""

    gangs: Count | None = None
    shape: Annotated[str, OneOf(choices=words.BOX_SHAPES, what="shape of a box")] | None = None
    of: Material | None = None
    volume: VolumeOrUnknown | None = None
    standard: Text | None = None
    clamps: (
        Annotated[str | Said, OneOf(choices=words.CLAMPS, what="place of clamps", said=(UNKNOWN,))] | None
    ) = None
    adds: list[Addition] = []
    barriers: list[Barrier] = []
    studs: (
        Annotated[
            int | Said,
            Parsed(by=lambda value: read_studs(value), described="none or a number", said=(UNKNOWN,)),
        ]
        | None
    ) = None
    depth: Length | None = None
    rated_for_fan: YesNoUnknown | None = None

    @property
    def is_metal(self) -> bool | None:
        """By what it is of; a standard trade size is that of a metal box. None where neither is told."""
        if self.of is not None:
            return self.of in words.METAL_BOXES
        return True if self.standard is not None else None


def read_studs(value: object) -> int:
    """How many fixture studs or hickeys stand in the box: ``none`` or a number."""
    if value == "none":
        return 0
    if isinstance(value, int) and not isinstance(value, bool) and value >= 0:
        return value
    raise refused(shown(value), "none, or how many fixture studs", "write studs: none, or studs: 1")


Connection = Annotated[
    str | Said,
    Shaped(what="a connector", pattern=r"[A-Za-z0-9][\w-]*", example="lever-3", said=(UNKNOWN, NONE)),
]


class JointRecord(Record):
    """Conductors joined together, and by which connector."""

    join: Annotated[
        tuple[str, ...], Parsed(by=read_references, described="a list of conductors, leads and terminals")
    ]
    by: Connection | None = None
    pigtail: Annotated[Conductor, Parsed(by=read_wire, described="12 AWG copper")] | None = None
    note: Text | None = None


class TerminalRecord(Record):
    """What is landed on one terminal, and how.

    Without ``wire`` it says only how the wire is landed that a word or a
    joint's pigtail brings there.
    """

    shorthand = "wire"

    wire: References | None = None
    how: WayToLand | None = None
    turn: (
        Annotated[
            str, OneOf(choices=("clockwise", "counter-clockwise", "none", "unknown"), what="turn of a loop")
        ]
        | None
    ) = None
    bare: Length | None = None
    torque: TorqueOrSaid | None = None
    note: Text | None = None


class Passing(Record):
    """A run that passes through a box without being cut."""

    shorthand = "run"

    run: Id
    loop: Length | None = None


class Reach(Record):
    """How a box is reached: through a hatch, past something movable, or behind a surface to be broken."""

    through: Text | None = None
    hidden_by: Text | None = None
    behind: Text | None = None


class LookedAt(Record):
    """What was looked at before the box was closed, and how it was found."""

    sheath: Text | None = None
    insulation: Text | None = None
    copper: Text | None = None
    strip: Text | None = None
    loops: Text | None = None


ReachOrNone = Annotated[
    Annotated[
        Said, OneOf(what="way to reach a box", said=(NONE, UNKNOWN), otherwise="a mapping"), Tag("word")
    ]
    | Annotated[Reach, Tag("map")],
    Discriminator(word_or_map),
]


SizeOrNone = Annotated[
    Annotated[Said, OneOf(what="size of a box", said=(NONE, UNKNOWN), otherwise="a mapping"), Tag("word")]
    | Annotated[BoxSize, Tag("map")],
    Discriminator(word_or_map),
]


class Workmanship(Record):
    """What a box, or a file's defaults, may say of how the work was done."""

    termination: WayToLand | None = None
    torque: UsualTorque | None = None
    splice: list[Id] | None = None
    free_conductor: Length | None = None
    looked_at: LookedAt | None = None
    evidence: Evidence | None = None
    stage: Stage | None = None
    built_to: Edition | None = None


class BoxRecord(Workmanship):
    """One box."""

    name: Text | None = None
    at: At | None = None
    size: SizeOrNone | None = None
    devices: dict[Id, Id] = {}
    makeup: (
        Annotated[
            list[MakeupEntry], BeforeValidator(lambda value: value if isinstance(value, list) else [value])
        ]
        | None
    ) = None
    joints: list[JointRecord] = []
    terminals: dict[Reference, TerminalRecord] = {}
    jumpers: dict[Id, Annotated[Conductor, Parsed(by=read_wire, described="12 AWG bare")]] = {}
    marked: dict[Reference, Colour] = {}
    split: dict[Id, Split] = {}
    yoke: Annotated[tuple[tuple[str, ...], ...], Parsed(by=lambda value: read_yokes(value))] = ()
    passes: list[Passing] = []
    terminal_blocks: list[Size] = []
    capped: References = ()
    loose: References = ()
    cover: Annotated[str | Said, OneOf(choices=words.COVERS, what="cover", said=(UNKNOWN,))] | None = None
    reach: ReachOrNone | None = None
    labels: dict[Id, list[Annotated[str, OneOf(choices=words.LABELS, what="label")]]] = {}
    guarded_by: dict[Id, Reference] = {}
    replace_by: dict[Id, When] = {}
    exposed: Annotated[str, OneOf(choices=("dry", "damp", "wet"), what="exposure")] | None = None
    set_back: Length | None = None
    surface: Annotated[str, OneOf(choices=words.SURFACES, what="surface of a wall")] | None = None
    depth: Length | None = None
    seen: Date | None = None
    note: Text | None = None


def read_yokes(value: object) -> tuple[tuple[str, ...], ...]:
    """Devices that share one strap: ``[s1, s2]``, or a list of such lists."""
    if isinstance(value, list) and value and all(isinstance(each, list) for each in value):
        return tuple(read_references(each) for each in value)
    return (read_references(value),)


class BoxesFile(Record):
    """One file under boxes/: the boxes of one room."""

    room: Id
    defaults: Workmanship | None = None
    boxes: dict[Id, BoxRecord] = {}
