"""Voltage drop along a circuit's tree: by box, at the recorded and at the design load, and what is missing."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from junctionary.figures import CircuitDrop, Figures
from junctionary.figures.drop import Lost

FiguresOf = Callable[[str], Figures]

TWO_BOXES = """
[circuits/c.yaml]
circuit: c
name: C
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: K1, length: 50 ft}
  - {id: a2, cable: 14/2 NM-B, from: K1, to: K2, length: 20 ft}
loads:
  - {id: kettle, is: other, draws: 1200 W, plugged: K1.r1}
  - {id: lamp, is: lighting, draws: 2 A, plugged: K2.r1}
[boxes/den.yaml]
room: den
boxes:
  K1: {devices: {r1: duplex}, makeup: {feed: a1, onward: [a2]}}
  K2: {devices: {r1: duplex}, makeup: end-of-run}
"""

MULTIWIRE = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, feeds: c.black, says: Left}
  3: {rating: 20 A, feeds: c.red, says: Right}
[circuits/c.yaml]
circuit: c
name: C
runs:
  - {id: a1, cable: 12/3 NM-B, from: main, to: K1, length: 100 ft}
  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2, length: 10 ft}
loads:
  - {id: left, is: other, draws: 10 A, plugged: K1.r1}
  - {id: right, is: other, draws: 4 A, plugged: K2.r1}
[boxes/den.yaml]
room: den
boxes:
  K1:
    devices: {r1: duplex}
    joints: [{join: [a1.white, a2.white, r1.silver], by: lever-3}, {join: [a1.red, a2.black], by: lever-3},
             {join: [a1.bare, a2.bare, r1.green], by: lever-3}]
    terminals: {r1.brass: a1.black}
  K2: {devices: {r1: duplex}, makeup: end-of-run}
"""

SUBPANEL = """
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
breakers:
  1+3: {rating: 50 A, feeds: feeder, says: Shed}
[panels/shed.yaml]
panel: shed
spaces: 4
fed_by: feeder
breakers:
  1: {rating: 20 A, feeds: c, says: The circuit}
[circuits/feeder.yaml]
circuit: feeder
name: Feeder
purpose: feeder
runs:
  - {id: f1, cable: 6-6-6-8 SER aluminium, from: main, to: shed, length: 100 ft}
[circuits/c.yaml]
circuit: c
name: C
runs:
  - {id: a1, cable: 12/2 NM-B, from: shed, to: K1, length: 10 ft}
loads:
  - {id: saw, is: tool, draws: 10 A, plugged: K1.r1}
[boxes/den.yaml]
room: den
boxes:
  K1: {devices: {r1: duplex}, makeup: end-of-run}
"""


def drop(figures_of: FiguresOf, text: str, circuit: str = "c") -> CircuitDrop:
    return figures_of(text).drops[circuit]


def volts(lost: Lost) -> Fraction | None:
    return lost.from_panel.value


def test_each_cable_carries_what_is_drawn_beyond_it(figures_of: FiguresOf) -> None:
    found = drop(figures_of, TWO_BOXES)
    first = 2 * 12 * Fraction("1.93") * 50 / 1000
    assert volts(found.recorded["K1"]) == first
    assert volts(found.recorded["K2"]) == first + 2 * 2 * Fraction("3.07") * 20 / 1000
    assert found.worst(found.recorded).at == "K2"
    assert found.worst(found.recorded).most_in == "a1"


def test_the_design_load_is_four_fifths_of_the_breaker_at_the_farthest_outlet(figures_of: FiguresOf) -> None:
    found = drop(figures_of, TWO_BOXES)
    assert found.design_load.value == 16
    farthest = found.worst(found.design)
    assert farthest.at == "K2"
    assert volts(farthest) == 2 * 16 * (Fraction("1.93") * 50 + Fraction("3.07") * 20) / 1000
    assert volts(found.spread["K2"]) == 2 * (16 * Fraction("1.93") * 50 + 8 * Fraction("3.07") * 20) / 1000


def test_a_shared_neutral_carries_the_difference_of_its_legs(figures_of: FiguresOf) -> None:
    found = drop(figures_of, MULTIWIRE)
    ohm = Fraction("1.93") / 10
    assert volts(found.recorded["K1"]) == 10 * ohm + 6 * ohm
    # On the right the neutral brings back more than it takes away: the leg gains.
    assert volts(found.recorded["K2"]) == (4 - 6) * ohm + 2 * 4 * ohm / 10
    assert found.recorded["K2"].legs == ("B",)


def test_a_load_between_two_legs_loses_nothing_in_the_neutral(figures_of: FiguresOf) -> None:
    found = drop(
        figures_of,
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  1+3: {rating: 50 A, feeds: c, says: Range}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n"
        "  - {id: a1, cable: 6/3 NM-B, from: main, to: K1, length: 40 ft}\n"
        "loads:\n  - {id: range, is: range, draws: 9600 W, volts: 240 V, plugged: K1.r1}\n"
        "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {devices: {r1: wide}, makeup: end-of-run}\n",
    )
    lost = found.recorded["K1"]
    assert (lost.volts, volts(lost)) == (240, 2 * 40 * Fraction("0.491") * 40 / 1000)


def test_a_feeder_adds_its_own_drop(figures_of: FiguresOf) -> None:
    lost = drop(figures_of, SUBPANEL).recorded["K1"]
    own = 2 * 10 * Fraction("1.93") * 10 / 1000
    assert volts(lost) == own
    assert lost.from_service.value == own + 2 * 10 * Fraction("0.808") * 100 / 1000
    feeder = drop(figures_of, SUBPANEL, "feeder").recorded["shed"]
    assert volts(feeder) == 2 * 10 * Fraction("0.808") * 100 / 1000


def test_the_panel_of_the_service_disconnect_is_the_service_s(figures_of: FiguresOf) -> None:
    untold = SUBPANEL.replace("fed_by: service\n", "")
    assert drop(figures_of, untold).recorded["K1"].from_service.value is None
    told = "[house.yaml]\nhouse: Hut\nreference: nec-2023\nservice: {disconnect: main}\n" + untold
    assert drop(figures_of, told).recorded["K1"] == drop(figures_of, SUBPANEL).recorded["K1"]


def test_at_design_load_a_feeder_carries_its_own_on_both_legs(figures_of: FiguresOf) -> None:
    lost = drop(figures_of, SUBPANEL).design["K1"]
    assert lost.from_service.value == 2 * 16 * Fraction("1.93") / 100 + 40 * Fraction("0.808") / 10


@pytest.mark.parametrize(
    ("told", "instead", "lack"),
    [
        ("length: 50 ft", "length: unknown", "the length of run a1"),
        ("12/2 NM-B", "unknown", "the cable of run a1"),
        ("1200 W, plugged", "1200 VA, wired", None),
        ("draws: 2 A, ", "", "what lamp draws"),
        ("draws: 2 A, plugged: K2.r1", "draws: 2 A", "where lamp is plugged or wired"),
    ],
)
def test_a_missing_fact_is_asked_for(
    told: str, instead: str, lack: str | None, figures_of: FiguresOf
) -> None:
    lost = drop(figures_of, TWO_BOXES.replace(told, instead, 1)).recorded["K2"]
    assert lost.from_panel.lacks == (() if lack is None else (lack,))


def test_what_is_recorded_is_a_lower_bound_where_a_length_is_missing(figures_of: FiguresOf) -> None:
    lost = drop(figures_of, TWO_BOXES.replace("length: 20 ft", "length: unknown")).recorded["K2"]
    assert (lost.percent, lost.least) == (None, 2 * 12 * Fraction("1.93") * 50 / 1000)


def test_the_part_of_a_shared_neutral_that_is_known_is_no_bound(figures_of: FiguresOf) -> None:
    lost = drop(figures_of, MULTIWIRE.replace("length: 10 ft", "length: unknown")).recorded["K2"]
    assert (lost.percent, lost.least) == (None, None)


def test_cables_that_form_a_loop_are_no_tree(figures_of: FiguresOf) -> None:
    text = TWO_BOXES.replace(
        "loads:", "  - {id: a3, cable: 12/2 NM-B, from: main, to: K2, length: 9 ft}\nloads:"
    ).replace(
        "K2: {devices: {r1: duplex}, makeup: end-of-run}", "K2: {devices: {r1: duplex}, makeup: pigtailed}"
    )
    found = drop(figures_of, text)
    assert any("close a loop" in lack for lack in found.lacks)
    assert found.recorded["K1"].percent is None


def test_two_legs_of_a_three_phase_supply_are_not_added_as_plain_numbers(figures_of: FiguresOf) -> None:
    text = MULTIWIRE + "[house.yaml]\nhouse: H\nreference: nec-2023\nservice: {system: 120/208 V}\n"
    assert drop(figures_of, text).recorded["K1"].from_panel.lacks == (
        "how the currents of two legs of a 120/208 V supply add",
    )


def test_lengths_may_be_metric(figures_of: FiguresOf) -> None:
    text = TWO_BOXES.replace("length: 50 ft", "length: 15.24 m")
    assert volts(drop(figures_of, text).recorded["K1"]) == 2 * 12 * Fraction("1.93") * 50 / 1000


def test_large_wire_is_stranded_and_small_wire_solid(figures_of: FiguresOf) -> None:
    for cable, ohm in (("10/2 NM-B", "1.21"), ("8/2 NM-B", "0.778"), ("8/2 NM aluminium", "1.28")):
        found = drop(figures_of, TWO_BOXES.replace("12/2 NM-B", cable))
        assert volts(found.recorded["K1"]) == 2 * 12 * Fraction(ohm) * 50 / 1000


def test_a_metal_that_the_table_does_not_print_is_said(figures_of: FiguresOf) -> None:
    lost = drop(figures_of, TWO_BOXES.replace("12/2 NM-B", "12/2 NM copper-clad")).recorded["K1"]
    assert lost.from_panel.lacks == ("a resistance for 12 AWG copper-clad: the table prints none",)
