"""What a dwelling's calculated load asks of it: lighting circuits, service, its conductors, its two legs."""

from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Literal

from junctionary.formulas.dwelling import (
    TO_NEUTRAL,
    DemandLoad,
    Dwelling,
    added,
    amount,
    amount_cite,
    charger_steps,
    general_lighting,
)
from junctionary.formulas.standard_rating import rating_at_or_above
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Worked, finished, lacking, step
from junctionary.sources import cite_in
from junctionary.tables import table
from junctionary.units import WireSize

WHOLE_LOAD_A = (Fraction(100), Fraction(400))
"""The ratings between which 310.12 holds, for conductors that carry a dwelling's whole load."""

TERMINALS_C = 75


def lighting_current(
    area_ft2: Fraction | None, edition: str, volts: Fraction = Fraction(TO_NEUTRAL)
) -> Worked:
    """What the general-lighting circuits of a floor area carry together at the least, in A (210.11(A))."""
    if area_ft2 is None:
        return lacking(["the floor area, by outside dimensions"], "A")
    steps = general_lighting(Dwelling(area_ft2), edition)
    va = steps[0].value if steps else Fraction(0)
    current = step(f"at {plain(volts)} V", f"{plain(va)} / {plain(volts)}", "A")
    return finished(current.value, "A", [*steps, current])


def lighting_circuits(
    area_ft2: Fraction | None, circuit_a: Fraction, edition: str, volts: Fraction = Fraction(TO_NEUTRAL)
) -> Worked:
    """The least number of general-lighting circuits of one rating, for a floor area (210.11(A))."""
    current = lighting_current(area_ft2, edition, volts)
    if current.value is None:
        return lacking(current.lacks, "circuits")
    count = step(
        f"circuits of {plain(circuit_a)} A",
        f"ceil({plain(current.value)} / {plain(circuit_a)})",
        "circuits",
        cite_in(edition, "210.11(A)"),
    )
    return finished(count.value, "circuits", [*current.steps, count])


def whole_amps(amps: Fraction) -> Fraction:
    """A load in whole amperes, a fraction below a half dropped (220.5(B))."""
    return Fraction(floor(amps + Fraction(1, 2)))


def feeder_size(dwelling: Dwelling, load: DemandLoad) -> tuple[Worked, Fraction]:
    """What a feeder must be sized for, in A, and what is certain of it: its load, and a quarter more of
    each car charger, which counts as running for hours (215.2(A), 215.3, 625.42)."""
    chargers = charger_steps(dwelling.chargers, load.edition)
    if not chargers:
        return load.amps, load.least_a
    percent = plain(amount("continuous load of a feeder", "percent"))
    clause = amount_cite("continuous load of a feeder", load.edition)
    what = f"{percent} % of {' and '.join(each.what for each in dwelling.chargers)}, which may run for hours"
    more = step(what, f"{percent} % × ({added(chargers)})", "VA", clause)
    total = step("the feeder is sized for", f"{plain(load.least_va)} + {plain(more.value)}", "VA", clause)
    draws = step(f"at {dwelling.volts} V", f"{plain(total.value)} / {dwelling.volts}", "A")
    steps = [*chargers, more, total, draws]
    lacks = load.amps.lacks
    return (lacking(lacks, "A", steps) if lacks else finished(draws.value, "A", steps)), draws.value


def least_service(amps: Fraction, edition: str) -> Worked:
    """The smallest standard service rating, in A, for a one-family dwelling's calculated load."""
    whole = step("whole amperes", f"floor({plain(amps)} + 0.5)", "A", cite_in(edition, "220.5(B)"))
    standard = rating_at_or_above(whole.value, edition)
    if standard is None:
        return lacking([f"a standard rating for {plain(whole.value)} A: the table has none"], "A", [whole])
    rated = step("standard rating", plain(standard), "A", cite_in(edition, "240.6(A)"))
    floor_a = plain(amount("smallest dwelling service", "current"))
    least = step(
        f"no less than {floor_a} A",
        f"max({floor_a}, {plain(standard)})",
        "A",
        amount_cite("smallest dwelling service", edition),
    )
    return finished(least.value, "A", [whole, rated, least])


def whole_load_ampacity(rating_a: Fraction, edition: str) -> Worked:
    """The least ampacity, in A, of conductors that carry a dwelling's whole load at a rating (310.12)."""
    lowest, highest = WHOLE_LOAD_A
    if not lowest <= rating_a <= highest:
        why = f"a rule for a dwelling's service of {plain(rating_a)} A: it holds from 100 to 400 A"
        return lacking([why], "A")
    percent = plain(amount("dwelling service conductors", "percent"))
    clause = amount_cite("dwelling service conductors", edition)
    part = step(f"{percent} % of the rating", f"{percent} % × {plain(rating_a)}", "A", clause)
    return finished(part.value, "A", [part])


def least_conductor(rating_a: Fraction, metal: str, edition: str) -> WireSize | None:
    """The smallest conductor for a dwelling's service, by the 75 °C column; None where none is printed."""
    needed = whole_load_ampacity(rating_a, edition).value
    column = f"{'copper' if metal == 'copper' else 'aluminium'} {TERMINALS_C} C"
    for row in table("ampacity", edition):
        carries = row.number(column)
        if needed is not None and carries is not None and carries >= needed:
            return WireSize(row.text("size"))
    return None


@dataclass(frozen=True, slots=True)
class LegPart:
    """One load on one leg, in A or in VA at 120 V; a load across both legs is a part of each."""

    what: str
    load: Fraction
    motor: bool = False


def leg_load(parts: tuple[LegPart, ...], unit: Literal["A", "VA"], edition: str) -> Worked:
    """What one leg carries, in its parts' unit: its loads and a quarter of its largest motor (430.24)."""
    steps = [step(each.what, plain(each.load), unit) for each in parts]
    motors = [each for each in parts if each.motor]
    if motors:
        largest = max(motors, key=lambda each: each.load)
        percent = plain(amount("largest motor", "percent"))
        what = f"{percent} % of the largest motor, {largest.what}"
        sum_ = f"{percent} % × {plain(largest.load)}"
        steps.append(step(what, sum_, unit, amount_cite("largest motor", edition)))
    total = step("together", " + ".join(plain(each.value) for each in steps) or "0", unit)
    return finished(total.value, unit, [*steps, total])
