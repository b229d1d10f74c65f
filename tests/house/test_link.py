"""Records tied to one another: breakers, legs, circuits, rooms, and what the nearest word says."""

from collections.abc import Callable

from junctionary.house.model import House
from junctionary.records.values import UNKNOWN

HouseOf = Callable[[str], House]

TWO_BOXES = """
[panels/main.yaml]
panel: main
spaces: 12
breakers:
  1: {rating: 20 A, feeds: den}
[circuits/den.yaml]
circuit: den
name: Den
serves: [hall]
runs:
  - {id: d2, cable: 12/2 NM-B, from: D1, to: D2}
  - {id: d1, cable: 12/2 NM-B, from: main, to: D1, stage: verified}
[rooms/den.yaml]
room: den
name: Den
kind: den
stage: covered
built_to: nec-2017
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/den.yaml]
room: den
defaults: {stage: made-up}
boxes:
  D2: {}
  D1: {stage: as-found, built_to: nec-1962}
"""


def panel(text: str) -> str:
    """A record of one panel beside two circuits."""
    circuits = "".join(f"[circuits/{each}.yaml]\ncircuit: {each}\nname: {each}\n" for each in ("c", "d"))
    return f"{circuits}[panels/main.yaml]\npanel: main\nspaces: 12\n{text}"


def test_a_breaker_is_named_by_its_panel_and_spaces(house_of: HouseOf) -> None:
    house = house_of(panel("main: 200 A\nbreakers:\n  1: {feeds: c}\n  2+4: {feeds: d}\n  9a: {}\n"))
    assert list(house.breakers) == ["main/main", "main/1", "main/2+4", "main/9a"]
    assert house.circuits["d"].breakers == ("main/2+4",)
    assert [each.poles for each in house.breakers.values()] == [1, 1, 2, 1]
    assert str(house.breakers["main/main"].rating) == "200 A"


def test_a_panel_said_to_have_no_main_has_no_main_breaker(house_of: HouseOf) -> None:
    assert list(house_of(panel("main: none\nbreakers: {}\n")).breakers) == []


def test_a_main_of_unknown_rating_is_there_all_the_same(house_of: HouseOf) -> None:
    assert house_of(panel("main: unknown\n")).breakers["main/main"].rating is UNKNOWN


def test_legs_go_by_rows(house_of: HouseOf) -> None:
    rows = "\n".join(f"  {each}: {{}}" for each in ("1", "2", "3", "4", "5", "7a", "7b", "6+8"))
    house = house_of(panel(f"breakers:\n{rows}\n"))
    assert {each.id: each.legs for each in house.breakers.values()} == {
        "main/1": ("A",),
        "main/2": ("A",),
        "main/3": ("B",),
        "main/4": ("B",),
        "main/5": ("A",),
        "main/7a": ("B",),
        "main/7b": ("B",),
        "main/6+8": ("A", "B"),
    }


def test_a_panel_may_say_its_own_legs(house_of: HouseOf) -> None:
    house = house_of(panel("legs: {1: B, 9: A}\nbreakers:\n  1: {}\n  9a: {}\n"))
    assert [each.legs for each in house.breakers.values()] == [("B",), ("A",)]


def test_nothing_tells_the_legs_of_a_fuse_panel_but_the_record(house_of: HouseOf) -> None:
    house = house_of(panel("kind: fuse-panel\nlegs: {2: B}\nbreakers:\n  1: {}\n  2: {}\n  range: {}\n"))
    assert [each.legs for each in house.breakers.values()] == [(None,), ("B",), (None,)]


def test_the_two_poles_of_a_pull_out_are_two_legs(house_of: HouseOf) -> None:
    house = house_of(panel("kind: disconnect\nbreakers:\n  1+2: {}\n"))
    assert house.breakers["main/1+2"].legs == ("A", "B")


def test_a_service_of_120_volts_has_one_leg(house_of: HouseOf) -> None:
    house = house_of(
        "[house.yaml]\nhouse: Hut\nreference: nec-2023\nservice: {system: 120 V}\n"
        + panel("breakers:\n  1: {}\n  3: {}\n")
    )
    assert {each.legs for each in house.breakers.values()} == {("A",)}


def test_a_multiwire_circuit_has_two_breakers_each_with_its_conductor(house_of: HouseOf) -> None:
    house = house_of(panel("breakers:\n  6: {feeds: c.black}\n  8: {feeds: c.red}\nties: [[6, 8]]\n"))
    assert house.circuits["c"].breakers == ("main/6", "main/8")
    assert [each.conductor for each in house.breakers.values()] == ["black", "red"]
    assert house.breakers["main/6"].tied_to == ("main/8",)


def test_an_interlock_may_name_the_main_and_one_of_two_spaces(house_of: HouseOf) -> None:
    house = house_of(panel("main: 100 A\nbreakers:\n  2+4: {feeds: c}\ninterlocks: [[main, main/2+4]]\n"))
    assert house.breakers["main/main"].interlocked_with == ("main/2+4",)
    assert house.breakers["main/2+4"].interlocked_with == ("main/main",)


def test_a_space_without_a_breaker_says_what_it_is(house_of: HouseOf) -> None:
    house = house_of(panel("breakers:\n  7: unused\n  9+11: blank\n"))
    assert house.panels["main"].fillers == {"7": "unused", "9": "blank", "11": "blank"}


def test_a_breaker_that_feeds_something_unknown_says_so(house_of: HouseOf) -> None:
    breakers = house_of(panel("breakers:\n  1: {feeds: unknown}\n  2: {}\n")).breakers
    assert breakers["main/1"].feeds is UNKNOWN
    assert breakers["main/2"].feeds is None


def test_a_subpanel_knows_its_feeder_from_the_run_that_ends_in_it(house_of: HouseOf) -> None:
    house = house_of(
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers: {1+3: {feeds: barn}}\n"
        "[panels/sub.yaml]\npanel: sub\nspaces: 8\n"
        "[circuits/barn.yaml]\ncircuit: barn\nname: Barn\npurpose: feeder\n"
        "runs: [{id: f1, cable: 6/3 UF-B, from: main, to: sub}]\n"
    )
    assert house.panels["sub"].feeder == "barn"


def test_a_circuits_boxes_run_from_the_panel_outward(house_of: HouseOf) -> None:
    assert house_of(TWO_BOXES).circuits["den"].boxes == ("D1", "D2")


def test_a_circuit_serves_the_rooms_it_says_and_those_of_its_boxes(house_of: HouseOf) -> None:
    house = house_of(TWO_BOXES)
    assert house.circuits["den"].rooms == ("hall", "den")
    assert house.rooms["hall"].circuits == ("den",)
    assert house.rooms["den"].boxes == ("D2", "D1")


def test_stage_and_edition_come_from_the_nearest_word(house_of: HouseOf) -> None:
    house = house_of(TWO_BOXES)
    assert (house.boxes["D1"].stage, house.boxes["D1"].edition) == ("as-found", "nec-1962")
    assert (house.boxes["D2"].stage, house.boxes["D2"].edition) == ("made-up", "nec-2017")
    assert (house.runs["d1"].stage, house.runs["d1"].edition) == ("verified", "nec-2023")


def test_the_runs_of_a_source_belong_to_it(house_of: HouseOf) -> None:
    house = house_of(
        "[house.yaml]\nhouse: Hut\nreference: nec-2023\n"
        "sources: [{id: gen, is: generator-inlet, at: I1, enters: main/2+4,"
        " runs: [{id: g1, cable: 10/3 NM-B, from: I1, to: main}]}]\n"
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers: {2+4: {feeds: gen}}\n"
        "[rooms/yard.yaml]\nroom: yard\nname: Yard\nkind: outdoors\n"
        "[boxes/yard.yaml]\nroom: yard\nboxes: {I1: {}}\n"
    )
    assert house.runs["g1"].circuit == "gen"
    assert house.breakers["main/2+4"].feeds == "gen"


def test_ends_are_told_from_those_unknown_and_those_left_out(house_of: HouseOf) -> None:
    house = house_of(
        "[circuits/u.yaml]\ncircuit: u\nname: Untraced\npurpose: untraced\n"
        "runs:\n  - {id: u1, from: unknown}\n  - {id: u2, from: none, to: unknown}\n"
    )
    assert [(run.from_.kind, run.to.kind) for run in house.runs.values()] == [
        ("unknown", "unrecorded"),
        ("none", "unknown"),
    ]


def test_a_directory_alone_is_a_house(house_of: HouseOf) -> None:
    house = house_of(panel("breakers:\n  1: {rating: 15 A, feeds: c, says: Hall}\n"))
    assert house.circuits["c"].boxes == ()
    assert house.boxes == {}


def test_what_names_a_space_of_a_breaker_names_the_whole_breaker(house_of: HouseOf) -> None:
    house = house_of(
        panel("breakers:\n  1: {feeds: c}\n  2+4: {feeds: d}\n  6+8: {}\n")
        + "[house.yaml]\nhouse: Hut\nreference: nec-2023\n"
        + "sources: [{id: pv, is: solar, enters: main/8, shut_off: main/6}]\n"
        + "[log.yaml]\n- {date: 2026-01-02, test: breaker-off, about: [main/4, main/1, main, c]}\n"
        + "- {date: 2026-01-03, trip: main/2}\n"
    )
    assert [(each.about, each.trip) for each in house.log] == [
        (("main/2+4", "main/1", "main", "c"), None),
        (None, "main/2+4"),
    ]
    assert (house.sources["pv"].enters, house.sources["pv"].shut_off) == ("main/6+8", "main/6+8")
    assert house.log[0].value_place("about", 1).column == 57
