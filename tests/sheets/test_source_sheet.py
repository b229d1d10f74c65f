"""A second source has a sheet of its own, which leads to its runs and its breaker."""

import pytest
from houses import surveyed

from junctionary.sheets.circuit import nodes
from junctionary.sheets.links import Ref
from junctionary.sheets.second_sources import stopping
from junctionary.sheets.sources import source_sheet

HOUSE = """\
house: Tern Cottage
reference: nec-2023
levels: [{id: ground, name: Ground floor}]
sources:
  - id: gen
    is: generator-inlet
    at: I1
    enters: main/2+4
    without_utility: runs
    runs: [{id: g1, cable: 10/3 NM-B, from: I1, to: main}]
"""
DEVICES = "devices: {inlet: {is: inlet, rating: 30 A}}\n"
PANEL = "panel: main\nspaces: 4\nmain: 100 A\nbreakers: {2+4: {rating: 30 A, feeds: gen}}\n"
BOXES = "room: den\nboxes:\n  I1: {devices: {i1: inlet}, makeup: end-of-run}\n"
SHEET = source_sheet(surveyed(house=HOUSE, panels=PANEL, boxes=BOXES, devices=DEVICES), "gen")


def test_its_map_runs_from_the_inlet_to_the_panel() -> None:
    assert SHEET.map is not None
    assert [each.name for each in nodes(SHEET.map.root)] == ["I1", "main"]


def test_its_runs_can_be_linked_to() -> None:
    assert SHEET.anchors() == (Ref("run", "g1"),)


def test_its_caution_lists_the_breaker_it_enters_by_and_the_source_itself() -> None:
    assert "main/2+4" in [each.space.id for each in SHEET.before.off]
    assert [(each.name, each.do) for each in SHEET.before.others] == [
        ("generator inlet", "stop it and take its cord out of I1")
    ]


@pytest.mark.parametrize(
    ("source", "expected"),
    [
        ("is: generator-inlet, enters: main/2+4", "stop it and take its cord out"),
        ("is: generator-inlet, enters: main/2+4, shut_off: main/2",
         "stop it and take its cord out; its own shut-off is not recorded: breaker 2+4 in panel main is"
         " where it enters, and leaves its own side live"),
        ("is: standby-generator, enters: main/2+4",
         "stop it and set it so that it cannot start by itself; where it is shut off is not recorded"),
        ("is: solar, enters: main/2+4", "where it is shut off is not recorded"),
        ("is: battery, enters: main/2+4, shut_off: main/1", "shut off at breaker 1 in panel main"),
        ("is: battery, enters: main/2+4, shut_off: I1.i1", "shut off at I1.i1"),
    ],
)  # fmt: skip
def test_where_a_source_enters_is_never_told_as_its_own_shut_off(source: str, expected: str) -> None:
    house = HOUSE.partition("sources:")[0] + f"sources: [{{id: gen, {source}}}]\n"
    panel = PANEL.replace("{2+4", "{1: {rating: 20 A, feeds: gen}, 2+4")
    boxes = BOXES.replace(", makeup: end-of-run", "")
    survey = surveyed(house=house, panels=panel, boxes=boxes, devices=DEVICES)
    assert stopping(survey.house, survey.house.sources["gen"]) == expected


def test_what_the_house_says_of_shutting_it_off_is_told_with_it() -> None:
    told = 'shut_off: [{what: Generator, where: "the fuel tap"}, {what: water, where: cellar}]\n'
    survey = surveyed(house=HOUSE + told, panels=PANEL, boxes=BOXES, devices=DEVICES)
    said = stopping(survey.house, survey.house.sources["gen"])
    assert said == "stop it and take its cord out of I1; as the house has it: the fuel tap"
