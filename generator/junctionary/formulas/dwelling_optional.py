"""A dwelling's load by the optional method (220.82), and an existing dwelling's (220.83).

The code takes the largest of its heating and cooling selections. Here heating that may run
together is added, and a car charger counts in full beside the general load: the load comes out
no smaller than the code's.
"""

from fractions import Fraction
from typing import Literal

from junctionary.formulas.dwelling import (
    DemandLoad,
    Dwelling,
    Heater,
    added,
    charger_steps,
    closed,
    general_lighting,
    nameplates,
)
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, step
from junctionary.sources import cite_in, edition_year
from junctionary.tables import Row, table

FOUR = 4


def optional_load(dwelling: Dwelling, edition: str) -> DemandLoad:
    """The calculated load by the optional method, in VA and in A."""
    steps, parts = _general(dwelling, "optional", edition)
    climate, larger = _climate(dwelling, edition, existing=False)
    chargers = charger_steps(dwelling.chargers, edition)
    return closed(
        "optional method",
        "220.82(B)",
        edition,
        dwelling,
        [*steps, *climate, *chargers],
        [*parts, *larger, *chargers],
    )


def existing_load(dwelling: Dwelling, edition: str) -> DemandLoad:
    """The load of a dwelling that stood before, in VA and in A: heating or cooling in full."""
    steps, parts = _general(dwelling, "existing", edition)
    climate, larger = _climate(dwelling, edition, existing=True)
    chargers = charger_steps(dwelling.chargers, edition)
    return closed(
        "method for an existing dwelling",
        "220.83",
        edition,
        dwelling,
        [*steps, *climate, *chargers],
        [*parts, *larger, *chargers],
    )


def _general(
    dwelling: Dwelling, method: Literal["optional", "existing"], edition: str
) -> tuple[list[Step], list[Step]]:
    tier = _tier(method, edition)
    clause = tier.text("clause")
    plates = (*dwelling.cooking, *dwelling.dryers, *dwelling.appliances, *dwelling.others)
    shares = [*general_lighting(dwelling, edition), *nameplates(plates, edition, clause)]
    total = step("general load", added(shares), "VA", cite_in(edition, clause))
    full, percent = tier.text("in full"), tier.text("rest")
    first = min(total.value, Fraction(full))
    rest = f"{percent} % × ({plain(total.value)} − {plain(first)})"
    parts = [
        step(f"the first {full} VA in full", plain(first), "VA", cite_in(edition, clause)),
        step(f"the rest at {percent} %", rest, "VA", cite_in(edition, clause)),
    ]
    return [*shares, total, *parts], parts


def _tier(method: str, edition: str) -> Row:
    """The newest row of a method that the edition has; the first for editions older than all."""
    rows = [each for each in table("optional-demand") if each.text("method") == method]
    held = [each for each in rows if (each.number("since") or 0) <= edition_year(edition)]
    return held[-1] if held else rows[0]


def _climate(dwelling: Dwelling, edition: str, *, existing: bool) -> tuple[list[Step], list[Step]]:
    heating = [
        each
        for heater in dwelling.heating
        if (each := _heater(heater, dwelling, edition, existing)) is not None
    ]
    clause = "220.83" if existing else "220.82(C)"
    cooling = nameplates(dwelling.cooling, edition, clause)
    if not heating and not cooling:
        return [], []
    hot = step("heating together", added(heating), "VA")
    cold = step("cooling together", added(cooling), "VA")
    sum_ = f"max({plain(hot.value)}, {plain(cold.value)})"
    larger = step("the larger of heating and cooling", sum_, "VA", cite_in(edition, clause))
    told = {each.what for each in heating}
    return [*heating, hot, *(each for each in cooling if each.what not in told), cold, larger], [larger]


def _heater(heater: Heater, dwelling: Dwelling, edition: str, existing: bool) -> Step | None:
    va = heater.item.va
    if va is None:
        return None
    if existing:
        return step(heater.item.what, plain(va), "VA", cite_in(edition, "220.83"))
    printed = table("optional-heating")
    percent = printed.row(_row(heater, dwelling)).text("percent")
    clause = printed.cite_for(edition)
    if Fraction(percent) == Fraction(100):
        return step(heater.item.what, plain(va), "VA", clause)
    return step(f"{heater.item.what} at {percent} %", f"{percent} % × {plain(va)}", "VA", clause)


def _row(heater: Heater, dwelling: Dwelling) -> str:
    if heater.how == "separate":
        pieces = sum(each.pieces for each in dwelling.heating if each.how == "separate")
        # With a gap that may hide another heater the sum is a least value, and takes the least.
        return "four or more heaters" if pieces >= FOUR or dwelling.lacks else "fewer than four heaters"
    return {"compressor": "heat pump", "supplement": "supplementary heat", "central": "central heat"}[
        heater.how
    ]
