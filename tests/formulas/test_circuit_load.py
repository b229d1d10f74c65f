"""The load of one circuit by hand-worked sums, and what each formula does not know."""

from fractions import Fraction

import pytest

from junctionary.formulas.circuit_load import (
    Part,
    connected_load,
    least_for_range,
    most_continuous,
    most_fastened,
    neutral_current,
    range_demand,
    room_left,
    sized_load,
)
from junctionary.formulas.worked import finished, lacking, step

EDITION = "nec-2023"


def part(amps: str, continuous: bool = False) -> Part:
    return Part(step("a load", amps, "A"), continuous)


def cord(amps: str) -> object:
    told = step("one load", amps, "A")
    return finished(told.value, "A", [told])


def test_a_connected_load_is_the_sum_of_its_parts() -> None:
    assert connected_load([part("1500 / 120"), part("1050 / 120")]).value == Fraction("21.25")


def test_what_is_not_recorded_leaves_a_load_without_a_value_and_with_a_least() -> None:
    load = connected_load([part("12.5")], ["what the iron draws"])
    assert (load.value, load.lacks, load.steps[-1].value) == (
        None,
        ("what the iron draws",),
        Fraction("12.5"),
    )


@pytest.mark.parametrize(
    ("parts", "amps"),
    [([part("12"), part("4")], "16"), ([part("12", True)], "15"), ([part("8", True), part("5")], "15")],
)
def test_what_is_continuous_is_sized_for_a_quarter_more(parts: list[Part], amps: str) -> None:
    assert sized_load(parts, EDITION).value == Fraction(amps)


@pytest.mark.parametrize(("rating", "most"), [(15, 12), (20, 16), (30, 24)])
def test_the_most_continuous_load_is_what_a_quarter_more_fills_the_breaker_with(
    rating: int, most: int
) -> None:
    found = most_continuous(Fraction(rating), EDITION).value
    assert found == most
    assert sized_load([part(str(found), True)], EDITION).value == rating


def test_no_share_is_asked_of_fastened_loads_on_a_large_circuit() -> None:
    assert most_fastened(Fraction(30), EDITION).lacks == ("a rule for fastened loads on a 30 A circuit",)


def test_a_small_range_may_have_a_small_circuit() -> None:
    assert least_for_range(Fraction(8749), EDITION) is None


def test_a_range_above_twelve_kilowatts_counts_five_percent_more_for_each() -> None:
    assert range_demand("range", Fraction(14000), Fraction(240), EDITION).value == Fraction(8800, 240)


@pytest.mark.parametrize(
    ("load", "one", "now", "continuous", "limit"),
    [
        ("12.5", "16", "7.5", "6", "the breaker"),
        ("2", "16", "16", "14.4", "what one plugged load may draw"),
        ("0", "16", "16", "16", "what one plugged load may draw"),
        ("25", "16", "0", "0", "the breaker"),
        ("5", None, "15", "12", "the breaker"),
    ],
)
def test_what_is_left_is_the_smaller_of_breaker_and_receptacle(
    load: str, one: str | None, now: str, continuous: str, limit: str
) -> None:
    room = room_left(Fraction(20), "the breaker", Fraction(load), cord(one) if one else None, EDITION)
    assert (room.now.value, room.continuous.value) == (Fraction(now), Fraction(continuous))
    assert room.limit == limit


def test_a_continuous_load_added_to_the_full_fills_the_breaker_and_no_more() -> None:
    room = room_left(Fraction(20), "the breaker", Fraction("12.5"), None, EDITION)
    sized = sized_load([part("12.5"), part(str(room.continuous.value), True)], EDITION).value
    assert sized == 20


def test_what_is_left_beside_an_unknown_load_is_told_only_as_the_most() -> None:
    room = room_left(Fraction(20), "the breaker", Fraction(5), cord("16"), EDITION, ["what the iron draws"])
    assert (room.now.value, room.now.steps[-1].value) == (None, 15)


def test_a_receptacle_without_a_rule_leaves_room_untold() -> None:
    lost = lacking(["a table row"], "A")
    assert room_left(Fraction(20), "the breaker", Fraction(0), lost, EDITION).now.lacks == ("a table row",)


@pytest.mark.parametrize(("legs", "amps"), [("opposite", 4), ("same", 20)])
def test_a_shared_neutral_carries_the_difference_of_opposite_legs_and_the_sum_of_one(
    legs: str, amps: int
) -> None:
    back = ("black", Fraction(8)), ("red", Fraction(12))
    assert neutral_current(back, legs).value == amps
    assert neutral_current(back[::-1], legs).value == amps
