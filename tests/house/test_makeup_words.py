"""Each word of make-up in one small box: exactly these joints, these landings, these ends told nowhere.

A joint reads ``a1.black a2.black -> r1.brass-top``: its wires, then the
terminals it reaches by pigtails. A landing is a wire straight on a terminal.
"""

from collections.abc import Callable

import pytest

Made = Callable[..., tuple[list[str], list[str], list[str]]]

IN = "a1: 14/2 NM-B, main, K1"
IN_AND_OUT = f"{IN}\na2: 14/2 NM-B, K1, K2"
MULTIWIRE = "a1: 14/3 NM-B, main, K1\na2: 14/3 NM-B, K1, K2"


def test_at_the_end_of_a_run_each_wire_lands_straight(made_up: Made) -> None:
    assert made_up(IN, "devices: {r1: duplex}\nmakeup: end-of-run") == (
        [],
        ["r1.brass-top: a1.black", "r1.silver-top: a1.white", "r1.green: a1.bare"],
        [],
    )


def test_pigtailed_joins_colour_by_colour_with_a_pigtail_to_the_device(made_up: Made) -> None:
    assert made_up(IN_AND_OUT, "devices: {r1: duplex}\nmakeup: pigtailed") == (
        [
            "a1.black a2.black -> r1.brass-top",
            "a1.white a2.white -> r1.silver-top",
            "a1.bare a2.bare -> r1.green",
        ],
        [],
        [],
    )


def test_pigtailed_reaches_every_device_of_the_box(made_up: Made) -> None:
    joints, _, _ = made_up(IN, "devices: {r1: duplex, r2: duplex}\nmakeup: pigtailed")
    assert joints == [
        "a1.black -> r1.brass-top r2.brass-top",
        "a1.white -> r1.silver-top r2.silver-top",
        "a1.bare -> r1.green r2.green",
    ]


def test_feed_through_puts_each_run_on_a_screw_pair_and_joins_the_grounds(made_up: Made) -> None:
    assert made_up(IN_AND_OUT, "devices: {r1: duplex}\nmakeup: feed-through") == (
        ["a1.bare a2.bare -> r1.green"],
        [
            "r1.brass-top: a1.black",
            "r1.brass-bottom: a2.black",
            "r1.silver-top: a1.white",
            "r1.silver-bottom: a2.white",
        ],
        [],
    )


def test_feed_through_a_gfci_puts_the_feed_on_its_line_side(made_up: Made) -> None:
    _, landings, _ = made_up(IN_AND_OUT, "devices: {r1: gfci}\nmakeup: feed-through")
    assert landings == [
        "r1.line-brass: a1.black",
        "r1.load-brass: a2.black",
        "r1.line-silver: a1.white",
        "r1.load-silver: a2.white",
    ]


def test_feed_through_a_single_receptacle_lands_both_wires_on_its_one_screw(made_up: Made) -> None:
    _, landings, _ = made_up(IN_AND_OUT, "devices: {r1: single}\nmakeup: feed-through")
    assert landings == ["r1.brass: a1.black a2.black", "r1.silver: a1.white a2.white"]


def test_splice_through_joins_colour_by_colour_without_a_device(made_up: Made) -> None:
    assert made_up(MULTIWIRE, "makeup: splice-through") == (
        ["a1.black a2.black", "a1.red a2.red", "a1.white a2.white", "a1.bare a2.bare"],
        [],
        [],
    )


def test_splice_through_carries_old_wires_on_by_their_letters(made_up: Made) -> None:
    old = "{open: knob-and-tube, wires: [14 AWG a, 14 AWG b]}"
    joints, _, _ = made_up(f"a1: {old}, main, K1\na2: {old}, K1, K2", "makeup: splice-through")
    assert joints == ["a1.a a2.a", "a1.b a2.b"]


def test_wires_told_apart_by_letters_alone_land_on_nothing(made_up: Made) -> None:
    old = "{open: knob-and-tube, wires: [14 AWG a, 14 AWG b]}"
    assert made_up(f"a1: {old}, main, K1", "devices: {r1: duplex}\nmakeup: end-of-run") == (
        [],
        [],
        ["a1.a", "a1.b"],
    )


def test_an_old_wire_marked_black_is_the_hot(made_up: Made) -> None:
    old = "{open: knob-and-tube, wires: [14 AWG a, 14 AWG b]}"
    box = "devices: {r1: duplex}\nmakeup: end-of-run\nmarked: {a1.a: black, a1.b: white}"
    _, landings, _ = made_up(f"a1: {old}, main, K1", box)
    assert landings == ["r1.brass-top: a1.a", "r1.silver-top: a1.b"]


def test_feed_and_onward_are_pigtailed(made_up: Made) -> None:
    joints, _, _ = made_up(IN_AND_OUT, "devices: {r1: duplex}\nmakeup: {feed: a1, onward: [a2]}")
    assert joints == [
        "a1.black a2.black -> r1.brass-top",
        "a1.white a2.white -> r1.silver-top",
        "a1.bare a2.bare -> r1.green",
    ]


def test_a_feed_that_is_not_named_is_the_run_that_comes_here(made_up: Made) -> None:
    joints, _, _ = made_up(IN_AND_OUT, "devices: {r1: duplex}\nmakeup: {onward: a2}")
    assert joints[0] == "a1.black a2.black -> r1.brass-top"


def test_through_hangs_onward_on_the_device_itself(made_up: Made) -> None:
    joints, landings, _ = made_up(IN_AND_OUT, "devices: {r1: duplex}\nmakeup: {through: r1}")
    assert joints == ["a1.bare a2.bare -> r1.green"]
    assert landings[:2] == ["r1.brass-top: a1.black", "r1.brass-bottom: a2.black"]


def test_through_one_device_leaves_the_other_on_a_pigtail_of_the_feed(made_up: Made) -> None:
    joints, landings, _ = made_up(
        IN_AND_OUT, "devices: {r1: duplex, r2: duplex}\nmakeup: {feed: a1, onward: a2, through: r1}"
    )
    assert joints[:2] == ["a1.black -> r1.brass-top r2.brass-top", "a1.white -> r1.silver-top r2.silver-top"]
    assert landings == ["r1.brass-bottom: a2.black", "r1.silver-bottom: a2.white"]


def test_guarded_hangs_on_the_load_side(made_up: Made) -> None:
    assert made_up(IN_AND_OUT, "devices: {r1: gfci}\nmakeup: {feed: a1, guarded: [a2]}") == (
        ["a1.bare a2.bare -> r1.green"],
        [
            "r1.line-brass: a1.black",
            "r1.load-brass: a2.black",
            "r1.line-silver: a1.white",
            "r1.load-silver: a2.white",
        ],
        [],
    )


def test_onward_beside_guarded_is_joined_on_the_line_side(made_up: Made) -> None:
    joints, landings, _ = made_up(
        f"{IN_AND_OUT}\na3: 14/2 NM-B, K1, K3",
        "devices: {r1: gfci}\nmakeup: {feed: a1, guarded: [a2], onward: [a3]}",
    )
    assert joints == [
        "a1.black a3.black -> r1.line-brass",
        "a1.white a3.white -> r1.line-silver",
        "a1.bare a3.bare a2.bare -> r1.green",
    ]
    assert landings == ["r1.load-brass: a2.black", "r1.load-silver: a2.white"]


def test_a_switch_beside_a_gfci_may_be_guarded_with_what_it_sends_out(made_up: Made) -> None:
    joints, landings, _ = made_up(
        f"{IN}\nl3: 14/2 NM-B, K1, K3",
        "devices: {r1: gfci, s1: switch}\nmakeup: {feed: a1, guarded: [s1], switched: {s1: l3}}",
    )
    assert joints == ["a1.bare l3.bare -> r1.green s1.green"]
    assert landings == [
        "r1.line-brass: a1.black",
        "s1.brass-2: l3.black",
        "r1.line-silver: a1.white",
        "r1.load-silver: l3.white",
    ]


def test_on_names_the_leg_of_a_multiwire_feed_that_the_device_takes(made_up: Made) -> None:
    joints, _, _ = made_up(MULTIWIRE, "devices: {r1: duplex}\nmakeup: {takes: red}")
    assert joints == [
        "a1.black a2.black",
        "a1.red a2.red -> r1.brass-top",
        "a1.white a2.white -> r1.silver-top",
        "a1.bare a2.bare -> r1.green",
    ]


def test_a_multiwire_neutral_is_pigtailed_even_where_the_hot_goes_through(made_up: Made) -> None:
    joints, landings, _ = made_up(
        MULTIWIRE, "devices: {r1: duplex}\nmakeup: {feed: a1, onward: a2, takes: black, through: r1}"
    )
    assert "a1.white a2.white -> r1.silver-top" in joints
    assert landings == ["r1.brass-top: a1.black", "r1.brass-bottom: a2.black"]


def test_switched_sends_the_other_screw_out_and_joins_the_neutrals(made_up: Made) -> None:
    assert made_up(
        f"{IN_AND_OUT}\nl3: 14/2 NM-B, K1, K3",
        "devices: {s1: switch}\nmakeup: {feed: a1, onward: [a2], switched: {s1: l3}}",
    ) == (
        [
            "a1.black a2.black -> s1.brass-1",
            "a1.white a2.white l3.white",
            "a1.bare a2.bare l3.bare -> s1.green",
        ],
        ["s1.brass-2: l3.black"],
        [],
    )


def test_two_switches_may_share_one_cable(made_up: Made) -> None:
    joints, landings, _ = made_up(
        f"{IN}\na2: 14/3 NM-B, K1, K3",
        "devices: {s1: switch, s2: switch}\nmakeup: {feed: a1, switched: {s1: a2.black, s2: a2.red}}",
    )
    assert joints[0] == "a1.black -> s1.brass-1 s2.brass-1"
    assert landings == ["s1.brass-2: a2.black", "s2.brass-2: a2.red"]


def test_a_switch_may_feed_two_runs(made_up: Made) -> None:
    joints, _, _ = made_up(
        f"{IN}\nl3: 14/2 NM-B, K1, K3\nl4: 14/2 NM-B, K1, K4",
        "devices: {s1: switch}\nmakeup: {feed: a1, switched: {s1: [l3, l4]}}",
    )
    assert "l3.black l4.black -> s1.brass-2" in joints


def test_a_switch_may_send_to_a_lamp_in_its_own_box(made_up: Made) -> None:
    assert made_up(IN, "devices: {f1: lamp, s1: switch}\nmakeup: {feed: a1, switched: {s1: f1.black}}") == (
        ["a1.white f1.white", "a1.bare f1.green -> s1.green"],
        ["s1.brass-1: a1.black", "s1.brass-2: f1.black"],
        [],
    )


def test_a_lamp_that_no_switch_is_told_for_is_always_hot(made_up: Made) -> None:
    joints, _, _ = made_up(IN, "devices: {f1: lamp}\nmakeup: end-of-run")
    assert joints == ["a1.black f1.black", "a1.white f1.white", "a1.bare f1.green"]


def test_a_dimmer_takes_a_neutral_only_where_it_has_the_lead(made_up: Made) -> None:
    runs = f"{IN}\nl3: 14/2 NM-B, K1, K3"
    makeup = "makeup: {feed: a1, switched: {s1: l3}}"
    without, _, _ = made_up(runs, f"devices: {{s1: dimmer}}\n{makeup}")
    taken, _, _ = made_up(runs, f"devices: {{s1: smart}}\n{makeup}")
    assert without == [
        "a1.black s1.line",
        "l3.black s1.load",
        "a1.white l3.white",
        "a1.bare l3.bare s1.green",
    ]
    assert taken[2] == "a1.white l3.white s1.neutral"


def test_a_hot_may_go_on_in_the_cable_that_also_carries_the_switched_leg(made_up: Made) -> None:
    joints, landings, untold = made_up(
        f"{IN}\nx1: 14/3 NM-B, K1, K2",
        "devices: {s1: switch}\nmakeup: {feed: a1, onward: x1, switched: {s1: x1.red}}",
    )
    assert joints[0] == "a1.black x1.black -> s1.brass-1"
    assert landings == ["s1.brass-2: x1.red"]
    assert untold == []


def test_half_of_a_split_receptacle_takes_the_switched_leg_where_its_screw_is_written_out(
    made_up: Made,
) -> None:
    assert made_up(
        "x1: 14/3 NM-B, K3, K1",
        "devices: {r1: duplex}\nsplit: {r1: brass}\nmakeup: end-of-run\nterminals: {r1.brass-top: x1.red}",
    ) == (
        [],
        [
            "r1.brass-top: x1.red",
            "r1.brass-bottom: x1.black",
            "r1.silver-top: x1.white",
            "r1.green: x1.bare",
        ],
        [],
    )


def test_half_of_a_split_receptacle_may_be_switched_in_its_own_box(made_up: Made) -> None:
    joints, landings, _ = made_up(
        IN,
        "devices: {r1: duplex, s1: switch}\nsplit: {r1: brass}\n"
        "makeup: {feed: a1, switched: {s1: r1.brass-top}}",
    )
    assert "a1.black -> r1.brass-bottom s1.brass-1" in joints
    assert {"r1.brass-top: s1.brass-2", "s1.brass-2: r1.brass-top"} <= set(landings)


def test_a_two_wire_loop_at_the_lamp_takes_supply_down_its_white(made_up: Made) -> None:
    joints, _, _ = made_up(
        f"{IN}\nl2: 14/2 NM-B, K1, K3",
        "devices: {f1: lamp}\nmakeup: {feed: a1, loop: l2}\nmarked: {l2.white: black}",
    )
    assert joints == [
        "a1.black l2.white",
        "l2.black f1.black",
        "a1.white f1.white",
        "a1.bare l2.bare f1.green",
    ]


def test_a_two_wire_loop_at_the_switch_comes_down_on_its_white(made_up: Made) -> None:
    assert made_up(
        "l2: 14/2 NM-B, K3, K1", "devices: {s1: switch}\nmakeup: {loop: l2}\nmarked: {l2.white: black}"
    ) == ([], ["s1.brass-1: l2.white", "s1.brass-2: l2.black", "s1.green: l2.bare"], [])


def test_a_three_wire_loop_at_the_lamp_carries_its_neutral_along(made_up: Made) -> None:
    joints, _, _ = made_up(
        f"{IN}\nl2: 14/3 NM-B, K1, K3", "devices: {f1: lamp}\nmakeup: {feed: a1, loop: l2}"
    )
    assert joints == [
        "a1.black l2.black",
        "l2.red f1.black",
        "a1.white l2.white f1.white",
        "a1.bare l2.bare f1.green",
    ]


def test_a_three_wire_loop_at_a_plain_switch_leaves_its_neutral_to_be_told(made_up: Made) -> None:
    assert made_up("l2: 14/3 NM-B, K3, K1", "devices: {s1: switch}\nmakeup: {loop: l2}") == (
        [],
        ["s1.brass-1: l2.black", "s1.brass-2: l2.red", "s1.green: l2.bare"],
        ["l2.white"],
    )


def test_a_dimmer_at_the_end_of_a_three_wire_loop_takes_its_neutral(made_up: Made) -> None:
    joints, _, _ = made_up("l2: 14/3 NM-B, K3, K1", "devices: {s1: smart}\nmakeup: {loop: l2}")
    assert "l2.white s1.neutral" in joints


def test_a_three_way_takes_the_feed_on_its_common(made_up: Made) -> None:
    assert made_up(
        f"{IN}\nh2: 14/3 NM-B, K1, K3",
        "devices: {s2: three}\nmakeup: {feed: a1, three_way: {s2: {common: feed, travelers: h2}}}",
    ) == (
        ["a1.white h2.white", "a1.bare h2.bare -> s2.green"],
        ["s2.common: a1.black", "s2.traveler-1: h2.black", "s2.traveler-2: h2.red"],
        [],
    )


def test_a_three_way_at_the_far_end_sends_its_common_to_the_lamp(made_up: Made) -> None:
    assert made_up(
        "h2: 14/3 NM-B, K3, K1\nl3: 14/2 NM-B, K1, K2",
        "devices: {s2: three}\nmakeup: {three_way: {s2: {common: l3, travelers: h2}}}",
    ) == (
        ["l3.white h2.white", "l3.bare h2.bare -> s2.green"],
        ["s2.common: l3.black", "s2.traveler-1: h2.black", "s2.traveler-2: h2.red"],
        [],
    )


def test_a_three_way_dimmer_is_made_up_as_a_three_way(made_up: Made) -> None:
    joints, _, _ = made_up(
        "h2: 14/3 NM-B, K3, K1\nl3: 14/2 NM-B, K1, K2",
        "devices: {s2: dimmer-3}\nmakeup: {three_way: {s2: {common: l3, travelers: h2}}}",
    )
    assert joints[:3] == ["l3.black s2.common", "h2.black s2.traveler-1", "h2.red s2.traveler-2"]


def test_travelers_may_be_a_red_and_a_re_marked_white(made_up: Made) -> None:
    _, landings, _ = made_up(
        "h2: 14/3 NM-B, K3, K1",
        "devices: {s2: three}\nmarked: {h2.white: red}\n"
        "makeup: {three_way: {s2: {common: h2.black, travelers: [h2.red, h2.white]}}}",
    )
    assert landings == [
        "s2.common: h2.black",
        "s2.traveler-1: h2.red",
        "s2.traveler-2: h2.white",
        "s2.green: h2.bare",
    ]


def test_a_four_way_takes_travelers_in_and_out(made_up: Made) -> None:
    assert made_up(
        "h2: 14/3 NM-B, K3, K1\nh3: 14/3 NM-B, K1, K2",
        "devices: {s3: four}\nmakeup: {four_way: {s3: {in: h2, out: h3}}}",
    ) == (
        ["h2.white h3.white", "h2.bare h3.bare -> s3.green"],
        ["s3.in-1: h2.black", "s3.in-2: h2.red", "s3.out-1: h3.black", "s3.out-2: h3.red"],
        [],
    )


def test_a_240_volt_receptacle_on_two_wires_takes_the_white_as_its_second_hot(made_up: Made) -> None:
    assert made_up("w1: 12/2 NM-B, main, K1", "devices: {r1: heat}\nmakeup: end-of-run") == (
        [],
        ["r1.x: w1.black", "r1.y: w1.white", "r1.g: w1.bare"],
        [],
    )


def test_a_range_outlet_takes_two_hots_a_neutral_and_a_ground(made_up: Made) -> None:
    _, landings, _ = made_up("w1: 6/3 NM-B, main, K1", "devices: {r1: stove}\nmakeup: end-of-run")
    assert landings == ["r1.x: w1.black", "r1.y: w1.red", "r1.w: w1.white", "r1.g: w1.bare"]


def test_an_inlet_lands_the_run_that_leaves_its_box(made_up: Made) -> None:
    _, landings, _ = made_up("gi: 10/3 NM-B, K1, main", "devices: {i1: inlet}\nmakeup: end-of-run")
    assert landings == ["i1.x: gi.black", "i1.y: gi.red", "i1.w: gi.white", "i1.g: gi.bare"]


def test_a_disconnect_carries_both_poles_on(made_up: Made) -> None:
    assert made_up(
        "w1: 10/2 NM-B, main, K1\nw2: 10/2 NM-B, K1, K2", "devices: {d1: pull}\nmakeup: feed-through"
    ) == (
        ["w1.bare w2.bare -> d1.green"],
        ["d1.line-1: w1.black", "d1.line-2: w1.white", "d1.load-1: w2.black", "d1.load-2: w2.white"],
        [],
    )


def test_a_disconnect_on_three_wires_leaves_the_neutral_joined(made_up: Made) -> None:
    joints, landings, _ = made_up(
        "w1: 10/3 NM-B, main, K1\nw2: 10/3 NM-B, K1, K2", "devices: {d1: pull}\nmakeup: {through: d1}"
    )
    assert joints == ["w1.white w2.white", "w1.bare w2.bare -> d1.green"]
    assert landings == [
        "d1.line-1: w1.black",
        "d1.line-2: w1.red",
        "d1.load-1: w2.black",
        "d1.load-2: w2.red",
    ]


def test_a_240_volt_heater_joins_its_red_to_the_white_that_is_hot(made_up: Made) -> None:
    joints, _, _ = made_up("w1: 12/2 NM-B, main, K1", "devices: {h1: heater}\nmakeup: end-of-run")
    assert joints == ["w1.black h1.black", "w1.white h1.red", "w1.bare h1.green"]


@pytest.mark.parametrize("first", ["14/2", "14/3"])
def test_the_signal_of_alarms_goes_on_from_the_first_of_them(made_up: Made, first: str) -> None:
    joints, _, untold = made_up(
        f"a1: {first} NM-B, main, K1\na2: 14/3 NM-B, K1, K2", "devices: {f1: alarm}\nmakeup: pigtailed"
    )
    signal = "a2.red f1.orange" if first == "14/2" else "a1.red a2.red f1.orange"
    assert joints[:3] == ["a1.black a2.black f1.black", signal, "a1.white a2.white f1.white"]
    assert untold == []


def test_two_circuits_keep_their_neutrals_apart_and_share_one_ground(made_up: Made) -> None:
    assert made_up(
        IN_AND_OUT,
        "devices: {r1: duplex, s1: switch}\n"
        "makeup: [{feed: a1, onward: a2, devices: [r1]}, {feed: d1, switched: {s1: d2}}]",
        "d1: 14/2 NM-B, main, K1\nd2: 14/2 NM-B, K1, K4",
    ) == (
        [
            "a1.black a2.black -> r1.brass-top",
            "a1.white a2.white -> r1.silver-top",
            "d1.white d2.white",
            "a1.bare a2.bare d1.bare d2.bare -> r1.green s1.green",
        ],
        ["s1.brass-1: d1.black", "s1.brass-2: d2.black"],
        [],
    )


def test_a_word_may_take_what_another_entry_leaves(made_up: Made) -> None:
    joints, _, _ = made_up(
        IN_AND_OUT,
        "devices: {r1: duplex}\nmakeup: [{feed: a1, onward: a2}, splice-through]",
        "d1: 14/2 NM-B, main, K1\nd2: 14/2 NM-B, K1, K4",
    )
    assert "d1.black d2.black" in joints


def test_a_metal_box_is_bonded_by_every_word(made_up: Made) -> None:
    joints, _, _ = made_up(IN, "size: {of: steel}\ndevices: {r1: duplex}\nmakeup: end-of-run")
    assert joints == ["a1.bare box -> r1.green"]


def test_the_one_ground_of_a_metal_box_without_a_device_lands_on_its_screw(made_up: Made) -> None:
    _, landings, _ = made_up(
        "a1: 14/2 NM no ground, main, K1\na2: 14/2 NM-B, K1, K2", "size: {of: steel}\nmakeup: splice-through"
    )
    assert landings == ["box: a2.bare"]


def test_armor_bonds_the_box_and_the_device_hangs_on_its_screw(made_up: Made) -> None:
    _, landings, untold = made_up(
        "a1: 14/2 AC, main, K1", "size: {of: steel}\ndevices: {r1: duplex}\nmakeup: end-of-run"
    )
    assert landings[2:] == ["r1.green: box", "box: a1.armor"]
    assert untold == []


def test_old_cable_without_a_ground_leaves_the_green_screw_bare(made_up: Made) -> None:
    assert made_up("a1: 14/2 NM no ground, main, K1", "devices: {r1: duplex}\nmakeup: end-of-run") == (
        [],
        ["r1.brass-top: a1.black", "r1.silver-top: a1.white"],
        [],
    )


def test_a_cable_of_two_circuits_keeps_its_neutrals_apart(made_up: Made) -> None:
    joints, _, _ = made_up(
        "a1: 12/2/2 NM-B, main, K1\na2: 12/2/2 NM-B, K1, K2", "devices: {r1: duplex}\nmakeup: {takes: red}"
    )
    assert joints == [
        "a1.black a2.black",
        "a1.red a2.red -> r1.brass-top",
        "a1.white a2.white",
        "a1.white-red a2.white-red -> r1.silver-top",
        "a1.bare a2.bare -> r1.green",
    ]
