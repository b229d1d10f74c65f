"""The demand of household cooking appliances (Table 220.55)."""

from fractions import Fraction

from junctionary.formulas.dwelling import Item
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, step
from junctionary.sources import cite_in
from junctionary.tables import table

LEAST_VA = 1750
"""From above this a cooking appliance may count by the table."""

A_BELOW_VA, B_TO_VA, C_TO_VA, NOTE_1_TO_VA = 3500, 8750, 12000, 27000


def cooking_steps(cooking: tuple[Item, ...], edition: str) -> list[Step]:
    """The demand of each group, in VA, by the table's columns; in full where the table held here has no row.

    Above 12 kW column C grows 5 % for each kW, or the larger part of one (note 1; of unequal
    ones by their mean, note 2).
    """
    known = [each for each in cooking if each.va is not None]
    small = [each for each in known if (each.va or 0) < A_BELOW_VA]
    middle = [each for each in known if A_BELOW_VA <= (each.va or 0) <= B_TO_VA]
    large = [each for each in known if (each.va or 0) > B_TO_VA]
    steps = [_by_percent(group, column, edition) for group, column in ((small, "A"), (middle, "B")) if group]
    return [*steps, *(_by_column_c(large, edition) if large else ())]


def _by_percent(group: list[Item], column: str, edition: str) -> Step:
    printed = table("cooking-demand")
    key = str(len(group))
    percent = printed.number(key, column) if key in printed else None
    if percent is None:
        return _in_full(group, edition)
    what = f"{_named(group)}, column {column}"
    return step(what, f"{plain(percent)} % × {_sum(group)}", "VA", printed.cite_for(edition))


def _by_column_c(group: list[Item], edition: str) -> list[Step]:
    printed = table("cooking-demand")
    key = str(len(group))
    kilowatts = printed.number(key, "C") if key in printed else None
    ratings = [max(each.va or Fraction(0), Fraction(C_TO_VA)) for each in group]
    mean = sum(ratings, Fraction(0)) / len(ratings)
    if kilowatts is None or max(ratings) > NOTE_1_TO_VA:
        return [_in_full(group, edition)]
    # A row recalled and not seen says so.
    recalled = " (from memory)" if printed.row(key).text("confirmed") == "memory" else ""
    column = f"{_named(group)}, column C{recalled}"
    base = step(column, f"{plain(kilowatts)} × 1000", "VA", printed.cite_for(edition))
    if mean == C_TO_VA:
        return [base]
    grown = f"{plain(base.value)} × (1 + 5 % × floor(({plain(mean)} − {C_TO_VA}) / 1000 + 0.5))"
    return [step(f"{column}, and 5 % for each kW above 12", grown, "VA", base.cite)]


def _in_full(group: list[Item], edition: str) -> Step:
    return step(f"{_named(group)}, in full", _sum(group), "VA", cite_in(edition, "220.55"))


def _sum(group: list[Item]) -> str:
    sum_ = " + ".join(plain(each.va or Fraction(0)) for each in group)
    return f"({sum_})" if len(group) > 1 else sum_


def _named(group: list[Item]) -> str:
    return " and ".join(each.what for each in group)
