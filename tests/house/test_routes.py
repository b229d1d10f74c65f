"""How runs lie on a wall: recorded as told, assumed with care."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from junctionary.house.geometry import shapes
from junctionary.house.model import House
from junctionary.house.routes import Piece, on_wall, routes_of

HOUSE = """\
house: Tern Cottage
reference: nec-2023
levels: [{id: under, name: Cellar, floor: -8 ft}, {id: ground, name: Ground floor, floor: 0 ft}, {id: up, name: Up, floor: 9 ft}]
"""
ROOM = """\
room: nook
name: Nook
kind: other
level: ground
ceiling: 8 ft
outline: [[0 ft, 0 ft], [12 ft, 0 ft], [12 ft, 9 ft], [0 ft, 9 ft]]
walls: [north, east, south, west]
"""
CELLAR = "room: cellar\nname: Cellar\nkind: cellar\nlevel: under\n"
LOFT = "room: loft\nname: Loft\nkind: attic\nlevel: up\n"
BOXES = """\
room: nook
boxes:
  N1: {at: {wall: north, along: 2 ft, up: 16 in}}
  N2: {at: {wall: north, along: 10 ft, up: 16 in}}
  N3: {at: {wall: east, along: 4 ft, up: 16 in}}
"""


Pieces = Callable[..., list[Piece]]


@pytest.fixture
def pieces(house_of: Callable[[str], House]) -> Pieces:
    """From a run, and what stands along the walls, to the pieces of it on the north wall."""

    def found(run: str, things: str = "") -> list[Piece]:
        house = house_of(
            f"[house.yaml]\n{HOUSE}[rooms/nook.yaml]\n{ROOM}{things}[rooms/cellar.yaml]\n{CELLAR}"
            f"[rooms/loft.yaml]\n{LOFT}[boxes/nook.yaml]\n{BOXES}"
            f"[circuits/c.yaml]\ncircuit: c\nname: C\npurpose: general\nruns:\n  - {run}\n"
        )
        known = shapes(house)
        wall = known["nook"].wall("north")
        assert wall is not None
        return on_wall(house, known, routes_of(house, known), house.rooms["nook"], wall, Fraction(96))

    return found


def test_a_recorded_route_is_drawn_as_told_and_is_not_assumed(pieces: Pieces) -> None:
    found = pieces("{id: c1, from: N1, to: N2, route: [N1, {wall: north, along: 5 ft, up: 40 in}, N2]}")
    assert found == [Piece("c1", ((24, 16), (60, 40), (120, 16)), False, "on")]


def test_where_a_route_leaves_for_the_ceiling_the_rest_of_the_way_is_assumed(pieces: Pieces) -> None:
    found = pieces("{id: c1, from: N1, to: N3, route: [N1, {ceiling: [2 ft, 3 ft]}, N3]}")
    assert found == [Piece("c1", ((24, 16), (24, 96)), True, "on")]


def test_a_run_to_another_wall_whose_way_nothing_tells_stands_both_ways(pieces: Pieces) -> None:
    found = pieces("{id: c1, from: N1, to: N3}")
    assert [(each.points, each.way) for each in found] == [
        (((24, 16), (24, 96)), "untold"),
        (((24, 16), (24, 0)), "untold"),
    ]


def test_a_run_through_the_cellar_goes_down_and_through_the_loft_up(pieces: Pieces) -> None:
    down = pieces("{id: c1, from: N1, to: N3, through: [cellar]}")
    up = pieces("{id: c1, from: N1, to: N3, through: [loft]}")
    assert [each.points for each in down] == [((24, 16), (24, 0))]
    assert [each.points for each in up] == [((24, 16), (24, 96))]


def test_a_run_whose_far_end_nobody_knows_stands_both_ways(pieces: Pieces) -> None:
    assert {each.way for each in pieces("{id: c1, from: N1, to: unknown}")} == {"untold"}


def test_between_two_boxes_of_a_wall_it_is_assumed_level_and_over_a_door(pieces: Pieces) -> None:
    level = pieces("{id: c1, from: N1, to: N2}")
    over = pieces(
        "{id: c1, from: N1, to: N2}",
        "things: [{what: door, wall: north, along: 4 ft, width: 30 in, height: 78 in}]\n",
    )
    assert [each.points for each in level] == [((24, 16), (120, 16))]
    assert [each.points for each in over] == [((24, 16), (24, 84), (120, 84), (120, 16))]


def test_no_assumed_route_runs_up_through_a_window(pieces: Pieces) -> None:
    window = "things: [{what: window, wall: north, along: 1 ft, width: 3 ft, up: 30 in, height: 40 in}]\n"
    found = pieces("{id: c1, from: N1, to: N3, through: [loft]}", window)
    assert [each.points for each in found] == [((24, 16), (6, 16), (6, 96))]


def test_a_route_round_a_corner_is_taken_to_reach_it_at_its_own_height(pieces: Pieces) -> None:
    found = pieces("{id: c1, from: N1, to: N3, route: [N1, {wall: east, along: 2 ft, up: 16 in}, N3]}")
    assert found == [Piece("c1", ((24, 16), (144, 16)), True, "on")]


def test_an_end_the_route_does_not_name_stands_both_ways_at_its_box(pieces: Pieces) -> None:
    found = pieces(
        "{id: c1, from: N1, to: N3, route: [{wall: north, along: 5 ft, up: 40 in}, {wall: north, along: 7 ft, up: 40 in}]}"
    )
    assert Piece("c1", ((60, 40), (84, 40)), False, "on") in found
    assert {each.points[-1] for each in found if each.assumed} >= {(24, 96), (24, 0)}
