"""What the checks of coverage and protection say where a fact of the room or of the way to it is missing."""

from collections.abc import Callable

import pytest

ALARM = "[devices/alarms.yaml]\ndevices:\n  alarm: {is: smoke-alarm, leads: [18 AWG black, 18 AWG white]}\n"
CIRCUIT = (
    '[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers: {1: {rating: 15 A, guards: [afci], feeds: c, says: "Alarms"}}\n'
    "[circuits/c.yaml]\ncircuit: c\nname: C\nruns: [{id: a1, cable: 14/2 NM-B, from: main, to: K1}]\n"
)


def test_a_room_whose_level_is_not_told_may_be_a_storey_without_an_alarm(says: Callable) -> None:
    told = f"{CIRCUIT}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{devices: {{r1: duplex}}, makeup: end-of-run}}\n"
    assert says("smoke-alarm-missing", told).needs == ["the level of room den"]


def test_an_alarm_in_an_older_hall_is_heard_on_its_storey(says: Callable) -> None:
    told = (
        f"{ALARM}{CIRCUIT}[house.yaml]\nhouse: Example\nreference: nec-2023\nlevels: [{{id: up, name: Upper}}]\n"
        "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\nlevel: up\n"
        "[rooms/hall.yaml]\nroom: hall\nname: Hall\nkind: hall\nlevel: up\nbuilt_to: nec-1956\n"
        "[boxes/hall.yaml]\nroom: hall\nboxes:\n  K1: {devices: {q1: alarm}, makeup: end-of-run}\n"
        "[boxes/den.yaml]\nroom: den\nboxes:\n  K2: {size: {of: plastic}}\n"
    )
    assert says("smoke-alarm-missing", told).found == []
    assert says("smoke-alarm-missing", told.replace("{q1: alarm}", "{r1: duplex}")).needs != []


def test_a_bathroom_receptacle_of_which_nobody_knows_the_circuit_is_not_passed(says: Callable) -> None:
    told = (
        "[rooms/wash.yaml]\nroom: wash\nname: Wash room\nkind: bathroom\n"
        "[boxes/wash.yaml]\nroom: wash\nboxes:\n  K1: {devices: {r1: duplex}, makeup: unknown}\n"
    )
    assert says("bathroom-circuit-missing", told).needs == ["which circuit feeds K1.r1"]


def test_a_bathroom_of_which_no_box_is_told_is_not_passed(says: Callable) -> None:
    told = "[rooms/wash.yaml]\nroom: wash\nname: Wash room\nkind: bathroom\n"
    assert says("bathroom-circuit-missing", told).needs == ["whether every box of room wash is recorded"]


def test_a_receptacle_that_no_hot_comes_to_is_not_called_unguarded(says: Callable) -> None:
    told = (
        f"{CIRCUIT}[rooms/wash.yaml]\nroom: wash\nname: Wash room\nkind: bathroom\n"
        "[boxes/wash.yaml]\nroom: wash\nboxes:\n  K1:\n    devices: {r1: duplex}\n"
        "    terminals: {r1.silver: a1.white, r1.green: a1.bare}\n    capped: [a1.black]\n"
    )
    assert says("hot-open", told).found == ["boxes/wash.yaml:4"]
    assert says("gfci-missing", told).found == []
    assert says("gfci-missing", told).needs == ["what feeds K1.r1"]


@pytest.mark.parametrize(
    ("clamps", "first", "found", "needs"),
    [
        ("clamps: none", "9 in", True, []),
        ("clamps: none", "8 in", False, []),
        ("clamps: inside", "12 in", False, []),
        ("", "8 in", False, []),
        ("", "9 in", False, ["the gangs, material and clamps of box K1"]),
        ("clamps: unknown", "9 in", False, ["the gangs, material and clamps of box K1"]),
    ],
)
def test_a_plastic_box_of_one_gang_without_clamps_wants_its_cable_held_within_8_in(
    clamps: str, first: str, found: bool, needs: list[str], says: Callable
) -> None:
    told = (
        f"{CIRCUIT}[boxes/den.yaml]\nroom: den\nboxes:\n"
        f"  K1: {{size: {{gangs: 1, of: plastic, {clamps}}}, devices: {{r1: duplex}}, makeup: end-of-run}}\n"
    ).replace("to: K1}", f"to: K1, supported: {{first: {first}, every: 4 ft}}}}")
    said = says("cable-unsupported", told)
    assert (bool(said.found), said.needs) == (found, needs)


def test_metal_clad_cable_is_not_held_to_the_distances_of_other_cable(says: Callable) -> None:
    told = (
        f"{CIRCUIT}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{devices: {{r1: duplex}}, makeup: end-of-run}}\n"
    ).replace("to: K1}", "to: K1, supported: {first: 8 in, every: 6 ft}}")
    assert says("cable-unsupported", told).found == ["circuits/c.yaml:3"]
    assert says("cable-unsupported", told.replace("14/2 NM-B", "14/2 MC")).found == []


def test_a_bathroom_receptacle_on_a_circuit_of_another_purpose_is_named(says: Callable) -> None:
    text = (
        "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n  1: {rating: 20 A, guards: [gfci], feeds: c, says: C}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\npurpose: general\nruns:\n"
        "  - {id: a1, cable: 12/2 NM-B, from: main, to: K1}\n  - {id: a2, cable: 12/2 NM-B, from: K1, to: W1}\n"
        "[rooms/wash.yaml]\nroom: wash\nname: Wash room\nkind: bathroom\n"
        "[boxes/wash.yaml]\nroom: wash\nboxes:\n  W1: {devices: {r1: duplex}, makeup: end-of-run}\n"
        "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {devices: {r1: duplex}, makeup: pigtailed}\n"
    )
    assert says("circuit-strays-from-purpose", text).found == ["circuits/c.yaml:1"]
    alone = text.replace(", to: K1}", ", to: W1}").replace(
        "  - {id: a2, cable: 12/2 NM-B, from: K1, to: W1}\n", ""
    )
    alone = alone.replace(
        "  K1: {devices: {r1: duplex}, makeup: pigtailed}\n", "  K1: {devices: {r1: duplex}}\n"
    )
    assert says("circuit-strays-from-purpose", alone).found == []


def test_a_dwelling_with_nothing_recorded_outdoors_is_asked_for_both_sides(says: Callable) -> None:
    text = "[rooms/kitchen.yaml]\nroom: kitchen\nname: Kitchen\nkind: kitchen\n"
    needs = says("outdoor-receptacle-missing", text).needs
    assert needs == [
        "the outdoor area at the front of the house",
        "the outdoor area at the back of the house",
    ]


def test_a_breaker_of_which_nothing_is_told_may_be_the_circuit_that_is_missed(says: Callable) -> None:
    text = (
        "[panels/main.yaml]\npanel: main\nspaces: 2\nbreakers:\n  1: {rating: 20 A}\n  2: blank\n"
        "[rooms/wash.yaml]\nroom: wash\nname: Laundry\nkind: laundry\n"
    )
    said = says("laundry-circuit-missing", text)
    assert (said.found, said.needs) == ([], ["what breaker main/1 feeds"])
