"""The record behind a page is shown as written, with its own line numbers."""

import re
from html import unescape

import pytest
from hypothesis import given
from hypothesis import strategies as st

from junctionary.publish.source_lines import source_lines
from junctionary.sheets.entries import Excerpt


def test_lines_keep_their_numbers_in_the_file() -> None:
    shown = str(source_lines(Excerpt("boxes/den.yaml", 41, "  D1:\n    makeup: pigtailed\n")))
    first, second = shown.splitlines()
    assert ">41<" in first
    assert ">42<" in second


def test_markup_in_a_record_stays_text() -> None:
    assert "<b>" not in str(source_lines(Excerpt("x.yaml", 1, "name: <b>den</b>\n")))


@given(st.text(st.sampled_from("a1:-?,#|>[]{}\"'\\ \n\t")))
def test_nothing_written_is_lost_or_moved(text: str) -> None:
    shown = str(source_lines(Excerpt("x.yaml", 1, text)))
    bare = re.sub(r"<[^>]*>", "", re.sub(r'<span class="ln"[^>]*>\d+</span>', "", shown))
    assert unescape(bare) == text.rstrip("\n")


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("breakers:\n  1: {rating: 15 A, says: 'Den: one'}   # not: a key", ["breakers", "1", "rating", "says"]),
        ("- id: a1\n  through: [attic, hall]\n  note: |\n    so: it\n    was\n  to: D1", ["id", "through", "note", "to"]),
        ("- {id: a1,\n   to: D1}\n- id: a2", ["id", "to", "id"]),
        ('note: "over\n  two: lines"\nto: D1', ["note", "to"]),
    ],
)  # fmt: skip
def test_keys_are_told_from_what_is_said_of_them(text: str, keys: list[str]) -> None:
    shown = str(source_lines(Excerpt("x.yaml", 1, text)))
    assert [each.strip() for each in re.findall(r'<span class="key">(.*?)</span>', shown, re.DOTALL)] == keys
