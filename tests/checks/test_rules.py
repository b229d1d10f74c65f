"""Every rule by its own examples: the fault where it is marked, the mended record, the missing fact."""

import re
from pathlib import Path

import pytest

from junctionary.checks import rules as folder
from junctionary.checks.engine import PARTS, LoadedRule, rules
from junctionary.checks.examples import judge_example, marked
from junctionary.checks.finding import SEVERITIES, Finding, Unrecorded
from junctionary.sources import cite

RULES = rules()
RULE = pytest.mark.parametrize("rule", RULES.values(), ids=list(RULES))


def said_by(rule: LoadedRule, text: str) -> tuple[list[Finding], list[Unrecorded]]:
    judgement = judge_example(text).judgement
    findings = [each for each in judgement.findings if each.rule == rule.id]
    return findings, [each for each in judgement.unrecorded if each.rule == rule.id]


@RULE
def test_a_rule_finds_the_fault_where_it_is_marked_and_nowhere_else(rule: LoadedRule) -> None:
    findings, _ = said_by(rule, rule.fails)
    marks = sorted(mark for mark in marked(rule.fails) if mark[0] == rule.id)
    assert marks, "the example marks no line"
    assert sorted((each.rule, each.place.file, each.place.line) for each in findings) == marks
    for finding in findings:
        for part in (finding.found, finding.allowed, finding.because, finding.do):
            assert re.fullmatch(r"[A-Z0-9\"].*\.", part), f"no sentence: {part!r}"
            assert "None" not in part
        assert finding.about
        assert finding.cites


@RULE
def test_a_rule_is_content_with_the_mended_record(rule: LoadedRule) -> None:
    assert said_by(rule, rule.passes) == ([], [])
    assert marked(rule.passes) == []


@RULE
def test_a_rule_says_which_fact_is_missing_and_does_not_pass(rule: LoadedRule) -> None:
    findings, unrecorded = said_by(rule, rule.untold)
    assert findings == []
    assert unrecorded, "a missing fact was passed over"
    assert all(each.needs and each.about and each.place for each in unrecorded)


@RULE
def test_a_rule_file_has_every_part(rule: LoadedRule) -> None:
    assert rule.title.endswith(".")
    assert [heading for heading, _ in rule.parts] == list(PARTS)
    assert all(text for _, text in rule.parts)
    assert rule.severity in SEVERITIES
    assert rule.cites


@RULE
def test_every_clause_a_rule_rests_on_is_a_known_one(rule: LoadedRule) -> None:
    for each in rule.cites:
        assert cite(each.publication, each.clause) == each


def test_every_file_in_the_folder_is_a_rule() -> None:
    files = [path for path in Path(folder.__path__[0]).glob("*/*.py") if path.stem != "__init__"]
    assert sorted(path.stem.replace("_", "-") for path in files) == list(RULES)
