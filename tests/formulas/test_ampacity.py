from dataclasses import replace
from fractions import Fraction

import pytest

from junctionary.formulas.ampacity import Conductor, ampacity, largest_breaker
from junctionary.units import WireSize

NM_12 = Conductor(WireSize("12 AWG"), "copper", 90, Fraction(30), 2, held_to_c=60)


def test_a_cable_in_a_hot_attic_is_corrected_from_its_insulation_and_held_to_the_cooler_column():
    hot = ampacity(replace(NM_12, ambient_c=Fraction(60)), "nec-2023")
    assert [each.sum for each in hot.steps] == ["30", "30 × 0.71", "min(21.30, 20)", "min(20.00, 20)"]
    assert [str(each) for each in hot.cites] == [
        "NEC 2023, 310.16", "NEC 2023, 310.15(B)(1)", "NEC 2023, 334.80", "NEC 2023, 110.14(C)(1)",
    ]  # fmt: skip


def test_twenty_conductors_together_bring_twelve_gauge_to_fifteen_amperes():
    bundled = largest_breaker(replace(NM_12, together=20), True, "nec-2023")
    assert bundled.value == 15


def test_the_next_size_up_is_only_for_circuits_without_several_receptacles():
    six = replace(NM_12, size=WireSize("6 AWG"))
    assert [largest_breaker(six, several, "nec-2023").value for several in (True, False)] == [50, 60]


def test_the_next_size_up_is_a_gap_where_it_matters_and_none_where_it_does_not():
    six = largest_breaker(replace(NM_12, size=WireSize("6 AWG")), None, "nec-2023")
    assert (six.value, six.lacks) == (
        None, ("whether the circuit feeds more than one receptacle for plugged loads",),
    )  # fmt: skip
    assert largest_breaker(NM_12, None, "nec-2023").value == 20


def test_the_small_conductor_limit_holds_even_where_the_column_is_higher():
    thhn = Conductor(WireSize("10 AWG"), "copper", 90, Fraction(30), 3, terminals_c=75)
    assert ampacity(thhn, "nec-2023").value == 35
    assert largest_breaker(thhn, False, "nec-2023").value == 30


def test_aluminium_has_limits_of_its_own():
    assert largest_breaker(replace(NM_12, metal="aluminium"), True, "nec-2023").value == 15


@pytest.mark.parametrize(("edition", "breaker"), [("nec-2020", 0), ("nec-2023", 10)])
def test_a_conductor_no_standard_breaker_is_small_enough_for_is_given_nought(edition, breaker):
    crowded = replace(NM_12, size=WireSize("14 AWG"), together=12)
    assert ampacity(crowded, edition).value == Fraction("12.5")
    assert largest_breaker(crowded, True, edition).value == breaker


def test_conductors_over_1_awg_are_taken_at_75_degrees_when_nothing_is_listed():
    feeder = Conductor(WireSize("4/0 AWG"), "aluminium", 90, Fraction(30), 3)
    assert ampacity(feeder, "nec-2023").value == 180


@pytest.mark.parametrize(
    ("missing", "lack"),
    [
        ("size", "the wire size"),
        ("metal", "the conductor's metal"),
        ("insulation_c", "the temperature rating of the insulation"),
        ("ambient_c", "the ambient temperature along the run"),
        ("together", "how many current-carrying conductors lie together"),
    ],
)
def test_a_missing_fact_is_named_and_gives_no_figure(missing, lack):
    found = largest_breaker(replace(NM_12, **{missing: None}), True, "nec-2023")
    assert (found.value, found.lacks) == (None, (lack,))


def test_insulation_too_low_for_the_place_gives_no_figure():
    found = ampacity(replace(NM_12, insulation_c=60, ambient_c=Fraction(60)), "nec-2023")
    assert found.lacks == ("an insulation for 60 °C: 60 °C is too low",)


def test_a_size_the_table_does_not_print_gives_no_figure():
    assert ampacity(replace(NM_12, size=WireSize("16 AWG")), "nec-2023").value is None
    assert ampacity(replace(NM_12, size=WireSize("14 AWG"), metal="aluminium"), "nec-2023").value is None
