"""The demo house judged by one edition of the code after another: what changes is what the code changed.

``CHANGED`` and ``SPOKEN`` are the whole of what is expected. Every figure and every answer of every
rule is compared, so that one which moves with an edition and is not named here fails, and so does one
named here which does not move.
"""

import re
import shutil
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from itertools import pairwise
from pathlib import Path

import pytest

from junctionary.cli.opening import Result, open_record
from junctionary.house.model import House
from junctionary.units import WireSize

CONTENT = Path(__file__).parents[1] / "content"
EDITIONS = ("nec-2008", "nec-2011", "nec-2014", "nec-2017", "nec-2020", "nec-2023", "nec-2026")
WRITTEN = "reference: nec-2023"
NUMBERED = ("edition", "cite", "cites", "place")
"""What is numbered anew in each edition, or only says where a thing is written."""

Subjects = Callable[[House], set[str]]


@dataclass(frozen=True)
class Change:
    """From ``since`` on a clause gives other figures: those of one field, of these subjects."""

    since: str
    clause: str
    field: str
    of: Subjects


def runs_of_small_copper(house: House) -> set[str]:
    """14 and 12 AWG lost 5 A of their 60 °C column, and NM-B is held to it."""
    small = (WireSize("14 AWG"), WireSize("12 AWG"))
    return {
        run.id
        for run in house.runs.values()
        if run.edition == house.edition
        and run.conductors
        and min(each.size for each in run.conductors if not each.is_ground) in small
    }


def circuits_of_small_copper(house: House) -> set[str]:
    small = runs_of_small_copper(house)
    return {each.id for each in house.circuits.values() if small & set(each.runs)}


def boxes_with_many_grounds(house: House) -> set[str]:
    """Boxes of more than four equipment grounding conductors."""

    def grounds(box: str) -> int:
        ends = [run for run in house.runs.values() for end in run.ends if end.id == box]
        ends += [house.runs[each.run] for each in house.boxes[box].passing]
        return sum(wire.is_ground and wire.colour != "armor" for run in ends for wire in run.conductors)

    return {id_ for id_, box in house.boxes.items() if box.edition == house.edition and grounds(id_) > 4}


def boxes_with_terminal_blocks(house: House) -> set[str]:
    return {
        id_ for id_, box in house.boxes.items() if box.edition == house.edition and box.record.terminal_blocks
    }


def these(*names: str) -> Subjects:
    return lambda house: set(names)


CHANGED = (
    Change("nec-2011", "Table 310.15(B)(16)", "wires", runs_of_small_copper),
    Change("nec-2011", "Table 310.15(B)(16)", "circuits", circuits_of_small_copper),
    Change("nec-2020", "314.16(B)(5)", "fill", boxes_with_many_grounds),
    Change("nec-2023", "314.16(B)(6)", "fill", boxes_with_terminal_blocks),
    # A car charger counts 7200 VA at least.
    Change("nec-2023", "220.57", "service", these("methods", "standard", "optional", "existing")),
    # 2 VA/ft² where it was 3: fewer circuits are wanted, and less stands on each leg.
    Change("nec-2026", "120.41", "service", these("methods", "standard", "optional", "existing", "neutral")),
    Change("nec-2026", "120.41", "service", these("legs", "circuits", "least")),
    # 8 kVA in full where it was 10.
    Change("nec-2026", "120.82(B)", "service", these("optional")),
)

SPOKEN: dict[str, dict[str, set[tuple[str, str]]]] = {
    # 110.14(D): a torque is to be reached, and M4 was made up without a torque tool.
    "nec-2017": {"found": {("torque-not-recorded", "M4.r1")}},
    # 210.8(F): heating equipment of a detached building is left out until the 2023 edition alone.
    "nec-2026": {"found": {("outdoor-outlet-without-gfci", "W12.h1")}},
}
"""What a rule says from an edition on and did not before, or no more: the rule and its first subject."""


@pytest.fixture(scope="module")
def judged(tmp_path_factory: pytest.TempPathFactory) -> Mapping[str, Result]:
    return {edition: _judged_by(edition, tmp_path_factory.mktemp(edition)) for edition in EDITIONS}


def _judged_by(edition: str, folder: Path) -> Result:
    record = folder / "content"
    shutil.copytree(CONTENT, record)
    house = record / "house.yaml"
    text = house.read_text("utf-8")
    assert text.count(WRITTEN) == 1
    house.write_text(text.replace(WRITTEN, f"reference: {edition}"), "utf-8")
    result = open_record(record).result
    assert result is not None
    return result


@pytest.mark.parametrize(("before", "after"), list(pairwise(EDITIONS)))
def test_only_the_figures_change_whose_clause_did(
    before: str, after: str, judged: Mapping[str, Result]
) -> None:
    old, new = (dict(leaves(judged[each].figures)) for each in (before, after))
    nothing = object()
    moved = {way for way in old | new if old.get(way, nothing) != new.get(way, nothing)}
    house = judged[after].house
    expected = {(row.field, of) for row in CHANGED if row.since == after for of in row.of(house)}
    unforeseen = [f"{way}: {old.get(way)} -> {new.get(way)}" for way in moved if subject(way) not in expected]
    assert unforeseen == []
    assert expected - set(map(subject, moved)) == set()


@pytest.mark.parametrize(("before", "after"), list(pairwise(EDITIONS)))
def test_only_the_rules_speak_otherwise_whose_clause_changed(
    before: str, after: str, judged: Mapping[str, Result]
) -> None:
    old, new = (judged[each].judgement for each in (before, after))
    found = [{(each.rule, each.about[0]) for each in one.findings} for one in (old, new)]
    asked = [{(each.rule, each.about[0]) for each in one.unrecorded} for one in (old, new)]
    spoken = {
        "found": found[1] - found[0],
        "found no more": found[0] - found[1],
        "asked": asked[1] - asked[0],
        "asked no more": asked[0] - asked[1],
    }
    assert {how: said for how, said in spoken.items() if said} == SPOKEN.get(after, {})


def leaves(figures: object) -> Iterator[tuple[str, object]]:
    """Everything that the figures hold, by the way to it, but for what is only numbered anew."""
    waiting: list[tuple[str, object]] = [("", figures)]
    while waiting:
        way, held = waiting.pop()
        if is_dataclass(held):
            names = (each.name for each in fields(held) if not each.name.endswith(NUMBERED))
            waiting += [(f"{way}.{name}".removeprefix("."), getattr(held, name)) for name in names]
        elif isinstance(held, Mapping):
            waiting += [(f"{way}[{key}]", each) for key, each in held.items()]
        elif isinstance(held, tuple | list):
            waiting += [(f"{way}[{number}]", each) for number, each in enumerate(held)]
        else:
            yield way, held


def subject(way: str) -> tuple[str, str]:
    """The field of the figures, and whose it is, or which: ``fill[K1].least`` is of K1."""
    match = re.match(r"(\w+)(?:\[([^\]]*)\]|\.(\w+))?", way)
    assert match
    return match[1], match[2] or match[3] or ""
