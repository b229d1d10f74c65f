"""``junctionary check``: reads and judges a record, prints what it finds."""

import json
from argparse import Namespace
from dataclasses import replace
from typing import Any

from junctionary.checks.engine import until
from junctionary.checks.finding import SEVERITIES
from junctionary.checks.wanted import wanted
from junctionary.cli.opening import Opened, open_record, record_folder
from junctionary.cli.sarif import as_sarif
from junctionary.cli.saying import (
    accepted_words,
    counted,
    finding_lines,
    missing_lines,
    problem_lines,
    say,
    tally,
)


def run(asked: Namespace) -> int:
    """Exit code 0, 1 or 2, as ``main`` says."""
    opened = open_record(record_folder(asked))
    if asked.stage and opened.result is not None:
        due = replace(opened.result, judgement=until(asked.stage, opened.result.judgement))
        opened = replace(opened, result=due)
    if asked.format == "json":
        say([json.dumps(as_object(opened), indent=2, ensure_ascii=False)])
    elif asked.format == "sarif":
        say([json.dumps(as_sarif(opened), indent=2, ensure_ascii=False)])
    else:
        say(as_lines(opened))
    if opened.result is None:
        return 2
    grave = SEVERITIES[: SEVERITIES.index(asked.fail_on) + 1] if asked.fail_on in SEVERITIES else ()
    findings = opened.result.judgement.findings
    return 1 if any(each.severity in grave and each.accepted is None for each in findings) else 0


def as_lines(opened: Opened) -> list[str]:
    """The whole report, for a person."""
    lines: list[str] = []
    for problem in opened.problems:
        lines += [*problem_lines(opened.folder, opened.files, problem), ""]
    if opened.result is None:
        stopping = sum(problem.stops for problem in opened.problems)
        return [*lines, f"The record cannot be read: {counted(stopping, 'problem')}. Nothing was judged."]
    judgement = opened.result.judgement
    for finding in judgement.findings:
        lines += [*finding_lines(opened.folder, finding), ""]
    lines += missing_lines(wanted(opened.result.house, judgement.unrecorded))
    missing = len(wanted(opened.result.house, judgement.unrecorded))
    return [
        *lines,
        f"{opened.result.house.name}: {tally(judgement.findings)}; {counted(missing, 'fact')} not recorded.",
        "An aid, not a certificate: the local code, the inspector and a licensed electrician decide.",
    ]


def as_object(opened: Opened) -> dict[str, Any]:
    """The whole report as one JSON object."""
    judgement = opened.result.judgement if opened.result else None
    return {
        "record": opened.folder.as_posix(),
        "digest": opened.files.digest,
        "problems": [
            {
                "file": problem.place.file,
                "line": problem.place.line,
                "column": problem.place.column,
                "found": problem.found,
                "expected": problem.expected,
                "do": problem.do,
            }
            for problem in opened.problems
        ],
        "findings": [
            {
                "rule": finding.rule,
                "severity": finding.severity,
                "file": finding.place.file,
                "line": finding.place.line,
                "column": finding.place.column,
                "about": list(finding.about),
                "found": finding.found,
                "allowed": finding.allowed,
                "because": finding.because,
                "do": finding.do,
                "cites": [str(cite) for cite in finding.cites],
                "working": [str(step) for step in finding.working],
                "accepted": accepted_words(finding) if finding.accepted else None,
            }
            for finding in (judgement.findings if judgement else ())
        ],
        "unrecorded": [
            {"rule": missing.rule, "about": list(missing.about), "needs": list(missing.needs)}
            for missing in (judgement.unrecorded if judgement else ())
        ],
    }
