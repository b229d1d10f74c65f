"""A dwelling's load, or a feeder's in one, by the standard method; and its neutral's (220 part III)."""

from fractions import Fraction

from junctionary.formulas.cooking import cooking_steps
from junctionary.formulas.dwelling import (
    TO_NEUTRAL,
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
    percent = _percent_of_fastened(dwelling.appliances, bool(dwelling.lacks))
    many = _percent_of_fastened(dwelling.appliances, False) is not None
    fastened, counted = _fastened(dwelling.appliances, percent, edition, many)
    others = nameplates(dwelling.others, edition, "220.40")
    climate, larger = _climate(dwelling, edition)
    chargers = charger_steps(dwelling.chargers, edition)
    motor = _largest_motor(dwelling, edition)
    steps += [*cooking, *dryers, *fastened, *others, *climate, *chargers, *motor]
    parts = [*lighting, *cooking, *dryers, *counted, *others, *larger, *chargers, *motor]
    return closed("standard method", "220.40", edition, dwelling, steps, parts)


def neutral_load(dwelling: Dwelling, edition: str) -> DemandLoad:
    """The load of the neutral, in VA and A between the legs: the largest between it and one leg (220.61(A)).

    General lighting and 70 % of ranges and dryers stand half on each leg. What runs at 120 V on one leg
    is on that one whole, and so is twice what it would be if it were spread over both.
    """
    steps, parts = _lighting_demand(dwelling, edition)
    percent = plain(amount("neutral of ranges and dryers", "percent"))
    clause = amount_cite("neutral of ranges and dryers", edition)
    for each in (*cooking_steps(dwelling.cooking, edition), *_dryers(dwelling, edition)):
        part = step(f"neutral of {each.what}", f"{percent} % × {plain(each.value)}", "VA", clause)
        steps.append(part)
        parts.append(part)
    heaters = tuple(each.item for each in dwelling.heating)
    rest = (*dwelling.others, *heaters, *dwelling.cooling, *dwelling.chargers)
    # What turns the air is among heating and cooling both, and counts once; two loads alike count twice.
    others = tuple({id(each): each for each in rest if each.neutral}.values())
    two_legs = dwelling.volts > TO_NEUTRAL
    even = tuple(each for each in others if each.leg is None or not two_legs)
    appliances = tuple(each for each in dwelling.appliances if each.neutral)
    even_appliances = tuple(each for each in appliances if each.leg is None or not two_legs)
    percent_of = _percent_of_fastened(dwelling.appliances, False)
    fastened, counted = _fastened(even_appliances, percent_of, edition)
    beside = nameplates(even, edition, "220.61(A)")
    on_legs = _on_one_leg(appliances, others, percent_of, edition) if two_legs else []
    steps += [*fastened, *beside, *on_legs]
    parts += [*counted, *beside, *on_legs[-1:]]
    return closed("neutral", "220.61(A)", edition, dwelling, steps, parts)


def _on_one_leg(
    appliances: tuple[Item, ...], others: tuple[Item, ...], percent: Fraction | None, edition: str
) -> list[Step]:
    """What stands on one leg alone, leg by leg, and last the heavier leg's twice; or nothing."""
    counted = [*((each, percent) for each in appliances), *((each, None) for each in others)]
    told = [(each, part) for each, part in counted if each.leg is not None and each.va is not None]
    if not told:
        return []
    steps, on_leg = nameplates((each for each, _ in told), edition, "220.61(A)"), []
    for leg in ("A", "B"):
        sums = [
            f"{plain(part)} % × {plain(each.va)}" if part else plain(each.va)
            for each, part in told
            if each.leg in (leg, "either") and each.va is not None
        ]
        on_leg.append(step(f"of these on leg {leg}", " + ".join(sums) or "0", "VA"))
    heavier = "max(" + ", ".join(plain(each.value) for each in on_leg) + ")"
    what = "those on the heavier leg, twice, as the other leg returns none of it"
    return [*steps, *on_leg, step(what, f"2 × {heavier}", "VA", cite_in(edition, "220.61(A)"))]


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


def _percent_of_fastened(appliances: tuple[Item, ...], gaps: bool) -> Fraction | None:
    """At how many % fastened appliances count: 75 where there are four or more, None where all of it does.

    With a gap that may hide a fourth, three count at 75 % too: the sum is then a least value.
    """
    if len(appliances) < amount("fastened appliances", "count") and not gaps:
        return None
    return amount("fastened appliances", "percent")


def _fastened(
    counted: tuple[Item, ...], percent: Fraction | None, edition: str, many: bool = True
) -> tuple[list[Step], list[Step]]:
    """Every step of the fastened appliances, and of them those that count: one where a percentage does."""
    steps = nameplates(counted, edition, "220.53")
    if not steps or percent is None:
        return steps, steps
    why = "of four or more" if many else "as there may be four"
    what = f"fastened appliances at {plain(percent)} %, {why}"
    sum_ = f"{plain(percent)} % × ({added(steps)})"
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
