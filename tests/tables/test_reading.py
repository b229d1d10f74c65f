from fractions import Fraction

import pytest

from junctionary.tables import UnknownKeyError, table


def test_a_cell_keeps_its_printed_digits_and_gives_an_exact_value():
    row = table("volume-allowance").row("14 AWG")
    assert (row.text("volume"), row.number("volume")) == ("2.00", Fraction(2))


def test_a_blank_cell_gives_none():
    assert table("ampacity").number("14 AWG", "aluminium 60 C") is None


def test_a_box_is_found_by_its_other_name():
    assert table("metal-boxes").number("4 x 1-1/2 round", "volume") == Fraction("15.5")


@pytest.mark.parametrize(
    ("name", "key", "column", "near"),
    [
        ("ampacty", "14 AWG", "copper 60 C", "ampacity"),
        ("ampacity", "13 AWG", "copper 60 C", "AWG"),
        ("ampacity", "14 AWG", "coper 60 C", "copper 60 C"),
    ],
)
def test_what_is_not_there_is_refused_with_the_nearest(name, key, column, near):
    with pytest.raises(UnknownKeyError, match=near):
        table(name).number(key, column)


@pytest.mark.parametrize(
    ("edition", "amps"), [("nec-1999", 20), ("nec-2008", 20), ("nec-2011", 15), ("nec-2023", 15)]
)
def test_an_edition_gets_the_printing_it_had(edition, amps):
    assert table("ampacity", edition).number("14 AWG", "copper 60 C") == amps
