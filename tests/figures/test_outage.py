"""What matters against what a generator can carry."""

from collections.abc import Callable
from fractions import Fraction

from junctionary.figures import Figures
from junctionary.figures.outage import carried

HOUSE = """
[panels/main.yaml]
panel: main
spaces: 8
main: 100 A
fed_by: service
bonded: true
breakers:
  1: {rating: 20 A, feeds: a}
  2: {rating: 20 A, feeds: e}
  3: {rating: 20 A, feeds: b}
  5+7: {rating: 50 A, feeds: d}
[circuits/a.yaml]
circuit: a
name: A
loads: [{id: freezer, is: freezer, draws: 1200 W}]
[circuits/e.yaml]
circuit: e
name: E
loads: [{id: fridge, is: refrigerator, draws: 600 W}]
[circuits/b.yaml]
circuit: b
name: B
loads: [{id: pump, is: sump-pump, draws: 1800 W}, {id: radio, is: other}]
[circuits/d.yaml]
circuit: d
name: D
loads: [{id: strip, is: space-heater, draws: 7200 W, volts: 240 V, instead_of: pump}]
"""


def test_what_alone_is_too_much_is_named_and_the_rest_goes_by_what_matters(
    figures_of: Callable[[str], Figures],
) -> None:
    draws = figures_of(HOUSE).draws
    found = carried([draws[each] for each in ("strip", "pump", "freezer", "fridge")], Fraction(20))
    assert [each.id for each in found.alone] == ["strip"]
    assert found.fits is False
    assert found.rest_a <= 20


def test_a_load_on_the_same_leg_that_goes_beyond_is_named(figures_of: Callable[[str], Figures]) -> None:
    draws = figures_of(HOUSE).draws
    legs = {each: draws[each].connection.legs for each in ("freezer", "fridge")}
    assert legs["freezer"] == legs["fridge"]
    found = carried([draws["freezer"], draws["fridge"]], Fraction(12))
    assert [each.id for each in found.beyond] == ["fridge"]
    assert found.rest_a == 10


def test_what_is_not_recorded_is_never_carried_without_a_word(figures_of: Callable[[str], Figures]) -> None:
    draws = figures_of(HOUSE).draws
    found = carried([draws["freezer"], draws["radio"]], Fraction(30))
    assert found.fits is None
    assert [each.id for each in found.untold] == ["radio"]
    assert carried([draws["freezer"]], Fraction(30)).fits is True
