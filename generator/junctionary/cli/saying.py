"""Problems and findings as lines of text."""

import os
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path

from junctionary.checks.finding import SEVERITIES, Finding
from junctionary.checks.wanted import Wanted, alike
from junctionary.marks import Place
from junctionary.problems import Problem
from junctionary.read.folder import RecordFiles
from junctionary.read.source import caret

MOST_FACTS = 20
"""So many missing facts are told at once on a terminal."""

MOST_IDS = 6
"""So many things are named of which one fact is missing."""


def say(lines: Iterable[str]) -> None:
    """Print lines. Where their reader has gone, what it has read stands, and the exit code is unchanged."""
    try:
        for line in lines:
            print(line)
        if sys.stdout is not None:
            sys.stdout.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def at(folder: Path, place: Place) -> str:
    """``content/boxes/den.yaml:3:5``: a place as an editor can follow it."""
    return f"{folder.as_posix()}/{place}" if place.file else folder.as_posix()


def problem_lines(folder: Path, files: RecordFiles, problem: Problem) -> Iterator[str]:
    """One problem: where and what, the source line with a caret, what was expected, what to do."""
    word = "problem" if problem.stops else "warning"
    yield f"{at(folder, problem.place)}: {word}: {problem.found}"
    line = files.line_at(problem.place)
    if line is not None:
        yield f"    {line}"
        yield f"    {caret(problem.place, line)}"
    yield f"    expected  {problem.expected}"
    yield f"    do        {problem.do}"


def finding_lines(folder: Path, finding: Finding) -> Iterator[str]:
    """One finding in its five parts, with the sum it rests on."""
    yield f"{at(folder, finding.place)}: {finding.severity}: {finding.rule}"
    yield f"    found     {finding.found}"
    yield f"    allowed   {finding.allowed}"
    yield f"    because   {finding.because}"
    yield f"    do        {finding.do}"
    yield f"    source    {'; '.join(str(cite) for cite in finding.cites)}"
    for step in finding.working:
        yield f"    working   {step}"
    if finding.accepted is not None:
        yield f"    accepted  {accepted_words(finding)}"


def accepted_words(finding: Finding) -> str:
    """Who accepted a finding, when and why; nothing where it stands open."""
    word = finding.accepted
    return f"by {word.by}, {word.date}: {word.reason}" if word else ""


def tally(findings: Iterable[Finding]) -> str:
    """``1 hazard, 2 defects, no advice``, those accepted counted apart."""
    kept = tuple(findings)
    still = [each.severity for each in kept if each.accepted is None]
    counts = [
        counted(still.count(severity), severity, plural)
        for severity, plural in zip(SEVERITIES, ("hazards", "defects", "advice"), strict=True)
    ]
    accepted = len(kept) - len(still)
    return ", ".join([*counts, f"{accepted} accepted"] if accepted else counts)


def missing_lines(facts: tuple[Wanted, ...]) -> Iterator[str]:
    """The facts that checks lack, those that would settle most; the rest are counted."""
    if not facts:
        return
    yield "Not recorded, so not judged; what would settle most comes first:"
    groups = [
        (words, [facts[one] for one in each]) for words, each in alike([one.fact for one in facts], MOST_IDS)
    ]
    for words, each in groups[:MOST_FACTS]:
        yield f"    {words}" if len(each) > 1 else f"    {words} ({', '.join(each[0].about[:3])})"
        yield f"        would settle {', '.join(dict.fromkeys(rule for one in each for rule in one.rules))}"
    if len(groups) > MOST_FACTS:
        rest = counted(sum(len(each) for _, each in groups[MOST_FACTS:]), "fact")
        yield f"    and {rest} more: --format json has them, and the manual's sheet Not recorded"
    yield ""


def counted(number: int, one: str, many: str | None = None) -> str:
    """``1 finding``, ``3 findings``, ``no findings``."""
    return f"{number or 'no'} {one if number == 1 else many or one + 's'}"
