"""The face of a panel stands as it does on the wall."""

from houses import surveyed

from junctionary.sheets.circuits import circuit_sheet
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


SERVICE = (
    "house: Tern Cottage\nreference: nec-2023\nlevels: [{id: ground, name: Ground floor}]\n"
    "service:\n  disconnect: main\n  conductors: {size: 4/0 AWG, metal: aluminium}\n"
    "  electrodes: [{is: rod, wire: 6 AWG copper}, {is: rod, wire: 6 AWG copper}, water-pipe]\n"
)
GARAGE = "panel: main\nspaces: 6\nbreakers: {1+3: {rating: 60 A, feeds: den}}\n"


def facts(made: PanelSheet) -> dict[str, str]:
    return {each.what: plain(each.value) for each in made.facts}


def test_the_panel_says_how_it_is_bonded_and_what_is_clear_before_it() -> None:
    told = facts(sheet("1: {rating: 15 A, feeds: den}", "bonded: true\nclear: {width: 3 ft, depth: 2 ft}\n"))
    assert told["neutral and ground"] == "joined here"
    assert told["kept clear before it"] == "3 ft wide, 2 ft deep (3 ft asked), height not recorded"
    assert told["poles taken"] == "1 of 6"
    assert facts(sheet("1: unused"))["neutral and ground"] == "not recorded"


def test_the_services_panel_shows_the_wire_to_each_electrode_and_its_sum() -> None:
    made = panel_sheet(surveyed(house=SERVICE, panels=GARAGE, circuits=CIRCUIT), "main")
    assert facts(made)["2 rod electrodes"] == "6 AWG copper, at least 6 AWG copper"
    assert facts(made)["water-pipe electrode"] == "wire not recorded, at least 4 AWG copper"
    assert [each.title for each in made.workings] == [
        "Wire to the rod electrode", "Wire to the water-pipe electrode",
    ]  # fmt: skip
    assert made.workings[0].says == "It is 6 AWG copper: it will do."


def test_a_subpanel_shows_the_ground_that_comes_with_its_feeder() -> None:
    feeder = f"{CIRCUIT}purpose: feeder\nruns: [{{id: f1, cable: 6-6-6-12 SER, from: main, to: shed}}]\n"
    shed = "panel: shed\nspaces: 4\nfed_by: den\n"
    survey = surveyed(house=SERVICE, panels=GARAGE, circuits=feeder, **{"panels/shed": shed})
    assert (
        facts(panel_sheet(survey, "shed"))["ground with feeder f1"] == "12 AWG copper, at least 10 AWG copper"
    )
    assert [each.title for each in panel_sheet(survey, "shed").workings] == ["Ground of run f1"]
    line = circuit_sheet(survey, "den").match[-1]
    assert (line.part, line.may, line.stands) == ("ground of f1", "at least 10 AWG copper", "too small")
    assert line.severity == "defect"
    assert circuit_sheet(survey, "den").workings[-1].says == "It is 12 AWG copper: too small."
