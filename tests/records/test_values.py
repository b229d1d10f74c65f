"""Values that may be written in more than one way, and answers that are no value."""

from collections.abc import Callable

import pytest

from junctionary.read.loader import load
from junctionary.records import Records, understand
from junctionary.records.boxes import BoxRecord, BoxSize
from junctionary.records.devices import ConnectorKind, DeviceKind
from junctionary.records.panels import BreakerRecord, FillerPlate
from junctionary.records.values import NONE, UNKNOWN
from junctionary.units import WireSize, read_quantity

RecordsOf = Callable[[str, str], Records]


def box(records_of: RecordsOf, text: str) -> BoxRecord:
    return records_of("boxes/den.yaml", f"room: den\nboxes:\n  K1: {text}\n").boxes[0].boxes["K1"]


def kind(records_of: RecordsOf, text: str) -> DeviceKind:
    return records_of("devices/a.yaml", f"devices:\n  d: {text}\n").devices[0].devices["d"]


def connector(records_of: RecordsOf, text: str) -> ConnectorKind:
    return records_of("devices/a.yaml", f"connectors:\n  c: {text}\n").devices[0].connectors["c"]


def test_left_out_none_and_unknown_are_three_answers(records_of: RecordsOf) -> None:
    text = "panel: {}\nspaces: 4\n{}"
    panels = [
        records_of("panels/p.yaml", text.format("p", said)).panels[0].main
        for said in ("", "main: none\n", "main: unknown\n", "main: 100 A\n")
    ]
    assert panels == [None, NONE, UNKNOWN, read_quantity("100 A", "current")]


def test_no_guards_is_an_answer_and_guards_left_out_is_none(records_of: RecordsOf) -> None:
    breakers = (
        records_of("panels/p.yaml", "panel: p\nspaces: 4\nbreakers:\n  1: {guards: []}\n  2: {}\n")
        .panels[0]
        .breakers
    )
    assert [each.guards for each in breakers.values() if isinstance(each, BreakerRecord)] == [[], None]


def test_a_space_may_hold_no_breaker(records_of: RecordsOf) -> None:
    breakers = records_of("panels/p.yaml", "panel: p\nspaces: 4\nbreakers: {1: unused}\n").panels[0].breakers
    assert isinstance(breakers["1"], FillerPlate)
    assert breakers["1"].state == "unused"


def test_evidence_may_be_one_word(records_of: RecordsOf) -> None:
    short, long = (box(records_of, f"{{evidence: {said}}}").evidence for said in ("seen", "{how: seen}"))
    assert short is not None
    assert long is not None
    assert short.how == long.how == "seen"


def test_a_make_up_is_a_word_an_entry_or_a_list_of_them(records_of: RecordsOf) -> None:
    word = box(records_of, "{makeup: pigtailed}").makeup
    entry = box(records_of, "{makeup: {feed: a1, onward: a2}}").makeup
    listed = box(records_of, "{makeup: [{feed: a1}, splice-through]}").makeup
    assert word is not None
    assert entry is not None
    assert listed is not None
    assert [each.word for each in word] == ["pigtailed"]
    assert (entry[0].feed, entry[0].onward) == ("a1", ("a2",))
    assert [each.word for each in listed] == [None, "splice-through"]


def test_a_box_has_a_size_or_is_none(records_of: RecordsOf) -> None:
    sizes = [box(records_of, f"{{size: {said}}}").size for said in ("none", "unknown", "{gangs: 2}")]
    assert sizes[:2] == [NONE, UNKNOWN]
    assert isinstance(sizes[2], BoxSize)
    assert sizes[2].gangs == 2


@pytest.mark.parametrize(("said", "studs"), [("none", 0), ("2", 2), ("unknown", UNKNOWN)])
def test_studs_are_none_a_number_or_unknown(records_of: RecordsOf, said: str, studs: object) -> None:
    size = box(records_of, f"{{size: {{studs: {said}}}}}").size
    assert isinstance(size, BoxSize)
    assert size.studs == studs


def test_one_strap_or_several(records_of: RecordsOf) -> None:
    assert box(records_of, "{yoke: [s1, s2]}").yoke == (("s1", "s2"),)
    assert box(records_of, "{yoke: [[s1, s2], [s3, s4]]}").yoke == (("s1", "s2"), ("s3", "s4"))


def test_a_terminal_may_be_just_its_wire(records_of: RecordsOf) -> None:
    terminals = box(records_of, "{terminals: {r1.brass: a1.black, r1.silver: {how: loop}}}").terminals
    assert terminals["r1.brass"].wire == ("a1.black",)
    assert terminals["r1.silver"].wire is None


def test_what_a_terminal_accepts_is_a_range_of_sizes_and_its_metals(records_of: RecordsOf) -> None:
    accepts = kind(records_of, "{is: receptacle, accepts: 14 to 10 AWG copper}").accepts
    assert accepts is not None
    assert accepts.takes(WireSize("12 AWG"), "copper")
    assert not accepts.takes(WireSize("8 AWG"), "copper")
    assert not accepts.takes(WireSize("12 AWG"), "aluminium")


def test_a_lug_may_accept_sizes_in_kcmil(records_of: RecordsOf) -> None:
    accepts = connector(
        records_of, "{is: set-screw, accepts: 4 AWG to 250 kcmil copper or aluminium}"
    ).accepts
    assert accepts is not None
    assert (accepts.smallest, accepts.largest) == (WireSize("4 AWG"), WireSize("250 kcmil"))
    assert accepts.metals == ("copper", "aluminium")


def test_ways_to_land_are_told_for_all_terminals_or_by_group(records_of: RecordsOf) -> None:
    plain = kind(records_of, "{is: receptacle, lands: [loop, push-in]}")
    grouped = kind(records_of, "{is: gfci-receptacle, lands: {line: clamp-plate, green: loop}}")
    assert plain.ways_to_land("brass-top") == ("loop", "push-in")
    assert grouped.ways_to_land("line-brass") == ("clamp-plate",)
    assert grouped.ways_to_land("green") == ("loop",)
    assert grouped.ways_to_land("load-brass") is None


def test_the_log_measures_in_any_kind_of_unit(records_of: RecordsOf) -> None:
    log = records_of(
        "log.yaml",
        "- {date: 2026-01-02, test: voltage, value: 121.3 V, load: 10.2 A}\n"
        "- {date: 2026-01-02, test: loop-impedance, value: 0.4 ohm}\n",
    ).log
    assert [each.value.kind for each in log if each.value] == ["voltage", "resistance"]


def test_an_interlock_may_name_numbered_spaces(records_of: RecordsOf) -> None:
    panel = records_of(
        "panels/p.yaml", "panel: p\nspaces: 4\ninterlocks: [[1, 2+4]]\nties: [[1, 3]]\n"
    ).panels[0]
    assert (panel.interlocks, panel.ties) == ([["1", "2+4"]], [["1", "3"]])


def test_a_file_that_cannot_be_understood_is_remembered_as_lost() -> None:
    house, _ = load("house: Tern Cottage\nreference: nec-2023\n", "house.yaml")
    room, _ = load("room: den\n", "rooms/den.yaml")
    records, problems = understand(
        [("house.yaml", house), ("rooms/den.yaml", room), ("boxes/den.yaml", None)]
    )
    assert records is not None
    assert records.lost == {"rooms", "boxes"}
    assert {each.place.file for each in problems} == {"rooms/den.yaml"}
