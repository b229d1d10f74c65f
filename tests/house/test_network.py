"""The conductor network: who is connected to whom, and what each point is."""

from collections.abc import Callable

import pytest

from junctionary.house.model import House
from junctionary.house.network import Network, network

HouseOf = Callable[[str], House]

DEVICES = """
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
  gfci: {is: gfci-receptacle, face: 5-20R}
  switch: {is: switch, ways: 1}
  lamp: {is: luminaire}
  stove: {is: receptacle, face: 14-50R, outlets: 1}
[rooms/den.yaml]
room: den
name: Den
kind: den
"""


def record(breakers: str, runs: str, boxes: str = "", *, panel: str = "main: 100 A\nbonded: true") -> str:
    """One panel, one circuit ``den`` with these runs (``a1: 12/2 NM-B, main, K1``) and these boxes."""
    lines = ""
    for line in runs.strip().splitlines():
        id_, _, rest = line.strip().partition(": ")
        cable, from_, to = rest.rsplit(", ", 2)
        lines += f"  - {{id: {id_}, cable: {cable}, from: {from_}, to: {to}}}\n"
    text = f"[panels/main.yaml]\npanel: main\nspaces: 12\n{panel}\nbreakers:\n{breakers}\n"
    text += f"[circuits/den.yaml]\ncircuit: den\nname: Den\nruns:\n{lines}{DEVICES}"
    return text + f"[boxes/den.yaml]\nroom: den\nboxes:\n{boxes or '  K1: {capped: [a1]}'}\n"


@pytest.fixture
def net_of(house_of: HouseOf) -> Callable[..., Network]:
    """From the parts of ``record`` to the network of the house."""

    def made(breakers: str, runs: str, boxes: str = "", **more: str) -> Network:
        return network(house_of(record(breakers, runs, boxes, **more)))

    return made


NetOf = Callable[..., Network]
ONE = "  1: {feeds: den}"


def lands(net: Network, point: str) -> str:
    """Where a conductor's end in a panel lands."""
    (edge,) = [each for each in net.at[point] if each.kind != "conductor"]
    return edge.other(point)


def test_a_home_run_lands_on_its_breaker_and_the_bars(net_of: NetOf) -> None:
    net = net_of(ONE, "a1: 12/2 NM-B, main, K1")
    assert [lands(net, f"main/a1.{each}") for each in ("black", "white", "bare")] == [
        "main/1",
        "main/neutral",
        "main/ground",
    ]


def test_a_two_pole_breaker_takes_black_and_red_and_leaves_white_to_the_bar(net_of: NetOf) -> None:
    net = net_of("  2+4: {feeds: den}", "a1: 6/3 NM-B, main, K1")
    assert [lands(net, f"main/a1.{each}") for each in ("black", "red", "white")] == [
        "main/2",
        "main/4",
        "main/neutral",
    ]


def test_the_white_of_a_two_wire_cable_is_the_second_pole(net_of: NetOf) -> None:
    net = net_of("  2+4: {feeds: den}", "a1: 10/2 NM-B, main, K1")
    assert lands(net, "main/a1.white") == "main/4"
    assert [feed.leg for feed in net.roles("K1/a1.white").hot] == ["B"]


def test_a_white_marked_black_is_still_the_second_pole(net_of: NetOf) -> None:
    net = net_of("  2+4: {feeds: den, marked: {white: black}}", "a1: 12/2 NM-B, main, K1")
    assert [lands(net, f"main/a1.{each}") for each in ("black", "white")] == ["main/2", "main/4"]


def test_a_hot_marked_another_hot_lands_once(net_of: NetOf) -> None:
    net = net_of("  2+4: {feeds: den, marked: {black: red}}", "a1: 12/3 NM-B, main, K1")
    assert [lands(net, f"main/a1.{each}") for each in ("black", "red")] == ["main/2", "main/4"]


def test_each_leg_of_a_multiwire_pair_lands_on_the_breaker_that_names_it(net_of: NetOf) -> None:
    net = net_of("  6: {feeds: den.red}\n  8: {feeds: den.black}", "a1: 12/3 NM-B, main, K1")
    assert (lands(net, "main/a1.black"), lands(net, "main/a1.red")) == ("main/8", "main/6")


def test_the_record_may_say_where_a_conductor_lands(net_of: NetOf) -> None:
    told = "  1: {feeds: den, lands: {black: neutral-bar/3, white: 1, bare: neutral-bar/7}}"
    net = net_of(told, "a1: 12/2 NM-B, main, K1")
    assert [lands(net, f"main/a1.{each}") for each in ("black", "white", "bare")] == [
        "main/neutral",
        "main/1",
        "main/neutral",
    ]


def test_a_landing_in_a_space_without_a_breaker_is_unknown(net_of: NetOf) -> None:
    net = net_of("  1: {feeds: den, lands: {red: 9}}", "a1: 12/3 NM-B, main, K1")
    assert [each.about for each in net.unknown_at("main/a1.red")] == ["main/a1.red"]


def test_a_conductor_that_no_pole_is_left_for_is_unknown(net_of: NetOf) -> None:
    net = net_of(ONE, "a1: 12/3 NM-B, main, K1")
    assert not net.roles("main/a1.black").unknown
    assert net.roles("main/a1.red").unknown == ("nothing tells where main/a1.red lands",)


def test_wires_told_apart_by_letters_alone_land_nowhere_unless_told(net_of: NetOf) -> None:
    old = "{open: knob-and-tube, wires: [14 AWG a, 14 AWG b]}"
    net = net_of(ONE, f"a1: {old}, main, K1")
    assert net.roles("K1/a1.a").hot == ()
    told = net_of("  1: {feeds: den, lands: {a: 1, b: neutral-bar}}", f"a1: {old}, main, K1")
    assert told.breakers_of("K1/a1.a") == ("main/1",)
    assert told.roles("K1/a1.b").neutral == ("main",)


SWITCHED = """\
  K1:
    devices: {s1: switch, f1: lamp}
    makeup: {feed: a1, switched: {s1: f1}}
"""


def test_a_switch_is_open_in_a_net_and_closed_for_a_role(net_of: NetOf) -> None:
    net = net_of(ONE, "a1: 14/2 NM-B, main, K1", SWITCHED)
    assert "K1.f1.black" not in net.net_of("K1/a1.black").points
    assert net.breakers_of("K1.f1.black") == ("main/1",)


def test_a_load_joins_nothing(net_of: NetOf) -> None:
    net = net_of(ONE, "a1: 14/2 NM-B, main, K1", SWITCHED)
    assert net.roles("K1.f1.white").hot == ()
    assert net.roles("K1.f1.white").neutral == ("main",)


def test_a_contact_knows_what_opens_it(net_of: NetOf) -> None:
    net = net_of(ONE, "a1: 14/2 NM-B, main, K1", SWITCHED)
    opened = {edge.kind: edge.opened_by for edge in net.edges if edge.opened_by}
    assert opened == {"switch": "K1.s1", "breaker": "main/1", "main": "main/main"}


def test_a_bond_joins_no_net(net_of: NetOf) -> None:
    net = net_of(ONE, "a1: 12/2 NM-B, main, K1")
    assert any(edge.kind == "bond" for edge in net.edges)
    assert net.net_of("K1/a1.white").ground == ()
    assert net.net_of("K1/a1.white").neutral == ("main",)


def test_neutral_and_ground_joined_in_a_box_are_one_net(net_of: NetOf) -> None:
    joined = "  K1: {joints: [{join: [a1.white, a1.bare]}], capped: [a1.black]}"
    net = net_of(ONE, "a1: 12/2 NM-B, main, K1", joined)
    assert (net.net_of("K1/a1.bare").neutral, net.net_of("K1/a1.bare").ground) == (("main",), ("main",))


def test_a_pigtail_is_one_edge_though_told_from_both_its_ends(net_of: NetOf) -> None:
    boxes = "  K1: {devices: {r1: duplex}, makeup: {feed: a1, onward: a2}}\n  K2: {}"
    net = net_of(ONE, "a1: 14/2 NM-B, main, K1\na2: 14/2 NM-B, K1, K2", boxes)
    kinds = [edge.kind for edge in net.at["K1.r1.brass-top"]]
    assert sorted(kinds) == ["pigtail", "tab"]


def test_the_load_side_of_a_gfci_hangs_on_its_contacts(net_of: NetOf) -> None:
    boxes = "  K1: {devices: {r1: gfci}, makeup: {feed: a1, guarded: a2}}\n  K2: {}"
    net = net_of(ONE, "a1: 12/2 NM-B, main, K1\na2: 12/2 NM-B, K1, K2", boxes)
    assert "K2/a2.black" not in net.net_of("K1.r1.line-brass").points
    assert net.breakers_of("K2/a2.black") == ("main/1",)
    assert net.roles("K2/a2.white").neutral == ("main",)


def test_the_halves_of_a_split_receptacle_are_two_nets(net_of: NetOf) -> None:
    boxes = "  K1: {devices: {r1: duplex}, split: {r1: brass}, terminals: {r1.brass-top: a1.black}}"
    net = net_of(ONE, "a1: 14/2 NM-B, main, K1", boxes)
    assert net.breakers_of("K1.r1.brass-top") == ("main/1",)
    assert net.breakers_of("K1.r1.brass-bottom") == ()


@pytest.mark.parametrize(
    ("box", "reason"),
    [
        ("{}", "how box K1 is made up is not recorded"),
        ("{makeup: unknown}", "how box K1 is made up is unknown"),
        (
            "{joints: [{join: [a1.white, a2.white]}]}",
            "K1/a1.black is told nowhere: not joined, landed, capped or loose",
        ),
    ],
)
def test_what_a_point_meets_and_nobody_told_is_said(net_of: NetOf, box: str, reason: str) -> None:
    boxes = f"  K1: {box}\n  K2: {{capped: [a2]}}"
    net = net_of(ONE, "a1: 12/2 NM-B, main, K1\na2: 12/2 NM-B, K1, K2", boxes)
    assert reason in net.roles("main/a1.black").unknown


def test_an_end_told_nowhere_puts_its_own_net_in_doubt_and_no_other(net_of: NetOf) -> None:
    boxes = "  K1: {joints: [{join: [a1.white, a2.white]}]}\n  K2: {capped: [a2]}"
    net = net_of(ONE, "a1: 12/2 NM-B, main, K1\na2: 12/2 NM-B, K1, K2", boxes)
    assert net.roles("K2/a2.white").unknown == ()


def test_a_run_that_goes_nobody_knows_where_is_said(house_of: HouseOf) -> None:
    text = record(ONE, "a1: 12/2 NM-B, main, unknown")
    told = {"is unknown": text, "is not recorded": text.replace(", to: unknown", "")}
    for said, each in told.items():
        assert network(house_of(each.replace("capped: [a1]", ""))).roles("main/a1.black").unknown == (
            f"what a1 goes to {said}",
        )


def test_conductors_of_an_unknown_cable_are_those_a_box_names(net_of: NetOf) -> None:
    boxes = "  K1: {devices: {r1: duplex}, terminals: {r1.brass: a1.black}}"
    net = net_of(ONE, "a1: unknown, main, K1", boxes)
    assert net.breakers_of("K1.r1.brass-top") == ("main/1",)
    assert "what cable a1 is, is unknown" in net.roles("K1.r1.brass-top").unknown


SUBPANEL = """
[panels/shed.yaml]
panel: shed
spaces: 8
fed_by: barn
bonded: false
breakers:
  1: {feeds: den}
[circuits/barn.yaml]
circuit: barn
name: Feeder
purpose: feeder
"""


def test_a_feeder_brings_the_buses_and_bars_of_its_panel(house_of: HouseOf) -> None:
    text = record("  2+4: {feeds: barn}", "a1: 12/2 NM-B, shed, K1", panel="main: 100 A\nfed_by: service")
    feeder = "runs: [{id: f1, cable: 6/3 NM-B, from: main, to: shed}]\n"
    net = network(house_of(text + SUBPANEL + feeder))
    assert net.breakers_of("shed/A") == ("main/2+4",)
    assert net.breakers_of("K1/a1.black") == ("shed/1",)
    assert net.net_of("K1/a1.white").neutral == ("main", "shed")
    assert net.net_of("K1/a1.bare").ground == ("main", "shed")


def test_a_subpanel_with_a_main_hangs_on_it(house_of: HouseOf) -> None:
    text = record("  2+4: {feeds: barn}", "a1: 12/2 NM-B, shed, K1", panel="main: 100 A\nfed_by: service")
    feeder = "runs: [{id: f1, cable: 6/3 NM-B, from: main, to: shed}]\n"
    net = network(house_of(text + SUBPANEL.replace("spaces: 8", "spaces: 8\nmain: 60 A") + feeder))
    assert net.breakers_of("shed/A") == ("shed/main",)
    assert net.breakers_of("shed/f1.black") == ("main/2+4",)


def test_a_feeder_of_which_no_run_is_recorded_still_feeds_its_panel(house_of: HouseOf) -> None:
    text = record("  2+4: {feeds: barn}", "a1: 12/2 NM-B, shed, K1", panel="main: 100 A\nfed_by: service")
    net = network(house_of(text + SUBPANEL))
    assert net.breakers_of("shed/B") == ("main/2+4",)


def test_a_panel_without_a_main_is_live_from_the_service_alone(net_of: NetOf) -> None:
    net = net_of(ONE, "a1: 12/2 NM-B, main, K1", panel="main: none")
    assert [edge.other("main/A") for edge in net.at["main/A"] if edge.kind == "service"] == ["service/A"]
    assert net.breakers_of("main/A") == ()
