"""How quantities are shown on a sheet: fixed digits, feet and inches, metric."""

from fractions import Fraction
from functools import cache

from junctionary.units.numerals import decimal, mixed
from junctionary.units.quantity import Quantity

INCHES_PER_FOOT = 12


def show(value: Quantity | Fraction | int, unit: str, digits: int) -> str:
    """A value with its unit and fixed digits, as "38.1 mm"; a bare number is already in the unit."""
    number = value.to(unit) if isinstance(value, Quantity) else value
    return f"{decimal(number, digits)} {unit}"


def feet_and_inches(length: Quantity) -> str:
    """A length as "3 ft 6 in"; sixteenths as fractions where they are exact, else hundredths."""
    return _feet_and_inches(length.to("in"))


@cache
def _feet_and_inches(inches: Fraction) -> str:
    exact = 16 % inches.denominator == 0
    if not exact:
        inches = Fraction(decimal(inches, 2))
    sign = "-" if inches < 0 else ""
    feet, rest = divmod(abs(inches), INCHES_PER_FOOT)
    small = f"{mixed(rest) if exact else decimal(rest, 2)} in"
    if not feet:
        return f"{sign}{small}"
    return f"{sign}{feet} ft {small}" if rest else f"{sign}{feet} ft"


def metric(length: Quantity) -> str:
    """A length as "27 mm" below a metre, "1.07 m" from there."""
    metres = length.to("m")
    if abs(metres) < 1:
        return show(length, "mm", 0)
    return show(length, "m", 2)


# Unit and digits for what is not a length, by kind and system.
_USUAL = {
    ("area", "imperial"): ("ft2", 0), ("area", "metric"): ("m2", 1),
    ("volume", "imperial"): ("in3", 1), ("volume", "metric"): ("cm3", 0),
    ("torque", "imperial"): ("in-lb", 1), ("torque", "metric"): ("N m", 1),
    ("temperature", "imperial"): ("F", 0), ("temperature", "metric"): ("C", 0),
}  # fmt: skip


def show_as(quantity: Quantity, system: str) -> str:
    """A quantity as a house shows it, ``system`` being "imperial" or "metric".

    One already in the system's usual unit keeps the digits it was written
    with; kinds that both systems share (amperes, watts) stay as they are.
    """
    if quantity.kind == "length":
        return feet_and_inches(quantity) if system == "imperial" else metric(quantity)
    if (quantity.kind, system) not in _USUAL:
        return str(quantity)
    unit, digits = _USUAL[quantity.kind, system]
    return str(quantity) if quantity.unit == unit else show(quantity, unit, digits)


def beside_its_own(figure: Quantity, system: str) -> str:
    """A figure as its source gives it, after the same in the units of a house that shows others.

    Six feet of a code is "6 ft" in an imperial house and "1.83 m (6 ft)" in a metric one.
    """
    told, shown = str(figure), show_as(figure, system)
    return told if system == "imperial" or shown == told else f"{shown} ({told})"
