"""Stretches of a line out of reach: against an inch-by-inch walk of the same line."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from junctionary.formulas.reach import between, out_of_reach

LOOPS = st.integers(20, 120)


def inches(intervals: list[tuple[Fraction, Fraction]], loop: int) -> set[int]:
    """Every whole inch [n, n + 1) of the loop that the intervals hold."""
    return {
        (start + step) % loop
        for start, end in intervals
        for step in range(int(end - start))
        for start in [int(start)]
    }


@given(loop=LOOPS, data=st.data())
def test_what_is_between_breaks_is_every_inch_that_no_break_holds(loop: int, data: st.DataObject) -> None:
    spans = st.tuples(st.integers(0, loop - 1), st.integers(1, loop // 2))
    breaks = [(Fraction(at), Fraction(at + wide)) for at, wide in data.draw(st.lists(spans, max_size=5))]
    held = inches(breaks, loop)
    left = between(breaks, Fraction(loop))
    assert inches(left, loop) == set(range(loop)) - held
    assert sum(end - start for start, end in left) == loop - len(held)


@given(loop=LOOPS, data=st.data())
def test_an_inch_is_out_of_reach_where_no_point_of_its_stretch_is_near(
    loop: int, data: st.DataObject
) -> None:
    start = data.draw(st.integers(0, loop - 1))
    wide = data.draw(st.integers(1, loop - 1))
    points = data.draw(st.lists(st.integers(0, loop - 1), max_size=4))
    reach = data.draw(st.integers(1, 30))
    far = out_of_reach(
        (Fraction(start), Fraction(start + wide)),
        map(Fraction, points),
        Fraction(reach),
        Fraction(loop),
        closed=False,
    )
    here = [each + turn for each in points for turn in (0, loop) if start <= each + turn <= start + wide]
    walked = {
        inch % loop
        for inch in range(start, start + wide)
        if all(abs(Fraction(2 * inch + 1, 2) - each) > reach for each in here)
    }
    assert inches(far, loop) == walked


def test_around_a_room_without_a_door_the_reach_goes_over_the_corner_it_is_counted_from() -> None:
    whole = (Fraction(0), Fraction(100))
    assert out_of_reach(whole, [Fraction(10)], Fraction(45), Fraction(100), closed=True) == [
        (Fraction(55), Fraction(65))
    ]
