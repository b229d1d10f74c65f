"""Voltage drop in one wire by both forms, along several, and what a cable lacks."""

from fractions import Fraction

import pytest

from junctionary.formulas.resistance import (
    Wire,
    alternating_resistance,
    circular_mils,
    drop_constant,
    resistance,
)
from junctionary.formulas.voltage_drop import (
    OUT_ONLY,
    THREE_PHASE,
    Span,
    drop_along,
    drop_by_area,
    drop_by_resistance,
    flows,
    least_area_for_drop,
    lost_in,
    size_for,
)
from junctionary.units import WireSize

EDITION = "nec-2023"
TWELVE = Wire(WireSize("12 AWG"), "copper")
FOURTEEN = Wire(WireSize("14 AWG"), "copper")


def span(amps: dict[str, int], hot: Wire = TWELVE, neutral: Wire = TWELVE) -> Span:
    return Span("run a1", Fraction(100), hot, neutral, {leg: Fraction(each) for leg, each in amps.items()})


@pytest.mark.parametrize("size", ["14 AWG", "12 AWG", "10 AWG"])
def test_both_forms_agree_within_half_a_percent(size: str) -> None:
    wire = Wire(WireSize(size), "copper")
    k, mils = drop_constant("copper", wire.made), circular_mils(wire.size)
    by_area = drop_by_area(k, Fraction(16), Fraction(80), mils).value
    by_ohms = drop_by_resistance(resistance(wire, EDITION).value, Fraction(16), Fraction(80)).value
    assert abs(by_area / by_ohms - 1) < Fraction(1, 200)


@pytest.mark.parametrize(
    ("amps", "legs", "factor"),
    [
        ({"A": 10}, "A", 20),
        ({"A": 10, "B": 10}, "A", 10),
        ({"A": 10, "B": 4}, "A", 16),
        ({"A": 10, "B": 4}, "B", 4 - 6),
        ({"A": 10, "B": 10}, "AB", 20),
        ({"A": 10, "B": 4}, "AB", 14),
        ({}, "A", 0),
    ],
)
def test_the_neutral_carries_what_one_leg_has_above_the_other(
    amps: dict[str, int], legs: str, factor: int
) -> None:
    assert lost_in(span(amps), legs, EDITION).lost.value == factor * Fraction("1.93") / 10


def test_a_smaller_neutral_loses_more() -> None:
    lost = lost_in(span({"A": 10}, neutral=FOURTEEN), "A", EDITION).lost
    assert lost.value == 10 * (Fraction("1.93") + Fraction("3.07")) / 10


def test_what_a_cable_lacks_leaves_the_rest_as_known() -> None:
    gap = Span("run a2", None, TWELVE, TWELVE, {"A": Fraction(10)}, ("the length of run a2",))
    way = drop_along([lost_in(each, "A", EDITION) for each in (span({"A": 10}), gap)])
    assert (way.lost.value, way.lost.lacks) == (None, ("the length of run a2",))
    assert way.known == 20 * Fraction("1.93") / 10


def test_each_cable_carries_all_that_is_beyond_it() -> None:
    found = flows([(["a1"], Fraction(3), ["A"]), (["a1", "a2"], Fraction(2), ["A", "B"])])
    assert found == {"a1": {"A": 5, "B": 2}, "a2": {"A": 2, "B": 2}}


def test_a_size_is_the_smallest_that_keeps_the_limit() -> None:
    k = drop_constant("copper", "stranded")
    area = least_area_for_drop(k, Fraction(16), Fraction(100), Fraction("3.6")).value
    assert str(size_for(area)) == "8 AWG"
    assert size_for(Fraction(10**6)) is None


def test_a_length_counts_once_for_a_balanced_pair_and_by_root_three_for_three_phases() -> None:
    one = drop_by_resistance(Fraction(1), Fraction(10), Fraction(100), OUT_ONLY).value
    three = drop_by_resistance(Fraction(1), Fraction(10), Fraction(100), THREE_PHASE).value
    assert one == 1
    assert abs(three**2 - 3) < Fraction(1, 10**20)


def test_wire_is_solid_to_10_awg() -> None:
    made = {size: Wire(WireSize(f"{size} AWG"), "copper").made for size in ("12", "10", "8", "1/0")}
    assert made == {"12": "solid", "10": "solid", "8": "stranded", "1/0": "stranded"}


def test_a_resistance_that_is_not_printed_is_none() -> None:
    assert resistance(Wire(WireSize("250 kcmil"), "copper"), EDITION) is None
    assert resistance(Wire(WireSize("12 AWG"), "steel"), EDITION) is None
    assert alternating_resistance(Wire(WireSize("14 AWG"), "aluminium"), EDITION) is None
