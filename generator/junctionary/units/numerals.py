"""Exact numbers written out: fixed digits, carpenter's fractions, no float noise."""

from fractions import Fraction

_MOST_DIGITS = 6


def decimal(value: Fraction | int, digits: int) -> str:
    """A number with a fixed count of digits after the point, halves rounded away from zero.

    Nothing that rounds to zero keeps a minus sign.
    """
    top, parts = value.numerator, value.denominator
    rounded = (2 * abs(top) * 10**digits + parts) // (2 * parts)
    sign = "-" if top < 0 and rounded else ""
    figures = str(rounded).rjust(digits + 1, "0")
    return f"{sign}{figures[:-digits]}.{figures[-digits:]}" if digits else f"{sign}{figures}"


def mixed(value: Fraction) -> str:
    """A fraction in the carpenter's way: 1-1/4, 5/8, -2-1/2, 3."""
    sign = "-" if value < 0 else ""
    whole, part = divmod(abs(value), 1)
    if not part:
        return f"{sign}{whole}"
    return f"{sign}{whole}-{part}" if whole else f"{sign}{part}"


def tidy(value: Fraction, unit: str) -> str:
    """A number as a person would write it before its unit: 1-1/4 for inches, else 20.3.

    What no written number gives exactly, as a length converted from metres,
    is rounded to six digits after the point.
    """
    parts = value.denominator
    if (unit == "in" and 64 % parts == 0) or (unit in ("in", "ft") and parts in (3, 6, 12)):
        return mixed(value)
    digits = next((count for count in range(10) if 10**count % parts == 0), None)
    if digits is not None:
        return decimal(value, digits)
    return decimal(value, _MOST_DIGITS).rstrip("0").rstrip(".")
