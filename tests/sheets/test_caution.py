"""Before opening: the list errs towards too many, and nothing is ever called safe."""

from houses import surveyed

from junctionary.sheets import caution
from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.isolation import before_box, before_circuit, before_panel, before_room

PANEL = """\
panel: main
spaces: 12
main: 100 A
breakers:
  1: {rating: 20 A, feeds: den}
  2+4: {rating: 30 A, feeds: gen}
"""
CIRCUITS = """\
circuit: den
name: Den receptacles
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: K1}
  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2}
loads:
  - {id: fz, is: freezer, name: Chest freezer, plugged: K1.r1, matters: food}
"""
BOXES = """\
room: den
boxes:
  K1: {devices: {r1: duplex}, makeup: pigtailed}
  K2: {makeup: unknown}
  K3: {}
"""
HOUSE = """\
house: Tern Cottage
reference: nec-2023
levels: [{id: ground, name: Ground floor}]
sources:
  - {id: gen, is: generator-inlet, enters: main/2+4, without_utility: runs}
"""


def test_an_empty_list_is_never_an_answer() -> None:
    nothing = BeforeOpening("box K9", ())
    assert nothing.is_unknown
    assert nothing.doubts


def test_the_standing_words_never_say_safe() -> None:
    words = " ".join((*caution.STEPS, *caution.CAUTIONS, caution.UNKNOWN)).lower()
    assert "safe" not in words
    for due in (
        "lock or tag",
        "known live source",
        "every conductor",
        "not a test",
        "white",
        "line lugs",
        "not dead",
    ):
        assert due in words


SURVEY = surveyed(house=HOUSE, panels=PANEL, circuits=CIRCUITS, boxes=BOXES)


def spaces(before: BeforeOpening) -> list[str]:
    return [each.space.id for each in before.off]


def test_a_box_lists_the_breaker_of_its_circuit_with_a_reason() -> None:
    before = before_box(SURVEY, "K1")
    assert "main/1" in spaces(before)
    assert all(each.why for each in before.off)


def test_a_box_nobody_knows_the_make_up_of_is_unknown() -> None:
    before = before_box(SURVEY, "K2")
    assert before.is_unknown
    assert "main/1" in spaces(before)


def test_a_box_no_cable_is_recorded_in_is_unknown() -> None:
    assert before_box(SURVEY, "K3").is_unknown


def test_a_room_and_a_circuit_list_what_each_of_their_boxes_does() -> None:
    boxes = [before_box(SURVEY, each) for each in ("K1", "K2")]
    circuit, room = before_circuit(SURVEY, "den"), before_room(SURVEY, "den")
    for box in boxes:
        assert set(spaces(box)) <= set(spaces(circuit))
        assert set(spaces(box)) <= set(spaces(room))
        assert set(box.unknown) <= set(circuit.unknown) <= set(room.unknown)


def test_a_generator_is_an_item_of_the_list_and_where_it_enters_is_another() -> None:
    before = before_box(SURVEY, "K1")
    (source,) = before.others
    assert source.name == "generator inlet"
    assert source.do == "stop it and take its cord out"
    assert source.why
    assert "main/2+4" in spaces(before)


def test_what_would_be_missed_is_named() -> None:
    assert before_box(SURVEY, "K1").loses == ("Chest freezer (food)",)


def test_a_panel_names_its_main_and_what_else_enters_and_says_what_stays_live() -> None:
    before = before_panel(SURVEY, "main")
    assert set(spaces(before)) == {"main/main", "main/2+4"}
    assert "Leave the inner cover on" in " ".join(before.extra)
    assert any("line side of the main breaker" in each for each in before.stays_live)


def test_a_panel_without_a_main_is_unknown() -> None:
    survey = surveyed(panels="panel: main\nspaces: 2\n")
    assert before_panel(survey, "main").is_unknown


def test_a_circuit_says_in_which_boxes_and_leaves_the_conductors_to_their_sheets() -> None:
    told = {each.space.id: each.why for each in before_circuit(SURVEY, "den").off}
    assert told["main/1"][0] == "in every box"
    assert not any(reason.startswith("reaches ") for why in told.values() for reason in why)
    assert any("a1.black" in reason for each in before_box(SURVEY, "K1").off for reason in each.why)


def test_a_circuit_without_boxes_still_says_why_its_breaker_is_listed() -> None:
    directory = "circuit: den\nname: Den receptacles\n"
    bare = surveyed(panels="panel: main\nspaces: 2\nbreakers: {1: {feeds: den}}\n", circuits=directory)
    assert all(each.why for each in before_circuit(bare, "den").off)
