"""Wire sizes by the American gauge, and by area above it.

Source: ASTM B258, which defines the gauge as a geometric progression from
36 AWG (0.005 in) to 4/0 AWG (0.460 in) in 39 steps.
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, total_ordering
from math import pi, sqrt

from junctionary.units.kinds import UnitError
from junctionary.units.quantity import convert
from junctionary.units.reading import kind_of

_EXPECTED = "a wire size such as 14 AWG, 4/0 AWG or 250 kcmil"
_AWG = re.compile(r"([1-4]/0|[0-9]{1,2}) ?AWG", re.IGNORECASE)
_KCMIL = re.compile(r"([1-9][0-9]{1,3}) ?(?:kcmil|MCM)", re.IGNORECASE)
_BARE = re.compile(r"#? ?([1-4]/0|[0-9]{1,2})(?: ?(?:ga|gauge|awg))?\.?", re.IGNORECASE)
_THINNEST = 40

_AUGHTS = {"0": "1/0", "00": "2/0"}
"""Sizes that are also written with as many noughts."""


@total_ordering
@dataclass(frozen=True, slots=True)
class WireSize:
    """One wire size by its tidy name: "14 AWG", "4/0 AWG", "250 kcmil"; ordered by area.

    Raises UnitError for a name that ``read_wire_size`` would not have given.
    """

    name: str

    def __post_init__(self) -> None:
        if _tidy(self.name) != self.name:
            raise UnitError(f"{_said(self.name)} is no wire size", _EXPECTED, "name a size of the gauge")

    @property
    def circular_mils(self) -> float:
        """Area of the metal in circular mils: the square of the diameter in thousandths of an inch."""
        return _circular_mils(self.name)

    @property
    def diameter_mm(self) -> float:
        """Diameter in millimetres of a solid wire of this area."""
        return sqrt(self.circular_mils) * float(convert(Fraction(1, 1000), "in", "mm"))

    @property
    def area_mm2(self) -> float:
        """Area of the metal in square millimetres."""
        return pi / 4 * self.diameter_mm**2

    def __lt__(self, other: object) -> bool:
        if not isinstance(other, WireSize):
            return NotImplemented
        return self.circular_mils < other.circular_mils

    def __str__(self) -> str:
        return self.name


@cache
def _circular_mils(name: str) -> float:
    size, unit = name.split()
    if unit == "kcmil":
        return 1000.0 * int(size)
    return float((5 * 92 ** ((36 - _step(size)) / 39)) ** 2)


def _step(size: str) -> int:
    """The gauge number in the formula, where 1/0 to 4/0 are 0 to -3."""
    return 1 - int(size[0]) if size.endswith("/0") else int(size)


@cache
def _tidy(text: str) -> str | None:
    """The tidy name of a size as written, or None where there is no such size."""
    if found := _AWG.fullmatch(text):
        size = _AUGHTS.get(found[1]) or (found[1] if "/" in found[1] else str(int(found[1])))
        return f"{size} AWG" if "/" in size or int(size) <= _THINNEST else None
    if found := _KCMIL.fullmatch(text):
        return f"{found[1]} kcmil" if 212 <= int(found[1]) <= 2000 else None
    return None


def _said(value: object) -> str:
    words = " ".join(str(value).split())
    return words if len(words) <= 40 else f"{words[:37]}..."


def read_wire_size(text: object) -> WireSize:
    """The wire size written as "14 AWG", "14AWG", "1/0 AWG", "250 kcmil" or "250 MCM".

    Raises UnitError, in plain words, for anything else.
    """
    words = " ".join(text.split()) if isinstance(text, str) else text
    name = _tidy(words) if isinstance(words, str) else None
    if name:
        return WireSize(name)
    said = _said(words)
    if not isinstance(words, str | int) or isinstance(words, bool):
        raise UnitError(f"{said} is no wire size", _EXPECTED, "write the size with AWG or kcmil")
    if (found := _BARE.fullmatch(said)) and (mended := _tidy(f"{found[1]} AWG")):
        raise UnitError(f"{said} does not say which gauge", _EXPECTED, f"write {mended}")
    if _AWG.fullmatch(said) or _KCMIL.fullmatch(said):
        raise UnitError(
            f"there is no size {said}", _EXPECTED, "the gauge ends at 4/0 AWG; kcmil goes from 212 to 2000"
        )
    if kind := kind_of(said):
        raise UnitError(
            f"{said} is {kind.called}; a wire size is due here", _EXPECTED, "write the size with AWG or kcmil"
        )
    raise UnitError(f"{said} is no wire size", _EXPECTED, "write the size with AWG or kcmil")
