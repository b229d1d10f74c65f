"""What a room must have, by what is in it and whether it has power."""

from collections.abc import Callable

import pytest

PANEL = (
    "[panels/main.yaml]\npanel: main\nspaces: 2\nbreakers:\n"
    "  1: {rating: 20 A, guards: [gfci, afci], feeds: c, says: C}\n  2: blank\n"
)
CIRCUIT = (
    "[circuits/c.yaml]\ncircuit: c\nname: C\npurpose: %s\n%sruns:\n"
    "  - {id: a1, cable: 12/2 NM-B, from: main, to: K1}\n"
)
ROOM = "[rooms/one.yaml]\nroom: one\nname: One\nkind: %s\ncomplete: true\n%s"
BOX = "[boxes/one.yaml]\nroom: one\nboxes:\n  K1: {%sdevices: {%s}, makeup: %s}\n"
PLUGGED = "loads: [{id: s, is: sump-pump, plugged: K1.r1}]\n"


def test_the_receptacle_of_a_pump_is_not_the_one_a_basement_must_have(says: Callable) -> None:
    record = (
        PANEL
        + CIRCUIT % ("general", PLUGGED)
        + ROOM % ("basement", "")
        + BOX % ("", "r1: single", "end-of-run")
    )
    assert says("basement-receptacle-missing", record).found == ["rooms/one.yaml:1"]
    assert says("basement-receptacle-missing", record.replace(PLUGGED, "")).found == []


BUILDING = "[house.yaml]\nhouse: Example\nreference: nec-2023\nbuildings: [{id: shed, detached: %s}]\n"
DEN = "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {devices: {r1: duplex}, makeup: end-of-run}\n"


@pytest.mark.parametrize("rule", ["garage-circuit-missing", "bay-without-receptacle"])
def test_a_detached_garage_without_power_needs_no_receptacle(says: Callable, rule: str) -> None:
    garage = ROOM % ("garage", "building: shed\nbays: 1\n")
    apart = PANEL + CIRCUIT % ("general", "") + BUILDING % "true" + garage + DEN
    said = says(rule, apart)
    assert (said.found, said.needs) == ([], [])
    assert says(rule, apart.replace("complete: true\n", "")).needs == ["whether one has power"]
    assert says(rule, apart.replace("detached: true", "detached: false")).found == ["rooms/one.yaml:1"]


@pytest.mark.parametrize(("edition", "device", "found"), [
    ("nec-2014", "f1: lamp", 1), ("nec-2014", "r1: duplex", 0), ("nec-2017", "r1: duplex", 1), ("nec-2005", "f1: lamp", 0),
])  # fmt: skip
def test_a_garage_has_one_receptacle_and_later_one_a_bay(
    says: Callable, edition: str, device: str, found: int
) -> None:
    garage = ROOM % ("garage", f"bays: 2\nbuilt_to: {edition}\n")
    record = PANEL + CIRCUIT % ("garage", "") + garage
    record += BOX % ("at: {wall: north, along: 1 ft, up: 4 ft}, ", device, "end-of-run")
    assert len(says("bay-without-receptacle", record).found) == found


COUNTER = (
    "outline: [[0 ft, 0 ft], [12 ft, 0 ft], [12 ft, 9 ft], [0 ft, 9 ft]]\nwalls: [north, east, south, west]\n"
    "things: [{what: counter, wall: north, along: 1 ft, width: 6 ft}]\n"
)


@pytest.mark.parametrize(
    ("kind", "purpose", "at", "found"),
    [
        ("kitchen", "general", "{wall: north, along: 3 ft, up: 44 in}", 1),
        ("kitchen", "general", "{wall: east, along: 3 ft, up: 16 in}", 1),
        ("dining", "lighting", "{wall: east, along: 3 ft, up: 16 in}", 1),
        ("kitchen", "general", "{wall: north, along: 3 ft, up: 18 in}", 0),
        ("kitchen", "general", "{wall: north, along: 9 ft, up: 84 in}", 0),
        ("kitchen", "appliance", "{wall: north, along: 3 ft, up: 44 in}", 0),
        ("kitchen", "small-appliance", "{wall: north, along: 3 ft, up: 44 in}", 0),
        ("living", "general", "{wall: east, along: 3 ft, up: 16 in}", 0),
    ],
)
def test_kitchen_receptacles_belong_on_the_small_appliance_circuits(
    says: Callable, kind: str, purpose: str, at: str, found: int
) -> None:
    record = PANEL + CIRCUIT % (purpose, "") + ROOM % (kind, COUNTER)
    record += BOX % (f"at: {at}, ", "r1: duplex", "end-of-run")
    assert len(says("kitchen-receptacle-on-other-circuit", record).found) == found


def test_a_refrigerator_has_a_small_appliance_circuit_or_one_of_its_own(says: Callable) -> None:
    cold = PLUGGED.replace("sump-pump", "refrigerator")
    record = PANEL + CIRCUIT % ("general", cold) + ROOM % ("kitchen", COUNTER)
    record += BOX % ("at: {wall: east, along: 3 ft, up: 16 in}, ", "r1: single", "end-of-run")
    assert says("kitchen-receptacle-on-other-circuit", record).found == []
    shared = record.replace("to: K1}\n", "to: K1}\n  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2}\n")
    shared = shared.replace("end-of-run", "pigtailed")
    shared += "[boxes/den.yaml]\nroom: den\nboxes:\n  K2: {devices: {r1: duplex}, makeup: end-of-run}\n"
    assert len(says("kitchen-receptacle-on-other-circuit", shared).found) == 1


@pytest.mark.parametrize(("load", "strays"), [("dishwasher", 1), ("refrigerator", 0)])
def test_a_dishwasher_strays_onto_a_small_appliance_circuit_and_a_refrigerator_does_not(
    says: Callable, load: str, strays: int
) -> None:
    record = (
        PANEL + CIRCUIT % ("small-appliance", PLUGGED.replace("sump-pump", load)) + ROOM % ("kitchen", "")
    )
    record += BOX % ("", "r1: single", "end-of-run")
    assert len(says("circuit-strays-from-purpose", record).found) == strays


@pytest.mark.parametrize(("edition", "kind", "strays"), [
    ("nec-2014", "den", 0), ("nec-2017", "den", 1), ("nec-2017", "outdoors", 0), ("nec-2017", "garage", 0),
])  # fmt: skip
def test_a_garage_circuit_serves_the_garage_and_outdoors_alone(
    says: Callable, edition: str, kind: str, strays: int
) -> None:
    record = PANEL + CIRCUIT % ("garage", f"built_to: {edition}\n") + ROOM % (kind, "")
    record += BOX % ("", "r1: duplex", "end-of-run")
    assert len(says("circuit-strays-from-purpose", record).found) == strays


FAN = "[devices/fan.yaml]\ndevices:\n  fan: {is: fan, canopy: none, leads: [18 AWG black%s, 18 AWG white, 18 AWG green]}\n"


def test_a_fan_without_a_lamp_is_no_light(says: Callable) -> None:
    bath = ROOM % ("utility", "") + BOX % ("", "f1: fan", "end-of-run")
    record = PANEL + CIRCUIT % ("lighting", "") + bath
    assert says("lighting-outlet-missing", record + FAN % "").found == ["rooms/one.yaml:1"]
    told = record.replace(
        "makeup: end-of-run", "joints: [{join: [a1.black, f1.black, f1.blue], by: lever-3}]"
    )
    assert says("lighting-outlet-missing", told + FAN % ", 18 AWG blue").found == []


def test_a_bare_attic_may_need_no_light(says: Callable) -> None:
    attic = ROOM % ("attic", "")
    assert "whether anything is stored or serviced in one" in says("lighting-outlet-missing", attic).needs
    furnace = ROOM % ("attic", "things: [{what: furnace, wall: north}]\n")
    assert says("lighting-outlet-missing", furnace).found == ["rooms/one.yaml:1"]


def test_a_stair_outdoors_needs_no_pair_of_switches(says: Callable) -> None:
    text = (
        "[house.yaml]\nhouse: Example\nreference: nec-2023\nlevels: [{id: a, name: A}, {id: b, name: B}]\n"
        "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\nlevel: b\n"
        "[rooms/one.yaml]\nroom: one\nname: One\nkind: %s\nlevel: a\nstairs: {risers: 8, to: den}\n"
    )
    assert says("stair-switch-missing", text % "hall").found == ["rooms/one.yaml:1"]
    assert says("stair-switch-missing", text % "deck").found == []


DECK = (
    "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n"
    "[rooms/one.yaml]\nroom: one\nname: One\nkind: deck\nbuilt_to: %s\ncomplete: true\n"
    "outline: [[0 ft, 0 ft], [%s, 0 ft], [%s, 4 ft], [0 ft, 4 ft]]\nwalls: [north, east, south, west]\n"
    "things: [{what: door, wall: north, to: %s}]\n"
)


@pytest.mark.parametrize(("edition", "wide", "to", "found"), [
    ("nec-2008", "4 ft", "den", 0), ("nec-2008", "5 ft", "den", 1), ("nec-2011", "4 ft", "den", 1),
    ("nec-2011", "4 ft", "one", 0),
])  # fmt: skip
def test_a_deck_entered_from_inside_has_a_receptacle(
    says: Callable, edition: str, wide: str, to: str, found: int
) -> None:
    said = says("deck-without-receptacle", DECK % (edition, wide, wide, to))
    assert (len(said.found), said.needs) == (found, [])


def test_a_deck_to_which_no_door_is_recorded_may_need_a_receptacle(says: Callable) -> None:
    bare = (DECK % ("nec-2011", "4 ft", "4 ft", "den")).replace("{what: door, wall: north, to: den}", "")
    assert says("deck-without-receptacle", bare).needs == ["whether a door of the house leads to one"]


RACEWAY = "{raceway: 1 in EMT, wires: [%s black, %s red, %s blue, %s green], insulation: THHN}"


@pytest.mark.parametrize(("size", "in_panel", "in_box", "found"), [
    ("4 AWG", "", "", 1), ("4 AWG", "blue: white", "f1.blue: white", 0),
    ("4 AWG", "blue: white", "", 1), ("6 AWG", "blue: white", "f1.blue: white", 1),
])  # fmt: skip
def test_a_large_wire_marked_white_at_its_ends_is_a_neutral(
    says: Callable, size: str, in_panel: str, in_box: str, found: int
) -> None:
    record = (
        "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n"
        f"  1+3: {{rating: 50 A, feeds: up, says: R, lands: {{blue: neutral-bar/1}}, marked: {{{in_panel}}}}}\n"
        "[circuits/up.yaml]\ncircuit: up\nname: Range\npurpose: range\nruns:\n"
        f"  - {{id: f1, cable: {RACEWAY.replace('%s', size)}, from: main, to: K1}}\n"
        f"[boxes/den.yaml]\nroom: den\nboxes:\n  K1:\n    devices: {{r1: range}}\n    marked: {{{in_box}}}\n"
        "    terminals: {r1.x: f1.black, r1.y: f1.red, r1.w: f1.blue, r1.g: f1.green}\n"
        "[devices/range.yaml]\ndevices:\n  range: {is: receptacle, face: 14-50R}\n"
    )
    assert len(says("colour-against-role", record).found) == found


KNOBS = (
    "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n  1: {rating: 15 A, feeds: c, says: C}\n"
    "[circuits/c.yaml]\ncircuit: c\nname: C\nbuilt_to: %s\nruns:\n"
    "  - {id: a1, cable: {open: knob-and-tube, wires: [14 AWG a, 14 AWG b]}, from: main, to: K1}\n"
    "  - {id: a2, cable: 14/2 NM-B, from: K1, to: K2}\n"
    "  - {id: g1, cable: {open: knob-and-tube, wires: [14 AWG bare]}, from: main, to: K1}\n"
    "[boxes/den.yaml]\nroom: den\nboxes:\n  K1:\n    joints:\n"
    "      - {join: [a1.a, a2.black], by: lever-3}\n      - {join: [a1.b, a2.white], by: lever-3}\n%s"
    "  K2: {devices: {r1: duplex}, makeup: end-of-run}\n"
)
JOINED, LOOSE = "      - {join: [g1.bare, a2.bare], by: lever-3}\n", "    capped: [g1.bare, a2.bare]\n"


@pytest.mark.parametrize(("edition", "ground", "found"), [
    ("nec-1971", LOOSE, 1), ("nec-1971", JOINED, 0), ("nec-1956", LOOSE, 0),
])  # fmt: skip
def test_old_open_wiring_is_extended_with_a_ground(
    says: Callable, edition: str, ground: str, found: int
) -> None:
    assert len(says("knob-and-tube-extended", KNOBS % (edition, ground)).found) == found
