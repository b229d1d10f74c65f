"""E-604: what the service and every feeder must carry, step by step, and what is on each leg."""

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar, Literal

from junctionary.sheets.entries import Fact, FindingEntry, MissingEntry, Table, Working
from junctionary.sheets.links import Phrase
from junctionary.sheets.titleblock import Sheet

Stands = Literal["fits", "too large", "cannot tell"]


@dataclass(frozen=True, slots=True)
class Calculation:
    """One load by one method: its sum, and how it stands to what it is held against.

    ``answer`` is the result in words, such as ``42977 VA, 179 A``; ``against`` what it may be.
    ``amps`` is what is certain of it and ``limit_a`` what it may be, both in A; ``complete`` is
    False where a load may be missing.
    """

    heading: str
    answer: str
    against: str
    stands: Stands
    amps: Fraction
    limit_a: Fraction | None
    complete: bool
    working: Working


@dataclass(frozen=True, slots=True)
class FeederEntry:
    """One feeder: where it runs, its breaker and conductors, and the load through it."""

    heading: Phrase
    facts: tuple[Fact, ...]
    load: Calculation


@dataclass(frozen=True, slots=True)
class LegLoad:
    """What one circuit, or one load of it, puts on a leg, in VA at 120 V.

    ``circuit`` is empty where ``what`` is the circuit itself; ``figure`` is ``va`` as it is printed.
    """

    what: Phrase
    circuit: Phrase
    va: Fraction
    figure: str


@dataclass(frozen=True, slots=True)
class LegBar:
    """One leg: its loads in the order of the circuits, their sum, and the limit the service sets.

    All are in VA, at ``volts`` from the leg to the neutral.
    ``says`` is the sum in words, with what it is in A. ``limit_va`` is None where the service's
    rating is not recorded. ``motor_va``, printed as ``motor``, is what the largest motor adds, and
    is in the sum. ``complete`` is False where a load may be missing.
    """

    leg: str
    says: str
    loads: tuple[LegLoad, ...]
    motor_va: Fraction
    motor: str
    va: Fraction
    limit_va: Fraction | None
    volts: int
    complete: bool

    @property
    def amps(self) -> Fraction:
        """Its sum in A."""
        return self.va / self.volts

    @property
    def limit_a(self) -> Fraction | None:
        """The service's rating in A; None where it is not recorded."""
        return None if self.limit_va is None else self.limit_va / self.volts


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadsSheet(Sheet):
    """The load calculation of the house.

    ``verdict`` says in words whether the service is large enough; ``counted`` are the loads that
    went in, each with its place in the record; ``taken`` is what was taken for granted.
    """

    facts: tuple[Fact, ...]
    verdict: str
    methods: tuple[Calculation, ...]
    neutral: Working
    conductors: tuple[Working, ...]
    feeders: tuple[FeederEntry, ...]
    legs: tuple[LegBar, ...]
    unbalance: str
    counted: Table
    taken: tuple[str, ...]
    findings: tuple[FindingEntry, ...] = ()
    missing: tuple[MissingEntry, ...] = ()
    section: ClassVar[str] = "loads"
