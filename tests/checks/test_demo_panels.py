"""Faults of panels and grounding written into the demo house's own files: one voice each, on its line."""

import shutil
from pathlib import Path

import pytest

from junctionary.checks.finding import Finding
from junctionary.cli.opening import open_record

CONTENT = Path(__file__).parents[2] / "content"
MAIN, SHOP, FEEDER, HOUSE = "panels/main.yaml", "panels/shop.yaml", "circuits/shop-feeder.yaml", "house.yaml"

# what: (file, what stands there, what is written instead, the rule, the line it stands on)
SEEDED = {
    "a bond added in the subpanel": (
        SHOP, "bonded: false ", "bonded: true ", "subpanel-neutral-bonded", "panel: shop",
    ),
    "the service's bond taken out": (
        MAIN, "bonded: true\n", "bonded: false\n", "service-bond-missing", "panel: main",
    ),
    "the feeder's ground taken out": (
        FEEDER, ", 10 AWG green]", "]", "feeder-without-ground", "  - {id: sf1",
    ),
    "a ground too small for the feeder": (
        FEEDER, "10 AWG green", "12 AWG green", "ground-wire-too-small", "  - {id: sf1",
    ),
    "two neutrals in one hole": (
        MAIN, "neutral-bar/7", "neutral-bar/6", "two-neutrals-one-hole", "  26b:",
    ),
    "two neutrals in one hole of the subpanel": (
        SHOP, "neutral-bar/3", "neutral-bar/1", "two-neutrals-one-hole", "  3:",
    ),
    "a shelf before the panel": (
        MAIN, "depth: 42 in", "depth: 30 in", "working-space-short", "panel: main",
    ),
    "a low ceiling over the subpanel": (
        SHOP, "height: 8 ft", "height: 6 ft", "working-space-short", "panel: shop",
    ),
    "a label that allows fewer circuits": (
        MAIN, "circuits: 60 ", "circuits: 42 ", "panel-over-full", "panel: main",
    ),
    "a thin wire to the foundation": (
        HOUSE, "wire: 4 AWG copper", "wire: 6 AWG copper", "electrode-wire-too-small", "  electrodes: ",
    ),
    "two entries of the door changed over": (
        MAIN, "says: Clothes dryer", 'says: "Sump pump, cellar"', "directory-entry-wrong", "  14+16:",
    ),
    "an entry that goes by a name": (
        MAIN, '"North bedroom, upper floor"', '"Robin\'s room, upper floor"', "directory-entry-personal", "  30:",
    ),
}  # fmt: skip


@pytest.fixture(scope="module")
def sound() -> set[tuple[str, tuple[str, ...]]]:
    return {(each.rule, each.about) for each in found_in(CONTENT)}


@pytest.mark.parametrize("what", SEEDED)
def test_a_fault_at_a_panel_of_the_demo_house_has_one_voice(
    what: str, sound: set[tuple[str, tuple[str, ...]]], tmp_path: Path
) -> None:
    file, old, new, rule, stands = SEEDED[what]
    lines, found = changed(tmp_path, file, old, new)
    fresh = [each for each in found if (each.rule, each.about) not in sound]
    assert [(each.rule, each.place.file) for each in fresh] == [(rule, file)]
    assert lines[fresh[0].place.line - 1].startswith(stands)


@pytest.mark.parametrize(
    ("file", "lost", "rule", "asked"),
    [
        (SHOP, "bonded: false                    # neutral kept apart from ground here\n", "subpanel-neutral-bonded",
         "whether neutral and ground are joined in panel shop"),
        (MAIN, "bonded: true\n", "service-bond-missing", "whether neutral and ground are joined in panel main"),
        (SHOP, "depth: 48 in, ", "working-space-short", "the clear depth before panel shop"),
    ],
)  # fmt: skip
def test_a_fact_of_a_panel_left_out_is_asked_for(
    file: str, lost: str, rule: str, asked: str, tmp_path: Path
) -> None:
    record = written(tmp_path, file, lost, "")
    opened = open_record(record)
    assert opened.result is not None
    needs = [each.needs for each in opened.result.judgement.unrecorded if each.rule == rule]
    assert (asked,) in needs


def changed(folder: Path, file: str, old: str, new: str) -> tuple[list[str], tuple[Finding, ...]]:
    record = written(folder, file, old, new)
    return (record / file).read_text("utf-8").splitlines(), found_in(record)


def written(folder: Path, file: str, old: str, new: str) -> Path:
    """A copy of the demo record with one text changed."""
    record = folder / "content"
    shutil.copytree(CONTENT, record)
    path = record / file
    text = path.read_text("utf-8")
    assert text.count(old) == 1
    path.write_text(text.replace(old, new), "utf-8")
    return record


def found_in(record: Path) -> tuple[Finding, ...]:
    opened = open_record(record)
    assert opened.result is not None, opened.problems
    return opened.result.judgement.findings
