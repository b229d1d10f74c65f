"""The command as a user meets it: verbs, exit codes, the wheel far from its checkout."""

import json
import os
import re
import resource
import subprocess
import sys
import time
import zipfile
from pathlib import Path

import pytest

from junctionary.checks import engine
from junctionary.checks.engine import rules
from junctionary.cli import main
from junctionary.records import FILES

ROOT = Path(__file__).parents[2]
CONTENT = str(ROOT / "content")


@pytest.mark.parametrize(("fail_on", "code"), [("hazard", 1), ("defect", 1), ("advice", 1), ("never", 0)])
def test_the_exit_code_follows_the_asked_severity(
    fail_on: str, code: int, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", CONTENT, "--fail-on", fail_on]) == code
    assert "not recorded." in capsys.readouterr().out


def test_a_directory_alone_is_a_valid_record_without_findings(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "panels").mkdir()
    (tmp_path / "circuits").mkdir()
    (tmp_path / "house.yaml").write_text("house: Thin End\nreference: nec-2023\n")
    (tmp_path / "panels/main.yaml").write_text(
        "panel: main\nspaces: 4\nbreakers:\n  1: {rating: 20 A, feeds: den, says: Den receptacles}\n"
    )
    (tmp_path / "circuits/den.yaml").write_text("circuit: den\nname: Den\n")
    assert main(["check", str(tmp_path), "--fail-on", "advice"]) == 0
    assert main(["publish", str(tmp_path), "-o", str(tmp_path / "manual")]) == 0
    assert (tmp_path / "manual/circuit/den.html").is_file()
    capsys.readouterr()


def test_a_folder_that_is_no_manual_is_not_written_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "letters").mkdir()
    (tmp_path / "letters/dear.txt").write_text("keep me")
    assert main(["publish", CONTENT, "-o", str(tmp_path / "letters")]) == 2
    assert (tmp_path / "letters/dear.txt").read_text() == "keep me"
    assert "letters" in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["letters"]


def test_a_rule_that_crashes_is_never_a_clean_house(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def crash(*_: object) -> None:
        raise ZeroDivisionError("a fault in a rule")

    monkeypatch.setattr("junctionary.checks.rules.boxes.box_overfilled.check", crash)
    engine.rules.cache_clear()
    try:
        assert main(["check", CONTENT, "--fail-on", "never"]) == 2
    finally:
        monkeypatch.undo()
        engine.rules.cache_clear()
    said = capsys.readouterr()
    assert "box-overfilled" in said.err
    assert said.out == ""


@pytest.mark.parametrize("rule", sorted(rules()))
def test_explain_says_what_a_rule_looks_at_and_how_to_mend_it(
    rule: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["explain", rule]) == 0
    said = capsys.readouterr().out
    for heading in ("Why it matters", "What to do", "Cannot tell", "Rests on", "An example that fails"):
        assert heading in said


def test_explain_names_the_nearest_rule(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "box-overfiled"]) == 2
    assert "box-overfilled" in capsys.readouterr().err


def test_a_fact_that_many_circuits_lack_is_told_once(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    breakers = "".join(
        f"  {space}: {{rating: 20 A, feeds: c{space}, says: Use {space}}}\n" for space in range(1, 9)
    )
    (tmp_path / "house.yaml").write_text("house: Hut\nreference: nec-2023\n")
    (tmp_path / "panels").mkdir()
    (tmp_path / "panels/main.yaml").write_text(f"panel: main\nspaces: 8\nbreakers:\n{breakers}")
    (tmp_path / "circuits").mkdir()
    for space in range(1, 9):
        (tmp_path / f"circuits/c{space}.yaml").write_text(f"circuit: c{space}\nname: Use {space}\n")
    main(["check", str(tmp_path)])
    said = capsys.readouterr().out
    assert (
        "    the cables of circuits c1, c2, c3, c4, c5, c6 and 2 more\n        would settle breaker-outrates"
        in said
    )
    assert said.count("the cables of") == 1
    assert re.search(r"\d+ facts not recorded", said)


def test_explain_tells_every_key_of_a_file_with_an_example(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "rooms"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("rooms/*.yaml: one room a file\n")
    for line in (
        "    room (must be there): its id\n            room: kitchen\n",
        "            one of kitchen, dining, living,",
        "            outline: [[0 ft, 0 ft], [14 ft, 0 ft], [14 ft, 11 ft], [0 ft, 11 ft]]\n",
        "        what (must be there): what it is\n",
    ):
        assert line in said


@pytest.mark.parametrize("kind", FILES)
def test_explain_knows_every_kind_of_file(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", kind]) == 0
    said = capsys.readouterr().out
    for key in FILES[kind].keys_of():
        assert f"\n    {key}:" in said or f"\n    {key} (must be there):" in said


def test_explain_tells_where_a_key_may_stand(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "three_way"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("boxes > boxes > makeup > three_way\n")
    assert "three_way: {s2: {common: feed, travelers: h2}}" in said


def test_explain_without_a_name_tells_how_keys_are_explained(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain"]) == 0
    assert "junctionary explain house | panels | circuits | rooms" in capsys.readouterr().out


def test_problems_are_in_the_json_report_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "house.yaml").write_text("house: Short Straw\nreference: nec-2032\n")
    assert main(["check", str(tmp_path), "--format", "json"]) == 2
    report = json.loads(capsys.readouterr().out)
    assert report["problems"][0]["file"] == "house.yaml"
    assert (report["problems"][0]["line"], report["problems"][0]["column"]) == (2, 12)
    assert "nec-20" in report["problems"][0]["expected"]


def spent(*command: str) -> float:
    """Processor seconds of one whole process, as an installed command runs: from modules already compiled."""
    compiled = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    whole = [sys.executable, "-m", "junctionary", *command]
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(whole, env=compiled, capture_output=True, check=False)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def test_help_answers_at_once() -> None:
    assert min(spent("--help") for _ in range(3)) < 0.3


def test_the_demo_house_is_checked_and_published_in_a_few_seconds(tmp_path: Path) -> None:
    # About twice what a quiet machine of two cores takes: others may be at work on this one.
    check = min(spent("check", CONTENT) for _ in range(3))
    publish = min(
        spent("publish", CONTENT, "-o", str(tmp_path / f"manual-{time.time_ns()}")) for _ in range(4)
    )
    assert (check < 3, publish < 8) == (True, True), f"check {check:.2f} s, publish {publish:.2f} s"


def test_reading_and_judging_the_demo_house_does_not_wake_pint() -> None:
    told = (
        "import sys; from junctionary.cli import main; "
        f"main(['check', {CONTENT!r}]); sys.exit(3 if 'pint' in sys.modules else 0)"
    )
    assert subprocess.run([sys.executable, "-c", told], capture_output=True, check=False).returncode == 0


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    built = subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert built.returncode == 0, built.stderr
    return next(folder.glob("*.whl"))


def test_the_wheel_works_far_from_the_checkout(wheel: Path, tmp_path: Path) -> None:
    installed = tmp_path / "installed"
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(installed)
    far = tmp_path / "far"
    far.mkdir()
    done = subprocess.run(
        [sys.executable, "-m", "junctionary", "publish", "--demo"],
        cwd=far,
        env={**os.environ, "PYTHONPATH": str(installed)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert (far / "house-manual/index.html").is_file()
    where = subprocess.run(
        [sys.executable, "-c", "import junctionary; print(junctionary.__file__)"],
        cwd=far,
        env={**os.environ, "PYTHONPATH": str(installed)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert where.stdout.startswith(str(installed))


def test_what_a_reader_leaves_unread_does_not_make_a_house_clean() -> None:
    read, write = os.pipe()
    os.close(read)
    command = [sys.executable, "-m", "junctionary", "check", CONTENT]
    ran = subprocess.run(command, stdout=write, stderr=subprocess.PIPE, text=True, check=False)
    os.close(write)
    assert (ran.returncode, ran.stderr) == (1, "")


@pytest.mark.parametrize("redirected", [">&-", "> /dev/full"])
def test_an_output_that_cannot_be_written_is_no_traceback_and_no_clean_house(redirected: str) -> None:
    command = f"'{sys.executable}' -m junctionary check '{CONTENT}' {redirected}"
    ran = subprocess.run(["sh", "-c", command], capture_output=True, text=True, check=False)
    assert ran.returncode in (1, 2)
    assert "Traceback" not in ran.stderr


def test_the_root_of_a_drive_is_no_folder_for_a_manual(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["publish", CONTENT, "-o", "/"]) == 2
    assert capsys.readouterr().err == "/: is no folder that can be swapped; name one within it\n"
