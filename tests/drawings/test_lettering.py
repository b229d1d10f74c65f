"""Lettering is given at least the room it takes."""

import pytest

from junctionary.drawings.lettering import width_px, wrapped


def test_no_line_is_wider_than_its_limit() -> None:
    for line in wrapped("attic, over the den, under eleven inches of loose insulation", 90, 12):
        assert width_px(line, 12) <= 90


def test_every_word_is_kept_in_order() -> None:
    text = "attic, over the den, under insulation"
    assert " ".join(wrapped(text, 90, 12)) == text


def test_a_word_wider_than_the_limit_is_broken() -> None:
    lines = wrapped("unbreakablewordthatgoeson", 60, 12)
    assert len(lines) > 1
    assert "".join(lines) == "unbreakablewordthatgoeson"


@pytest.mark.parametrize("text", ["", "   "])
def test_nothing_takes_no_line(text: str) -> None:
    assert wrapped(text, 60, 12) == ()


def test_a_figure_keeps_its_unit_on_its_line() -> None:
    assert wrapped("3 joints and 35 in-lb", width_px("3 joints and 35", 12), 12) == (
        "3 joints and",
        "35 in-lb",
    )
