"""What must be off: a page's list is the command's, and several together leave nothing out."""

from collections.abc import Iterable
from itertools import pairwise
from typing import Any

import pytest

from junctionary.house.model import House
from junctionary.house.network import entering
from junctionary.house.switching_off import Isolation
from junctionary.sheets.spoken import spoken

from .conftest import Looked, Run

TOGETHER = """([data, lists]) => lists.map(names =>
  junctionaryOff.together(data, names, name => data.boxes[name]))"""


def off(house: House, isolations: Iterable[Isolation]) -> tuple[set[str], set[str], set[str]]:
    """The breakers, sources and doubts of several isolations; where any is unknown, the mains and all sources."""
    kept = tuple(isolations)
    unknown = {spoken(house, reason) for each in kept for reason in each.unknown}
    breakers = {one.id for each in kept for one in each.breakers}
    others = {one.id for each in kept for one in each.sources}
    if unknown:
        breakers |= {main for each in kept for main in each.mains} | set(entering(house).values())
        others |= set(house.sources)
    return breakers, others, unknown


def page(found: dict[str, Any]) -> tuple[set[str], set[str], set[str]]:
    breakers = {each["id"] for each in found["breakers"]}
    return breakers, {each["id"] for each in found["sources"]}, set(found["unknown"])


def agree(run_script: Run, at: Looked) -> None:
    lists = [[each] for each in at.house.boxes] + [list(each) for each in pairwise(at.house.boxes)]
    found = run_script(TOGETHER, [at.off, lists])
    for names, one in zip(lists, found, strict=True):
        assert page(one) == off(at.house, (at.isolations[name] for name in names)), names


@pytest.mark.browser
def test_every_box_of_the_demo_house_alone_and_with_its_neighbour(run_script: Run, demo: Looked) -> None:
    agree(run_script, demo)


@pytest.mark.browser
def test_every_box_of_random_houses(run_script: Run, drawn_houses: list[Looked]) -> None:
    for each in drawn_houses:
        agree(run_script, each)


@pytest.mark.browser
def test_the_reasons_of_one_box_are_those_of_the_command_in_its_order(run_script: Run, demo: Looked) -> None:
    said = run_script(TOGETHER, [demo.off, [["K12"]]])[0]
    told = demo.isolations["K12"].breakers
    assert [(each["id"], each["why"]) for each in said["breakers"]] == [
        (each.id, [spoken(demo.house, reason) for reason in each.why]) for each in told
    ]


@pytest.mark.browser
def test_unknown_wins_over_a_box_that_is_known(run_script: Run, demo: Looked) -> None:
    known, both = run_script(TOGETHER, [demo.off, [["K2"], ["K2", "X1"]]])
    assert known["unknown"] == []
    assert both["unknown"] != []
    assert "main/main" in page(both)[0]
    assert "genny" in page(both)[1]


@pytest.mark.browser
def test_a_box_that_nobody_recorded_is_unknown_and_takes_the_main(run_script: Run, demo: Looked) -> None:
    (found,) = run_script(TOGETHER, [demo.off, [["K99"]]])
    assert found["unknown"] == ["nothing called K99 is recorded"]
    assert page(found)[0] == {"main/main", "main/1+3"}
    assert page(found)[1] == {"genny"}


@pytest.mark.browser
def test_a_list_that_came_out_empty_is_never_an_all_clear(run_script: Run, demo: Looked) -> None:
    empty = {each: [] for each in ("breakers", "sources", "unknown", "first", "stays", "wires")}
    (found,) = run_script(TOGETHER, [{**demo.off, "boxes": {"Z1": empty}}, [["Z1"]]])
    assert found["unknown"] == ["nothing in the record says what feeds this"]
    assert page(found)[0] == {"main/main", "main/1+3"}
