"""Which breakers must be off: the list errs on the long side, and is never empty without a reason."""

from collections.abc import Callable

import pytest

from junctionary.house.isolate import (
    Isolation,
    isolate,
    isolate_circuit,
    isolate_panel,
    isolate_room,
    isolate_run,
)
from junctionary.house.model import House
from junctionary.house.network import network

HouseOf = Callable[[str], House]
FURNISHED = """
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
  switch: {is: switch, ways: 1}
  three: {is: switch, ways: 3}
  lamp: {is: luminaire}
  alarm: {is: smoke-alarm}
  inlet: {is: inlet}
[rooms/den.yaml]
room: den
name: Den
kind: den
"""


def record(
    panel: str, circuits: dict[str, str], boxes: str = "", *, sources: str = "", extra: str = ""
) -> str:
    """A panel's breakers, circuits each with its runs (``a1: 12/2 NM-B, main, K1``), boxes one a line."""
    text = f"[house.yaml]\nhouse: Tern Cottage\nreference: nec-2023\n{sources}\n"
    text += f"[panels/main.yaml]\npanel: main\nmain: 100 A\nfed_by: service\nspaces: 24\n{panel}\n"
    for circuit, runs in circuits.items():
        text += f"[circuits/{circuit}.yaml]\ncircuit: {circuit}\nname: {circuit}\n"
        text += "purpose: untraced\n" if circuit == "untraced" else ""
        text += "runs:\n" if runs else ""
        for line in runs.splitlines():
            id_, _, rest = line.partition(": ")
            cable, from_, to = rest.rsplit(", ", 2)
            text += f"  - {{id: {id_}, cable: {cable}, from: {from_}, to: {to}}}\n"
    lines = "".join(f"  {line}\n" for line in boxes.splitlines())
    return text + FURNISHED + (f"[boxes/den.yaml]\nroom: den\nboxes:\n{lines}" if boxes else "") + extra


Isolated = Callable[..., Isolation]


@pytest.fixture
def isolated(house_of: HouseOf) -> Isolated:
    """From a box (or what another question asks about) and the parts of ``record`` to what to switch off."""

    def made(of: str, *parts: object, ask: Callable[..., Isolation] = isolate, **more: str) -> Isolation:
        house = house_of(record(*parts, **more))  # type: ignore[arg-type]
        return ask(house, network(house), of)

    return made


def off(found: Isolation) -> list[str]:
    return [each.id for each in found.breakers]


def why(found: Isolation, breaker: str) -> str:
    return "; ".join(next(each for each in found.breakers if each.id == breaker).why)


DEN = "breakers: {1: {feeds: den}, 3: {feeds: hall}}"
TWO = {"den": "a1: 14/2 NM-B, main, K1", "hall": "h1: 14/2 NM-B, main, K2"}


def test_a_box_of_one_circuit_needs_its_breaker(isolated: Isolated) -> None:
    found = isolated("K1", DEN, TWO, "K1: {devices: {r1: duplex}, makeup: end-of-run}\nK2: {capped: [h1]}")
    assert off(found) == ["main/1"]
    assert why(found, "main/1") == "reaches a1.black"
    assert found.unknown == ()


def test_a_run_that_only_passes_through_counts(isolated: Isolated) -> None:
    found = isolated(
        "K1", DEN, TWO, "K1: {devices: {r1: duplex}, makeup: end-of-run, passes: [h1]}\nK2: {capped: [h1]}"
    )
    assert off(found) == ["main/1", "main/3"]
    assert why(found, "main/3") == "reaches h1.black, which passes through"


def test_a_capped_cable_counts(isolated: Isolated) -> None:
    circuits = {"den": "a1: 14/2 NM-B, main, K1", "hall": "h1: 14/2 NM-B, main, K1"}
    found = isolated("K1", DEN, circuits, "K1: {devices: {r1: duplex}, makeup: {feed: a1}, capped: [h1]}")
    assert off(found) == ["main/1", "main/3"]


def test_a_cable_capped_at_both_its_ends_counts_by_the_word_of_the_record(isolated: Isolated) -> None:
    circuits = {"den": "a1: 14/2 NM-B, K1, K2", "hall": ""}
    found = isolated("K1", DEN, circuits, "K1: {capped: [a1]}\nK2: {capped: [a1]}")
    assert off(found) == ["main/1"]
    assert why(found, "main/1") == "is recorded as feeding “den”"


def test_the_other_leg_of_a_shared_neutral_counts_where_only_one_leg_comes(isolated: Isolated) -> None:
    panel = "breakers: {6: {feeds: den.black}, 8: {feeds: den.red}}"
    runs = {"den": "a1: 12/3 NM-B, main, K1\na2: 12/2 NM-B, K1, K2"}
    boxes = (
        "K1: {devices: {r1: duplex}, joints: [{join: [a1.black, a2.black]}, {join: [a1.white, a2.white]}, "
    )
    boxes += "{join: [a1.bare, a2.bare]}], terminals: {r1.brass: a1.red}}\nK2: {capped: [a2]}"
    found = isolated("K2", panel, runs, boxes)
    assert off(found) == ["main/6", "main/8"]
    assert why(found, "main/8") == "main/6 and main/8 both feed “den”, whose neutral they share"


def test_a_handle_tie_is_followed_and_said(isolated: Isolated) -> None:
    found = isolated("K1", f"{DEN}\nties: [[1, 3]]", TWO, "K1: {capped: [a1]}\nK2: {capped: [h1]}")
    assert off(found) == ["main/1", "main/3"]
    assert why(found, "main/3") == "its handle is tied to main/1"


NEUTRALS = "J1: {joints: [{join: [a2.white, h2.white]}], capped: [a2.black, a2.bare, h2.black, h2.bare]}\n"


def test_neutrals_joined_in_another_box_bring_in_the_other_circuit(isolated: Isolated) -> None:
    circuits = {
        "den": "a1: 14/2 NM-B, main, K1\na2: 14/2 NM-B, K1, J1",
        "hall": "h1: 14/2 NM-B, main, K2\nh2: 14/2 NM-B, K2, J1",
    }
    boxes = NEUTRALS + "K1: {makeup: splice-through}\nK2: {makeup: splice-through}"
    found = isolated("K1", DEN, circuits, boxes)
    assert off(found) == ["main/1", "main/3"]
    assert why(found, "main/3") == "the neutrals of “den” and “hall” are joined in J1"


def test_neutrals_that_meet_at_the_bar_alone_bring_in_nothing(isolated: Isolated) -> None:
    assert off(isolated("K1", DEN, TWO, "K1: {capped: [a1]}\nK2: {capped: [h1]}")) == ["main/1"]


def test_grounds_joined_bring_in_nothing(isolated: Isolated) -> None:
    circuits = {"den": "a1: 14/2 NM-B, main, J1\na2: 14/2 NM-B, J1, K1", "hall": "h1: 14/2 NM-B, main, J1"}
    boxes = "J1: {makeup: [{feed: a1, onward: a2}], joints: [{join: [a1.bare, a2.bare, h1.bare]}], "
    boxes += "capped: [h1.black, h1.white]}\nK1: {capped: [a2]}"
    assert off(isolated("K1", DEN, circuits, boxes)) == ["main/1"]


def test_a_neutral_joined_to_the_grounds_brings_in_every_circuit_they_reach(isolated: Isolated) -> None:
    circuits = {"den": "a1: 14/2 NM-B, main, J1", "hall": "h1: 14/2 NM-B, main, J1"}
    boxes = "J1: {joints: [{join: [a1.white, a1.bare, h1.bare]}], capped: [a1.black, h1.black, h1.white]}"
    found = isolated("J1", DEN, circuits, boxes)
    assert "neutral and ground of “den” and “hall” meet" in why(found, "main/3")


def test_both_sides_of_a_switch_count(isolated: Isolated) -> None:
    circuits = {"den": "a1: 14/2 NM-B, main, K1\na2: 14/2 NM-B, K1, K2", "hall": ""}
    boxes = "K1: {devices: {s1: switch}, makeup: {feed: a1, switched: {s1: a2}}}\n"
    found = isolated("K2", DEN, circuits, boxes + "K2: {devices: {f1: lamp}, makeup: end-of-run}")
    assert why(found, "main/1") == "reaches a2.black"


def test_a_lamp_hot_on_one_circuit_and_neutral_on_another_brings_in_both(isolated: Isolated) -> None:
    circuits = {
        "den": "a1: 14/2 NM-B, main, K1",
        "hall": "h1: 14/2 NM-B, main, K1\nh2: 14/2 NM-B, K1, K2",
    }
    boxes = "K1: {devices: {f1: lamp}, joints: [{join: [a1.black, f1.black]}, {join: [h1.white, f1.white, h2.white]}, "
    boxes += "{join: [h1.black, h2.black]}], capped: [a1.white, a1.bare, h1.bare, h2.bare, f1.green]}\nK2: {capped: [h2]}"
    found = isolated("K2", DEN, circuits, boxes)
    assert off(found) == ["main/1", "main/3"]
    assert why(found, "main/1") == "“den” and “hall” both come to K1.f1"


def test_two_devices_on_one_strap_are_dead_together(isolated: Isolated) -> None:
    circuits = {
        "den": "a1: 14/2 NM-B, main, K1\na2: 14/2 NM-B, K1, K2",
        "hall": "h1: 14/2 NM-B, main, K1",
    }
    boxes = "K1: {devices: {s1: switch, s2: switch}, yoke: [s1, s2], terminals: {s1.brass-1: a1.black, s2.brass-1: h1.black, "
    boxes += (
        "s1.brass-2: a2.black}, joints: [{join: [a1.white, a2.white]}, {join: [a1.bare, a2.bare, h1.bare]}], "
    )
    boxes += "capped: [h1.white]}\nK2: {capped: [a2]}"
    found = isolated("K2", DEN, circuits, boxes)
    assert off(found) == ["main/1", "main/3"]
    assert why(found, "main/3") == "“den” and “hall” both come to one strap in K1"


def test_a_second_source_that_reaches_the_box_is_listed(isolated: Isolated) -> None:
    sources = "sources:\n  - {id: genny, is: generator-inlet, at: I1, enters: main/2+4, "
    sources += "runs: [{id: g1, cable: 10/3 NM-B, from: I1, to: main}]}"
    panel = "breakers: {1: {feeds: den}, 2+4: {feeds: genny}}"
    circuits = {"den": "a1: 14/2 NM-B, main, K1"}
    boxes = "I1: {devices: {i1: inlet}, makeup: end-of-run}\nK1: {capped: [a1]}"
    found = isolated("I1", panel, circuits, boxes, sources=sources)
    assert off(found) == ["main/2+4"]
    assert [each.id for each in found.sources] == ["genny"]
    assert isolated("K1", panel, circuits, boxes, sources=sources).sources == ()


def test_in_doubt_every_source_is_listed_and_the_breaker_at_which_it_enters(isolated: Isolated) -> None:
    sources = "sources: [{id: genny, is: generator-inlet, enters: main/2}]"
    panel = "breakers: {1: {feeds: den}, 2+4: {feeds: genny}}"
    found = isolated("K1", panel, {"den": "a1: 14/2 NM-B, main, K1"}, "K1: {makeup: unknown}", sources=sources)
    assert found.unknown
    assert off(found) == ["main/1", "main/2+4"]
    assert why(found, "main/2+4") == "a second source can feed back through it"
    assert [each.id for each in found.sources] == ["genny"]


def test_a_source_that_enters_nobody_knows_where_is_listed_for_every_box(isolated: Isolated) -> None:
    sources = "sources: [{id: sun, is: solar}]"
    found = isolated("K1", DEN, TWO, "K1: {capped: [a1]}\nK2: {capped: [h1]}", sources=sources)
    assert [(each.id, each.why) for each in found.sources] == [("sun", ("where it enters is not recorded",))]


SHED = """
[panels/shed.yaml]
panel: shed
spaces: 8
fed_by: barn
breakers: {1: {feeds: den}, 2+4: {feeds: sun-wire}}
"""
FEEDER = {
    "barn": "f1: 6/3 NM-B, main, P1\nf2: 6/3 NM-B, P1, shed",
    "den": "a1: 14/2 NM-B, shed, K1",
    "sun-wire": "",
}
SHED_BOXES = "P1: {makeup: splice-through}\nK1: {capped: [a1]}"


def test_a_box_fed_from_a_subpanel_needs_the_breaker_there(isolated: Isolated) -> None:
    found = isolated("K1", "breakers: {2+4: {feeds: barn}}", FEEDER, SHED_BOXES, extra=SHED)
    assert off(found) == ["shed/1"]


def test_a_box_on_a_feeder_needs_what_can_feed_back_from_the_subpanel(isolated: Isolated) -> None:
    panel = "breakers: {2+4: {feeds: barn}}"
    assert off(isolated("P1", panel, FEEDER, SHED_BOXES, extra=SHED)) == ["main/2+4"]
    sources = "sources: [{id: sun, is: solar, enters: shed/2+4}]"
    found = isolated("P1", panel, FEEDER, SHED_BOXES, extra=SHED, sources=sources)
    assert off(found) == ["main/2+4", "shed/2+4"]
    assert why(found, "shed/2+4") == "a second source can feed back through it"


UNKNOWN = "breakers: {1: {feeds: den}, 3: {feeds: hall}, 5: {feeds: unknown}}"


@pytest.mark.parametrize(
    ("runs", "boxes", "reason"),
    [
        ("a1: 14/2 NM-B, main, K1", "K1: {makeup: unknown}", "how box K1 is made up is unknown"),
        ("a1: 14/2 NM-B, main, K1", "K1: {}", "how box K1 is made up is not recorded"),
        ("a1: unknown, main, K1", "K1: {capped: [a1]}", "what cable a1 is, is unknown"),
        ("a1: 14/2 NM-B, unknown, K1", "K1: {capped: [a1]}", "what a1 comes from is unknown"),
        ("a1: 14/3 NM-B, main, K1", "K1: {capped: [a1]}", "nothing tells where main/a1.red lands"),
        ("", "K1: {}", "no run is recorded into K1"),
    ],
)
def test_what_is_unknown_in_the_box_itself_leaves_the_list_and_is_said(
    isolated: Isolated, runs: str, boxes: str, reason: str
) -> None:
    found = isolated("K1", UNKNOWN, {"den": runs, "hall": ""}, boxes)
    assert reason in found.unknown
    assert found.mains == ("main/main",)
    assert ("main/1" in off(found)) is bool(runs)


def test_in_doubt_a_breaker_that_feeds_nobody_knows_what_is_listed_too(isolated: Isolated) -> None:
    found = isolated("K1", UNKNOWN, {"den": "a1: 14/2 NM-B, main, K1", "hall": ""}, "K1: {makeup: unknown}")
    assert off(found) == ["main/1", "main/5"]


def test_in_doubt_every_second_source_is_listed_since_no_main_stops_it(isolated: Isolated) -> None:
    sources = "sources: [{id: sun, is: solar, enters: main/3}]"
    circuits = {"den": "a1: 14/2 NM-B, main, K1", "hall": ""}
    found = isolated("K1", DEN, circuits, "K1: {makeup: unknown}", sources=sources)
    assert [each.id for each in found.sources] == ["sun"]


def test_an_unknown_elsewhere_on_the_circuit_puts_the_box_in_doubt(isolated: Isolated) -> None:
    circuits = {"den": "a1: 14/2 NM-B, main, K1\na2: 14/2 NM-B, K1, K2", "hall": "h1: 14/2 NM-B, main, K3"}
    boxes = "K1: {makeup: splice-through}\nK2: {makeup: unknown}\nK3: {capped: [h1]}"
    assert isolated("K1", DEN, circuits, boxes).unknown == ("how box K2 is made up is unknown",)
    assert isolated("K3", DEN, circuits, boxes).unknown == ()


def test_what_may_be_joined_in_a_box_of_unknown_make_up_is_listed(isolated: Isolated) -> None:
    circuits = {
        "den": "a1: 14/2 NM-B, main, K1\na2: 14/2 NM-B, K1, J1",
        "hall": "h1: 14/2 NM-B, main, J1",
    }
    found = isolated("K1", DEN, circuits, "K1: {makeup: splice-through}\nJ1: {makeup: unknown}")
    assert off(found) == ["main/1", "main/3"]
    assert why(found, "main/3") == "may be joined to it: how box J1 is made up is unknown"


def test_a_circuit_without_a_breaker_is_unknown(isolated: Isolated) -> None:
    found = isolated("K1", "breakers: {}", {"den": "a1: 14/2 NM-B, main, K1"}, "K1: {capped: [a1]}")
    assert off(found) == []
    assert "no breaker is recorded as feeding “den”" in found.unknown


def test_a_wire_said_to_land_where_no_breaker_is_recorded_is_unknown(isolated: Isolated) -> None:
    panel = "breakers: {1: {feeds: den, lands: {black: 5}}}"
    found = isolated("K1", panel, {"den": "a1: 14/2 NM-B, main, K1"}, "K1: {capped: [a1]}")
    assert off(found) == ["main/1"]
    assert found.unknown == ("nothing tells where main/a1.black lands",)


def test_in_doubt_the_main_of_a_panel_that_the_utility_may_feed_is_named(isolated: Isolated) -> None:
    barn = "[panels/barn.yaml]\npanel: barn\nspaces: 4\nmain: 60 A\nbreakers: {}\n"
    found = isolated("K1", UNKNOWN, {"den": "", "hall": ""}, "K1: {makeup: unknown}", extra=barn)
    assert found.mains == ("main/main", "barn/main")


def test_an_untraced_run_is_unknown_and_ties_nothing_to_the_others(isolated: Isolated) -> None:
    circuits = {
        "den": "a1: 14/2 NM-B, main, K1",
        "hall": "",
        "untraced": "u1: 14/2 NM-B, unknown, K1\nu2: 14/2 NM-B, unknown, K2",
    }
    found = isolated("K1", DEN, circuits, "K1: {capped: [a1, u1]}\nK2: {capped: [u2]}")
    assert off(found) == ["main/1"]
    assert "nobody could trace which circuit u1 is of" in found.unknown
    assert not any("u2" in reason for reason in found.unknown)


def test_a_box_that_is_not_recorded_is_unknown(isolated: Isolated) -> None:
    assert isolated("K9", DEN, {"den": "", "hall": ""}).unknown == ("no box K9 is recorded",)


def test_a_directory_alone_gives_the_breaker_of_a_circuit_and_says_what_it_lacks(isolated: Isolated) -> None:
    found = isolated("den", DEN, {"den": "", "hall": ""}, ask=isolate_circuit)
    assert off(found) == ["main/1"]
    assert found.unknown == ("no run of “den” is recorded, so nothing tells what else may be joined to it",)


def test_a_room_needs_all_that_its_boxes_need_and_all_that_serves_it(isolated: Isolated) -> None:
    circuits = {"den": "a1: 14/2 NM-B, main, K1", "hall": ""}
    serves = "[circuits/attic.yaml]\ncircuit: attic\nname: Attic\nserves: [den]\n"
    panel = "breakers: {1: {feeds: den}, 3: {feeds: hall}, 5: {feeds: attic}}"
    found = isolated("den", panel, circuits, "K1: {capped: [a1]}", extra=serves, ask=isolate_room)
    assert off(found) == ["main/1", "main/5"]


def test_a_run_needs_what_reaches_it(isolated: Isolated) -> None:
    found = isolated("h1", DEN, TWO, "K1: {capped: [a1]}\nK2: {capped: [h1]}", ask=isolate_run)
    assert off(found) == ["main/3"]


def test_the_main_leaves_the_line_side_of_its_own_panel_live(isolated: Isolated) -> None:
    found = isolated("main", DEN, TWO, "K1: {capped: [a1]}\nK2: {capped: [h1]}", ask=isolate_panel)
    assert off(found) == ["main/main"]
    assert found.stays_live == (
        "the service conductors and the line side of main/main: only the utility makes them dead",
    )


def test_a_subpanel_is_made_dead_by_what_feeds_it(isolated: Isolated) -> None:
    found = isolated(
        "shed", "breakers: {2+4: {feeds: barn}}", FEEDER, SHED_BOXES, extra=SHED, ask=isolate_panel
    )
    assert off(found) == ["main/2+4"]


def test_what_matters_is_told_first_and_by_weight(isolated: Isolated) -> None:
    loads = """[circuits/hall.yaml]
circuit: hall
name: Hall
loads:
  - {id: chest, is: freezer, matters: food}
  - {id: breath, is: medical, matters: medical}
"""
    found = isolated("hall", DEN, {"den": ""}, extra=loads, ask=isolate_circuit)
    assert [each.id for each in found.first] == ["breath", "chest"]
