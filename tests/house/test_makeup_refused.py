"""Make-up that cannot be followed: what is said, and the line and column in the boxes' file."""

from collections.abc import Callable

import pytest

Refused = Callable[..., list[str]]

IN = "a1: 14/2 NM-B, main, K1"
IN_AND_OUT = f"{IN}\na2: 14/2 NM-B, K1, K2"
MULTIWIRE = "a1: 14/3 NM-B, main, K1"
OTHER = "d1: 12/2 NM-B, main, K1"

R1 = "devices: {r1: duplex}\n"
S1 = "devices: {s1: switch}\n"

REFUSED: dict[str, tuple[str, str, str]] = {
    # the runs, the box, and what is said of line 4 (its first) or later
    "a word and two circuits": (
        f"{IN_AND_OUT}|{OTHER}",
        f"{R1}makeup: pigtailed",
        "5:13 pigtailed does not say which runs of K1 it takes (c: a1, a2; d: d1)",
    ),
    "two bare words": (
        f"{IN_AND_OUT}|{OTHER}",
        f"{R1}makeup: [pigtailed, splice-through]",
        "5:14 pigtailed does not say which runs of K1 it takes (c: a1, a2; d: d1)",
    ),
    "a word and no run": (
        "a1: 14/2 NM-B, main, K2",
        f"{R1}makeup: end-of-run",
        "5:13 end-of-run, but no run ends in K1",
    ),
    "end-of-run and two runs": (
        IN_AND_OUT,
        f"{R1}makeup: end-of-run",
        "5:13 end-of-run in K1, where these runs end: a1, a2",
    ),
    "feed-through and one run": (
        IN,
        f"{R1}makeup: feed-through",
        "5:13 feed-through in K1, where this run ends: a1",
    ),
    "splice-through and one run": (
        IN,
        "makeup: splice-through",
        "4:13 splice-through in K1, where this run ends: a1",
    ),
    "splice-through and a device": (
        IN_AND_OUT,
        f"{R1}makeup: splice-through",
        "4:15 no entry of the make-up of K1 says how r1 is connected",
    ),
    "feed-through two devices": (
        IN_AND_OUT,
        "devices: {r1: duplex, r2: duplex}\nmakeup: feed-through",
        "5:13 feed-through in K1, whose devices are: r1, r2",
    ),
    "feed-through a switch": (
        IN_AND_OUT,
        f"{S1}makeup: feed-through",
        "5:13 s1 has no terminals of its own to carry the circuit on",
    ),
    "feed-through a split receptacle": (
        IN_AND_OUT,
        f"{R1}split: {{r1: brass}}\nmakeup: feed-through",
        "6:13 r1 carries the circuit on, but its brass tab is removed",
    ),
    "a device that two circuits might feed": (
        f"{IN}|{OTHER}",
        "devices: {r1: duplex, s1: switch}\nmakeup: [{feed: a1}, {feed: d1}]",
        "4:15 no entry of the make-up of K1 says how r1 is connected",
    ),
    "two hots and one screw": (
        MULTIWIRE,
        f"{R1}makeup: end-of-run",
        "5:13 the feed brings black and red, and which r1 of K1 takes at brass-top is not told",
    ),
    "two hots and a lamp": (
        MULTIWIRE,
        "devices: {f1: lamp}\nmakeup: end-of-run",
        "5:13 the feed brings black and red, and which f1 of K1 takes at black is not told",
    ),
    "a leg the feed lacks": (
        MULTIWIRE,
        f"{R1}makeup: {{feed: a1, takes: blue}}",
        "5:31 takes: blue, but the feed brings a1.black, a1.red",
    ),
    "one hot and a range": (
        "w1: 12/2 NM-B, main, K1",
        "devices: {r1: stove}\nmakeup: end-of-run",
        "5:13 r1 of K1 takes two hots, and the feed brings one",
    ),
    "a switch by a bare word": (
        IN_AND_OUT,
        f"{S1}makeup: pigtailed",
        "4:15 s1 of K1 is a switch, and where its other side goes is not told",
    ),
    "a receptacle that switches": (
        IN_AND_OUT,
        f"{R1}makeup: {{feed: a1, switched: {{r1: a2}}}}",
        "5:35 switched: {r1: ...}, but r1 is a receptacle",
    ),
    "a three-way that switches by itself": (
        IN_AND_OUT,
        "devices: {s2: three}\nmakeup: {feed: a1, switched: {s2: a2}}",
        "5:35 switched: {s2: ...}, but s2 is a 3-way switch",
    ),
    "two hots and one switched leg": (
        f"{IN}\nl3: 14/3 NM-B, K1, K3",
        f"{S1}makeup: {{feed: a1, switched: {{s1: l3}}}}",
        "5:39 l3 at s1 of K1 brings l3.black, l3.red",
    ),
    "travelers in two wires and a neutral": (
        f"{IN}\nh2: 12/2/2 NM-B, K1, K3",
        "devices: {s2: three}\nmakeup: {feed: a1, three_way: {s2: {common: h2.red, travelers: h2}}}",
        "5:40 h2 at s2 of K1 brings h2.black, h2.white, h2.white-red",
    ),
    "a guard that is none": (
        IN_AND_OUT,
        f"{R1}makeup: {{feed: a1, guarded: [a2]}}",
        "5:24 guarded: in K1, whose GFCI devices are: none",
    ),
    "a loop to two switches": (
        "l2: 14/2 NM-B, K3, K1",
        "devices: {s1: switch, s2: switch}\nmakeup: {loop: l2}",
        "5:20 loop: at the switch, where the switches of this entry are: s1, s2",
    ),
    "a loop of four wires": (
        f"{IN}\nl2: 14/4 NM-B, K1, K3",
        "devices: {f1: lamp}\nmakeup: {feed: a1, loop: l2}",
        "5:30 loop: l2, whose insulated conductors are black, red, blue, white",
    ),
    "no feed to be found": (
        "a1: 14/2 NM-B, main, K1\na2: 14/2 NM-B, K2, K1\na3: 14/2 NM-B, K1, K3",
        f"{R1}makeup: {{onward: [a3]}}",
        "5:13 no feed is named, and a1, a2 all come to K1",
    ),
    "a run of another box": (
        f"{IN}\na2: 14/2 NM-B, K2, K3",
        f"{R1}makeup: {{feed: a1, onward: [a2]}}",
        "5:33 run a2 does not end in K1",
    ),
    "no such run": (IN, f"{R1}makeup: {{feed: q1}}", "5:20 'q1' is neither a run nor a device in K1"),
    "one conductor where a run is due": (
        IN,
        f"{R1}makeup: {{feed: a1.black}}",
        "5:20 a1.black is one conductor",
    ),
    "no such device": (
        IN_AND_OUT,
        f"{S1}makeup: {{feed: a1, switched: {{s2: a2}}}}",
        "5:35 K1 has no device 's2'",
    ),
    "a run told onward and guarded": (
        IN_AND_OUT,
        "devices: {r1: gfci}\nmakeup: {feed: a1, onward: [a2], guarded: [a2]}",
        "5:48 a2 is told twice, as onward and as guarded",
    ),
    "a conductor in two joints": (
        IN_AND_OUT,
        "joints:\n  - {join: [a1.black, a2.black]}\n  - {join: [a1.black, a2.white]}",
        "6:17 a1.black is told twice, first at boxes/den.yaml:5:17",
    ),
    "a conductor joined and capped": (
        IN_AND_OUT,
        "joints:\n  - {join: [a1.black, a2.black]}\ncapped: [a2.black]",
        "6:14 a2.black is told twice, first at boxes/den.yaml:5:27",
    ),
    "a conductor joined and landed": (
        IN_AND_OUT,
        f"{R1}joints:\n  - {{join: [a1.black, a2.black]}}\nterminals: {{r1.brass: a2.black}}",
        "7:27 a2.black is told twice, first at boxes/den.yaml:6:27",
    ),
    "a colour the run lacks": (
        IN_AND_OUT,
        "joints:\n  - {join: [a1.black, a2.red]}",
        "5:27 run a2 has no red conductor",
    ),
    "a terminal the device lacks": (
        IN,
        f"{R1}terminals: {{r1.line-brass: a1.black}}",
        "5:17 device r1 has no terminal 'line-brass'",
    ),
    "a whole run in a joint": (IN_AND_OUT, "joints:\n  - {join: [a1, a2.black]}", "5:17 a1 is a whole run"),
    "a joint of one": (IN, "joints:\n  - {join: [a1.black]}", "5:10 a joint of a1.black"),
    "a connector nobody told": (
        IN_AND_OUT,
        "joints:\n  - {join: [a1.black, a2.black], by: lever-33}",
        "5:42 no connector 'lever-33' is recorded",
    ),
    "a wire landed on a lead": (
        IN,
        "devices: {f1: lamp}\nterminals: {f1.black: a1.black}",
        "5:17 f1.black is the device's own lead",
    ),
    "a terminal landed on a wire": (
        IN,
        f"{R1}terminals: {{a1.black: r1.brass}}",
        "5:17 a1.black is a wire",
    ),
    "a screw that is capped": (IN, f"{R1}capped: [r1.brass]", "5:14 r1.brass is no wire's end"),
    "a terminal on which nothing lands": (
        IN,
        f"{R1}makeup: end-of-run\nterminals: {{r1.brass-bottom: {{how: loop}}}}",
        "6:17 nothing lands on r1.brass-bottom, of which this speaks",
    ),
    "a jumper that leads nowhere": (
        IN_AND_OUT,
        "jumpers: {g1: 12 AWG bare}\njoints:\n  - {join: [a1.bare, a2.bare, g1]}",
        "4:15 jumper g1 joins two joints, but one joint names it",
    ),
    "a run that passes and ends": (
        IN,
        f"{R1}makeup: end-of-run\npasses: [a1]",
        "6:14 run a1 passes through K1 and ends in it",
    ),
    "a run that passes and is not recorded": (
        IN,
        f"{R1}makeup: end-of-run\npasses: [{{run: q7}}]",
        "6:20 no run 'q7' is recorded",
    ),
    "a mark on a wire that is not here": (
        IN,
        f"{R1}makeup: end-of-run\nmarked: {{a7.white: black}}",
        "6:14 a7.white is no conductor of a run that ends in K1",
    ),
    "a mark on a colour that is not there": (
        IN,
        f"{R1}makeup: end-of-run\nmarked: {{a1.red: black}}",
        "6:14 run a1 has no red conductor",
    ),
    "a split device that is not there": (
        IN,
        f"{R1}makeup: end-of-run\nsplit: {{r2: brass}}",
        "6:13 K1 has no device 'r2'",
    ),
    "a strap of a device that is not there": (
        IN,
        f"{R1}makeup: end-of-run\nyoke: [r1, r5]",
        "6:16 K1 has no device 'r5'",
    ),
    "a run and a device of one name": (
        IN,
        "devices: {a1: duplex}\nmakeup: end-of-run",
        "4:15 a1 is a device of K1 and a run that ends there (circuits/c.yaml:4:10)",
    ),
    "a jumper called as a joint is": (
        IN_AND_OUT,
        "jumpers: {j1: 12 AWG bare}\njoints:\n  - {join: [a1.bare, j1]}\n  - {join: [a2.bare, j1]}",
        "4:15 'j1' has a meaning of its own",
    ),
    "a kind nobody told": (
        IN,
        "devices: {r1: duplx}\nmakeup: end-of-run",
        "4:19 no kind of device 'duplx' is recorded",
    ),
}


@pytest.mark.parametrize("name", REFUSED)
def test_it_is_told_where_it_stands(refused: Refused, name: str) -> None:
    runs, box, said = REFUSED[name]
    here, _, other = runs.partition("|")
    assert said in refused(here, box, other)


def test_a_doubt_that_is_written_out_is_none(refused: Refused, made_up: Callable[..., object]) -> None:
    made_up(MULTIWIRE, f"{R1}makeup: end-of-run\nterminals: {{r1.brass: a1.red}}")


def test_every_fault_of_a_box_is_told_at_once(refused: Refused) -> None:
    assert refused(
        IN_AND_OUT,
        "devices: {r1: duplex}\njoints:\n  - {join: [a1.blak, r1.bras]}\n  - {join: [q1.black, a2.white]}",
    ) == [
        "6:17 run a1 has no blak conductor",
        "6:26 device r1 has no terminal 'bras'",
        "7:17 'q1.black' is neither a run nor a device in K1",
    ]
