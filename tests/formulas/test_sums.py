from fractions import Fraction

import pytest

from junctionary.formulas.sums import SumError, evaluate, exact, plain, square_root


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("9.00 + 2.25 + 4.50", "15.75"),
        ("10 − 2 − 3", "5"),
        ("30 × 70 %", "21"),
        ("2 + 3 × 4", "14"),
        ("(1 + 6 / 4) × 2.25", "5.625"),
        ("12 / 3 / 2", "2"),
        ("min(18.27, 20)", "18.27"),
        ("max(1, 2, 3) − floor(2.9)", "1"),
        ("sqrt(9 / 4)", "1.5"),
        ("−3 + 4", "1"),
    ],
)
def test_a_sum_works_out_exactly(text, value):
    assert evaluate(text) == Fraction(value)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "2 +",
        "2 2",
        "(2",
        "2)",
        "min 3",
        "min(2",
        "floor(1, 2)",
        "1 / 0",
        "sqrt(−1)",
        "__import__",
        "2 ** 3",
        "a",
        "1.",
        "min()",
    ],
)
def test_what_is_no_sum_is_refused(text):
    with pytest.raises(SumError):
        evaluate(text)


def test_a_root_with_no_exact_value_is_close_to_thirty_digits():
    assert abs(square_root(Fraction(2)) ** 2 - 2) < Fraction(1, 10**28)


@pytest.mark.parametrize(
    ("value", "shown"),
    [("2.25", "2.25"), ("9", "9.00"), ("5.625", "5.625"), ("1/3", "(1 / 3)"), ("-1/3", "(−1 / 3)")],
)
def test_a_number_in_a_sum_is_never_rounded(value, shown):
    assert exact(Fraction(value)) == shown
    assert evaluate(shown) == Fraction(value)


def test_a_plain_number_has_no_needless_digits():
    assert [plain(Fraction(each)) for each in ("20", "2.50")] == ["20", "2.5"]
