"""Every figure of the demo house: its steps come out as they say, and so does every sum on every page.

Figures and sheets are walked whole, so that one added later is held here without being named.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from fractions import Fraction
from pathlib import Path
from typing import TypeVar

import pytest

from junctionary.cli.opening import Opened, open_record
from junctionary.formulas.sums import SumError, evaluate
from junctionary.formulas.worked import Worked
from junctionary.house.suspects import ways
from junctionary.publish.manual import sheets
from junctionary.read.source import lines_of
from junctionary.sheets.entries import Working, WorkingLine
from junctionary.sheets.finding_things import things
from junctionary.sheets.room_for_more import room_for_more
from junctionary.sheets.survey import survey
from junctionary.sources import cite
from junctionary.units import WireSize, decimal

ROOT = Path(__file__).parents[1]
T = TypeVar("T")

_EITHER = re.compile(r"the (smaller|larger) of (\S+) and (\S+)")
_LETTERED = {"smaller": "min", "larger": "max"}
_GAUGE = re.compile(r"\S+ (?:AWG|kcmil)")
_AMOUNT = re.compile(r"([−-]?[\d,]+(?:\.(\d+))?)(?: .*)?")


@pytest.fixture(scope="module")
def demo() -> Opened:
    return open_record(ROOT / "content")


@pytest.fixture(scope="module")
def figures(demo: Opened) -> list[tuple[str, Worked]]:
    assert demo.result is not None
    return list(reached(demo.result.figures, Worked, "figures"))


@pytest.fixture(scope="module")
def workings(demo: Opened) -> list[tuple[str, Working]]:
    result = demo.result
    assert result is not None
    texts = {each.file: each.text for each in demo.files.sources if each.file.endswith((".yaml", ".md"))}
    lines = {file: lines_of(text) for file, text in texts.items()}
    seen = survey(result.house, result.network, result.figures, result.judgement, demo.files.digest, lines)
    known = ways(result.house, result.network)
    return [
        (f"{sheet.heading}: {working.title}", working)
        for sheet in sheets(seen, texts, known, things(seen, known.supply), room_for_more(seen, known.supply))
        for _, working in reached(sheet, Working, "sheet")
    ]


def reached(root: object, kind: type[T], path: str) -> Iterator[tuple[str, T]]:
    """Everything of one kind below a thing, with the way to it."""
    waiting: list[tuple[str, object]] = [(path, root)]
    met: set[int] = set()
    while waiting:
        name, at = waiting.pop()
        if id(at) in met or isinstance(at, str):
            continue
        met.add(id(at))
        if isinstance(at, kind):
            yield name, at
        if is_dataclass(at):
            waiting += [(f"{name}.{each.name}", getattr(at, each.name)) for each in fields(at)]
        elif isinstance(at, Mapping):
            waiting += [(f"{name}[{key}]", each) for key, each in at.items()]
        elif isinstance(at, list | tuple | set | frozenset):
            waiting += [(f"{name}[{number}]", each) for number, each in enumerate(at)]


def test_every_step_is_worth_what_its_sum_comes_to(figures: list[tuple[str, Worked]]) -> None:
    assert figures
    wrong = [
        f"{name}: {step}"
        for name, worked in figures
        for step in worked.steps
        if evaluate(step.sum) != step.value
    ]
    assert wrong == []


def test_every_figure_is_what_its_last_step_comes_to(figures: list[tuple[str, Worked]]) -> None:
    wrong = [
        f"{name}: {worked.value} {worked.unit}, but {[str(step) for step in worked.steps[-1:]]}"
        for name, worked in figures
        if worked.value is not None
        and (
            not worked.steps or (worked.steps[-1].value, worked.steps[-1].unit) != (worked.value, worked.unit)
        )
    ]
    assert wrong == []


def test_every_clause_a_figure_rests_on_is_held_here_and_says_the_same(
    figures: list[tuple[str, Worked]],
) -> None:
    cited = {each for _, worked in figures for each in worked.cites}
    cited |= {step.cite for _, worked in figures for step in worked.steps if step.cite is not None}
    assert cited
    for each in cited:
        held = cite(each.publication, each.clause)
        assert (held.summary, held.confirmed) == (each.summary, each.confirmed)


def test_every_line_of_every_sum_on_every_page_comes_out_as_shown(
    demo: Opened, figures: list[tuple[str, Worked]], workings: list[tuple[str, Working]]
) -> None:
    assert workings
    assert demo.result is not None
    sizes = {str(size) for _, size in reached(demo.result.figures, WireSize, "figures")}
    known: dict[str, set[Fraction]] = {}
    for _, worked in figures:
        for step in worked.steps:
            known.setdefault(step.what.casefold(), set()).add(step.value)
    totals = {each.value for _, worked in figures for each in worked.steps[-1:]}
    wrong = [
        f"{page}: {line.what}: {line.how!r} shown as {line.figure!r}"
        for page, working in workings
        for above, line in zip(before(working), working.lines, strict=True)
        if not (line.figure in sizes and not line.how)
        and not comes_out(above, line, known.get(line.what.casefold(), set()), totals)
    ]
    assert wrong == []


def test_every_sum_on_every_page_names_its_source(workings: list[tuple[str, Working]]) -> None:
    assert [page for page, working in workings if working.lines and not working.source] == []


def before(working: Working) -> Iterator[tuple[WorkingLine, ...]]:
    """For each line of a working those above it, back to the last result."""
    above: tuple[WorkingLine, ...] = ()
    for line in working.lines:
        yield above
        above = (line,) if line.is_sum else (*above, line)


def comes_out(
    above: tuple[WorkingLine, ...], line: WorkingLine, known: set[Fraction], totals: set[Fraction]
) -> bool:
    """Whether a line's figure is what its sum says, to the digits shown.

    An area by its gauge is worked out from the size. A line without a sum written out is a step
    of a figure by the same words (which has its own sum, held above), or it adds up the lines
    above or is what a figure comes to, or repeats the last line.
    """
    shown = _AMOUNT.fullmatch(line.figure)
    if shown is None:
        return line.figure == "?" and line.how == "not recorded"
    number, digits = shown[1].replace(",", "").replace("−", "-"), len(shown[2] or "")
    if line.how == "by its gauge":
        size = _GAUGE.search(line.what)
        worth = {Fraction(WireSize(size[0]).area_mm2)} if size else set()
    elif line.how not in ("", "added up", "at least"):
        spoken = _EITHER.sub(lambda match: f"{_LETTERED[match[1]]}({match[2]}, {match[3]})", line.how)
        try:
            worth = {evaluate(spoken)}
        except SumError:
            return False
    else:
        added = sum((_amount(each) for each in above if not each.within), Fraction(0))
        worth = {*known, *totals, added} if line.how else {*known, *map(_amount, above[-1:])}
    return number in {decimal(each, digits) for each in worth}


def _amount(line: WorkingLine) -> Fraction:
    match = _AMOUNT.fullmatch(line.figure)
    return evaluate(match[1].replace(",", "")) if match else Fraction(0)
