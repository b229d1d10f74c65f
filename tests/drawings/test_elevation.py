"""Walls as they are faced: both dimensions of every box, every route hatched, legible in pieces."""

from itertools import combinations, pairwise

import pytest
from houses import surveyed
from overlaps import lettering_overlaps, outside, segments, strokes
from rooms import random_room, walls_of

from junctionary.drawings.elevation import narrow_elevation, wide_elevation
from junctionary.drawings.ink import Drawing, Linked, Mark, Stroke, letterings
from junctionary.sheets.elevation import Elevation
from junctionary.sheets.elevations import elevations
from junctionary.sheets.links import Ref
from junctionary.sheets.survey import Survey

SEEDS = pytest.mark.parametrize("seed", range(24))


def both(wall: Elevation) -> tuple[Drawing, Drawing]:
    return wide_elevation(wall), narrow_elevation(wall)


def all_walls(survey: Survey) -> list[Elevation]:
    rooms = enumerate(survey.house.rooms.values(), 1)
    return [wall for position, room in rooms for wall in elevations(survey, room, position)]


def links(marks: tuple[Mark, ...]) -> set[Ref]:
    return {mark.to for mark in marks if isinstance(mark, Linked)}


@SEEDS
def test_no_lettering_of_a_random_room_lies_on_other_lettering(seed: int) -> None:
    for wall in walls_of(random_room(seed)):
        for drawing in both(wall):
            assert lettering_overlaps(drawing) == [], drawing.id
            assert outside(drawing) == [], drawing.id


def test_no_lettering_of_the_demo_lies_on_other_lettering(demo_survey: Survey) -> None:
    for wall in all_walls(demo_survey):
        for drawing in both(wall):
            assert lettering_overlaps(drawing) == [], drawing.id
            assert outside(drawing) == [], drawing.id


def test_letters_are_never_below_nine_pixels(demo_survey: Survey) -> None:
    for wall in all_walls(demo_survey):
        for drawing, field in zip(both(wall), (721 - 46, 320 - 46), strict=True):
            scale = min(1, field / drawing.width_px)
            assert min(each.size_px for each in letterings(drawing.marks)) * scale >= 9, drawing.id


@SEEDS
def test_every_box_is_drawn_with_its_code_its_distance_and_its_height(seed: int) -> None:
    for wall in walls_of(random_room(seed)):
        for drawing in both(wall):
            words = {each.text for each in letterings(drawing.marks)}
            for box in wall.boxes:
                assert box.ref in links(drawing.marks)
                assert {box.name, box.along, box.up} <= words


@SEEDS
def test_every_box_and_every_route_is_hatched_from_end_to_end(seed: int) -> None:
    for wall in walls_of(random_room(seed)):
        assert_hatched(wall)


def test_a_slanting_route_is_hatched_from_end_to_end() -> None:
    told = den("  - {id: c1, from: D1, to: D2, route: [D1, {wall: north, along: 5 ft, up: 60 in}, D2]}\n")
    assert_hatched(told["Den, north wall"])


def assert_hatched(wall: Elevation) -> None:
    points = [each.at for each in wall.boxes]
    for run in wall.runs:
        for (x1, y1), (x2, y2) in pairwise(run.points):
            points += [(x1 + (x2 - x1) * part / 8, y1 + (y2 - y1) * part / 8) for part in range(9)]
    for x, y in points:
        assert any(
            strip.left <= x <= strip.left + strip.width and strip.foot <= y <= strip.foot + strip.height
            for strip in wall.cautions
        ), (wall.id, x, y)


ROOM = """\
room: den
name: Den
kind: den
level: ground
ceiling: 8 ft
outline: [[0 ft, 0 ft], [12 ft, 0 ft], [12 ft, 10 ft], [0 ft, 10 ft]]
walls: [north, east, south, west]
"""
BOXES = """\
room: den
boxes:
  D1: {at: {wall: north, along: 2 ft, up: 16 in}}
  D2: {at: {wall: north, along: 8 ft, up: 16 in}}
"""


def den(runs: str = "", **more: str) -> dict[str, Elevation]:
    circuits = f"circuit: c\nname: C\npurpose: general\nruns:\n{runs}" if runs else ""
    files = {"rooms": ROOM, "boxes": BOXES} | ({"circuits": circuits} if circuits else {}) | more
    return {each.title: each for each in walls_of(surveyed(**files))}


def test_a_recorded_route_is_solid_and_an_assumed_one_dashed() -> None:
    told = den("  - {id: c1, from: D1, to: D2, route: [D1, {wall: north, along: 5 ft, up: 30 in}, D2]}\n")
    untold = den("  - {id: c1, from: D1, to: D2}\n")
    (solid,) = strokes(wide_elevation(told["Den, north wall"]).marks, "route")
    (dashed,) = strokes(wide_elevation(untold["Den, north wall"]).marks, "route")
    assert "dashed" not in solid.kind
    assert "dashed" in dashed.kind


def test_where_nothing_tells_how_a_run_leaves_its_box_the_wall_is_hatched_from_corner_to_corner() -> None:
    wall = den("  - {id: c1, from: D1, to: unknown}\n")["Den, north wall"]
    assert any(
        (strip.left, strip.width) == (0, 144) and strip.foot <= 16 <= strip.foot + strip.height
        for strip in wall.cautions
    )
    told = den("  - {id: c1, from: D1, to: D2}\n")["Den, north wall"]
    assert not any(strip.width == 144 for strip in told.cautions)


def test_nail_plates_are_drawn_on_the_route_they_guard() -> None:
    with_plates = den("  - {id: c1, from: D1, to: D2, protected: [plates]}\n")
    assert list(strokes(wide_elevation(with_plates["Den, north wall"]).marks, "solid"))
    assert not list(
        strokes(wide_elevation(den("  - {id: c1, from: D1, to: D2}\n")["Den, north wall"]).marks, "solid")
    )


def test_a_box_that_opens_on_the_other_face_is_drawn_and_hatched_where_it_really_is() -> None:
    beside = (
        "room: hall\nname: Hall\nkind: hall\nlevel: ground\nceiling: 8 ft\n"
        "outline: [[0 ft, -6 ft], [12 ft, -6 ft], [12 ft, -5 in], [0 ft, -5 in]]\nwalls: [north, east, south, west]\n"
    )
    hall = "room: hall\nboxes:\n  H1: {at: {wall: south, along: 3 ft, up: 20 in}}\n"
    wall = den(**{"rooms/hall": beside, "boxes/hall": hall})["Den, north wall"]
    h1 = next(each for each in wall.boxes if each.name == "H1")
    # Three feet from the hall's left end is nine from the den's.
    assert (h1.at, h1.behind, h1.along) == ((108.0, 20.0), True, "9 ft")
    assert any(strip.left < 108 < strip.left + strip.width for strip in wall.cautions)


def test_a_wall_whose_height_is_not_recorded_says_so() -> None:
    bare = walls_of(surveyed(rooms=ROOM.replace("ceiling: 8 ft\n", ""), boxes=BOXES))
    assert all(each.height_assumed for each in bare)
    assert "8 ft?" in {each.text for each in letterings(wide_elevation(bare[0]).marks)}


def test_a_picture_of_a_wall_is_named_with_it() -> None:
    photos = "photos: [{file: den-north.jpg, shows: D1, room: den, wall: north, date: 2026-03-01, stage: roughed}]\n"
    (photo,) = den(photos=photos)["Den, north wall"].photos
    assert photo.says == "Box D1 (2026-03-01, roughed, den-north.jpg)"
    assert photo.shown == "Photograph, Den, north wall, roughed: box D1"


def test_a_run_through_the_room_by_no_recorded_way_is_told_under_every_wall() -> None:
    walls = den("  - {id: c1, from: D1, to: D2}\n  - {id: c2, through: [den]}\n")
    for wall in walls.values():
        assert any("by a way not recorded" in str(note[0]) for note in wall.notes)


def test_on_a_phone_a_long_wall_goes_on_below_and_loses_no_box() -> None:
    boxes = "room: den\nboxes:\n" + "".join(
        f"  D{i}: {{at: {{wall: north, along: {i * 3} ft, up: 16 in}}}}\n" for i in range(1, 11)
    )
    walls = walls_of(surveyed(rooms=ROOM.replace("12 ft", "34 ft"), boxes=boxes))
    drawing = narrow_elevation(walls[0])
    words = [each.text for each in letterings(drawing.marks)]
    assert drawing.width_px <= 340
    assert words.count("goes on below") >= 1
    assert {f"D{i}" for i in range(1, 11)} <= set(words)


@SEEDS
def test_no_assumed_route_lies_on_another(seed: int) -> None:
    for wall in walls_of(random_room(seed)):
        spans = [span for stroke in strokes(wide_elevation(wall).marks, "route") for span in legs(stroke.d)]
        for (axis, at, low, high), (other_axis, other_at, other_low, other_high) in combinations(spans, 2):
            if axis == other_axis and abs(at - other_at) < 0.5:
                assert min(high, other_high) - max(low, other_low) < 1, wall.id


def legs(d: str) -> list[tuple[int, float, float, float]]:
    """Each leg of a route as its axis, where it lies, and its span."""
    found = []
    for x1, y1, x2, y2 in segments(d):
        axis = 0 if abs(x1 - x2) < abs(y1 - y2) else 1
        found.append(
            (axis, x1, min(y1, y2), max(y1, y2)) if axis == 0 else (axis, y1, min(x1, x2), max(x1, x2))
        )
    return found


def test_a_box_told_beyond_the_end_of_its_wall_is_named_under_it() -> None:
    boxes = "room: den\nboxes:\n  D1: {at: {wall: north, along: 40 ft, up: 16 in}}\n"
    wall = den(boxes=boxes)["Den, north wall"]
    assert wall.boxes == ()
    assert not wall.is_bare
    assert any("D1" in str(note) for note in wall.notes)


LONG = ROOM.replace("12 ft", "40 ft")


def test_a_long_wall_is_broken_where_a_long_stretch_holds_nothing() -> None:
    boxes = "room: den\nboxes:\n  D1: {at: {wall: north, along: 36 ft, up: 16 in}}\n"
    broken = wide_elevation(den(rooms=LONG, boxes=boxes)["Den, north wall"])
    words = {each.text for each in letterings(broken.marks)}
    assert {"left out:", "D1", "36 ft", "40 ft long, east corner"} <= words
    assert not {"goes on below"} & words
    boxes += "".join(
        f"  D{i}: {{at: {{wall: north, along: {i * 8 - 8} ft, up: 16 in}}}}\n" for i in range(2, 6)
    )
    whole = wide_elevation(den(rooms=LONG, boxes=boxes)["Den, north wall"])
    assert "left out:" not in {each.text for each in letterings(whole.marks)}


def test_a_crowded_wall_is_drawn_larger_in_pieces() -> None:
    boxes = "room: den\nboxes:\n" + "".join(
        f"  D{i}: {{at: {{wall: north, along: {i * 14} in, up: {10 + i} in}}}}\n" for i in range(1, 30)
    )
    crowded = wide_elevation(den(rooms=LONG, boxes=boxes)["Den, north wall"])
    assert "goes on below" in {each.text for each in letterings(crowded.marks)}
    assert crowded.width_px <= 690


def test_the_lines_of_a_door_meet_at_its_hinges() -> None:
    door = "things: [{what: door, wall: north, along: 2 ft, width: 30 in, hinged: right, swings_into: den}]\n"
    wall = den(rooms=ROOM + door)["Den, north wall"]
    assert [each.hinged for each in wall.things] == ["right"]
    drawing = wide_elevation(wall)
    (leaf,) = strokes(drawing.marks, "leg")
    xs = [float(each.split()[0]) for each in leaf.d[1:].split("L")]
    # From the edge to the hinge, which is to the right of it, and back.
    assert xs[0] == xs[2] < xs[1]


def test_a_box_of_the_other_face_above_this_ceiling_is_named_and_not_drawn_outside() -> None:
    beside = (
        "room: hall\nname: Hall\nkind: hall\nlevel: ground\nceiling: 12 ft\n"
        "outline: [[0 ft, -6 ft], [12 ft, -6 ft], [12 ft, -5 in], [0 ft, -5 in]]\nwalls: [north, east, south, west]\n"
    )
    hall = "room: hall\nboxes:\n  H1: {at: {wall: south, along: 3 ft, up: 10 ft}}\n"
    wall = den(**{"rooms/hall": beside, "boxes/hall": hall})["Den, north wall"]
    assert "H1" not in {each.name for each in wall.boxes}
    assert any("above the ceiling" in str(note[0]) and "H1" in str(note) for note in wall.notes)
    # Where its cable runs on down, this face is hatched all the same.
    assert any(strip.left < 108 < strip.left + strip.width for strip in wall.cautions)


def test_behind_every_word_on_a_wall_the_hatching_is_left_out(demo_survey: Survey) -> None:
    for wall in all_walls(demo_survey):
        for drawing in both(wall):
            cleared = [
                _room(each)
                for kind in ("floor", "blank")
                for each in strokes(drawing.marks, kind)
                if "h" in each.d
            ]
            for word in letterings(drawing.marks):
                x, y = (word.extent[0] + word.extent[2]) / 2, (word.extent[1] + word.extent[3]) / 2
                if any(_near(line, x, y) for line in hatching(drawing)):
                    assert any(a < x < c and b < y < d for a, b, c, d in cleared), (drawing.id, word.text)


def test_what_stands_on_a_wall_is_named_within_it_or_close_beside_and_by_no_leader(
    demo_survey: Survey,
) -> None:
    for wall in all_walls(demo_survey):
        names = {each.what.replace("-", " ") for each in wall.things}
        for drawing in both(wall):
            linked = {
                text.text
                for mark in drawing.marks
                if isinstance(mark, Linked)
                for text in letterings(mark.marks)
            }
            ends = [each.d.partition("L")[2].split() for each in strokes(drawing.marks, "leader")]
            for word in letterings(drawing.marks):
                if word.text in names - linked:
                    left, top, right, bottom = word.extent
                    assert not any(
                        left <= float(x) <= right and top <= float(y) <= bottom for x, y in ends
                    ), drawing.id


def hatching(drawing: Drawing) -> list[tuple[float, float, float, float]]:
    return [each for stroke in strokes(drawing.marks, "hatch") for each in segments(stroke.d)]


def _near(line: tuple[float, float, float, float], x: float, y: float) -> bool:
    """Whether a hatching line passes within 4 px of a point, which its neighbours then do too."""
    x1, y1, x2, y2 = line
    along = ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / ((x2 - x1) ** 2 + (y2 - y1) ** 2 or 1)
    part = min(max(along, 0.0), 1.0)
    return (x - x1 - (x2 - x1) * part) ** 2 + (y - y1 - (y2 - y1) * part) ** 2 < 16


def _room(stroke: Stroke) -> tuple[float, float, float, float]:
    """What a rectangle ``M x y h w v h`` covers."""
    start, _, rest = stroke.d[1:].partition("h")
    x, y = (float(each) for each in start.split())
    wide, _, tall = rest.partition("v")
    return (x, y, x + float(wide), y + float(tall.partition("h")[0]))
