from dataclasses import replace
from fractions import Fraction

import pytest

from junctionary.formulas.box_fill import BoxContents, Entering, Yoke, box_fill
from junctionary.formulas.box_volume import Addition, BoxVolume, Divider, volume
from junctionary.tables import table
from junctionary.units import WireSize

W10, W12, W14 = (WireSize(f"{each} AWG") for each in (10, 12, 14))
BOX = BoxVolume("K1", marked_in3=Fraction("20.3"))
TWO_CABLES = BoxContents(entering=(Entering("a1", W12, 2), Entering("a2", W12, 2)), grounds=(W12, W12))


def filled(contents, edition="nec-2023"):
    return box_fill(contents, BOX, edition).filled


def test_each_thing_in_a_box_has_its_line_and_its_clause():
    found = filled(replace(TWO_CABLES, yokes=(Yoke("r1", W12),), clamps_inside=True, studs=1))
    assert [(each.sum, each.cite.clause) for each in found.steps] == [
        ("2 × 2.25", "314.16(B)(1)"),
        ("2 × 2.25", "314.16(B)(1)"),
        ("1 × 2.25", "314.16(B)(2)"),
        ("1 × 2.25", "314.16(B)(3)"),
        ("2 × 2.25", "314.16(B)(4)"),
        ("1 × 2.25", "314.16(B)(5)"),
        ("4.50 + 4.50 + 2.25 + 2.25 + 4.50 + 2.25", "314.16(B)"),
    ]


@pytest.mark.parametrize(("loop", "allowances"), [(0, 1), (Fraction("11.9"), 1), (12, 2)])
def test_an_unbroken_conductor_counts_twice_once_its_loop_is_long_enough_to_cut(loop, allowances):
    passing = BoxContents(entering=(Entering("d4", W14, 2, "passes", Fraction(loop)),))
    assert filled(passing).value == 2 * allowances * 2


def test_clamps_go_by_the_largest_conductor_in_the_box_and_a_yoke_by_its_own():
    mixed = BoxContents(
        entering=(Entering("a1", W10, 2), Entering("b1", W14, 2)),
        yokes=(Yoke("s1", W14),),
        clamps_inside=True,
    )
    assert [each.sum for each in filled(mixed).steps[2:4]] == ["1 × 2.50", "2 × 2.00"]


def test_a_wide_device_counts_twice_for_each_gang():
    assert filled(BoxContents(yokes=(Yoke("range", W10, gangs=2),))).value == 10


@pytest.mark.parametrize(("edition", "grounds"), [("nec-2017", "2.00"), ("nec-2020", "3.00")])
def test_grounds_beyond_four_take_a_quarter_each_from_2020(edition, grounds):
    assert filled(BoxContents(grounds=(W14,) * 6), edition).value == Fraction(grounds)


@pytest.mark.parametrize(("edition", "grounds"), [("nec-2017", "4.50"), ("nec-2020", "2.25")])
def test_an_isolated_ground_is_a_set_of_its_own_until_2017(edition, grounds):
    assert filled(BoxContents(grounds=(W12,), isolated_grounds=(W12,)), edition).value == Fraction(grounds)


@pytest.mark.parametrize(("edition", "block"), [("nec-2020", "0"), ("nec-2023", "2.25")])
def test_a_terminal_block_takes_room_from_2023(edition, block):
    assert filled(BoxContents(terminal_blocks=(W12,)), edition).value == Fraction(block)


def test_an_unmarked_box_is_filled_all_the_same_and_says_what_volume_it_needs():
    found = box_fill(TWO_CABLES, BoxVolume("K1"), "nec-2023")
    assert found.filled.value == Fraction("11.25")
    assert found.left.lacks == ("the marked volume of box K1 (it needs 11.25 in3)",)
    assert found.fits is None


@pytest.mark.parametrize(
    ("change", "lack"),
    [
        ({"studs": None}, "whether the box has a fixture stud or hickey"),
        ({"yokes": (Yoke("r1", None),)}, "the wire size of r1"),
        ({"grounds": (W12, None)}, "the wire size of an equipment ground"),
        ({"entering": (Entering("a1", None, 2),)}, "the wire size of a1"),
        ({"lacks": ("what the capped cable is",)}, "what the capped cable is"),
    ],
)
def test_a_missing_fact_is_named_and_leaves_the_box_unjudged(change, lack):
    found = box_fill(replace(TWO_CABLES, **change), BOX, "nec-2023")
    assert (found.filled.value, found.filled.lacks, found.fits) == (None, (lack,), None)


@pytest.mark.parametrize(
    ("change", "lack", "least", "most"),
    [
        ({"clamps_inside": None}, "whether the box has clamps inside", "11.25", "13.5"),
        (
            {"entering": (Entering("d4", W12, 2, "passes", None),)},
            "how long the loop of d4 is",
            "6.75",
            "11.25",
        ),
    ],
)
def test_a_missing_fact_that_can_add_only_so_much_leaves_the_box_unjudged_only_between(
    change, lack, least, most
):
    def found(volume):
        fill = box_fill(replace(TWO_CABLES, **change), BoxVolume("K1", Fraction(volume)), "nec-2023")
        assert (fill.filled.value, fill.filled.lacks) == (None, (lack,))
        assert (fill.least, fill.most) == (Fraction(least), Fraction(most))
        return fill.fits

    short = Fraction(1, 100)
    assert found(Fraction(most)) is True
    assert found(Fraction(most) - short) is None
    assert found(Fraction(least)) is None
    assert found(Fraction(least) - short) is False


def test_two_switches_and_five_cables_are_counted_by_either_rule_of_grounds():
    # The box of the published example B2, which prints 36 by the older rule.
    contents = BoxContents(
        entering=(Entering("cables", W14, 13),), grounds=(W14,) * 5, yokes=(Yoke("s1", W14), Yoke("s2", W14))
    )
    assert filled(contents, "nec-2017").value == 36
    assert filled(contents, "nec-2020").value == Fraction("36.5")


def test_a_box_too_full_by_what_is_known_is_too_full_whatever_is_missing():
    small = BoxVolume("K1", marked_in3=Fraction(10))
    assert box_fill(replace(TWO_CABLES, clamps_inside=None), small, "nec-2023").fits is False


def test_a_full_box_fits_and_has_nothing_left():
    found = box_fill(TWO_CABLES, BoxVolume("K1", marked_in3=Fraction("11.25")), "nec-2023")
    assert (found.left.value, found.fits) == (0, True)


def test_four_gauge_takes_a_box_out_of_this_rule():
    found = box_fill(BoxContents(entering=(Entering("f1", WireSize("4 AWG"), 3),)), BOX, "nec-2023")
    assert (found.governed, found.fits, found.filled.value) == (False, None, None)
    assert str(found.filled.cites[0]) == "NEC 2023, 314.28"


def test_rings_add_and_dividers_take_their_volume():
    box = BoxVolume(
        "K6", standard="4 x 1-1/2 octagonal", additions=(Addition("plaster-ring", Fraction("3.5")),),
        dividers=(Divider(metal=True), Divider(metal=False), Divider(None, Fraction("0.8"))),
    )  # fmt: skip
    assert volume(box, "nec-2023").steps[-1].sum == "15.50 + 3.50 − 0.50 − 1.00 − 0.80"


def test_a_ring_of_unknown_volume_is_a_gap_only_where_the_box_needs_it():
    ringed = replace(BOX, additions=(Addition("plaster-ring", None),))
    assert box_fill(TWO_CABLES, ringed, "nec-2023").fits is True
    crowded = replace(TWO_CABLES, yokes=(Yoke("r1", W12), Yoke("r2", W12), Yoke("r3", W12)))
    found = box_fill(crowded, ringed, "nec-2023")
    assert (found.fits, found.volume.lacks) == (None, ("the marked volume of the plaster-ring on box K1",))


def test_a_metal_extension_ring_without_a_mark_adds_what_its_trade_size_holds():
    ring = Addition("extension ring", None, "4 x 1-1/2 square")
    made = volume(BoxVolume("J1", standard="4 x 2-1/8 square", additions=(ring,)), "nec-2023")
    assert [each.sum for each in made.steps] == ["30.3", "21.0", "30.30 + 21.00"]


def test_a_divider_of_unknown_make_is_named():
    assert volume(replace(BOX, dividers=(Divider(None),)), "nec-2023").lacks == (
        "what the divider in box K1 is made of, or its marked volume",
    )


def test_a_masonry_box_has_its_volume_for_each_gang():
    assert volume(BoxVolume("M1", standard="3-3/4 x 2 x 3-1/2 masonry", gangs=3), "nec-2023").value == 63


def test_a_trade_size_the_table_does_not_know_gives_no_volume():
    assert volume(BoxVolume("Z1", standard="5 x 5 square"), "nec-2023").lacks == (
        "the marked volume of box Z1: 5 x 5 square is no standard metal box",
    )


@pytest.mark.parametrize("row", list(table("metal-boxes")), ids=lambda row: row.text("box"))
@pytest.mark.parametrize("size", ["14 AWG", "12 AWG", "10 AWG"])
def test_a_standard_box_holds_as_many_conductors_as_printed_and_no_more(row, size):
    most = int(row.text(size))
    for count, fits in ((most, True), (most + 1, False)):
        contents = BoxContents(entering=(Entering("wires", WireSize(size), count),))
        assert box_fill(contents, BoxVolume("B", standard=row.text("box")), "nec-2023").fits is fits
