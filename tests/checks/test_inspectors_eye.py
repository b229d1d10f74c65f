"""What an inspector sees that no single example shows: where a new rule speaks, and where it is silent."""

from collections.abc import Callable

import pytest

KINDS = (
    "[devices/all.yaml]\ndevices:\n  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}\n"
    "  switch: {is: switch, ways: 1, rating: 15 A}\n"
    "  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}\n"
)
CIRCUIT = (
    '[panels/main.yaml]\npanel: main\nspaces: 1\nbreakers: {1: {rating: 20 A, guards: [gfci, afci], feeds: c, says: "All"}}\n'
    "[circuits/c.yaml]\ncircuit: c\nname: C\npurpose: general\nruns:\n"
    "  - {id: a1, cable: 12/2 NM-B, from: main, to: K1}\n"
)


def bath(at: str, edition: str = "nec-2023", tub: str = "depth: 30 in", size: int = 12) -> str:
    return (
        f"{KINDS}{CIRCUIT}[rooms/bath.yaml]\nroom: bath\nname: Bath\nkind: bathroom\nbuilt_to: {edition}\n"
        f"outline: [[0 ft, 0 ft], [{size} ft, 0 ft], [{size} ft, 8 ft], [0 ft, 8 ft]]\n"
        f"things:\n  - {{what: tub, wall: north, along: 0 ft, width: 5 ft, {tub}}}\n"
        f"[boxes/bath.yaml]\nroom: bath\nboxes:\n  K1: {{at: {{{at}}}, devices: {{r1: duplex}}, makeup: end-of-run}}\n"
    )


@pytest.mark.parametrize(
    ("record", "found", "asks"),
    [
        (bath("wall: north, along: 3 ft, up: 44 in"), True, False),
        (bath("wall: north, along: 3 ft, up: 44 in", "nec-2008"), True, False),
        (bath("wall: north, along: 3 ft, up: 44 in", "nec-2005"), False, False),
        (bath("wall: north, along: 7 ft, up: 44 in"), True, False),  # 2 ft beside the tub
        (bath("wall: north, along: 7 ft, up: 44 in", "nec-2017"), False, False),
        (bath("wall: north, along: 9 ft, up: 44 in"), False, False),
        (bath("wall: north, along: 7 ft, up: 9 ft"), False, False),
        (bath("wall: west, along: 7 ft, up: 44 in"), True, False),  # at the foot of the tub, 1 ft from the corner
        (bath("wall: west, along: 7 ft, up: 44 in", "nec-2017", tub="note: sunk"), False, True),
        (bath("wall: west, along: 3 ft, up: 44 in", tub="note: sunk"), False, True),
        (bath("wall: east, along: 4 ft, up: 44 in", tub="note: sunk"), False, False),
        (bath("wall: south, along: 1 ft, up: 44 in", size=6), False, False),
        (bath("ceiling: [2 ft, 1 ft]"), True, False),
    ],
)  # fmt: skip
def test_a_receptacle_keeps_away_from_a_tub_as_its_edition_asks(
    record: str, found: bool, asks: bool, says: Callable
) -> None:
    said = says("receptacle-over-tub", record)
    assert (bool(said.found), bool(said.needs)) == (found, asks)


def den(
    boxes: str, things: str = "  - {what: door, wall: south, along: 6 in, width: 3 ft}\n", runs: str = ""
) -> str:
    return (
        f"{KINDS}{CIRCUIT}{runs}[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\ncomplete: true\n"
        "outline: [[0 ft, 0 ft], [4 ft, 0 ft], [4 ft, 3 ft], [0 ft, 3 ft]]\n"
        f"{'things:' if things else ''}\n{things}[boxes/den.yaml]\nroom: den\nboxes:\n{boxes}"
    )


SWITCHED = (
    "  K1: {at: {wall: east, along: 1 ft, up: 4 ft}, devices: {s1: switch}, makeup: {feed: a1, switched: {s1: a2}}}\n"
    "  K2: {at: {wall: north, along: 2 ft, up: 14 in}, devices: {r1: duplex}, makeup: end-of-run}\n"
)
LIT = SWITCHED.replace("{r1: duplex}, makeup: end-of-run", "{r1: duplex, f1: lamp}, makeup: pigtailed")
PLAIN = "  K1: {at: {wall: north, along: 2 ft, up: 14 in}, devices: {r1: duplex}, makeup: end-of-run}\n"
MORE = "  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2}\n"


def test_a_receptacle_that_is_the_rooms_light_serves_no_wall(says: Callable) -> None:
    assert says("wall-space-without-receptacle", den(SWITCHED, runs=MORE)).found == ["rooms/den.yaml:1"]
    assert says("wall-space-without-receptacle", den(LIT, runs=MORE)).found == []


def test_a_room_of_which_no_door_is_told_is_not_passed(says: Callable) -> None:
    told = says("wall-space-without-receptacle", den(PLAIN, things=""))
    assert (told.found, told.needs) == ([], ["where the doors of room den are"])
    assert says("wall-space-without-receptacle", den(PLAIN)).found == []


def building(circuits: int, electrodes: str = "electrodes: []", edition: str = "nec-2023") -> str:
    fed = "".join(
        f"[circuits/c{n}.yaml]\ncircuit: c{n}\nname: C{n}\npurpose: general\nbuilt_to: {edition}\nserves: [shop]\n"
        for n in range(circuits)
    )
    breakers = ", ".join(f"{n + 1}: {{rating: 20 A, feeds: c{n}, says: Shop {n}}}" for n in range(circuits))
    return (
        "[house.yaml]\nhouse: Example\nreference: nec-2023\n"
        "service: {disconnect: main, electrodes: [rod, rod]}\n"
        f"buildings:\n  - {{id: shed, detached: true, {electrodes}}}\n"
        f"[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers: {{{breakers}}}\n{fed}"
        "[rooms/shop.yaml]\nroom: shop\nname: Shop\nkind: workshop\nbuilding: shed\n"
    )


@pytest.mark.parametrize(
    ("record", "found", "asks"),
    [
        (building(1), False, False),
        (building(2), True, False),
        (building(2, "electrodes: [rod]"), False, False),
        (building(2, "metal_path: none"), False, True),
        (building(2, edition="nec-1999"), False, False),
        (building(0), False, False),
    ],
)
def test_a_building_fed_by_more_than_one_circuit_has_an_electrode(
    record: str, found: bool, asks: bool, says: Callable
) -> None:
    said = says("electrode-missing", record)
    assert (bool(said.found), bool(said.needs)) == (found, asks)


def service(main: str, rating: str, size: str) -> str:
    return (
        "[house.yaml]\nhouse: Example\nreference: nec-2023\n"
        f"service: {{system: 120/240 V, {rating}disconnect: main, conductors: {{size: {size}, metal: copper}}}}\n"
        f"[panels/main.yaml]\npanel: main\nspaces: 1\n{main}fed_by: service\nbonded: true\n"
    )


@pytest.mark.parametrize(
    ("record", "found"),
    [
        (
            service("main: 200 A\n", "rating: 100 A, ", "4 AWG"),
            True,
        ),  # the main guards them, whatever is said
        (service("main: 100 A\n", "rating: 200 A, ", "4 AWG"), False),
        (service("", "rating: 100 A, ", "4 AWG"), False),
        (service("main: 150 A\n", "", "4 AWG"), True),
    ],
)
def test_service_conductors_are_held_against_the_main_that_guards_them(
    record: str, found: bool, says: Callable
) -> None:
    assert bool(says("conductor-too-small-for-feeder", record).found) is found


@pytest.mark.parametrize(
    ("kind", "edition", "found"),
    [
        ("closet", "nec-2023", True),
        ("stair", "nec-2023", True),
        ("bathroom", "nec-2005", False),
        ("garage", "nec-2023", False),
    ],
)
def test_a_panel_hangs_where_one_can_stand_before_it(
    kind: str, edition: str, found: bool, says: Callable
) -> None:
    record = (
        f"[panels/main.yaml]\npanel: main\nspaces: 1\nbuilt_to: {edition}\nat: {{room: here, wall: north}}\n"
        f"[rooms/here.yaml]\nroom: here\nname: Here\nkind: {kind}\n"
    )
    assert bool(says("panel-in-wrong-room", record).found) is found


@pytest.mark.parametrize(("floor", "stairs", "found"), [
    ("0 ft", "", True), ("9 ft", "", False), ("9 ft", "stairs: {risers: 14}\n", True),
])  # fmt: skip
def test_a_door_to_a_deck_that_one_steps_down_from_has_a_light(
    floor: str, stairs: str, found: bool, says: Callable
) -> None:
    record = (
        f"[house.yaml]\nhouse: Example\nreference: nec-2023\nlevels: [{{id: one, name: One, floor: {floor}}}]\n"
        "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\nlevel: one\n"
        "things: [{what: door, wall: north, to: deck}]\n"
        f"[rooms/deck.yaml]\nroom: deck\nname: Deck\nkind: deck\nlevel: one\ncomplete: true\n{stairs}"
    )
    assert bool(says("entrance-without-light", record).found) is found


ALARMS = (
    "[house.yaml]\nhouse: Example\nreference: nec-2023\nlevels: [{id: one, name: One}]\n"
    "[devices/all.yaml]\ndevices:\n  alarm: {is: smoke-alarm, leads: [18 AWG black, 18 AWG white]}\n"
    "  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}\n"
    "[rooms/north.yaml]\nroom: north\nname: North room\nkind: bedroom\nlevel: one\ncomplete: true\n"
    "[boxes/north.yaml]\nroom: north\nboxes:\n  K1: {devices: {q1: alarm}, makeup: pigtailed}\n"
)
PASSAGE = (
    f"{CIRCUIT}{MORE}"
    "[rooms/hall.yaml]\nroom: hall\nname: Hall\nkind: hall\nlevel: one\ncomplete: true\n"
    "things: [{what: door, wall: north, to: north}]\n"
    "[boxes/hall.yaml]\nroom: hall\nboxes:\n  K2: {devices: {q1: %s}, makeup: end-of-run}\n"
)


def test_alarms_without_a_signal_wire_do_not_sound_together(says: Callable) -> None:
    told = ALARMS + PASSAGE % "alarm"
    assert len(says("smoke-alarms-not-interconnected", told).found) == 2
    wireless = told.replace("white]}", "white], marks: [wireless]}")
    assert says("smoke-alarms-not-interconnected", wireless).found == []


def test_an_alarm_hangs_outside_the_room_one_sleeps_in(says: Callable) -> None:
    assert says("smoke-alarm-missing", ALARMS + PASSAGE % "alarm").found == []
    assert says("smoke-alarm-missing", ALARMS + PASSAGE % "duplex").found == ["rooms/north.yaml:1"]
    no_door = (PASSAGE % "alarm").replace(", to: north", "")
    assert "which room north opens to" in says("smoke-alarm-missing", ALARMS + no_door).needs


@pytest.mark.parametrize(("outline", "found"), [
    ("[[0 ft, 0 ft], [9 ft, 0 ft], [9 ft, 9 ft], [6 ft, 9 ft], [6 ft, 3 ft], [0 ft, 3 ft]]", True),
    ("[[0 ft, 0 ft], [9 ft, 0 ft], [9 ft, 3 ft], [0 ft, 3 ft]]", False),
    ("[[0 ft, 0 ft], [9 ft, 0 ft], [9 ft, 9 ft], [0 ft, 9 ft]]", False),
])  # fmt: skip
def test_a_hall_is_as_long_as_its_way_around_the_corner(outline: str, found: bool, says: Callable) -> None:
    record = f"[rooms/hall.yaml]\nroom: hall\nname: Hall\nkind: hall\ncomplete: true\noutline: {outline}\n"
    assert bool(says("hallway-without-receptacle", record).found) is found


def test_a_washer_in_a_closet_asks_for_the_laundrys_circuit(says: Callable) -> None:
    record = (
        f"{KINDS}{CIRCUIT}[rooms/nook.yaml]\nroom: nook\nname: Nook\nkind: closet\n"
        "things: [{what: washer, wall: north}]\n"
        "[boxes/nook.yaml]\nroom: nook\nboxes:\n  K1: {devices: {r1: duplex}, makeup: end-of-run}\n"
    )
    assert says("laundry-circuit-missing", record).found == ["rooms/nook.yaml:1"]


def test_a_panel_without_a_main_that_nobody_says_is_fed_is_not_passed(says: Callable) -> None:
    main = "[panels/main.yaml]\npanel: main\nrating: 100 A\nmain: 100 A\nspaces: 2\nfed_by: service\n"
    attic = "[panels/attic.yaml]\npanel: attic\nrating: 60 A\nmain: none\nspaces: 2\n"
    assert says("panel-guarded-too-high", main + attic).needs == ["which breaker feeds panel attic"]


def test_a_dryers_outlet_of_which_the_face_is_not_told_is_not_passed(says: Callable) -> None:
    record = (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers: {2+4: {rating: 30 A, feeds: dryer}}\n"
        "[circuits/dryer.yaml]\ncircuit: dryer\nname: Dryer\n"
        "loads: [{id: dry, is: dryer, draws: 5 kW, volts: 240 V, plugged: D1.r1}]\n"
        "runs: [{id: b1, cable: 10/3 NM-B, from: main, to: D1}]\n"
        "[rooms/back.yaml]\nroom: back\nname: Back\nkind: utility\n"
        "[boxes/back.yaml]\nroom: back\nboxes:\n  D1: {devices: {r1: outlet}, makeup: unknown}\n"
        "[devices/all.yaml]\ndevices:\n  outlet: {is: receptacle, rating: 30 A}\n"
    )
    assert says("frame-on-neutral", record).needs == ["the face of D1.r1"]


@pytest.mark.parametrize(("width", "found"), [("36 in", True), ("9 ft", False)])
def test_a_door_for_vehicles_is_no_way_out(width: str, found: bool, says: Callable) -> None:
    record = (
        "[rooms/garage.yaml]\nroom: garage\nname: Garage\nkind: garage\n"
        f"things: [{{what: door, wall: north, along: 0 ft, width: {width}, to: drive}}]\n"
        "[rooms/drive.yaml]\nroom: drive\nname: Drive\nkind: outdoors\ncomplete: true\n"
    )
    assert bool(says("entrance-without-light", record).found) is found


@pytest.mark.parametrize(
    ("rule", "needs"),
    [
        ("electrode-missing", "what electrodes the service has"),
        ("conductor-too-small-for-feeder", "the size of the service conductors"),
        (
            "breaker-interrupts-too-little",
            "the fault current at the service (fault_level, or transformer and drop)",
        ),
        ("mixed-gauge", "the cables of circuit c"),
        ("panel-in-wrong-room", "in which room panel main is"),
        ("panel-guarded-too-high", "the rating of panel main"),
        ("service-too-small", "the rating of the service"),
        ("general-circuits-few", "the floor area, by outside dimensions"),
    ],
)
def test_a_bare_list_of_breakers_passes_nothing_of_the_service(rule: str, needs: str, says: Callable) -> None:
    record = (
        '[panels/main.yaml]\npanel: main\nspaces: 1\nbreakers: {1: {rating: 20 A, feeds: c, says: "All"}}\n'
        "[circuits/c.yaml]\ncircuit: c\nname: C\nserves: [den]\n"
    )
    assert needs in says(rule, record).needs


@pytest.mark.parametrize(
    ("amps", "face"), [("50 A", "14-50R, rating: 50 A"), ("15 A", "5-20R, rating: 20 A")]
)
def test_a_load_for_which_the_code_sets_no_limit_asks_for_no_fact(
    amps: str, face: str, says: Callable
) -> None:
    record = (
        f"[devices/all.yaml]\ndevices:\n  outlet: {{is: receptacle, face: {face}}}\n"
        f"[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers: {{1+3: {{rating: {amps}, feeds: c, says: Den}}}}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 6/3 NM-B, from: main, to: K1}\n"
        "  - {id: a2, cable: 6/3 NM-B, from: K1, to: K2}\n"
        "loads: [{id: kiln, is: tool, draws: 900 W, plugged: K1.r1}]\n"
        "[boxes/den.yaml]\nroom: den\nboxes:\n"
        "  K1: {devices: {r1: outlet}, makeup: {word: pigtailed, takes: black}}\n"
        "  K2: {devices: {r1: outlet}, makeup: {word: end-of-run, takes: black}}\n"
    )
    record = record.replace(", takes: black", "") if "14-50R" in face else record
    assert says("one-cord-load-too-large", record).needs == []
