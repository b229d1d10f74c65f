"""Findings that the record accepts, marked as accepted; an acceptance with nothing to accept is a problem."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from junctionary.checks.engine import rules
from junctionary.checks.finding import Finding, Judgement
from junctionary.problems import Problem, nearest
from junctionary.records.accepted import Acceptance


def accept(judgement: Judgement, accepted: Iterable[Acceptance]) -> tuple[Judgement, list[Problem]]:
    """The judgement with each accepted finding marked so, and what is wrong with the acceptances.

    A finding is accepted by its check and its subject, the first thing it is about.
    An acceptance that meets no finding is a problem, unless the check cannot tell
    at present: then there may be something to accept, and nobody knows.
    """
    by_subject: dict[tuple[str, str], Acceptance] = {}
    problems: list[Problem] = []
    subjects = {(each.rule, _subject(each.about)) for each in judgement.findings}
    open_ = {(each.rule, name) for each in judgement.unrecorded for name in each.about}
    for each in accepted:
        if each.rule not in rules():
            problems.append(_no_rule(each))
            continue
        for index, name in enumerate(each.about):
            key = (each.rule, name)
            if key in by_subject:
                problems.append(_twice(each, index, by_subject[key]))
            elif key in subjects:
                by_subject[key] = each
            elif key not in open_:
                problems.append(_nothing(each, index, judgement.findings))
    findings = tuple(_marked(each, by_subject) for each in judgement.findings)
    return Judgement(findings, judgement.unrecorded), problems


def _marked(finding: Finding, by_subject: dict[tuple[str, str], Acceptance]) -> Finding:
    acceptance = by_subject.get((finding.rule, _subject(finding.about)))
    return replace(finding, accepted=acceptance) if acceptance else finding


def _subject(about: tuple[str, ...]) -> str:
    return about[0] if about else ""


def _no_rule(acceptance: Acceptance) -> Problem:
    near = nearest(acceptance.rule, rules())
    return Problem(
        acceptance.value_place("rule"),
        f"no check is called {acceptance.rule!r}",
        f"{near!r}, the nearest" if near else "the name of a check, as its finding gives it",
        f"write rule: {near}" if near else "take the name from what junctionary check prints",
    )


def _twice(acceptance: Acceptance, index: int, first: Acceptance) -> Problem:
    name = acceptance.about[index]
    return Problem(
        acceptance.value_place("about", index),
        f"{acceptance.rule} on {name} is accepted twice, first on line {first.place.line}",
        "one acceptance for a finding",
        "keep one of the two",
    )


def _nothing(acceptance: Acceptance, index: int, findings: Iterable[Finding]) -> Problem:
    name = acceptance.about[index]
    met = list(dict.fromkeys(_met(acceptance.rule, findings)))
    return Problem(
        acceptance.value_place("about", index),
        f"{acceptance.rule} finds nothing on {name}",
        f"something it finds: {', '.join(met)}" if met else "a finding that is still there to accept",
        "take the entry out if the fault is mended, or name the thing as the finding does",
    )


def _met(rule: str, findings: Iterable[Finding]) -> Iterator[str]:
    return (_subject(each.about) for each in findings if each.rule == rule)
