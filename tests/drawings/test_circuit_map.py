"""The circuit map: everything on it, nothing on top of anything, laid out anew for a phone."""

import random

import pytest
from overlaps import lettering_overlaps, lettering_under_wires, outside, strokes
from samples import MAP, chain, node

from junctionary.drawings.circuit_map import MIDDLE_PX, WIDE_PX, middle_map, wide_map
from junctionary.drawings.circuit_strip import NARROW_PX, narrow_map
from junctionary.drawings.ink import Drawing, Linked, Mark, letterings, svg
from junctionary.sheets.circuit import CircuitMap, MapNode, nodes
from junctionary.sheets.circuit_tree import circuit_map
from junctionary.sheets.links import Ref
from junctionary.sheets.survey import Survey

LONG = CircuitMap("Long", "Eighteen boxes in a row.", chain(18))
BUSHY = CircuitMap(
    "Bushy",
    "Branches of branches.",
    MapNode(
        Ref("space", "main/1"),
        "main 1",
        "breaker",
        (),
        None,
        tuple(
            node(
                f"B{i}",
                "switch-3",
                *(
                    node(
                        f"B{i}{j}", "light", run=f"b{i}{j}", notes=("a lamp over the long bench by the door",)
                    )
                    for j in "xyz"
                ),
                run=f"b{i}",
                notes=("3-way switch", "1.9 % drop"),
            )
            for i in range(4)
        ),
    ),
)


def grown(seed: int) -> CircuitMap:
    """A circuit of 25 boxes that branches by chance, its boxes named and noted at all lengths."""
    chance = random.Random(seed)
    words = ["over", "the", "long", "bench", "by", "a", "north", "door", "and", "its", "window"]
    notes: list[tuple[str, ...]] = [
        tuple(" ".join(chance.sample(words, chance.randint(1, 8))) for _ in range(chance.randint(0, 4)))
        for _ in range(25)
    ]
    below: dict[int, list[int]] = {}
    for box in range(1, 25):
        below.setdefault(chance.randint(max(0, box - 4), box - 1), []).append(box)

    def box(number: int) -> MapNode:
        return node(
            f"B{number}",
            chance.choice(("receptacle", "switch-3", "light", "junction")),
            *(box(each) for each in below.get(number, ())),
            run=f"r{number}",
            notes=notes[number],
        )

    return CircuitMap("Grown", "By chance.", MapNode(None, "main 1", "breaker", (), None, (box(0),)))


PLANS = pytest.mark.parametrize(
    "plan",
    [MAP, LONG, BUSHY, *map(grown, range(8))],
    ids=["branching", "long", "bushy", *(f"grown {seed}" for seed in range(8))],
)


def every(plan: CircuitMap) -> tuple[Drawing, Drawing, Drawing]:
    return wide_map(plan, "w"), middle_map(plan, "m"), narrow_map(plan, "n")


def links(marks: tuple[Mark, ...]) -> set[Ref]:
    return {mark.to for mark in marks if isinstance(mark, Linked)}


@PLANS
def test_no_lettering_lies_on_other_lettering(plan: CircuitMap) -> None:
    for drawing in every(plan):
        assert lettering_overlaps(drawing) == []
        assert outside(drawing) == []


@PLANS
def test_no_wire_runs_through_lettering(plan: CircuitMap) -> None:
    for drawing in every(plan):
        assert lettering_under_wires(drawing, "run") == []


def test_neither_happens_on_any_circuit_of_the_demo_house(demo_survey: Survey) -> None:
    for circuit in demo_survey.house.circuits.values():
        plan = circuit_map(demo_survey, circuit)
        for drawing in every(plan) if plan is not None else ():
            assert lettering_overlaps(drawing) == [], circuit.id
            assert lettering_under_wires(drawing, "run") == [], circuit.id
            assert outside(drawing) == [], circuit.id


@PLANS
def test_every_box_and_run_is_linked_on_all(plan: CircuitMap) -> None:
    due = {each.ref for each in nodes(plan.root) if each.ref} | {
        each.run.ref for each in nodes(plan.root) if each.run
    }
    for drawing in every(plan):
        assert links(drawing.marks) == due


@PLANS
def test_each_fits_what_it_is_made_for(plan: CircuitMap) -> None:
    wide, middle, narrow = every(plan)
    assert wide.width_px <= WIDE_PX
    assert middle.width_px <= MIDDLE_PX
    assert narrow.width_px == NARROW_PX


def test_a_chain_takes_the_width_there_is() -> None:
    for boxes in (5, 6, 7):
        plan = CircuitMap("Chain", "In a row.", chain(boxes))
        assert wide_map(plan, "w").width_px >= 0.75 * WIDE_PX
        assert middle_map(plan, "m").width_px >= 0.7 * MIDDLE_PX


def test_a_chain_longer_than_the_field_goes_on_below_in_strips_of_about_one_length() -> None:
    drawing = wide_map(LONG, "w")
    words = [each.text for each in letterings(drawing.marks)]
    assert words.count("goes on below") == words.count("from above") == 1
    assert "C18" in words
    names = [each for each in letterings(drawing.marks) if each.kind == "name" and each.text.startswith("C")]
    rows = {y: sum(each.y == y for each in names) for y in {each.y for each in names}}
    assert max(rows.values()) - min(rows.values()) <= 1


def test_a_branch_stands_beside_what_hangs_on_its_sister_not_below_all_of_it() -> None:
    plan = CircuitMap(
        "Two",
        "Branches.",
        node(
            "A",
            "switch",
            node("B", "light", *(node(f"B{i}", "light", run=f"b{i}") for i in "123"), run="b"),
            node("C", "light", run="c"),
            run="a",
        ),
    )
    at = {each.text: each for each in letterings(wide_map(plan, "w").marks)}
    assert at["C"].y == at["B2"].y
    assert at["C"].x == at["B"].x


def test_a_breaker_stands_on_the_bus_of_its_panel() -> None:
    for drawing in every(MAP):
        assert len(list(strokes(drawing.marks, "bus"))) == 1
    for drawing in every(CircuitMap("Loose", "No breaker.", MapNode(None, "not recorded", "unknown"))):
        assert list(strokes(drawing.marks, "bus")) == []


def test_a_name_is_escaped() -> None:
    plan = CircuitMap("T", "S", MapNode(None, 'the "<b>" box', "unknown"))
    assert "<b>" not in str(svg(wide_map(plan, "w"), lambda _: None))


def test_what_has_no_address_is_drawn_without_a_link() -> None:
    drawn = str(svg(wide_map(MAP, "w"), lambda ref: "x.html" if ref == Ref("box", "D1") else None))
    assert drawn.count("<a ") == 1
    assert "D2" in drawn


def smallest_at(drawing: Drawing, width: float) -> float:
    scale = min(1, width / drawing.width_px)
    return min(each.size_px for each in letterings(drawing.marks)) * scale


@PLANS
def test_letters_are_never_below_nine_pixels(plan: CircuitMap) -> None:
    wide, middle, narrow = every(plan)
    assert smallest_at(narrow, 320 - 46) >= 9
    assert smallest_at(middle, 761 - 100) >= 9
    assert smallest_at(wide, 1120 - 100) >= 9


def test_a_severity_on_the_map_is_told_by_its_word_beside_its_mark() -> None:
    for drawing in every(MAP):
        assert "hazard" in {each.text for each in letterings(drawing.marks)}
