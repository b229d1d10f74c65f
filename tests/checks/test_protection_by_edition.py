"""What guards an outlet is asked as the edition it was built under asked it."""

from collections.abc import Callable

import pytest

PANEL = (
    "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n  1: {rating: 20 A, guards: [], feeds: c, says: C}\n"
    "[circuits/c.yaml]\ncircuit: c\nname: C\npurpose: general\nruns:\n"
    "  - {id: a1, cable: 12/2 NM-B, from: main, to: K1}\n"
)
SQUARE = (
    "outline: [[0 ft, 0 ft], [20 ft, 0 ft], [20 ft, 9 ft], [0 ft, 9 ft]]\nwalls: [north, east, south, west]\n"
)


def told(
    kind: str, edition: str, *more: str, up: str = "40 in", loads: str = "", device: str = "r1: duplex"
) -> str:
    room = f"[rooms/one.yaml]\nroom: one\nname: One\nkind: {kind}\nbuilt_to: {edition}\nfinished: false\n{SQUARE}"
    boxes = (
        f"[boxes/one.yaml]\nroom: one\nboxes:\n  K1:\n    at: {{wall: north, along: 5 ft, up: {up}}}\n"
        f"    devices: {{{device}}}\n    makeup: end-of-run\n"
    )
    circuit = f"{PANEL}built_to: {edition}\n" + (f"loads: [{loads}]\n" if loads else "")
    return circuit + room + "".join(more) + boxes


def test_a_breaker_said_to_guard_by_one_of_its_spaces_is_the_breaker(says: Callable) -> None:
    record = (
        "[panels/main.yaml]\npanel: main\nspaces: 4\n"
        "breakers:\n  2+4: {rating: 20 A, guards: [gfci], feeds: c, says: C}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nguarded_by: main/4\nruns:\n"
        "  - {id: a1, cable: 12/3 NM-B, from: main, to: K1}\n"
        "[rooms/one.yaml]\nroom: one\nname: One\nkind: bathroom\n"
        "[boxes/one.yaml]\nroom: one\nboxes:\n  K1:\n    devices: {r1: duplex}\n"
        "    joints: [{join: [a1.black, r1.brass]}, {join: [a1.white, r1.silver]}, {join: [a1.bare, r1.green]}]\n"
        "    capped: [a1.red]\n"
    )
    said = says("gfci-missing", record)
    assert (said.found, said.needs) == ([], [])
    wrong = says(
        "gfci-missing",
        record.replace("guarded_by: main/4", "guarded_by: main/1").replace("  2+4:", "  1: {}\n  2+4:"),
    )
    assert wrong.found


SINK = "things: [{what: sink, wall: north, along: 6 ft, width: 2 ft}]\n"
KITCHEN = (
    "things:\n  - {what: counter, wall: north, along: 0 ft, width: 18 ft}\n"
    "  - {what: sink, wall: north, along: %s, width: 2 ft}\n"
)


@pytest.mark.parametrize(
    ("record", "asked"),
    [
        (told("garage", "nec-1975"), False),
        (told("garage", "nec-1978"), True),
        (told("garage", "nec-1993", loads="{id: f, is: freezer, plugged: K1.r1.top}"), True),
        (told("garage", "nec-1993", loads="{id: f, is: freezer, plugged: K1.r1.top}, {id: g, is: washer, plugged: K1.r1.bottom}"), False),
        (told("garage", "nec-2008", loads="{id: f, is: freezer, plugged: K1.r1.top}, {id: g, is: washer, plugged: K1.r1.bottom}"), True),
        (told("garage", "nec-2005", up="8 ft"), False),
        (told("garage", "nec-2008", up="8 ft"), True),
        (told("outdoors", "nec-1993", up="9 ft"), False),
        (told("outdoors", "nec-1996", up="9 ft"), True),
        (told("kitchen", "nec-1984", KITCHEN % "6 ft"), False),
        (told("kitchen", "nec-1987", KITCHEN % "6 ft"), True),
        (told("kitchen", "nec-1987", KITCHEN % "14 ft"), False),
        (told("kitchen", "nec-1996", KITCHEN % "14 ft"), True),
        (told("den", "nec-2020", KITCHEN % "14 ft"), False),
        (told("den", "nec-2023", KITCHEN % "14 ft"), True),
        (told("den", "nec-2023", KITCHEN % "14 ft", up="16 in"), False),
        (told("den", "nec-2023", KITCHEN % "14 ft", up="16 in", loads="{id: f, is: refrigerator, plugged: K1.r1.top}"), True),
        (told("workshop", "nec-2023", KITCHEN % "14 ft"), False),
        (told("pantry", "nec-2023", KITCHEN % "14 ft", up="16 in"), True),
        (told("laundry", "nec-2002", SINK), False),
        (told("laundry", "nec-2005", SINK), True),
        (told("den", "nec-2005", SINK), True),
        (told("workshop", "nec-2008", SINK), False),
        (told("workshop", "nec-2011", SINK), True),
        (told("closet", "nec-2014", loads="{id: g, is: washer, plugged: K1.r1.top}"), True),
        (told("closet", "nec-2011", loads="{id: g, is: washer, plugged: K1.r1.top}"), False),
    ],
)  # fmt: skip
def test_a_receptacle_is_guarded_since_its_edition(says: Callable, record: str, asked: bool) -> None:
    said = says("gfci-missing", record)
    assert (len(said.found), said.needs) == (int(asked), [])


def test_what_a_lone_receptacle_in_an_old_garage_is_for_decides(says: Callable) -> None:
    record = told("garage", "nec-1993", device="r1: lone") + (
        "[devices/lone.yaml]\ndevices:\n  lone: {is: receptacle, face: 5-15R, outlets: 1}\n"
    )
    assert says("gfci-missing", record).needs == ["what is plugged into K1.r1"]


def test_an_alarm_system_alone_in_a_cellar_needs_no_guard(says: Callable) -> None:
    record = told("cellar", "nec-2014", device="r1: single", loads="{id: a, is: alarm, plugged: K1.r1}")
    assert says("gfci-missing", record).found == []
    assert says("gfci-missing", record.replace("is: alarm", "is: network")).found != []


@pytest.mark.parametrize(
    ("load", "edition", "asked"),
    [
        ("dishwasher", "nec-2011", 0), ("dishwasher", "nec-2014", 1), ("sump-pump", "nec-2017", 0),
        ("sump-pump", "nec-2020", 1), ("microwave", "nec-2020", 0), ("microwave", "nec-2023", 1),
        ("oven", "nec-2023", 0), ("refrigerator", "nec-2023", 0),
    ],
)  # fmt: skip
def test_an_appliance_is_guarded_wherever_it_is_plugged(
    says: Callable, load: str, edition: str, asked: int
) -> None:
    record = told("den", edition, loads=f"{{id: m, is: {load}, plugged: K1.r1.top}}")
    assert len(says("appliance-without-gfci", record).found) == asked


def test_a_place_that_asks_it_anyway_speaks_alone_of_an_appliance(says: Callable) -> None:
    record = told("kitchen", "nec-2023", loads="{id: m, is: dishwasher, plugged: K1.r1.top}")
    assert says("gfci-missing", record).found != []
    assert says("appliance-without-gfci", record).found == []


def test_an_appliance_of_which_only_the_circuit_is_told_is_not_passed(says: Callable) -> None:
    record = told("den", "nec-2023", loads="{id: m, is: dishwasher}")
    assert says("appliance-without-gfci", record).needs == ["where m is plugged or wired"]
    guarded = record.replace("guards: []", "guards: [gfci]")
    assert says("appliance-without-gfci", guarded).needs == []


UNIT = "[devices/unit.yaml]\ndevices:\n  unit: {is: appliance, volts: 120 V, leads: [12 AWG black, 12 AWG white, 12 AWG green]}\n"
PUMP = "{id: p, is: pump, wired: K1.h1}"
HEAT = "{id: p, is: heat-pump, wired: K1.h1%s}"


@pytest.mark.parametrize(
    ("kind", "edition", "load", "asked", "needs"),
    [
        ("outdoors", "nec-2017", PUMP, 0, 0),
        ("outdoors", "nec-2020", PUMP, 1, 0),
        ("garage", "nec-2020", PUMP, 0, 0),
        ("garage", "nec-2023", PUMP, 1, 0),
        ("outdoors", "nec-2020", HEAT % ", inverter: false", 1, 0),
        ("outdoors", "nec-2020", HEAT % ", inverter: true", 0, 0),
        ("outdoors", "nec-2020", HEAT % "", 0, 1),
        ("outdoors", "nec-2023", HEAT % ", installed: 2024", 0, 0),
        ("outdoors", "nec-2023", HEAT % "", 0, 1),
        ("outdoors", "nec-2026", HEAT % "", 1, 0),
    ],
)
def test_what_is_wired_outdoors_is_guarded_since_its_edition(
    says: Callable, kind: str, edition: str, load: str, asked: int, needs: int
) -> None:
    said = says("outdoor-outlet-without-gfci", told(kind, edition, loads=load, device="h1: unit") + UNIT)
    assert (len(said.found), len(said.needs)) == (asked, needs)


@pytest.mark.parametrize(("kind", "edition", "asked"), [
    ("crawlspace", "nec-2014", 0), ("crawlspace", "nec-2017", 1), ("cellar", "nec-2023", 0),
])  # fmt: skip
def test_a_light_in_a_crawlspace_is_guarded_since_2017(
    says: Callable, kind: str, edition: str, asked: int
) -> None:
    record = told(kind, edition, device="f1: lamp")
    assert len(says("crawlspace-light-without-gfci", record).found) == asked


SAW = "[devices/saw.yaml]\ndevices:\n  saw: {is: receptacle, face: 6-20R, marks: []}\n  plain: {is: receptacle, face: 5-15R, marks: []}\n"


@pytest.mark.parametrize(("kind", "edition", "device", "asked"), [
    ("den", "nec-2014", "r1: saw", 0), ("den", "nec-2017", "r1: saw", 1),
    ("closet", "nec-2017", "r1: plain", 0), ("closet", "nec-2020", "r1: plain", 1), ("den", "nec-2008", "r1: plain", 1),
])  # fmt: skip
def test_shutters_are_asked_of_more_receptacles_with_time(
    says: Callable, kind: str, edition: str, device: str, asked: int
) -> None:
    record = told(kind, edition, device=device) + SAW
    assert len(says("tamper-resistant-missing", record).found) == asked


def test_a_circuit_of_a_panel_behind_a_feeder_is_guarded_against_arcs_too(says: Callable) -> None:
    record = (
        "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n"
        "  1+3: {rating: 60 A, guards: [], feeds: up, says: Upper panel}\n"
        "[panels/sub.yaml]\npanel: sub\nspaces: 4\nfed_by: up\nbreakers:\n"
        "  1: {rating: 15 A, guards: [], feeds: c, says: Den}\n"
        "[circuits/up.yaml]\ncircuit: up\nname: Feeder\npurpose: feeder\nruns:\n"
        "  - {id: f1, cable: 6/3 NM-B, from: main, to: sub}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 14/2 NM-B, from: sub, to: K1}\n"
        "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {devices: {r1: duplex}, makeup: end-of-run}\n"
    )
    assert says("afci-missing", record).found == ["panels/sub.yaml:5"]


def test_what_runs_on_both_legs_is_not_guarded_against_arcs(says: Callable) -> None:
    record = (
        "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n"
        "  1+3: {rating: 20 A, guards: [], feeds: c, says: Den heater}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 12/2 NM-B, from: main, to: K1}\n"
        "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {devices: {h1: heater}, makeup: end-of-run}\n"
        "[devices/heater.yaml]\ndevices:\n  heater: {is: appliance, leads: [12 AWG black, 12 AWG red, 12 AWG green]}\n"
    )
    said = says("afci-missing", record)
    assert (said.found, said.needs) == ([], [])


SWITCHED = (
    "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n  1: {rating: 15 A, feeds: c, says: C}\n"
    "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 14/2 NM-B, from: main, to: K1}\n"
    "  - {id: a2, cable: 14/2 NM-B, from: K1, to: K2}\n"
    "[boxes/one.yaml]\nroom: one\nboxes:\n  K1: {devices: {f1: lamp}, makeup: {feed: a1, loop: a2}}\n"
    "  K2: {devices: {s1: switch}, makeup: {loop: a2}, marked: {a2.white: black}}\n"
)


@pytest.mark.parametrize(("kind", "edition", "asked"), [
    ("garage", "nec-2011", 1), ("garage", "nec-2014", 0), ("cellar", "nec-2023", 0), ("laundry", "nec-2014", 0),
    ("hall", "nec-2014", 0), ("hall", "nec-2017", 1), ("bathroom", "nec-2014", 1), ("den", "nec-2008", 0),
])  # fmt: skip
def test_a_neutral_is_asked_at_the_switches_of_fewer_rooms_with_time(
    says: Callable, kind: str, edition: str, asked: int
) -> None:
    room = f"[rooms/one.yaml]\nroom: one\nname: One\nkind: {kind}\nbuilt_to: {edition}\n"
    assert len(says("neutral-missing-at-switch", room + SWITCHED).found) == asked


@pytest.mark.parametrize(("lit", "asked"), [("garage", 0), ("bathroom", 1)])
def test_the_room_that_a_switch_lights_decides_about_its_neutral(
    says: Callable, lit: str, asked: int
) -> None:
    rooms = "".join(
        f"[rooms/{id_}.yaml]\nroom: {id_}\nname: {id_}\nkind: {kind}\nbuilt_to: nec-2014\n"
        for id_, kind in (("one", lit), ("two", "kitchen"))
    )
    apart = SWITCHED.replace("  K2:", "[boxes/two.yaml]\nroom: two\nboxes:\n  K2:")
    assert len(says("neutral-missing-at-switch", rooms + apart).found) == asked


@pytest.mark.parametrize(("purpose", "needs"), [("general", ["the outlets of circuit c"]), ("heating", [])])
def test_a_two_pole_breaker_may_feed_rooms_on_two_legs(
    says: Callable, purpose: str, needs: list[str]
) -> None:
    record = (
        "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n  1+3: {rating: 20 A, guards: [], feeds: c, says: C}\n"
        f"[circuits/c.yaml]\ncircuit: c\nname: C\npurpose: {purpose}\nserves: [den]\n"
    )
    assert says("afci-missing", record).needs == needs


YARD_LIGHT = (
    "[rooms/hall.yaml]\nroom: hall\nname: Hall\nkind: hall\nbuilt_to: %s\n"
    "[rooms/yard.yaml]\nroom: yard\nname: Yard\nkind: outdoors\n"
    "[devices/all.yaml]\ndevices:\n  switch: {is: switch, ways: 1, rating: 15 A}\n"
    "  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}\n"
    "[boxes/hall.yaml]\nroom: hall\nboxes:\n  K1: {devices: {s1: switch}, makeup: {feed: a1, switched: {s1: a2}}}\n"
    "[boxes/yard.yaml]\nroom: yard\nboxes:\n  K2: {devices: {f1: lamp}, makeup: end-of-run}\n"
)


@pytest.mark.parametrize(("edition", "asked"), [("nec-2011", False), ("nec-2014", True), ("nec-2023", True)])
def test_a_switch_alone_in_a_covered_room_is_guarded_against_arcs_since_2014(
    edition: str, asked: bool, says: Callable
) -> None:
    record = f"{PANEL}  - {{id: a2, cable: 12/2 NM-B, from: K1, to: K2}}\n{YARD_LIGHT % edition}"
    assert bool(says("afci-missing", record).found) is asked
    assert says("afci-missing", record.replace("guards: []", "guards: [afci]")).found == []


@pytest.mark.parametrize(
    ("installed", "recorded", "found", "asks"),
    [
        ("installed: 2026-08, ", "2026-11-01", False, False),
        ("installed: 2025, ", "2026-11-01", False, False),
        ("installed: 2026-09-15, ", "2026-11-01", True, False),
        ("installed: 2027, ", "2027-11-01", True, False),
        ("installed: 2026, ", "2026-11-01", False, True),
        ("installed: unknown, ", "2026-11-01", False, True),
        ("", "2026-11-01", False, True),
        ("", "2026-05-01", False, False),
    ],
)
def test_outdoor_units_are_let_off_by_the_day_they_were_installed(
    installed: str, recorded: str, found: bool, asks: bool, says: Callable
) -> None:
    record = (
        f"[house.yaml]\nhouse: Example\nreference: nec-2023\nrecorded: {recorded}\n"
        "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers: {1+3: {rating: 20 A, guards: [], feeds: c, says: C}}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 12/2 UF-B, from: main, to: K1}\n"
        f"loads: [{{id: unit, is: heat-pump, {installed}draws: 2 kW, volts: 240 V, wired: K1.h1}}]\n"
        "[rooms/yard.yaml]\nroom: yard\nname: Yard\nkind: outdoors\n"
        "[boxes/yard.yaml]\nroom: yard\nboxes:\n  K1: {devices: {h1: unit}, makeup: end-of-run}\n"
        "[devices/all.yaml]\ndevices:\n"
        "  unit: {is: appliance, volts: 240 V, leads: [12 AWG black, 12 AWG red, 12 AWG green]}\n"
    )
    said = says("outdoor-outlet-without-gfci", record)
    assert (bool(said.found), bool(said.needs)) == (found, asks)
