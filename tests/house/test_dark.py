"""What goes dark with a breaker, and what a device depends on."""

from collections.abc import Callable

from junctionary.house.dark import Dark, FedBy, fed_by, goes_dark
from junctionary.house.model import House
from junctionary.house.network import network

HouseOf = Callable[[str], House]
HOUSE = """
[panels/main.yaml]
panel: main
main: 100 A
spaces: 12
fed_by: service
breakers: {1: {feeds: den}, 3: {feeds: hall}, 2+4: {feeds: barn}}
[panels/shed.yaml]
panel: shed
spaces: 6
fed_by: barn
breakers: {1: {feeds: bench}}
[circuits/barn.yaml]
circuit: barn
name: Feeder
[circuits/bench.yaml]
circuit: bench
name: Bench
serves: [den]
loads: [{id: chest, is: freezer, matters: food}]
[circuits/den.yaml]
circuit: den
name: Den
runs: [{id: a1, cable: 12/2 NM-B, from: main, to: K1}]
[circuits/hall.yaml]
circuit: hall
name: Hall
runs: [{id: h1, cable: 12/2 NM-B, from: main, to: K1}]
[devices/all.yaml]
devices: {duplex: {is: receptacle, face: 5-15R}}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  K1: {devices: {r1: duplex, r2: duplex}, split: {r1: brass}, capped: [h1.white],
       terminals: {r1.brass-top: a1.black, r1.brass-bottom: h1.black, r1.silver: a1.white},
       joints: [{join: [a1.bare, h1.bare, r1.green]}]}
"""


def dark(house: House, breaker: str) -> Dark:
    return goes_dark(house, network(house), breaker)


def fed(house: House, device: str) -> FedBy:
    return fed_by(house, network(house), device)


def test_one_half_of_a_split_receptacle_goes_dark_alone(house_of: HouseOf) -> None:
    found = dark(house_of(HOUSE), "main/1")
    assert (found.devices, found.halves) == ((), ("K1.r1.top",))


def test_the_main_takes_every_panel_behind_it(house_of: HouseOf) -> None:
    found = dark(house_of(HOUSE), "main/main")
    assert found.devices == ("K1.r1",)
    assert set(found.breakers) == {"main/1", "main/3", "main/2+4", "shed/1"}


def test_a_feeder_takes_the_circuits_of_its_panel_and_what_matters_on_them(house_of: HouseOf) -> None:
    found = dark(house_of(HOUSE), "main/2+4")
    assert (found.breakers, found.circuits, found.rooms) == (("shed/1",), ("barn", "bench"), ("den",))
    assert [each.id for each in found.first] == ["chest"]


def test_what_another_breaker_keeps_alive_does_not_go_dark(house_of: HouseOf) -> None:
    joined = HOUSE.replace("split: {r1: brass}, ", "")
    found = dark(house_of(joined), "main/1")
    assert found.devices == ()


def test_a_device_is_fed_by_what_reaches_it(house_of: HouseOf) -> None:
    found = fed(house_of(HOUSE), "K1.r1")
    assert (found.breakers, found.by_label) == (("main/1", "main/3"), False)


def test_a_device_nothing_reaches_is_fed_by_no_breaker(house_of: HouseOf) -> None:
    found = fed(house_of(HOUSE), "K1.r2")
    assert (found.breakers, found.by_label) == ((), False)


def test_a_device_whose_way_is_open_is_fed_by_the_word_of_the_record_alone(house_of: HouseOf) -> None:
    text = HOUSE.replace("r1.brass-bottom: h1.black, ", "").replace("capped: [", "capped: [h1.black, ")
    text = text.replace("{id: a1, cable: 12/2 NM-B, from: main,", "{id: a1, cable: 12/2 NM-B, from: unknown,")
    found = fed(house_of(text), "K1.r1")
    assert (found.breakers, found.by_label) == (("main/1",), True)
    assert found.unknown == ("what a1 comes from is unknown",)


def test_the_unknown_on_a_circuit_is_told_with_what_goes_dark(house_of: HouseOf) -> None:
    found = dark(house_of(HOUSE.replace("capped: [h1.white],", "")), "main/3")
    assert found.unknown == ("K1/h1.white is told nowhere: not joined, landed, capped or loose",)
