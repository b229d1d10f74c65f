"""The demo house: it holds what it should, and every fault seeded in it is found, and no other."""

import json
import re
from collections import Counter
from pathlib import Path

import pytest
import yaml

from junctionary.cli import main
from junctionary.cli.opening import Result, open_record

ROOT = Path(__file__).parents[1]
SEEDED = yaml.safe_load((ROOT / "tests/seeded.yaml").read_text("utf-8"))


@pytest.fixture(scope="module")
def demo() -> Result:
    opened = open_record(ROOT / "content")
    assert opened.problems == ()
    assert opened.result is not None
    return opened.result


def test_every_seeded_fault_is_found_and_nothing_sound_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    code = main(["check", str(ROOT / "content"), "--format", "json"])
    report = json.loads(capsys.readouterr().out)
    assert code == 1
    assert report["problems"] == []
    found = sorted((each["rule"], each["file"], each["line"]) for each in report["findings"])
    assert found == sorted((each["rule"], each["file"], each["line"]) for each in SEEDED)


def test_every_first_rule_has_a_seeded_fault() -> None:
    assert set(Counter(each["rule"] for each in SEEDED)) >= {
        "breaker-outrates-wire", "receptacle-unfit-for-circuit", "single-receptacle-underrated",
        "two-wires-one-terminal", "push-in-with-large-wire", "connector-overfilled", "box-overfilled",
        "polarity-reversed", "torque-not-recorded", "box-not-reachable", "directory-entry-vague",
        "directory-entry-doubled",
    }  # fmt: skip


def test_a_report_has_every_part(capsys: pytest.CaptureFixture[str]) -> None:
    main(["check", str(ROOT / "content"), "--format", "json"])
    report = json.loads(capsys.readouterr().out)
    assert set(report) == {"record", "digest", "problems", "findings", "unrecorded"}
    assert re.fullmatch(r"[0-9a-f]{64}", report["digest"])
    for finding in report["findings"]:
        assert set(finding) == {
            "rule", "severity", "file", "line", "column", "about", "found", "allowed", "because", "do", "cites",
            "working", "accepted",
        }  # fmt: skip
        assert all(finding[part] for part in ("about", "found", "allowed", "because", "do", "cites"))
    for missing in report["unrecorded"]:
        assert set(missing) == {"rule", "about", "needs"}
        assert missing["needs"]


def test_the_house_is_as_large_as_a_real_one(demo: Result) -> None:
    house = demo.house
    assert len(house.circuits) >= 28
    assert len(house.boxes) >= 120
    assert len(house.runs) >= 110
    assert len(house.rooms) >= 16
    assert len(house.panels) >= 2


def test_it_holds_the_constructions_a_real_house_has(demo: Result) -> None:
    house = demo.house
    kinds = {load.is_ for circuit in house.circuits.values() for load in circuit.loads}
    assert kinds >= {"range", "dryer", "water-heater", "heat-pump", "car-charger", "freezer"}
    assert any(len(circuit.breakers) == 2 for circuit in house.circuits.values()), "a multiwire pair"
    assert any(len(box.circuits) >= 2 for box in house.boxes.values()), "a box with two circuits"
    assert any(breaker.interlocked_with for breaker in house.breakers.values()), "an interlock"
    assert any(device.split for device in house.devices.values()), "a half-switched receptacle"
    assert any(box.capped for box in house.boxes.values()), "a capped spare"
    assert any(run.from_.kind == "unknown" or run.to.kind == "unknown" for run in house.runs.values())
    assert {device.kind.ways for device in house.devices.values()} >= {3, 4}, "3-way and 4-way switches"
    assert any(
        run.conductors and not any(each.is_ground for each in run.conductors) for run in house.runs.values()
    ), "an old circuit without ground"
    fills = [fill for fill in demo.figures.fill.values() if fill.left is not None]
    assert any(fill.left == 0 for fill in fills), "a box filled to the last fraction"
