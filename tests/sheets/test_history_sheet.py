"""Proof and history: what was tested and photographed, and above all what was not."""

from houses import surveyed

from junctionary.sheets.entries import Row
from junctionary.sheets.histories import history_sheet
from junctionary.sheets.links import plain
from junctionary.sheets.lists import ListSheet

PANEL = """\
panel: main
spaces: 4
breakers: {1: {rating: 15 A, guards: [afci], feeds: c}}
"""
CIRCUIT = "circuit: c\nname: C\nruns: [{id: a1, cable: 14/2 NM-B, from: main, to: K1}]\nloads: [{id: kettle, is: other, draws: 1500 W}]\n"
BOXES = "room: den\nboxes:\n  K1: {at: {wall: north, along: 2 ft, up: 1 ft}, devices: {r1: gfci}, makeup: end-of-run}\n"
DEVICES = "devices: {gfci: {is: gfci-receptacle, face: 5-15R, rating: 15 A, interval: every month}}\n"


def sheet(log: str) -> ListSheet:
    return history_sheet(
        surveyed({"devices/all.yaml": DEVICES}, panels=PANEL, circuits=CIRCUIT, boxes=BOXES, log=log)
    )


def rows(made: ListSheet, heading: str) -> tuple[Row, ...]:
    (group,) = (each for each in made.groups if each.heading.startswith(heading))
    return group.table.rows


def words(row: Row) -> list[str]:
    return [plain(cell) for cell in row.cells]


def test_a_protector_that_nobody_tested_is_listed_and_says_so() -> None:
    device, breaker = rows(sheet("[]\n"), "Protectors")
    assert words(device)[2:] == ["no test in the log", "", "every month"]
    assert words(breaker)[0] == "AFCI breaker main 1"
    assert words(breaker)[2] == "no test in the log"


def test_breakers_tested_alike_are_told_in_one_line_and_one_tested_apart_in_its_own() -> None:
    panel = PANEL.replace(
        "}}\n", "}, 2: {rating: 15 A, guards: [afci]}, 3: {rating: 15 A, guards: [afci]}}\n"
    )
    log = "- {date: 2026-05-01, test: afci-button, about: [main/1, main/3], result: pass}\n"
    made = history_sheet(
        surveyed({}, panels=panel, circuits=CIRCUIT, boxes="room: den\nboxes: {K1: {}}\n", log=log)
    )
    together, apart = rows(made, "Protectors")
    assert words(together) == [
        "AFCI breakers main 1 and main 3", "main", "2026-05-01", "pass", "not recorded",
    ]  # fmt: skip
    assert words(apart)[0:3] == ["AFCI breaker main 2", "main", "no test in the log"]


def test_the_last_of_several_tests_is_told_with_its_result() -> None:
    log = (
        "- {date: 2026-05-01, test: gfci-button, about: K1.r1, result: fail}\n"
        "- {date: 2026-02-01, test: gfci-button, about: K1.r1, result: pass}\n"
    )
    device, _ = rows(sheet(log), "Protectors")
    assert words(device)[2:4] == ["2026-05-01", "fail"]


def test_a_wall_with_a_box_and_no_picture_is_named() -> None:
    (den,) = rows(sheet("[]\n"), "Photographs")
    assert words(den)[2:] == ["north", "none"]


def test_a_trip_is_told_with_what_was_running() -> None:
    log = "- {date: 2026-08-02, trip: main/1, while: kettle, by: owner}\n"
    (trip,) = rows(sheet(log), "Trips")
    assert words(trip)[1] == "main 1 while kettle ran"


def test_surge_protection_is_among_what_is_to_be_tested() -> None:
    panel = PANEL + "surge: {type: 2, connected: built-in}\n"
    log = "- {date: 2026-05-01, test: surge-indicator, about: main, result: pass}\n"
    made = history_sheet(
        surveyed({"devices/all.yaml": DEVICES}, panels=panel, circuits=CIRCUIT, boxes=BOXES, log=log)
    )
    *_, surge = rows(made, "Protectors")
    assert words(surge)[:4] == ["main, surge protection, type 2", "main", "2026-05-01", "pass"]
