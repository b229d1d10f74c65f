"""What each load and device draws: its voltage, its poles, what is taken for granted, what is missing."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from junctionary.figures import Draw, Figures
from junctionary.figures.draws import together

FiguresOf = Callable[[str], Figures]

DEVICES = """[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
  range-face: {is: receptacle, face: 14-50R, gangs: 2}
  lamp: {is: luminaire, draws: 14 W, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
  dark-lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
  tank: {is: appliance, leads: [10 AWG black, 10 AWG red, 10 AWG green]}
  alarm: {is: smoke-alarm, draws: 3 W, leads: [18 AWG black, 18 AWG white, 18 AWG orange]}
"""


def record(cable: str, box: str, loads: str = "", breaker: str = "1: {rating: 20 A, feeds: c}") -> str:
    told = f"loads:\n  - {{{loads}}}\n" if loads else ""
    return (
        f"[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  {breaker}\n"
        f"[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {{id: a1, cable: {cable}, from: main, to: K1}}\n"
        f"{told}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{{box}}}\n{DEVICES}"
    )


DUPLEX = "devices: {r1: duplex}, makeup: end-of-run"
LAMP = "devices: {f1: lamp}, makeup: end-of-run"


@pytest.mark.parametrize(
    ("draws", "amps"),
    [("1500 W", "12.5"), ("1.2 kW", "10"), ("600 VA", "5"), ("9 A", "9"), ("250 mA", "0.25")],
)
def test_a_draw_is_told_in_amperes_at_its_nominal_voltage(
    draws: str, amps: str, figures_of: FiguresOf
) -> None:
    found = figures_of(record("12/2 NM-B", DUPLEX, f"id: it, is: tool, draws: {draws}, plugged: K1.r1"))
    assert found.draws["it"].amps.value == Fraction(amps)
    assert found.draws["it"].volt_amps.value == Fraction(amps) * 120


def test_a_load_across_both_legs_is_on_both_poles_and_leaves_the_neutral_alone(
    figures_of: FiguresOf,
) -> None:
    box = "devices: {r1: range-face}, makeup: end-of-run"
    text = record("6/3 NM-B", box, "id: it, is: range, draws: 9.6 kW, plugged: K1.r1", "2+4: {feeds: c}")
    draw = figures_of(text).draws["it"]
    assert (draw.volts, draw.amps.value) == (240, 40)
    assert ([each.pole for each in draw.connection.feeds], draw.connection.legs) == (
        ["main/2", "main/4"],
        ("A", "B"),
    )
    assert draw.connection.returns == "leg"


def test_a_lamps_own_draw_is_counted_once_and_a_load_wired_to_a_device_speaks_for_it(
    figures_of: FiguresOf,
) -> None:
    assert list(figures_of(record("14/2 NM-B", LAMP)).draws) == ["K1.f1"]
    wired = record("14/2 NM-B", LAMP, "id: it, is: lighting, draws: 40 W, wired: K1.f1")
    assert {each.id: each.volt_amps.value for each in figures_of(wired).draws.values()} == {"it": 40}


def test_a_wired_load_that_tells_no_draw_has_the_one_of_its_device(figures_of: FiguresOf) -> None:
    text = record("14/2 NM-B", LAMP, "id: it, is: lighting, wired: K1.f1, matters: alarm")
    assert figures_of(text).draws["it"].volt_amps.value == 14


@pytest.mark.parametrize(
    ("box", "loads", "lacks"),
    [
        ("devices: {f1: dark-lamp}, makeup: end-of-run", "", "what K1.f1 draws"),
        (DUPLEX, "id: it, is: tool, plugged: K1.r1", "what it draws"),
    ],
)
def test_what_nobody_recorded_is_asked_for_and_is_not_nothing(
    box: str, loads: str, lacks: str, figures_of: FiguresOf
) -> None:
    found = figures_of(record("12/2 NM-B", box, loads))
    (draw,) = found.draws.values()
    assert (draw.amps.value, draw.amps.lacks) == (None, (lacks,))
    assert lacks in found.loads["c"].lacks


def test_the_voltage_of_a_load_anywhere_on_a_two_pole_circuit_with_a_neutral_is_not_guessed(
    figures_of: FiguresOf,
) -> None:
    text = record("12/3 NM-B", "capped: [a1]", "id: it, is: tool, draws: 900 W", "2+4: {feeds: c}")
    assert figures_of(text).draws["it"].amps.lacks == ("the voltage of it",)


def test_a_halfs_own_pole_feeds_what_is_plugged_into_it(figures_of: FiguresOf) -> None:
    breakers = "1: {feeds: c.black}\n  3: {feeds: c.red}"
    box = (
        "devices: {r1: duplex}, split: {r1: brass}, terminals: {r1.brass-top: a1.black, "
        "r1.brass-bottom: a1.red, r1.silver: a1.white, r1.green: a1.bare}"
    )
    for half, pole in (("top", "main/1"), ("bottom", "main/3")):
        text = record("12/3 NM-B", box, f"id: it, is: tool, draws: 900 W, plugged: K1.r1.{half}", breakers)
        assert [each.pole for each in figures_of(text).draws["it"].connection.feeds] == [pole]
    text = record("12/3 NM-B", box, "id: it, is: tool, draws: 900 W, plugged: K1.r1", breakers)
    assert figures_of(text).draws["it"].connection.lacks == ("which half of K1.r1 it is plugged into",)


@pytest.mark.parametrize(
    ("told", "continuous"),
    [
        ("is: water-heater", True), ("is: range", False), ("is: fan", None), ("is: fan, continuous: true", True),
        ("is: range, continuous: unknown", None), ("is: space-heater", None),
        ("is: space-heater, fastened: true", True),
    ],
)  # fmt: skip
def test_whether_a_load_is_continuous_goes_by_the_record_and_then_by_its_kind(
    told: str, continuous: bool | None, figures_of: FiguresOf
) -> None:
    text = record("12/2 NM-B", DUPLEX, f"id: it, {told}, draws: 900 W, plugged: K1.r1")
    assert figures_of(text).draws["it"].continuous is continuous


def test_of_loads_that_never_run_together_the_heaviest_choice_stays(figures_of: FiguresOf) -> None:
    def chosen(*told: tuple[str, int, str]) -> set[str]:
        loads = "}\n  - {".join(
            f"id: {id_}, is: tool, draws: {watts} W" + (f", instead_of: {other}" if other else "")
            for id_, watts, other in told
        )
        draws: tuple[Draw, ...] = tuple(figures_of(record("12/2 NM-B", DUPLEX, loads)).draws.values())
        return {each.id for each in together(draws)}

    assert chosen(("a", 900, ""), ("b", 500, "a")) == {"a"}
    assert chosen(("a", 900, ""), ("b", 500, "a"), ("c", 600, "a")) == {"b", "c"}
    assert chosen(("a", 900, ""), ("b", 500, "a"), ("c", 300, "")) == {"a", "c"}
