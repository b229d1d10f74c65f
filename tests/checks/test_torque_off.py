"""torque-off beyond its own examples."""

from collections.abc import Callable

import pytest

RULE = "torque-off"
RUN = "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 14/2 NM-B, from: unknown, to: K1}\n"


def record(box: str, *log: str) -> str:
    entries = "".join(f"- {{{each}}}\n" for each in log)
    told = f"{RUN}[boxes/den.yaml]\nroom: den\nboxes:\n  K1:\n    devices: {{r1: duplex}}\n    {box}\n"
    return told + (f"[log.yaml]\n{entries}" if log else "")


MADE = "makeup: end-of-run"
WRITTEN = "terminals: {r1.brass: {wire: a1.black, how: loop, torque: 14 in-lb}}"


def test_what_is_written_at_the_terminal_is_judged_on_its_line(says: Callable) -> None:
    assert says(RULE, record(WRITTEN.replace("14 in-lb", "9 in-lb"))).found == ["boxes/den.yaml:5"]


@pytest.mark.parametrize("about", ["K1.r1.brass", "K1.r1.brass-top", "K1.r1", "K1"])
def test_the_log_may_name_the_screw_the_device_or_the_box(about: str, says: Callable) -> None:
    assert says(RULE, record(MADE, f"date: 2026-05-01, test: torque, about: {about}, value: 9 in-lb")).found


def test_the_latest_test_counts(says: Callable) -> None:
    first = "date: 2026-05-01, test: torque, about: K1.r1, value: 9 in-lb"
    later = "date: 2026-05-02, test: torque, about: K1, result: pass"
    assert says(RULE, record(MADE, first, later)).found == []
    assert says(RULE, record(MADE, later, first)).found == []


def test_of_one_day_the_test_of_the_screw_itself_counts(says: Callable) -> None:
    box = "date: 2026-05-01, test: torque, about: K1, result: pass"
    screw = "date: 2026-05-01, test: torque, about: K1.r1.brass-top, value: 9 in-lb"
    assert says(RULE, record(MADE, screw, box)).found == ["boxes/den.yaml:4"]


def test_a_test_that_failed_is_a_fault_and_no_missing_torque(says: Callable) -> None:
    failed = record(
        f"{MADE}\n    stage: verified", "date: 2026-05-01, test: torque, about: K1.r1, result: fail"
    )
    assert says(RULE, failed).found
    assert says("torque-not-recorded", failed).found == []


def test_a_log_that_says_another_value_than_the_box_is_a_fault(says: Callable) -> None:
    text = record(
        WRITTEN.replace("14 in-lb", "18 in-lb"), "date: 2026-05-01, test: torque, about: K1, value: 14 in-lb"
    )
    assert says(RULE, text).found == ["boxes/den.yaml:5"]


def test_a_screw_of_older_work_is_judged_by_its_listing(says: Callable) -> None:
    text = record(
        f"{MADE}\n    built_to: nec-2008", "date: 2026-05-01, test: torque, about: K1, value: 9 in-lb"
    )
    assert says(RULE, text).found
