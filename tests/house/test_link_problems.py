"""Loose ends of a record: each told at its file, line and column, all in one pass."""

from collections.abc import Callable

import pytest

from junctionary.house.ids import unknown_id
from junctionary.marks import Place

ProblemsOf = Callable[[str], list[str]]

BASE = """
[panels/main.yaml]
panel: main
spaces: 8
breakers: {1: {feeds: c}}
[circuits/c.yaml]
circuit: c
name: C
runs: [{id: a1, cable: 12/2 NM-B, from: main, to: K1}]
loads: [{id: kettle, is: other}]
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes: {K1: {devices: {r1: duplex}}}
[devices/all.yaml]
devices: {duplex: {is: receptacle, face: 5-15R}, gfci: {is: gfci-receptacle}}
connectors: {lever-3: {is: lever, ports: 3}}
"""

HOUSE = "[house.yaml]\nhouse: Hut\nreference: nec-2023\n"
PANEL = "[panels/main.yaml]\npanel: main\nspaces: 8\n"
ROOM = "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n"
BOXES = "[boxes/den.yaml]\nroom: den\n"

LOOSE: dict[str, tuple[str, str]] = {
    # what replaces a file of the base or stands beside it, and what is said of it
    "a panel told twice": (
        "[panels/other.yaml]\npanel: main\nspaces: 4\n",
        "panels/other.yaml:1:8: the panel 'main' is told twice, first at panels/main.yaml:1:8",
    ),
    "a circuit told twice": (
        "[circuits/x.yaml]\ncircuit: c\nname: X\n",
        "circuits/x.yaml:1:10: the circuit 'c' is told twice, first at circuits/c.yaml:1:10",
    ),
    "a run told twice": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nruns: [{id: a1}]\n",
        "circuits/x.yaml:3:13: the run 'a1' is told twice, first at circuits/c.yaml:3:13",
    ),
    "a run of a source told twice": (
        f"{HOUSE}sources: [{{id: s, is: solar, runs: [{{id: a1}}]}}]\n",
        "house.yaml:3:42: the run 'a1' is told twice, first at circuits/c.yaml:3:13",
    ),
    "a load told twice": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nloads: [{id: kettle, is: other}]\n",
        "circuits/x.yaml:3:14: the load 'kettle' is told twice, first at circuits/c.yaml:4:14",
    ),
    "a room told twice": (
        "[rooms/x.yaml]\nroom: den\nname: X\nkind: den\n",
        "rooms/x.yaml:1:7: the room 'den' is told twice, first at rooms/den.yaml:1:7",
    ),
    "a box told twice": (
        "[boxes/x.yaml]\nroom: den\nboxes:\n  K1: {}\n",
        "boxes/x.yaml:3:3: the box 'K1' is told twice, first at boxes/den.yaml:2:9",
    ),
    "a kind told twice": (
        "[devices/x.yaml]\ndevices:\n  duplex: {is: receptacle}\n",
        "devices/x.yaml:2:3: the kind of device 'duplex' is told twice, first at devices/all.yaml:1:11",
    ),
    "a connector told twice": (
        "[devices/x.yaml]\nconnectors:\n  lever-3: {is: lever}\n",
        "devices/x.yaml:2:3: the connector 'lever-3' is told twice, first at devices/all.yaml:2:14",
    ),
    "a panel of a box's name": (
        "[panels/k.yaml]\npanel: K1\nspaces: 4\n",
        "panels/k.yaml:1:8: 'K1' is a panel and a box, which stands at boxes/den.yaml:2:9",
    ),
    "a run to nowhere": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nruns: [{id: x1, from: K1, to: K11}]\n",
        "circuits/x.yaml:3:31: no box or panel 'K11' is recorded",
    ),
    "a run to itself": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nruns: [{id: x1, from: K1, to: K1}]\n",
        "circuits/x.yaml:3:31: run 'x1' goes from K1 to itself",
    ),
    "a route by no box": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nruns: [{id: x1, route: [K1, K9]}]\n",
        "circuits/x.yaml:3:29: no box or panel 'K9' is recorded",
    ),
    "a circuit that serves no room": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nserves: [den, hall]\n",
        "circuits/x.yaml:3:15: no room 'hall' is recorded",
    ),
    "a breaker that feeds nothing known": (
        f"{PANEL}breakers:\n  1: {{feeds: cc}}\n",
        "panels/main.yaml:4:14: no circuit or source 'cc' is recorded",
    ),
    "a kind of breaker nobody told": (
        f"{PANEL}breakers:\n  1: {{kind: quick}}\n",
        "panels/main.yaml:4:13: no kind of breaker 'quick' is recorded",
    ),
    "a panel fed by nothing known": (
        f"{PANEL}fed_by: barn\n",
        "panels/main.yaml:3:9: no circuit 'barn' is recorded",
    ),
    "two panels that feed each other": (
        f"{PANEL}fed_by: back\nbreakers:\n  1+3: {{feeds: out}}\n"
        "[panels/shed.yaml]\npanel: shed\nspaces: 8\nfed_by: out\nbreakers:\n  1+3: {feeds: back}\n"
        "[circuits/out.yaml]\ncircuit: out\nname: Out\npurpose: feeder\n"
        "[circuits/back.yaml]\ncircuit: back\nname: Back\npurpose: feeder\n",
        "panels/main.yaml:3:9: panel main is fed from shed, which hangs on main itself",
    ),
    "a panel in no room": (
        f"{PANEL}at: {{room: attic}}\n",
        "panels/main.yaml:3:12: no room 'attic' is recorded",
    ),
    "a space taken twice": (
        f"{PANEL}breakers:\n  1+3: {{}}\n  3: {{}}\n",
        "panels/main.yaml:5:3: space 3 of main is taken twice, by 1+3 and by 3",
    ),
    "a whole breaker where half sizes are": (
        f"{PANEL}breakers:\n  5a: {{}}\n  5: {{}}\n",
        "panels/main.yaml:5:3: space 5 of main is taken twice, by 5a and by 5",
    ),
    "a filler where a breaker is": (
        f"{PANEL}breakers:\n  1+3: {{}}\n  3: blank\n",
        "panels/main.yaml:5:3: space 3 of main is taken twice, by 1+3 and by 3",
    ),
    "a space beyond the panel": (
        f"{PANEL}breakers:\n  7+9: {{}}\n",
        "panels/main.yaml:4:3: space 9 in panel main, which has 8",
    ),
    "a tie of no breaker": (
        f"{PANEL}breakers:\n  1: {{}}\nties: [[1, 3]]\n",
        "panels/main.yaml:5:12: no breaker '3' is recorded",
    ),
    "an interlock with a main that is not there": (
        f"{PANEL}breakers:\n  1: {{}}\ninterlocks: [[main, 1]]\n",
        "panels/main.yaml:5:15: no breaker 'main' is recorded",
    ),
    "two breakers and one conductor": (
        f"{PANEL}breakers:\n  1: {{feeds: c.black}}\n  3: {{feeds: c.black}}\n",
        "panels/main.yaml:5:14: c.black is fed by main/3, and already by main/1",
    ),
    "two breakers and no conductor": (
        f"{PANEL}breakers:\n  1: {{feeds: c}}\n  3: {{feeds: c}}\n",
        "panels/main.yaml:5:14: c is fed by main/3, and already by main/1",
    ),
    "a pole with no such conductor": (
        f"{PANEL}breakers:\n  1: {{feeds: c.red}}\n",
        "panels/main.yaml:4:14: the run of c from main has no red conductor",
    ),
    "a conductor landed that is not there": (
        f"{PANEL}breakers:\n  1: {{feeds: c, lands: {{red: 3}}}}\n",
        "panels/main.yaml:4:25: the run of c from main has no red conductor",
    ),
    "a load plugged into nothing": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nloads: [{id: x, is: other, plugged: K1.r2}]\n",
        "circuits/x.yaml:3:37: no device 'K1.r2' is recorded",
    ),
    "a load plugged into a box": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nloads: [{id: x, is: other, wired: K1}]\n",
        "circuits/x.yaml:3:35: no device 'K1' is recorded; K1 is a box",
    ),
    "a load instead of no load": (
        "[circuits/x.yaml]\ncircuit: x\nname: X\nloads: [{id: x, is: other, instead_of: kettel}]\n",
        "circuits/x.yaml:3:40: no load 'kettel' is recorded",
    ),
    "a room on no level": (f"{ROOM}level: up\n", "rooms/den.yaml:4:8: no level 'up' is recorded"),
    "a room in no building": (
        f"{ROOM}building: shed\n",
        "rooms/den.yaml:4:11: no building 'shed' is recorded",
    ),
    "a door that swings into a room it does not lead to": (
        "[rooms/hall.yaml]\nroom: hall\nname: Hall\nkind: hall\n"
        f"{ROOM}things: [{{what: door, wall: east, swings_into: hall}}]\n",
        "rooms/den.yaml:4:48: a door of den swings into hall",
    ),
    "a door to no room": (
        f"{ROOM}things: [{{what: door, wall: east, to: hall}}]\n",
        "rooms/den.yaml:4:39: no room 'hall' is recorded",
    ),
    "a bundle of no run": (
        f"{ROOM}bundles: [{{id: h, is: conduit, runs: [a1, a2]}}]\n",
        "rooms/den.yaml:4:43: no run 'a2' is recorded",
    ),
    "boxes of no room": (
        "[boxes/x.yaml]\nroom: dem\nboxes: {}\n",
        "boxes/x.yaml:1:7: no room 'dem' is recorded",
    ),
    "a usual connector nobody told": (
        f"{HOUSE}practice: {{splice: [lever-3, lever-9]}}\n",
        "house.yaml:3:30: no connector 'lever-9' is recorded",
    ),
    "a box's connector nobody told": (
        f"{BOXES}boxes: {{K1: {{splice: [lever-9]}}}}\n",
        "boxes/den.yaml:2:23: no connector 'lever-9' is recorded",
    ),
    "a guard that is not there": (
        f"{BOXES}boxes: {{K1: {{devices: {{r1: duplex}}, guarded_by: {{r1: K2.r1}}}}}}\n",
        "boxes/den.yaml:2:54: no device 'K2.r1' is recorded",
    ),
    "a service disconnect that is no panel": (
        f"{HOUSE}service: {{disconnect: mian}}\n",
        "house.yaml:3:23: no panel 'mian' is recorded",
    ),
    "a source at no box": (
        f"{HOUSE}sources: [{{id: s, is: solar, at: PV1}}]\n",
        "house.yaml:3:34: no box or panel 'PV1' is recorded",
    ),
    "a source that enters no breaker": (
        f"{HOUSE}sources: [{{id: s, is: solar, enters: main/2+4}}]\n",
        "house.yaml:3:38: no breaker 'main/2+4' is recorded",
    ),
    "a source shut off by nothing": (
        f"{HOUSE}sources: [{{id: s, is: solar, shut_off: PV1.d1}}]\n",
        "house.yaml:3:40: no device 'PV1.d1' is recorded",
    ),
    "an entry about nothing known": (
        "[log.yaml]\n- {date: 2026-01-02, test: polarity, about: K1.r2}\n",
        "log.yaml:1:45: no thing 'K1.r2' is recorded",
    ),
    "an entry about a terminal the device lacks": (
        "[log.yaml]\n- {date: 2026-01-02, test: torque, about: [K1.r1, K1.r1.line-brass]}\n",
        "log.yaml:1:51: no thing 'K1.r1.line-brass' is recorded",
    ),
    "a death of nothing known": (
        "[log.yaml]\n- {date: 2026-01-02, test: breaker-off, about: main/1, died: K3}\n",
        "log.yaml:1:62: no thing 'K3' is recorded",
    ),
    "a trip of no breaker": (
        "[log.yaml]\n- {date: 2026-01-02, trip: main/7}\n",
        "log.yaml:1:28: no breaker 'main/7' is recorded",
    ),
    "a trip while no such load ran": (
        "[log.yaml]\n- {date: 2026-01-02, trip: main/1, while: [kettle, iron]}\n",
        "log.yaml:1:52: no load 'iron' is recorded",
    ),
    "surge protection on no breaker": (
        f"{PANEL}breakers: {{1: {{feeds: c}}}}\nsurge: {{type: 2, connected: 2+4}}\n",
        "panels/main.yaml:4:29: no breaker '2+4' is recorded",
    ),
    "installed before it was made": (
        f"{PANEL}breakers: {{1: {{feeds: c, made: 2024-06, installed: 2024-05-30}}}}\n",
        "panels/main.yaml:3:52: installed 2024-05-30, but made 2024-06",
    ),
    "a cable older than its record can tell": (
        f"{HOUSE}recorded: 2026-11-15\n[circuits/x.yaml]\ncircuit: x\nname: X\nruns: [{{id: b1, installed: 2052}}]\n",
        "circuits/x.yaml:3:28: installed 2052, after the date of the record, 2026-11-15",
    ),
    "a permit for nothing known": (
        f"{HOUSE}permits: [{{number: B-1, covers: [den, dem]}}]\n",
        "house.yaml:3:39: no thing 'dem' is recorded",
    ),
    "a permit closed before it was issued": (
        f"{HOUSE}permits: [{{number: B-1, issued: 2026-03-09, closed: 2026-02-16}}]\n",
        "house.yaml:3:53: permit B-1 closed 2026-02-16, but issued 2026-03-09",
    ),
    "a permit told twice": (
        f"{HOUSE}permits: [{{number: B-1}}, {{number: B-1}}]\n",
        "house.yaml:3:35: permit B-1 is told twice",
    ),
    "an inspection under no permit on record": (
        f"{HOUSE}permits: [{{number: B-114}}]\n"
        "[log.yaml]\n- {date: 2026-01-02, inspection: final, permit: B-141}\n",
        "log.yaml:1:49: no permit 'B-141' is recorded",
    ),
    "a photo of nothing known": (
        "[photos/photos.yaml]\nphotos: [{file: a.jpg, shows: K7}]\n",
        "photos/photos.yaml:1:31: no thing 'K7' is recorded",
    ),
    "a room where a circuit is due": (
        f"{PANEL}breakers:\n  1: {{feeds: den}}\n",
        "panels/main.yaml:4:14: no circuit or source 'den' is recorded; den is a room",
    ),
    "a circuit where its breaker is due": (
        "[log.yaml]\n- {date: 2026-01-02, trip: c}\n",
        "log.yaml:1:28: no breaker 'c' is recorded; c is a circuit, fed by main/1",
    ),
    "a space in words": (
        f"{PANEL}breakers:\n  seven: {{feeds: c}}\n",
        "panels/main.yaml:4:3: space seven in panel main, which has 8",
    ),
    "one breaker in spaces that do not adjoin": (
        f"{PANEL}breakers:\n  2+3: {{feeds: c}}\n",
        "panels/main.yaml:4:3: one breaker in the spaces 2+3 of main, which do not adjoin",
    ),
    "a run told the wrong way round": (
        "[circuits/c.yaml]\ncircuit: c\nname: C\npurpose: general\nruns: [{id: a1, from: K1, to: main}]\n",
        "circuits/c.yaml:4:23: run 'a1' goes from box K1 to panel main",
    ),
}


@pytest.mark.parametrize("name", LOOSE)
def test_a_loose_end_is_told_where_it_stands(problems_of: ProblemsOf, name: str) -> None:
    text, said = LOOSE[name]
    assert said in problems_of(BASE + text)


@pytest.mark.parametrize(
    ("made", "installed"), [("2024", "2024-05-30"), ("2024-05", "2024"), ("1957", "unknown")]
)
def test_a_date_told_in_part_is_held_against_no_more_than_it_tells(
    problems_of: ProblemsOf, made: str, installed: str
) -> None:
    text = f"{PANEL}breakers: {{1: {{feeds: c}}}}\nmade: {made}\ninstalled: {installed}\n"
    assert problems_of(BASE + text) == []


def test_the_base_itself_has_no_loose_end(problems_of: ProblemsOf) -> None:
    assert problems_of(BASE) == []


@pytest.mark.parametrize(
    "name",
    [
        "K1", "K1.r1", "K1.r1.top", "K1.r1.brass", "K1.r1.silver-top", "K1/a1.black", "a1.white", "a1",
        "main", "main/1", "main/neutral", "den", "c", "kettle", "service", "K1/box",
    ],
)  # fmt: skip
def test_the_log_may_speak_of_anything_by_its_name(problems_of: ProblemsOf, name: str) -> None:
    assert problems_of(f"{BASE}[log.yaml]\n- {{date: 2026-01-02, change: seen, about: {name}}}\n") == []


def test_the_nearest_known_id_is_named(house_problems: Callable[[str], list[str]]) -> None:
    said = house_problems(BASE + "[rooms/den.yaml]\nroom: dem\nname: Den\nkind: den\n")
    assert said == [
        "boxes/den.yaml:1:7: no room 'den' is recorded; expected 'dem', the nearest known room; "
        "write dem if that is meant, else record den in a file of its own in rooms/"
    ]


def test_it_is_said_where_to_record_what_is_not_recorded(house_problems: Callable[[str], list[str]]) -> None:
    said = house_problems(f"{BASE}{ROOM}level: ground\n")
    assert said == [
        "rooms/den.yaml:4:8: no level 'ground' is recorded; expected a known level; none is recorded; "
        "record ground under levels: in house.yaml, such as levels: [{id: ground, name: Ground floor}], "
        "or correct the id"
    ]


def test_a_sentence_where_an_id_is_due_is_sent_to_the_note(
    house_problems: Callable[[str], list[str]],
) -> None:
    (said,) = house_problems(
        f"{BASE}[log.yaml]\n- {{date: 2026-01-02, trip: main/1, while: kettle and toaster}}\n"
    )
    assert said.endswith("name one that is recorded, or write this in note:")


def test_no_space_is_taken_for_another_by_its_digits(house_problems: Callable[[str], list[str]]) -> None:
    (said,) = house_problems(f"{BASE}{PANEL}breakers: {{1: {{feeds: c}}, 2: {{}}}}\nties: [[1, 21]]\n")
    assert "expected a known breaker: 1, 2; record 21 under breakers: of its panel" in said


@pytest.mark.parametrize(
    "written",
    ["purpose: feeder", "purpose: general\n[panels/sub.yaml]\npanel: sub\nspaces: 4\nfed_by: c"],
)
def test_a_feeder_may_come_from_a_box(problems_of: ProblemsOf, written: str) -> None:
    text = f"[circuits/c.yaml]\ncircuit: c\nname: C\nruns: [{{id: a1, from: K1, to: main}}]\n{written}\n"
    assert not [each for each in problems_of(BASE + text) if "goes from box" in each]


def test_a_breaker_of_half_sizes_and_one_of_a_panel_numbered_otherwise_adjoin(
    problems_of: ProblemsOf,
) -> None:
    halves = f"{PANEL}breakers: {{1: {{feeds: c}}, 3b+5a: {{}}}}\n"
    down = f"{PANEL}breakers: {{1: {{feeds: c}}, 3+4: {{}}}}\nlegs: {{3: A, 4: B}}\n"
    assert [*problems_of(BASE + halves), *problems_of(BASE + down)] == []


def test_a_kind_that_could_not_be_read_is_not_called_no_gfci(problems_of: ProblemsOf) -> None:
    said = problems_of(
        f"{BASE}[devices/all.yaml]\ndevices: {{gfci: {{is: gfci-receptacle}}, lamp: {{is: light}}}}\n"
        f"{BOXES}boxes: {{K1: {{devices: {{r1: gfci}}, makeup: {{feed: a1, guarded: [a2]}}}}, K2: {{}}}}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\n"
        "runs: [{id: a1, cable: 12/2 NM-B, from: main, to: K1}, {id: a2, cable: 12/2 NM-B, from: K1, to: K2}]\n"
    )
    assert [each.partition(": ")[0] for each in said] == ["devices/all.yaml:1:51"]


@pytest.mark.parametrize(
    ("ways", "said"),
    [
        (
            3,
            "write three_way: {s1: {common: ..., travelers: ...}}: feed or a cable, and the cable of its travelers",
        ),
        (4, "write four_way: {s1: {in: ..., out: ...}}, each the cable or its two conductors"),
    ],
)
def test_how_a_switch_of_several_ways_is_told_is_said(
    house_problems: Callable[[str], list[str]], ways: int, said: str
) -> None:
    text = (
        f"{BASE}[devices/all.yaml]\ndevices: {{way: {{is: switch, ways: {ways}}}}}\n"
        f"{BOXES}boxes: {{K1: {{devices: {{s1: way}}, makeup: {{feed: a1, switched: {{s1: a2}}}}}}, K2: {{}}}}\n"
        "[circuits/c.yaml]\ncircuit: c\nname: C\n"
        "runs: [{id: a1, cable: 14/2 NM-B, from: main, to: K1}, {id: a2, cable: 14/3 NM-B, from: K1, to: K2}]\n"
    )
    assert [each.partition("; do ")[0].endswith(said) for each in house_problems(text)] == [True]


def test_a_file_that_could_not_be_read_is_not_blamed_for_what_it_holds(problems_of: ProblemsOf) -> None:
    said = problems_of(BASE + "[boxes/den.yaml]\nroom: den\nboxes: {K1: [}\n")
    assert [each.split(":")[0] for each in said] == ["boxes/den.yaml"]


def test_a_record_not_understood_is_not_blamed_for_what_it_holds(problems_of: ProblemsOf) -> None:
    said = problems_of(BASE + "[circuits/c.yaml]\ncircuit: c\nruns: []\n")
    assert said == ["circuits/c.yaml:1:1: no 'name' here"]


def test_an_id_that_is_said_to_be_unknown_is_not_asked_to_be_recorded() -> None:
    problem = unknown_id("level", "unknown", Place("rooms/den.yaml", 4, 8), ["ground"])
    assert problem.do == "name one that is recorded, or leave the key out where nothing is known"
