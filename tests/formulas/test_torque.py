import pytest

from junctionary.formulas.torque import compare_torque, in_both_units
from junctionary.units import read_quantity


def torque(text):
    return read_quantity(text, "torque")


@pytest.mark.parametrize(
    ("measured", "verdict"),
    [
        ("14 in-lb", "as listed"),
        ("12.6 in-lb", "as listed"),
        ("12 in-lb", "too loose"),
        ("16 in-lb", "too tight"),
        ("1.58 N m", "as listed"),
        ("1.2 N m", "too loose"),
    ],
)
def test_a_measured_torque_is_held_against_the_listed_one_in_either_unit(measured, verdict):
    assert compare_torque(torque(measured), torque("14 in-lb"), "nec-2023").verdict == verdict


def test_a_listed_range_has_two_ends():
    found = [
        compare_torque(torque(each), torque("14 in-lb"), "nec-2023", torque("18 in-lb")).verdict
        for each in ("12 in-lb", "16 in-lb", "20 in-lb")
    ]
    assert found == ["too loose", "as listed", "too tight"]


def test_editions_without_the_torque_rule_are_not_cited():
    assert compare_torque(torque("14 in-lb"), torque("14 in-lb"), "nec-2014").cite is None


# Published pairs: the conversion of NIST SP 811 to two digits.
@pytest.mark.parametrize(
    ("pounds", "metres"), [(12, "1.36"), (14, "1.58"), (18, "2.03"), (35, "3.95"), (50, "5.65")]
)
def test_a_torque_is_told_in_both_units(pounds, metres):
    assert in_both_units(torque(f"{pounds} in-lb")) == f"{pounds} in-lb ({metres} N m)"
    assert in_both_units(torque("2 N m")) == "17.7 in-lb (2.00 N m)"
    assert in_both_units(torque("2 N m"), "metric") == "2.00 N m (17.7 in-lb)"
    assert in_both_units(torque("21 ft-lb")) == "21 ft-lb (252.0 in-lb, 28.47 N m)"
