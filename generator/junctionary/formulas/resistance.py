"""Resistance of a conductor by its size, its metal and how it is made."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from junctionary.formulas.worked import Step, step
from junctionary.tables import table
from junctionary.units import WireSize

SOLID_TO = WireSize("10 AWG")
"""Wire is taken as solid up to here and as stranded above: what building cable is made of (practice)."""


@dataclass(frozen=True, slots=True)
class Wire:
    """One conductor: its size and metal."""

    size: WireSize
    metal: str

    @property
    def made(self) -> str:
        """``solid`` or ``stranded``, by its size."""
        return "solid" if self.size <= SOLID_TO else "stranded"

    def __str__(self) -> str:
        return f"{self.size} {self.metal}"


@cache
def resistance(wire: Wire, edition: str) -> Step | None:
    """Direct-current resistance at 75 °C in ohm per 1000 ft; None where the table prints none."""
    column = f"{wire.metal} {wire.made}"
    return _printed("conductor-resistance", wire, column, f"{wire}, {wire.made}", edition)


def alternating_resistance(wire: Wire, edition: str) -> Step | None:
    """Alternating-current resistance at 60 Hz in PVC conduit, in ohm per 1000 ft; None likewise."""
    return _printed("alternating-resistance", wire, wire.metal, f"{wire}, in PVC conduit", edition)


def drop_constant(metal: str, made: str) -> Fraction | None:
    """K of the circular-mil form, in ohm circular mil per foot; None where there is none."""
    printed = table("drop-constant")
    return printed.number((metal, made), "k") if (metal, made) in printed else None


def circular_mils(size: WireSize) -> Fraction | None:
    """A conductor's area in circular mils as tabulated; None where the table prints none."""
    printed = table("conductor-area")
    return printed.number(size.name, "area") if size.name in printed else None


def _printed(name: str, wire: Wire, column: str, what: str, edition: str) -> Step | None:
    printed = table(name, edition)
    if wire.size.name not in printed or column not in printed.columns:
        return None
    row = printed.row(wire.size.name)
    if row.number(column) is None:
        return None
    return step(f"{what}, ohm per 1000 ft", row.text(column), "ohm/kft", printed.cite_for(edition))
