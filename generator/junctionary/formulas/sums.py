"""Sums as text: what a page shows is what was worked out, and can be worked out again."""

import re
from collections.abc import Callable
from decimal import Decimal, localcontext
from fractions import Fraction
from functools import cache
from math import ceil, floor, isqrt

from junctionary.units import decimal

_TOKEN = re.compile(r"\s*(?:(\d+(?:\.\d+)?)|([a-z]+)|([-+−×*/%(),]))")

_FUNCTIONS: dict[str, Callable[[list[Fraction]], Fraction]] = {
    "min": min,
    "max": max,
    "floor": lambda values: Fraction(floor(_only(values))),
    "ceil": lambda values: Fraction(ceil(_only(values))),
    "sqrt": lambda values: square_root(_only(values)),
}


class SumError(ValueError):
    """A text that is not a sum this project writes."""


@cache
def evaluate(text: str) -> Fraction:
    """The exact value of a sum such as ``4 × 2.25 + 70 % × 30``; raises SumError.

    Knows ``+ − × / %``, brackets, ``min max floor ceil sqrt``. Nothing else runs.
    """
    tokens = _tokens(text)
    value, rest = _sum(tokens, text)
    if rest:
        raise SumError(f"{text!r}: {rest[0]!r} is out of place")
    return value


def exact(value: Fraction, places: int = 2) -> str:
    """A number as shown in a sum: at least ``places`` digits, more where it needs them to be exact.

    What no decimal fraction holds is shown as a quotient in brackets, so no sum rounds unseen.
    """
    parts = value.denominator
    for digits in range(places, 13):
        if 10**digits % parts == 0:
            return decimal(value, digits).replace("-", "−")
    return f"({value.numerator} / {parts})".replace("-", "−")


def plain(value: Fraction) -> str:
    """A number exactly, with no digits it does not need: ``20``, ``2.25``."""
    return exact(value, 0)


def square_root(value: Fraction) -> Fraction:
    """The root, exact where there is an exact one, else to 30 digits; raises SumError below zero."""
    if value < 0:
        raise SumError("no square root of a negative number")
    top, bottom = isqrt(value.numerator), isqrt(value.denominator)
    if top * top == value.numerator and bottom * bottom == value.denominator:
        return Fraction(top, bottom)
    with localcontext() as context:
        context.prec = 30
        return Fraction((Decimal(value.numerator) / Decimal(value.denominator)).sqrt())


def _tokens(text: str) -> list[str]:
    found, at = [], 0
    end = len(text.rstrip())
    while at < end:
        match = _TOKEN.match(text, at)
        if match is None:
            raise SumError(f"{text!r}: cannot read {text[at:].strip()!r}")
        found.append(match[match.lastindex or 0])
        at = match.end()
    return found


def _sum(tokens: list[str], text: str) -> tuple[Fraction, list[str]]:
    value, rest = _product(tokens, text)
    while rest and rest[0] in "+-−":
        right, after = _product(rest[1:], text)
        value, rest = (value + right if rest[0] == "+" else value - right), after
    return value, rest


def _product(tokens: list[str], text: str) -> tuple[Fraction, list[str]]:
    value, rest = _factor(tokens, text)
    while rest and rest[0] in "×*/":
        right, after = _factor(rest[1:], text)
        if rest[0] == "/" and right == 0:
            raise SumError(f"{text!r}: divides by zero")
        value, rest = (value / right if rest[0] == "/" else value * right), after
    return value, rest


def _factor(tokens: list[str], text: str) -> tuple[Fraction, list[str]]:
    if not tokens:
        raise SumError(f"{text!r} ends too soon")
    first, rest = tokens[0], tokens[1:]
    if first in "-−":
        value, rest = _factor(rest, text)
        value = -value
    elif first == "(":
        value, rest = _sum(rest, text)
        rest = _closed(rest, text)
    elif first in _FUNCTIONS:
        value, rest = _called(first, rest, text)
    elif first[0].isdigit():
        value = _number(first)
    else:
        raise SumError(f"{text!r}: {first!r} is out of place")
    while rest and rest[0] == "%":
        value, rest = value / 100, rest[1:]
    return value, rest


@cache
def _number(printed: str) -> Fraction:
    return Fraction(printed)


def _called(name: str, tokens: list[str], text: str) -> tuple[Fraction, list[str]]:
    if tokens[:1] != ["("]:
        raise SumError(f"{text!r}: {name} wants a bracket")
    value, rest = _sum(tokens[1:], text)
    values = [value]
    while rest[:1] == [","]:
        value, rest = _sum(rest[1:], text)
        values.append(value)
    return _FUNCTIONS[name](values), _closed(rest, text)


def _closed(tokens: list[str], text: str) -> list[str]:
    if tokens[:1] != [")"]:
        raise SumError(f"{text!r}: a bracket is not closed")
    return tokens[1:]


def _only(values: list[Fraction]) -> Fraction:
    if len(values) != 1:
        raise SumError("floor, ceil and sqrt take one value")
    return values[0]
