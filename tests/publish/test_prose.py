"""The owner's Markdown: what it may hold, and what never gets through."""

import pytest

from junctionary.publish.prose import prose
from junctionary.sheets.links import Ref


def url(ref: Ref) -> str | None:
    return "../box/K1.html" if ref == Ref("box", "K1") else None


def made(text: str) -> str:
    return str(prose(text, url))


def test_a_thing_of_the_house_is_linked_by_kind_and_id() -> None:
    assert '<a href="../box/K1.html"' in made("See [the box](box:K1).")


def test_a_thing_that_is_not_there_stays_words() -> None:
    text = made("See [the box](box:K9).")
    assert "href" not in text
    assert "the box" in text


def test_a_relative_link_and_one_to_the_web_are_kept() -> None:
    text = made("[a](outage.html) [b](https://example.org/code)")
    assert 'href="outage.html"' in text
    assert 'href="https://example.org/code"' in text


def test_headings_begin_below_the_pages_own() -> None:
    assert "<h2" in made("# Outage")
    assert "<h1" not in made("# Outage")


def test_a_table_keeps_its_alignment() -> None:
    assert "text-align:right" in made("|a|\n|-:|\n|1|\n").replace(" ", "")


@pytest.mark.parametrize(
    "attack",
    [
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        '<a href="javascript:alert(1)">x</a>',
        "[x](JaVaScRiPt:alert(1))",
        "[x](data:text/html,hi)",
        '<iframe src="https://example.org"></iframe>',
        "<style>@import url(https://example.org/x.css)</style>",
        '<p onclick="alert(1)">x</p>',
        "![x](https://example.org/pixel.gif)",
        '<svg><use href="https://example.org/x.svg#a"/></svg>',
        "[x](//example.org/y)",
    ],
)
def test_nothing_runs_and_nothing_is_loaded(attack: str) -> None:
    text = made(attack).lower()
    assert not any(
        each in text
        for each in (
            "<script",
            "onerror",
            "javascript:",
            "data:",
            "<iframe",
            "<style",
            "onclick",
            "<img",
            "<svg",
            "//example.org/y",
        )
    )
