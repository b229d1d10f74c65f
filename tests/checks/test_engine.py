"""The engine: a crash surfaces, an unfit file is refused, order and editions are kept."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import ModuleType

import pytest

from junctionary.checks import engine
from junctionary.checks.engine import LoadedRule, RuleCrashed, RuleUnfit, judge, load_rule, read_parts, rules
from junctionary.checks.examples import Example, judge_example
from junctionary.checks.finding import ADVICE, HAZARD, CannotTell, Fault
from junctionary.marks import Place

BARE = """
[panels/main.yaml]
panel: main
spaces: 8
"""


@pytest.fixture
def example() -> Example:
    return judge_example(BARE)


def fault(file: str, line: int, edition: str | None = None) -> Fault:
    return Fault(Place(file, line, 1), ("K1",), "Found.", "Allowed.", "Because.", "Do.", edition=edition)


def use(monkeypatch: pytest.MonkeyPatch, *given: LoadedRule) -> None:
    found: Mapping[str, LoadedRule] = {each.id: each for each in given}
    monkeypatch.setattr(engine, "rules", lambda: found)


def saying(rule: LoadedRule, *answers: Fault | CannotTell) -> LoadedRule:
    return replace(rule, check=lambda house, network, figures: iter(answers))


def test_a_rule_that_raises_stops_the_run_and_is_named(
    monkeypatch: pytest.MonkeyPatch, example: Example
) -> None:
    def check(house: object, network: object, figures: object) -> Iterator[Fault]:
        yield fault("boxes/den.yaml", 3)
        raise KeyError("K9")

    use(monkeypatch, replace(rules()["box-overfilled"], check=check))
    with pytest.raises(RuleCrashed, match="box-overfilled") as crashed:
        judge(example.house, example.network, example.figures)
    assert isinstance(crashed.value.__cause__, KeyError)


def test_findings_stand_by_severity_and_then_by_place(
    monkeypatch: pytest.MonkeyPatch, example: Example
) -> None:
    grave = saying(
        replace(rules()["box-overfilled"], id="grave", severity=HAZARD),
        fault("b.yaml", 9),
        fault("b.yaml", 2),
    )
    light = saying(replace(rules()["box-overfilled"], id="light", severity=ADVICE), fault("a.yaml", 1))
    use(monkeypatch, light, grave)
    found = judge(example.house, example.network, example.figures).findings
    assert [(each.rule, str(each.place)) for each in found] == [
        ("grave", "b.yaml:2:1"), ("grave", "b.yaml:9:1"), ("light", "a.yaml:1:1"),
    ]  # fmt: skip


def test_a_finding_said_twice_is_said_once(monkeypatch: pytest.MonkeyPatch, example: Example) -> None:
    missing = CannotTell(("K1",), ("the volume",), None)
    use(
        monkeypatch,
        saying(rules()["box-overfilled"], fault("a.yaml", 1), fault("a.yaml", 1), missing, missing),
    )
    judgement = judge(example.house, example.network, example.figures)
    assert [str(each.place) for each in judgement.findings] == ["a.yaml:1:1"]
    assert [each.needs for each in judgement.unrecorded] == [("the volume",)]


def test_a_clause_is_numbered_as_in_the_edition_the_subject_is_judged_by(
    monkeypatch: pytest.MonkeyPatch, example: Example
) -> None:
    old, new = fault("a.yaml", 1, edition="nec-2008"), fault("a.yaml", 2)
    use(monkeypatch, saying(rules()["directory-entry-vague"], old, new))
    found = judge(example.house, example.network, example.figures).findings
    assert [str(each.cites[0]) for each in found] == ["NEC 2008, 408.4", "NEC 2023, 408.4(A)"]


@pytest.mark.parametrize("part", ["RULE", "FAILS", "PASSES", "UNTOLD", "check"])
def test_a_file_that_lacks_a_part_is_refused(part: str) -> None:
    module = ModuleType(
        "rules.boxes.half_a_rule", "A fault.\n\n" + "".join(f"{each}: so.\n" for each in engine.PARTS)
    )
    for each in {"RULE", "FAILS", "PASSES", "UNTOLD", "check"} - {part}:
        setattr(module, each, "")
    with pytest.raises(RuleUnfit, match=f"lacks {part}"):
        load_rule(module)


def test_a_file_whose_docstring_lacks_a_part_is_refused() -> None:
    module = ModuleType(
        "rules.boxes.half_told", "A fault.\n\nWhy it matters: so.\nCannot tell: so.\nStands: so."
    )
    for each in ("RULE", "FAILS", "PASSES", "UNTOLD", "check"):
        setattr(module, each, "")
    with pytest.raises(RuleUnfit, match="lacks What to do"):
        load_rule(module)


def test_a_docstring_is_read_by_its_headings() -> None:
    title, parts = read_parts("A fault\n   is there.\n\nWhy it matters: one\n    two.\nWhat to do: three.\n")
    assert title == "A fault is there."
    assert parts == (("Why it matters", "One two."), ("What to do", "Three."))
