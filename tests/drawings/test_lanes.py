"""Routes along one another on a wall: an assumed one must never look solid."""

from junctionary.drawings.lanes import side_by_side


def test_two_routes_up_from_one_box_lie_side_by_side_about_it() -> None:
    one, other = side_by_side([[(24, 16), (24, 96)], [(24, 16), (24, 96)]], 4)
    assert (one, other) == ([(22, 16), (22, 96)], [(26, 16), (26, 96)])


def test_an_upright_leg_of_a_bent_route_keeps_off_a_straight_one() -> None:
    straight, bent = side_by_side([[(24, 16), (24, 96)], [(24, 16), (24, 90), (80, 90), (80, 16)]], 4)
    assert straight == [(22, 16), (22, 96)]
    assert bent == [(26, 16), (26, 90), (80, 90), (80, 16)]


def test_routes_that_only_meet_at_a_box_keep_one_line() -> None:
    chain = [[(0, 16), (40, 16)], [(40, 16), (80, 16)]]
    assert side_by_side(chain, 4) == chain
    up_and_down = [[(24, 16), (24, 96)], [(24, 16), (24, 0)]]
    assert side_by_side(up_and_down, 4) == up_and_down


def test_many_take_no_more_than_six_steps_together() -> None:
    lanes = side_by_side([[(24, 16), (24, 96)]] * 13, 4)
    xs = [route[0][0] for route in lanes]
    assert (min(xs), max(xs), len(set(xs))) == (12, 36, 13)


def test_a_slanting_leg_stays_where_the_record_has_it() -> None:
    slant = [[(24, 16), (60, 40), (120, 16)]]
    assert side_by_side(slant, 4) == slant
