"""devices/*.yaml: the kinds of device and connector in this house, each told once."""

import re
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from junctionary.formulas.connector import ListingError, read_combination
from junctionary.records import words
from junctionary.records.cables import Conductor, read_wire
from junctionary.records.reading import Record
from junctionary.records.values import (
    Count,
    Current,
    Id,
    Length,
    Load,
    OneOf,
    Parsed,
    Text,
    TorqueOrSaid,
    Voltage,
    Weight,
    When,
    refused,
    shown,
)  # fmt: skip
from junctionary.units import UnitError, WireSize, read_wire_size

ACCEPTS = re.compile(
    r"(?:(\d+(?:/0)?)(?:\s*(AWG|kcmil))? to )?(\d+(?:/0)?)\s*(AWG|kcmil)"
    r"((?:\s+(?:copper-clad|copper|aluminium|or|and|solid|stranded))*)"
)


@dataclass(frozen=True, slots=True)
class Accepts:
    """What sizes and metals a terminal or connector takes: ``14 to 10 AWG copper``."""

    text: str
    smallest: WireSize
    largest: WireSize
    metals: tuple[str, ...]

    def takes(self, size: WireSize, metal: str) -> bool:
        """Whether a conductor of this size and metal is within what it accepts."""
        return self.smallest <= size <= self.largest and (not self.metals or metal in self.metals)


def read_accepts(value: object) -> Accepts:
    """``14 to 10 AWG copper``, ``4 AWG to 250 kcmil copper or aluminium``; raises ``refused``."""
    match = ACCEPTS.fullmatch(value.strip()) if isinstance(value, str) else None
    if match is None:
        raise refused(
            shown(value),
            "sizes and metal such as 14 to 10 AWG copper",
            "write the smallest and largest size and the metal",
        )
    try:
        largest = read_wire_size(f"{match[3]} {match[4]}")
        smallest = read_wire_size(f"{match[1]} {match[2] or match[4]}") if match[1] else largest
    except UnitError as error:
        raise refused(error.found, error.expected, error.do) from None
    metals = tuple(each for each in match[5].split() if each in words.METALS)
    return Accepts(str(value), min(smallest, largest), max(smallest, largest), metals)


def read_ways(value: object) -> dict[str, tuple[str, ...]]:
    """``[loop]`` for every terminal, or ``{line: clamp-plate, green: loop}`` by the terminal's group."""
    way = OneOf(choices=words.WAYS_TO_LAND, what="way to land a conductor")

    def ways(each: object) -> tuple[str, ...]:
        return tuple(way.read(one) for one in each) if isinstance(each, list) else (way.read(each),)

    if isinstance(value, dict):
        return {str(group): ways(each) for group, each in value.items()}
    return {"": ways(value)}


def read_holds(value: object) -> str:
    """One combination that a connector is listed for, as written: ``2 to 4 x 14 AWG``."""
    try:
        read_combination(value if isinstance(value, str) else shown(value))
    except ListingError:
        raise refused(
            shown(value),
            "numbers and sizes such as 2 to 4 x 14 AWG or 1 x 12 AWG + 2 x 18 AWG",
            "write one combination as on the connector's box, the smaller number first",
        ) from None
    return str(value)


class DeviceKind(Record):
    """One kind of device: what it is, its face and rating, what its terminals take."""

    is_: Annotated[str, OneOf(choices=words.DEVICES, what="kind of device"), Field(alias="is")]
    name: Text | None = None
    face: Text | None = None
    rating: Current | None = None
    volts: Voltage | None = None
    outlets: Count | None = None
    gangs: Count | None = None
    ways: Count | None = None
    poles: Count | None = None
    lands: (
        Annotated[
            dict[str, tuple[str, ...]],
            Parsed(by=read_ways, described="a way to land, a list, or by terminal"),
        ]
        | None
    ) = None
    per_terminal: Count | None = None
    accepts: Annotated[Accepts, Parsed(by=read_accepts, described="14 to 10 AWG copper")] | None = None
    torque: TorqueOrSaid | None = None
    strip: Length | None = None
    marks: list[Annotated[str, OneOf(choices=words.MARKS, what="mark")]] | None = None
    guards: list[Annotated[str, OneOf(choices=words.GUARDS, what="kind of protection")]] | None = None
    draws: Load | None = None
    leads: list[Annotated[Conductor, Parsed(by=read_wire, described="18 AWG black")]] | None = None
    canopy: Text | None = None
    depth: Length | None = None
    weight: Weight | None = None
    interval: Text | None = None
    replace_by: When | None = None
    note: Text | None = None

    def ways_to_land(self, terminal: str) -> tuple[str, ...] | None:
        """How conductors may land on that terminal, or None when the kind does not say."""
        if self.lands is None:
            return None
        for group in (terminal, terminal.split("-")[0], ""):
            if group in self.lands:
                return self.lands[group]
        return None


class ConnectorKind(Record):
    """One kind of connector: what it is and what it may hold."""

    is_: Annotated[str, OneOf(choices=words.CONNECTORS, what="kind of connector"), Field(alias="is")]
    name: Text | None = None
    ports: Count | None = None
    accepts: Annotated[Accepts, Parsed(by=read_accepts, described="20 to 12 AWG copper")] | None = None
    holds: (
        list[Annotated[str, Parsed(by=read_holds, described="2 to 4 x 14 AWG, or parts joined by +")]] | None
    ) = None
    metals: list[Annotated[str, OneOf(choices=words.METALS, what="metal")]] | None = None
    note: Text | None = None


class BreakerKind(Record):
    """One kind of breaker: its listed torque and where it trips at once."""

    torque: TorqueOrSaid | None = None
    trips_at_once: Current | None = None
    interrupts: Current | None = None
    note: Text | None = None


class DevicesFile(Record):
    """One file under devices/."""

    devices: dict[Id, DeviceKind] = {}
    connectors: dict[Id, ConnectorKind] = {}
    breakers: dict[Id, BreakerKind] = {}
