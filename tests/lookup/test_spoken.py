"""A page speaks of breakers as the sheets do."""

from collections.abc import Iterator

import pytest

from junctionary.sheets.spoken import in_words, panels_spoken, spoken

from .conftest import Looked, Run

PANELS = {"main": "the main panel", "shop": "the workshop panel", "LP-2": "panel LP-2"}
SAID = {
    "main/6": "breaker 6 in the main panel",
    "its handle is tied to main/8.": "its handle is tied to breaker 8 in the main panel.",
    "main/6 and main/8 both feed \u201cDen\u201d, whose neutral they share": (
        "breakers 6 and 8 in the main panel both feed \u201cDen\u201d, whose neutral they share"
    ),
    "on main/2+4, shop/1 and main/26a": (
        "on breakers 2+4 and 26a in the main panel and breaker 1 in the workshop panel"
    ),
    "the line side of main/main: it stays live": "the line side of the main breaker in the main panel: it stays live",
    "main/main and main/1+3": "the main breaker and breaker 1+3 in the main panel",
    "where it lands on LP-2/neutral": "where it lands on the neutral bar in panel LP-2",
    "main/ce1.white": "ce1.white in the main panel",
    "K1/j2 and main/6": "K1/j2 and main/6",
    "210.52(B)(2); K2/j1; N/A": "210.52(B)(2); K2/j1; N/A",
}


@pytest.mark.parametrize("text", SAID)
def test_breakers_are_named_as_people_speak_of_them(text: str) -> None:
    assert in_words(PANELS, text) == SAID[text]


@pytest.mark.browser
def test_a_page_says_the_same(run_script: Run) -> None:
    speak = "([panels, texts]) => texts.map(each => junctionarySpoken.spoken(panels, each))"
    assert run_script(speak, [PANELS, list(SAID)]) == list(SAID.values())


def reasons(demo: Looked) -> Iterator[str]:
    for each in demo.isolations.values():
        yield from (why for off in (*each.breakers, *each.sources) for why in off.why)
        yield from (*each.unknown, *each.stays_live)


@pytest.mark.browser
def test_a_page_says_every_reason_of_the_demo_house_alike_and_leaves_no_breaker_by_its_id(
    demo: Looked, run_script: Run
) -> None:
    texts = list(dict.fromkeys(reasons(demo)))
    said = [spoken(demo.house, each) for each in texts]
    speak = "([panels, texts]) => texts.map(each => junctionarySpoken.spoken(panels, each))"
    assert run_script(speak, [panels_spoken(demo.house), texts]) == said
    assert [each for each in said if any(f"{panel}/" in each for panel in demo.house.panels)] == []
