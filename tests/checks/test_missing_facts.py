"""A fact that is missing is asked for: it never turns a fault into silence."""

from collections.abc import Callable

import pytest

from junctionary.checks.engine import judge, rules
from junctionary.checks.examples import judge_example

MAKE_UP = (
    "connector-overfilled", "polarity-reversed", "push-in-with-large-wire", "receptacle-unfit-for-circuit",
    "torque-not-recorded", "two-wires-one-terminal",
)  # fmt: skip
RUNS = (
    "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 12/2 NM-B, from: unknown, to: K1}\n"
)


def box(told: str) -> str:
    return f"{RUNS}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{{told}}}\n"


@pytest.mark.parametrize("rule", MAKE_UP)
@pytest.mark.parametrize("told", ["devices: {r1: duplex}, makeup: unknown", "devices: {r1: duplex}"])
def test_a_box_of_unknown_make_up_is_not_passed(rule: str, told: str, says: Callable) -> None:
    assert "how box K1 is made up" in says(rule, box(told)).needs


@pytest.mark.parametrize("rule", [*MAKE_UP, "box-overfilled"])
def test_a_box_whose_make_up_needs_a_device_that_is_not_told_is_not_passed(rule: str, says: Callable) -> None:
    assert "which devices are in box K1" in says(rule, box("makeup: end-of-run")).needs


def test_a_wire_that_is_told_nowhere_may_be_under_any_screw(says: Callable) -> None:
    told = box("devices: {r1: duplex}, terminals: {r1.brass: a1.black, r1.green: a1.bare}")
    assert says("two-wires-one-terminal", told).needs == ["where K1/a1.white is joined or landed"]


def test_a_ground_that_is_told_nowhere_says_nothing_of_polarity(says: Callable) -> None:
    panel = "[panels/main.yaml]\npanel: main\nspaces: 2\nbreakers: {1: {feeds: c}}\n"
    told = box("devices: {r1: duplex}, terminals: {r1.brass: a1.black, r1.silver: a1.white}")
    assert says("polarity-reversed", panel + told.replace("from: unknown", "from: main")).needs == []


@pytest.mark.parametrize(("cable", "asked"), [("12/2 NM-B", True), ("14/2 NM-B", False)])
def test_a_large_wire_of_which_nobody_says_how_it_is_landed_may_be_pushed_in(
    cable: str, asked: bool, says: Callable
) -> None:
    told = box("devices: {r1: duplex}, makeup: end-of-run").replace("12/2 NM-B", cable)
    assert ("how the wires on K1.r1 are landed" in says("push-in-with-large-wire", told).needs) is asked


@pytest.mark.parametrize("missing", ["rating: unknown", "rating: 20 A"])
def test_a_cable_in_a_sealed_hole_is_not_passed_without_its_breaker(missing: str) -> None:
    text = rules()["bundle-in-sealed-hole"].fails
    feeds = "feeds: one, " if missing == "rating: unknown" else "feeds: unknown, "
    text = text.replace("1: {rating: 20 A, feeds: one, ", f"1: {{{missing}, {feeds}")
    found = judge_example(text)
    judged = judge(found.house, found.network, found.figures)
    about = [each.about for each in judged.unrecorded if each.rule == "bundle-in-sealed-hole"]
    assert about == [("a1", "one")]


def test_a_receptacle_of_unknown_face_is_not_taken_for_a_single_one(says: Callable) -> None:
    panel = "[panels/main.yaml]\npanel: main\nspaces: 2\nbreakers: {1: {rating: 15 A, feeds: c}}\n"
    kind = "[devices/more.yaml]\ndevices: {odd: {is: receptacle, face: unknown, rating: 20 A}}\n"
    told = box("devices: {r1: odd}, makeup: end-of-run").replace("from: unknown", "from: main")
    assert says("receptacle-unfit-for-circuit", panel + told + kind).needs == ["the face of K1.r1"]


@pytest.mark.parametrize("rule", ["directory-entry-vague", "directory-entry-doubled"])
def test_a_panel_without_a_recorded_breaker_is_not_passed(rule: str, says: Callable) -> None:
    said = says(rule, "[panels/main.yaml]\npanel: main\nspaces: 8\n")
    assert said.needs == ["the breakers of panel main"]
