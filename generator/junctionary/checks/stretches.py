"""Stretches of wall in words, for the checks that measure a room."""

from fractions import Fraction

from junctionary.figures import Reached
from junctionary.house.model import House
from junctionary.units import Quantity, show_as


def stretches_words(house: House, reached: Reached) -> str:
    """``north wall from 3 ft to 7 ft 2 in``, each stretch from the wall's left end as it is faced."""
    return "; ".join(
        f"{each.wall} wall from {_said(house, each.from_in)} to {_said(house, each.to_in)}"
        for each in reached.far
    )


def _said(house: House, length_in: Fraction) -> str:
    # To the nearest eighth of an inch: a rule is read no finer.
    return show_as(Quantity(Fraction(round(length_in * 8), 8), "in", "length"), house.record.shows)
