"""The code's own rules: lint, types, layers, sizes and names."""

import importlib.util
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "generator" / "junctionary"
ALLOWED_AT_THE_TOP = {
    "README.md", "DEVELOPERS.md", "pyproject.toml", "LICENSE", "generator", "content", "themes", "tests",
}  # fmt: skip


def run(*command: str) -> None:
    done = subprocess.run([sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


def test_ruff_finds_nothing() -> None:
    run("ruff", "check", "--no-cache", ".")


def test_mypy_finds_nothing() -> None:
    run("mypy")


def test_data_flows_one_way() -> None:
    done = subprocess.run(
        [sys.executable, "-c", "from importlinter.cli import lint_imports_command as c; c()", "--no-cache"],
        cwd=ROOT,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "1 kept, 0 broken" in done.stdout


def test_the_top_level_holds_only_what_it_should() -> None:
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True)
    if listed.returncode:
        pytest.skip("not a git checkout")
    top = {line.split("/")[0] for line in listed.stdout.splitlines()}
    assert {each for each in top if not each.startswith(".")} == ALLOWED_AT_THE_TOP


@pytest.mark.parametrize(
    "path", sorted(PACKAGE.rglob("*.py")), ids=lambda path: str(path.relative_to(PACKAGE))
)
def test_a_module_is_short_enough_to_read(path: Path) -> None:
    assert path.read_text("utf-8").count("\n") <= 400
    assert path.stem not in {"utils", "util", "helpers", "helper", "common", "core", "misc", "manager"}


def test_only_the_command_prints_or_exits() -> None:
    spoken = [
        f"{path.relative_to(PACKAGE)}: {word}"
        for path in PACKAGE.rglob("*.py")
        if path.parent.name != "cli"
        for word in ("print(", "sys.exit(", "sys.stdout")
        if word in path.read_text("utf-8")
    ]
    assert spoken == []


def test_the_package_says_it_is_typed() -> None:
    spec = importlib.util.find_spec("junctionary")
    assert spec is not None
    assert spec.origin is not None
    assert (Path(spec.origin).parent / "py.typed").exists()
