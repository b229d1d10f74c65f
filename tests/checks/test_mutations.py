"""A fault of every rule written into the sound demo house: found on its line, and nothing else is.

A sample of what tests/mutating.py tries at every place: one place for each mutation. Slips that touch
nothing but their own place are written into one copy of the house together.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache, cached_property
from itertools import islice
from random import Random

import mutating
import pytest
import yaml
from mutations.demo import ROOT, Line, Seed, all_findings, as_it_is, linked, mended
from mutations.kinds import Mutation

from junctionary.checks.engine import rules
from junctionary.checks.finding import Finding

SEEDED = yaml.safe_load((ROOT / "tests/seeded.yaml").read_text("utf-8"))
MENDED = yaml.safe_load((ROOT / "tests/mended.yaml").read_text("utf-8"))
PLACES_LOOKED_AT = 12
LOCAL = {
    "afci-missing", "box-not-reachable", "box-overfilled", "box-set-back", "box-too-shallow",
    "box-uncovered", "breaker-off-proof-missing", "burial-too-shallow", "cable-in-wrong-place",
    "cable-near-stud-face", "cable-unsupported", "clamp-plate-on-twenty", "conductor-damaged",
    "counter-without-receptacle", "directory-entry-personal", "directory-entry-vague",
    "directory-entry-wrong", "electrode-wire-too-small", "fan-on-ordinary-box", "free-conductor-short",
    "lighting-wire-feeds-receptacles", "loop-turned-backwards", "luminaire-on-device-box",
    "metal-box-unbonded", "neutral-missing-at-switch", "outdoor-receptacle-missing", "panel-over-full",
    "polarity-test-missing", "push-in-termination", "push-in-with-large-wire", "range-circuit-too-small",
    "run-without-route", "smoke-alarms-not-interconnected", "splice-outside-box",
    "splice-without-connector", "strip-length-off", "tamper-resistant-missing", "test-overdue",
    "three-hole-on-no-ground", "torque-not-recorded", "torque-off", "two-neutrals-one-hole",
    "two-wires-one-terminal", "weather-resistant-missing", "wet-cover-missing", "white-used-hot-unmarked",
    "working-space-short", "workmanship-not-looked-at", "yoke-fed-twice-untied",
}  # fmt: skip
"""Faults that touch nothing but their own place, so that several stand in one copy of the house."""


@dataclass
class Together:
    """Faults written into one copy of the house; ``changed`` are its texts that differ from the sound ones."""

    faults: list[tuple[int, Seed]] = field(default_factory=list)
    changed: dict[str, str] = field(default_factory=dict)

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        if not self.changed:
            ((_, seed),) = self.faults
            return all_findings(seed.make())
        return all_findings(linked({**mended().files, **self.changed}))

    def follows(self) -> Mapping[str, str]:
        return {
            rule: why for number, _ in self.faults for rule, why in mutating.MUTATIONS[number].follows.items()
        }

    def stand(self, finding: Finding) -> bool:
        """Whether a finding is that of one of the faults, on its line."""
        return any(
            finding.rule == mutating.MUTATIONS[number].rule and mutating.line_of(finding) in seed.stands
            for number, seed in self.faults
        )


@cache
def together() -> dict[int, Together]:
    """By the number of each mutation, the copy that its fault is written into."""
    copies: list[Together] = []
    of: dict[int, Together] = {}
    for number, mutation in enumerate(mutating.MUTATIONS):
        seeds = list(islice(mutation.sites(mended()), PLACES_LOOKED_AT))
        Random(number).shuffle(seeds)
        copy, seed = _room(copies, seeds) if mutation.rule in LOCAL else (Together(), seeds[0])
        copy.faults.append((number, seed))
        copy.changed |= seed.changed
        of[number] = copy
    return of


def _room(copies: list[Together], seeds: list[Seed]) -> tuple[Together, Seed]:
    for copy in copies:
        for seed in seeds:
            if not seed.changed.keys() & copy.changed.keys():
                return copy, seed
    copies.append(Together())
    return copies[-1], seeds[0]


def named(number: int) -> str:
    return f"{mutating.MUTATIONS[number].rule}-{number}"


@pytest.mark.parametrize("number", range(len(mutating.MUTATIONS)), ids=named)
def test_a_fault_in_the_sound_demo_house_is_found_on_its_line(number: int) -> None:
    copy = together()[number]
    mutation: Mutation = mutating.MUTATIONS[number]
    seed = next(seed for each, seed in copy.faults if each == number)
    found: set[Line] = {mutating.line_of(each) for each in copy.findings if each.rule == mutation.rule}
    assert (found & set(seed.stands)) if seed.any_of else found >= set(seed.stands), seed.where


@pytest.mark.parametrize("number", range(len(mutating.MUTATIONS)), ids=named)
def test_nothing_else_is_found_but_what_follows(number: int) -> None:
    copy = together()[number]
    others = [
        f"{each.place.file}:{each.place.line} {each.rule}: {each.found}"
        for each in copy.findings
        if each.severity != "advice" and each.rule not in copy.follows() and not copy.stand(each)
    ]
    assert others == [], [seed.where for _, seed in copy.faults]


def test_every_rule_has_a_fault_that_makes_it_speak_in_the_demo_house() -> None:
    assert mutating.without_mutation() == set()
    assert set(mutating.NOT_SEEDED) <= set(rules())


def test_the_sound_part_of_the_demo_house_has_no_hazard_and_no_defect() -> None:
    grave = [each for each in all_findings(mended().house) if each.severity != "advice"]
    assert [f"{each.place.file}:{each.place.line} {each.rule}: {each.found}" for each in grave] == []


def test_every_hazard_and_defect_seeded_in_the_demo_house_is_mended_for_that() -> None:
    grave = {each["rule"] for each in SEEDED if rules()[each["rule"]].severity != "advice"}
    assert {each["rule"] for each in MENDED} == grave


def test_a_mend_takes_away_what_it_is_for_and_nothing_else() -> None:
    before = {(each.rule, each.about) for each in all_findings(linked(as_it_is()))}
    after = {(each.rule, each.about) for each in all_findings(mended().house)}
    gone = {rule for rule, _ in before - after}
    assert after <= before
    assert gone <= {each["rule"] for each in MENDED} | {"push-in-termination"}
