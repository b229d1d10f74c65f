"""The lookups as a user meets them: trace, isolate and suspect."""

import json
from pathlib import Path

import pytest

from junctionary.cli import main

RECORD = ("--record", str(Path(__file__).parents[2] / "content"))


@pytest.mark.parametrize(
    "asked", [("trace", "K2.r1"), ("isolate", "K11"), ("suspect", "--dead", "K2", "K5", "--live", "K1")]
)
def test_the_cautions_come_before_what_could_lead_to_opening_a_box(
    asked: tuple[str, ...], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*asked, *RECORD]) == 0
    said = capsys.readouterr().out
    cautions = said.index("lock or tag it")
    for first in ("known live source again", "licensed electrician decide"):
        assert first in said
    assert cautions < min(said.find(each) for each in ("\nhot:", "  off  ", "; weight") if each in said)
    assert "safe" not in said.lower()


def test_isolate_lists_both_circuits_of_a_box_and_why(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["isolate", "K11.r1", *RECORD]) == 0
    said = capsys.readouterr().out
    assert "K11, the box of K11.r1" in said
    assert "off  main/23: reaches dw1.black" in said
    assert "off  main/24: reaches dp2.black" in said


def test_isolate_of_a_panel_says_what_stays_live(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["isolate", "main", *RECORD]) == 0
    assert "stays live  the service conductors" in capsys.readouterr().out


def test_isolate_says_unknown_and_the_main(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["isolate", "X1", *RECORD]) == 0
    said = capsys.readouterr().out
    assert "UNKNOWN: MAIN OFF, AND STILL TEST: main/main" in said
    assert "because" in said


def test_trace_goes_joint_by_joint_to_the_breaker(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["trace", "K2.r1.top", *RECORD, "--format", "json"]) == 0
    told = json.loads(capsys.readouterr().out)
    hot = told["answer"]["hot"][0]
    assert hot["points"][:2] == ["K2.r1.brass-top", "K2/j1"]
    assert hot["breakers"] == ["main/17", "main/main"]
    assert hot["length"]["total"] == "55 ft"
    assert any("known live source" in each for each in told["cautions"])


def test_suspect_as_data_names_places_and_what_must_be_off(capsys: pytest.CaptureFixture[str]) -> None:
    asked = ["--dead", "K2", "K5", "--live", "K1", "--reading", "K2.r1.top=hot-only", "--format", "json"]
    assert main(["suspect", *asked, *RECORD]) == 0
    answer = json.loads(capsys.readouterr().out)["answer"]
    first = answer["suspects"][0]
    assert first["site"]["id"] == "K1.r1.load-silver"
    assert first["roles"] == ["neutral"]
    assert [each["id"] for each in first["before"]["breakers"]] == ["main/17"]


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        (("trace", "K2.r11"), "the nearest is K2.r1"),
        (("isolate", "K111"), "the nearest is K11"),
        (("suspect", "--dead", "K2.r9"), "the nearest is K2.r1"),
        (("trace", "K2"), "that is a box, with K2.r1"),
        (("trace", "cn1"), "that is a run, with cn1.black, cn1.white and cn1.bare"),
        (("isolate", "laundry"), "that is a room, with L1, L2, L3, L4 and L5"),
        (("isolate", "dishwasher"), "that is a circuit, with K11"),
        (("suspect", "--dead", "K2", "--reading", "K2.r1=hot-onyl"), "the nearest is hot-only"),
        (("suspect", "--dead", "K2", "--reading", "hot-only"), "ID=READING"),
        (("suspect", "--dead", "K13.s1"), "no receptacle, lamp, fan or appliance there"),
        (("suspect", "--live", "K2"), "nothing is told to be dead"),
    ],
)
def test_what_cannot_be_asked_is_told_and_ends_with_2(
    asked: tuple[str, ...], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main([*asked, *RECORD]) == 2
    said = capsys.readouterr()
    assert says in said.err
    assert said.out == ""


def test_a_record_that_cannot_be_read_gives_no_answer(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["isolate", "K1", "--record", str(tmp_path)]) == 2
    said = capsys.readouterr()
    assert "Nothing was answered" in said.err
    assert said.out == ""
