"""The record behind a page is shown as written, with its own line numbers."""

from junctionary.publish.source_lines import source_lines
from junctionary.sheets.entries import Excerpt


def test_lines_keep_their_numbers_in_the_file() -> None:
    shown = str(source_lines(Excerpt("boxes/den.yaml", 41, "  D1:\n    makeup: pigtailed\n")))
    first, second = shown.splitlines()
    assert ">41<" in first
    assert ">42<" in second


def test_markup_in_a_record_stays_text() -> None:
    assert "<b>" not in str(source_lines(Excerpt("x.yaml", 1, "name: <b>den</b>\n")))
