"""A magnitude with its unit, and the turning of one unit into another."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache, total_ordering
from pathlib import Path
from typing import Any

from junctionary.units.kinds import KINDS, UnitError
from junctionary.units.numerals import tidy

# Our tidy spelling where pint spells it otherwise.
_PINT_NAMES = {
    "ft2": "ft**2", "m2": "m**2", "in2": "inch**2", "cm2": "cm**2", "mm2": "mm**2",
    "in3": "inch**3", "cm3": "cm**3", "ft3": "ft**3", "m3": "m**3", "in": "inch",
    "in-lb": "inch*force_pound", "ft-lb": "foot*force_pound", "N m": "N*m",
    "C": "degC", "F": "degF",
}  # fmt: skip

# What a run asks for most, as pint gives it (a test holds each against it), so that few runs wake it.
_EVERYDAY = {
    ("ft", "in"): (Fraction(12), Fraction(0)),
    ("mm", "in"): (Fraction(5, 127), Fraction(0)),
    ("cm", "in"): (Fraction(50, 127), Fraction(0)),
    ("m", "in"): (Fraction(5000, 127), Fraction(0)),
    ("in", "ft"): (Fraction(1, 12), Fraction(0)),
    ("in", "mm"): (Fraction("25.4"), Fraction(0)),
    ("in", "m"): (Fraction("0.0254"), Fraction(0)),
    ("kA", "A"): (Fraction(1000), Fraction(0)),
    ("kW", "W"): (Fraction(1000), Fraction(0)),
    ("in-lb", "N m"): (Fraction("0.1129848290276167"), Fraction(0)),
    ("F", "C"): (Fraction(5, 9), Fraction(-160, 9)),
}

# Watts, volt-amperes and amperes differ by a power factor and a voltage, so
# no factor leads from one to another.
_POWER = {"W": "W", "kW": "W", "VA": "VA", "kVA": "VA"}


@lru_cache(maxsize=1)
def _registry() -> Any:
    import pint

    return pint.UnitRegistry(str(Path(__file__).with_name("definitions.txt")), non_int_type=Fraction)


@lru_cache(maxsize=256)
def _line(unit: str, to: str) -> tuple[Fraction, Fraction]:
    """Factor and offset from one tidy unit to another, both exact, worked out by pint."""
    if (unit, to) in _EVERYDAY:
        return _EVERYDAY[unit, to]
    known = _registry()
    pair = _PINT_NAMES.get(unit, unit), _PINT_NAMES.get(to, to)
    offset, at_one = (
        Fraction(known.Quantity(Fraction(each), pair[0]).to(pair[1]).magnitude) for each in (0, 1)
    )
    return at_one - offset, offset


@cache
def _family(unit: str) -> str:
    """What a unit can be turned into: the kind it belongs to, and for loads which sort."""
    if unit in _POWER:
        return _POWER[unit]
    for kind in KINDS.values():
        if unit in kind.units:
            return kind.measures
    raise UnitError(f"{unit} is no unit", "a unit such as in, A or W", "use a unit that KINDS lists")


def convert(magnitude: Fraction, unit: str, to: str) -> Fraction:
    """The magnitude, given in one tidy unit, in another; exact, temperatures with their offset.

    Raises UnitError where the two do not measure the same, as W and A, or
    where either is not a tidy unit of any kind.
    """
    if unit == to:
        return magnitude
    if _family(unit) != _family(to):
        if unit in KINDS["load"].units and to in KINDS["load"].units:
            raise UnitError(
                f"{unit} cannot be turned into {to}",
                f"{unit} or a multiple of it",
                "work it out from the voltage and the power factor",
            )
        raise UnitError(
            f"{unit} and {to} do not measure the same", f"a unit like {unit}", "ask for another unit"
        )
    factor, offset = _line(unit, to)
    return magnitude * factor + offset if offset else magnitude * factor


@total_ordering
@dataclass(frozen=True, slots=True, eq=False)
class Quantity:
    """An exact magnitude in a tidy unit, of one kind; ``text`` is how it was written.

    Equal and ordered by value within a kind, whatever the units: 42 in is
    3.5 ft. Quantities that cannot be turned into one another (1500 W and
    1500 VA) are unequal, and comparing their size is a TypeError.
    """

    magnitude: Fraction
    unit: str
    kind: str
    text: str = ""

    def to(self, unit: str) -> Fraction:
        """The magnitude in another unit of the kind; raises UnitError where there is no way."""
        if unit == self.unit:
            return self.magnitude
        return convert(self.magnitude, self.unit, KINDS[self.kind].tidy(unit) or unit)

    def _comparable(self, other: "Quantity") -> bool:
        return self.kind == other.kind and (
            self.unit == other.unit or _family(self.unit) == _family(other.unit)
        )

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Quantity):
            return NotImplemented
        return self._comparable(other) and self.magnitude == other.to(self.unit)

    def __lt__(self, other: object) -> bool:
        if not isinstance(other, Quantity) or not self._comparable(other):
            return NotImplemented
        return self.magnitude < other.to(self.unit)

    def __hash__(self) -> int:
        family = _family(self.unit)
        usual = next(unit for unit in KINDS[self.kind].units if _family(unit) == family)
        return hash((family, self.to(usual)))

    def __str__(self) -> str:
        return f"{tidy(self.magnitude, self.unit)} {self.unit}"
