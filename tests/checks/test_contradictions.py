"""Rules do not contradict one another: what one asks for makes no other speak.

Two rules contradict each other where a record that does what the one asks makes the other, silent
before, find a hazard or a defect. It is held over every rule's own pair of examples, failing and
mended; and over houses with a fault of which the finding itself names the plain value that mends it.
"""

import re
from collections.abc import Callable
from dataclasses import replace
from random import Random

import pytest
from careless_houses import careless_house
from random_houses import as_text, random_house
from seeding import FAULTS, grave, with_box, with_breaker

from junctionary.checks.engine import rules
from junctionary.checks.examples import judge_example, read_example
from junctionary.checks.finding import Finding
from junctionary.house.model import House
from junctionary.units import read_quantity

LACKING = {
    "directory-entry-vague": "the door of an example says a word, not a sentence",
    "entrance-without-light": "an example of a deck or a yard has not its lamp",
    "hot-open": "an example of boxes alone has no circuit",
    "ground-missing": "an example of boxes alone has no circuit",
    "lighting-outlet-missing": "an example holds the few boxes that it is about, not a room's lamp",
    "metal-box-unbonded": "an example of boxes alone has no circuit",
    "neutral-missing-at-switch": "a white that is hot at a switch is one that is no neutral there",
    "smoke-alarm-missing": "an example of a storey is not a whole storey",
    "torque-not-recorded": "an example of finished work says of it only what it is about",
    "wall-space-without-receptacle": "an example of a counter has not every receptacle of its walls",
    "white-used-hot-unmarked": "an example does not re-mark what it is not about",
}
"""What small records lack besides the fault they are about, by the rule that says so."""


def graves(text: str, rule: str) -> list[Finding]:
    """What rules other than this one find of hazards and defects in an example."""
    findings = judge_example(text).judgement.findings
    return [each for each in findings if each.rule != rule and each.severity != "advice"]


@pytest.mark.parametrize("rule", rules())
def test_no_other_rule_speaks_of_a_mended_example(rule: str) -> None:
    others = [each for each in graves(rules()[rule].passes, rule) if each.rule not in LACKING]
    assert [f"{each.rule}: {each.found}" for each in others] == []


@pytest.mark.parametrize("rule", rules())
def test_mending_a_fault_makes_no_silent_rule_speak(rule: str) -> None:
    before = {each.rule for each in graves(rules()[rule].fails, rule)}
    new = [each for each in graves(rules()[rule].passes, rule) if each.rule not in before]
    assert [f"{each.rule}: {each.found}" for each in new] == []


def smaller_breaker(house: House, finding: Finding) -> House:
    breaker = house.breakers[next(each for each in finding.about if each in house.breakers)]
    (amps,) = re.findall(r"At most (\d+) A", finding.allowed)
    return with_breaker(house, replace(breaker, rating=read_quantity(f"{amps} A", "current")))


def larger_box(house: House, finding: Finding) -> House:
    box = house.boxes[finding.about[0]]
    (volume,) = re.findall(r"box of ([\d.]+ in3)", finding.do)
    size = box.record.size.model_copy(update={"volume": read_quantity(volume, "volume")})  # type: ignore[union-attr]
    return with_box(house, replace(box, record=box.record.model_copy(update={"size": size})))


def tightened(house: House, finding: Finding) -> House:
    box = house.boxes[finding.about[1]]
    landings = tuple(replace(each, torque="listed") for each in box.landings)
    return with_box(house, replace(box, landings=landings, torque="listed"))


def larger_connector(house: House, finding: Finding) -> House:
    box = house.boxes[finding.about[1]]
    joint = next(each for each in box.joints if each.id == finding.about[0])
    ports = {id_: each.ports for id_, each in house.connectors.items() if each.ports}
    least = min((each for each in ports if ports[each] >= len(joint.members)), key=lambda each: ports[each])
    held = replace(joint, by=least, connector=house.connectors[least])
    return with_box(house, replace(box, joints=tuple(held if each is joint else each for each in box.joints)))


def tied(house: House, finding: Finding) -> House:
    pair = [each for each in finding.about if each in house.breakers]
    for each in pair:
        others = tuple(other for other in pair if other != each)
        house = with_breaker(house, replace(house.breakers[each], tied_to=others))
    return house


def told_apart(house: House, finding: Finding) -> House:
    breaker = house.breakers[finding.about[0]]
    return with_breaker(house, replace(breaker, says=f"Den, receptacles by the window, of {breaker.id}"))


REMEDIES: dict[str, Callable[[House, Finding], House]] = {
    "breaker-outrates-wire": smaller_breaker,
    "box-overfilled": larger_box,
    "torque-not-recorded": tightened,
    "connector-overfilled": larger_connector,
    "multiwire-untied": tied,
    "directory-entry-vague": told_apart,
    "directory-entry-doubled": told_apart,
}
"""What a finding asks for, where it says so in plain values."""


@pytest.mark.parametrize("seed", range(7000, 7060))
def test_doing_what_a_finding_asks_of_a_random_house_makes_it_sound(seed: int) -> None:
    chance = Random(seed)
    house = read_example(as_text(random_house(chance, 2 + seed % 4)))
    kinds = [each for each in FAULTS if each.__name__.replace("_", "-") in REMEDIES]
    chance.shuffle(kinds)
    seeded = next(made for kind in kinds if (made := kind(house, chance)) is not None)
    found = [each for each in grave(seeded.house) if each.rule == seeded.rule]
    assert found
    mended = REMEDIES[seeded.rule](seeded.house, found[0])
    assert [f"{each.rule}: {each.found}" for each in grave(mended)] == []


ONE_VOICE = (
    ("multiwire-untied", "pole-count-mismatch"),
    ("subpanel-neutral-bonded", "neutral-ground-joined"),
    ("two-wires-one-terminal", "grounds-not-joined"),
    ("three-hole-on-no-ground", "ground-missing"),
    ("conductor-too-small-for-feeder", "breaker-outrates-wire"),
    ("circuit-overloaded", "continuous-over-eighty-percent"),
)
"""Rules that may see one fault, the more particular first: of these only that one speaks at a place."""


@pytest.mark.parametrize("seed", range(8000, 8016))
def test_of_a_house_full_of_faults_no_two_rules_name_one_twice(seed: int) -> None:
    judgement = judge_example(careless_house(Random(seed))).judgement
    named = {(each.rule, each.place) for each in judgement.findings}
    twice = [(one, other, place) for one, other in ONE_VOICE for rule, place in named if rule == one
             if (other, place) in named]  # fmt: skip
    assert twice == []
