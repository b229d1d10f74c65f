"""A record that holds a panel's directory and no more: what is not written down is not said to be none."""

from houses import HOUSE, surveyed

from junctionary.sheets.circuits import circuit_sheet
from junctionary.sheets.covers import cover
from junctionary.sheets.links import Link, Ref, plain
from junctionary.sheets.panels import panel_sheet
from junctionary.sheets.rooms import room_sheet
from junctionary.sheets.schedules import not_recorded_sheet

DIRECTORY = surveyed(
    {
        "rooms/bath.yaml": "room: bath\nname: Bathroom\nkind: bathroom\n",
        "rooms/hall.yaml": "room: hall\nname: Hall\nkind: hall\n",
        "circuits/bath.yaml": "circuit: bath\nname: Bathroom outlet\nserves: [bath]\n",
        "circuits/lights.yaml": "circuit: lights\nname: Lights\nserves: [bath]\n",
    },
    house=HOUSE,
    rooms="room: den\nname: Den\nkind: den\nlevel: ground\n",
    panels="panel: main\nname: Main panel\nspaces: 8\nbreakers:\n"
    "  1: {rating: 20 A, feeds: bath, says: Bath}\n  2: {rating: 15 A, feeds: lights, says: Lights}\n",
)


def test_the_cover_tells_the_breakers_of_a_room_of_which_no_box_is_recorded() -> None:
    rooms = {plain(each.room): each for level in cover(DIRECTORY).levels for each in level.rooms}
    assert rooms["Bathroom"].breakers == (
        Link("main 1", Ref("space", "main/1")), Link("main 2", Ref("space", "main/2")),
    )  # fmt: skip
    assert rooms["Hall"].breakers == ()


def test_the_cover_counts_nothing_of_nothing() -> None:
    sheet = cover(DIRECTORY)
    said = [(each.what, plain(each.value)) for each in (*sheet.tally, *sheet.complete, *sheet.panels)]
    assert not [each for each in said if each[1] in ("", "0 of 0")]
    assert ("breakers known to feed something", "2 of 2") in said
    assert ("main", "Main panel: where it is, not recorded") in said


def test_a_room_without_a_box_is_not_said_to_have_none() -> None:
    sheet = room_sheet(DIRECTORY, "bath")
    assert plain(sheet.lead) == "Level not recorded. No box recorded, 2 circuits."
    assert [plain(row.cells[-1]) for row in sheet.fed_by.rows] == ["none recorded", "none recorded"]


def test_a_circuit_without_a_run_is_not_said_to_have_none() -> None:
    sheet = circuit_sheet(DIRECTORY, "bath")
    assert plain(sheet.lead).endswith("No run and no box of it is recorded.")
    assert ("load", "not recorded, of 20 A") in [(each.what, plain(each.value)) for each in sheet.facts]


def test_what_is_missing_of_a_room_does_not_stand_at_the_circuit_of_its_name() -> None:
    of_room = {each.what for each in DIRECTORY.missing_at[Ref("room", "bath")]}
    of_circuit = {each.what for each in DIRECTORY.missing_at[Ref("circuit", "bath")]}
    assert {"whether every box of room bath is recorded", "the level of room bath"} <= of_room
    assert "the cables of circuit bath" in of_circuit
    assert not [each for each in of_circuit if "room" in each]
    level = next(each for each in DIRECTORY.missing if each.what == "the level of room bath")
    assert level.about == (Link("bath", Ref("room", "bath")),)


def test_what_is_missing_of_several_circuits_is_told_once_on_a_page() -> None:
    for sheet in (not_recorded_sheet(DIRECTORY), panel_sheet(DIRECTORY, "main")):
        told = [each for each in sheet.missing if each.what.startswith("the cables of")]
        assert [each.what for each in told] == ["the cables of circuits bath, lights"]
        assert {Link("lights", Ref("circuit", "lights")), Link("main 1", Ref("space", "main/1"))} <= set(
            told[0].about
        )
    assert plain(not_recorded_sheet(DIRECTORY).lead).startswith(f"{len(DIRECTORY.missing)} facts")
