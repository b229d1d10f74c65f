"""circuits/*.yaml: one circuit, its runs and its loads. Its breaker is told once, in the panel."""

from typing import Annotated

from pydantic import Field

from junctionary.records import words
from junctionary.records.reading import Record
from junctionary.records.runs import Evidence, RunRecord
from junctionary.records.values import (
    Edition,
    Id,
    Load,
    OneOf,
    Reference,
    Stage,
    Text,
    Voltage,
    When,
    YesNoUnknown,
)  # fmt: skip


class LoadRecord(Record):
    """One load: what it is, what it draws, and where it is plugged or wired."""

    id: Id
    is_: Annotated[str, OneOf(choices=words.LOADS, what="kind of load"), Field(alias="is")]
    name: Text | None = None
    draws: Load | None = None
    volts: Voltage | None = None
    plugged: Reference | None = None
    wired: Reference | None = None
    fastened: YesNoUnknown | None = None
    continuous: YesNoUnknown | None = None
    motor: YesNoUnknown | None = None
    inverter: YesNoUnknown | None = None
    instead_of: Id | None = None
    part_of: Id | None = None
    matters: Annotated[str, OneOf(choices=words.MATTERS, what="reason that a load matters")] | None = None
    made: When | None = None
    installed: When | None = None
    evidence: Evidence | None = None
    note: Text | None = None

    @property
    def called(self) -> str:
        """Its name, or what it is: ``heat pump``."""
        return self.name or self.is_.replace("-", " ")


class CircuitRecord(Record):
    """One circuit. ``grouped`` of a multiwire one: its hots and neutral are tied together in the panel."""

    circuit: Id
    name: Text
    purpose: Annotated[str, OneOf(choices=words.PURPOSES, what="purpose")] | None = None
    serves: list[Id] | None = None
    guarded_by: Reference | None = None
    grouped: YesNoUnknown | None = None
    runs: list[RunRecord] = []
    loads: list[LoadRecord] = []
    built_to: Edition | None = None
    stage: Stage | None = None
    evidence: Evidence | None = None
    note: Text | None = None
