"""The rules of boxes, metals and places beyond their own examples."""

from collections.abc import Callable

import pytest

RUN = "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {{id: a1, cable: {cable}, from: {start}, to: K1{more}}}\n"


def box(told: str, cable: str = "14/2 NM-B", start: str = "unknown", more: str = "", kinds: str = "") -> str:
    run = RUN.format(cable=cable, start=start, more=more)
    devices = f"[devices/more.yaml]\n{kinds}\n" if kinds else ""
    return f"{run}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{{told}}}\n{devices}"


SHALLOW = "box-too-shallow"
TIMER = "devices: {deep: {is: timer, depth: 2 in}, flat: {is: timer, depth: 1 in}}"


@pytest.mark.parametrize(
    ("size", "device", "cable", "faults"),
    [
        ("depth: 2-1/4 in", "deep", "14/2 NM-B", 0),
        ("depth: 2-3/16 in", "deep", "14/2 NM-B", 1),
        ("depth: 1-1/8 in", "flat", "14/2 NM-B", 0),
        ("depth: 1-1/8 in", "flat", "12/2 NM-B", 1),
        ("depth: 1-3/16 in", "flat", "12/2 NM-B", 0),
        ("standard: 3 x 2 x 2-1/2 device", "deep", "12/2 NM-B", 0),
        ("standard: 3 x 2 x 2 device", "deep", "12/2 NM-B", 1),
    ],
)
def test_a_box_is_deep_enough_for_its_wire_and_its_deepest_device(
    size: str, device: str, cable: str, faults: int, says: Callable
) -> None:
    told = box(f"size: {{{size}}}, devices: {{s1: {device}}}, capped: [a1]", cable, kinds=TIMER)
    said = says(SHALLOW, told)
    assert (len(said.found), said.needs) == (faults, [])


def test_a_cover_of_unknown_depth_on_a_shallow_box_leaves_it_open(says: Callable) -> None:
    size = "size: {standard: 4 x 1-1/2 square, of: steel, adds: [{what: raised cover, volume: 5 in3}]}"
    said = says(SHALLOW, box(f"{size}, devices: {{s1: deep}}, capped: [a1]", kinds=TIMER))
    assert (said.found, said.needs) == ([], ["how deep box K1 is with its raised cover"])


def test_a_device_of_unknown_depth_is_asked_for(says: Callable) -> None:
    said = says(SHALLOW, box("size: {depth: 3 in}, devices: {s1: switch}, capped: [a1]"))
    assert (said.found, said.needs) == ([], ["how deep K1.s1 is"])


def test_a_box_whose_size_is_unknown_is_asked_for_its_depth(says: Callable) -> None:
    inside = "devices: {s1: flat}, capped: [a1]"
    said = says(SHALLOW, box(f"size: unknown, {inside}", kinds=TIMER))
    assert (said.found, said.needs) == ([], ["how deep box K1 is"])
    assert says(SHALLOW, box(f"size: unknown, depth: 1 in, {inside}", "12/2 NM-B", kinds=TIMER)).found
    assert says(SHALLOW, box(f"size: none, {inside}", kinds=TIMER)).needs == []


def test_a_box_too_shallow_for_its_wire_is_so_whatever_the_device(says: Callable) -> None:
    told = box("size: {depth: 1 in}, devices: {s1: switch}, capped: [a1]", "12/2 NM-B")
    assert says(SHALLOW, told).found == ["boxes/den.yaml:3"]


LAMP = "luminaire-on-device-box"
HEAVY = (
    "devices: {sconce: {is: luminaire, canopy: domed, weight: 3 kg}, small: {is: luminaire, weight: 6 lb}}"
)
WALL = "at: {wall: north, along: 3 ft, up: 6 ft}, size: {gangs: 1}"


def test_a_light_luminaire_may_be_on_a_device_box_in_a_wall_and_a_heavy_one_not(says: Callable) -> None:
    def found(device: str) -> int:
        return len(says(LAMP, box(f"{WALL}, devices: {{f1: {device}}}, capped: [a1]", kinds=HEAVY)).found)

    assert found("small") == 0
    assert found("sconce") == 1


def test_the_weight_of_a_luminaire_in_a_wall_is_asked_for(says: Callable) -> None:
    said = says(LAMP, box(f"{WALL}, devices: {{f1: lamp}}, capped: [a1]"))
    assert said.needs == ["the weight of K1.f1"]


def test_a_fan_in_its_own_housing_hangs_from_no_box(says: Callable) -> None:
    kinds = "devices: {exhaust: {is: fan, canopy: none}}"
    said = says("fan-on-ordinary-box", box("devices: {f1: exhaust}, capped: [a1]", kinds=kinds))
    assert (said.found, said.needs) == ([], [])


METAL = "aluminium-on-copper-terminal"


def test_a_device_marked_for_aluminium_takes_it(says: Callable) -> None:
    kinds = "devices: {marked: {is: receptacle, face: 5-15R, marks: [aluminium-rated]}}"
    told = box("devices: {r1: marked}, makeup: end-of-run", "12/2 NM aluminium", kinds=kinds)
    assert says(METAL, told).found == []


def test_copper_needs_no_word_on_metals(says: Callable) -> None:
    said = says(METAL, box("devices: {r1: duplex}, makeup: end-of-run"))
    assert (said.found, said.needs) == ([], [])


def test_aluminium_in_a_connector_for_copper_is_told_by_this_rule_alone(says: Callable) -> None:
    joint = "joints: [{join: [a1.black, a1.white], by: lever-3}], capped: [a1.bare]"
    told = box(joint, "12/2 NM aluminium")
    assert says(METAL, told).found == ["boxes/den.yaml:3"]
    assert says("connector-overfilled", told).found == []


PLACE = "cable-in-wrong-place"


def way(
    cable: str,
    more: str = "",
    kind: str = "crawlspace",
    start: str = "unknown",
    den: str = "kind: den",
    exposed: str = "",
) -> str:
    under = f"[rooms/under.yaml]\nroom: under\nname: Under\nkind: {kind}\n{exposed}"
    other = "[boxes/under.yaml]\nroom: under\nboxes:\n  J1: {}\n"
    here = f"[rooms/den.yaml]\nroom: den\nname: Den\n{den}\n"
    return box("capped: [a1]", cable, start, more) + under + other + here


@pytest.mark.parametrize(
    ("cable", "exposed", "faults"),
    [
        ("14/2 NM-B", "exposed: dry\n", 0),
        ("14/2 NM-B", "exposed: damp\n", 1),
        ("14/2 NMC-B", "exposed: damp\n", 0),
        ("14/2 NMC-B", "exposed: wet\n", 1),
        ("14/2 UF-B", "exposed: wet\n", 0),
        ("{raceway: 1/2 in PVC, wires: [14 AWG black, 14 AWG white], insulation: THWN}", "exposed: wet\n", 0),
        ("{raceway: 1/2 in PVC, wires: [14 AWG black, 14 AWG white], insulation: THHN}", "exposed: wet\n", 1),
        (
            "{raceway: 1/2 in PVC, wires: [14 AWG black, 14 AWG white], insulation: THHN}",
            "exposed: damp\n",
            0,
        ),
    ],
)
def test_each_cable_has_places_it_may_go_through(
    cable: str, exposed: str, faults: int, says: Callable
) -> None:
    said = says(PLACE, way(cable, ", through: [under]", exposed=exposed))
    assert (len(said.found), said.needs) == (faults, [])


def test_a_crawlspace_of_which_nobody_says_that_it_is_dry_is_not_passed(says: Callable) -> None:
    assert says(PLACE, way("14/2 NM-B", ", through: [under]")).needs == ["whether under is dry, damp or wet"]
    assert says(PLACE, way("14/2 UF-B", ", through: [under]")).needs == []


def test_a_cable_into_the_back_of_one_outdoor_box_is_inside_and_one_between_two_may_not_be(
    says: Callable,
) -> None:
    one = way("14/2 NM-B", start="J1", den="kind: outdoors", kind="den")
    both = way("14/2 NM-B", start="J1", den="kind: outdoors", kind="outdoors")
    assert (says(PLACE, one).found, says(PLACE, one).needs) == ([], [])
    assert says(PLACE, both).needs == ["which way run a1 goes between two outdoor boxes"]


def test_a_cable_whose_marking_must_say_is_asked_for(says: Callable) -> None:
    said = says(PLACE, way("14/2 MC", ", buried: 24 in"))
    assert (said.found, said.needs) == ([], ["whether the MC of run a1 is marked for buried places"])
