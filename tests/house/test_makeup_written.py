"""What is written out beside a word, what is capped, loose or passing, and what nobody knows."""

from collections.abc import Callable

from junctionary.house.model import Box, Member
from junctionary.records.values import NONE, UNKNOWN
from junctionary.units import WireSize, read_quantity

Made = Callable[..., tuple[list[str], list[str], list[str]]]
BoxOf = Callable[..., Box]

IN = "a1: 14/2 NM-B, main, K1"
IN_AND_OUT = f"{IN}\na2: 14/2 NM-B, K1, K2"


def test_a_joint_written_out_replaces_the_one_it_shares_a_conductor_with(made_up: Made) -> None:
    joints, _, untold = made_up(
        IN_AND_OUT, "devices: {r1: duplex}\nmakeup: pigtailed\njoints: [{join: [a1.black, r1.brass]}]"
    )
    assert joints == [
        "a1.black -> r1.brass-top",
        "a1.white a2.white -> r1.silver-top",
        "a1.bare a2.bare -> r1.green",
    ]
    assert untold == ["a2.black"]


def test_a_terminal_written_out_replaces_the_joint_that_reaches_it(made_up: Made) -> None:
    joints, landings, untold = made_up(
        IN_AND_OUT,
        "devices: {r1: duplex}\nmakeup: pigtailed\nterminals: {r1.silver: {wire: [a1.white, a2.white]}}",
    )
    assert joints == ["a1.black a2.black -> r1.brass-top", "a1.bare a2.bare -> r1.green"]
    assert landings == ["r1.silver-top: a1.white a2.white"]
    assert untold == []


def test_a_box_wholly_written_out_expands_nothing(made_up: Made) -> None:
    assert made_up(
        IN,
        "size: {of: steel}\ndevices: {f1: lamp}\n"
        "joints: [{join: [a1.black, f1.black]}, {join: [a1.bare, f1.green, box.screw]}]",
    ) == (["a1.black f1.black", "a1.bare f1.green box"], [], ["a1.white"])


def test_brass_is_whichever_screw_is_still_free(made_up: Made) -> None:
    _, landings, _ = made_up(
        IN_AND_OUT,
        "devices: {r1: duplex}\nterminals: {r1.brass: a1.black, r1.brass-top: a2.black}",
    )
    assert landings == ["r1.brass-bottom: a1.black", "r1.brass-top: a2.black"]


def test_a_wire_from_screw_to_screw_stands_on_both(made_up: Made) -> None:
    _, landings, _ = made_up(IN, "devices: {r1: duplex, s1: switch}\nterminals: {s1.brass-2: r1.brass}")
    assert landings == ["s1.brass-2: r1.brass-top", "r1.brass-top: s1.brass-2"]


def test_a_device_may_be_grounded_from_the_screw_of_its_box(made_up: Made) -> None:
    _, landings, _ = made_up(
        IN, "devices: {r1: duplex}\nterminals: {r1.green: box.screw, box.screw: a1.bare}"
    )
    assert landings == ["r1.green: box", "box: a1.bare"]


def test_capped_and_loose_ends_are_left_out_of_every_word(box_of: BoxOf) -> None:
    box = box_of(
        "a1: 14/3 NM-B, main, K1\na2: 14/3 NM-B, K1, K2\na9: 14/2 NM-B, K3, K1",
        "devices: {r1: duplex}\nmakeup: pigtailed\ncapped: [a9, a1.red]\nloose: [a2.red]",
    )
    assert box.capped == ("K1/a9.black", "K1/a9.white", "K1/a9.bare", "K1/a1.red")
    assert box.loose == ("K1/a2.red",)
    assert box.untold == ()
    assert [member.name for member in box.joints[0].members] == [
        "K1/a1.black",
        "K1/a2.black",
        "K1.r1.brass-top",
    ]


def test_a_lead_may_be_capped(box_of: BoxOf) -> None:
    box = box_of(IN, "devices: {f1: fan}\nmakeup: end-of-run\ncapped: f1.blue")
    assert box.capped == ("K1.f1.blue",)


def test_a_run_that_passes_through_takes_no_part(box_of: BoxOf) -> None:
    box = box_of(
        IN,
        "devices: {r1: duplex}\nmakeup: end-of-run\npasses: [{run: d4, loop: 14 in}]",
        "d4: 12/2 NM-B, main, K2",
    )
    assert [(each.run, str(each.loop)) for each in box.passing] == [("d4", "14 in")]
    assert box.runs == ("a1",)
    assert box.circuits == ("c", "d")


def test_a_run_of_unknown_cable_keeps_its_entry_from_being_expanded(made_up: Made) -> None:
    assert made_up(f"{IN}\na2: unknown, K1, K2", "devices: {r1: duplex}\nmakeup: pigtailed") == (
        [],
        [],
        ["a1.black", "a1.white", "a1.bare", "a2"],
    )


def test_a_conductor_of_an_unknown_cable_may_be_written_out(box_of: BoxOf) -> None:
    box = box_of(f"{IN}\na2: unknown, K1, K2", "joints: [{join: [a1.black, a2.black], by: unknown}]")
    assert box.joints[0].members[1] == Member("conductor", "K1/a2.black", None, None, "a2", "black")
    assert box.joints[0].by is UNKNOWN


def test_an_unknown_make_up_differs_from_one_not_recorded(box_of: BoxOf) -> None:
    unknown = box_of(IN, "devices: {r1: duplex}\nmakeup: unknown")
    unrecorded = box_of(IN, "devices: {r1: duplex}")
    assert (unknown.makeup_unknown, unknown.makeup_unrecorded) == (True, False)
    assert (unrecorded.makeup_unknown, unrecorded.makeup_unrecorded) == (False, True)
    assert unknown.untold == unrecorded.untold == ("K1/a1.black", "K1/a1.white", "K1/a1.bare")


def test_a_box_whose_every_end_is_capped_has_its_make_up_told(box_of: BoxOf) -> None:
    assert not box_of(IN, "capped: [a1]").makeup_unrecorded


def test_an_expanded_joint_says_by_which_word_and_a_written_one_does_not(box_of: BoxOf) -> None:
    box = box_of(IN_AND_OUT, "devices: {r1: duplex}\nmakeup: pigtailed\njoints: [{join: [a1.bare, a2.bare]}]")
    assert [(each.id, each.expanded, each.role) for each in box.joints] == [
        ("K1/j1", None, "ground"),
        ("K1/j2", "pigtailed", "hot"),
        ("K1/j3", "pigtailed", "neutral"),
    ]


def test_an_expanded_joint_takes_the_smallest_usual_connector_that_holds_it(box_of: BoxOf) -> None:
    box = box_of(
        f"{IN_AND_OUT}\na3: 14/2 NM-B, K1, K3",
        "devices: {r1: duplex}\nmakeup: {feed: a1, onward: [a2, a3]}",
        house="practice: {splice: [lever-5, lever-2, lever-3]}\n",
    )
    assert {each.by for each in box.joints} == {"lever-5"}
    two = box_of(IN_AND_OUT, "makeup: splice-through\nsplice: [lever-5, lever-2]")
    assert {each.by for each in two.joints} == {"lever-2"}
    assert two.joints[0].connector is not None


def test_a_joint_that_no_usual_connector_holds_has_none_recorded(box_of: BoxOf) -> None:
    box = box_of(IN_AND_OUT, "devices: {r1: duplex}\nmakeup: pigtailed\nsplice: [lever-2]")
    assert {each.by for each in box.joints} == {None}


def test_a_joint_without_a_connector_says_so(box_of: BoxOf) -> None:
    box = box_of(
        IN_AND_OUT,
        "joints: [{join: [a1.black, a2.black], by: none}, {join: [a1.white, a2.white], by: tape}]\n"
        "splice: [lever-2]",
    )
    assert [each.by for each in box.joints] == [NONE, "tape"]


def test_a_pigtail_is_of_the_joints_largest_size_unless_told(box_of: BoxOf) -> None:
    box = box_of(
        "a1: 12/2 NM-B, main, K1\na2: 14/2 NM-B, K1, K2",
        "devices: {r1: duplex}\nmakeup: pigtailed\n"
        "joints: [{join: [a1.white, a2.white, r1.silver], pigtail: 14 AWG copper}]",
    )
    pigtails = [member for joint in box.joints for member in joint.members if member.kind == "pigtail"]
    assert [each.size for each in pigtails] == [WireSize("14 AWG"), WireSize("12 AWG"), WireSize("12 AWG")]
    landed = {each.terminal: each.wires for each in box.landings}
    assert landed["K1.r1.silver-top"] == (Member("pigtail", "K1/j1", WireSize("14 AWG"), "copper"),)


def test_the_nearest_word_says_how_a_wire_is_landed(box_of: BoxOf) -> None:
    box = box_of(
        IN,
        "devices: {r1: duplex}\nmakeup: end-of-run\ntermination: clamp-plate\ntorque: 12 in-lb\n"
        "terminals: {r1.silver: {how: push-in, torque: 10 in-lb, bare: 5/8 in}}",
        house="practice: {termination: loop, torque: listed}\n",
    )
    assert [(each.terminal, each.how, str(each.torque), each.expanded) for each in box.landings] == [
        ("K1.r1.brass-top", "clamp-plate", "12 in-lb", "end-of-run"),
        ("K1.r1.silver-top", "push-in", "10 in-lb", "end-of-run"),
        ("K1.r1.green", "clamp-plate", "12 in-lb", "end-of-run"),
    ]
    assert box.landings[1].bare == read_quantity("5/8 in", "length")


def test_a_device_that_takes_only_another_way_wins_over_practice(box_of: BoxOf) -> None:
    box = box_of(IN, "devices: {r1: gfci}\nmakeup: end-of-run", house="practice: {termination: push-in}\n")
    assert [each.how for each in box.landings] == ["clamp-plate", "clamp-plate", "loop"]


def test_a_jumper_joins_two_joints(box_of: BoxOf) -> None:
    box = box_of(
        IN_AND_OUT,
        "jumpers: {g1: 12 AWG bare}\njoints: [{join: [a1.bare, g1]}, {join: [a2.bare, g1]}]",
    )
    jumper = Member("jumper", "K1/g1", WireSize("12 AWG"), "copper", None, "bare")
    assert [each.members[1] for each in box.joints] == [jumper, jumper]


def test_places_are_the_entry_for_a_joint_and_the_device_for_a_landing(box_of: BoxOf) -> None:
    box = box_of(IN_AND_OUT, "devices: {r1: duplex}\nmakeup: pigtailed\nterminals: {r1.green: {how: loop}}")
    assert {str(each.place) for each in box.joints} == {"boxes/den.yaml:5:13"}
    assert {each.terminal: str(each.place) for each in box.landings} == {
        "K1.r1.brass-top": "boxes/den.yaml:4:15",
        "K1.r1.silver-top": "boxes/den.yaml:4:15",
        "K1.r1.green": "boxes/den.yaml:6:17",
    }


def test_a_device_is_on_the_circuits_that_land_on_it_but_not_by_its_ground(box_of: BoxOf) -> None:
    box = box_of(
        IN,
        "devices: {r1: duplex, f1: lamp}\nmakeup: [{feed: a1, devices: [r1]}, {feed: d1, devices: [f1]}]",
        "d1: 14/2 NM-B, main, K1",
    )
    assert [(each.id, each.circuits) for each in box.devices] == [("K1.r1", ("c",)), ("K1.f1", ("d",))]
