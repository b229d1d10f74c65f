"""How words of checks and of the record are said on a sheet."""

import pytest
from houses import surveyed

from junctionary.sheets.checks_pages import rule_pages
from junctionary.sheets.entries import MissingEntry
from junctionary.sheets.links import in_a_row, listed, plain
from junctionary.sheets.naming import natural, where
from junctionary.sheets.rooms import room_sheet
from junctionary.sheets.safety import safety_sheet
from junctionary.sheets.survey import in_fewer
from junctionary.sheets.wording import names_in, on_sheet

HOUSE = surveyed(
    {
        "rooms/wash.yaml": "room: wash\nname: Bath, down\nkind: bathroom\nlevel: ground\n",
        "panels/main.yaml": (
            "panel: main\nspaces: 8\nmain: 100 A\nbreakers: {2+4: {rating: 30 A}, 6: {feeds: den}}\n"
        ),
        "circuits/den.yaml": (
            "circuit: den\nname: Den\nruns:\n"
            "  - {id: a1, cable: 12/2 NM-B, from: main, to: K10}\n"
            "  - {id: a2, cable: 12/2 NM-B, from: K10, to: K2}\n"
        ),
        "boxes/den.yaml": (
            "room: den\nboxes:\n"
            "  K2: {name: 'east wall, television', at: {wall: east, along: 3 ft, up: 16 in}}\n"
            "  K10: {name: fan, at: {ceiling: [2 ft, 3 ft]}}\n"
        ),
    }
).house


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ("Breaker main/6 is alone.", "Breaker main 6 is alone."),
        ("main/2+4, and main/main.", "main 2+4, and main of panel main."),
        ("main/9 and K2/a1 are no breakers", "main/9 and K2/a1 are no breakers"),
        ("the outline of room den", "the outline of “Den”"),
        ("every box of rooms den, wash is recorded", "every box of “Den” and “Bath, down” is recorded"),
        ("the room in which it stands", "the room in which it stands"),
        ("Box K2 needs 20.25 in3, 60 ft2 in all; 8 in 2 rows", "Box K2 needs 20.25 in³, 60 ft² in all; 8 in 2 rows"),
    ],
)  # fmt: skip
def test_a_sheet_says_names_and_printed_units(told: str, said: str) -> None:
    assert on_sheet(HOUSE, told) == said


def test_facts_alike_are_told_in_one_and_by_their_rooms_names() -> None:
    facts = [f"whether every box of room {each} is recorded" for each in ("den", "wash")]
    (told,) = in_fewer([MissingEntry(each, (), (), names_in(HOUSE, each)) for each in facts])
    assert told.what == "whether every box of “Den” and “Bath, down” is recorded"


def test_a_list_in_which_a_name_has_a_comma_is_parted_by_semicolons() -> None:
    assert plain(listed(("Heat pump", "Stairs", "Sump"))) == "Heat pump, Stairs and Sump"
    assert plain(listed(("Heat pump, outdoor", "Stairs", "Sump"))) == "Heat pump, outdoor; Stairs; and Sump"
    assert in_a_row(("Bath, down", "Den")) == "Bath, down; Den"
    assert in_a_row(("Bath", "Den")) == "Bath, Den"


def test_boxes_are_sorted_by_their_numbers() -> None:
    assert sorted(["K10", "K2", "G1", "K2a"], key=natural) == ["G1", "K2", "K2a", "K10"]


def test_what_feeds_a_room_lists_its_boxes_by_number_though_the_run_reaches_another_first() -> None:
    survey = surveyed(
        panels="panel: main\nspaces: 4\nbreakers: {1: {rating: 20 A, feeds: den}}\n",
        circuits=(
            "circuit: den\nname: Den\nruns:\n"
            "  - {id: a1, cable: 12/2 NM-B, from: main, to: K10}\n"
            "  - {id: a2, cable: 12/2 NM-B, from: K10, to: K2}\n"
        ),
        boxes="room: den\nboxes:\n  K2: {}\n  K10: {}\n",
    )
    (row,) = room_sheet(survey, "den").fed_by.rows
    assert plain(row.cells[2]) == "K2 and K10"


def test_a_wall_that_a_boxs_name_says_is_not_said_again() -> None:
    box, fan = HOUSE.boxes["K2"], HOUSE.boxes["K10"]
    assert where(HOUSE, box.record.at, box.name) == "3 ft from its left end, 1 ft 4 in up"
    assert where(HOUSE, box.record.at).startswith("east wall, 3 ft from")
    assert where(HOUSE, fan.record.at, "ceiling fan").startswith("2 ft east")
    assert where(HOUSE, fan.record.at, fan.name).startswith("ceiling, 2 ft east")


def test_a_rule_page_says_a_common_practice_once() -> None:
    for page in rule_pages(surveyed()):
        for each in page.cites:
            said = each.removeprefix("common practice: ")
            assert len(said) < 40 or said.count(said[:40]) == 1, page.ref.id


def test_in_an_emergency_help_is_called_in_every_case_and_nobody_is_touched() -> None:
    sheet = safety_sheet(surveyed(), ())
    (shocked,) = [plain(each.value) for each in sheet.emergency if each.what == "somebody is being shocked"]
    assert shocked.startswith("Do not touch them")
    assert "Call the emergency number, in every case." in shocked
    assert "without touching" in shocked


def test_the_safety_sheet_does_not_speak_of_a_list_it_has_not() -> None:
    steps = " ".join(safety_sheet(surveyed(), ()).steps)
    assert "listed here" not in steps
    assert "listed there, and lock or tag it" in steps
    assert "known live source" in steps
