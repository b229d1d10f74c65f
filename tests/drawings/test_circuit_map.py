"""The circuit map: everything on it, nothing on top of anything, laid out anew for a phone."""

import pytest
from overlaps import lettering_overlaps, outside
from samples import MAP, chain, node

from junctionary.drawings.circuit_map import NARROW_PX, narrow_map, wide_map
from junctionary.drawings.ink import Drawing, Linked, Mark, letterings, svg
from junctionary.sheets.circuit import CircuitMap, MapNode, nodes
from junctionary.sheets.links import Ref

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
PLANS = pytest.mark.parametrize("plan", [MAP, LONG, BUSHY], ids=["branching", "long", "bushy"])


def links(marks: tuple[Mark, ...]) -> set[Ref]:
    return {mark.to for mark in marks if isinstance(mark, Linked)}


@PLANS
def test_no_lettering_lies_on_other_lettering(plan: CircuitMap) -> None:
    for drawing in (wide_map(plan, "w"), narrow_map(plan, "n")):
        assert lettering_overlaps(drawing) == []
        assert outside(drawing) == []


@PLANS
def test_every_box_and_run_is_linked_on_both(plan: CircuitMap) -> None:
    due = {each.ref for each in nodes(plan.root) if each.ref} | {
        each.run.ref for each in nodes(plan.root) if each.run
    }
    assert links(wide_map(plan, "w").marks) == due
    assert links(narrow_map(plan, "n").marks) == due


@PLANS
def test_the_wide_one_fits_a_laptop_and_the_narrow_one_a_phone(plan: CircuitMap) -> None:
    assert wide_map(plan, "w").width_px <= 940
    assert narrow_map(plan, "n").width_px == NARROW_PX


def test_a_chain_longer_than_the_field_goes_on_below() -> None:
    drawing = wide_map(LONG, "w")
    words = [each.text for each in letterings(drawing.marks)]
    assert words.count("goes on below") == 2
    assert "C18" in words


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
    assert smallest_at(narrow_map(plan, "n"), 320 - 46) >= 9
    assert smallest_at(wide_map(plan, "w"), 961 - 100) >= 9


def test_a_severity_on_the_map_is_told_by_its_word_beside_its_mark() -> None:
    for drawing in (wide_map(MAP, "w"), narrow_map(MAP, "n")):
        assert "hazard" in {each.text for each in letterings(drawing.marks)}
