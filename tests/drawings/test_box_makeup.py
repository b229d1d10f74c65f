"""The make-up of a box: every conductor and joint on it, no wire on another, letters beside colours."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from overlaps import lettering_overlaps, lettering_under_wires, outside, strokes, wires_on_one_another
from samples import PIGTAILED, SWITCHES, cable, conductor

from junctionary.drawings.box_makeup import WIDEST_PX, wide_makeup
from junctionary.drawings.box_strip import MIDDLE_PX, STRIP_PX, middle_makeup, narrow_makeup
from junctionary.drawings.conductors import letters, wire
from junctionary.drawings.device_faces import device_face
from junctionary.drawings.ink import Stroke, letterings
from junctionary.drawings.terminal_marks import terminal_mark
from junctionary.sheets.box import Device, Joint, MakeUp, Terminal
from junctionary.sheets.links import Ref
from junctionary.sheets.makeup import make_up
from junctionary.sheets.survey import Survey

BOTH = pytest.mark.parametrize("makeup", [PIGTAILED, SWITCHES], ids=["pigtailed", "switches"])


@st.composite
def makeups(draw: st.DrawFn) -> MakeUp:
    """Boxes of every fullness: cables joined colour by colour, with pigtails, landings and loose ends."""
    colours = ("black", "white", "red", "bare")
    cables = []
    for number in range(draw(st.integers(1, 6))):
        chosen = draw(st.lists(st.sampled_from(colours), min_size=1, max_size=4, unique=True))
        side = draw(st.sampled_from(["feed", "onward", "unknown"]))
        states = {
            each: draw(st.sampled_from(["joined", "joined", "landed", "capped", "not-recorded"]))
            for each in chosen
        }
        cables.append((f"q{number}", side, chosen, states))
    devices = []
    for number in range(draw(st.integers(0, 3))):
        devices.append((f"r{number}", draw(st.integers(1, 5))))
    free = [(device, index) for device, count in devices for index in range(count)]
    joints, terminals, ends = [], {}, {}
    for name, _, chosen, states in cables:
        for colour in chosen:
            if states[colour] == "landed" and free:
                at = draw(st.sampled_from(free))
                terminals.setdefault(at, []).append(f"{name}.{colour}")
                ends[f"{name}.{colour}"] = f"{at[0]}.t{at[1]}"
    for number, colour in enumerate(colours, 1):
        members = [
            f"{name}.{colour}"
            for name, _, chosen, states in cables
            if colour in chosen and states[colour] == "joined"
        ]
        open_ends = [at for at in free if at not in terminals]
        if members:
            taken = draw(st.lists(st.sampled_from(open_ends), unique=True, max_size=2)) if open_ends else []
            for at in taken:
                terminals[at] = [f"=j{number}"]
            names = (*members, *(f"{device}.t{index}" for device, index in taken))
            joints.append(
                Joint(Ref("joint", f"B/j{number}"), f"j{number}", "hot", names, "lever-5", "", "seen")
            )
            ends.update(dict.fromkeys(members, f"j{number}"))
    return MakeUp(
        "T",
        "S",
        tuple(
            cable(
                name,
                side,
                "main",
                *(conductor(name, each, ends.get(f"{name}.{each}", ""), states[each]) for each in chosen),
            )
            for name, side, chosen, states in cables
        ),
        tuple(joints),
        tuple(
            Device(
                Ref("device", f"B.{device}"),
                device,
                "receptacle",
                "receptacle",
                tuple(
                    Terminal(
                        f"t{index}",
                        tuple(each for each in terminals.get((device, index), ()) if each[0] != "="),
                        next((each[1:] for each in terminals.get((device, index), ()) if each[0] == "="), ""),
                        "black",
                        "loop",
                        "14 in-lb listed",
                        "not recorded",
                    )
                    for index in range(count)
                ),
            )
            for device, count in devices
        ),
    )


@settings(deadline=None)
@given(makeups())
def test_no_two_wires_lie_on_one_another(makeup: MakeUp) -> None:
    for drawing in (wide_makeup(makeup, "w"), middle_makeup(makeup, "m"), narrow_makeup(makeup, "n")):
        assert wires_on_one_another(drawing) == []


@settings(deadline=None)
@given(makeups())
def test_no_lettering_lies_on_other_lettering(makeup: MakeUp) -> None:
    for drawing in (wide_makeup(makeup, "w"), middle_makeup(makeup, "m"), narrow_makeup(makeup, "n")):
        assert lettering_overlaps(drawing) == []
        assert outside(drawing) == []


@settings(deadline=None)
@given(makeups())
def test_it_keeps_within_its_field(makeup: MakeUp) -> None:
    assert wide_makeup(makeup, "w").width_px <= WIDEST_PX
    assert middle_makeup(makeup, "m").width_px <= MIDDLE_PX
    assert narrow_makeup(makeup, "n").width_px == STRIP_PX


@BOTH
def test_every_conductor_is_lettered_on_all(makeup: MakeUp) -> None:
    due = [letters(end.colour, end.marked) for each in makeup.cables for end in each.conductors]
    for drawing in (wide_makeup(makeup, "w"), middle_makeup(makeup, "m"), narrow_makeup(makeup, "n")):
        words = [each.text for each in letterings(drawing.marks)]
        assert all(words.count(each) >= due.count(each) for each in due)


@BOTH
def test_every_joint_and_terminal_is_named_on_all(makeup: MakeUp) -> None:
    for drawing in (wide_makeup(makeup, "w"), middle_makeup(makeup, "m"), narrow_makeup(makeup, "n")):
        words = " ".join(each.text for each in letterings(drawing.marks))
        assert all(joint.name in words for joint in makeup.joints)
        assert all(terminal.name in words for device in makeup.devices for terminal in device.terminals)


def test_a_bonding_screw_in_a_joint_is_given_no_insulation() -> None:
    joint = Joint(Ref("joint", "B/j1"), "j1", "ground", ("x.bare", "box screw"), "twist-on", "", "seen")
    makeup = MakeUp(
        "T", "S", (cable("x", "feed", "main", conductor("x", "bare", "j1", "joined")),), (joint,), ()
    )
    drawing = narrow_makeup(makeup, "n")
    assert "box screw" in [each.text for each in letterings(drawing.marks)]
    assert "other" not in [each.text for each in letterings(drawing.marks)]
    assert list(strokes(drawing.marks, "c-other")) == []


def test_a_white_re_marked_black_says_so() -> None:
    assert letters("white", "black") == "WH>BK"


def test_a_striped_conductor_shows_both_colours() -> None:
    assert letters("white-red") == "WH/RD"
    assert [each.kind.split()[-1] for each in wire("M0 0H9", "white-red")][1:] == [
        "c-white",
        "c-white",
        "c-red",
    ]


def test_a_colour_nobody_coded_is_spelt_out() -> None:
    assert letters("b") == "b"
    assert wire("M0 0H9", "b")[-1].kind.endswith("c-other")


def test_an_end_that_is_not_recorded_is_marked_by_word() -> None:
    makeup = MakeUp(
        "T", "S", (cable("x", "feed", "main", conductor("x", "black", "", "not-recorded")),), (), ()
    )
    assert "not recorded" in [each.text for each in letterings(wide_makeup(makeup, "w").marks)]
    assert "not recorded" in [each.text for each in letterings(narrow_makeup(makeup, "n").marks)]


@BOTH
def test_letters_are_never_below_nine_pixels_on_the_smallest_phone(makeup: MakeUp) -> None:
    drawing = narrow_makeup(makeup, "n")
    assert min(each.size_px for each in letterings(drawing.marks)) * (320 - 46) / STRIP_PX >= 9


def says(makeup: MakeUp) -> list[str]:
    return [
        " ".join(each.text for each in letterings(drawing.marks))
        for drawing in (wide_makeup(makeup, "w"), narrow_makeup(makeup, "n"))
    ]


def test_a_terminal_says_the_letters_of_its_wire_how_it_lands_and_its_torque_on_both() -> None:
    for words in says(PIGTAILED):
        assert "BK" in words
        assert "loop" in words
        assert "14 in-lb listed" in words
        assert "set to 14 in-lb" in words


@pytest.mark.parametrize("kind", ["wide", "narrow"])
def test_what_follows_from_a_word_is_dashed(kind: str) -> None:
    (device,) = PIGTAILED.devices
    from_word = replace(
        PIGTAILED,
        joints=(),
        devices=(replace(device, terminals=tuple(replace(each, by_word=True) for each in device.terminals)),),
    )
    draw = wide_makeup if kind == "wide" else narrow_makeup
    dashed = [len(list(strokes(draw(each, "d").marks, "dashed-fine"))) for each in (PIGTAILED, from_word)]
    assert dashed[1] - dashed[0] >= len(device.terminals)


def test_a_phone_and_paper_show_the_same_wires_as_a_desk(demo_survey: Survey) -> None:
    for box in demo_survey.house.boxes.values():
        makeup = make_up(demo_survey, box)
        if makeup is None:
            continue
        conductors = sum(len(each.conductors) for each in makeup.cables)
        for drawing in (middle_makeup(makeup, "m"), narrow_makeup(makeup, "n")):
            ends = [each for each in strokes(drawing.marks, "edge") if "M" in each.d]
            assert len(ends) >= conductors, (box.id, drawing.kind)
            assert wires_on_one_another(drawing) == [], (box.id, drawing.kind)
            assert lettering_overlaps(drawing) == [], (box.id, drawing.kind)
            assert outside(drawing) == [], (box.id, drawing.kind)


def test_no_wire_of_a_phone_runs_through_lettering(demo_survey: Survey) -> None:
    for box in demo_survey.house.boxes.values():
        makeup = make_up(demo_survey, box)
        if makeup is not None:
            for drawing in (middle_makeup(makeup, "m"), narrow_makeup(makeup, "n")):
                assert lettering_under_wires(drawing, "core") == [], (box.id, drawing.kind)


@pytest.mark.parametrize("face", ["1-15R", "5-15R", "5-20R", "6-15R", "6-20R", "6-50R", "14-30R", "14-50R"])
def test_a_receptacle_is_drawn_with_as_many_slots_as_its_configuration_has(face: str) -> None:
    device = Device(Ref("device", "D"), "r1", face, "receptacle-single", (), (), face)
    slots = [
        each for each in device_face(device, 0, 0, 42) if isinstance(each, Stroke) and each.kind == "hair"
    ]
    hots = 3 if face.startswith("14") else 2
    # A slot with a turn in it is still one path with one start.
    starts = sum(each.d.count("M") for each in slots)
    assert starts == hots + (face in ("5-20R", "6-20R"))


def test_a_lead_is_not_drawn_as_a_screw() -> None:
    lead, screw = (terminal_mark(how, 0, 0, by_word=False) for how in ("lead", "loop"))
    assert len(lead) == 1
    assert len(screw) == 2
