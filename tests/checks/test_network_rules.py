"""The rules of the conductor network beyond their own examples."""

from collections.abc import Callable

import pytest

PANEL = '[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n  1: {rating: 15 A, feeds: c, says: "C"}\n'
TWO = PANEL + '  3: {rating: 15 A, feeds: d, says: "D"}\n'
MORE = (
    "[devices/more.yaml]\ndevices:\n"
    "  three: {is: switch, ways: 3}\n"
    "  two-slot: {is: receptacle, face: 1-15R}\n"
    "  gfci: {is: gfci-receptacle, face: 5-15R}\n"
    "connectors:\n  lever-5: {is: lever, ports: 5, accepts: 20 to 12 AWG copper}\n"
)


def circuit(name: str, *runs: str) -> str:
    """A circuit with runs such as ``a1: 14/2 NM-B, main, K1``."""
    lines = ""
    for run in runs:
        id_, _, rest = run.partition(": ")
        cable, start, end = rest.rsplit(", ", 2)
        lines += f"  - {{id: {id_}, cable: {cable}, from: {start}, to: {end}}}\n"
    return f"[circuits/{name}.yaml]\ncircuit: {name}\nname: {name.upper()}\nruns:\n{lines}"


def boxes(*told: str) -> str:
    """Boxes, each on one line, the first on line 3 of its file."""
    return MORE + "[boxes/den.yaml]\nroom: den\nboxes:\n" + "".join(f"  {each}\n" for each in told)


OLD = PANEL + circuit("c", "a1: 14/2 NM no ground, main, K1", "a2: 14/2 NM no ground, K1, K2")


@pytest.mark.parametrize(
    ("devices", "found"),
    [
        ("devices: {r1: gfci}, labels: {r1: [no-equipment-ground]}", []),
        ("devices: {r1: two-slot}", []),
        ("devices: {r1: gfci}", ["boxes/den.yaml:4"]),
    ],
)
def test_without_a_ground_in_the_cable_only_an_unlabelled_grounding_face_is_named(
    says: Callable, devices: str, found: list[str]
) -> None:
    text = OLD + boxes("K1: {makeup: splice-through}", f"K2: {{{devices}, makeup: end-of-run}}")
    assert says("three-hole-on-no-ground", text).found == found
    assert says("ground-missing", text).found == []


def test_one_break_is_told_once_and_names_all_that_it_darkens(says: Callable) -> None:
    runs = ("a1: 14/2 NM-B, main, K1", "a2: 14/2 NM-B, K1, K2", "a3: 14/2 NM-B, K2, K3")
    text = PANEL + circuit("c", *runs) + boxes(
        "K1: {joints: [{join: [a1.white, a2.white]}, {join: [a1.bare, a2.bare]}], capped: [a1.black, a2.black]}",
        "K2: {devices: {r1: duplex}, makeup: pigtailed, splice: [lever-3]}",
        "K3: {devices: {r1: duplex}, makeup: end-of-run}",
    )  # fmt: skip
    assert says("hot-open", text).found == ["boxes/den.yaml:4"]
    assert says("polarity-reversed", text).needs == []


def test_a_break_that_may_be_no_break_is_not_called_one(says: Callable) -> None:
    text = PANEL + circuit("c", "a1: 14/2 NM-B, main, K1", "a2: 14/2 NM-B, K1, K2") + boxes(
        "K1: {makeup: unknown}", "K2: {devices: {r1: duplex}, makeup: end-of-run}"
    )  # fmt: skip
    for rule in ("hot-open", "neutral-open", "ground-missing"):
        said = says(rule, text)
        assert said.found == []
        assert "how box K1 is made up" in said.needs


def test_a_lead_landed_on_a_switch_is_wired(says: Callable) -> None:
    text = PANEL + circuit("c", "a1: 14/2 NM-B, main, K1") + boxes(
        "K1: {devices: {s1: switch, f1: lamp}, makeup: {feed: a1, switched: {s1: f1.black}}}"
    )  # fmt: skip
    assert says("hot-open", text).found == []


def test_neutrals_of_two_circuits_joined_in_a_box_are_borrowed_at_their_joint(says: Callable) -> None:
    text = TWO + circuit("c", "a1: 14/2 NM-B, main, K1") + circuit("d", "b1: 14/2 NM-B, main, K1") + boxes(
        "K1:",
        "  devices: {r1: duplex}",
        "  capped: [b1.black]",
        "  joints:",
        "    - {join: [a1.bare, b1.bare, r1.green]}",
        "    - {join: [a1.white, b1.white, r1.silver]}",
        "  terminals: {r1.brass: a1.black}",
    )  # fmt: skip
    assert says("neutral-borrowed", text).found == ["boxes/den.yaml:8"]
    assert says("circuits-joined", text).found == []


def test_a_tab_left_in_joins_the_two_circuits_of_a_receptacle(says: Callable) -> None:
    text = TWO + circuit("c", "a1: 14/2 NM-B, main, K1") + circuit("d", "b1: 14/2 NM-B, main, K1") + boxes(
        "K1:",
        "  devices: {r1: duplex}",
        "  joints: [{join: [a1.bare, b1.bare, r1.green]}]",
        "  terminals: {r1.brass-top: a1.black, r1.brass-bottom: b1.black, r1.silver-top: a1.white, "
        "r1.silver-bottom: b1.white}",
    )  # fmt: skip
    assert says("circuits-joined", text).found == ["boxes/den.yaml:4"]


PAIR = (
    "[panels/main.yaml]\npanel: main\nspaces: 8\nTIES\nbreakers:\n"
    '  1: {rating: 15 A, feeds: c.black, says: "C"}\n  3: {rating: 15 A, feeds: c.red, says: "C"}\n'
)


def test_a_shared_neutral_is_no_borrowed_one(says: Callable) -> None:
    text = PAIR.replace("TIES", "ties: [[1, 3]]") + circuit("c", "a1: 14/3 NM-B, main, K1") + boxes(
        "K1:",
        "  devices: {r1: duplex, r2: duplex}",
        "  joints: [{join: [a1.white, r1.silver, r2.silver]}, {join: [a1.bare, r1.green, r2.green]}]",
        "  terminals: {r1.brass: a1.black, r2.brass: a1.red}",
    )  # fmt: skip
    for rule in ("neutral-borrowed", "circuits-joined", "multiwire-same-leg", "multiwire-untied"):
        assert says(rule, text).found == []


def test_before_2008_a_pair_that_meets_on_no_yoke_need_not_be_tied(says: Callable) -> None:
    text = PAIR.replace("TIES\n", "") + circuit("c", "a1: 14/3 NM-B, main, K1") + boxes("K1: {capped: [a1]}")
    old = text.replace("name: C\nruns", "name: C\nbuilt_to: nec-2005\nruns")
    assert says("multiwire-untied", text).found == ["panels/main.yaml:4"]
    assert says("multiwire-untied", old).found == []


def test_two_switches_in_series_each_have_an_effect(says: Callable) -> None:
    runs = ("a1: 14/2 NM-B, main, K1", "a2: 14/2 NM-B, K1, K2", "a3: 14/2 NM-B, K2, K3")
    text = PANEL + circuit("c", *runs) + boxes(
        "K1: {devices: {s1: switch}, makeup: {feed: a1, switched: {s1: a2}}, splice: [lever-3]}",
        "K2: {devices: {s1: switch}, makeup: {feed: a2, switched: {s1: a3}}, splice: [lever-3]}",
        "K3: {devices: {f1: lamp}, makeup: end-of-run}",
    )  # fmt: skip
    assert says("switch-without-effect", text).found == []


def test_a_switch_that_turns_a_capped_cable_has_no_effect(says: Callable) -> None:
    text = PANEL + circuit("c", "a1: 14/2 NM-B, main, K1", "a2: 14/2 NM-B, K1, K2") + boxes(
        "K1: {devices: {s1: switch}, makeup: {feed: a1, switched: {s1: a2}}, splice: [lever-3]}",
        "K2: {capped: [a2]}",
    )  # fmt: skip
    assert says("switch-without-effect", text).found == ["boxes/den.yaml:3"]


def test_a_guard_fed_on_both_sides_is_not_called_swapped(says: Callable) -> None:
    text = PANEL + circuit("c", "a1: 14/2 NM-B, main, K1", "a2: 14/2 NM-B, main, K1") + boxes(
        "K1:",
        "  devices: {r1: gfci}",
        "  joints: [{join: [a1.bare, a2.bare, r1.green]}]",
        "  terminals: {r1.line-brass: a1.black, r1.line-silver: a1.white, r1.load-brass: a2.black, "
        "r1.load-silver: a2.white}",
    )  # fmt: skip
    assert says("gfci-line-load-swapped", text).found == []


def test_a_neutral_at_one_switch_of_a_chain_is_enough(says: Callable) -> None:
    runs = ("a1: 14/2 NM-B, main, K1", "t1: 14/3 NM-B, K1, K2", "l1: 14/2 NM-B, K1, K3")
    text = PANEL + circuit("c", *runs) + boxes(
        "K1:",
        "  devices: {s1: three}",
        "  joints: [{join: [a1.white, l1.white]}, {join: [a1.black, t1.white]}, "
        "{join: [a1.bare, t1.bare, l1.bare, s1.green]}]",
        "  terminals: {s1.common: l1.black, s1.traveler-1: t1.black, s1.traveler-2: t1.red}",
        "K2:",
        "  devices: {s1: three}",
        "  joints: [{join: [t1.bare, s1.green]}]",
        "  terminals: {s1.common: t1.white, s1.traveler-1: t1.black, s1.traveler-2: t1.red}",
        "K3: {devices: {f1: lamp}, makeup: end-of-run}",
    )  # fmt: skip
    assert says("neutral-missing-at-switch", text).found == []
    assert says("switch-without-effect", text).found == []


def test_grounds_of_two_circuits_may_meet(says: Callable) -> None:
    text = TWO + circuit("c", "a1: 14/2 NM-B, main, K1") + circuit("d", "b1: 14/2 NM-B, main, K1") + boxes(
        "K1: {joints: [{join: [a1.bare, b1.bare]}], capped: [a1.black, a1.white, b1.black, b1.white]}"
    )  # fmt: skip
    for rule in ("circuits-joined", "neutral-borrowed", "circuit-loops-back", "neutral-ground-joined"):
        assert says(rule, text).found == []


GROUNDS = """[circuits/c.yaml]
circuit: c
name: C
runs:
  - {id: a1, cable: 14/2 NM-B, from: unknown, to: K1}
  - {id: a2, cable: 14/2 NM-B, from: K1, to: unknown}
  - {id: a3, cable: 14/2 NM-B, from: K1, to: unknown}
  - {id: a4, cable: 14/2 NM-B, from: K1, to: unknown}
[boxes/den.yaml]
room: den
boxes:
  K1:
    size: {of: steel}
    joints:
      - {join: [a1.black, a2.black, a3.black, a4.black], by: lever}
      - {join: [a1.white, a2.white, a3.white, a4.white], by: lever}
      - {join: [a1.bare, a2.bare], by: lever}
"""


@pytest.mark.parametrize(
    ("others", "line"),
    [
        ("      - {join: [a3.bare, a4.bare], by: lever}\n", 9),
        ("    terminals:\n      box.screw: {wire: [a3.bare, a4.bare]}\n", 10),
    ],
)
def test_of_grounds_in_two_equal_groups_the_later_is_named(others: str, line: int, says: Callable) -> None:
    assert says("grounds-not-joined", GROUNDS + others).found == [f"boxes/den.yaml:{line}"]
