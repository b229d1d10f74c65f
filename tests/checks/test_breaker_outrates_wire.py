"""breaker-outrates-wire beyond its own examples."""

from collections.abc import Callable

RULE = "breaker-outrates-wire"


def record(rating: str, cable: str, circuit: str = "", breakers: str = "", box: str = "capped: [a1]") -> str:
    return (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n"
        f"  1: {{rating: {rating}, feeds: c}}\n{breakers}"
        f"[circuits/c.yaml]\ncircuit: c\nname: C\n{circuit}runs:\n"
        f"  - {{id: a1, cable: {cable}, from: main, to: K1}}\n"
        f"[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{{box}}}\n"
    )


def test_a_breaker_within_the_wire_is_well(says: Callable) -> None:
    said = says(RULE, record("15 A", "14/2 NM-B"))
    assert (said.found, said.needs) == ([], [])


def test_a_fault_that_is_certain_is_said_though_other_facts_are_missing(says: Callable) -> None:
    text = record("20 A", "14/2 NM-B", box="makeup: unknown")
    assert says(RULE, text).found == ["circuits/c.yaml:4"]


def test_the_next_size_up_is_for_circuits_without_several_receptacles(says: Callable) -> None:
    # 55 A × 0.65 = 35.75 A: 40 A is the next size up, and 35 A the largest within it.
    hot = "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\nambient: 145 F\n"
    one = record("40 A", "8/2 NM-B") + hot
    several = record("40 A", "8/2 NM-B", box="devices: {r1: duplex}, makeup: end-of-run") + hot
    assert says(RULE, one).found == []
    assert says(RULE, several).found == ["circuits/c.yaml:4"]


def test_a_feeder_is_judged_elsewhere(says: Callable) -> None:
    said = says(RULE, record("100 A", "10/3 NM-B", circuit="purpose: feeder\n"))
    assert (said.found, said.needs) == ([], [])


def test_a_heat_pump_may_have_what_its_nameplate_allows_and_that_is_not_recorded(says: Callable) -> None:
    said = says(RULE, record("30 A", "12/2 NM-B", circuit="purpose: heat-pump\n"))
    assert said.found == []
    assert said.needs == ["the least ampacity and the largest breaker on the nameplate of C"]


def test_a_heat_pump_within_the_ordinary_rule_needs_no_nameplate(says: Callable) -> None:
    said = says(RULE, record("20 A", "12/2 NM-B", circuit="purpose: heat-pump\n"))
    assert (said.found, said.needs) == ([], [])


def test_a_circuit_with_no_cable_recorded_is_not_passed(says: Callable) -> None:
    text = (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  1: {rating: 20 A, feeds: c}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\n"
    )
    assert says(RULE, text).needs == ["the cables of circuit c"]


def test_a_rating_nobody_can_read_is_a_missing_fact(says: Callable) -> None:
    assert says(RULE, record("unknown", "14/2 NM-B")).needs == ["the rating of main/1"]


def test_the_larger_breaker_of_a_pair_is_the_one_that_counts(says: Callable) -> None:
    text = record("15 A", "14/3 NM-B", breakers="  3: {rating: 20 A, feeds: c.red}\n")
    assert says(RULE, text.replace("feeds: c}", "feeds: c.black}")).found == ["circuits/c.yaml:4"]


def test_a_bundle_in_a_sealed_hole_is_left_to_its_own_rule(says: Callable) -> None:
    runs = "".join(f"  - {{id: a{number}, cable: 12/2 NM-B, from: main, to: K1}}\n" for number in range(2, 6))
    text = record("20 A", "12/2 NM-B", box="capped: [a1, a2, a3, a4, a5]").replace("[boxes", f"{runs}[boxes")
    hole = "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\nbundles:\n"
    hole += "  - {id: h, is: sealed-hole, runs: [a1, a2, a3, a4, a5]}\n"
    assert says(RULE, text + hole).found == []
    assert len(says("bundle-in-sealed-hole", text + hole).found) == 5
