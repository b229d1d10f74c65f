"""The current of a fault by box, whether the breaker opens at once, and the heat in the smallest conductor."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from junctionary.figures import CircuitFault, Figures

FiguresOf = Callable[[str], Figures]

SERVICE = """
[house.yaml]
house: H
reference: nec-2023
service: {fault_level: {line_to_neutral: 12 kA, at: main}}
"""
LONG = """
[circuits/c.yaml]
circuit: c
name: C
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: K1, length: 50 ft}
  - {id: a2, cable: 14/2 NM-B, from: K1, to: K2, length: 100 ft}
[boxes/den.yaml]
room: den
boxes:
  K1: {devices: {r1: duplex}, makeup: {feed: a1, onward: [a2]}}
  K2: {devices: {r1: duplex}, makeup: end-of-run}
"""


def fault(figures_of: FiguresOf, text: str, circuit: str = "c") -> CircuitFault:
    return figures_of(text).faults[circuit]


def test_the_fault_goes_out_by_the_hot_and_back_by_the_ground(figures_of: FiguresOf) -> None:
    found = fault(figures_of, SERVICE + LONG)
    ohm = Fraction("0.01") + 2 * (Fraction("1.93") * 50 + Fraction("3.07") * 100) / 1000
    assert found.boxes["K2"].to_ground.flows.value == 120 / ohm
    assert (found.worst.at, found.worst.most_in) == ("K2", "a2")


def test_a_smaller_ground_counts_with_its_own_resistance(figures_of: FiguresOf) -> None:
    end = fault(figures_of, SERVICE + LONG.replace("12/2", "6/2")).boxes["K1"]
    assert end.to_neutral.flows.value == 120 / (Fraction("0.01") + 2 * Fraction("0.491") * 50 / 1000)
    assert end.to_ground.flows.value == 120 / (
        Fraction("0.01") + (Fraction("0.491") + Fraction("1.21")) * 50 / 1000
    )


@pytest.mark.parametrize(
    ("said", "opens", "at_once"),
    [("", 200, False), ("trips_at_once: 100 A, ", 100, True), ("kind: quick, ", 120, True)],
)
def test_the_pick_up_is_as_recorded_or_ten_times_the_rating(
    said: str, opens: int, at_once: bool, figures_of: FiguresOf
) -> None:
    panel = f"[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  1: {{rating: 20 A, {said}feeds: c, says: C}}\n"
    kinds = "[devices/breakers.yaml]\nbreakers:\n  quick: {trips_at_once: 120 A}\n"
    found = fault(figures_of, SERVICE + LONG + panel + kinds)
    assert (found.pick_up.value, found.at_once) == (opens, at_once)


def test_a_fuse_that_does_not_say_is_asked_for_its_pick_up(figures_of: FiguresOf) -> None:
    panel = "[panels/main.yaml]\npanel: main\nkind: fuse-panel\nspaces: 8\nbreakers:\n  1: {kind: plug-fuse, rating: 15 A, feeds: c, says: C}\n"
    found = fault(figures_of, SERVICE + LONG + panel)
    assert found.at_once is None
    assert found.pick_up.lacks == ("from which current fuse main/1 opens at once",)


def test_without_a_fault_level_a_long_wire_is_still_known_to_be_slow(figures_of: FiguresOf) -> None:
    assert fault(figures_of, LONG).at_once is False
    short = fault(figures_of, LONG.replace("length: 100 ft", "length: 10 ft"))
    assert short.at_once is None
    assert short.worst.least.lacks == (
        "the fault current at the service (fault_level, or transformer and drop)",
    )


def test_the_current_is_at_most_what_the_recorded_part_lets_through(figures_of: FiguresOf) -> None:
    found = fault(figures_of, SERVICE + LONG.replace("length: 50 ft", "length: unknown"))
    end = found.boxes["K2"].to_neutral
    assert end.flows.lacks == ("the length of run a1",)
    assert end.most == 120 / (Fraction("0.01") + 2 * Fraction("3.07") * 100 / 1000)


def test_the_transformer_and_the_drop_stand_for_the_fault_level(figures_of: FiguresOf) -> None:
    told = SERVICE.replace(
        "fault_level: {line_to_neutral: 12 kA, at: main}",
        "transformer: {rating: 25 kVA, impedance: 1.8 %}, drop: {size: 1/0 AWG, metal: aluminium, length: 80 ft}",
    )
    # 240² × 1.8 % / 25000 = 0.041472 ohm across, a third of it from a leg to the centre, rounded up.
    ohm = Fraction("0.01383") + 2 * Fraction("0.201") * 80 / 1000
    end = fault(figures_of, told + LONG).boxes["K1"].to_neutral
    assert end.flows.value == 120 / (ohm + 2 * Fraction("1.93") * 50 / 1000)


def test_a_transformer_without_its_drop_is_not_enough(figures_of: FiguresOf) -> None:
    told = SERVICE.replace(
        "fault_level: {line_to_neutral: 12 kA, at: main}", "transformer: {rating: 25 kVA, impedance: 1.8 %}"
    )
    lacks = fault(figures_of, told + LONG).boxes["K1"].to_neutral.flows.lacks
    assert lacks == ("the service drop: its size, metal and length",)


def test_heat_is_judged_in_the_smallest_conductor_on_the_way(figures_of: FiguresOf) -> None:
    heat = fault(figures_of, SERVICE + LONG.replace("12/2 NM-B", "6/2 NM-B")).heat
    assert (heat.at, heat.run, str(heat.wire)) == ("K1", "a1", "10 AWG copper")
    amps = 120 / (Fraction("0.01") + (Fraction("0.491") + Fraction("1.21")) * 50 / 1000)
    whole = -(-amps.numerator // amps.denominator)
    assert abs(heat.area.value**2 - Fraction(whole**2, 60 * 115**2)) < Fraction(1, 10**20)
    assert heat.fits is True


def test_a_thin_wire_near_the_panel_is_too_hot(figures_of: FiguresOf) -> None:
    heat = fault(
        figures_of, SERVICE + LONG.replace("12/2", "14/2").replace("length: 50 ft", "length: 6 ft")
    ).heat
    assert (heat.at, heat.fits) == ("K1", False)


def test_heat_that_the_most_there_can_be_does_not_reach_needs_no_fault_level(figures_of: FiguresOf) -> None:
    assert fault(figures_of, LONG).heat.fits is True
    near = fault(figures_of, LONG.replace("12/2", "14/2").replace("length: 50 ft", "length: 6 ft")).heat
    assert near.fits is None


def test_a_cable_without_a_ground_has_no_fault_to_ground(figures_of: FiguresOf) -> None:
    end = fault(figures_of, SERVICE + LONG.replace("12/2 NM-B", "12/2 NM no ground")).boxes["K2"]
    assert end.to_ground is None
    assert end.to_neutral is not None


def test_two_hots_without_a_neutral_have_no_fault_to_it(figures_of: FiguresOf) -> None:
    panel = (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  1+3: {rating: 20 A, feeds: c, says: C}\n"
    )
    end = fault(figures_of, SERVICE + LONG + panel).boxes["K1"]
    assert end.to_neutral is None
    assert end.to_ground is not None


def test_the_feeder_lies_on_the_way(figures_of: FiguresOf) -> None:
    told = """
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
breakers: {1+3: {rating: 50 A, feeds: f, says: Shed}}
[panels/shed.yaml]
panel: shed
spaces: 4
fed_by: f
breakers: {1: {rating: 20 A, feeds: c, says: C}}
[circuits/f.yaml]
circuit: f
name: F
purpose: feeder
runs:
  - {id: f1, cable: 6-6-6-8 SER aluminium, from: main, to: shed, length: 100 ft}
"""
    found = fault(figures_of, SERVICE + told + LONG.replace("from: main", "from: shed")).boxes["K1"]
    feeder = (Fraction("0.808") + Fraction("1.28")) / 10
    assert found.to_ground.flows.value == 120 / (Fraction("0.01") + feeder + 2 * Fraction("1.93") * 50 / 1000)
