"""Receptacles on a circuit: which ratings suit it, and what may be plugged in."""

from fractions import Fraction
from functools import cache

from junctionary.formulas.fit import Fit
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Worked, finished, lacking, step
from junctionary.sources import Citation, cite, cite_in, edition_year
from junctionary.tables import table

TEN_AMPERE_SINCE = 2023
LEAST_FOR_SEVERAL_A = 15
"""Above it a circuit with several outlets is of one of the table's ratings (210.18; until 2020, 210.3)."""


def allowed_ratings(circuit_a: Fraction) -> tuple[Fraction, ...]:
    """The receptacle ratings, in A, for a circuit with two or more; empty where the table has no row."""
    printed = table("receptacle-ratings")
    return printed.row(plain(circuit_a)).numbers("receptacles") if plain(circuit_a) in printed else ()


@cache
def receptacle_fit(circuit_a: Fraction, receptacle_a: Fraction, outlets: int | None, edition: str) -> Fit:
    """Whether a receptacle's rating suits its circuit, both in A.

    ``outlets`` counts the circuit's receptacles, a duplex as two; None where that
    is not recorded, which is only a gap if the answer hangs on it.
    """
    if circuit_a == 10 and edition_year(edition) >= TEN_AMPERE_SINCE:
        return Fit("not allowed", "no receptacles on a 10 A circuit", (cite_in(edition, "210.18"),))
    if outlets is not None:
        judge = _single if outlets == 1 else _one_of_several
        return judge(circuit_a, receptacle_a, edition)
    alone = _single(circuit_a, receptacle_a, edition)
    among = _one_of_several(circuit_a, receptacle_a, edition)
    if alone.fits is among.fits:
        return among
    allowed = f"alone on its circuit {alone.allowed}; one of several {among.allowed}"
    lacks = ("how many receptacles the circuit has", *among.lacks)
    return Fit("cannot tell", allowed, (*alone.cites, *among.cites), lacks)


def largest_cord_load(
    circuit_a: Fraction, receptacle_a: Fraction, outlets: int | None, edition: str
) -> Worked:
    """The largest single plugged load, in A, on a receptacle of that rating.

    ``outlets`` counts the circuit's receptacles, a duplex as two; one alone goes by the circuit's rating.
    """
    if outlets is None:
        return lacking(["how many receptacles the circuit has"], "A")
    if outlets == 1:
        if circuit_a not in (15, 20):
            return lacking([f"a rule for a plugged load on a {plain(circuit_a)} A circuit"], "A")
        clause = cite_in(edition, "210.23(B)(1)")
        part = step("80 % of the circuit", f"80 % × {plain(circuit_a)}", "A", clause)
        return finished(part.value, "A", [part])
    printed = table("cord-loads")
    key = (plain(circuit_a), plain(receptacle_a))
    load = printed.number(key, "load") if key in printed else None
    if load is None:
        return lacking([f"a table row for a {key[1]} A receptacle on a {key[0]} A circuit"], "A")
    what = f"one load in a {key[1]} A receptacle on a {key[0]} A circuit"
    part = step(what, plain(load), "A", printed.cite_for(edition))
    return finished(part.value, "A", [part], [cite("cfr-29-1910", "1910.304(b) Table S-4")])


def sets_cord_load(circuit_a: Fraction, receptacle_a: Fraction) -> bool:
    """Whether the table has a limit for a plugged load on a receptacle among several of such a circuit."""
    return (plain(circuit_a), plain(receptacle_a)) in table("cord-loads")


def _single(circuit_a: Fraction, receptacle_a: Fraction, edition: str) -> Fit:
    cites = (cite_in(edition, "210.21(B)(1)"), cite("cfr-29-1926", "1926.404(b)(2)(i)"))
    allowed = f"at least {plain(circuit_a)} A"
    return Fit("fits" if receptacle_a >= circuit_a else "too small", allowed, cites)


def _one_of_several(circuit_a: Fraction, receptacle_a: Fraction, edition: str) -> Fit:
    cites: tuple[Citation, ...] = (
        cite_in(edition, "210.21(B)(3)"),
        cite("cfr-29-1910", "1910.304(b) Table S-5"),
    )
    ratings = allowed_ratings(circuit_a)
    if not ratings and circuit_a > LEAST_FOR_SEVERAL_A:
        return Fit(
            "not allowed",
            f"one receptacle at the most on a {plain(circuit_a)} A circuit",
            (cite_in(edition, "210.18"),),
        )
    if not ratings:
        lack = f"a receptacle rating for a {plain(circuit_a)} A circuit: the table has none"
        return Fit("cannot tell", "nothing the table names", cites, (lack,))
    allowed = " or ".join(plain(each) for each in ratings) + " A"
    if receptacle_a in ratings:
        return Fit("fits", allowed, cites)
    return Fit("too small" if receptacle_a < ratings[0] else "too large", allowed, cites)
