"""Faults of wiring written into the demo house's own files, and found on the line where they stand."""

import shutil
from pathlib import Path

import pytest

from junctionary.cli.opening import open_record

CONTENT = Path(__file__).parents[2] / "content"
KITCHEN, MAIN = "boxes/kitchen.yaml", "panels/main.yaml"
K1 = "    makeup: {feed: cn1, guarded: [cn2]}\n"
K11 = "      - {feed: dp2, devices: [r2]}\n"
K12 = "      - {feed: kl8, switched: {s2: kl9}}\n"

# what: (file, the lines after which it is written, what is written, the rule, the line it stands on)
SEEDED = {
    "line and load changed over": (
        KITCHEN,
        K1,
        "    terminals:\n      r1.line-brass: cn2.black\n      r1.line-silver: cn2.white\n"
        "      r1.load-brass: cn1.black\n      r1.load-silver: cn1.white\n",
        "gfci-line-load-swapped",
        "      r1.load-brass: cn1.black",
    ),
    "the hots of two circuits joined": (
        KITCHEN,
        K12,
        "    joints:\n      - {join: [dp1.black, kl8.black, s1.brass-1, s2.brass-1], by: lever-5}\n",
        "circuits-joined",
        "      - {join: [dp1.black, kl8.black, s1.brass-1, s2.brass-1], by: lever-5}",
    ),
    "a neutral borrowed from the other circuit": (
        KITCHEN,
        K11,
        "    joints:\n      - {join: [dw1.white, r1.silver, r2.silver], by: lever-3}\n    capped: [dp2.white]\n",
        "neutral-borrowed",
        "      - {join: [dw1.white, r1.silver, r2.silver], by: lever-3}",
    ),
    "a ground taken from the neutral": (
        KITCHEN,
        K11,
        "    terminals:\n      r1.silver: {wire: [dw1.white, r1.green], how: loop}\n"
        "    joints:\n      - {join: [dw1.bare, dp2.bare, r2.green], by: lever-3}\n",
        "ground-borrowed-from-neutral",
        "      r1.silver: {wire: [dw1.white, r1.green], how: loop}",
    ),
    "both poles of the pair on one leg": (
        MAIN, "ties: [[6, 8]]\n", "legs: {6: A, 8: A}\n", "multiwire-same-leg", "  8:",
    ),
}  # fmt: skip


@pytest.mark.parametrize("what", SEEDED)
def test_a_fault_in_the_demo_house_is_found_on_its_line(what: str, tmp_path: Path) -> None:
    file, after, written, rule, stands = SEEDED[what]
    assert found_after(tmp_path, file, after, after + written, rule).startswith(stands)


@pytest.mark.parametrize(
    ("lost", "rule", "stands"),
    [
        ("ties: [[6, 8]]\n", "multiwire-untied", "  6:"),
        ("interlocks: [[main, 1+3]]\n", "sources-without-interlock", "  1+3:"),
    ],
)
def test_a_tie_or_interlock_lost_is_found_on_the_breakers_line(
    lost: str, rule: str, stands: str, tmp_path: Path
) -> None:
    assert found_after(tmp_path, MAIN, lost, "", rule).startswith(stands)


def found_after(folder: Path, file: str, old: str, new: str, rule: str) -> str:
    """The line on which the rule's one new finding stands, once the text has been changed."""
    record = folder / "content"
    shutil.copytree(CONTENT, record)
    path = record / file
    text = path.read_text("utf-8")
    assert text.count(old) == 1
    path.write_text(text.replace(old, new), "utf-8")
    opened = open_record(record)
    assert opened.result is not None, opened.problems
    lines = path.read_text("utf-8").splitlines()
    found = [each for each in opened.result.judgement.findings if each.rule == rule]
    assert [each.place.file for each in found] == [file]
    return lines[found[0].place.line - 1]
