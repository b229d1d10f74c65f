"""The ground of each run and the wire to each electrode; a panel's poles and its clear space."""

from collections.abc import Callable

import pytest

from junctionary.figures import Figures, RunGround
from junctionary.units import WireSize

FiguresOf = Callable[[str], Figures]


def circuit(cable: str, rating: str = "20 A", more: str = "") -> str:
    return (
        f"[panels/main.yaml]\npanel: main\nspaces: 8\nlugs: 75 C\n"
        f"breakers: {{1+3: {{rating: {rating}, feeds: c, says: The circuit}}}}\n"
        f"[circuits/c.yaml]\ncircuit: c\nname: C\n"
        f"runs:\n  - {{id: a1, cable: {cable}, from: main, to: none{more}}}\n"
    )


def one(figures_of: FiguresOf, cable: str, rating: str = "20 A", more: str = "") -> RunGround:
    return figures_of(circuit(cable, rating, more)).grounds["a1"]


@pytest.mark.parametrize(
    ("cable", "rating", "needs", "suits"),
    [
        ("12/2 NM-B", "20 A", "12 AWG", True),
        ("14/2 NM-B", "20 A", "14 AWG", True),  # the wire is too small, and another rule says so
        ("10/2 NM-B", "20 A", "10 AWG", True),  # upsized, with its ground
        ("6/3 NM-B", "50 A", "10 AWG", True),
        ("6/2 NM-B", "45 A", "10 AWG", True),  # 8 AWG carries 40 A: the next rating up is no reason to upsize
        ("6/3 NM-B", "40 A", "8 AWG", False),  # 8 AWG would do, and the ground did not grow
        ("6-6-6-12 SER", "60 A", "10 AWG", False),
        ("2-2-2-4 SER aluminium", "90 A", "6 AWG", True),
    ],
)
def test_a_run_needs_the_ground_its_breaker_asks_for(
    cable: str, rating: str, needs: str, suits: bool, figures_of: FiguresOf
) -> None:
    ground = one(figures_of, cable, rating)
    assert ground.needs is not None
    assert (ground.needs.size, ground.suits, ground.lacks) == (WireSize(needs), suits, ())


@pytest.mark.parametrize(
    ("cable", "made"),
    [
        ("14/2 NM no ground", "none"), ("12/2 AC", "armor"), ("unknown", "unknown"), ("12/2 MC", "wire"),
        ("{raceway: 1/2 in EMT, wires: [12 AWG black, 12 AWG white]}", "raceway"),
        ("{raceway: 1/2 in PVC, wires: [12 AWG black, 12 AWG white]}", "none"),
        ("{raceway: 1/2 in FMC, wires: [12 AWG black, 12 AWG white]}", "unknown"),
    ],
)  # fmt: skip
def test_a_ground_is_a_wire_or_armor_or_metal_conduit(cable: str, made: str, figures_of: FiguresOf) -> None:
    assert one(figures_of, cable).made == made


def test_a_ground_as_large_as_the_circuit_needs_no_breaker(figures_of: FiguresOf) -> None:
    assert one(figures_of, "12/2 NM-B", "unknown").suits is True
    smaller = one(figures_of, "6/3 NM-B", "unknown")
    assert smaller.suits is None
    assert smaller.lacks == ("the rating of the breaker, for run a1",)


def test_insulation_nobody_knows_leaves_open_how_small_the_circuit_might_be(figures_of: FiguresOf) -> None:
    cable = "{raceway: 1 in PVC, wires: [6 AWG black, 6 AWG red, 10 AWG green]}"
    assert one(figures_of, cable, "40 A").lacks == ("what the insulation of run a1 is",)
    assert one(figures_of, cable, "40 A", ", insulation: THHN").lacks == ()


SERVICE = (
    "[house.yaml]\nhouse: H\nreference: nec-2023\n"
    "buildings:\n  - {id: barn, detached: true, electrodes: [{is: rod, wire: 8 AWG copper}]}\n"
    "service:\n  disconnect: main\n  conductors: {size: 4/0 AWG, metal: aluminium}\n"
    "  electrodes: [rod, {is: rod, wire: 6 AWG copper}, {is: water-pipe, wire: 6 AWG copper}]\n"
)
BARN = (
    "[rooms/barn.yaml]\nroom: barn\nname: Barn\nkind: workshop\nbuilding: barn\n"
    "[panels/barn.yaml]\npanel: barn\nspaces: 6\nfed_by: c\nat: {room: barn}\n"
)


def test_the_wire_to_an_electrode_goes_by_the_service_and_by_the_electrode(figures_of: FiguresOf) -> None:
    found = figures_of(SERVICE + circuit("12/2 NM-B")).electrodes
    assert [each.suits for each in found[:3]] == [None, True, False]
    assert found[0].lacks == ("what wire goes to the rod electrode of the service",)
    assert found[2].needs.size == WireSize("4 AWG")


def test_another_buildings_electrode_goes_by_its_feeder(figures_of: FiguresOf) -> None:
    feeder = (
        circuit("6/3 NM-B", "50 A")
        .replace("to: none", "to: barn")
        .replace("name: C", "name: C\npurpose: feeder")
    )
    barn = figures_of(SERVICE + feeder + BARN).electrodes[-1]
    assert (barn.at, barn.panel, barn.needs.size, barn.suits) == ("barn", "barn", WireSize("8 AWG"), True)
    alone = figures_of(SERVICE + circuit("12/2 NM-B")).electrodes[-1]
    assert alone.suits is None
    assert "the size of the supply conductors (barn)" in alone.lacks


def panel(figures_of: FiguresOf, told: str, house: str = ""):
    return figures_of(f"{house}[panels/main.yaml]\npanel: main\nspaces: 2\n{told}").panels["main"]


@pytest.mark.parametrize(
    ("told", "poles", "most", "lacks"),
    [
        ("breakers: {1: unused, 2: blank}\n", 1, 2, ()),
        ("breakers: {1a: unused, 1b: unused}\n", 2, 2, ()),
        ("breakers: {1a: unused, 1b: unused, 2: unused}\n", 3, None,
         ("how many circuits the label of panel main allows",)),
        ("circuits: 4\nbreakers: {1a: unused, 1b: unused, 2: unused}\n", 3, 4, ()),
        ("main: 60 A\n", 0, 2, ("the breakers of panel main",)),
        ("kind: fuse-panel\nbreakers: {left: unused, right: unused, below: unused}\n", 3, 2, ()),
    ],
)  # fmt: skip
def test_a_panel_holds_as_many_poles_as_its_label_or_its_spaces_allow(
    told: str, poles: int, most: int | None, lacks: tuple[str, ...], figures_of: FiguresOf
) -> None:
    limits = panel(figures_of, told)
    assert (limits.poles, limits.most, limits.lacks) == (poles, most, lacks)


def test_the_clear_space_is_judged_side_by_side(figures_of: FiguresOf) -> None:
    limits = panel(figures_of, "clear: {width: 0.76 m, depth: 2 ft 11 in}\n")
    stands = {each.name: each.stands for each in limits.sides}
    assert stands == {"width": "short", "depth": "short", "height": "not recorded"}
    assert [each.lacks for each in limits.sides][2] == ("the clear height before panel main",)


@pytest.mark.parametrize(
    ("told", "stands"),
    [
        ("rating: 200 A\n", "short"),
        ("rating: 200 A\nbuilt_to: nec-1956\n", "low as old work may be"),
        ("rating: 400 A\nbuilt_to: nec-1956\n", "short"),
        ("built_to: nec-1956\n", "not recorded"),
    ],
)
def test_a_low_ceiling_is_borne_before_a_small_old_panel(
    told: str, stands: str, figures_of: FiguresOf
) -> None:
    limits = panel(figures_of, f"{told}clear: {{width: 3 ft, depth: 3 ft, height: 6 ft}}\n")
    assert limits.sides[2].stands == stands
