"""two-wires-one-terminal beyond its own examples."""

from collections.abc import Callable

import pytest

RULE = "two-wires-one-terminal"
RUNS = (
    "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n"
    "  - {id: a1, cable: 14/2 NM-B, from: unknown, to: K1}\n"
    "  - {id: a2, cable: 14/2 NM-B, from: K1, to: unknown}\n"
)


def record(kind: str, landing: str) -> str:
    box = f"  K1:\n    devices: {{r1: {kind}}}\n    terminals:\n      r1.silver: {landing}\n"
    return f"{RUNS}[boxes/den.yaml]\nroom: den\nboxes:\n{box}"


@pytest.mark.parametrize("how", [", how: loop", ", how: push-in", ", how: lug", ""])
def test_two_wires_are_a_fault_however_they_are_landed(how: str, says: Callable) -> None:
    said = says(RULE, record("duplex", f"{{wire: [a1.white, a2.white]{how}}}"))
    assert said.found == ["boxes/den.yaml:6"]


def test_a_clamp_that_takes_two_is_well(says: Callable) -> None:
    said = says(RULE, record("pair-clamp", "{wire: [a1.white, a2.white], how: clamp-plate}"))
    assert (said.found, [each for each in said.needs if "r1.silver" in each]) == ([], [])


def test_one_wire_is_well_and_the_others_are_asked_for(says: Callable) -> None:
    said = says(RULE, record("duplex", "{wire: a1.white, how: loop}"))
    assert said.found == []
    assert said.needs == [
        "where K1/a1.black, K1/a1.bare, K1/a2.black, K1/a2.white, K1/a2.bare are joined or landed"
    ]
