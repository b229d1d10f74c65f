"""What is missing of several things alike is told once, and every one of them is counted."""

import pytest

from junctionary.checks.wanted import alike


@pytest.mark.parametrize(
    ("facts", "told"),
    [
        (["the cables of circuit a", "the cables of circuit b-2"], ["the cables of circuits a, b-2"]),
        (["how deep box K1 is", "how deep K1.r1 is", "how deep box K2 is"], ["how deep boxes K1, K2 are", "how deep K1.r1 is"]),
        (["what breaker main/1 guards against", "what breaker main/2+4 guards against"],
         ["what breakers main/1, main/2+4 guard against"]),
        (["which loads circuit a feeds", "which loads circuit b feeds"], ["which loads circuits a, b feed"]),
        (["whether every box of room a is recorded", "whether every box of room b is recorded"],
         ["whether every box of rooms a, b is recorded"]),
        (["the outlets of circuit a", "the outlets of circuit a"], ["the outlets of circuit a"]),
        (["the floor area", "the floor area"], ["the floor area", "the floor area"]),
    ],
)  # fmt: skip
def test_facts_alike_are_one(facts: list[str], told: list[str]) -> None:
    found = alike(facts)
    assert [words for words, _ in found] == told
    assert sorted(each for _, positions in found for each in positions) == list(range(len(facts)))


def test_no_more_are_named_than_asked_and_the_rest_is_counted() -> None:
    facts = [f"what is drawn on circuit c{each}" for each in range(5)]
    assert alike(facts, 2) == [("what is drawn on circuits c0, c1 and 3 more", [0, 1, 2, 3, 4])]
