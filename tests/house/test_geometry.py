"""Where walls and boxes stand in the house's frame, and which walls are two faces of one."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from junctionary.house.geometry import (
    Shape,
    area_in2,
    contains,
    is_other_face,
    other_face,
    shape,
    shapes,
    spot,
)
from junctionary.house.model import House
from junctionary.read import load
from junctionary.records.rooms import RoomRecord

HOUSE = """\
house: Tern Cottage
reference: nec-2023
levels: [{id: ground, name: Ground floor, floor: 0 ft}]
"""
SQUARE = "outline: [[0 ft, 0 ft], [12 ft, 0 ft], [12 ft, 9 ft], [0 ft, 9 ft]]"
NAMES = "walls: [north, east, south, west]"


def room(body: str, id_: str = "nook") -> str:
    return f"room: {id_}\nname: Nook\nkind: other\nlevel: ground\n{body}\n"


Maker = Callable[[str], House]


def house_with(house_of: Maker, *bodies: str, boxes: str = "") -> House:
    files = [f"[rooms/{index}.yaml]\n{body}" for index, body in enumerate(bodies)]
    return house_of(
        "".join((f"[house.yaml]\n{HOUSE}", *files, f"[boxes/nook.yaml]\n{boxes}" if boxes else ""))
    )


@pytest.fixture
def shape_of() -> Callable[[str], Shape | None]:
    return lambda body: shape(RoomRecord.model_validate(load(room(body), "rooms/nook.yaml")[0]))


@pytest.fixture
def made(shape_of: Callable[[str], Shape | None]) -> Callable[[str], Shape]:
    def some(body: str) -> Shape:
        found = shape_of(body)
        assert found is not None
        return found

    return some


@pytest.mark.parametrize(
    ("name", "left", "right"),
    [
        ("north", (0, 0), (144, 0)),
        ("east", (144, 0), (144, 108)),
        ("south", (144, 108), (0, 108)),
        ("west", (0, 108), (0, 0)),
    ],
)
def test_a_wall_runs_from_its_left_end_as_it_is_faced(
    made: Callable[[str], Shape], name: str, left: tuple[int, int], right: tuple[int, int]
) -> None:
    wall = made(f"{SQUARE}\n{NAMES}").wall(name)
    assert wall is not None
    assert (wall.left, wall.right) == (left, right)


def test_an_outline_the_other_way_round_has_the_same_left_ends(made: Callable[[str], Shape]) -> None:
    turned = made(
        "outline: [[0 ft, 0 ft], [0 ft, 9 ft], [12 ft, 9 ft], [12 ft, 0 ft]]\n"
        "walls: [west, south, east, north]"
    )
    straight = made(f"{SQUARE}\n{NAMES}")
    for name in ("north", "east", "south", "west"):
        assert turned.wall(name) == straight.wall(name)


def test_a_wall_is_exact_in_mixed_units(made: Callable[[str], Shape]) -> None:
    wall = made("outline: [[0 ft, 0 ft], [2.54 m, 0 ft], [2.54 m, 9 ft], [0 ft, 9 ft]]\n" + NAMES).wall(
        "north"
    )
    assert wall is not None
    assert wall.length_in == 100
    assert wall.at(Fraction(25)) == (25, 0)


def test_a_sliver_of_a_wall_has_a_length(made: Callable[[str], Shape]) -> None:
    shape = made(
        "outline: [[0 ft, 0 ft], [12 ft, 0 ft], [144.01 in, 0.01 in], [12 ft, 9 ft], [0 ft, 9 ft]]\n"
        "walls: [north, sliver, east, south, west]"
    )
    wall = shape.wall("sliver")
    assert wall is not None
    assert wall.length_in == Fraction(1, 16)
    assert wall.at(Fraction(0)) == (144, 0)


def test_sides_without_names_go_by_the_quarter_they_face_if_it_is_the_only_one(
    made: Callable[[str], Shape],
) -> None:
    assert [each.name for each in made(SQUARE).walls] == ["north", "east", "south", "west"]
    ell = made(
        "outline: [[0 ft, 0 ft], [6 ft, 0 ft], [6 ft, 2 ft], [12 ft, 2 ft], [12 ft, 9 ft], [0 ft, 9 ft]]"
    )
    assert [each.name for each in ell.walls] == [None, None, None, None, "south", "west"]


@pytest.mark.parametrize(
    "body",
    [
        "note: no outline told",
        "outline: [[0 ft, 0 ft], [12 ft, 0 ft]]",
        "outline: [[0 ft, 0 ft], [12 ft, 0 ft], [24 ft, 0 ft]]",
    ],
)
def test_what_encloses_nothing_has_no_shape(shape_of: Callable[[str], Shape | None], body: str) -> None:
    assert shape_of(body) is None


def test_names_that_do_not_fit_the_sides_name_none(made: Callable[[str], Shape]) -> None:
    assert [each.name for each in made(f"{SQUARE}\nwalls: [north, south]").walls] == [None] * 4


BOX = """\
room: nook
boxes:
  N1: {at: {wall: east, along: 2 ft, up: 16 in}}
  N2: {at: {ceiling: [5 ft, 4 ft]}}
  N3: {at: {wall: east}}
  N4: {}
"""


def test_a_box_is_placed_by_its_wall_or_by_its_point_and_otherwise_not(house_of: Maker) -> None:
    house = house_with(house_of, room(f"{SQUARE}\n{NAMES}"), boxes=BOX)
    known = shapes(house)["nook"]
    places = {id_: spot(box.record.at, known) for id_, box in house.boxes.items()}
    n1, n2 = places["N1"], places["N2"]
    assert n1 is not None
    assert n2 is not None
    assert (n1.point, n1.up_in) == ((144, 24), 16)
    assert n2.point == (60, 48)
    assert [places[each] for each in ("N3", "N4")] == [None, None]


def test_two_rooms_on_a_wall_are_its_two_faces(house_of: Maker) -> None:
    beside = "outline: [[12 ft 5 in, 3 ft], [20 ft, 3 ft], [20 ft, 9 ft], [12 ft 5 in, 9 ft]]\n" + NAMES
    house = house_with(house_of, room(f"{SQUARE}\n{NAMES}"), room(beside, "pantry"))
    known = shapes(house)
    east = known["nook"].wall("east")
    assert east is not None
    faces = list(other_face(house, known, house.rooms["nook"], east))
    assert [(each.id, wall.name) for each, wall in faces] == [("pantry", "west")]
    # The pantry's left end is seen from the other side.
    assert east.along_of(faces[0][1].left) == 108


@pytest.mark.parametrize("far", ["13 ft 5 in", "24 ft"])
def test_rooms_farther_apart_than_a_wall_is_thick_share_none(made: Callable[[str], Shape], far: str) -> None:
    one = made(f"{SQUARE}\n{NAMES}").wall("east")
    other = made(f"outline: [[{far}, 0 ft], [40 ft, 0 ft], [40 ft, 9 ft], [{far}, 9 ft]]\n{NAMES}").wall(
        "west"
    )
    assert one is not None
    assert other is not None
    assert not is_other_face(one, other)


def test_a_point_is_within_an_l_shape_where_one_of_its_two_rectangles_holds_it() -> None:
    shape_ = tuple((Fraction(x), Fraction(y)) for x, y in ((0, 0), (6, 0), (6, 2), (2, 2), (2, 5), (0, 5)))
    for x in range(-1, 8):
        for y in range(-1, 7):
            held = (0 <= x <= 6 and 0 <= y <= 2) or (0 <= x <= 2 and 0 <= y <= 5)
            assert contains(shape_, (Fraction(x), Fraction(y))) is held, (x, y)
    assert area_in2(shape_) == area_in2(shape_[::-1]) == 12 + 6
