"""Receptacles, connectors and screws: what is counted, compared and missing."""

from collections.abc import Callable

import pytest

from junctionary.figures import Figures
from junctionary.records.values import NONE, UNKNOWN

FiguresOf = Callable[[str], Figures]

RUN = "[circuits/c.yaml]\ncircuit: c\nname: C\nruns:\n  - {id: a1, cable: 12/2 NM-B, from: main, to: K1}\n"


def box(lines: str, more: str = "") -> str:
    body = "".join(f"    {line}\n" for line in lines.splitlines())
    return f"{RUN}{more}[boxes/den.yaml]\nroom: den\nboxes:\n  K1:\n{body}"


def test_a_duplex_is_two_receptacles_and_a_single_one(figures_of: FiguresOf) -> None:
    duplex = figures_of(box("devices: {r1: duplex}\nmakeup: end-of-run")).outlets["c"]
    single = figures_of(box("devices: {r1: single}\nmakeup: end-of-run")).outlets["c"]
    assert (duplex.counted, duplex.several) == (2, True)
    assert (single.counted, single.several, single.outlets) == (1, False, 1)


def test_one_receptacle_on_a_circuit_not_known_whole_may_not_be_the_only_one(figures_of: FiguresOf) -> None:
    onward = RUN + "  - {id: a2, cable: 12/2 NM-B, from: K1, to: unknown}\n"
    text = box("devices: {r1: single}\nmakeup: pigtailed").replace(RUN, onward)
    count = figures_of(text).outlets["c"]
    assert (count.counted, count.several, count.outlets) == (1, None, None)


def test_a_receptacle_takes_its_rating_from_its_face(figures_of: FiguresOf) -> None:
    match = figures_of(box("devices: {r1: single}\nmakeup: end-of-run")).receptacles["K1.r1"][0]
    assert (match.rating_a, match.breaker_a, match.fit.fits) == (20, 20, True)


def test_a_receptacle_is_held_against_the_leg_that_feeds_it(figures_of: FiguresOf) -> None:
    pair = (
        "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n"
        "  1: {rating: 15 A, feeds: c.black}\n  3: {rating: 20 A, feeds: c.red}\n"
    )
    lines = "devices: {r1: single}\ncapped: [a1.black]\nterminals: {r1.brass: a1.red, r1.silver: a1.white}"
    match = figures_of(pair + box(lines).replace("12/2", "12/3")).receptacles["K1.r1"][0]
    assert (match.breaker, match.breaker_a) == ("main/3", 20)


def test_a_connector_is_held_against_its_listing(figures_of: FiguresOf) -> None:
    def verdict(by: str) -> str | None:
        joint = (
            f"devices: {{r1: duplex}}\njoints:\n  - {{join: [a1.black, r1.brass-top, r1.brass-bottom]{by}}}"
        )
        fit = figures_of(box(joint)).joints.get("K1/j1")
        return fit.verdict if fit else None

    assert verdict(", by: lever-3") == "fits"
    assert verdict(", by: unknown") == "cannot tell"
    assert verdict("") == "cannot tell"
    assert verdict(", by: solder") is None
    assert verdict(", by: none") is None


@pytest.mark.parametrize(
    ("written", "said"), [("torque: listed", "listed"), ("torque: none", NONE), ("torque: unknown", UNKNOWN)]
)
def test_the_nearest_word_on_torque_is_kept(written: str, said: object, figures_of: FiguresOf) -> None:
    torques = figures_of(box(f"devices: {{r1: duplex}}\nmakeup: end-of-run\n{written}")).torques
    assert {each.said for each in torques.values()} == {said}
    assert all(each.recorded == (said == "listed") for each in torques.values())


def test_a_torque_in_the_log_wins_and_is_compared_with_the_listed_one(figures_of: FiguresOf) -> None:
    log = "[log.yaml]\n- {date: 2026-05-21, test: torque, about: K1.r1.brass-top, value: 9 in-lb}\n"
    torques = figures_of(box("devices: {r1: duplex}\nmakeup: end-of-run\ntorque: none") + log).torques
    measured = torques["K1.r1.brass-top"]
    assert measured.recorded
    assert measured.match is not None
    assert measured.match.verdict == "too loose"
    assert torques["K1.r1.silver-top"].said is NONE


def test_a_push_in_terminal_has_no_torque(figures_of: FiguresOf) -> None:
    text = box("devices: {r1: duplex}\nterminals: {r1.brass: {wire: a1.black, how: push-in}}")
    assert figures_of(text).torques == {}
