"""A second source has a sheet of its own, which leads to its runs and its breaker."""

from houses import surveyed

from junctionary.sheets.circuit import nodes
from junctionary.sheets.links import Ref
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
    assert any("generator inlet" in each for each in SHEET.before.others)
