"""What can be looked up is told in words, and of two breakers of one circuit each by its own half."""

from houses import surveyed

from junctionary.house.suspects import ways
from junctionary.sheets.finding_things import things
from junctionary.sheets.found import Found
from junctionary.sheets.links import Kind

PANEL = (
    "panel: main\nspaces: 8\nfed_by: service\nbreakers:\n"
    "  6: {rating: 20 A, feeds: den.black, says: 'Den, east wall'}\n"
    "  8: {rating: 20 A, feeds: den.red, says: 'Den, freezer'}\n"
    "  1+3: {rating: 60 A, feeds: f}\n"
)
SHED = "panel: shed\nspaces: 4\nfed_by: f\nbreakers: {}\nsurge: {type: 2, connected: lugs}\n"
DEN = "circuit: den\nname: Den, receptacles and freezer\nruns: [{id: a1, cable: 12/3 NM-B, from: main, to: unknown}]\n"
FEEDER = "circuit: f\nname: Feeder\npurpose: feeder\nruns: [{id: f1, from: main, to: shed}]\n"


def found(kind: Kind) -> dict[str, Found]:
    files = {"panels/b.yaml": SHED, "circuits/b.yaml": FEEDER}
    survey = surveyed(files, panels=PANEL, circuits=DEN)
    return {
        each.id: each
        for each in things(survey, ways(survey.house, survey.network).supply)
        if each.kind == kind
    }


def test_a_cable_is_found_by_the_words_on_its_sheath() -> None:
    cables = found("cable")
    assert cables["a1"].name == "a1, 12/3 NM-B"
    assert cables["f1"].name == "f1, cable not recorded"


def test_a_breaker_of_a_shared_neutral_is_not_found_by_what_the_other_feeds() -> None:
    breakers = found("breaker")
    assert (
        breakers["main/8"].name == "Breaker 8 in panel main: Den, receptacles and freezer (red: Den, freezer)"
    )
    assert not any("freezer" in word for word in breakers["main/6"].words)
    assert any("freezer" in word for word in breakers["main/8"].words)


def test_a_panel_behind_another_is_found_as_a_subpanel_and_one_with_surge_protection_by_that() -> None:
    panels = found("panel")
    assert "subpanel" not in panels["main"].words
    assert {"subpanel", "surge"} <= set(panels["shed"].words)
