"""A load calculation as lines: what is counted, how, what it comes to, on which clause it rests."""

import re
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, Worked
from junctionary.sheets.entries import Working, WorkingLine
from junctionary.sheets.survey import cited, sentence
from junctionary.sources import Citation
from junctionary.units import decimal

FEW = 5
"""So many signs of addition stand on one line; a longer chain that repeats the lines above says so."""

_EITHER = re.compile(r"\b(min|max)\(([^(),]+), ([^(),]+)\)")
_SAID = {"min": "the smaller of", "max": "the larger of"}
_MARKS = {"memory": "from memory", "practice": "common practice", "partly": "confirmed in part"}


def figure(value: Fraction, places: int = 1) -> str:
    """A value with no more digits than it needs, up to ``places``."""
    return decimal(value, next((n for n in range(places) if (value * 10**n).denominator == 1), places))


def clause(cite: Citation | None) -> str:
    """A clause with its edition, and how it is known where it is less than seen."""
    if cite is None:
        return ""
    mark = _MARKS.get(cite.confirmed)
    return f"{cite}, {mark}" if mark else str(cite)


def line(step: Step, *, is_sum: bool = False, unit: str = "VA", places: int = 1) -> WorkingLine:
    """One step as a line under a head of ``unit``; a step in another says so."""
    how = _EITHER.sub(lambda match: f"{_SAID[match[1]]} {match[2]} and {match[3]}", step.sum)
    what = f"{step.what[:1].upper()}{step.what[1:]}"
    if step.unit != unit:
        what = f"{what}, {step.unit}"
    return WorkingLine(what, how, figure(step.value, places), is_sum, clause(step.cite))


def lines(steps: Iterable[Step], unit: str, places: int = 1) -> tuple[WorkingLine, ...]:
    """Steps as lines; one that adds up all the lines before it says so."""
    made: list[WorkingLine] = []
    since: list[Step] = []
    for step in steps:
        made.append(line(step, is_sum=_is_total(step, unit), unit=unit, places=places))
        if step.sum.count(" + ") >= FEW and step.sum == " + ".join(plain(each.value) for each in since):
            made[-1] = replace(made[-1], how="added up")
        since = [step] if made[-1].is_sum else [*since, step]
    return tuple(made)


def working(title: str, worked: Worked, says: str = "") -> Working:
    """A figure as a working, under the unit of its first step; what it lacks is said under it."""
    lacks = sentence(f"not all of it is known: {'; '.join(worked.lacks)}") if worked.lacks else ""
    unit = worked.steps[0].unit if worked.steps else worked.unit
    said = " ".join(filter(None, (lacks, says)))
    return Working(title, unit, lines(worked.steps, unit), said, cited(worked.cites))


def _is_total(step: Step, unit: str) -> bool:
    return step.what.startswith(("calculated load", "together", "general load")) or step.unit != unit
