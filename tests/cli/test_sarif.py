"""The SARIF log: valid by the schema OASIS publishes, and true to the findings."""

import json
import os
import shutil
import subprocess
import tarfile
from pathlib import Path
from typing import Any

import pytest
from jsonschema.validators import validator_for

from junctionary.cli import main
from junctionary.cli.opening import open_record

ROOT = Path(__file__).parents[2]
HOLDER = "@microsoft/jest-sarif@1.0.0-beta.0"
"""A package of the npm registry that carries the schema as published."""
SCHEMA = "package/lib/schemas/sarif-2.1.0-rtm.5.json"


@pytest.fixture(scope="module")
def schema(tmp_path_factory: pytest.TempPathFactory) -> Any:
    npm = shutil.which("npm")
    if npm is None:
        pytest.skip("no npm on this machine to fetch the published schema with")
    folder = tmp_path_factory.mktemp("schema")
    done = subprocess.run(
        [npm, "pack", "--silent", HOLDER],
        cwd=folder,
        capture_output=True,
        text=True,
        check=False,
        env=os.environ,
    )
    if done.returncode:
        pytest.skip("the published schema could not be fetched")
    with tarfile.open(next(folder.glob("*.tgz"))) as packed:
        held = packed.extractfile(SCHEMA)
        assert held is not None
        return json.load(held)


def log_of(record: Path, capsys: pytest.CaptureFixture[str]) -> Any:
    main(["check", str(record), "--format", "sarif"])
    return json.loads(capsys.readouterr().out)


def test_the_log_is_valid_by_the_published_schema(
    schema: Any, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    validator = validator_for(schema)(schema)
    demo = log_of(ROOT / "content", capsys)
    assert list(validator.iter_errors(demo)) == []
    (tmp_path / "house.yaml").write_text("house: [\n", "utf-8")
    assert list(validator.iter_errors(log_of(tmp_path, capsys))) == []
    demo["runs"][0]["results"][0]["level"] = "grave"
    assert list(validator.iter_errors(demo)) != []


def test_every_finding_is_a_result_on_its_line(capsys: pytest.CaptureFixture[str]) -> None:
    results = log_of(ROOT / "content", capsys)["runs"][0]["results"]
    opened = open_record(ROOT / "content").result
    assert opened is not None
    levels = {"hazard": "error", "defect": "warning", "advice": "note"}
    wanted = [
        (each.rule, levels[each.severity], each.place.file, each.place.line)
        for each in opened.judgement.findings
    ]
    told = []
    for each in results:
        if each["kind"] == "fail":
            where = each["locations"][0]["physicalLocation"]
            told.append(
                (
                    each["ruleId"],
                    each["level"],
                    where["artifactLocation"]["uri"],
                    where["region"]["startLine"],
                )
            )
    assert told == wanted


def test_what_cannot_be_told_is_open_and_not_passed(capsys: pytest.CaptureFixture[str]) -> None:
    results = log_of(ROOT / "content", capsys)["runs"][0]["results"]
    opened = open_record(ROOT / "content").result
    assert opened is not None
    told = [(each["ruleId"], each["level"]) for each in results if each["kind"] == "open"]
    assert told == [(each.rule, "none") for each in opened.judgement.unrecorded]


def test_a_record_that_cannot_be_read_did_not_succeed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "house.yaml").write_text("house: [\n", "utf-8")
    invocation = log_of(tmp_path, capsys)["runs"][0]["invocations"][0]
    assert invocation["executionSuccessful"] is False
    assert invocation["toolExecutionNotifications"][0]["level"] == "error"
