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


ONE_BATH = """
[house.yaml]
house: Example
reference: nec-2023
levels: [{id: ground, name: Ground floor}, {id: upper, name: Upper floor}]
[rooms/up.yaml]
room: up
name: Bathroom
kind: bathroom
level: upper
[panels/main.yaml]
panel: main
spaces: 4
breakers:
  1: {rating: 20 A, feeds: bath, says: "Bathroom, upper floor"}
  2: {rating: 15 A, feeds: more, says: "Porch lamp"}
[circuits/bath.yaml]
circuit: bath
name: Bath
serves: [up]
[circuits/more.yaml]
circuit: more
name: More
serves: []
"""
ANOTHER = "[rooms/low.yaml]\nroom: low\nname: Shower room\nkind: bathroom\nlevel: ground\n"


def test_one_room_that_one_circuit_serves_whole_needs_no_use() -> None:
    assert vague_because("Bathroom, upper floor", read_example(ONE_BATH)) is None
    assert vague_because("Bathroom, upper floor", read_example(ONE_BATH + ANOTHER)) is None
    assert vague_because("Bathroom", read_example(ONE_BATH + ANOTHER)) is not None


def test_a_room_that_two_circuits_serve_needs_a_use() -> None:
    two = read_example(ONE_BATH.replace("serves: []", "serves: [up]"))
    assert "2 circuits" in str(vague_because("Bathroom, upper floor", two))
    said = read_example(ONE_BATH.replace("Porch lamp", "Bathroom lights"))
    assert "2 entries" in str(vague_because("Bathroom, upper floor", said))


def test_two_entries_are_the_same_without_case_spaces_and_signs() -> None:
    assert folded("Kitchen counter") == folded("kitchen  Counter.")
    assert folded("Kitchen counter 1") != folded("Kitchen counter 2")
