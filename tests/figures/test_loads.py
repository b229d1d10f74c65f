"""The load of each circuit, what is left, the share of fastened loads; the neutral against a simulator."""

import random
from collections.abc import Callable
from fractions import Fraction

import pytest
import simulator

from junctionary.figures import Figures, work_out
from junctionary.house.model import House
from junctionary.house.network import network

FiguresOf = Callable[[str], Figures]
HouseOf = Callable[[str], House]


def shared(watts: list[int], on: list[str], spaces: tuple[int, int]) -> str:
    """A shared neutral through a chain of receptacles, each on one of the two hots, with one load in each."""
    last = len(watts)
    runs = [
        f"  - {{id: a{n}, cable: 12/3 NM-B, from: {f'K{n - 1}' if n > 1 else 'main'}, to: K{n}}}"
        for n in range(1, last + 1)
    ]
    loads = [f"  - {{id: l{n}, is: tool, draws: {w} W, plugged: K{n}.r1}}" for n, w in enumerate(watts, 1)]
    boxes = []
    for n, leg in enumerate(on, 1):
        end = f"capped: [a{n}.{'red' if leg == 'black' else 'black'}]"
        onward = f"onward: [a{n + 1}], " if n < last else ""
        tail = f", {end}" if n == last else ""
        boxes.append(
            f"  K{n}: {{devices: {{r1: duplex}}, makeup: {{feed: a{n}, {onward}takes: {leg}}}{tail}}}"
        )
    first, second = spaces
    return "\n".join(
        [
            "[panels/main.yaml]", "panel: main", "spaces: 8", "main: 100 A", "fed_by: service", "bonded: true",
            "breakers:", f"  {first}: {{rating: 20 A, feeds: c.black}}", f"  {second}: {{rating: 20 A, feeds: c.red}}",
            "[circuits/c.yaml]", "circuit: c", "name: C", "runs:", *runs, "loads:", *loads,
            "[boxes/den.yaml]", "room: den", "boxes:", *boxes, "",
        ]
    )  # fmt: skip


@pytest.mark.skipif(simulator.program() is None, reason="no circuit simulator here")
@pytest.mark.parametrize("seed", range(12))
def test_legs_and_neutral_carry_what_a_circuit_simulator_says(
    seed: int, house_of: HouseOf, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(simulator, "CLOSED_OHM", 1e-6)
    draw = random.Random(seed)
    count = draw.randint(1, 5)
    watts = [draw.randrange(40, 1600, 10) for _ in range(count)]
    on = [draw.choice(("black", "red")) for _ in range(count)]
    house = house_of(shared(watts, on, (1, 3) if seed % 3 else (1, 2)))
    ours = work_out(house, network(house)).loads["c"]
    ohms = [
        simulator.Load(f"K{n}.r1.brass-top", f"K{n}.r1.silver-top", 120 * 120 / w)
        for n, w in enumerate(watts, 1)
    ]
    (volts,) = simulator.solved(simulator.parts_of(house), ohms, [{}])

    def current(colour: str) -> float:
        return abs(volts[f"main/a1.{colour}"] - volts[f"K1/a1.{colour}"]) / simulator.CLOSED_OHM

    black, red = ours.poles
    assert ours.neutral is not None
    assert ours.neutral.now.value is not None
    for figure, colour in ((black.least_a, "black"), (red.least_a, "red"), (ours.neutral.now.value, "white")):
        assert float(figure) == pytest.approx(current(colour), rel=1e-3, abs=1e-3)


def test_a_neutral_with_an_unknown_load_on_it_is_not_told(figures_of: FiguresOf) -> None:
    text = shared([600, 1200], ["black", "red"], (1, 3)).replace("draws: 600 W, ", "")
    neutral = figures_of(text).loads["c"].neutral
    assert neutral is not None
    assert (neutral.now.value, neutral.now.lacks, neutral.most_a) == (None, ("what l1 draws",), 10)


def test_a_neutral_of_one_leg_carries_the_sum(figures_of: FiguresOf) -> None:
    neutral = figures_of(shared([600, 1200], ["black", "red"], (1, 2))).loads["c"].neutral
    assert neutral is not None
    assert (neutral.now.value, neutral.most_a, neutral.one_leg) == (15, 15, True)


def simple(loads: str, cable: str = "12/2 NM-B", more: str = "") -> str:
    return (
        "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n"
        f"  - {{id: a1, cable: {cable}, from: main, to: K1}}\nloads:\n{loads}"
        "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {devices: {r1: duplex}, makeup: end-of-run}\n" + more
    )


def test_room_is_what_the_thinnest_wire_allows_where_the_breaker_is_too_large(figures_of: FiguresOf) -> None:
    text = simple("  - {id: it, is: tool, draws: 600 W, plugged: K1.r1.top}\n", "14/2 NM-B")
    (pole,) = figures_of(text).loads["c"].poles
    assert pole.room is not None
    assert (pole.room.now.value, pole.room.limit) == (10, "the 15 A that run a1 allows")


def test_a_circuit_whose_only_receptacle_is_taken_has_no_room(figures_of: FiguresOf) -> None:
    text = simple("  - {id: it, is: freezer, draws: 600 W, plugged: K1.r1}\n").replace(
        "r1: duplex", "r1: single"
    )
    (pole,) = figures_of(text).loads["c"].poles
    assert pole.room is None


def test_a_directory_alone_tells_the_least_load_and_the_most_room(figures_of: FiguresOf) -> None:
    text = "[circuits/c.yaml]\ncircuit: c\nname: C\nloads:\n  - {id: it, is: tool, draws: 600 W}\n"
    loads = figures_of(text).loads["c"]
    (pole,) = loads.poles
    assert loads.lacks == ("the cables of circuit c",)
    assert (pole.load.value, pole.least_a) == (None, 5)
    assert pole.room is not None
    assert (pole.room.now.value, pole.room.now.steps[-1].value) == (None, 15)


def test_a_range_counts_by_its_demand_and_connects_in_full(figures_of: FiguresOf) -> None:
    text = (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  2+4: {rating: 40 A, feeds: c}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nloads:\n  - {id: it, is: range, draws: 12 kW, volts: 240 V}\n"
    )
    (pole,) = figures_of(text).loads["c"].poles
    assert (pole.connected.steps[-1].value, pole.least_a) == (50, Fraction(8000, 240))


def test_the_share_of_fastened_loads_leaves_out_the_receptacle_that_holds_one(figures_of: FiguresOf) -> None:
    load = "  - {id: it, is: dishwasher, draws: 1300 W, plugged: K1.r1}\n"
    assert figures_of(simple(load)).fixed_loads == ()
    more = "  K2: {devices: {r1: duplex}, makeup: end-of-run}\n"
    text = simple(load, more=more).replace("makeup: end-of-run", "makeup: pigtailed", 1)
    text = text.replace("to: K1}\n", "to: K1}\n  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2}\n")
    (fixed,) = figures_of(text).fixed_loads
    assert (fixed.beside, fixed.total.value, fixed.most.value) == (("K2.r1",), Fraction(1300, 120), 10)
