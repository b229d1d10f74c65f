"""A circuit's sheet: voltage drop and short circuit, the worst in full and every box in a table."""

from houses import HOUSE, surveyed

from junctionary.sheets.circuit import CircuitSheet, nodes
from junctionary.sheets.circuits import circuit_sheet
from junctionary.sheets.entries import Row
from junctionary.sheets.links import plain

PANEL = "panel: main\nspaces: 4\nbreakers:\n  1: {rating: 20 A, feeds: den}\n"
DEN = (
    "circuit: den\nname: Den\nruns:\n  - {id: a1, cable: 12/2 NM-B, from: main, to: K1, length: 40 ft}\n"
    "  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2, length: 10 ft}\n"
    "loads:\n  - {id: kettle, is: other, draws: 10 A, plugged: K2.r1}\n"
)
BOXES = "room: den\nboxes:\n  K1: {devices: {r1: duplex}, makeup: pigtailed}\n  K2: {devices: {r1: duplex}, makeup: end-of-run}\n"
FAULT = f"{HOUSE}service: {{fault_level: {{line_to_neutral: 12 kA, at: main}}}}\n"


def sheet(circuits: str = DEN, house: str = FAULT) -> CircuitSheet:
    return circuit_sheet(surveyed(panels=PANEL, circuits=circuits, boxes=BOXES, house=house), "den")


def boxes(made: CircuitSheet) -> tuple[Row, ...]:
    assert made.at_boxes is not None
    return made.at_boxes.rows


def test_a_circuit_without_cables_has_no_table_of_its_boxes() -> None:
    bare = surveyed(panels=PANEL, circuits="circuit: den\nname: Den\n", house=FAULT)
    assert circuit_sheet(bare, "den").at_boxes is None


def test_the_map_tells_the_drop_at_each_box() -> None:
    made = sheet()
    assert made.map is not None
    notes = {
        each.name: each.notes[-1] for each in nodes(made.map.root) if each.ref and each.ref.kind == "box"
    }
    # 10 A × 2 × 1.93 / 1000 is 0.0386 V for each foot, of 120 V.
    assert notes == {"K1": "1.3 % drop", "K2": "1.6 % drop"}


def test_the_table_holds_every_box_with_its_drops_and_its_fault_currents() -> None:
    rows = [[plain(cell) for cell in row.cells] for row in boxes(sheet())]
    assert rows == [
        ["K1", "1.3 %", "2.1 %", "2.1 %", "730 A", "730 A"],
        ["K2", "1.6 %", "2.6 %", "2.3 %", "591 A", "591 A"],
    ]


def test_what_is_not_recorded_is_said_where_the_figure_would_stand() -> None:
    made = sheet(DEN.replace("length: 40 ft", "length: unknown"), HOUSE)
    rows = [[plain(cell) for cell in row.cells] for row in boxes(made)]
    assert rows == [
        ["K1", "cannot tell", "cannot tell", "cannot tell", "cannot tell", "cannot tell"],
        ["K2", "over 0.3 %", "over 0.5 %", "over 0.3 %", "under 3109 A", "under 3109 A"],
    ]
    says = " ".join(each.says for each in made.workings)
    assert "Cannot be told without: the length of run a1." in says
    assert "the fault current at the service" in says


def test_with_nothing_drawn_only_the_design_load_is_worked_out() -> None:
    titles = [each.title for each in sheet(DEN.partition("loads:")[0]).workings]
    assert not any("recorded load" in each for each in titles)
    assert "Voltage drop at design load, 16 A, at K2" in titles
