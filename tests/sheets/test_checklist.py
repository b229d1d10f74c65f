"""The stage checklist and what can be judged: each finding and each missing fact stands at its stage and room."""

from itertools import pairwise

import pytest

from junctionary.checks.engine import until
from junctionary.checks.examples import judge_example
from junctionary.checks.finding import LAST_CHEAP
from junctionary.sheets.checklists import checklist_sheet, completeness
from junctionary.sheets.entries import Row
from junctionary.sheets.links import Link
from junctionary.sheets.survey import Survey, survey

RECORD = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, feeds: den, says: Den}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1, length: 20 ft}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1: {devices: {r1: d}, makeup: unknown}
[devices/all.yaml]
devices:
  d: {is: receptacle, face: 5-15R}
"""


@pytest.fixture
def den() -> Survey:
    judged = judge_example(RECORD)
    return survey(judged.house, judged.network, judged.figures, judged.judgement, "0" * 64, {})


def words(cell: tuple[str | Link, ...]) -> str:
    return "".join(each if isinstance(each, str) else each.text for each in cell)


def row(rows: tuple[Row, ...], name: str) -> list[str]:
    return next([words(cell) for cell in each.cells] for each in rows if words(each.cells[0]) == name)


def test_a_finding_stands_at_the_stage_of_its_check(den: Survey) -> None:
    stages = {each.before: each.rooms.rows for each in checklist_sheet(den).stages}
    house = "Panels, circuits, the whole house"
    assert "breaker-outrates-wire" in row(stages["before the wall closes"], house)[2]
    assert all("breaker-outrates-wire" not in words(each.cells[2]) for each in stages["before energising"])


def test_a_missing_fact_stands_in_its_room(den: Survey) -> None:
    stages = {each.before: each.rooms.rows for each in checklist_sheet(den).stages}
    assert "how box D1 is made up" in row(stages["before energising"], "Den")[3]


def test_what_cannot_be_judged_is_told_of_the_room_and_of_the_circuit(den: Survey) -> None:
    rooms, circuits = completeness(den)
    unrecorded = {each.rule for each in den.judgement.unrecorded if "D1" in each.about}
    facts, told = row(rooms.lacking.rows, "Den")[1:3]
    assert all(each in told for each in unrecorded)
    assert int(facts) >= 1
    assert row(circuits.lacking.rows, "Den")[2]


def test_a_room_with_boxes_nobody_recorded_is_never_in_the_clear() -> None:
    bare = RECORD.replace("  D1: {devices: {r1: d}, makeup: unknown}\n", "").replace(
        "boxes:\n", "boxes: {}\n"
    )
    bare = bare.replace(", to: D1", ", to: unknown")
    judged = judge_example(bare)
    made = survey(judged.house, judged.network, judged.figures, judged.judgement, "0" * 64, {})
    for stage in checklist_sheet(made).stages:
        assert "whether every box of “Den” is recorded" in row(stage.rooms.rows, "Den")[3]
        assert "Den" not in words(stage.clear)


def test_each_stage_holds_the_checks_of_those_before_it(den: Survey) -> None:
    said = [until(stage, den.judgement) for stage in LAST_CHEAP]
    for earlier, later in pairwise(said):
        assert set(earlier.findings) <= set(later.findings)
        assert set(earlier.unrecorded) <= set(later.unrecorded)
    assert said[-1] == den.judgement
    assert said[0] != den.judgement
