"""Permits, inspections and surge protection: what is missing is asked for, what is under way is let be."""

from collections.abc import Callable

import pytest

SERVICE = "[panels/main.yaml]\npanel: main\nspaces: 8\nfed_by: service\n"
RULE = "surge-protection-missing"


@pytest.mark.parametrize(
    ("told", "needs"),
    [
        ("", "whether panel main has surge protection"),
        ("surge: unknown\n", "whether panel main has surge protection"),
        ("surge: {connected: lugs}\n", "the type of the surge protection of panel main"),
        ("surge: {type: unknown}\n", "the type of the surge protection of panel main"),
    ],
)
def test_surge_protection_nobody_tells_of_is_not_taken_to_be_there(
    told: str, needs: str, says: Callable
) -> None:
    said = says(RULE, SERVICE + told)
    assert (said.found, said.needs) == ([], [needs])


def test_a_service_older_than_the_demand_is_let_be(says: Callable) -> None:
    said = says(RULE, SERVICE + "surge: none\nbuilt_to: nec-2017\n")
    assert (said.found, said.needs) == ([], [])


def test_protection_made_to_be_plugged_in_does_not_serve_a_service(says: Callable) -> None:
    assert says(RULE, SERVICE + "surge: {type: 3, connected: lugs}\n").found == ["panels/main.yaml:1"]


FEEDER = (
    SERVICE + "surge: none\nbreakers: {2+4: {rating: 60 A, feeds: f}}\n"
    "[panels/two.yaml]\npanel: two\nspaces: 8\nfed_by: f\nsurge: {type: 2}\n"
    "[circuits/f.yaml]\ncircuit: f\nname: Feeder\npurpose: feeder\n"
)


def test_it_may_be_in_the_panel_that_a_service_feeds_and_nothing_else(says: Callable) -> None:
    said = says(RULE, FEEDER)
    assert (said.found, said.needs) == ([], [])


def test_it_may_not_where_the_service_feeds_circuits_of_its_own(says: Callable) -> None:
    own = FEEDER.replace("feeds: f}}", "feeds: f}, 1: {rating: 15 A, feeds: den}}")
    own += "[circuits/den.yaml]\ncircuit: den\nname: Den\n"
    assert says(RULE, own).found == ["panels/main.yaml:1"]


def test_whether_the_next_panel_has_it_is_asked(says: Callable) -> None:
    said = says(RULE, FEEDER.replace("surge: {type: 2}\n", ""))
    assert (said.found, said.needs) == ([], ["whether panel two has surge protection"])


HOUSE = "[house.yaml]\nhouse: Hut\nreference: nec-2023\n"


def test_a_permit_is_open_without_fault_while_the_work_goes_on(says: Callable) -> None:
    den = "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\nstage: roughed\n"
    permits = HOUSE + "permits: [{number: B-1, covers: [den], closed: none}]\n"
    assert says("permit-left-open", permits + den).found == []
    assert says("permit-left-open", permits + den.replace("roughed", "verified")).found == ["house.yaml:3"]


@pytest.mark.parametrize(
    ("told", "needs"),
    [("", True), ("permits: unknown\n", True), ("permits: none\n", False), ("permits: []\n", False)],
)
def test_looked_for_and_none_found_is_an_answer(told: str, needs: bool, says: Callable) -> None:
    asked = ["which permits the work was done under"] if needs else []
    assert says("permit-left-open", HOUSE + told).needs == asked


LOG = HOUSE + "permits: [{number: B-1}, {number: B-2}]\n[log.yaml]\n"
FAILED = "- {date: 2026-03-04, inspection: rough-in, permit: B-1, about: den, result: fail}\n"


@pytest.mark.parametrize(
    ("after", "found"),
    [
        ("", ["log.yaml:1"]),
        ("inspection: rough-in, permit: B-1, result: pass", []),
        ("inspection: rough-in, permit: B-1, about: [den], result: pass", []),
        ("inspection: rough-in, permit: B-2, result: pass", ["log.yaml:1"]),
        ("inspection: final, permit: B-1, result: pass", ["log.yaml:1"]),
        ("inspection: rough-in, permit: B-1, about: service, result: pass", ["log.yaml:1"]),
    ],
)
def test_what_failed_is_passed_only_by_the_same_inspection_of_the_same_things(
    after: str, found: list[str], says: Callable
) -> None:
    log = LOG + FAILED + (f"- {{date: 2026-03-20, {after}}}\n" if after else "")
    assert says("inspection-not-passed", log).found == found


def test_a_pass_of_a_part_does_not_pass_the_whole(says: Callable) -> None:
    log = LOG + FAILED.replace("about: den, ", "") + FAILED.replace("fail", "pass").replace("-04,", "-20,")
    assert says("inspection-not-passed", log).found == ["log.yaml:1"]


def test_a_breaker_logged_off_by_one_of_its_spaces_is_proved(says: Callable) -> None:
    record = (
        "[panels/main.yaml]\npanel: main\nspaces: 4\nbreakers:\n  2+4: {rating: 20 A, feeds: c, says: C}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\nruns: [{id: a1, cable: 12/2 NM-B, from: main, to: K1}]\n"
        "[rooms/one.yaml]\nroom: one\nname: One\nkind: hall\nstage: energised\n"
        "[boxes/one.yaml]\nroom: one\nboxes: {K1: {devices: {r1: duplex}, makeup: end-of-run}}\n"
    )
    log = "[log.yaml]\n- {date: 2026-05-20, test: breaker-off, about: main/4, died: K1.r1}\n"
    assert says("breaker-off-proof-missing", record).found
    assert not says("breaker-off-proof-missing", record + log).found
