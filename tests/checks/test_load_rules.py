"""The rules of loads: who speaks of a fault, and when the answer hangs on what nobody recorded."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from junctionary.checks.examples import judge_example
from junctionary.cli.opening import open_record

CONTENT = Path(__file__).parents[2] / "content"


def rules_on(text: str) -> set[str]:
    return {each.rule for each in judge_example(text).judgement.findings}


def circuit(rating: str, loads: str, cable: str = "12/2 NM-B", face: str = "5-20R", more: str = "") -> str:
    return (
        f"[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  1: {{rating: {rating}, feeds: c, says: Den fans}}\n"
        f"[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {{id: a1, cable: {cable}, from: main, to: K1}}\n"
        f"loads:\n{loads}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{devices: {{r1: outlet}}, makeup: end-of-run}}\n"
        f"[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n{more}"
        f"[devices/all.yaml]\ndevices: {{outlet: {{is: receptacle, face: {face}}}}}\n"
    )


def load(told: str) -> str:
    return f"  - {{id: it, {told}, plugged: K1.r1.top}}\n"


def test_of_one_plugged_load_above_the_breaker_the_receptacles_rule_alone_speaks() -> None:
    found = rules_on(circuit("15 A", load("is: tool, draws: 2000 W"), "14/2 NM-B", "5-15R"))
    assert "one-cord-load-too-large" in found
    assert "circuit-overloaded" not in found


def test_of_a_range_on_too_small_a_circuit_the_ranges_rule_alone_speaks() -> None:
    text = (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  2+4: {rating: 30 A, feeds: c, says: Range}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nloads:\n  - {id: it, is: range, draws: 12 kW, volts: 240 V}\n"
    )
    found = rules_on(text)
    assert "range-circuit-too-small" in found
    assert "circuit-overloaded" not in found
    assert "circuit-overloaded" not in rules_on(text.replace("30 A", "40 A"))


def test_a_load_above_the_breaker_is_not_told_again_for_running_long() -> None:
    told = "  - {id: it, is: network, draws: 11 A, plugged: K1.r1.top}\n"
    told += "  - {id: too, is: network, draws: 11 A, plugged: K1.r1.bottom}\n"
    found = rules_on(circuit("20 A", told))
    assert "circuit-overloaded" in found
    assert "continuous-over-eighty-percent" not in found


def test_a_breaker_above_the_wire_is_not_told_again_by_a_load_that_runs_long() -> None:
    text = circuit("20 A", load("is: network, draws: 13 A"), "14/2 NM-B")
    assert "breaker-outrates-wire" in rules_on(text)
    assert "continuous-load-over-wire" not in rules_on(text)


@pytest.mark.parametrize(("told", "asked"), [("", True), (", continuous: false", False)])
def test_whether_a_load_runs_long_is_asked_only_where_it_matters(
    told: str, asked: bool, says: Callable
) -> None:
    large, small = (circuit("15 A", load(f"is: fan, draws: {amps} A{told}")) for amps in (13, 5))
    needs = says("continuous-over-eighty-percent", large).needs
    assert (needs == ["whether it runs for three hours or more"]) is asked
    assert says("continuous-over-eighty-percent", small).needs == []


def test_a_load_plugged_in_nowhere_that_is_recorded_is_asked_for(says: Callable) -> None:
    text = circuit("20 A", "  - {id: it, is: tool, draws: 900 W}\n")
    assert says("one-cord-load-too-large", text).needs == ["where it is plugged in"]


def test_a_load_told_to_be_at_a_receptacle_of_another_circuit_is_not_passed(says: Callable) -> None:
    text = circuit("20 A", load("is: tool, draws: 900 W"))
    stray = "[circuits/d.yaml]\ncircuit: d\nname: D\nloads:\n  - {id: x, is: tool, draws: 900 W, plugged: K1.r1}\n"
    needs = says("one-cord-load-too-large", text + stray).needs
    assert needs == ["whether K1.r1 is a receptacle of circuit d"]


BOTH_LEGS = (
    "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  2+4: {rating: 20 A, feeds: c, says: Fans}\n"
    "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 12/2 NM-B, from: main, to: K1}\n"
    "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {devices: {r1: outlet}, marked: {a1.white: black}, "
    "terminals: {r1.brass: a1.black, r1.silver: a1.white, r1.green: a1.bare}}\n"
    "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n"
    "[devices/all.yaml]\ndevices: {outlet: {is: receptacle, face: 5-20R}}\n"
)


def test_of_a_receptacle_across_both_legs_its_voltage_is_told_and_not_its_polarity() -> None:
    assert "voltage-mismatch" in rules_on(BOTH_LEGS)
    assert "polarity-reversed" not in rules_on(BOTH_LEGS)


def test_a_face_for_both_legs_on_one_pole_is_told_by_its_poles_alone() -> None:
    text = BOTH_LEGS.replace("2+4:", "2:").replace("face: 5-20R", "face: 6-20R, outlets: 1")
    text = text.replace("r1.brass", "r1.x").replace("r1.silver", "r1.y").replace("r1.green", "r1.g")
    found = rules_on(text.replace("marked: {a1.white: black}, ", ""))
    assert "pole-count-mismatch" in found
    assert not found & {"voltage-mismatch", "polarity-reversed"}


@pytest.mark.parametrize(
    ("edition", "rule"), [("nec-2005", "pole-count-mismatch"), ("nec-2023", "multiwire-untied")]
)
def test_two_handles_that_move_apart_are_told_by_one_rule(edition: str, rule: str) -> None:
    text = (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  1: {rating: 20 A, feeds: c.black, says: Saw}\n"
        "  3: {rating: 20 A, feeds: c.red, says: Saw}\n"
        f"[circuits/c.yaml]\ncircuit: c\nname: C\nbuilt_to: {edition}\n"
        "loads:\n  - {id: it, is: tool, draws: 2400 W, volts: 240 V}\n"
    )
    assert rules_on(text) & {"pole-count-mismatch", "multiwire-untied"} == {rule}


def test_a_load_for_both_legs_is_not_plugged_into_a_face_for_one(says: Callable) -> None:
    text = circuit("20 A", load("is: tool, draws: 900 W, volts: 240 V"))
    assert says("voltage-mismatch", text).found == ["circuits/c.yaml:6"]


@pytest.mark.parametrize(
    ("kind", "purpose", "spoken"),
    [("den", "general", False), ("den", "lighting", True), ("laundry", "general", True)],
)
def test_receptacles_on_lighting_wire_are_told_only_where_large_loads_are_usual(
    kind: str, purpose: str, spoken: bool, says: Callable
) -> None:
    text = circuit("15 A", load("is: lighting, draws: 9 W"), "14/2 NM-B", "5-15R")
    text = text.replace("kind: den", f"kind: {kind}").replace("name: C\n", f"name: C\npurpose: {purpose}\n")
    assert bool(says("lighting-wire-feeds-receptacles", text).found) is spoken


def test_a_thicker_wire_farther_along_misleads_nobody_at_the_panel(says: Callable) -> None:
    text = circuit("15 A", load("is: lighting, draws: 9 W"), "14/2 NM-B", "5-15R")
    text = text.replace("to: K1}\n", "to: K1}\n  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2}\n")
    text = text.replace(
        "makeup: end-of-run}", "makeup: pigtailed}\n  K2: {devices: {r1: outlet}, makeup: end-of-run}"
    )
    assert says("mixed-gauge", text).found == []
    other = text.replace("14/2", "X").replace("12/2", "14/2").replace("X", "12/2")
    assert says("mixed-gauge", other).found == ["circuits/c.yaml:5"]


@pytest.mark.parametrize(("edition", "standard"), [("nec-2020", False), ("nec-2023", True)])
def test_a_ten_ampere_breaker_is_standard_from_2023(edition: str, standard: bool, says: Callable) -> None:
    text = f"[house.yaml]\nhouse: H\nreference: {edition}\n" + circuit(
        "10 A", load("is: lighting, draws: 9 W")
    )
    assert (says("breaker-not-standard", text).found == []) is standard


def test_a_six_ampere_fuse_is_a_standard_one(says: Callable) -> None:
    text = circuit("6 A", load("is: lighting, draws: 9 W"))
    assert says("breaker-not-standard", text).found == ["panels/main.yaml:4"]
    assert says("breaker-not-standard", text.replace("1: {rating", "1: {kind: plug-fuse, rating")).found == []


@pytest.mark.parametrize(
    ("file", "was", "is_", "rule", "stands"),
    [
        (
            "circuits/counter-north",
            ", instead_of: kettle",
            "",
            "circuit-overloaded",
            "circuit: counter-north",
        ),
        ("circuits/bath-down", "1600 W", "2000 W", "one-cord-load-too-large", "  - {id: dryer-hair,"),
        ("circuits/charger", "40 A", "44 A", "continuous-over-eighty-percent", "  18+20:"),
        ("panels/main", "5+7:   {rating: 50 A", "5+7:   {rating: 35 A", "range-circuit-too-small", "  5+7:"),
        ("panels/main", "36:    {rating: 20 A", "36:    {rating: 22 A", "breaker-not-standard", "  36:"),
        ("circuits/shop-saw", "volts: 240 V", "volts: 120 V", "voltage-mismatch", "  - {id: table-saw,"),
    ],
)
def test_a_fault_written_into_the_demo_house_is_found_on_its_line_and_no_other(
    file: str, was: str, is_: str, rule: str, stands: str, tmp_path: Path
) -> None:
    shutil.copytree(CONTENT, tmp_path / "content")
    path = tmp_path / "content" / f"{file}.yaml"
    text = path.read_text("utf-8")
    assert text.count(was) == 1
    path.write_text(text.replace(was, is_), "utf-8")
    result = open_record(tmp_path / "content").result
    assert result is not None
    (place,) = [each.place for each in result.judgement.findings if each.rule == rule]
    lines = (tmp_path / "content" / place.file).read_text("utf-8").splitlines()
    assert lines[place.line - 1].startswith(stands)
