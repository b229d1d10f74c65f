"""Accepted findings: they stay visible, they no longer fail the run, and a stale one is a problem."""

import json
from pathlib import Path

import pytest

from junctionary.cli import main

RECORD = {
    "house.yaml": "house: Test\nreference: nec-2023\n",
    "panels/main.yaml": "panel: main\nspaces: 8\nbreakers:\n"
    "  3: {rating: 20 A, guards: [], feeds: den, says: Den}\n",
    "circuits/den.yaml": "circuit: den\nname: Den\nruns:\n"
    "  - {id: b1, cable: 12/2 NM-B, from: main, to: D1, length: 20 ft}\n"
    "  - {id: b2, cable: 14/2 NM-B, from: D1, to: D2, length: 20 ft}\n",
    "rooms/den.yaml": "room: den\nname: Den\nkind: den\n",
    "boxes/den.yaml": "room: den\nboxes:\n  D1: {devices: {r1: d}, makeup: pigtailed}\n"
    "  D2: {devices: {r1: d}, makeup: end-of-run}\n",
    "devices/all.yaml": "devices:\n  d: {is: receptacle, face: 5-15R, torque: 14 in-lb}\n",
}  # fmt: skip
ACCEPTED = "- {rule: breaker-outrates-wire, about: b2, reason: the breaker is on order, date: 2026-11-02, by: inspector}\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name, text in RECORD.items():
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, "utf-8")
    return tmp_path


def report(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> tuple[int, dict[str, list[dict[str, object]]]]:
    code = main(["check", str(folder), "--format", "json"])
    return code, json.loads(capsys.readouterr().out)


def test_an_accepted_finding_stays_visible_and_no_longer_fails(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert report(folder, capsys)[0] == 1
    (folder / "accepted.yaml").write_text(ACCEPTED, "utf-8")
    code, told = report(folder, capsys)
    wire = next(each for each in told["findings"] if each["rule"] == "breaker-outrates-wire")
    assert wire["accepted"] == "by inspector, 2026-11-02: the breaker is on order"
    others = [each for each in told["findings"] if each["severity"] == "hazard" and not each["accepted"]]
    assert code == (1 if others else 0)


def test_the_manual_shows_it_as_accepted(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "accepted.yaml").write_text(ACCEPTED, "utf-8")
    out = tmp_path / "manual"
    assert main(["publish", str(folder), "-o", str(out)]) == 0
    findings = next(out.rglob("findings.html")).read_text("utf-8")
    assert "the breaker is on order" in findings


@pytest.mark.parametrize(
    ("accepted", "column", "found"),
    [
        (ACCEPTED.replace("about: b2", "about: b1"), 40, "breaker-outrates-wire finds nothing on b1"),
        (ACCEPTED.replace("breaker-outrates-wire", "breaker-outrate-wire"), 10, "no check is called"),
        (ACCEPTED * 2, 40, "is accepted twice"),
    ],
)
def test_an_acceptance_of_nothing_is_a_problem_at_its_place(
    accepted: str, column: int, found: str, folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "accepted.yaml").write_text(accepted, "utf-8")
    code, told = report(folder, capsys)
    problem = next(each for each in told["problems"] if str(each["file"]) == "accepted.yaml")
    assert code == 2
    assert found in str(problem["found"])
    assert problem["column"] == column


def test_what_a_check_cannot_tell_at_present_may_stay_accepted(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (folder / "accepted.yaml").write_text(ACCEPTED.replace("about: b2", "about: den"), "utf-8")
    circuit = folder / "circuits/den.yaml"
    circuit.write_text(circuit.read_text("utf-8").replace("14/2 NM-B", "unknown"), "utf-8")
    assert report(folder, capsys)[0] in (0, 1)
