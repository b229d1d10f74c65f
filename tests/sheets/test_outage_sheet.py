"""The outage card names what the source cannot carry, and says so where nobody can tell."""

from houses import surveyed

from junctionary.sheets.lookup import SourceCard
from junctionary.sheets.outages import outage_sheet

PANEL = """\
panel: main
spaces: 8
main: 100 A
fed_by: service
bonded: true
breakers: {1: {rating: 20 A, feeds: c}, 2: {rating: 20 A, feeds: d}, 5+7: {rating: 30 A, feeds: gen}}
"""
CIRCUITS = {
    "circuits/c.yaml": "circuit: c\nname: C\nloads: [{id: freezer, is: freezer, draws: 1200 W, matters: food}]\n",
    "circuits/d.yaml": "circuit: d\nname: D\nloads: [{id: heater, is: space-heater, draws: 1800 W, matters: heat}]\n",
}


def card(rating: str) -> SourceCard:
    house = (
        "house: Tern Cottage\nreference: nec-2023\nlevels: [{id: ground, name: Ground floor}]\n"
        f"sources: [{{id: gen, is: generator-inlet, enters: main/5+7{rating}}}]\n"
    )
    (found,) = outage_sheet(surveyed(CIRCUITS, house=house, panels=PANEL)).cards
    return found


def test_what_alone_is_more_than_the_rating_is_named_with_both_figures() -> None:
    said = card(", rating: 12 A").cannot
    assert "Cannot carry space heater: it draws 15 A, its rating is 12 A on each leg." in said


def test_what_no_longer_fits_beside_what_matters_more_is_named() -> None:
    said = " ".join(card(", rating: 20 A").cannot)
    assert "reezer (10 A) is too much beside all that matters more" in said
    assert "15 A of 20 A on the fuller leg" in said


def test_all_within_the_rating_is_said_with_the_sum_of_each_leg() -> None:
    found = card(", rating: 30 A")
    assert "All of this at once is within 30 A on each leg." in found.cannot
    assert {each.title for each in found.load} == {"Leg A", "Leg B"}


def test_a_source_of_unrecorded_rating_carries_nothing_for_certain() -> None:
    found = card("")
    assert any("cannot be told" in each for each in found.cannot)
    assert found.load == ()
