"""house.yaml: the house itself, its sources, its levels, and how work is usually done in it."""

import re
from fractions import Fraction
from typing import Annotated

from pydantic import Field

from junctionary.records import words
from junctionary.records.cables import Conductor, read_wire
from junctionary.records.permits import Permit
from junctionary.records.reading import Record
from junctionary.records.runs import RunRecord, Supported
from junctionary.records.values import (
    NONE,
    UNKNOWN,
    Angle,
    Area,
    Count,
    Current,
    Date,
    Edition,
    Height,
    Id,
    IdOrUnknown,
    Length,
    Metal,
    Of,
    OneOf,
    Parsed,
    Rating,
    Reference,
    Said,
    Shaped,
    Size,
    Text,
    WayToLand,
    When,
    YesNoUnknown,
    refused,
    shown,
)  # fmt: skip
from junctionary.units import Quantity


def read_usual_torque(value: object) -> Quantity | Said | str:
    """``listed`` (all were tightened to the listed value), a torque, ``none`` or ``unknown``."""
    if value == "listed":
        return "listed"
    torque: Quantity | Said = Of(kind="torque", above_zero=True, said=(UNKNOWN, NONE)).answer_or_value(value)
    return torque


UsualTorque = Annotated[
    Quantity | Said | str, Parsed(by=read_usual_torque, described="listed, a torque, none or unknown")
]


class Practice(Record):
    """How work is done here unless something nearer says otherwise."""

    termination: WayToLand | None = None
    torque: UsualTorque | None = None
    splice: list[Id] | None = None
    free_conductor: Length | None = None
    supported: Supported | None = None
    from_edge: Length | None = None
    set_back: Length | None = None


class Level(Record):
    """One storey: its floor's height in the house's frame."""

    id: Id
    name: Text
    floor: Height | None = None


class Electrode(Record):
    """One grounding electrode and the wire to it: ``rod``, or ``{is: rod, wire: 6 AWG copper}``."""

    shorthand = "is"

    is_: Annotated[str, OneOf(choices=words.ELECTRODES, what="kind of electrode"), Field(alias="is")]
    wire: (
        Annotated[
            Conductor | Said, Parsed(by=read_wire, described="a wire such as 6 AWG copper", said=(UNKNOWN,))
        ]
        | None
    ) = None
    note: Text | None = None


class Building(Record):
    """One building of the property."""

    id: Id
    name: Text | None = None
    detached: YesNoUnknown | None = None
    electrodes: list[Electrode] | None = None
    metal_path: (
        Annotated[
            str | Said, Shaped(what="what joins the buildings", example="water pipe", said=(NONE, UNKNOWN))
        ]
        | None
    ) = None


class ServiceConductors(Record):
    """The service conductors."""

    size: Size
    metal: Metal | None = None


def read_percent(value: object) -> Fraction:
    """``1.8 %``; raises ``refused``."""
    match = re.fullmatch(r"(\d{1,2}(?:\.\d+)?) ?%", value.strip()) if isinstance(value, str) else None
    if match is None or not Fraction(match[1]):
        raise refused(shown(value), "a part such as 1.8 %", "write the number with its per cent sign")
    return Fraction(match[1])


class Transformer(Record):
    """The utility's transformer: its rating and its impedance, as on its plate."""

    rating: Rating
    impedance: Annotated[Fraction, Parsed(by=read_percent, described="1.8 %")]


class ServiceDrop(Record):
    """The conductors from the transformer to the service."""

    size: Size
    metal: Metal | None = None
    length: Length


class FaultLevel(Record):
    """The fault current available, line to neutral, at a panel."""

    line_to_neutral: Current
    at: Id


class Service(Record):
    """The utility's supply."""

    system: Annotated[str, OneOf(choices=("120/240 V", "120/208 V", "120 V"), what="system")] | None = None
    rating: Current | None = None
    conductors: ServiceConductors | None = None
    fault_level: FaultLevel | None = None
    transformer: Transformer | None = None
    drop: ServiceDrop | None = None
    disconnect: Id | None = None
    electrodes: list[Electrode] | None = None


class Source(Record):
    """A second source of supply: where it enters and what it does without the utility."""

    id: Id
    is_: Annotated[str, OneOf(choices=words.SOURCES, what="kind of source"), Field(alias="is")]
    name: Text | None = None
    at: Id | None = None
    rating: Current | None = None
    enters: Reference | None = None
    without_utility: Annotated[str, OneOf(choices=words.WITHOUT_UTILITY, what="answer")] | None = None
    shut_off: Reference | None = None
    charges_from: IdOrUnknown | None = None
    made: When | None = None
    installed: When | None = None
    runs: list[RunRecord] = []
    note: Text | None = None


class ShutOff(Record):
    """Where something is shut off."""

    what: Text
    where: Text
    note: Text | None = None


class HouseRecord(Record):
    """house.yaml."""

    house: Text
    built: Count | None = None
    recorded: Date | None = None
    reference: Edition
    shows: Annotated[str, OneOf(choices=("imperial", "metric"), what="way to show lengths")] = "imperial"
    north: Angle | None = None
    floor_area: Area | None = None
    levels: list[Level] = []
    buildings: list[Building] = []
    service: Service | None = None
    sources: list[Source] = []
    shut_off: list[ShutOff] = []
    practice: Practice | None = None
    permits: list[Permit] | None = None
    note: Text | None = None
