"""A box's sheet shows what its record says, and says what it does not."""

from houses import surveyed

from junctionary.sheets.box import BoxSheet, Conductor
from junctionary.sheets.boxes import box_sheet
from junctionary.sheets.links import Ref

PANEL = "panel: main\nspaces: 4\nbreakers: {1: {rating: 15 A, feeds: den}}\n"
CIRCUIT = """\
circuit: den
name: Den receptacles
runs:
  - {id: a1, cable: 14/2 NM-B, from: main, to: K1, length: 30 ft}
  - {id: a2, cable: 14/3 NM-B, from: K1, to: K2}
"""


def sheet(box: str, more: str = "") -> BoxSheet:
    boxes = "room: den\nboxes:\n  K2: {}\n  K1:\n" + "".join(f"    {line}\n" for line in box.splitlines())
    return box_sheet(surveyed(panels=PANEL, circuits=CIRCUIT, boxes=boxes, log=more or "[]\n"), "K1")


def conductor(of: BoxSheet, name: str) -> Conductor:
    assert of.makeup is not None
    return next(each for cable in of.makeup.cables for each in cable.conductors if each.id == name)


def test_a_conductor_names_the_joint_or_terminal_it_meets() -> None:
    made = sheet(
        "devices: {r1: duplex}\n"
        "joints: [{join: [a1.white, a2.white, r1.silver], by: lever-3}]\n"
        "terminals: {r1.brass: {wire: a1.black, how: loop}}"
    )
    assert (conductor(made, "a1.white").state, conductor(made, "a1.white").meets) == ("joined", "j1")
    assert conductor(made, "a1.black").state == "landed"
    assert conductor(made, "a1.black").meets.startswith("r1.brass")


def test_a_conductor_nothing_mentions_is_not_recorded() -> None:
    assert conductor(sheet("capped: [a2.red]"), "a1.black").state == "not-recorded"


def test_a_capped_a_loose_and_a_re_marked_conductor_are_told_apart() -> None:
    made = sheet("capped: [a2.red]\nloose: [a2.bare]\nmarked: {a2.white: black}")
    assert conductor(made, "a2.red").state == "capped"
    assert conductor(made, "a2.bare").state == "loose"
    assert conductor(made, "a2.white").marked == "black"


def test_where_the_make_up_is_unknown_every_conductor_is() -> None:
    assert conductor(sheet("makeup: unknown"), "a1.black").state == "unknown"


def test_what_a_word_expands_to_says_so_and_what_is_written_out_does_not() -> None:
    by_word = sheet("devices: {r1: duplex}\nmakeup: pigtailed").makeup
    by_hand = sheet(
        "evidence: {how: seen, date: 2026-01-02, by: owner}\n"
        "joints: [{join: [a1.white, a2.white], by: lever-3}]"
    ).makeup
    assert by_word is not None
    assert by_hand is not None
    assert "by the word" in by_word.joints[0].known_by
    assert by_word.written_as
    assert by_hand.joints[0].known_by == "seen 2026-01-02, owner"


def test_the_supply_side_is_told_from_the_onward_side() -> None:
    made = sheet("makeup: unknown").makeup
    assert made is not None
    assert [(each.id, each.side) for each in made.cables] == [("a1", "feed"), ("a2", "onward")]


def test_a_torque_that_was_measured_is_shown_beside_the_listed_one() -> None:
    log = "- {date: 2026-05-21, test: torque, about: K1.r1.silver-top, value: 13 in-lb, by: owner}\n"
    made = sheet("devices: {r1: duplex}\nmakeup: {feed: a1}\ncapped: [a2]", log).makeup
    assert made is not None
    terminals = {each.name: each for each in made.devices[0].terminals}
    assert terminals["silver-top"].measured == "13 in-lb (1.47 N m)"
    assert terminals["silver-top"].torque == "14 in-lb (1.58 N m) listed"
    assert terminals["brass-top"].measured == "not recorded"


def test_the_fill_is_written_out_or_says_what_it_lacks() -> None:
    full = sheet(
        "size: {volume: 18 in3, of: plastic, clamps: none}\ndevices: {r1: duplex}\nmakeup: pigtailed"
    ).fill
    short = sheet("devices: {r1: duplex}\nmakeup: pigtailed").fill
    assert full is not None
    assert short is not None
    assert [each.figure for each in full.lines if each.is_sum][-1] == "2.00"
    assert "Cannot be told without" in short.says


def test_every_device_and_joint_can_be_linked_to() -> None:
    made = sheet("devices: {r1: duplex}\nmakeup: pigtailed")
    assert set(made.anchors()) >= {Ref("device", "K1.r1"), Ref("joint", "K1/j1")}


def test_the_lines_of_the_record_are_those_of_this_box() -> None:
    made = sheet("name: by the door\nmakeup: unknown")
    assert [each.text.splitlines()[0].strip() for each in made.excerpts] == ["K1:"]
    assert "K2" not in made.excerpts[0].text
    assert made.excerpts[0].first_line == 4


def test_a_box_nothing_is_recorded_of_has_no_drawing() -> None:
    survey = surveyed(panels=PANEL.replace(", feeds: den", ""), boxes="room: den\nboxes:\n  Z1: {}\n")
    assert box_sheet(survey, "Z1").makeup is None
