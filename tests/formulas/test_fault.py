"""A fault's current, the pick-up it must reach, the heat it leaves."""

from fractions import Fraction

import pytest

from junctionary.formulas.fault import (
    Loop,
    adiabatic_k,
    fault_current,
    least_area,
    pick_up,
    source_from_level,
    source_from_transformer,
    withstood,
)
from junctionary.formulas.resistance import Wire
from junctionary.formulas.worked import lacking
from junctionary.units import WireSize

EDITION = "nec-2023"
TWELVE = Wire(WireSize("12 AWG"), "copper")
LOOP = Loop("run a1", Fraction(100), TWELVE, TWELVE)


def test_a_loop_lets_through_120_v_over_all_its_ohms() -> None:
    found = fault_current(source_from_level(Fraction(2400)), [LOOP], EDITION)
    assert found.flows.value == found.most == 120 / (Fraction("0.05") + Fraction("0.386"))


def test_without_a_source_the_cable_alone_bounds_the_current() -> None:
    found = fault_current(lacking(["the source"], "ohm"), [LOOP], EDITION)
    assert (found.flows.value, found.flows.lacks) == (None, ("the source",))
    assert found.most == 120 / Fraction("0.386")


def test_with_nothing_known_there_is_no_bound() -> None:
    assert fault_current(lacking(["the source"], "ohm"), [], EDITION).most is None


@pytest.mark.parametrize(
    "loop", [Loop("run a1", Fraction(100), None, TWELVE), Loop("run a1", None, TWELVE, TWELVE)]
)
def test_a_cable_that_says_nothing_of_its_gap_is_a_gap_all_the_same(loop: Loop) -> None:
    found = fault_current(source_from_level(Fraction(2400)), [loop], EDITION)
    assert (found.flows.value, found.flows.lacks) == (None, ("the length and both conductors of run a1",))


def test_an_impedance_before_the_service_is_never_rounded_down() -> None:
    assert source_from_level(Fraction(7600)).value == Fraction("0.01579")
    assert source_from_level(Fraction(12000)).value == Fraction("0.01")


def test_a_transformer_lets_through_half_as_much_again_at_its_centre() -> None:
    # 50 kVA of 2 % at 240 V: 10,417 A across; 15,625 A from a leg to the centre, so 0.00768 ohm.
    assert source_from_transformer(Fraction(50), Fraction(2), [], EDITION).value == Fraction("0.00768")


def test_a_recorded_pick_up_goes_before_the_usual_one() -> None:
    assert pick_up(Fraction(20), None).value == 200
    assert pick_up(Fraction(20), Fraction(150)).value == 150


@pytest.mark.parametrize(("size", "amps"), [("14", 757), ("12", 1203), ("10", 1913), ("8", 3042)])
def test_what_a_wire_stands_for_a_tenth_of_a_second(size: str, amps: int) -> None:
    # Worked out by the same equation from the gauge's formula, to the ampere; our areas stop at 0.01 mm².
    assert abs(withstood(Wire(WireSize(f"{size} AWG"), "copper"), Fraction(1, 10)).value - amps) < 2


def test_withstand_and_least_area_are_one_equation() -> None:
    k = adiabatic_k(TWELVE)
    current = withstood(TWELVE, Fraction(1, 10)).value
    assert abs(least_area(current, Fraction(1, 10), k).value - Fraction("3.31")) < Fraction(1, 100)


def test_a_metal_without_k_is_said() -> None:
    assert adiabatic_k(Wire(WireSize("12 AWG"), "steel")) is None
    assert withstood(Wire(WireSize("12 AWG"), "steel"), Fraction(1)).lacks == ("k for steel",)


def test_aluminium_stands_less_than_copper() -> None:
    assert adiabatic_k(Wire(WireSize("4 AWG"), "aluminium")).value < adiabatic_k(TWELVE).value
