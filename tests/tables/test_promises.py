"""Holds every promise that every table makes; a promise nobody can hold fails.

To give promises a new sentence, add a function below whose pattern reads it.
"""

import re
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise
from math import floor

import pytest

from junctionary.formulas.sums import evaluate, square_root
from junctionary.records.words import EDITIONS, LOADS, ROOM_KINDS
from junctionary.sources import cite
from junctionary.tables import Table, table, tables
from junctionary.units import WireSize

PROMISES: list[tuple[re.Pattern[str], Callable[..., None]]] = []


def promise(pattern: str):
    def kept(function):
        PROMISES.append((re.compile(pattern), function))
        return function

    return kept


@pytest.mark.parametrize(("name", "sentence"), [(n, s) for n in tables() for s in table(n).promises])
def test_a_table_keeps_its_promise(name: str, sentence: str) -> None:
    keepers = [(m, function) for pattern, function in PROMISES if (m := pattern.fullmatch(sentence))]
    assert len(keepers) == 1, f"{len(keepers)} readings of the promise {sentence!r}"
    match, function = keepers[0]
    function(table(name), *match.groups())


@pytest.mark.parametrize("name", tables())
def test_a_table_promises_something_and_names_its_source(name: str) -> None:
    assert table(name).promises
    assert table(name).cite.summary
    for second in table(name).second_sources:
        assert "second sources agree" in table(name).promises
        assert cite(second["publication"], second["clause"])


def test_a_promise_nobody_can_hold_is_seen() -> None:
    assert not any(pattern.fullmatch("values are splendid") for pattern, _ in PROMISES)


def column(printed: Table, name: str) -> list[Fraction]:
    assert name in printed.columns, f"no column {name!r}"
    found = [each.number(name) for each in printed]
    return [each for each in found if each is not None]


def pairs(values: list) -> list[tuple]:
    assert len(values) > 1
    return list(pairwise(values))


@promise(r"size (grows) down the rows( of one metal)?")
def sizes_grow(printed: Table, _, by_metal: str | None) -> None:
    metals = {each.text("metal") if by_metal else "" for each in printed}
    for metal in metals:
        rows = [each for each in printed if not by_metal or each.text("metal") == metal]
        assert all(a < b for a, b in pairs([WireSize(each.text("size")) for each in rows]))


@promise(r"sizes in (.+) grow down the rows")
def sizes_of_a_column_grow(printed: Table, name: str) -> None:
    assert all(a < b for a, b in pairs([size_in(printed, row.text(name), name) for row in printed]))


@promise(r"(.+) is two gauge numbers above (.+)")
def two_numbers_above(printed: Table, larger: str, smaller: str) -> None:
    def gauge(text: str) -> int:
        return 1 - int(text[0]) if text.endswith("/0") else int(text)

    compared = [(row.text(larger), row.text(smaller)) for row in printed if row.text(larger) != "-"]
    assert compared
    assert all(gauge(a) == gauge(b) - 2 for a, b in compared)


@promise(r"(.+) has ([\d.]+) to ([\d.]+) times the area of (.+)")
def areas_beside(printed: Table, larger: str, low: str, high: str, smaller: str) -> None:
    for row in printed:
        one, other = (size_in(printed, row.text(name), name) for name in (larger, smaller))
        assert float(low) <= one.circular_mils / other.circular_mils <= float(high), row.printed


def size_in(printed: Table, text: str, name: str) -> WireSize:
    return WireSize(f"{text} AWG" if printed.columns[name].unit == "AWG" else text)


@promise(r"(?!size)(.+) (rises|falls) down the rows")
def steady(printed: Table, name: str, way: str) -> None:
    assert all(a < b if way == "rises" else a > b for a, b in pairs(column(printed, name)))


@promise(r"limit rises down the rows of one metal")
def limits_rise(printed: Table) -> None:
    for metal in {each.text("metal") for each in printed}:
        limits = [each.number("limit") for each in printed if each.text("metal") == metal]
        assert all(a < b for a, b in pairs(limits))


@promise(r"(?!volume|percent|aluminium is below copper in)(.+) is (below|at most|at least) (.+)")
def beside(printed: Table, left: str, how: str, right: str) -> None:
    compared = [
        (a, b)
        for each in printed
        if (a := each.number(left)) is not None and (b := each.number(right)) is not None
    ]
    assert compared
    for a, b in compared:
        assert {"below": a < b, "at most": a <= b, "at least": a >= b}[how]


@promise(r"no step of (.+?)(?: from (\d+) up)? is above ([\d.]+) times")
def no_leap(printed: Table, name: str, start: str | None, times: str) -> None:
    values = [each for each in column(printed, name) if each >= int(start or 0)]
    assert all(b / a <= Fraction(times) for a, b in pairs(values))


@promise(r"each value is a whole number of (\d+) A")
def whole(printed: Table, step: str) -> None:
    numbers = [
        each for name, it in printed.columns.items() if it.unit == "A" for each in column(printed, name)
    ]
    assert numbers
    assert all(each % int(step) == 0 for each in numbers)


@promise(r"second sources agree")
def second_sources_agree(printed: Table) -> None:
    assert printed.second_sources
    for second in printed.second_sources:
        for key, told in second["rows"].items():
            row = printed.row(tuple(key.split(" / ")))
            ours, theirs = row.text(second["column"]), str(told)
            if printed.columns[second["column"]].unit == "AWG":
                assert ours == theirs, key
                continue
            assert [Fraction(each) for each in ours.split()] == [Fraction(each) for each in theirs.split()], (
                key
            )


@promise(r"differs from (.+) at these alone: (.+)")
def differs_only(printed: Table, other: str, cells: str) -> None:
    theirs = table(other)
    differing = {
        f"{row.text('size')} {name}"
        for row in printed
        for name in printed.columns
        if row.text(name) != theirs.row(row.text("size")).text(name)
    }
    assert differing == set(cells.split(", "))


@promise(r"each limit is the 60 C ampacity of its size, where the table prints one")
def limits_are_ampacities(printed: Table) -> None:
    for row in printed:
        column = "copper 60 C" if row.text("metal") == "copper" else "aluminium 60 C"
        if row.text("size") in table("ampacity"):
            carried = table("ampacity").number(row.text("size"), column)
            assert carried in (None, row.number("limit")), row.printed


@promise(r"rating goes by (\d+) from (\d+) to (\d+)")
def goes_by(printed: Table, step: str, first: str, last: str) -> None:
    due = [Fraction(each) for each in range(int(first), int(last) + 1, int(step))]
    assert [each for each in column(printed, "rating") if int(first) <= each <= int(last)] == due


@promise(r"each factor is sqrt\(\(Tc - Ta\) / \(Tc - 30\)\) to the digits printed")
def factors(printed: Table) -> None:
    for name, it in printed.columns.items():
        if it.at is None:
            continue
        rated = Fraction(it.at.removesuffix(" C"))
        for row in printed:
            ambient = row.number("up to")
            if row.number(name) is None:
                assert ambient >= rated
                continue
            digits = len(row.text(name).split(".")[1])
            exact = square_root((rated - ambient) / (rated - 30))
            assert floor(exact * 10**digits + Fraction(1, 2)) == row.number(name) * 10**digits, (
                name,
                ambient,
            )


@promise(r"what may be buried may be wet, and what may be wet may be damp")
def a_drier_place_is_easier(printed: Table) -> None:
    for row in printed:
        for harder, easier in (("buried", "wet"), ("wet", "damp")):
            assert row.text(harder) != "yes" or row.text(easier) == "yes"


@promise(r"each row begins where the last ended")
def no_gap(printed: Table) -> None:
    for upper, lower in pairs(list(printed)):
        assert lower.number("from") == upper.number("up to") + 1


@promise(r"each copper limit but (\d+) is a standard rating")
def limits_standard(printed: Table, spared: str) -> None:
    for row in printed:
        if row.text("metal") == "copper" and row.text("limit") != spared:
            assert row.text("limit") in table("standard-ratings")


@promise(r"breakers is one of always, never, or a year")
def breakers_in_words(printed: Table) -> None:
    assert all(re.fullmatch(r"always|never|20\d\d", each.text("breakers")) for each in printed)


@promise(r"(\w+) = (.+)")
def equation(printed: Table, left: str, right: str) -> None:
    for row in printed:
        # A word of the promise is a column; its value takes its place in the sum.
        sum_ = " ".join(row.text(each) if each.isalpha() else each for each in right.split())
        assert evaluate(sum_) == row.number(left), row.printed


@promise(r"each count is floor\(volume / allowance\) of its size")
def counts(printed: Table) -> None:
    sizes = [name for name, it in printed.columns.items() if it.unit == "count"]
    for row in printed:
        for size in sizes:
            allowance = table("volume-allowance").number(size, "volume")
            assert floor(row.number("volume") / allowance) == row.number(size), (row.text("box"), size)


@promise(r"volume is below the product of the trade size")
def inside_is_smaller(printed: Table) -> None:
    for row in printed:
        text = re.sub(r"(\d+)-(\d+/\d+)", r"\1+\2", row.text("box"))
        sides = [sum(map(Fraction, each.split("+"))) for each in re.findall(r"[\d/+]+", text)]
        if " x " in text:
            square = [sides[0], *sides] if len(sides) == 2 else sides
            assert row.number("volume") < square[0] * square[1] * square[2], row.text("box")


@promise(r"the face's name ends in its amperes")
def named_by_amperes(printed: Table) -> None:
    assert all(each.text("face").endswith(f"-{each.text('amps')}R") for each in printed)


@promise(r"125/250 V has two hots and a neutral, 250 V two hots and none, 125 V one and one")
def conductors_by_voltage(printed: Table) -> None:
    due = {"125/250": ("2", "1"), "250": ("2", "0"), "125": ("1", "1")}
    assert all((each.text("hots"), each.text("neutrals")) == due[each.text("volts")] for each in printed)


@promise(r"area is the ASTM B258 diameter squared within ([\d.]+) %")
def by_formula(printed: Table, percent: str) -> None:
    for row in printed:
        formula = Fraction(WireSize(row.text("size")).circular_mils)
        assert abs(row.number("area") / formula - 1) <= Fraction(percent) / 100, row.text("size")


METALS = {
    # Ohm circular mil per foot at 20 °C, and what each degree adds (NBS Handbook 100; aluminium at 61 % IACS).
    "copper": (Fraction("10.371"), Fraction("0.00393")),
    "aluminium": (Fraction("10.371") / Fraction("0.61"), Fraction("0.00403")),
}


@promise(
    r"(copper|aluminium) (solid|stranded) is (?:([\d.]+) times )?its resistivity at 75 °C over its area within ([\d.]+) %"
)
def by_resistivity(printed: Table, metal: str, made: str, times: str | None, percent: str) -> None:
    at_20, each_degree = METALS[metal]
    values = [(each.text("size"), each.number(f"{metal} {made}")) for each in printed]
    assert sum(value is not None for _, value in values) > 3
    for size, value in values:
        if value is not None:
            due = at_20 * (1 + each_degree * 55) * 1000 / Fraction(WireSize(size).circular_mils)
            assert abs(value / due / Fraction(times or 1) - 1) <= Fraction(percent) / 100, size


@promise(r"each value is within (\d+) % of the stranded one of conductor-resistance")
def near_direct(printed: Table, percent: str) -> None:
    direct = table("conductor-resistance")
    for row in printed:
        for metal in ("copper", "aluminium"):
            if (value := row.number(metal)) is not None:
                due = direct.number(row.text("size"), f"{metal} stranded")
                assert abs(value / due - 1) <= Fraction(percent) / 100, row.printed


@promise(r"k is resistance times area of 12 AWG within ([\d.]+) %")
def constant_by_resistance(printed: Table, percent: str) -> None:
    area = table("conductor-area").number("12 AWG", "area")
    for row in printed:
        ohm = table("conductor-resistance").number("12 AWG", f"{row.text('metal')} {row.text('made')}")
        assert abs(row.number("k") / (ohm * area / 1000) - 1) <= Fraction(percent) / 100, row.printed


@promise(r"aluminium is below copper in the same insulation")
def aluminium_below(printed: Table) -> None:
    ours = {key: row.number("k") for key in printed.keys if (row := printed.row(key))}
    metals = [key for key in ours if key[0] == "aluminium"]
    assert metals
    assert all(ours[key] < ours[("copper", *key[1:])] for key in metals)


@promise(r"percent is at most 5")
def percents(printed: Table) -> None:
    assert max(column(printed, "percent")) == 5


@promise(r"no value of (.+) has more than four figures that count")
def four_figures(printed: Table, name: str) -> None:
    assert all(len(Decimal(each.text(name)).normalize().as_tuple().digits) <= 4 for each in printed)


@promise(r"([\w ]+) is the year of an edition")
def is_year_of_an_edition(printed: Table, name: str) -> None:
    years = {int(each.removeprefix("nec-")) for each in EDITIONS}
    assert set(column(printed, name)) <= years


@promise(r"(\w+) is a kind of load")
def is_a_kind_of_load(printed: Table, name: str) -> None:
    assert {each.text(name) for each in printed} <= set(LOADS)


@promise(r"(\w+) is a kind of room")
def is_a_kind_of_room(printed: Table, name: str) -> None:
    assert {each.text(name) for each in printed} <= set(ROOM_KINDS)


@promise(r"each clause is one the edition of (\d+) has")
def clauses_known(printed: Table, year: str) -> None:
    for row in printed:
        assert cite(f"nec-{year}", row.text("clause")).summary


@promise(r"(.+) is between (\d+) and (\d+)")
def bounded(printed: Table, name: str, least: str, most: str) -> None:
    assert all(int(least) <= each <= int(most) for each in column(printed, name))


@promise(r"each row holds an amount")
def holds_an_amount(printed: Table) -> None:
    amounts = [name for name, it in printed.columns.items() if it.unit in ("VA", "%", "A")]
    assert all(any(row.number(name) is not None for name in amounts) for row in printed)
