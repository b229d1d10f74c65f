"""Voltage drop, a fault's current and its heat: when they are said, and what is asked for."""

from collections.abc import Callable

import pytest

SHED = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, feeds: shed, says: Shed}
[circuits/shed.yaml]
circuit: shed
name: Shed
runs:
  - {id: s1, cable: 12/2 UF-B, from: main, to: S1, length: 100 ft}
LOADS
[boxes/den.yaml]
room: den
boxes:
  S1: {devices: {r1: duplex}, makeup: end-of-run}
"""
RUN = "circuits/shed.yaml:4"


def shed(loads: str) -> str:
    return SHED.replace("LOADS", f"loads: {loads}" if loads else "")


@pytest.mark.parametrize(
    ("loads", "found", "needs"),
    [
        # 10 A loses 3.86 V, 3.2 %; 9 A loses 2.9 %.
        ("[{id: heater, is: space-heater, draws: 10 A, plugged: S1.r1}]", [RUN], []),
        ("[{id: heater, is: space-heater, draws: 9 A, plugged: S1.r1}]", [], []),
        ("[{id: heater, is: space-heater, plugged: S1.r1}]", [], ["what heater draws"]),
        ("[]", [], []),
        ("", [], ["what is drawn on circuit shed"]),
    ],
)
def test_the_drop_is_judged_at_what_is_drawn(
    loads: str, found: list[str], needs: list[str], says: Callable
) -> None:
    said = says("voltage-drop-high", shed(loads))
    assert (said.found, said.needs) == (found, needs)


def test_where_even_the_design_load_loses_little_nobody_is_asked_what_is_drawn(says: Callable) -> None:
    said = says("voltage-drop-high", shed("").replace("length: 100 ft", "length: 70 ft"))
    assert said.needs == ["what is drawn on circuit shed"]
    assert says("voltage-drop-high", shed("").replace("length: 100 ft", "length: 40 ft")).needs == []


def test_a_missing_length_does_not_hide_a_drop_that_the_rest_already_has(says: Callable) -> None:
    text = shed("[{id: heater, is: space-heater, draws: 12 A, plugged: S2.r1}]")
    text = text.replace("100 ft}", "100 ft}\n  - {id: s2, cable: 12/2 NM-B, from: S1, to: S2}")
    text = text.replace("end-of-run}", "pigtailed}\n  S2: {devices: {r1: duplex}, makeup: end-of-run}")
    assert says("voltage-drop-high", text).found == [RUN]


def test_the_fault_current_at_the_service_is_asked_for_once(says: Callable) -> None:
    text = shed("").replace(
        "feeds: shed, says: Shed}", "feeds: shed, says: Shed}\n  5: {rating: 20 A, feeds: gate, says: Gate}"
    )
    text += "[circuits/gate.yaml]\ncircuit: gate\nname: Gate\nruns:\n  - {id: g1, cable: 12/2 UF-B, from: main, to: S2, length: 60 ft}\n"
    text = text.replace("end-of-run}", "end-of-run}\n  S2: {devices: {r1: duplex}, makeup: end-of-run}")
    need = "the fault current at the service (fault_level, or transformer and drop)"
    assert says("breaker-slow-at-end", text).needs == [need]


def test_a_breaker_that_opens_late_is_not_held_against_the_heat(says: Callable) -> None:
    text = shed("").replace("length: 100 ft", "length: 400 ft")
    assert says("breaker-slow-at-end", text).found == [RUN]
    assert says("fault-heat-over-wire", text) == type(says("fault-heat-over-wire", text))([], [])
