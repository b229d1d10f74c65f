"""The face of a panel stands as it does on the wall."""

from houses import surveyed

from junctionary.sheets.links import Ref, plain
from junctionary.sheets.panel import PanelSheet, Position
from junctionary.sheets.panels import panel_sheet

CIRCUIT = "circuit: den\nname: Den receptacles\n"


def sheet(breakers: str, more: str = "") -> PanelSheet:
    text = f"panel: main\nspaces: 6\n{more}breakers:\n" + "".join(
        f"  {line}\n" for line in breakers.splitlines()
    )
    return panel_sheet(surveyed(panels=text, circuits=CIRCUIT), "main")


def said(position: Position | None) -> list[str]:
    return [] if position is None else [each.spaces for each in position.handles]


def test_odd_spaces_stand_left_and_even_ones_right() -> None:
    face = sheet("1: {rating: 15 A, feeds: den}").face
    assert [(said(row.left), said(row.right)) for row in face] == [
        (["1"], ["2"]),
        (["3"], ["4"]),
        (["5"], ["6"]),
    ]


def test_rows_alternate_legs() -> None:
    assert [row.leg for row in sheet("1: {rating: 15 A, feeds: den}").face] == ["A", "B", "A"]


def test_a_two_pole_breaker_covers_two_rows_of_its_column() -> None:
    face = sheet("2+4: {rating: 30 A, feeds: den}").face
    assert face[0].right is not None
    assert face[0].right.rows == 2
    assert face[1].right is None
    assert said(face[1].left) == ["3"]


def test_half_size_breakers_share_a_space() -> None:
    face = sheet("5a: {rating: 15 A, feeds: den}\n5b: unused").face
    assert said(face[2].left) == ["5a", "5b"]


def test_a_space_nothing_is_said_of_is_not_recorded_and_a_filler_is_a_filler() -> None:
    face = sheet("1: blank\n3: {rating: 20 A, feeds: unknown}").face
    states = [row.left.handles[0].state for row in face if row.left]
    assert states == ["blank", "unknown", "unrecorded"]


def test_the_main_stands_above_the_spaces() -> None:
    made = sheet("1: {rating: 15 A, feeds: den}", "main: 100 A\n")
    assert made.main is not None
    assert made.main.rating == "100 A"
    assert Ref("space", "main/main") in made.anchors()


def test_fuses_without_numbers_are_drawn_too() -> None:
    fuse = "{kind: plug-fuse, rating: 15 A, feeds: den}"
    text = f"panel: old\nkind: fuse-panel\nspaces: 4\nbreakers: {{top-left: {fuse}}}\n"
    made = panel_sheet(surveyed(panels=text, circuits=CIRCUIT), "old")
    assert said(made.face[0].left) == ["top-left"]
    assert made.face[0].leg == ""


def test_the_door_card_is_made_from_the_record_and_not_from_the_old_card() -> None:
    made = sheet('1: {rating: 15 A, feeds: den, says: "Bedroom?"}')
    assert [plain(each.feeds) for each in made.directory] == ["Den receptacles"]
