"""What is missing of a service or a feeder is asked for, and what is too large for certain is said."""

from collections.abc import Callable

import pytest

from junctionary.checks.engine import rules
from junctionary.checks.examples import judge_example


def passing(rule: str) -> str:
    return rules()[rule].passes


@pytest.mark.parametrize(
    ("rule", "told", "untold", "need"),
    [
        ("service-overloaded", "rating: 100 A, ", "", "the rating of the service"),
        ("service-overloaded", "purpose: receptacles\n", "", "the purpose of circuit den"),
        ("service-overloaded", ", draws: 9 kW", "", "what furnace draws"),
        ("service-overloaded", "feeds: den,", "feeds: unknown,", "what breaker main/5 feeds"),
        (
            "feeder-overloaded",
            "1+3: {rating: 30 A, feeds: shed",
            "1+3: {feeds: shed",
            "the rating of main/1+3",
        ),
        ("feeder-overloaded", "feeds: bench,", "feeds: unknown,", "what breaker shed/5 feeds"),
        (
            "legs-unbalanced",
            "panel: main\n",
            "panel: main\nkind: fuse-panel\n",
            "which leg feeds circuit den",
        ),
        ("conductor-too-small-for-feeder", "6/3 NM-B", "unknown", "the cable of run f1"),
        ("conductor-too-small-for-feeder", ", metal: aluminium", "", "the conductor's metal"),
    ],
)
def test_a_missing_fact_is_asked_for(rule: str, told: str, untold: str, need: str, says: Callable) -> None:
    text = passing(rule)
    if need == "the rating of the service":
        text = text.replace("main: 100 A\n", "")
    assert told in text
    said = says(rule, text.replace(told, untold))
    assert said.found == []
    assert need in said.needs


def test_a_service_too_small_for_what_is_recorded_is_said_though_more_is_missing(says: Callable) -> None:
    text = rules()["service-overloaded"].fails.replace("purpose: receptacles\n", "")
    assert says("service-overloaded", text).found == ["panels/main.yaml:1"]


def test_a_service_too_small_shows_every_method() -> None:
    found = judge_example(rules()["service-overloaded"].fails).judgement.findings
    said = next(each.found for each in found if each.rule == "service-overloaded")
    assert "standard method" in said
    assert "optional method" in said


def test_a_feeder_is_no_branch_circuit_and_is_named_by_one_rule_alone(says: Callable) -> None:
    text = rules()["conductor-too-small-for-feeder"].fails
    assert says("breaker-outrates-wire", text).found == []


def test_one_leg_has_nothing_to_be_balanced_with(says: Callable) -> None:
    text = passing("legs-unbalanced").replace("floor_area", "service: {system: 120 V}\nfloor_area")
    said = says("legs-unbalanced", text)
    assert (said.found, said.needs) == ([], [])


def car_behind_a_feeder(breaker: str, draws: str) -> str:
    return f"""
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1+3: {{rating: {breaker}, feeds: garage-feeder, says: "Garage, its panel"}}
[panels/garage.yaml]
panel: garage
spaces: 8
fed_by: garage-feeder
breakers:
  1+3: {{rating: 50 A, feeds: car, says: "Car charger, garage"}}
[circuits/feeder.yaml]
circuit: garage-feeder
name: Feeder to the garage
purpose: feeder
runs: [{{id: f1, cable: 6/3 NM-B, from: main, to: garage, length: 60 ft}}]
[circuits/car.yaml]
circuit: car
name: Car charger
purpose: car-charger
loads: [{{id: car-1, is: car-charger, draws: {draws}, volts: 240 V, fastened: true}}]
"""


def test_a_feeder_is_sized_for_a_quarter_more_than_a_car_charger_draws(says: Callable) -> None:
    assert says("feeder-overloaded", car_behind_a_feeder("50 A", "40 A")).found == []
    assert says("feeder-overloaded", car_behind_a_feeder("45 A", "40 A")).found == ["panels/garage.yaml:1"]


def test_a_fraction_below_half_an_ampere_is_dropped_before_a_load_is_too_large(says: Callable) -> None:
    assert says("feeder-overloaded", car_behind_a_feeder("50 A", "40.3 A")).found == []
    assert says("feeder-overloaded", car_behind_a_feeder("50 A", "40.5 A")).found == ["panels/garage.yaml:1"]
