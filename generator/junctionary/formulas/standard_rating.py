"""Standard ratings of overcurrent devices, by edition."""

from fractions import Fraction
from functools import cache

from junctionary.sources import edition_year
from junctionary.tables import table


@cache
def breaker_ratings(edition: str) -> tuple[Fraction, ...]:
    """The standard ratings of inverse-time breakers in A, rising; 10 A from 2023 (240.6(A))."""
    year = edition_year(edition)
    return tuple(
        Fraction(each.text("rating"))
        for each in table("standard-ratings")
        if _in_force(each.text("breakers"), year)
    )


@cache
def fuse_ratings() -> tuple[Fraction, ...]:
    """The standard ratings of fuses in A, rising (240.6(A))."""
    return tuple(Fraction(each.text("rating")) for each in table("standard-ratings"))


def rating_at_or_above(amps: Fraction, edition: str) -> Fraction | None:
    """The smallest standard breaker rating that reaches ``amps``; None above the largest."""
    return next((each for each in breaker_ratings(edition) if each >= amps), None)


def rating_at_or_below(amps: Fraction, edition: str) -> Fraction | None:
    """The largest standard breaker rating within ``amps``; None below the smallest."""
    return next((each for each in reversed(breaker_ratings(edition)) if each <= amps), None)


def _in_force(breakers: str, year: int) -> bool:
    return breakers == "always" or (breakers != "never" and int(breakers) <= year)
