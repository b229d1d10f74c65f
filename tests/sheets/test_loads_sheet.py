"""The loads sheet: what an inspector reads off it."""

import pytest
from houses import surveyed

from junctionary.sheets.links import Link, Ref
from junctionary.sheets.load_calculation import loads_sheet
from junctionary.sheets.loads import LoadsSheet

HOUSE = "house: Tern Cottage\nreference: nec-2023\nfloor_area: 1000 ft2\nlevels: [{id: ground, name: Ground floor}]\nservice: {system: 120/240 V, rating: 100 A}\n"
PANEL = """\
panel: main
spaces: 8
fed_by: service
breakers:
  1+3: {rating: 30 A, feeds: tank}
"""
TANK = """\
circuit: tank
name: Water heater
purpose: water-heater
loads: [{id: heater, is: water-heater, draws: 4500 W, volts: 240 V}]
"""


def sheet(house: str = HOUSE, panel: str = PANEL, circuits: str = TANK) -> LoadsSheet:
    return loads_sheet(surveyed(house=house, panels=panel, circuits=circuits))


def test_every_line_names_its_clause_in_the_edition_judged_by() -> None:
    standard = sheet(HOUSE.replace("nec-2023", "nec-2026")).methods[0].working
    sources = {each.source for each in standard.lines if each.source}
    assert "NEC 2026, 120.41, from memory" in sources
    assert all(each.startswith("NEC 2026, ") for each in sources)


def test_what_is_within_another_line_is_told_from_what_is_added() -> None:
    standard = sheet().methods[0].working
    added = [each.what for each in standard.lines if not each.within and not each.is_sum]
    assert added == ["The first 3000 VA at 100 %", "The rest at 35 %", "Water heater"]


def test_a_load_that_is_missing_makes_it_an_at_least_and_is_named() -> None:
    untold = sheet(circuits=TANK.replace(", draws: 4500 W", ""))
    standard = untold.methods[0]
    assert standard.answer.startswith("at least ")
    assert standard.stands == "cannot tell"
    assert "what heater draws" in standard.working.says
    assert "cannot be told" in untold.verdict
    assert any("what heater draws" in each.what for each in untold.missing)


@pytest.mark.parametrize(
    ("draws", "stands", "verdict"),
    [("4500 W", "fits", "large enough by the standard method"), ("60 kW", "too large", "too small by every")],
)
def test_the_verdict_says_by_which_method(draws: str, stands: str, verdict: str) -> None:
    told = sheet(circuits=TANK.replace("4500 W", draws))
    assert told.methods[0].stands == stands
    assert verdict in told.verdict


def test_findings_of_the_service_stand_on_it() -> None:
    assert [each.rule.id for each in sheet(circuits=TANK.replace("4500 W", "60 kW")).findings] == [
        "service-overloaded"
    ]


def test_each_leg_has_its_loads_and_the_limit_of_the_service() -> None:
    a, b = sheet().legs
    assert [(each.what, each.va) for each in a.loads] == [
        ((Link("Water heater", Ref("circuit", "tank")),), 2250)
    ]
    assert (a.va, a.limit_va, b.va) == (2250, 12_000, 2250)


def test_what_was_counted_has_its_place_in_the_record() -> None:
    (row,) = sheet().counted.rows
    assert row.cells[2] == ("4500",)
    assert row.cells[-1] == ("circuits/all.yaml:4:9",)


def test_circuits_the_code_asks_for_are_told_of_where_none_is_recorded() -> None:
    assert any("2 small-appliance circuits" in each for each in sheet().taken)
