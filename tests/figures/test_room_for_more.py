"""One more load, one more cable: what is free, and what stops a cable from starting in a box."""

from collections.abc import Callable
from fractions import Fraction

import pytest

from junctionary.figures import work_out
from junctionary.figures.room_for_more import (
    BoxRoom,
    Extending,
    PointRoom,
    add,
    box_room,
    point_room,
    pole_loads,
)
from junctionary.house.model import House
from junctionary.house.network import network
from junctionary.house.offers import offers_of
from junctionary.house.supply import supply

HouseOf = Callable[[str], House]

SOUND = """
[panels/main.yaml]
panel: main
spaces: 8
main: 100 A
fed_by: service
bonded: true
breakers:
  1: {rating: 20 A, feeds: c, says: The circuit}
[circuits/c.yaml]
circuit: c
name: C
purpose: general
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: D1, length: 40 ft}
  - {id: a2, cable: 12/2 NM-B, from: D1, to: D2, length: 10 ft}
loads:
  - {id: heater, is: space-heater, draws: 1200 W, continuous: true, plugged: D2.r1}
[boxes/den.yaml]
room: den
boxes:
  D1: {size: {volume: 32 in3, of: plastic, clamps: none}, devices: {r1: duplex}, makeup: {feed: a1, onward: [a2]}}
  D2: {size: {volume: 18 in3, of: plastic, clamps: inside}, devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, torque: 14 in-lb}
  gfci: {is: gfci-receptacle, face: 5-20R, rating: 20 A}
  switch: {is: switch, ways: 1}
  lamp: {is: luminaire, draws: 12 W, leads: [18 AWG black, 18 AWG white, 18 AWG green], canopy: domed}
connectors:
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
"""


def point(house: House, id_: str) -> PointRoom:
    joined = network(house)
    figures = work_out(house, joined)
    return point_room(house, joined, figures, pole_loads(figures), house.devices[id_])


def box(house: House, id_: str) -> BoxRoom:
    joined = network(house)
    offers = offers_of(house, joined, supply(house, joined))
    return box_room(house, joined, work_out(house, joined), offers[id_])


def says(extending: Extending) -> str:
    return "; ".join(each.says for each in extending.stops)


def test_a_load_is_held_against_what_is_left_beside_125_percent_of_the_lasting_one(house_of: HouseOf) -> None:
    (pole,) = point(house_of(SOUND), "D1.r1").poles
    assert pole.room is not None
    assert pole.room.left_a == Fraction(15, 2)  # 20 - 1.25 * 10
    within, beyond = (add(pole.room, Fraction(each), lasting=False) for each in ("7.5", "7.51"))
    assert (within.fits, within.now_a, within.lasting_a) == (True, 0, 0)
    assert (beyond.fits, beyond.limit) == (False, "the 20 A breaker")


def test_a_load_for_hours_may_take_80_percent_and_uses_up_125(house_of: HouseOf) -> None:
    (pole,) = point(house_of(SOUND), "D1.r1").poles
    assert pole.room is not None
    assert add(pole.room, Fraction(6), lasting=True).fits is True
    assert add(pole.room, Fraction("6.01"), lasting=True).limit == "80 % of what is left"
    assert add(pole.room, Fraction(4), lasting=True).now_a == Fraction("2.5")


def test_what_one_plugged_load_may_draw_binds_on_an_empty_circuit(house_of: HouseOf) -> None:
    empty = SOUND.replace(
        "  - {id: heater, is: space-heater, draws: 1200 W, continuous: true, plugged: D2.r1}\n", ""
    )
    (pole,) = point(house_of(empty.replace("loads:\n", "loads: []\n")), "D1.r1").poles
    assert pole.room is not None
    found = add(pole.room, Fraction(17), lasting=False)
    assert (found.fits, found.most_a, found.limit) == (False, 16, "what one plugged load may draw")


def test_with_a_load_of_unknown_draw_it_cannot_be_told_below_the_limit_and_is_too_much_above(
    house_of: HouseOf,
) -> None:
    untold = SOUND.replace("draws: 1200 W, ", "")
    (pole,) = point(house_of(untold), "D1.r1").poles
    assert pole.room is not None
    assert add(pole.room, Fraction(1), lasting=False).fits is None
    assert add(pole.room, Fraction(21), lasting=False).fits is False


def test_the_drop_grows_by_the_ohms_of_the_way_there(house_of: HouseOf) -> None:
    drop = point(house_of(SOUND), "D2.r1").drop
    assert drop is not None
    more = SOUND.replace("draws: 1200 W", "draws: 1320 W")
    heavier = point(house_of(more), "D2.r1").drop
    assert heavier is not None
    assert heavier.now_v == drop.now_v + drop.ohms  # one ampere more, drawn at that box
    assert (drop.least, drop.most) == (False, False)


def test_a_box_that_is_always_hot_with_neutral_ground_and_room_may_be_extended(house_of: HouseOf) -> None:
    room = box(house_of(SOUND), "D1")
    (only,) = room.extending
    assert only.may is True
    assert str(only.least) == "12 AWG"
    assert [(each.cable, each.fits) for each in room.cables] == [("12/2", True), ("12/3", True)]


def test_a_full_box_stops_it(house_of: HouseOf) -> None:
    small = SOUND.replace("32 in3", "18 in3")
    (only,) = box(house_of(small), "D1").extending
    assert only.may is False
    assert "box is full" in says(only)


def test_a_box_of_unknown_volume_leaves_room_for_a_cable_untold(house_of: HouseOf) -> None:
    room = box(house_of(SOUND.replace("volume: 32 in3, ", "")), "D1")
    assert [each.fits for each in room.cables] == [None, None]
    assert any("volume" in each for each in room.cables[0].lacks)


@pytest.mark.parametrize(
    ("told", "instead", "why"),
    [
        ("cable: 12/2 NM-B, from: main", "cable: 12/2 NM no ground, from: main", "no equipment ground"),
        ("purpose: general", "purpose: dryer", "one appliance has that circuit"),
        ("cable: 12/2 NM-B, from: D1", "cable: 10/2 NM-B aluminium, from: D1", "aluminium"),
        ("rating: 20 A, feeds: c", "rating: 30 A, feeds: c", "larger than"),
    ],
)  # fmt: skip
def test_what_stops_a_cable(house_of: HouseOf, told: str, instead: str, why: str) -> None:
    text = SOUND.replace(told, instead)
    assert text != SOUND
    (only,) = box(house_of(text), "D1").extending
    assert only.may is False
    assert why in says(only)


def test_behind_a_switch_nothing_is_always_hot_and_at_its_box_it_is(house_of: HouseOf) -> None:
    text = SOUND.replace(
        "r1: duplex}, makeup: {feed: a1, onward: [a2]}", "s1: switch}, makeup: {feed: a1, switched: {s1: a2}}"
    )
    text = text.replace(
        "devices: {r1: duplex}, makeup: end-of-run", "devices: {f1: lamp}, makeup: end-of-run"
    )
    text = text.replace(", plugged: D2.r1", "")
    house = house_of(text)
    assert "through a switch alone" in says(box(house, "D2").extending[0])
    (at_switch,) = box(house, "D1").extending
    assert at_switch.may is True


def test_both_sides_of_a_gfci_device_are_told_apart_and_the_load_side_is_warned_of(house_of: HouseOf) -> None:
    text = SOUND.replace(
        "{r1: duplex}, makeup: {feed: a1, onward: [a2]}", "{r1: gfci}, makeup: {feed: a1, guarded: [a2]}"
    )
    line, load = box(house_of(text), "D1").extending
    assert line.offer is not None
    assert load.offer is not None
    assert (line.offer.behind, load.offer.behind) == ((), ("D1.r1",))
    assert any("behind D1.r1" in each.says for each in load.heeds)


def test_a_kitchen_circuit_is_said_to_be_kept(house_of: HouseOf) -> None:
    (only,) = box(house_of(SOUND.replace("purpose: general", "purpose: small-appliance")), "D1").extending
    assert any("kept for receptacles of kitchen" in each.says for each in only.heeds)


def test_a_box_of_unknown_make_up_cannot_be_told(house_of: HouseOf) -> None:
    text = SOUND.replace("makeup: {feed: a1, onward: [a2]}", "makeup: unknown")
    for each in box(house_of(text), "D1").extending:
        assert each.may is None or each.stops
        assert each.lacks


def test_where_a_second_source_enters_a_cable_is_answered_once(house_of: HouseOf) -> None:
    inlet = SOUND.replace("breakers:", "breakers:\n  2+4: {rating: 30 A, feeds: gen}", 1)
    inlet = inlet.replace("  D2:", "  I1: {devices: {i1: inlet}, makeup: end-of-run}\n  D2:")
    inlet = inlet.replace("devices:\n  duplex", "devices:\n  inlet: {is: inlet, rating: 30 A}\n  duplex")
    house = house_of(
        "[house.yaml]\nhouse: Tern Cottage\nreference: nec-2023\n"
        "sources: [{id: gen, is: generator-inlet, at: I1, enters: main/2+4,"
        " runs: [{id: g1, cable: 10/3 NM-B, from: I1, to: main}]}]\n" + inlet
    )
    extending = box(house, "I1").extending
    assert {each.breaker for each in extending} == {"main/2+4"}
    assert not any(each.may for each in extending)
    assert point(house, "I1.i1").lacks == (
        "its breaker is where a second source enters, and is no branch circuit's",
    )
