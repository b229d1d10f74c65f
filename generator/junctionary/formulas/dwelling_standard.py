"""A dwelling's load, or a feeder's in one, by the standard method; and its neutral's (220 part III)."""

from fractions import Fraction

from junctionary.formulas.cooking import cooking_steps
from junctionary.formulas.dwelling import (
    DemandLoad,
    Dwelling,
    Item,
    added,
    amount,
    amount_cite,
    charger_steps,
    closed,
    general_lighting,
    nameplates,
)
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, step
from junctionary.sources import cite_in
from junctionary.tables import table


def standard_load(dwelling: Dwelling, edition: str) -> DemandLoad:
    """The calculated load by the standard method, in VA and in A."""
    steps, lighting = _lighting_demand(dwelling, edition)
    cooking = cooking_steps(dwelling.cooking, edition)
    dryers = _dryers(dwelling, edition)
    fastened, counted = _fastened(dwelling.appliances, bool(dwelling.lacks), edition)
    others = nameplates(dwelling.others, edition, "220.40")
    climate, larger = _climate(dwelling, edition)
    chargers = charger_steps(dwelling.chargers, edition)
    motor = _largest_motor(dwelling, edition)
    steps += [*cooking, *dryers, *fastened, *others, *climate, *chargers, *motor]
    parts = [*lighting, *cooking, *dryers, *counted, *others, *larger, *chargers, *motor]
    return closed("standard method", "220.40", edition, dwelling, steps, parts)


def neutral_load(dwelling: Dwelling, edition: str) -> DemandLoad:
    """The load of the neutral: lighting, 120 V loads, and 70 % of ranges and dryers (220.61)."""
    steps, parts = _lighting_demand(dwelling, edition)
    percent = plain(amount("neutral of ranges and dryers", "percent"))
    clause = amount_cite("neutral of ranges and dryers", edition)
    for each in (*cooking_steps(dwelling.cooking, edition), *_dryers(dwelling, edition)):
        part = step(f"neutral of {each.what}", f"{percent} % × {plain(each.value)}", "VA", clause)
        steps.append(part)
        parts.append(part)
    heaters = tuple(each.item for each in dwelling.heating)
    rest = (*dwelling.others, *heaters, *dwelling.cooling, *dwelling.chargers)
    on_neutral = tuple(dict.fromkeys(each for each in rest if each.neutral))
    fastened, counted = _fastened(dwelling.appliances, False, edition, only_neutral=True)
    others = nameplates(on_neutral, edition, "220.61(B)")
    steps += [*fastened, *others]
    return closed("neutral", "220.61(B)", edition, dwelling, steps, [*parts, *counted, *others])


def _lighting_demand(dwelling: Dwelling, edition: str) -> tuple[list[Step], list[Step]]:
    """Every step of the general load, and of them those that count: one for each tier of demand."""
    shares = general_lighting(dwelling, edition)
    if not shares:
        return [], []
    total = step("together", added(shares), "VA")
    printed = table("lighting-demand")
    tiers, above = [], Fraction(0)
    for row in printed:
        if total.value <= above:
            break
        upper, percent = row.number("up to"), row.text("percent")
        to = plain(total.value if upper is None else min(total.value, upper))
        part = f"({to} − {plain(above)})" if above else to
        if upper is None or total.value <= upper:
            what = f"the rest at {percent} %" if above else f"all of it at {percent} %"
        else:
            what = f"what is above {plain(above)} VA, to {plain(upper)} VA, at {percent} %"
            what = what if above else f"the first {plain(upper)} VA at {percent} %"
        tiers.append(step(what, f"{percent} % × {part}", "VA", printed.cite_for(edition)))
        above = upper or above
    return [*shares, total, *tiers], tiers


def _dryers(dwelling: Dwelling, edition: str) -> list[Step]:
    least, clause = plain(amount("clothes dryer", "load")), amount_cite("clothes dryer", edition)
    return [
        step(
            f"{each.what}, no less than {least} VA",
            f"max({least}, {plain(each.va or Fraction(0))})",
            "VA",
            clause,
        )
        for each in dwelling.dryers
    ]


def _fastened(
    appliances: tuple[Item, ...], gaps: bool, edition: str, *, only_neutral: bool = False
) -> tuple[list[Step], list[Step]]:
    """Every step of the fastened appliances, and of them those that count: one where there are four or more.

    With a gap that may hide a fourth, three count at 75 % too: the sum is then a least value.
    """
    counted = tuple(each for each in appliances if each.neutral or not only_neutral)
    steps = nameplates(counted, edition, "220.53")
    many = amount("fastened appliances", "count")
    if not steps or (len(appliances) < many and not gaps):
        return steps, steps
    percent = plain(amount("fastened appliances", "percent"))
    why = "of four or more" if len(appliances) >= many else "as there may be four"
    what = f"fastened appliances at {percent} %, {why}"
    sum_ = f"{percent} % × ({added(steps)})"
    reduced = step(what, sum_, "VA", amount_cite("fastened appliances", edition))
    return [*steps, reduced], [reduced]


def _climate(dwelling: Dwelling, edition: str) -> tuple[list[Step], list[Step]]:
    """Heating and cooling, and the larger of them, which counts."""
    heating = nameplates((each.item for each in dwelling.heating), edition, "220.60")
    cooling = nameplates(dwelling.cooling, edition, "220.60")
    if not heating and not cooling:
        return [], []
    if not heating or not cooling:
        only = heating or cooling
        return only, only
    hot = step("heating together", added(heating), "VA")
    cold = step("cooling together", added(cooling), "VA")
    larger = step(
        "the larger of heating and cooling",
        f"max({plain(hot.value)}, {plain(cold.value)})",
        "VA",
        cite_in(edition, "220.60"),
    )
    # What turns the air, or pumps heat, is in both and is told once.
    told = {each.what for each in heating}
    return [*heating, hot, *(each for each in cooling if each.what not in told), cold, larger], [larger]


def _largest_motor(dwelling: Dwelling, edition: str) -> list[Step]:
    motors = [each for each in dwelling.items() if each.motor and each.va is not None]
    largest = max(motors, key=lambda each: each.va or 0, default=None)
    if largest is None or largest.va is None:
        return []
    percent = plain(amount("largest motor", "percent"))
    what = f"{percent} % of the largest motor, {largest.what}"
    return [step(what, f"{percent} % × {plain(largest.va)}", "VA", amount_cite("largest motor", edition))]
