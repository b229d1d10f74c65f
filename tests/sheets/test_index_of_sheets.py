"""The index of sheets on the cover: every kind of sheet has a line, in the order of the numbers."""

from houses import DEN, surveyed

from junctionary.sheets.covers import cover


def test_each_level_and_panel_and_each_series_of_sheets_is_in_the_index() -> None:
    sheet = cover(
        surveyed(
            panels="panel: main\nname: Main panel\nspaces: 8\nbreakers:\n  1: {rating: 20 A, feeds: den}\n",
            circuits="circuit: den\nname: Den\n",
            boxes="room: den\nboxes:\n  D1: {devices: {r1: duplex}}\n",
            rooms=f"{DEN}outline: [[0 ft, 0 ft], [9 ft, 0 ft], [9 ft, 8 ft], [0 ft, 8 ft]]\n",
        ),
        has_notes=True,
    )
    lines = {each.sheet.text: each for each in sheet.index}
    due = {
        "Plan, Ground floor", "Main panel", "Main panel, directory card", "Each room", "Each wall", "Each box",
        "Each outlet and switch", "Each circuit", "Each check", "Each note", "Findings", "One-line diagram",
    }  # fmt: skip
    assert due <= set(lines)
    assert [each.number for each in sheet.index] == sorted(each.number for each in sheet.index)
    assert lines["Main panel, directory card"].number == "E-611-card"


def test_a_series_that_has_no_sheet_has_no_line() -> None:
    named = {each.sheet.text for each in cover(surveyed(rooms="room: hall\nname: Hall\n")).index}
    assert not {"Each box", "Each wall", "Each circuit", "Each outlet and switch", "Each note"} & named
