"""The face of a panel stands as it does on the wall."""

from houses import surveyed

from junctionary.sheets.cards import card_sheet
from junctionary.sheets.circuits import circuit_sheet
from junctionary.sheets.face import Handle
from junctionary.sheets.links import Ref, plain
from junctionary.sheets.panel import PanelSheet
from junctionary.sheets.panels import panel_sheet

CIRCUIT = "circuit: den\nname: Den receptacles\nserves: [den]\n"


def panel(breakers: str, more: str = "") -> str:
    return f"panel: main\nspaces: 6\n{more}breakers:\n" + "".join(
        f"  {line}\n" for line in breakers.splitlines()
    )


def sheet(breakers: str, more: str = "") -> PanelSheet:
    return panel_sheet(surveyed(panels=panel(breakers, more), circuits=CIRCUIT), "main")


def stands(made: PanelSheet) -> dict[str, tuple[int, str, str]]:
    return {slot.number: (slot.row, slot.side, slot.leg) for each in made.face.handles for slot in each.slots}


def at(made: PanelSheet, space: str) -> Handle:
    return next(each for each in made.face.handles if each.slots[0].number == space)


def test_odd_spaces_stand_left_and_even_ones_right_and_rows_alternate_legs() -> None:
    assert stands(sheet("1: {rating: 15 A, feeds: den}")) == {
        "1": (0, "left", "A"),
        "2": (0, "right", "A"),
        "3": (1, "left", "B"),
        "4": (1, "right", "B"),
        "5": (2, "left", "A"),
        "6": (2, "right", "A"),
    }


def test_a_two_pole_breaker_stands_in_two_rows_of_its_column() -> None:
    wide = at(sheet("2+4: {rating: 30 A, feeds: den}"), "2")
    assert [(slot.row, slot.side) for slot in wide.slots] == [(0, "right"), (1, "right")]


def test_half_size_breakers_share_a_space() -> None:
    made = sheet("5a: {rating: 15 A, feeds: den}\n5b: unused")
    assert [(each.slots[0].half, each.state) for each in (at(made, "5a"), at(made, "5b"))] == [
        ("a", "feeds"),
        ("b", "unused"),
    ]


def test_the_other_half_of_a_space_is_not_recorded_when_nothing_is_said_of_it() -> None:
    assert at(sheet("5a: {rating: 15 A, feeds: den}"), "5b").state == "unrecorded"


def test_a_two_pole_breaker_of_halves_stands_once_in_both_rows() -> None:
    made = sheet("3b+5a: {rating: 30 A, feeds: den}")
    assert [(slot.row, slot.half) for slot in at(made, "3b").slots] == [(1, "b"), (2, "a")]
    assert sum(each.ref.id == "main/3b+5a" for each in made.face.handles) == 1


def test_a_space_nothing_is_said_of_is_not_recorded_and_a_filler_is_a_filler() -> None:
    made = sheet("1: blank\n3: {rating: 20 A, feeds: unknown}")
    assert [at(made, each).state for each in ("1", "3", "5")] == ["blank", "unknown", "unrecorded"]


def test_a_rating_nobody_wrote_down_is_said_not_to_be_recorded() -> None:
    assert at(sheet("1: {feeds: den}"), "1").notes == ("rating not recorded",)


def test_the_main_stands_above_the_spaces() -> None:
    made = sheet("1: {rating: 15 A, feeds: den}", "main: 100 A\n")
    assert made.face.main is not None
    assert made.face.main.rating == "100 A"
    assert Ref("space", "main/main") in made.anchors()


def test_fuses_without_numbers_are_drawn_too() -> None:
    fuse = "{kind: plug-fuse, rating: 15 A, feeds: den}"
    text = f"panel: old\nkind: fuse-panel\nspaces: 4\nbreakers: {{top-left: {fuse}}}\n"
    made = panel_sheet(surveyed(panels=text, circuits=CIRCUIT), "old")
    assert stands(made) == {"top-left": (0, "left", "")}
    assert at(made, "top-left").device == "plug-fuse"


def test_the_schedule_holds_what_the_door_says_now_and_the_card_does_not() -> None:
    text = (
        '1: {rating: 15 A, feeds: den, says: "Bedroom?"}\n3: {rating: 15 A, feeds: unknown, says: "Porch?"}'
    )
    house = surveyed(panels=panel(text), circuits=CIRCUIT)
    assert [plain(row.cells[-1]) for row in panel_sheet(house, "main").schedule.rows] == [
        "Bedroom?",
        "Porch?",
    ]
    told = {each.slots[0].number: (each.what, each.where) for each in card_sheet(house, "main").card.entries}
    assert told["1"] == ("Den receptacles", "")
    assert told["3"] == ("what it feeds is unknown", "")


def test_the_card_names_the_rooms_its_words_leave_out() -> None:
    circuit = "circuit: den\nname: Lights\nserves: [den]\n"
    house = surveyed(panels=panel("1: {rating: 15 A, feeds: den}"), circuits=circuit)
    assert card_sheet(house, "main").card.entries[0].where == "Den"


def test_the_card_says_that_a_second_source_keeps_the_panel_live() -> None:
    source = "sources: [{id: gen, is: generator-inlet, name: Generator, enters: main/1+3}]\n"
    from houses import HOUSE

    house = surveyed(house=HOUSE + source, panels=panel("1+3: {rating: 30 A, feeds: gen}"), circuits=CIRCUIT)
    foot = card_sheet(house, "main").card.foot
    assert foot[0] == "1 + 3 is a second source, Generator: with the main off this panel can still be live."


SERVICE = (
    "house: Tern Cottage\nreference: nec-2023\nlevels: [{id: ground, name: Ground floor}]\n"
    "service:\n  disconnect: main\n  conductors: {size: 4/0 AWG, metal: aluminium}\n"
    "  electrodes: [{is: rod, wire: 6 AWG copper}, {is: rod, wire: 6 AWG copper}, water-pipe]\n"
)
GARAGE = "panel: main\nspaces: 6\nbreakers: {1+3: {rating: 60 A, feeds: den}}\n"


def facts(made: PanelSheet) -> dict[str, str]:
    return {each.what: plain(each.value) for each in made.facts}


def test_the_panel_says_how_it_is_bonded_and_what_is_clear_before_it() -> None:
    told = facts(sheet("1: {rating: 15 A, feeds: den}", "bonded: true\nclear: {width: 3 ft, depth: 2 ft}\n"))
    assert told["neutral and ground"] == "joined here"
    assert told["kept clear before it"] == "3 ft wide, 2 ft deep (3 ft asked), height not recorded"
    assert told["poles taken"] == "1 of 6"
    assert facts(sheet("1: unused"))["neutral and ground"] == "not recorded"


def test_the_services_panel_shows_the_wire_to_each_electrode_and_its_sum() -> None:
    made = panel_sheet(surveyed(house=SERVICE, panels=GARAGE, circuits=CIRCUIT), "main")
    assert facts(made)["2 rod electrodes"] == "6 AWG copper, at least 6 AWG copper"
    assert facts(made)["water-pipe electrode"] == "wire not recorded, at least 4 AWG copper"
    assert [each.title for each in made.workings] == [
        "Wire to the rod electrode", "Wire to the water-pipe electrode",
    ]  # fmt: skip
    assert made.workings[0].says == "It is 6 AWG copper: it will do."


def test_a_subpanel_shows_the_ground_that_comes_with_its_feeder() -> None:
    feeder = f"{CIRCUIT}purpose: feeder\nruns: [{{id: f1, cable: 6-6-6-12 SER, from: main, to: shed}}]\n"
    shed = "panel: shed\nspaces: 4\nfed_by: den\n"
    survey = surveyed(house=SERVICE, panels=GARAGE, circuits=feeder, **{"panels/shed": shed})
    assert (
        facts(panel_sheet(survey, "shed"))["ground with feeder f1"] == "12 AWG copper, at least 10 AWG copper"
    )
    assert [each.title for each in panel_sheet(survey, "shed").workings] == ["Ground of run f1"]
    line = circuit_sheet(survey, "den").match[-1]
    assert (line.part, line.may, line.stands) == ("ground of f1", "at least 10 AWG copper", "too small")
    assert line.severity == "defect"
    assert circuit_sheet(survey, "den").workings[-1].says == "It is 12 AWG copper: too small."


def test_the_age_of_a_panel_and_its_surge_protection_are_told_or_said_not_to_be_recorded() -> None:
    bare = facts(sheet("1: {rating: 15 A, feeds: den}"))
    assert (bare["age"], bare["surge protection"]) == ("not recorded", "not recorded")
    told = facts(
        sheet("1: {rating: 15 A, feeds: den}", "made: 1957\nsurge: {type: 1, connected: before-main}\n")
    )
    assert told["age"] == "made 1957"
    assert told["surge protection"] == "type 1; before the main: live with the main off; its age not recorded"
    assert (
        facts(sheet("1: {rating: 15 A, feeds: den}", "surge: none\n"))["surge protection"]
        == "none in this panel"
    )


def test_a_breaker_put_in_later_is_dated_in_the_schedule_and_the_others_not_recorded() -> None:
    made = sheet("1: {rating: 15 A, feeds: den, installed: 2019}\n3: {rating: 15 A, feeds: none}")
    assert made.schedule.heads[-1] == "age"
    assert [plain(row.cells[-1]) for row in made.schedule.rows] == ["installed 2019", "not recorded"]
    assert "age" not in sheet("1: {rating: 15 A, feeds: den}").schedule.heads


def test_a_breaker_with_surge_protection_on_it_feeds_that_and_is_no_spare() -> None:
    made = sheet("1+3: {rating: 20 A, feeds: none}", "surge: {type: 2, connected: 1+3}\n")
    handle = at(made, "1")
    assert (handle.state, plain(handle.feeds)) == ("feeds", "surge protection")
    assert at(sheet("1+3: {rating: 20 A, feeds: none}"), "1").state == "unused"
