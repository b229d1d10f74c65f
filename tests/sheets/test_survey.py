"""What is looked up once for all sheets: places, findings by page, what is missing."""

import pytest
from houses import surveyed

from junctionary.marks import Place
from junctionary.sheets.links import Ref, listed, plain
from junctionary.sheets.naming import homes, ref_of
from junctionary.sheets.schedules import not_recorded_sheet
from junctionary.sheets.splices import splices_sheet
from junctionary.sheets.survey import boxes_known, cited, excerpts, known_words
from junctionary.sheets.wording import on_sheet

PANEL = "panel: main\nspaces: 4\nbreakers: {1: {rating: 20 A, feeds: den, says: Den}}\n"
CIRCUIT = "circuit: den\nname: Den receptacles\nruns:\n  - {id: a1, cable: 14/2 NM-B, from: main, to: K1}\n"
BOXES = """\
room: den
boxes:
  K1:
    reach: {behind: bookcase}
    joints: [{join: [a1.white, r1.silver], by: lever-3}]
    devices: {r1: duplex}

  # the next one
  K2: {}
"""
SURVEY = surveyed(panels=PANEL, circuits=CIRCUIT, boxes=BOXES)


@pytest.mark.parametrize(
    ("name", "ref"),
    [
        ("main/1", Ref("space", "main/1")),
        ("K1", Ref("box", "K1")),
        ("K1.r1", Ref("device", "K1.r1")),
        ("K1.r1.brass-top", Ref("device", "K1.r1")),
        ("K1/j1", Ref("joint", "K1/j1")),
        ("K1/a1.black", Ref("box", "K1")),
        ("a1", Ref("run", "a1")),
        ("den", Ref("circuit", "den")),
        ("main", Ref("panel", "main")),
        ("nobody", None),
    ],
)
def test_a_name_means_one_thing(name: str, ref: Ref | None) -> None:
    assert ref_of(SURVEY.house, name) == ref


def test_what_is_said_of_a_device_belongs_to_its_box_room_and_circuit() -> None:
    assert homes(SURVEY.house, ["K1.r1"]) == {Ref("box", "K1"), Ref("room", "den"), Ref("circuit", "den")}


def test_a_finding_is_on_the_page_of_what_it_is_about() -> None:
    assert [each.rule.id for each in SURVEY.findings_at[Ref("circuit", "den")]].count(
        "breaker-outrates-wire"
    ) == 1


def test_no_two_findings_share_a_name() -> None:
    names = [each.ref for each in SURVEY.findings]
    assert len(names) == len(set(names))


def test_everything_a_check_lacks_is_on_the_sheet_of_missing_facts() -> None:
    shown = {each.what for each in not_recorded_sheet(SURVEY).missing}
    house, unrecorded = SURVEY.house, SURVEY.judgement.unrecorded
    assert shown == {on_sheet(house, need) for each in unrecorded for need in each.needs}


def test_the_lines_behind_a_thing_end_where_the_next_begins() -> None:
    (excerpt,) = excerpts(SURVEY, Place("boxes/all.yaml", 3, 3))
    assert excerpt.first_line == 3
    assert excerpt.text.splitlines()[-1] == "    devices: {r1: duplex}"


def test_a_place_outside_the_record_has_no_lines() -> None:
    assert excerpts(SURVEY, Place("boxes/all.yaml", 99, 1), Place("gone.yaml", 1, 1)) == ()


def test_a_joint_behind_something_comes_first() -> None:
    first = splices_sheet(SURVEY).groups[0]
    assert [(each.box.text, [line.joint.text for line in each.joints]) for each in first.boxes] == [
        ("K1", ["j1"])
    ]


def test_a_box_that_may_hold_joints_nobody_wrote_down_is_named() -> None:
    assert "K2" in plain(splices_sheet(SURVEY).lead)


def test_a_list_is_spoken() -> None:
    assert plain(listed(("a", "b", "c"))) == "a, b and c"


def test_a_title_block_counts_what_is_missing() -> None:
    assert known_words("seen", 2) == "seen, 2 facts missing"
    assert known_words("seen", 0) == "seen"


def test_sources_of_one_publication_stand_together() -> None:
    assert cited(("NEC 2023, 240.4", "UL 498, one wire", "NEC 2023, 240.6")) == (
        "NEC 2023, 240.4, 240.6; UL 498, one wire"
    )


def test_boxes_without_evidence_are_not_said_to_be_seen() -> None:
    said = boxes_known(SURVEY.house.boxes.values())
    assert "2 with no evidence" in said
    assert "seen" not in said


def test_a_finding_names_no_place_twice() -> None:
    for each in SURVEY.findings:
        led = [piece.to for piece in each.about if not isinstance(piece, str)]
        assert len(led) == len(set(led))


def test_a_fact_that_says_what_it_is_about_is_asked_for_once() -> None:
    asked = [each.what for each in SURVEY.missing]
    assert asked.count("the marked volume of box K1") <= 1
    assert not any("K1" in what.split() and asked.count(what) > 1 for what in asked)
