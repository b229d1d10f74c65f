"""Where things are said to stand: walls no room has, outlines that enclose nothing, places outside their room."""

from collections.abc import Callable

import pytest

HouseProblems = Callable[[str], list[str]]

HOUSE = """
[house.yaml]
house: Hut
reference: nec-2023
[rooms/den.yaml]
room: den
name: Den
kind: den
ceiling: 8 ft
outline: [[0 ft, 0 ft], [10 ft, 0 ft], [10 ft, 8 ft], [0 ft, 8 ft]]
walls: [north, east, south, west]
"""
ROOM = "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n"
OUTLINE = "outline: [[0 ft, 0 ft], [10 ft, 0 ft], [10 ft, 8 ft], [0 ft, 8 ft]]\n"


def box(at: str) -> str:
    return f"{HOUSE}[boxes/den.yaml]\nroom: den\nboxes: {{K1: {{at: {at}}}}}\n"


WRONG = {
    "a box on a wall misspelt": (
        box("{wall: nort, along: 2 ft}"),
        "boxes/den.yaml:2:25: no wall 'nort' is recorded in den; "
        "expected 'north', the nearest known wall; "
        "write north if that is meant, else record nort under walls: of the room",
    ),
    "a thing on a wall misspelt": (
        f"{ROOM}{OUTLINE}walls: [n, e, s, w]\nthings: [{{what: door, wall: se}}]\n",
        "rooms/den.yaml:6:29: no wall 'se' is recorded in den; expected 's', the nearest known wall; "
        "write s if that is meant, else record se under walls: of the room",
    ),
    "a point of a route on no wall": (
        f"{HOUSE}[circuits/c.yaml]\ncircuit: c\nname: C\nruns: [{{id: a, route: [{{room: den, wall: sout}}]}}]\n",
        "circuits/c.yaml:3:42: no wall 'sout' is recorded in den",
    ),
    "a picture of no wall": (
        f"{HOUSE}[photos/photos.yaml]\nphotos: [{{file: a.jpg, shows: den, room: den, wall: weest}}]\n",
        "photos/photos.yaml:1:53: no wall 'weest' is recorded in den",
    ),
    "too few names": (
        f"{ROOM}{OUTLINE}walls: [north, east]\n",
        "rooms/den.yaml:5:8: the outline of den has 4 sides, and walls has 2 names",
    ),
    "one name for two": (
        f"{ROOM}{OUTLINE}walls: [north, east, south, north]\n",
        "rooms/den.yaml:5:29: north is the name of two walls of den",
    ),
    "an outline of two corners": (
        f"{ROOM}outline: [[0 ft, 0 ft], [9 ft, 0 ft]]\n",
        "rooms/den.yaml:4:10: the outline of den encloses nothing",
    ),
    "an outline that crosses itself": (
        f"{ROOM}outline: [[0 ft, 0 ft], [9 ft, 9 ft], [9 ft, 0 ft], [0 ft, 5 ft]]\n",
        "rooms/den.yaml:4:10: the outline of den crosses itself",
    ),
}

ODD = {
    "a box beyond the end of its wall": (
        box("{wall: north, along: 36 ft}"),
        "boxes/den.yaml:2:39: box K1 is 36 ft along north of den; expected a wall of 10 ft; "
        "measure again, or correct the outline",
    ),
    "a box above the ceiling": (
        box("{wall: north, along: 3 ft, up: 44 ft}"),
        "boxes/den.yaml:2:49: box K1 is 44 ft up, and den is 8 ft high",
    ),
    "a box in another room's ceiling": (
        box("{ceiling: [50 ft, 4 ft]}"),
        "boxes/den.yaml:2:28: box K1 is at 50 ft, 4 ft, which is outside den",
    ),
    "a counter longer than its wall": (
        f"{ROOM}{OUTLINE}things: [{{what: counter, wall: east, along: 1 ft, width: 9 ft}}]\n",
        "rooms/den.yaml:5:58: the counter ends 10 ft along east of den",
    ),
    "names given the other way round": (
        f"{ROOM}{OUTLINE}walls: [west, south, east, north]\n",
        "rooms/den.yaml:5:9: the side of den called west faces north",
    ),
}


@pytest.mark.parametrize("name", WRONG | ODD)
def test_what_cannot_stand_there_is_told(house_problems: HouseProblems, name: str) -> None:
    text, said = (WRONG | ODD)[name]
    assert [each for each in house_problems(text) if each.startswith(said)], house_problems(text)


@pytest.mark.parametrize(
    "at",
    [
        "{wall: north, along: 10 ft 4 in, up: 8 ft 2 in}", "{wall: south, along: 1 ft}", "{ceiling: [10 ft, 8 ft]}",
        "{floor: [0 ft, 1 ft]}", "{room: den, wall: east}",
    ],
)  # fmt: skip
def test_what_stands_in_its_room_is_not_asked_about(house_problems: HouseProblems, at: str) -> None:
    assert house_problems(box(at)) == []


def test_a_room_of_which_no_shape_is_told_may_have_any_wall(house_problems: HouseProblems) -> None:
    said = house_problems(
        f"{HOUSE}{ROOM}[boxes/den.yaml]\nroom: den\nboxes: {{K1: {{at: {{wall: by the stove, along: 99 ft}}}}}}\n"
    )
    assert said == []


@pytest.mark.parametrize("name", ODD)
def test_what_may_be_a_slip_of_the_rule_does_not_stop(stopping: HouseProblems, name: str) -> None:
    assert stopping(ODD[name][0]) == []
