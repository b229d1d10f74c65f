"""box-not-reachable beyond its own examples."""

from collections.abc import Callable

import pytest

RULE = "box-not-reachable"
RUN = "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 14/2 NM-B, from: unknown, to: K1}\n"


def record(box: str) -> str:
    return f"{RUN}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{{box}}}\n"


AT = "at: {wall: north, along: 3 ft, up: 16 in}"


@pytest.mark.parametrize(
    "box",
    [
        f"{AT}, devices: {{r1: duplex}}, makeup: end-of-run",
        f"{AT}, cover: blank, capped: [a1]",
        "capped: [a1], reach: {through: attic hatch, hidden_by: insulation}",
        "capped: [a1], reach: {hidden_by: a bookcase}",
    ],
)
def test_what_shows_or_can_be_got_at_is_reachable(box: str, says: Callable) -> None:
    said = says(RULE, record(box))
    assert (said.found, said.needs) == ([], [])


@pytest.mark.parametrize("reach", ["none", "{behind: plaster}"])
def test_a_box_out_of_reach_is_a_fault_even_with_a_cover(reach: str, says: Callable) -> None:
    assert says(RULE, record(f"{AT}, cover: blank, capped: [a1], reach: {reach}")).found == [
        "boxes/den.yaml:3"
    ]


@pytest.mark.parametrize(
    ("box", "needs"),
    [
        ("capped: [a1]", "the cover of box K1, or how it is reached"),
        (f"{AT}, cover: none, capped: [a1]", "the cover of box K1, or how it is reached"),
        ("cover: blank, capped: [a1]", "where box K1 is, or how it is reached"),
        (f"{AT}, devices: {{r1: duplex}}, makeup: end-of-run, reach: unknown", "how box K1 is reached"),
    ],
)
def test_what_is_not_known_to_show_is_not_passed(box: str, needs: str, says: Callable) -> None:
    assert says(RULE, record(box)).needs == [needs]


def test_an_empty_box_may_be_anywhere(says: Callable) -> None:
    text = "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {reach: none}\n"
    assert says(RULE, text).found == []
