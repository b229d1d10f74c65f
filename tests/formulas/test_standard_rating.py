import pytest

from junctionary.formulas.standard_rating import (
    breaker_ratings,
    fuse_ratings,
    rating_at_or_above,
    rating_at_or_below,
)


@pytest.mark.parametrize(("edition", "smallest"), [("nec-2020", 15), ("nec-2023", 10)])
def test_ten_amperes_is_a_breaker_rating_from_2023(edition, smallest):
    assert breaker_ratings(edition)[0] == smallest


def test_fuses_have_ratings_no_breaker_has():
    assert {1, 3, 6, 601} == set(fuse_ratings()) - set(breaker_ratings("nec-2023"))


@pytest.mark.parametrize(
    ("amps", "below", "above"), [(44, 40, 45), (20, 20, 20), (9, None, 10), (7000, 6000, None)]
)
def test_an_ampacity_lies_between_two_standard_ratings(amps, below, above):
    assert (rating_at_or_below(amps, "nec-2023"), rating_at_or_above(amps, "nec-2023")) == (below, above)
