from fractions import Fraction

import pytest

from junctionary.formulas.receptacle import largest_cord_load, receptacle_fit


def fit(circuit, receptacle, outlets, edition="nec-2023"):
    return receptacle_fit(Fraction(circuit), Fraction(receptacle), outlets, edition)


@pytest.mark.parametrize(
    ("circuit", "receptacle", "outlets", "verdict", "allowed"),
    [
        (20, 15, 1, "too small", "at least 20 A"),
        (20, 15, 2, "fits", "15 or 20 A"),
        (15, 20, 2, "too large", "15 A"),
        (30, 20, 2, "too small", "30 A"),
        (50, 40, 2, "too small", "50 A"),
    ],
)
def test_a_receptacle_is_judged_alone_or_among_several(circuit, receptacle, outlets, verdict, allowed):
    found = fit(circuit, receptacle, outlets)
    assert (found.verdict, found.allowed) == (verdict, allowed)


def test_how_many_receptacles_is_a_gap_only_where_it_matters():
    assert fit(20, 15, None).lacks == ("how many receptacles the circuit has",)
    assert fit(20, 20, None).verdict == "fits"
    assert fit(30, 15, None).verdict == "too small"


def test_a_circuit_with_several_receptacles_is_of_a_rating_that_the_table_names():
    assert fit(25, 20, 2).verdict == fit(60, 50, 2).verdict == "not allowed"
    assert fit(25, 30, 1).verdict == "fits"
    assert fit(25, 30, None).fits is None
    assert fit(6, 15, 2).fits is None


def test_a_ten_ampere_circuit_feeds_no_receptacle_from_2023():
    assert fit(10, 15, 2).verdict == "not allowed"
    assert fit(10, 15, 2, "nec-2020").verdict == "cannot tell"


def test_a_plugged_load_is_a_gap_where_the_number_of_receptacles_is_not_recorded():
    assert largest_cord_load(Fraction(20), Fraction(20), None, "nec-2023").lacks
