from fractions import Fraction
from itertools import product

import pytest

from junctionary.formulas.ampacity import Conductor, largest_breaker
from junctionary.formulas.box_fill import BoxContents, Entering, Yoke, box_fill
from junctionary.formulas.box_volume import Addition, BoxVolume, Divider
from junctionary.formulas.receptacle import largest_cord_load
from junctionary.formulas.sums import evaluate
from junctionary.formulas.worked import Worked, step
from junctionary.units import WireSize

EDITIONS = ("nec-1999", "nec-2008", "nec-2011", "nec-2014", "nec-2017", "nec-2020", "nec-2023", "nec-2026")


def _workings():
    for edition, size, metal, ambient in product(
        EDITIONS,
        ("18 AWG", "14 AWG", "8 AWG", "2/0 AWG"),
        ("copper", "aluminium", "copper-clad"),
        ("−5", "130 / 3", "70"),
    ):
        conductor = Conductor(WireSize(size), metal, 90, evaluate(ambient), 8, 60, None)
        yield largest_breaker(conductor, False, edition)
    for edition, size in product(EDITIONS, ("14 AWG", "9 AWG", "6 AWG", "2 AWG")):
        wire = WireSize(size)
        contents = BoxContents(
            entering=(Entering("a1", wire, 3), Entering("a2", wire, 2, "passes", Fraction(14))),
            grounds=(wire,) * 6,
            clamps_inside=True,
            studs=1,
            yokes=(Yoke("r1", wire, 2),),
            terminal_blocks=(wire,),
            isolated_grounds=(wire,),
        )
        box = BoxVolume(
            "K1", Fraction("20.3"), additions=(Addition("ring", Fraction("3.5")),), dividers=(Divider(True),)
        )
        fill = box_fill(contents, box, edition)
        yield from (fill.filled, fill.volume, fill.left)
    for circuit, receptacle, outlets in product((15, 20, 30), (15, 20, 30), (1, 4)):
        yield largest_cord_load(Fraction(circuit), Fraction(receptacle), outlets, "nec-2023")


@pytest.mark.parametrize("worked", list(_workings()))
def test_every_sum_in_a_working_comes_to_its_value_and_the_last_is_the_figure(worked):
    for each in worked.steps:
        assert evaluate(each.sum) == each.value
        assert each.unit == worked.unit
        assert each.cite is None or each.cite in worked.cites
    if worked.value is not None:
        assert worked.steps[-1].value == worked.value


def test_a_step_is_worked_out_from_the_sum_it_shows():
    assert step("three conductors", "3 × 2.25", "in3").value == Fraction("6.75")


@pytest.mark.parametrize(("value", "lacks"), [(None, ()), (Fraction(1), ("the wire size",))])
def test_a_figure_without_a_value_says_what_it_lacks_and_one_with_a_value_lacks_nothing(value, lacks):
    with pytest.raises(ValueError, match="lacks"):
        Worked(value, "A", lacks=lacks)
