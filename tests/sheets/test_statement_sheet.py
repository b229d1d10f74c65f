"""The statement tells what the record tells, and of the rest that it is not known."""

from houses import HOUSE, surveyed

from junctionary.sheets.links import plain
from junctionary.sheets.lists import ListSheet
from junctionary.sheets.statement import statement_sheet

PANEL = "panel: main\nspaces: 8\nfed_by: service\nbreakers: {1: {rating: 15 A, feeds: den}, 3: {rating: 20 A, feeds: unknown}}\n"
CIRCUIT = "circuit: den\nname: Den\nruns: [{id: a1, cable: 14/2 NM no ground, from: main, to: unknown, installed: 1957}]\n"


def sheet(house: str = HOUSE, panel: str = PANEL, log: str = "[]\n") -> ListSheet:
    return statement_sheet(surveyed(house=house, panels=panel, circuits=CIRCUIT, log=log))


def told(made: ListSheet, heading: str) -> list[list[str]]:
    (group,) = (each for each in made.groups if each.heading == heading)
    return [[plain(cell) for cell in row.cells] for row in group.table.rows]


def says(made: ListSheet, heading: str) -> str:
    (group,) = (each for each in made.groups if each.heading == heading)
    return plain(group.says)


def test_what_nobody_wrote_down_is_said_to_be_not_recorded() -> None:
    made = sheet()
    assert ["service", "not recorded"] in told(made, "House and service")
    assert told(made, "Panels")[0][-1] == "not recorded"
    assert told(made, "Age of panels and equipment")[0][2:] == ["not recorded", "not recorded"]
    assert says(made, "Permits") == "Whether the work was done under a permit is not known."
    assert ["breakers of which nobody could tell what they feed", "main 3"] in told(made, "Not known")


def test_the_kinds_of_cable_and_their_age_are_told() -> None:
    assert told(sheet(), "Wiring") == [["NM copper, no ground", "1"]]
    assert told(sheet(), "Age of panels and equipment")[-1] == [
        "Cable of run a1",
        "Den",
        "not recorded",
        "1957",
    ]


def test_a_permit_is_told_with_its_inspections_and_the_rooms_it_leaves_out() -> None:
    house = (
        HOUSE
        + "permits: [{number: B-1, authority: County, covers: [main], issued: 2026-03-02, closed: 2026-07-20}]\n"
    )
    log = "- {date: 2026-07-19, inspection: final, permit: B-1, result: pass}\n"
    made = sheet(house, log=log)
    assert told(made, "Permits") == [
        [
            "B-1; County",
            "not recorded",
            "main",
            "applied not recorded; issued 2026-03-02",
            "final 2026-07-19: pass",
            "2026-07-20",
        ]
    ]
    assert says(made, "Permits") == "No permit on record covers: Den."


def test_a_permit_for_a_building_covers_its_rooms() -> None:
    house = HOUSE + "buildings: [{id: hut}]\npermits: [{number: B-1, covers: [hut]}]\n"
    room = "room: den\nname: Den\nkind: den\nbuilding: hut\n"
    made = statement_sheet(surveyed(house=house, rooms=room, panels=PANEL, circuits=CIRCUIT))
    assert says(made, "Permits") == "Every room is covered by one."


def test_an_open_hazard_is_named_with_what_it_is_about() -> None:
    panel = PANEL.replace("15 A, feeds: den", "40 A, feeds: den")
    about = {row[0]: row[3] for row in told(sheet(panel=panel), "Open hazards and defects")}
    assert "main 1" in about["hazard"]


def test_surge_protection_is_told_by_type_place_and_age() -> None:
    panel = PANEL + "surge: {type: 2, connected: lugs, installed: 2025-10}\n"
    made = sheet(panel=panel)
    assert told(made, "Panels")[0][-1] == "type 2; at the lugs; installed 2025-10"
    assert ["Surge protection, type 2", "main", "not recorded", "2025-10"] in told(
        made, "Age of panels and equipment"
    )
