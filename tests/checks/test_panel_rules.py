"""Panels, service and grounding: what each rule leaves alone, what it asks for, what it finds besides its examples."""

from collections.abc import Callable

import pytest

BONDED = "[panels/main.yaml]\npanel: main\nspaces: 8\nfed_by: service\nbonded: true\n"


def shed(
    cable: str = "6/3 UF-B no ground",
    *,
    bonded: str = "true",
    built_to: str = "nec-1999",
    building: str = "detached: true, metal_path: none",
) -> str:
    """A panel in a building of its own, behind a feeder."""
    return (
        "[house.yaml]\nhouse: H\nreference: nec-2023\n"
        f"buildings:\n  - {{id: shed, {building}}}\n"
        "[rooms/shed.yaml]\nroom: shed\nname: Shed\nkind: workshop\nbuilding: shed\n"
        f"{BONDED}breakers: {{1+3: {{rating: 60 A, feeds: f}}}}\n"
        f"[panels/shed.yaml]\npanel: shed\nspaces: 6\nfed_by: f\nat: {{room: shed}}\nbonded: {bonded}\n"
        f"[circuits/f.yaml]\ncircuit: f\nname: Feeder\npurpose: feeder\nbuilt_to: {built_to}\n"
        f"runs:\n  - {{id: f1, cable: {cable}, from: main, to: shed}}\n"
    )


BOTH = pytest.mark.parametrize("rule", ["subpanel-neutral-bonded", "feeder-without-ground"])


@BOTH
def test_an_old_feeder_to_another_building_may_ground_by_its_neutral(rule: str, says: Callable) -> None:
    said = says(rule, shed())
    assert (said.found, said.needs) == ([], [])


@BOTH
@pytest.mark.parametrize(
    "told",
    [
        {"built_to": "nec-2008"},
        {"building": "detached: true, metal_path: water pipe"},
        {"building": "detached: false, metal_path: none"},
    ],
)
def test_no_newer_feeder_and_none_beside_a_metal_path_may(
    rule: str, told: dict[str, str], says: Callable
) -> None:
    assert len(says(rule, shed(**told)).found) == 1


@BOTH
@pytest.mark.parametrize(
    ("told", "asked"),
    [
        ({"building": "detached: true"}, "whether a metal path joins building shed to the house"),
        ({"building": "metal_path: none"}, "whether building shed stands apart"),
    ],
)
def test_what_an_old_feeder_hangs_on_is_asked_for(
    rule: str, told: dict[str, str], asked: str, says: Callable
) -> None:
    said = says(rule, shed(**told))
    assert said.found == []
    assert asked in said.needs


def test_an_old_panel_behind_a_ground_may_not_be_bonded(says: Callable) -> None:
    assert says("subpanel-neutral-bonded", shed("6/3 UF-B")).found == ["panels/shed.yaml:1"]


def test_an_old_feeder_without_a_ground_whose_panel_is_not_bonded_grounds_nothing(says: Callable) -> None:
    assert says("feeder-without-ground", shed(bonded="false")).found == ["circuits/f.yaml:6"]
    assert says("feeder-without-ground", shed(bonded="unknown")).needs == [
        "whether neutral and ground are joined in panel shed"
    ]


def test_a_panel_of_which_nobody_says_what_feeds_it_is_neither_the_services_nor_a_subpanel(
    says: Callable,
) -> None:
    text = f"{BONDED}[panels/odd.yaml]\npanel: odd\nspaces: 4\nbonded: true\n"
    assert says("subpanel-neutral-bonded", text).needs == ["what feeds panel odd"]
    assert says("service-bond-missing", text).needs == []


def test_a_house_without_a_panel_at_the_service_is_asked_for_it(says: Callable) -> None:
    two = "[panels/a.yaml]\npanel: a\nspaces: 4\n[panels/b.yaml]\npanel: b\nspaces: 4\n"
    assert says("service-bond-missing", two).needs == ["which panel the service feeds"]


def neutrals(*breakers: str) -> str:
    """A panel with these breakers, and the circuits c and d from it."""
    listed = "".join(f"  {each}\n" for each in breakers)
    return (
        f"[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n{listed}"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: c1, cable: 14/3 NM-B, from: main, to: none}\n"
        "[circuits/d.yaml]\ncircuit: d\nname: D\nruns:\n  - {id: d1, cable: 14/2 NM-B, from: main, to: none}\n"
    )


@pytest.mark.parametrize(
    ("breakers", "found"),
    [
        (("1: {feeds: c.black, lands: {white: neutral-bar/2}}", "3: {feeds: c.red, lands: {white: neutral-bar/2}}"), 0),
        (("1: {feeds: c, lands: {white: neutral-bar/2, bare: ground-bar/4}}",
          "2: {feeds: d, lands: {white: neutral-bar/3, bare: ground-bar/4}}"), 0),
        (("1: {feeds: c, lands: {white: neutral-bar/2}}", "2: {feeds: d, lands: {white: main/neutral-bar/2}}"), 1),
        (("1: {feeds: c, lands: {white: neutral-bar/2}}",
          "2: {feeds: d, lands: {white: neutral-bar/3, bare: neutral-bar/2}}"), 1),
        (("1: {feeds: c, lands: {white: neutral-bar}}", "2: {feeds: d, lands: {white: neutral-bar}}"), 0),
    ],
)  # fmt: skip
def test_only_a_neutral_wants_its_hole_for_itself(
    breakers: tuple[str, ...], found: int, says: Callable
) -> None:
    assert len(says("two-neutrals-one-hole", neutrals(*breakers)).found) == found


def test_a_neutral_under_a_guarded_breaker_or_used_as_a_hot_is_in_no_hole(says: Callable) -> None:
    guarded = neutrals("1: {guards: [gfci], feeds: c}", "2+4: {guards: [], feeds: d, marked: {white: black}}")
    assert says("two-neutrals-one-hole", guarded).needs == []
    unknown = neutrals("1: {feeds: c}", "2+4: {feeds: d}")
    assert says("two-neutrals-one-hole", unknown).needs == [
        "the hole of the neutral bar that each neutral is in: main/1"
    ]


DOOR = (
    "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n"
    "[rooms/porch.yaml]\nroom: porch\nname: Front porch\nkind: porch\n"
    "[rooms/yard.yaml]\nroom: yard\nname: Yard\nkind: outdoors\n"
    "[rooms/bath.yaml]\nroom: bath\nname: Bath\nkind: bathroom\n"
)


def door(says_: str, circuit: str = "serves: [yard]\n") -> str:
    return (
        f"{DOOR}[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers: {{1: {{feeds: c, says: {says_}}}}}\n"
        f"[circuits/c.yaml]\ncircuit: c\nname: Number one\n{circuit}"
    )


@pytest.mark.parametrize(
    ("entry", "circuit"),
    [
        ("Porch light", "serves: [yard]\n"),  # one calls it a porch, another the yard
        ("Den and yard", "serves: [yard]\n"),  # it names what it feeds, and more
        ("Attic fan", "serves: [den]\n"),  # a room this house does not have
        ("Number one", "serves: [den]\n"),
        ("Old sign", "serves: [den]\n"),
        ("Oven", "serves: [den]\nloads:\n  - {id: a, is: range}\n"),
    ],
)
def test_an_entry_is_not_wrong_while_it_may_be_right(entry: str, circuit: str, says: Callable) -> None:
    said = says("directory-entry-wrong", door(entry, circuit))
    assert (said.found, said.needs) == ([], [])


@pytest.mark.parametrize(
    ("entry", "circuit"),
    [
        ("Bath", "serves: [den, yard]\n"),
        ("Den by the east wall", "serves: [yard]\n"),
        ("Sump pump", "serves: [den]\nloads:\n  - {id: a, is: range}\n"),
        ("Dishwasher", "serves: [den]\nloads:\n  - {id: a, is: range}\n"),
    ],
)
def test_an_entry_is_wrong_when_nothing_it_names_is_fed(entry: str, circuit: str, says: Callable) -> None:
    assert says("directory-entry-wrong", door(entry, circuit)).found == ["panels/main.yaml:3"]


@pytest.mark.parametrize(
    ("entry", "circuit", "asked"),
    [
        ("Bath", "", "which rooms circuit c serves"),
        ("Sump pump", "serves: [den]\n", "what circuit c feeds"),
        ("Bath", "runs:\n  - {id: c1, cable: 14/2 NM-B, from: main, to: D1}\n", "how box D1 is made up"),
    ],
)
def test_an_entry_is_not_wrong_where_the_circuit_may_have_more(
    entry: str, circuit: str, asked: str, says: Callable
) -> None:
    said = says(
        "directory-entry-wrong", door(entry, circuit) + "[boxes/den.yaml]\nroom: den\nboxes: {D1: {}}\n"
    )
    assert said.found == []
    assert asked in said.needs


@pytest.mark.parametrize(
    ("entry", "somebody"),
    [
        ("Robin's room", True), ("Mum and Dad", True), ("the girls' bedroom", True), ("Robin’s desk", True),
        ("Dryer's outlet", False), ("Den's lights", False), ("Guest room", False), ("Master bedroom", False),
        ("Lights' switch", False), ("Owner's closet", False),
    ],
)  # fmt: skip
def test_only_somebody_of_the_household_makes_an_entry_personal(
    entry: str, somebody: bool, says: Callable
) -> None:
    found = says("directory-entry-personal", door(f'"{entry}"')).found
    assert found == (["panels/main.yaml:3"] if somebody else [])


@pytest.mark.parametrize("rule", ["directory-entry-personal", "directory-entry-wrong"])
def test_an_entry_that_is_not_recorded_is_asked_for(rule: str, says: Callable) -> None:
    assert says(rule, door("x").replace(", says: x", "")).needs == ["what the door says of main/1"]


def test_a_clear_space_whose_every_side_is_short_is_one_finding(says: Callable) -> None:
    text = "[panels/main.yaml]\npanel: main\nspaces: 8\nclear: {width: 2 ft, depth: 2 ft, height: 5 ft}\n"
    assert says("working-space-short", text).found == ["panels/main.yaml:1"]
