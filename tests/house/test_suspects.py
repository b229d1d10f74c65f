"""Where to look: each behaviour on a small record."""

from collections.abc import Callable

import pytest

from junctionary.house.model import House
from junctionary.house.network import network
from junctionary.house.readings import READINGS
from junctionary.house.suspects import Suspicion, suspects

from .conftest import DEVICES

HouseOf = Callable[[str], House]

CHAIN = f"""\
[panels/main.yaml]
panel: main
spaces: 8
main: 100 A
bonded: true
breakers:
  1: {{rating: 15 A, feeds: den}}
  5: {{rating: 15 A, feeds: hall}}
[circuits/den.yaml]
circuit: den
name: Den
loads:
  - {{id: lamp, is: lighting, plugged: K3.r1.top}}
runs:
  - {{id: d1, cable: 14/2 NM-B, from: main, to: K1}}
  - {{id: d2, cable: 14/2 NM-B, from: K1, to: K2}}
  - {{id: d3, cable: 14/2 NM-B, from: K2, to: K3}}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {{id: h1, cable: 14/2 NM-B, from: main, to: K4}}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
defaults: {{termination: loop, splice: [lever-3]}}
boxes:
  K1: {{devices: {{r1: gfci}}, makeup: {{feed: d1, guarded: [d2]}}, at: {{wall: north, up: 16 in}}}}
  K2: {{devices: {{r1: duplex}}, makeup: pigtailed}}
  K3: {{devices: {{r1: duplex}}, makeup: end-of-run}}
  K4: {{devices: {{r1: duplex}}, makeup: end-of-run}}
[devices/all.yaml]
{DEVICES}"""
PUSHED = CHAIN.replace("makeup: pigtailed", "makeup: feed-through, termination: push-in")
SHARED = CHAIN.replace("{rating: 15 A, feeds: den}", "{rating: 15 A, feeds: den.black}").replace(
    "  5: {rating: 15 A, feeds: hall}",
    "  3: {rating: 15 A, feeds: den.red}\n  5: {rating: 15 A, feeds: hall}",
)


def sought(house: House, dead: list[str], live: list[str] | None = None, **readings: str) -> Suspicion:
    told = {name.replace("_", "."): word for name, word in readings.items()}
    return suspects(house, network(house), dead, live or [], told)


def ids(found: Suspicion) -> list[str]:
    return [each.site.id for each in found.suspects]


def test_the_fault_lies_between_the_last_that_works_and_the_first_that_is_dead(house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN), ["K3"], ["K1", "K2"])
    assert (found.last_live, found.first_dead) == ("K2", "K3")
    assert set(ids(found)) == {"K2/j1", "K2/j2", "d3", "K3.r1.brass-top", "K3.r1.silver-top"}


def test_a_push_in_termination_comes_before_a_sound_splice(house_of: HouseOf) -> None:
    found = sought(house_of(PUSHED), ["K3"], ["K1"])
    first = found.suspects[0].site
    assert first.box == "K2"
    assert first.kind == "push-in termination"
    assert first.weight == 10
    assert first.why[0] == "a push-in termination"


def test_a_recent_change_counts_five_times_and_an_old_one_not(house_of: HouseOf) -> None:
    log = '[log.yaml]\n- {date: 2025-11-02, change: "K2 opened", about: K2}\n'
    later = log + "- {date: 2028-01-01, test: voltage, about: K4.r1, value: 120 V}\n"
    site = {
        name: next(
            each.site for each in sought(house_of(CHAIN + text), ["K3"]).suspects if each.site.id == "K2/j1"
        )
        for name, text in (("recent", log), ("old", later), ("none", ""))
    }
    assert site["recent"].weight == 5 * site["none"].weight
    assert "changed 2025-11-02" in site["recent"].why
    assert site["old"].weight == site["none"].weight


def test_outdoors_counts_as_damp(house_of: HouseOf) -> None:
    outdoors = house_of(CHAIN.replace("kind: den", "kind: outdoors"))
    splice = next(each.site for each in sought(outdoors, ["K3"]).suspects if each.site.id == "K2/j1")
    assert (splice.weight, splice.why) == (4, ("a lever splice", "outdoors or damp"))


def test_resets_come_gfci_first_then_the_breaker(house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN), ["K3", "K2"], ["K4"])
    assert [(each.kind, each.id, each.common) for each in found.resets] == [
        ("gfci", "K1.r1", True),
        ("breaker", "main/1", True),
    ]


def test_what_a_working_point_proves_on_is_not_reset(house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN), ["K3"], ["K1"])
    assert found.resets == ()
    assert not {"K1.r1", "main/1"} & set(ids(found))


def test_a_gfci_device_is_suspect_only_for_both_its_poles(house_of: HouseOf) -> None:
    house = house_of(CHAIN)
    assert "K1.r1" in ids(sought(house, ["K3"], ["K4"]))
    assert "K1.r1" in ids(sought(house, ["K3"], ["K4"], K3="neither"))
    assert "K1.r1" not in ids(sought(house, ["K3"], ["K4"], K3="neutral-only"))


def test_a_reading_narrows_the_search_to_its_conductor(house_of: HouseOf) -> None:
    house = house_of(CHAIN)
    neutral = sought(house, ["K3"], ["K1"], K3="hot-only")
    assert {each.roles for each in neutral.suspects} == {("neutral",)}
    assert "main/1" not in ids(neutral)
    hot = sought(house, ["K3"], ["K1"], K3="nothing")
    assert {each.roles for each in hot.suspects} == {("hot",)}
    both = sought(house, ["K3"], ["K1"], K3="neither")
    assert set(ids(both)) == {"d2", "d3"}


def test_an_open_ground_is_sought_in_the_ground(house_of: HouseOf) -> None:
    house = house_of(CHAIN)
    found = sought(house, [], [], K3_r1_top="open-ground", K2_r1_top="healthy")
    assert {each.roles for each in found.suspects} == {("ground",)}
    assert "d3" in ids(found)
    assert "d2" not in ids(found)


def test_a_reading_out_of_range_stops_the_search(house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN), ["K3"], [], K3="out-of-range")
    assert found.suspects == ()
    assert found.resets == ()
    assert "main off" in found.stop[0]


def test_all_of_a_circuit_is_told_from_a_part_of_it(house_of: HouseOf) -> None:
    house = house_of(CHAIN)
    assert sought(house, ["K1", "K2", "K3"], ["K4"]).scope.kind == "circuit"
    assert sought(house, ["K2", "K3"], ["K1"]).scope.kind == "part"
    assert sought(house, ["K3"], ["K2"]).scope.kind == "point"
    assert sought(house, ["K3.r1.top"], ["K3.r1.bottom"]).scope.kind == "half"


def test_several_circuits_on_one_leg_are_a_lost_leg(house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN), ["K1", "K2", "K3", "K4"])
    assert found.scope.kind == "leg"
    assert "call the utility" in found.stop[0]
    assert "main/main" in ids(found)


def test_a_leg_on_which_something_works_is_not_lost(house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN), ["K3", "K4"], ["K2"])
    assert found.scope.kind == "several"
    assert found.stop == ()


def test_two_paired_circuits_are_an_open_shared_neutral(house_of: HouseOf) -> None:
    shared = SHARED.replace("d1, cable: 14/2", "d1, cable: 14/3").replace(
        "d2, cable: 14/2", "d2, cable: 14/3"
    )
    boxes = (
        shared[: shared.index("  K1: {devices")]
        + """\
  K1: {devices: {r1: duplex}, joints: [{join: [d1.black, d2.black, r1.brass-top]},
       {join: [d1.white, d2.white, r1.silver-top]}, {join: [d1.red, d2.red]}, {join: [d1.bare, d2.bare, r1.green]}]}
  K2: {devices: {r1: duplex}, joints: [{join: [d2.red, r1.brass-top]}, {join: [d2.white, d3.white, r1.silver-top]},
       {join: [d2.black, d3.black]}, {join: [d2.bare, d3.bare, r1.green]}]}
  K3: {devices: {r1: duplex}, makeup: end-of-run}
  K4: {devices: {r1: duplex}, makeup: end-of-run}
"""
        + shared[shared.index("[devices/all.yaml]") :]
    )
    house = house_of(boxes)
    odd = sought(house, ["K2", "K3"], ["K4"])
    assert odd.scope.kind == "shared-neutral"
    assert "unplug electronics" in odd.stop[0]
    assert {each.roles for each in odd.suspects} == {("neutral",)}
    alone = sought(house, ["K2"], ["K1", "K3"])
    assert any("not the shared part of the neutral" in each for each in alone.scope.says)


def test_a_main_that_is_off_explains_a_house_that_is_dead_on_both_legs(house_of: HouseOf) -> None:
    house = house_of(CHAIN.replace("  5: {rating", "  3: {rating"))
    assert "main/main" in ids(sought(house, ["K1", "K2", "K3", "K4"]))
    assert "main/main" not in ids(sought(house, ["K2", "K3", "K4"], ["K1"]))


def test_no_single_fault_is_said_and_never_guessed(house_of: HouseOf) -> None:
    house = house_of(CHAIN.replace("  5: {rating", "  3: {rating"))
    apart = sought(house, ["K3", "K4"], ["K2"])
    assert apart.suspects == ()
    assert "K3.r1.top and K3.r1.bottom on main/1" in apart.unexplained[0]
    assert "cannot tell" in apart.unexplained[-1]


def test_a_live_mark_that_rules_all_out_is_named(house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN), ["K2", "K3"], ["K3.r1.top"])
    assert found.suspects == ()
    assert "K3.r1.top is told to be dead and to work" in found.unexplained
    found = sought(house_of(CHAIN), ["K1", "K2"], ["K3"])
    assert "feeds K3.r1.top and K3.r1.bottom too" in found.unexplained[0]


def test_a_point_that_leads_nowhere_is_said_and_gives_its_label(house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN.replace("makeup: pigtailed", "makeup: unknown")), ["K3"], ["K1"])
    assert found.suspects == ()
    assert any("to no source" in each for each in found.unexplained)
    assert found.unknown
    assert [(each.id, each.by_label) for each in found.resets] == [("main/1", True)]


def test_every_suspect_has_what_must_be_off_before_it_is_touched(house_of: HouseOf) -> None:
    for each in sought(house_of(CHAIN), ["K3"], ["K4"]).suspects:
        assert each.before is not None
        assert [off.id for off in each.before.breakers] or each.before.unknown


def test_the_next_test_is_an_untried_face_and_then_a_reading(house_of: HouseOf) -> None:
    house = house_of(CHAIN)
    face = sought(house, ["K3"], ["K1"]).next
    assert face is not None
    assert (face.kind, face.at[:2]) == ("face", "K2")
    assert face.this > 0
    assert face.other > 0
    reading = sought(house, ["K3"], ["K1", "K2"]).next
    assert reading is not None
    assert (reading.kind, reading.at) == ("reading", "K3.r1.top")
    box = sought(house, ["K3"], ["K1", "K2"], K3="hot-only").next
    assert box is not None
    assert box.kind == "box"


def test_a_load_stands_for_the_half_it_is_plugged_into(house_of: HouseOf) -> None:
    assert sought(house_of(CHAIN), ["lamp"]).dead == ("K3.r1.top",)


def test_a_name_of_nothing_is_refused(house_of: HouseOf) -> None:
    with pytest.raises(KeyError):
        sought(house_of(CHAIN), ["K9"])


@pytest.mark.parametrize("name", READINGS)
def test_every_reading_is_taken(name: str, house_of: HouseOf) -> None:
    found = sought(house_of(CHAIN), ["K3"] if name != "healthy" else ["K2"], [], K3_r1_top=name)
    assert found.signs
