"""The outage card names what the source cannot carry, and says so where nobody can tell."""

from houses import surveyed

from junctionary.sheets.links import Phrase
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


def card(rating: str, panel: str = PANEL, circuits: dict[str, str] = CIRCUITS) -> SourceCard:
    house = (
        "house: Tern Cottage\nreference: nec-2023\nlevels: [{id: ground, name: Ground floor}]\n"
        f"sources: [{{id: gen, is: generator-inlet, enters: main/5+7{rating}}}]\n"
    )
    (found,) = outage_sheet(surveyed(circuits, house=house, panels=panel)).cards
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


def test_a_motor_that_takes_too_much_while_it_starts_is_no_step_of_the_switching() -> None:
    pump = "circuit: c\nname: C\nloads: [{id: well, is: pump, draws: 1440 W, motor: true, matters: water}]\n"
    found = card(", rating: 30 A", circuits={**CIRCUITS, "circuits/c.yaml": pump})
    assert [words(each) for each in found.keeps] == ["main 2: space heater (heat), 1800 W, 15 A"]
    assert any(each.startswith("Cannot start pump: a motor takes 3 times") for each in found.cannot)
    assert card(", rating: 36 A", circuits={**CIRCUITS, "circuits/c.yaml": pump}).keeps != found.keeps


def test_what_shares_a_breaker_with_what_is_too_much_stays_off_too() -> None:
    both = CIRCUITS["circuits/c.yaml"].replace(
        "matters: food}", "matters: food}, {id: kiln, is: other, draws: 4800 W, fastened: true}"
    )
    found = card(", rating: 30 A", circuits={**CIRCUITS, "circuits/c.yaml": both})
    assert [words(each) for each in found.keeps] == ["main 2: space heater (heat), 1800 W, 15 A"]
    assert any("reezer stays off too" in each for each in found.cannot)


def test_an_interlock_is_a_step_where_one_is_recorded_and_a_warning_where_none_is() -> None:
    locked = card(", rating: 30 A", PANEL + "interlocks: [[main, 5+7]]\n")
    assert any("interlock plate" in words(each) for each in locked.over)
    assert any("interlock plate" in words(each) for each in locked.back)
    bare = card(", rating: 30 A")
    assert "interlock" in bare.warning
    assert not any("interlock plate" in words(each) for each in bare.over)


def test_for_everything_dead_the_generator_is_stopped_and_its_breaker_off() -> None:
    house = (
        "house: Tern Cottage\nreference: nec-2023\nlevels: [{id: ground, name: Ground floor}]\n"
        "sources: [{id: gen, is: generator-inlet, enters: main/5+7}]\n"
    )
    said = [words(each) for each in outage_sheet(surveyed(CIRCUITS, house=house, panels=PANEL)).all_dead]
    assert said[0] == "generator inlet: stop it and take its cord out"
    assert said[1].startswith("main 5+7 (")
    assert "test" in said[-1]


def words(phrase: Phrase) -> str:
    return "".join(each if isinstance(each, str) else each.text for each in phrase).replace("\u00a0", " ")
