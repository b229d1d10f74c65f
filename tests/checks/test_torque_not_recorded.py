"""torque-not-recorded beyond its own examples."""

from collections.abc import Callable

import pytest

RULE = "torque-not-recorded"
RUN = "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 14/2 NM-B, from: unknown, to: K1}\n"


def record(box: str, makeup: str = "makeup: end-of-run") -> str:
    return f"{RUN}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{devices: {{r1: duplex}}, {makeup}, {box}}}\n"


@pytest.mark.parametrize("stage", ["made-up", "energised", "verified"])
def test_none_recorded_is_a_fault_once_the_box_is_made_up(stage: str, says: Callable) -> None:
    assert says(RULE, record(f"stage: {stage}")).found == ["boxes/den.yaml:3"]


@pytest.mark.parametrize("box", ["stage: roughed", "stage: covered", "stage: verified, built_to: nec-2014"])
def test_it_is_not_asked_before_make_up_nor_of_older_work(box: str, says: Callable) -> None:
    said = says(RULE, record(box))
    assert (said.found, said.needs) == ([], [])


def test_none_used_is_a_fault_whatever_the_stage_after_rough_in(says: Callable) -> None:
    assert says(RULE, record("torque: none, stage: as-found")).found == ["boxes/den.yaml:3"]


@pytest.mark.parametrize("box", ["stage: as-found", "name: no stage", "torque: unknown, stage: verified"])
def test_where_it_cannot_be_told_the_torque_is_missing(box: str, says: Callable) -> None:
    said = says(RULE, record(box))
    assert said.found == []
    assert len(said.needs) == 3


def test_a_torque_in_the_log_is_recorded(says: Callable) -> None:
    log = "[log.yaml]\n- {date: 2026-05-21, test: torque, about: K1.r1, result: pass}\n"
    assert says(RULE, record("stage: verified") + log).found == []


def test_a_terminal_written_out_is_where_the_fault_stands(says: Callable) -> None:
    text = (
        f"{RUN}[boxes/den.yaml]\nroom: den\nboxes:\n  K1:\n    torque: listed\n    devices: {{r1: duplex}}\n"
        "    terminals:\n      r1.brass: {wire: a1.black, how: loop}\n"
        "      r1.silver: {wire: a1.white, how: loop, torque: none}\n"
    )
    assert says(RULE, text).found == ["boxes/den.yaml:8"]


def test_wires_pushed_in_or_joined_to_leads_have_no_screw(says: Callable) -> None:
    pushed = record("stage: verified", "terminals: {r1.brass: {wire: a1.black, how: push-in}}")
    assert says(RULE, pushed).found == []
    lamp = record("stage: verified, splice: [lever-3]").replace("duplex", "lamp")
    assert says(RULE, lamp).found == []
