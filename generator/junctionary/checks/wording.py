"""How messages write amperes and begin a sentence."""

from fractions import Fraction

from junctionary.units import decimal


def amps(value: Fraction) -> str:
    """Amperes with a decimal where they need one: ``12.5 A``, ``40 A``; two below one ampere."""
    if value.denominator == 1:
        return f"{value.numerator} A"
    return f"{decimal(value, 1 if value >= 1 else 2)} A"


def headed(text: str) -> str:
    """A text that begins with a capital; the rest of it is left as it is."""
    return text[:1].upper() + text[1:]
