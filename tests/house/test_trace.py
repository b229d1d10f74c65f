"""The way back to the source: hot, neutral and ground, joint by joint."""

from collections.abc import Callable

import pytest

from junctionary.house.model import House
from junctionary.house.network import network
from junctionary.house.trace import Path, Way, trace

HouseOf = Callable[[str], House]
CHAIN = """
[panels/main.yaml]
panel: main
main: 100 A
spaces: 12
bonded: true
breakers:
  1: {feeds: den, guards: [afci]}
  3: {feeds: hall}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: a1, cable: 12/2 NM-B, from: main, to: K1, length: 30 ft}
  - {id: a2, cable: 12/2 NM-B, from: K1, to: K2, length: 6 ft 6 in}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 12/2 NM-B, from: main, to: K2}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
  gfci: {is: gfci-receptacle, face: 5-20R}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  K1: {devices: {r1: gfci}, makeup: {feed: a1, guarded: a2}}
  K2: {devices: {r1: duplex}, terminals: {r1.brass: a2.black, r1.silver: a2.white},
       joints: [{join: [a2.bare, h1.bare, r1.green]}], capped: [h1.black, h1.white]}
"""


@pytest.fixture
def traced(house_of: HouseOf) -> Callable[[str, str], Path]:
    """From a record and the name of a thing to its ways."""

    def made(text: str, of: str) -> Path:
        house = house_of(text)
        return trace(house, network(house), of)

    return made


Traced = Callable[[str, str], Path]


def only(ways: tuple[Way, ...]) -> Way:
    (way,) = ways
    return way


def test_a_hot_way_goes_joint_by_joint_to_the_utility(traced: Traced) -> None:
    way = only(traced(CHAIN, "K2.r1.top").hot)
    assert way.points == (
        "K2.r1.brass-top", "K2/a2.black", "K1/a2.black", "K1.r1.load-brass", "K1.r1.line-brass",
        "K1/a1.black", "main/a1.black", "main/1", "main/A", "service/A",
    )  # fmt: skip
    assert way.complete
    assert way.breakers == ("main/1", "main/main")


def test_protectors_are_told_nearest_first(traced: Traced) -> None:
    way = only(traced(CHAIN, "K2.r1").hot)
    assert [(each.id, each.guards) for each in way.protectors] == [
        ("K1.r1", ("gfci",)),
        ("main/1", ("afci",)),
    ]


def test_the_line_side_of_a_gfci_is_not_guarded_by_it(traced: Traced) -> None:
    path = traced(CHAIN, "K1.r1.line-brass")
    assert [each.id for each in only(path.hot).protectors] == ["main/1"]
    assert only(path.neutral).protectors == ()


def test_both_poles_of_a_gfci_are_on_the_ways_of_its_face(traced: Traced) -> None:
    path = traced(CHAIN, "K1.r1")
    assert [each.id for each in only(path.neutral).protectors] == ["K1.r1"]


def test_a_neutral_way_ends_at_the_bar(traced: Traced) -> None:
    way = only(traced(CHAIN, "K2.r1").neutral)
    assert (way.points[-1], way.complete) == ("main/neutral", True)


def test_the_way_of_a_ground_is_by_its_own_circuit(traced: Traced) -> None:
    way = only(traced(CHAIN, "K2.r1").ground)
    assert way.runs == ("a2", "a1")


def test_lengths_are_summed_from_the_runs(traced: Traced) -> None:
    length = only(traced(CHAIN, "K2.r1").hot).length
    assert (str(length.total), length.missing) == ("36.5 ft", ())


def test_a_length_not_recorded_leaves_no_total_but_the_sum_of_the_others(traced: Traced) -> None:
    length = only(traced(CHAIN.replace(", length: 30 ft", ", length: unknown"), "K2.r1").hot).length
    assert (length.total, str(length.known), length.missing) == (None, "6.5 ft", ("a1",))


def test_what_no_breaker_reaches_has_no_hot_way(traced: Traced) -> None:
    text = CHAIN.replace("r1.brass: a2.black, ", "").replace("capped: [", "capped: [a2.black, ")
    path = traced(text, "K2.r1")
    assert path.hot == ()
    assert only(path.neutral).complete


def test_a_conductor_reached_by_two_breakers_has_a_way_to_each(traced: Traced) -> None:
    text = CHAIN.replace("r1.brass: a2.black, ", "")
    text = text.replace("capped: [h1.black, h1.white]", "capped: [h1.white]")
    text = text.replace("joints: [", "joints: [{join: [a2.black, h1.black, r1.brass-top]}, ")
    assert sorted(way.breakers[0] for way in traced(text, "K2.r1.top").hot) == ["main/1", "main/3"]


def test_a_breaker_of_which_nobody_recorded_what_it_guards_says_so(traced: Traced) -> None:
    way = only(traced(CHAIN.replace(", guards: [afci]", ""), "K1.r1.line-brass").hot)
    assert [(each.id, each.guards) for each in way.protectors] == [("main/1", None)]


def test_a_conductor_end_may_be_traced(traced: Traced) -> None:
    path = traced(CHAIN, "K1/a2.white")
    assert (path.hot, path.ground) == ((), ())
    assert only(path.neutral).points[-1] == "main/neutral"


def test_a_name_nothing_has_is_refused(traced: Traced) -> None:
    for name in ("K9.r1", "K1.r1.purple", "K1/z1.black"):
        with pytest.raises(KeyError):
            traced(CHAIN, name)


SHED = """
[panels/main.yaml]
panel: main
main: 100 A
spaces: 12
fed_by: service
breakers: {2+4: {feeds: barn}}
[panels/shed.yaml]
panel: shed
spaces: 6
fed_by: barn
main: 60 A
breakers: {1+3: {feeds: kiln}}
[circuits/barn.yaml]
circuit: barn
name: Feeder
runs: [{id: f1, cable: 6/3 UF-B, from: main, to: shed, length: 80 ft}]
[circuits/kiln.yaml]
circuit: kiln
name: Kiln
runs: [{id: k1, cable: 10/3 NM-B, from: shed, to: W1, length: 12 ft}]
[devices/all.yaml]
devices: {stove: {is: receptacle, face: 14-50R, outlets: 1}}
[rooms/shed.yaml]
room: barn
name: Barn
kind: workshop
[boxes/shed.yaml]
room: barn
boxes: {W1: {devices: {r1: stove}, makeup: end-of-run}}
"""


def test_a_way_goes_on_from_a_subpanel_along_its_feeder(traced: Traced) -> None:
    path = traced(SHED, "W1.r1")
    assert [way.breakers for way in path.hot] == [("shed/1+3", "shed/main", "main/2+4", "main/main")] * 2
    assert [way.points[-1] for way in path.hot] == ["service/A", "service/B"]
    assert only(path.neutral).points[-3:] == ("shed/f1.white", "main/f1.white", "main/neutral")
    assert only(path.ground).points[-1] == "main/ground"


def test_the_runs_of_a_way_stand_nearest_first(traced: Traced) -> None:
    assert traced(SHED, "W1.r1").hot[0].runs == ("k1", "f1")


def test_a_way_whose_feeder_is_not_recorded_stops_there(traced: Traced) -> None:
    path = traced(
        SHED.replace("fed_by: barn", "fed_by: unknown").replace("to: shed,", "to: unknown,"), "W1.r1"
    )
    assert [way.complete for way in (*path.hot, *path.neutral)] == [False, False, False]
