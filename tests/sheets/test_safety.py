"""Notes keep their author and date; a note without them says so."""

from houses import surveyed

from junctionary.sheets.safety import note_sheets, safety_sheet

SURVEY = surveyed()


def test_a_header_names_the_author_and_the_date_and_is_not_shown() -> None:
    (note,) = note_sheets(
        SURVEY, {"notes/outage.md": "---\nby: owner\ndate: 2026-01-02\n---\n# Outage\n\nFirst.\n"}
    )
    assert (note.heading, note.written_by, note.written_on) == ("Outage", "owner", "2026-01-02")
    assert note.markdown.strip() == "First."


def test_a_note_without_a_header_says_that_nobody_is_recorded() -> None:
    (note,) = note_sheets(SURVEY, {"notes/panel.md": "Look first.\n"})
    assert note.heading == "panel"
    assert "not recorded" in note.written_by
    assert "not recorded" in note.written_on
    assert note.markdown == "Look first.\n"


def test_a_rule_of_dashes_is_no_header() -> None:
    (note,) = note_sheets(SURVEY, {"notes/a.md": "One\n\n---\n\nby: two\n"})
    assert "by: two" in note.markdown


def test_the_safety_sheet_links_every_note() -> None:
    notes = note_sheets(SURVEY, {"notes/a.md": "# A\n", "notes/b.md": "# B\n"})
    assert len(safety_sheet(SURVEY, notes).notes) == 2
