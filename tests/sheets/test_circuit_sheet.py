"""A circuit's sheet: its tree, and whether wire, breaker and devices match."""

from dataclasses import replace

from houses import DEVICES, surveyed

from junctionary.sheets.circuit import CircuitMap, CircuitSheet, MapNode, MapRun, nodes
from junctionary.sheets.circuits import circuit_sheet
from junctionary.sheets.links import Ref, plain

BOXES = "room: den\nboxes:\n  K1: {devices: {r1: duplex}, makeup: pigtailed}\n  K2: {}\n  K3: {}\n"


def sheet(runs: str, breaker: str = "1: {rating: 20 A, feeds: den}") -> CircuitSheet:
    lines = "".join(f"  - {{{line}}}\n" for line in runs.splitlines())
    circuit = "circuit: den\nname: Den receptacles\n" + (f"runs:\n{lines}" if lines else "")
    panel = f"panel: main\nspaces: 4\nbreakers:\n  {breaker}\n"
    boxes = {"boxes": BOXES} if runs else {}
    return circuit_sheet(surveyed(panels=panel, circuits=circuit, **boxes), "den")


def tree(made: CircuitSheet) -> dict[str, list[str]]:
    assert made.map is not None
    return {
        each.name: [branch.name for branch in each.branches] for each in nodes(made.map.root) if each.branches
    }


def test_the_map_follows_the_runs_from_the_breaker_outward() -> None:
    made = sheet(
        "id: a1, cable: 12/2 NM-B, from: main, to: K1\nid: a2, cable: 12/2 NM-B, from: K1, to: K2\n"
        "id: a3, cable: 12/2 NM-B, from: K1, to: K3"
    )
    assert tree(made) == {"main 1": ["K1"], "K1": ["K2", "K3"]}


def test_a_smaller_wire_is_drawn_thinner() -> None:
    made = sheet("id: a1, cable: 12/2 NM-B, from: main, to: K1\nid: a2, cable: 14/2 NM-B, from: K1, to: K2")
    assert made.map is not None
    assert [each.run.thin for each in nodes(made.map.root) if each.run] == [False, True]


def test_what_follows_a_smaller_wire_in_the_same_size_is_as_thin() -> None:
    made = sheet(
        "id: a1, cable: 12/2 NM-B, from: main, to: K1\nid: a2, cable: 14/2 NM-B, from: K1, to: K2\n"
        "id: a3, cable: 14/2 NM-B, from: K2, to: K3"
    )
    assert made.map is not None
    drawn = {each.run.ref.id: each.run.thin for each in nodes(made.map.root) if each.run}
    assert drawn == {"a1": False, "a2": True, "a3": True}


def test_what_is_open_on_a_circuit_stands_before_the_room_on_it() -> None:
    circuit = "circuit: den\nname: Den\nruns:\n  - {id: a1, cable: 14/2 NM-B, from: main, to: K1}\n"

    def room(rating: str) -> str:
        panel = f"panel: main\nspaces: 4\nbreakers:\n  1: {{rating: {rating}, feeds: den}}\n"
        seen = surveyed(panels=panel, circuits=circuit, boxes=BOXES)
        facts = circuit_sheet(seen, "den").facts
        return next(plain(each.value) for each in facts if each.what == "room for")

    assert room("20 A").startswith("to be put right first: hazard at a1: a breaker is rated above")
    assert "A more" in room("20 A")
    assert "put right" not in room("15 A")


def test_a_run_whose_supply_end_is_unknown_is_drawn_dashed_and_said() -> None:
    made = sheet(
        "id: a1, cable: 12/2 NM-B, from: main, to: K1\nid: a2, cable: 12/2 NM-B, from: unknown, to: K2"
    )
    assert made.map is not None
    lost = next(each for each in nodes(made.map.root) if each.name == "K2")
    assert lost.run is not None
    assert lost.run.dashed
    assert "supply end unknown" in lost.notes


def test_a_run_that_ends_nowhere_known_is_on_the_map() -> None:
    made = sheet(
        "id: a1, cable: 12/2 NM-B, from: main, to: K1\nid: a2, cable: 12/2 NM-B, from: K1, to: unknown"
    )
    assert tree(made)["K1"] == ["unknown"]


def test_a_ring_is_drawn_once() -> None:
    made = sheet(
        "id: a1, cable: 12/2 NM-B, from: main, to: K1\nid: a2, cable: 12/2 NM-B, from: K1, to: K2\n"
        "id: a3, cable: 12/2 NM-B, from: K2, to: K1"
    )
    assert made.map is not None
    again = [each for each in nodes(made.map.root) if each.name == "K1"]
    assert len(again) == 2
    assert "drawn above" in again[1].notes


def test_a_circuit_that_is_only_a_directory_entry_has_no_map_and_is_not_judged_well() -> None:
    made = sheet("")
    assert made.map is None
    assert "fits" not in [each.stands for each in made.match]


def test_a_breaker_too_large_for_its_wire_does_not_fit() -> None:
    made = sheet("id: a1, cable: 14/2 NM-B, from: main, to: K1")
    stands = {each.part: each.stands for each in made.match}
    assert stands["breaker main 1"] == "too large"


def test_a_breaker_on_a_circuit_with_a_gap_never_simply_fits() -> None:
    made = sheet("id: a1, cable: 12/2 NM-B, from: main, to: K1\nid: a2, from: K1, to: K2")
    stands = {each.part: each.stands for each in made.match}
    assert stands["breaker main 1"] == "cannot tell"


def test_every_run_can_be_linked_to() -> None:
    assert Ref("run", "a1") in sheet("id: a1, cable: 12/2 NM-B, from: main, to: K1").anchors()


def test_a_breaker_too_large_for_its_wire_is_marked_where_the_breaker_is_read_of() -> None:
    made = sheet("id: a1, cable: 14/2 NM-B, from: main, to: K1")
    marks = {each.part: each.severity for each in made.match}
    assert marks["breaker main 1"] == "hazard"


def test_a_joint_by_the_word_is_not_said_to_be_seen() -> None:
    made = sheet("id: a1, cable: 12/2 NM-B, from: main, to: K1\nid: a2, cable: 12/2 NM-B, from: K1, to: K2")
    assert {plain(row.cells[-1]) for row in made.joints.rows} == {"by the word: pigtailed"}
    assert "by the word" in made.title.known_by


def test_a_stage_no_run_tells_is_said_once() -> None:
    made = sheet("id: a1, cable: 12/2 NM-B, from: main, to: K1")
    assert "stage" not in made.runs.heads
    assert "not recorded" in made.runs.caption


GUARDED = """\
room: den
boxes:
  K1: {devices: {r1: guard}, makeup: {feed: a1, guarded: [a2]}}
  K2: {devices: {r1: duplex}, makeup: end-of-run}
"""
KINDS = DEVICES.replace(
    "devices:\n",
    "devices:\n  guard: {is: gfci-receptacle, face: 5-20R, rating: 20 A, torque: 14 in-lb}\n",
)
KETTLED = """\
circuit: den
name: Den receptacles
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: K1, length: 30 ft}
  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2, length: 12 ft}
loads:
  - {id: kettle, name: Kettle, is: other, draws: 1500 W, plugged: K2.r1}
"""


def test_the_map_says_from_where_on_a_device_guards_what_is_joined_and_what_is_plugged_in() -> None:
    survey = surveyed(
        {"devices/all.yaml": KINDS},
        panels="panel: main\nspaces: 4\nbreakers:\n  1: {rating: 20 A, feeds: den}\n",
        circuits=KETTLED,
        boxes=GUARDED,
    )
    made = circuit_sheet(survey, "den")
    assert made.map is not None
    notes = {each.name: each.notes for each in nodes(made.map.root)}
    assert "its GFCI guards K2 too" in notes["K1"]
    assert "1 joint" in notes["K1"]
    assert "GFCI at K1" in notes["K2"]
    assert "Kettle 1500 W" in notes["K2"]


def test_the_map_says_what_a_thin_and_a_dashed_line_mean_where_there_are_any() -> None:
    plain_run = MapRun(Ref("run", "a"), "12/2", "9 ft")
    root = MapNode(None, "main 1", "breaker", branches=(MapNode(None, "A", "light", run=plain_run),))
    assert CircuitMap("T", "S", root).key == ""
    thin, dashed = replace(plain_run, thin=True), replace(plain_run, dashed=True)
    branches = tuple(MapNode(None, "A", "light", run=each) for each in (thin, dashed))
    key = CircuitMap("T", "S", replace(root, branches=branches)).key
    assert key == "Thin: smaller wire than before it. Dashed: an end of it is not known."


def test_every_load_of_a_circuit_is_told_to_go_dark_wherever_it_hangs() -> None:
    circuit = (
        "circuit: den\nname: Den receptacles\nruns: [{id: a1, cable: 12/2 NM-B, from: main, to: K1}]\nloads:\n"
        "  - {id: lamp, is: lighting, plugged: K1.r1}\n"
        "  - {id: radio, is: other, name: Radio, plugged: K1.r1.top}\n"
        "  - {id: blower, is: fan, wired: K2.h1}\n"
        "  - {id: drill, is: tool}\n"
    )
    panel = "panel: main\nspaces: 4\nbreakers: {1: {rating: 20 A, feeds: den}}\n"
    boxes = BOXES.replace("K2: {}", "K2: {devices: {h1: duplex}}")
    made = circuit_sheet(surveyed(panels=panel, circuits=circuit, boxes=boxes), "den")
    rows = [[plain(cell) for cell in row.cells] for row in made.goes_dark.rows]
    assert [[row[0], row[2], row[3], row[4]] for row in rows] == [
        ["Den", "5-15R receptacle", "K1.r1", "lighting, Radio"],
        ["Den", "5-15R receptacle", "K2.h1", "fan"],
        ["place not recorded", "drill", "", "not recorded"],
    ]


FEEDS_A_PANEL = {
    "panels/main.yaml": "panel: main\nspaces: 4\nbreakers: {1+3: {rating: 60 A, feeds: far}}\n",
    "panels/shop.yaml": (
        "panel: shop\nname: Shop panel\nfed_by: far\nspaces: 8\n"
        "breakers: {1: {rating: 20 A, feeds: den}, 2: {rating: 15 A, feeds: hall}, 3: {feeds: unknown}}\n"
    ),
    "circuits/far.yaml": "circuit: far\nname: Feeder\npurpose: feeder\n",
    "circuits/den.yaml": (
        "circuit: den\nname: Den, walls\nruns: [{id: a1, cable: 12/2 NM-B, from: shop, to: K1}]\n"
        "loads: [{id: saw, is: tool, name: Saw}]\n"
    ),
    "circuits/hall.yaml": "circuit: hall\nname: Hall lights\nrooms: [den]\n",
    "boxes/den.yaml": BOXES,
}


def test_a_feeder_takes_its_panel_with_all_its_circuits_and_points_and_what_is_not_known_there() -> None:
    made = circuit_sheet(surveyed(FEEDS_A_PANEL), "far")
    facts = {each.what: plain(each.value) for each in made.facts}
    assert (facts["feeds"], facts["serves"]) == ("Shop panel", "Den")
    assert plain(made.dark_says) == "Shop panel, with all that is on it: Den, walls; and Hall lights."
    rows = [[plain(cell) for cell in row.cells] for row in made.goes_dark.rows]
    assert made.goes_dark.heads == ("room", "where", "what", "code", "circuit", "feeds")
    assert [[row[0], row[2], row[3], row[4]] for row in rows] == [
        ["Den", "5-15R receptacle", "K1.r1", "Den, walls"],
        ["place not recorded", "Saw", "", "Den, walls"],
        ["not recorded", "no outlet of it is recorded", "", "Hall lights"],
        ["not recorded", "what it feeds is not known", "", "shop 3"],
    ]


def test_a_feeder_whose_panel_lists_no_circuit_says_so_and_is_not_called_bare() -> None:
    files = {key: FEEDS_A_PANEL[key] for key in ("panels/main.yaml", "circuits/far.yaml")}
    files["panels/shop.yaml"] = "panel: shop\nname: Shop panel\nfed_by: far\nspaces: 8\n"
    made = circuit_sheet(surveyed(files), "far")
    assert plain(made.dark_says) == "Shop panel, with all that is on it: no circuit of it is recorded."
