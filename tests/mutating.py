"""Every rule's fault written into the sound demo house, wherever it can stand: found there, and nothing else.

    .venv/bin/python tests/mutating.py [PLACES [RULE...]]

takes that many places a rule at the most (50 unless told, drawn at random where there are more), judges
the house with the fault in each, and prints by rule: places tried, found on their line, and places at
which something else spoke of a hazard or a defect that does not follow from the fault.
"""

import sys
from collections import Counter
from dataclasses import dataclass
from random import Random

from mutations import boxes, loads, metal, network, panels, papers, rooms, runs
from mutations.demo import Line, NoRecord, Seed, all_findings, drawn, mended
from mutations.kinds import Mutation

from junctionary.checks.engine import rules
from junctionary.checks.finding import Finding

MUTATIONS: tuple[Mutation, ...] = tuple(
    each for of in (boxes, loads, metal, network, panels, papers, rooms, runs) for each in of.MUTATIONS
)
NOT_SEEDED: dict[str, str] = {
    "island-without-receptacle": "the demo kitchen has no island, and its edition asks for nothing there",
}
"""Rules whose fault cannot be written into the demo house, each with the reason."""


@dataclass(frozen=True)
class Tried:
    """One place: whether the fault was found there, and what else spoke."""

    rule: str
    where: str
    found: bool
    others: tuple[Finding, ...]
    expected: tuple[Line, ...] = ()
    at: tuple[Line, ...] = ()


def tried(mutation: Mutation, seed: Seed) -> Tried:
    """A house with the fault in one place, judged; raises NoRecord, RuleCrashed."""
    findings = all_findings(seed.make())
    lines = {line_of(each) for each in findings if each.rule == mutation.rule}
    found = bool(lines & set(seed.stands)) if seed.any_of else lines >= set(seed.stands)
    others = tuple(each for each in findings if is_another(each, mutation, seed))
    return Tried(mutation.rule, seed.where, found, others, seed.stands, tuple(sorted(lines)))


def is_another(finding: Finding, mutation: Mutation, seed: Seed) -> bool:
    """Whether a finding is a hazard or defect that does not follow from the fault."""
    if finding.severity == "advice" or finding.rule in mutation.follows:
        return False
    return finding.rule != mutation.rule or line_of(finding) not in seed.stands


def line_of(finding: Finding) -> Line:
    return finding.place.file, finding.place.line


def without_mutation() -> set[str]:
    """Rules that nothing here makes speak, and that are not excused."""
    return set(rules()) - {each.rule for each in MUTATIONS} - set(NOT_SEEDED)


def main(places: int, only: list[str]) -> int:
    """The matrix, printed as it is made; the number of places at which something was amiss."""
    demo, amiss = mended(), 0
    print(f"{'rule':34}{'places':>7}{'found':>7}{'others':>8}")
    for mutation in MUTATIONS:
        if only and mutation.rule not in only:
            continue
        results: list[Tried] = []
        for seed in drawn(mutation.sites(demo), places, Random(mutation.rule)):
            try:
                results.append(tried(mutation, seed))
            except NoRecord as why:
                print(f"    {mutation.rule} at {seed.where}: the record cannot be read: {why}")
                results.append(Tried(mutation.rule, seed.where, found=False, others=()))
        found, others = sum(each.found for each in results), [each for each in results if each.others]
        print(f"{mutation.rule:34}{len(results):7}{found:7}{len(others):8}", flush=True)
        amiss += len(results) - found + len(others) + (not results)
        for each in results:
            if not each.found:
                print(f"    not found at {each.where}; expected {each.expected}; it speaks at {each.at}")
        for (rule, said), count in Counter((f.rule, f.found) for each in others for f in each.others).items():
            print(f"    {count} x {rule}: {said}")
    for rule in sorted(without_mutation()) if not only else ():
        print(f"{rule:34}   nothing here makes it speak")
        amiss += 1
    for rule, why in NOT_SEEDED.items():
        print(f"{rule:34}   not seeded: {why}")
    return amiss


if __name__ == "__main__":
    told = sys.argv[1:]
    raise SystemExit(main(int(told[0]) if told else 50, told[1:]) > 0)
