"""Labels beside crowded things: none on another, none on what is taken, the same every time."""

import random
from itertools import combinations, pairwise

import pytest

from junctionary.drawings.ink import Lettering, letterings
from junctionary.drawings.placing import Extent, Label, placed, spread

FIELD: Extent = (0, 0, 320, 240)


def crowd(seed: int) -> tuple[list[Label], list[Extent]]:
    chance = random.Random(seed)
    things = [(chance.uniform(10, 310), chance.uniform(10, 230)) for _ in range(chance.randint(1, 60))]
    labels = [
        Label(
            ((f"B{index}", "tag"), ("(12) GF +44", "note")),
            x,
            y,
            8,
            (chance.uniform(-1, 1), chance.uniform(-1, 1)),
        )
        for index, (x, y) in enumerate(things)
    ]
    return labels, [(x - 8, y - 8, x + 8, y + 8) for x, y in things]


def meet(a: Extent, b: Extent) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


@pytest.mark.parametrize("seed", range(25))
def test_no_label_lies_on_another_or_on_a_thing_however_crowded(seed: int) -> None:
    labels, taken = crowd(seed)
    marks, reached, _ = placed(labels, taken, FIELD)
    words: list[Lettering] = list(letterings(marks))
    assert [each.text for each in words if each.text.startswith("B")] == [each.lines[0][0] for each in labels]
    assert [(a.text, b.text) for a, b in combinations(words, 2) if meet(a.extent, b.extent)] == []
    assert [each.text for each in words for thing in taken if meet(each.extent, thing)] == []
    assert max(each.extent[3] for each in words) <= reached


def test_a_label_lies_the_way_it_would_rather_when_that_is_free() -> None:
    (word,) = letterings(
        placed([Label((("K1", "tag"),), 100, 100, 8, (0, -1))], [(92, 92, 108, 108)], FIELD)[0]
    )
    assert word.extent[3] <= 92
    assert word.extent[0] < 100 < word.extent[2]


def test_a_wall_is_shunned_but_not_at_any_price() -> None:
    label = Label((("K1", "tag"),), 100, 100, 8, (0, -1))
    wall: Extent = (0, 80, 320, 90)
    (word,) = letterings(placed([label], [], FIELD, [wall])[0])
    assert not meet(word.extent, wall)
    everywhere: Extent = (0, 0, 320, 240)
    assert list(letterings(placed([label], [], FIELD, [everywhere])[0]))


def test_what_may_go_is_left_out_and_what_may_not_stands_below() -> None:
    full: list[Extent] = [FIELD]
    must, may = Label((("K1", "tag"),), 50, 50, 5), Label((("counter", "note"),), 60, 60, 5, may_go=True)
    marks, reached, _ = placed([must, may], full, FIELD)
    assert [each.text for each in letterings(marks)] == ["K1"]
    assert reached > FIELD[3]


@pytest.mark.parametrize("seed", range(25))
def test_a_row_is_spread_without_overlap_and_within_its_ends(seed: int) -> None:
    chance = random.Random(seed)
    wanted = sorted(chance.uniform(0, 300) for _ in range(chance.randint(1, 6)))
    widths = [chance.uniform(20, 50) for _ in wanted]
    at = spread(wanted, widths, 0, 300)
    edges = [(x - width / 2, x + width / 2) for x, width in zip(at, widths, strict=True)]
    assert edges[0][0] >= -1e-6
    assert edges[-1][1] <= 300 + 1e-6
    assert all(a[1] <= b[0] + 1e-6 for a, b in pairwise(edges))


def test_one_alone_stands_where_it_is_wanted() -> None:
    assert spread([120], [40], 0, 300) == [120]
