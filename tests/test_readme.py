"""README is true: its example record is read at every step, and its commands are the real ones."""

import re
from pathlib import Path

import pytest

from junctionary.cli import main
from junctionary.read import load
from junctionary.records import FILES
from junctionary.records.boxes import BoxesFile

README = (Path(__file__).parents[1] / "README.md").read_text("utf-8")
EXAMPLES = re.findall(r"```yaml\n# (my-house/\S+)\n(.*?)```", README, re.DOTALL)
DIRECTORY, CABLES, JOINTS, SHAPE = 6, 9, 10, 11
"""How many of the examples make a whole record: the directory, the first cables, joint by joint, a room's shape."""


@pytest.mark.parametrize("step", [DIRECTORY, CABLES, JOINTS, SHAPE])
def test_the_growing_record_is_read_at_every_step(
    step: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    for file, text in EXAMPLES[:step]:
        path = tmp_path / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    code = main(["check", "my-house"])
    said = capsys.readouterr()
    assert code != 2, said.out
    assert "warning" not in said.out
    assert "hazard: " not in said.out


def test_the_steps_are_those_of_the_readme() -> None:
    assert [file for file, _ in EXAMPLES][DIRECTORY - 1 :] == [
        "my-house/rooms/kitchen.yaml", "my-house/devices/all.yaml", "my-house/boxes/kitchen.yaml",
        "my-house/circuits/counter.yaml", "my-house/boxes/kitchen.yaml", "my-house/rooms/kitchen.yaml",
        "my-house/accepted.yaml",
    ]  # fmt: skip


def test_the_whole_example_publishes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    for file, text in EXAMPLES:
        path = tmp_path / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    assert main(["publish", "my-house", "-o", "my-manual"]) == 0, capsys.readouterr().err
    assert (tmp_path / "my-manual/index.html").is_file()


def test_every_word_of_make_up_in_the_readme_is_one() -> None:
    table = README.partition("| you write | it means |")[2].partition("\n\n")[0]
    written = re.findall(r"^\| `(.+?)` \|", table, re.MULTILINE)
    assert len(written) >= 10
    for each in written:
        tree, problems = load(f"room: den\nboxes:\n  K1: {{makeup: {each}}}\n", "boxes/den.yaml")
        assert not problems
        BoxesFile.model_validate(tree)


@pytest.mark.parametrize("kind", FILES)
def test_every_kind_of_file_is_in_the_readme(kind: str) -> None:
    assert f"`{kind}`" in README or f"{kind}.yaml" in README


def test_every_verb_of_the_readme_exists(capsys: pytest.CaptureFixture[str]) -> None:
    for verb in set(re.findall(r"`junctionary ([a-z]+)", README)):
        with pytest.raises(SystemExit) as stopped:
            main([verb, "--help"])
        assert stopped.value.code == 0
    capsys.readouterr()
