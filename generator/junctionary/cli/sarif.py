"""The report of a check as SARIF 2.1.0 (OASIS), for programs that show findings beside the text."""

from typing import Any
from urllib.parse import quote

from junctionary import __version__
from junctionary.checks.engine import LoadedRule, rules
from junctionary.checks.finding import ADVICE, DEFECT, HAZARD, Finding, Severity, Unrecorded
from junctionary.cli.opening import Opened
from junctionary.marks import Place
from junctionary.problems import Problem

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
LEVELS: dict[Severity, str] = {HAZARD: "error", DEFECT: "warning", ADVICE: "note"}


def as_sarif(opened: Opened) -> dict[str, Any]:
    """The whole report as one SARIF log.

    A finding fails at the level of its severity; an accepted one is suppressed, with the
    reason. What a check cannot tell is an ``open`` result: judged, without enough to decide.
    A problem of the record itself is a notification, and the run then did not succeed.
    """
    judgement = opened.result.judgement if opened.result else None
    known = list(rules())
    results = [_finding(each, known) for each in (judgement.findings if judgement else ())]
    results += [_open(each, known) for each in (judgement.unrecorded if judgement else ())]
    return {
        "$schema": SCHEMA,
        "version": "2.1.0",
        "runs": [
            {
                "tool": {
                    "driver": {
                        "name": "junctionary",
                        "version": __version__,
                        "rules": [_rule(each) for each in rules().values()],
                    }
                },
                "invocations": [
                    {
                        "executionSuccessful": opened.result is not None,
                        "toolExecutionNotifications": [_notification(each) for each in opened.problems],
                    }
                ],
                "originalUriBaseIds": {"RECORD": {"description": {"text": "the folder of the record"}}},
                "columnKind": "unicodeCodePoints",
                "results": results,
            }
        ],
    }


def _rule(rule: LoadedRule) -> dict[str, Any]:
    parts = dict(rule.parts)
    return {
        "id": rule.id,
        "shortDescription": {"text": rule.title},
        "fullDescription": {"text": parts["Why it matters"]},
        "help": {"text": parts["What to do"]},
        "defaultConfiguration": {"level": LEVELS[rule.severity]},
        "properties": {"severity": rule.severity, "stage": rule.stage, "cites": list(map(str, rule.cites))},
    }


def _finding(finding: Finding, known: list[str]) -> dict[str, Any]:
    result: dict[str, Any] = {
        "ruleId": finding.rule,
        "ruleIndex": known.index(finding.rule),
        "kind": "fail",
        "level": LEVELS[finding.severity],
        "message": {"text": " ".join((finding.found, finding.allowed, finding.because, finding.do))},
        "locations": [_location(finding.place)],
        "partialFingerprints": {"ruleAndSubject/v1": f"{finding.rule}:{','.join(finding.about[:1])}"},
        "properties": {
            "about": list(finding.about),
            "found": finding.found,
            "allowed": finding.allowed,
            "because": finding.because,
            "do": finding.do,
            "cites": list(map(str, finding.cites)),
            "working": list(map(str, finding.working)),
        },
    }
    if finding.accepted is not None:
        by, date, reason = finding.accepted.by, finding.accepted.date, finding.accepted.reason
        result["suppressions"] = [
            {"kind": "external", "status": "accepted", "justification": f"{reason} ({by}, {date})"}
        ]
    return result


def _open(missing: Unrecorded, known: list[str]) -> dict[str, Any]:
    result: dict[str, Any] = {
        "ruleId": missing.rule,
        "ruleIndex": known.index(missing.rule),
        "kind": "open",
        "level": "none",
        "message": {"text": f"{', '.join(missing.about)}: not recorded: {'; '.join(missing.needs)}."},
        "properties": {"about": list(missing.about), "needs": list(missing.needs)},
    }
    if missing.place is not None:
        result["locations"] = [_location(missing.place)]
    return result


def _notification(problem: Problem) -> dict[str, Any]:
    notification: dict[str, Any] = {
        "level": "error" if problem.stops else "warning",
        "message": {"text": f"{problem.found}; expected {problem.expected}; {problem.do}"},
    }
    if problem.place.file:
        notification["locations"] = [_location(problem.place)]
    return notification


def _location(place: Place) -> dict[str, Any]:
    return {
        "physicalLocation": {
            "artifactLocation": {"uri": quote(place.file), "uriBaseId": "RECORD"},
            "region": {"startLine": max(place.line, 1), "startColumn": max(place.column, 1)},
        }
    }
