"""When the words on a panel's door tell a circuit from the others."""

import pytest

from junctionary.checks.directory import folded, vague_because
from junctionary.checks.examples import read_example

HOUSE = read_example("""
[rooms/one.yaml]
room: one
name: North bedroom
kind: bedroom
[rooms/two.yaml]
room: two
name: South bedroom
kind: bedroom
[rooms/den.yaml]
room: den
name: Den
kind: den
""")


@pytest.mark.parametrize(
    "says",
    ["?", "Lights", "plugs", "General", "Misc.", "Spare", "Bedroom", "Bedrooms", "Kitchen", "Upstairs",
     "Circuit 5", "Bedroom lights", "Room", "120 V"],
)  # fmt: skip
def test_words_that_fit_several_circuits_are_vague(says: str) -> None:
    assert vague_because(says, HOUSE) is not None


@pytest.mark.parametrize(
    "says",
    ["Den lights", "Den, east wall", "Furnace", "Water heater", "A/C", "North bedroom", "Bedroom 2 lights",
     "Bedrooms, lights", "Upstairs lights", "Spare bedroom receptacles", "Smoke alarms", "Kitchen counter"],
)  # fmt: skip
def test_a_place_with_a_use_or_one_thing_tells_enough(says: str) -> None:
    assert vague_because(says, HOUSE) is None


def test_two_entries_are_the_same_without_case_spaces_and_signs() -> None:
    assert folded("Kitchen counter") == folded("kitchen  Counter.")
    assert folded("Kitchen counter 1") != folded("Kitchen counter 2")
