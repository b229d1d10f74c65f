"""Room for one more: what is free by the page is what is free by the figures, to the last digit shown."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from random import Random
from typing import Any

import pytest
from random_houses import random_house

from junctionary.checks.examples import read_example
from junctionary.cli.opening import link_record
from junctionary.figures import work_out
from junctionary.figures.room_for_more import PointRoom, add, box_room, point_room, pole_loads
from junctionary.house.model import House
from junctionary.house.network import network
from junctionary.house.offers import offers_of
from junctionary.house.supply import supply
from junctionary.publish.address import address_book
from junctionary.publish.scripts import more_data
from junctionary.sheets.circuit_load import shown
from junctionary.sheets.room_for_more import RoomForMore

from .conftest import HOUSES, Run

ROOT = Path(__file__).parents[2]
WATTS = (0, 1, 12, 700, 1333, 1440, 1500, 1920, 2400, 9000)
ASK = """([data, cases]) => cases.map(([point, pole, watts, lasting]) => {
  const room = junctionaryRoom, told = data.points[point], held = data.poles[pole];
  const amps = room.amperes(watts, told.volts);
  const drop = told.drop && room.drop(told.drop, amps);
  if (held.none) return [held.none, drop && room.shown(drop.volts, 2)];
  const found = room.add(held, amps, lasting);
  return [found.fits, found.limit, ...[amps, found.most, found.now, found.lasting, found.left].map(each => room.shown(each, 2)),
    drop && room.shown(drop.volts, 2)];
})"""
Case = tuple[str, str, int, bool]


@dataclass(frozen=True, slots=True)
class Asked:
    """A house's room for more, and what its page is given of it."""

    room: RoomForMore
    data: dict[str, Any]


def asked(house: House) -> Asked:
    joined = network(house)
    figures = work_out(house, joined)
    loads = pole_loads(figures)
    offers = offers_of(house, joined, supply(house, joined))
    room = RoomForMore(
        {each.id: point_room(house, joined, figures, loads, each) for each in house.devices.values()},
        {id_: box_room(house, joined, figures, each) for id_, each in offers.items()},
        {},
    )
    return Asked(room, more_data(house, room, address_book(())))


@pytest.fixture(scope="module")
def demo_room() -> Asked:
    house = link_record(ROOT / "content").house
    assert house is not None
    return asked(house)


def cases(room: RoomForMore) -> Iterator[Case]:
    for point in room.points.values():
        for pole in point.poles:
            for watts in WATTS:
                yield point.point, pole.poles[0], watts, watts % 3 == 0


def by_figures(points: Mapping[str, PointRoom], case: Case) -> list[Any]:
    id_, name, watts, lasting = case
    point = points[id_]
    pole = next(each for each in point.poles if each.poles[0] == name)
    amps = watts / point.volts
    drop = point.drop if point.drop and point.drop.volts == point.volts else None
    lost = shown(drop.now_v + drop.ohms * amps) if drop else None
    if pole.room is None:
        return [None, lost]
    found = add(pole.room, amps, lasting=lasting)
    figures = (amps, found.most_a, found.now_a, found.lasting_a, found.left_a)
    return [found.fits, found.limit, *map(shown, figures), lost]


def agree(run_script: Run, at: Asked) -> int:
    drawn = list(cases(at.room))
    for case, page in zip(drawn, run_script(ASK, [at.data, drawn]), strict=True):
        figures = by_figures(at.room.points, case)
        if figures[0] is None and len(figures) == 2:
            assert page[0], case
            assert page[1] == figures[1], case
        else:
            assert page == figures, case
    return len(drawn)


@pytest.mark.browser
def test_every_point_of_the_demo_house(run_script: Run, demo_room: Asked) -> None:
    assert agree(run_script, demo_room) > 1000


def with_loads(chance: Random, files: dict[str, str]) -> str:
    """The record of a house with loads drawn for each circuit, of odd sizes, some for hours, some not told."""
    text = []
    for name, held in files.items():
        more = ""
        if name.startswith("circuits/"):
            drawn = [
                f"  - {{id: load-{number}-{Path(name).stem}, is: other, draws: {size}, continuous: {word}}}\n"
                for number in range(chance.randrange(3))
                for size in [chance.choice(["137 W", "333 W", "1250 VA", "7.3 A", "0.07 A"])]
                for word in [chance.choice(["true", "false"])]
            ]
            more = "loads:\n" + "".join(drawn) if drawn else ""
        text.append(f"[{name}]\n{held}{more}")
    return "".join(text)


@pytest.mark.browser
def test_every_point_of_random_houses(run_script: Run) -> None:
    asked_of = 0
    for seed in range(HOUSES):
        files = random_house(Random(seed), 1 + seed % 3)
        asked_of += agree(run_script, asked(read_example(with_loads(Random(seed), files))))
    assert asked_of > HOUSES


def test_what_is_not_recorded_is_never_a_yes(demo_room: Asked) -> None:
    """With one watt to add, only a circuit whose loads are all recorded may take it."""
    for point in demo_room.room.points.values():
        for pole in point.poles:
            if pole.room is not None and pole.room.now.value is None:
                assert add(pole.room, Fraction(1, 120), lasting=False).fits in (None, False)
