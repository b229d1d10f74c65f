"""Lamp tables from the conductors: each wiring order of 3-way and 4-way chains against the textbook's table.

The textbook's: two 3-way switches and any number of 4-way switches between
them light the lamp at every second setting, whichever switch is turned. Here
a switch is at 0 or 1; the lamp is lit where an even number of them, or an
odd number, is at 1.
"""

from collections.abc import Callable
from itertools import product

import pytest

from junctionary.house.blocks import on_the_way
from junctionary.house.lamps import LampTable, lamp_tables
from junctionary.house.network import network

COMMON = """\
[panels/main.yaml]
panel: main
spaces: 20
breakers: {1: {rating: 15 A, feeds: c}}
[rooms/den.yaml]
room: den
name: Den
kind: den
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
  switch: {is: switch, ways: 1}
  three: {is: switch, ways: 3}
  four: {is: switch, ways: 4}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white]}
connectors:
  lever-5: {is: lever, ports: 5, accepts: 20 to 12 AWG copper}
"""


def tables(house_of: Callable, runs: str, boxes: str) -> dict[str, LampTable]:
    house = house_of(f"{COMMON}[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n{runs}"
                     f"[boxes/den.yaml]\nroom: den\nboxes:\n{boxes}")  # fmt: skip
    return {each.outlet: each for each in lamp_tables(house, network(house))}


def run(name: str, cable: str, start: str, end: str) -> str:
    return f"  - {{id: {name}, cable: {cable} NM-B, from: {start}, to: {end}}}\n"


def box(name: str, devices: str, joints: str, terminals: str) -> str:
    return f"  {name}: {{devices: {{{devices}}}, joints: [{joints}], terminals: {{{terminals}}}}}\n"


def join(*members: str) -> str:
    return f"{{join: [{', '.join(members)}], by: lever-5}}"


LAMP = "f1: lamp"
FAR = "s1.common: {0}, s1.traveler-1: {1}.black, s1.traveler-2: {1}.red"

FEED_AT_FIRST_SWITCH = (
    run("a1", "14/2", "main", "K1") + run("t1", "14/3", "K1", "K2") + run("l1", "14/2", "K2", "L1"),
    box("K1", "s1: three", join("a1.white", "t1.white"), FAR.format("a1.black", "t1"))
    + box("K2", "s1: three", join("t1.white", "l1.white"), FAR.format("l1.black", "t1"))
    + box("L1", LAMP, f"{join('l1.black', 'f1.black')}, {join('l1.white', 'f1.white')}", ""),
)
FEED_AT_LAMP = (
    run("a1", "14/2", "main", "L1") + run("d1", "14/2", "L1", "K1") + run("t1", "14/3", "K1", "K2"),
    box(
        "L1",
        LAMP,
        f"{join('a1.black', 'd1.white')}, {join('d1.black', 'f1.black')}, {join('a1.white', 'f1.white')}",
        "",
    )
    + box("K1", "s1: three", join("d1.white", "t1.white"), FAR.format("d1.black", "t1"))
    + box("K2", "s1: three", "", FAR.format("t1.white", "t1")),
)
FEED_AT_LAMP_BETWEEN = (
    run("a1", "14/2", "main", "L1") + run("t1", "14/3", "L1", "K1") + run("t2", "14/3", "L1", "K2"),
    box(
        "L1",
        LAMP,
        ", ".join(
            (
                join("a1.black", "t1.white"),
                join("t1.black", "t2.black"),
                join("t1.red", "t2.red"),
                join("t2.white", "f1.black"),
                join("a1.white", "f1.white"),
            )
        ),
        "",
    )
    + box("K1", "s1: three", "", FAR.format("t1.white", "t1"))
    + box("K2", "s1: three", "", FAR.format("t2.white", "t2")),
)
FEED_AND_LAMP_AT_ONE_SWITCH = (
    run("a1", "14/2", "main", "K1") + run("l1", "14/2", "K1", "L1") + run("t1", "14/3", "K1", "K2"),
    box(
        "K1",
        "s1: three",
        f"{join('a1.white', 'l1.white')}, {join('a1.black', 't1.white')}",
        FAR.format("l1.black", "t1"),
    )
    + box("K2", "s1: three", "", FAR.format("t1.white", "t1"))
    + box("L1", LAMP, f"{join('l1.black', 'f1.black')}, {join('l1.white', 'f1.white')}", ""),
)


def four_way(crossed: str = "four") -> tuple[str, str]:
    """The feed at the first switch, two 4-way switches between it and the last."""
    middle = "s1.in-1: {0}.black, s1.in-2: {0}.red, s1.out-1: {1}.black, s1.out-2: {1}.red"
    return (
        run("a1", "14/2", "main", "K1")
        + run("t1", "14/3", "K1", "K2")
        + run("t2", "14/3", "K2", "K3")
        + run("t3", "14/3", "K3", "K4")
        + run("l1", "14/2", "K4", "L1"),
        box("K1", "s1: three", join("a1.white", "t1.white"), FAR.format("a1.black", "t1"))
        + box("K2", f"s1: {crossed}", join("t1.white", "t2.white"), middle.format("t1", "t2"))
        + box("K3", "s1: four", join("t2.white", "t3.white"), middle.format("t2", "t3"))
        + box("K4", "s1: three", join("t3.white", "l1.white"), FAR.format("l1.black", "t3"))
        + box("L1", LAMP, f"{join('l1.black', 'f1.black')}, {join('l1.white', 'f1.white')}", ""),
    )


FOUR_WAY_FEED_AT_LAMP = (
    run("a1", "14/2", "main", "L1")
    + run("d1", "14/2", "L1", "K1")
    + run("t1", "14/3", "K1", "K2")
    + run("t2", "14/3", "K2", "K3"),
    box(
        "L1",
        LAMP,
        f"{join('a1.black', 'd1.white')}, {join('d1.black', 'f1.black')}, {join('a1.white', 'f1.white')}",
        "",
    )
    + box("K1", "s1: three", join("d1.white", "t1.white"), FAR.format("d1.black", "t1"))
    + box(
        "K2",
        "s1: four",
        join("t1.white", "t2.white"),
        "s1.in-1: t1.black, s1.in-2: t1.red, s1.out-1: t2.black, s1.out-2: t2.red",
    )
    + box("K3", "s1: three", "", FAR.format("t2.white", "t2")),
)

CHAINS = {
    "fed at the first switch": FEED_AT_FIRST_SWITCH,
    "fed at the lamp, both switches beyond": FEED_AT_LAMP,
    "fed at the lamp, a switch on either side": FEED_AT_LAMP_BETWEEN,
    "fed where the lamp's cable leaves": FEED_AND_LAMP_AT_ONE_SWITCH,
    "two 4-way switches between": four_way(),
    "a 4-way switch, fed at the lamp": FOUR_WAY_FEED_AT_LAMP,
}


@pytest.mark.parametrize("chain", CHAINS.values(), ids=list(CHAINS))
def test_a_chain_lights_at_every_second_setting_and_every_switch_toggles_it(
    house_of: Callable, chain: tuple[str, str]
) -> None:
    table = tables(house_of, *chain)["L1.f1.black"]
    count = len(table.switches)
    assert set(table.always) == set(table.switches)
    assert (table.sometimes, table.never, table.unknown) == ((), (), ())
    lit = table.works(*[0] * count)
    assert {row.states: row.works for row in table.rows} == {
        states: (sum(states) % 2 == 0) is lit for states in product((0, 1), repeat=count)
    }


def test_a_traveler_on_the_common_is_told_of_both_switches(house_of: Callable) -> None:
    runs, boxes = FEED_AT_FIRST_SWITCH
    wrong = boxes.replace(FAR.format("l1.black", "t1"), FAR.format("t1.black", "t1").replace(
        "s1.traveler-1: t1.black", "s1.traveler-1: l1.black"))  # fmt: skip
    table = tables(house_of, runs, wrong)["L1.f1.black"]
    assert table.always == ()
    assert table.sometimes == ("K1.s1", "K2.s1")
    assert {row.states for row in table.rows if row.works} == {(0, 0)}


def test_a_4_way_with_a_pair_crossed_never_toggles(house_of: Callable) -> None:
    runs, boxes = four_way()
    wrong = boxes.replace(
        "s1.in-1: t1.black, s1.in-2: t1.red, s1.out-1: t2.black, s1.out-2: t2.red",
        "s1.in-1: t1.black, s1.out-1: t1.red, s1.in-2: t2.black, s1.out-2: t2.red",
    )
    assert tables(house_of, runs, wrong)["L1.f1.black"].always == ()


def test_a_switch_loop_is_on_at_one_of_its_positions(house_of: Callable) -> None:
    table = tables(
        house_of,
        run("a1", "14/2", "main", "L1") + run("d1", "14/2", "L1", "K1"),
        box(
            "L1",
            LAMP,
            f"{join('a1.black', 'd1.white')}, {join('d1.black', 'f1.black')}, {join('a1.white', 'f1.white')}",
            "",
        )
        + box("K1", "s1: switch", "", "s1.brass-1: d1.white, s1.brass-2: d1.black"),
    )["L1.f1.black"]
    assert (table.switches, table.always) == (("K1.s1",), ("K1.s1",))
    assert (table.works(0), table.works(1)) == (False, True)


def test_a_switch_in_the_neutral_is_in_the_table_too(house_of: Callable) -> None:
    table = tables(
        house_of,
        run("a1", "14/2", "main", "K1") + run("l1", "14/2", "K1", "L1"),
        box("K1", "s1: switch", join("a1.black", "l1.black"), "s1.brass-1: a1.white, s1.brass-2: l1.white")
        + box("L1", LAMP, f"{join('l1.black', 'f1.black')}, {join('l1.white', 'f1.white')}", ""),
    )["L1.f1.black"]
    assert (table.works(0), table.works(1)) == (False, True)


def test_only_the_switched_half_of_a_receptacle_has_a_table(house_of: Callable) -> None:
    found = tables(
        house_of,
        run("a1", "14/2", "main", "K1") + run("l1", "14/3", "K1", "R1"),
        box(
            "K1",
            "s1: switch",
            f"{join('a1.black', 'l1.black', 's1.brass-1')}, {join('a1.white', 'l1.white')}",
            "s1.brass-2: l1.red",
        )
        + "  R1: {devices: {r1: duplex}, split: {r1: brass}, terminals: {r1.brass-top: l1.red, "
        "r1.brass-bottom: l1.black, r1.silver: l1.white}}\n",
    )
    assert list(found) == ["R1.r1.brass-top"]
    assert (found["R1.r1.brass-top"].works(0), found["R1.r1.brass-top"].works(1)) == (False, True)


def test_a_lamp_that_no_switch_stands_before_has_no_table(house_of: Callable) -> None:
    lamp = box("L1", LAMP, f"{join('a1.black', 'f1.black')}, {join('a1.white', 'f1.white')}", "")
    assert tables(house_of, run("a1", "14/2", "main", "L1"), lamp) == {}


def test_switches_of_other_lamps_stay_out_of_a_table(house_of: Callable) -> None:
    runs, boxes = FEED_AT_FIRST_SWITCH
    more = run("x1", "14/2", "K2", "K9") + run("x2", "14/2", "K9", "L9")
    beside = boxes.replace("s1.common: l1.black", "s1.common: {wire: [l1.black, x1.black]}").replace(
        "[t1.white, l1.white]", "[t1.white, l1.white, x1.white]"
    )
    beside += box(
        "K9", "s1: switch", join("x1.white", "x2.white"), "s1.brass-1: x1.black, s1.brass-2: x2.black"
    )
    beside += box("L9", LAMP, f"{join('x2.black', 'f1.black')}, {join('x2.white', 'f1.white')}", "")
    found = tables(house_of, runs + more, beside)
    assert found["L1.f1.black"].switches == ("K1.s1", "K2.s1")
    assert set(found["L9.f1.black"].switches) == {"K1.s1", "K2.s1", "K9.s1"}


def test_what_the_record_does_not_tell_stands_beside_the_table(house_of: Callable) -> None:
    runs, boxes = FEED_AT_FIRST_SWITCH
    untold = boxes.replace("[t1.white, l1.white]", "[t1.white, l1.white, x1.white]")
    longer = runs + run("x1", "14/2", "K2", "unknown")
    assert "what x1 goes to is unknown" in tables(house_of, longer, untold)["L1.f1.black"].unknown


def test_edges_off_the_way_are_left_out_of_it() -> None:
    # 0 to 3 by two ways through 1 and 2; a loop 1-4-5 hangs on 1, and 6 is a dead end.
    edges = [(0, 1), (0, 2), (1, 3), (2, 3), (1, 4), (4, 5), (5, 1), (3, 6)]
    assert on_the_way(edges, 0, 3) == (0, 1, 2, 3)
    assert on_the_way(edges, 0, 9) == ()
