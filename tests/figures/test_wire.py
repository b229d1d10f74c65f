"""The largest breaker for each run and circuit: insulation, warmth, company, what is missing."""

from collections.abc import Callable

import pytest

from junctionary.figures import Figures, WireLimit

FiguresOf = Callable[[str], Figures]

BOXES = (
    "[boxes/den.yaml]\nroom: den\nboxes:\n"
    "  K1: {devices: {r1: duplex}, makeup: end-of-run}\n"
    "[rooms/attic.yaml]\nroom: attic\nname: Attic\nkind: attic\n"
)


def circuit(*runs: str, more: str = "") -> str:
    return f"[circuits/c.yaml]\ncircuit: c\nname: C\n{more}runs:\n" + "".join(
        f"  - {{{each}}}\n" for each in runs
    )


def one(figures_of: FiguresOf, cable: str, boxes: str = "K1: {capped: [a1]}") -> WireLimit:
    text = circuit(f"id: a1, cable: {cable}, from: main, to: K1")
    return figures_of(f"{text}[boxes/den.yaml]\nroom: den\nboxes:\n  {boxes}\n").wires["a1"]


@pytest.mark.parametrize(
    ("cable", "amperes"),
    [
        ("14/2 NM-B", 15), ("12/2 NM-B", 20), ("10/2 NM-B", 30), ("6/3 NM-B", 60), ("14/2 NM no ground", 15),
        ("12/2 UF-B", 20), ("2-2-2-4 SER aluminium", 80),
    ],
)  # fmt: skip
def test_a_cable_allows_its_largest_breaker(cable: str, amperes: int, figures_of: FiguresOf) -> None:
    assert one(figures_of, cable).breaker.value == amperes


def test_insulation_that_nothing_names_is_missing(figures_of: FiguresOf) -> None:
    limit = one(figures_of, "12/2 MC")
    assert limit.breaker.lacks == ("what the insulation of run a1 is",)
    assert limit.ampacity.value is None


def test_insulation_told_beside_the_cable_counts(figures_of: FiguresOf) -> None:
    assert one(figures_of, "12/2 MC, insulation: THHN").breaker.value == 20
    assert one(figures_of, "12/2 MC, insulation: some other").breaker.value is None


def test_a_cable_nobody_knows_has_no_figure(figures_of: FiguresOf) -> None:
    assert one(figures_of, "unknown").breaker.lacks == ("the cable of run a1",)


def test_an_attic_nobody_measured_matters_only_where_it_decides(figures_of: FiguresOf) -> None:
    def limit(cable: str) -> WireLimit:
        text = circuit(f"id: a1, cable: {cable}, from: main, to: K1, through: [attic]")
        return figures_of(f"{text}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{capped: [a1]}}\n").wires["a1"]

    assert limit("14/2 NM-B").breaker.value == 15
    assert limit("14/2 NM no ground").breaker.lacks == ("how warm it becomes in Attic",)


def test_an_attics_recorded_heat_is_taken(figures_of: FiguresOf) -> None:
    hot = "[rooms/attic.yaml]\nroom: attic\nname: Attic\nkind: attic\nambient: 125 F\n"
    text = circuit("id: a1, cable: 10/2 NM-B, from: main, to: K1, through: [attic]")
    limit = figures_of(f"{text}[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {{capped: [a1]}}\n{hot}").wires[
        "a1"
    ]
    # 40 A × 0.76 = 30.4 A, held to 30 A.
    assert limit.ampacity.value == 30
    assert limit.breaker.value == 30


BUNDLED = """
[rooms/den.yaml]
room: den
name: Den
kind: den
bundles: [{bundle}]
[boxes/den.yaml]
room: den
boxes:
  K1: {capped: [a1, a2, a3, a4, a5]}
"""
FIVE = circuit(*(f"id: a{number}, cable: 12/2 NM-B, from: main, to: K1" for number in range(1, 6)))


def bundled(figures_of: FiguresOf, bundle: str) -> WireLimit:
    return figures_of(FIVE + BUNDLED.replace("{bundle}", bundle)).wires["a1"]


def test_a_sealed_hole_takes_from_what_its_cables_may_carry(figures_of: FiguresOf) -> None:
    limit = bundled(figures_of, "{id: h, is: sealed-hole, runs: [a1, a2, a3, a4, a5]}")
    assert (limit.ampacity.value, limit.breaker.value, limit.without_hole.value, limit.hole) == (
        15,
        15,
        20,
        "h",
    )


def test_two_cables_may_share_a_sealed_hole(figures_of: FiguresOf) -> None:
    limit = bundled(figures_of, "{id: h, is: sealed-hole, runs: [a1, a2]}")
    assert (limit.breaker.value, limit.hole) == (20, None)


def test_a_short_bundle_takes_nothing_and_one_of_unknown_length_leaves_it_open(figures_of: FiguresOf) -> None:
    runs = "runs: [a1, a2, a3, a4, a5]"
    assert bundled(figures_of, f"{{id: h, is: conduit, length: 24 in, {runs}}}").breaker.value == 20
    assert bundled(figures_of, f"{{id: h, is: conduit, length: 25 in, {runs}}}").breaker.value == 15
    assert bundled(figures_of, f"{{id: h, is: conduit, {runs}}}").breaker.lacks == (
        "how long the bundle h is",
    )


def test_the_neutral_of_a_balanced_pair_is_not_counted_in_a_bundle(figures_of: FiguresOf) -> None:
    def limit(second_space: str) -> WireLimit:
        panel = (
            "[panels/main.yaml]\npanel: main\nspaces: 8\nbreakers:\n"
            "  1: {rating: 20 A, feeds: c.black}\n"
            f"  {second_space}: {{rating: 20 A, feeds: c.red}}\n"
        )
        runs = circuit(*(f"id: a{number}, cable: 12/3 NM-B, from: main, to: K1" for number in range(1, 4)))
        bundle = (
            "[rooms/den.yaml]\nroom: den\nname: Den\nkind: den\n"
            "bundles: [{id: h, is: sealed-hole, runs: [a1, a2, a3]}]\n"
        )
        boxes = "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {capped: [a1, a2, a3]}\n"
        return figures_of(panel + runs + bundle + boxes).wires["a1"]

    # Six conductors on opposite legs: 80 %; nine on the same leg: 70 %.
    assert [step.sum for step in limit("3").ampacity.steps if "together" in step.what] == ["30.00 × 80 %"]
    assert [step.sum for step in limit("2").ampacity.steps if "together" in step.what] == ["30.00 × 70 %"]


def test_a_feeder_between_lugs_marked_75_c_takes_that_column(figures_of: FiguresOf) -> None:
    def limit(lugs: str) -> WireLimit:
        panels = (
            "[panels/main.yaml]\npanel: main\nspaces: 8\nlugs: 75 C\n"
            "breakers: {1+3: {rating: 90 A, feeds: c}}\n"
            f"[panels/barn.yaml]\npanel: barn\nspaces: 8\n{lugs}"
        )
        runs = circuit("id: a1, cable: 2-2-2-4 SER aluminium, from: main, to: barn", more="purpose: feeder\n")
        return figures_of(panels + runs).wires["a1"]

    assert limit("lugs: 75 C\n").ampacity.value == 90
    assert limit("").ampacity.value == 75


def test_the_thinnest_run_limits_the_circuit(figures_of: FiguresOf) -> None:
    text = circuit(
        "id: a1, cable: 12/2 NM-B, from: main, to: K1", "id: a2, cable: 14/2 NM-B, from: K1, to: K2"
    )
    boxes = "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {makeup: splice-through}\n  K2: {capped: [a2]}\n"
    limit = figures_of(text + boxes).circuits["c"]
    assert limit.breaker.value == 15
    assert limit.limiting is not None
    assert limit.limiting.name == "a2"


def test_a_thin_pigtail_limits_the_circuit(figures_of: FiguresOf) -> None:
    text = circuit("id: a1, cable: 12/2 NM-B, from: main, to: K1")
    box = (
        "[boxes/den.yaml]\nroom: den\nboxes:\n  K1:\n    devices: {r1: duplex}\n    joints:\n"
        "      - {join: [a1.black, r1.brass-top, r1.brass-bottom], pigtail: 14 AWG copper, by: lever-3}\n"
    )
    limit = figures_of(text + box).circuits["c"]
    assert limit.breaker.value == 15
    assert limit.limiting is not None
    assert limit.limiting.name == "K1/j1"


def test_a_circuit_whose_cables_are_not_all_known_has_no_largest_breaker(figures_of: FiguresOf) -> None:
    text = circuit(
        "id: a1, cable: 12/2 NM-B, from: main, to: K1", "id: a2, cable: 12/2 NM-B, from: K1, to: unknown"
    )
    boxes = "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {makeup: splice-through}\n"
    assert figures_of(text + boxes).circuits["c"].breaker.lacks == ("where run a2 ends",)


def test_a_circuit_without_its_home_run_is_not_known_whole(figures_of: FiguresOf) -> None:
    text = circuit("id: a2, cable: 12/2 NM-B, from: K1, to: K2")
    boxes = "[boxes/den.yaml]\nroom: den\nboxes:\n  K1: {capped: [a2]}\n  K2: {capped: [a2]}\n"
    lacks = figures_of(text + boxes).circuits["c"].breaker.lacks
    assert lacks == ("the cable of circuit c that starts in main",)
