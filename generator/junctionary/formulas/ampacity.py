"""What a conductor may carry, and the largest breaker that may guard it."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from junctionary.formulas.standard_rating import rating_at_or_above, rating_at_or_below
from junctionary.formulas.sums import exact, plain
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import cite_in, edition_year
from junctionary.tables import table
from junctionary.units import WireSize

UNBUNDLED = 3
"""The tables hold for this many current-carrying conductors together."""

NEXT_SIZE_UP_TO_A = 800


@dataclass(frozen=True, slots=True)
class Conductor:
    """One conductor and where it lies; None is a fact not recorded, and never taken for good.

    ``insulation_c`` is 60, 75 or 90. ``held_to_c`` is the column the result may not
    pass whatever the insulation (60 for NM-B, None for cables with no such limit).
    ``ambient_c`` is the warmest along the run; ``together`` counts the
    current-carrying conductors that lie together, its own among them.
    ``terminals_c`` is what both ends are listed for; None leaves it to 110.14(C)(1).
    """

    size: WireSize | None
    metal: str | None
    insulation_c: int | None
    ambient_c: Fraction | None
    together: int | None
    held_to_c: int | None = None
    terminals_c: int | None = None


@cache
def ampacity(conductor: Conductor, edition: str) -> Worked:
    """What the conductor may carry, in A: corrected, adjusted, then held to its cable and terminals."""
    size, metal = conductor.size, conductor.metal
    insulation, ambient, together = conductor.insulation_c, conductor.ambient_c, conductor.together
    lacks = [
        phrase
        for fact, phrase in (
            (size, "the wire size"),
            (metal, "the conductor's metal"),
            (insulation, "the temperature rating of the insulation"),
            (ambient, "the ambient temperature along the run"),
            (together, "how many current-carrying conductors lie together"),
        )
        if fact is None
    ]
    # The five are named again for the type checker; `lacks` holds a phrase for each that is None.
    if size is None or metal is None or insulation is None or ambient is None or together is None:
        return lacking(lacks, "A")

    start = _column(size, metal, insulation, edition)
    if start is None:
        return lacking([_none_printed(size, metal, insulation)], "A")
    steps = [start]
    corrected = _for_ambient(start.value, ambient, insulation, edition)
    if corrected is None:
        return lacking([f"an insulation for {plain(ambient)} °C: {insulation} °C is too low"], "A", steps)
    steps.append(corrected)
    if together > UNBUNDLED:
        steps.append(_for_bundling(corrected.value, together, edition))
    for column_c, why, clause in _limits(conductor, size):
        limit = _column(size, metal, column_c, edition)
        if limit is None:
            return lacking([_none_printed(size, metal, column_c)], "A", steps)
        sum_ = f"min({exact(steps[-1].value)}, {plain(limit.value)})"
        steps.append(step(why, sum_, "A", cite_in(edition, clause)))
    return finished(steps[-1].value, "A", steps)


@cache
def largest_breaker(conductor: Conductor, several_receptacles: bool | None, edition: str) -> Worked:
    """The largest standard breaker that may guard the conductor, in A; 0 where none is small enough.

    ``several_receptacles``: the circuit feeds more than one receptacle for plugged
    loads, where 240.4(B) gives no next size up. None is only a gap if it matters.
    Taps, motors and cooling equipment have rules of their own, not taken here.
    """
    carried = ampacity(conductor, edition)
    if carried.value is None or conductor.size is None or conductor.metal is None:
        return carried
    limit = _small_conductor_limit(conductor.size, conductor.metal, edition)
    rounded_down = _with_limit(_standard(carried.value, False, edition), limit)
    rounded_up = _with_limit(_standard(carried.value, True, edition), limit)
    if several_receptacles is None and rounded_down[-1].value != rounded_up[-1].value:
        return lacking(
            ["whether the circuit feeds more than one receptacle for plugged loads"], "A", carried.steps
        )
    chosen = rounded_up if several_receptacles is False else rounded_down
    return finished(chosen[-1].value, "A", (*carried.steps, *chosen))


def _none_printed(size: WireSize, metal: str, celsius: int) -> str:
    return f"an ampacity for {size} {metal} at {celsius} °C: the table prints none"


def _column(size: WireSize, metal: str, celsius: int, edition: str) -> Step | None:
    printed = table("ampacity", edition)
    # Copper-clad aluminium shares the aluminium columns.
    column = f"{'copper' if metal == 'copper' else 'aluminium'} {celsius} C"
    if size.name not in printed or column not in printed.columns:
        return None
    amps = printed.number(size.name, column)
    if amps is None:
        return None
    return step(f"{size} {metal}, {celsius} °C column", plain(amps), "A", printed.cite_for(edition))


def _for_ambient(amps: Fraction, ambient: Fraction, insulation: int, edition: str) -> Step | None:
    printed = table("ambient-correction")
    row = printed.first_at_or_above("up to", ambient)
    factor = row.number(str(insulation)) if row else None
    if factor is None:
        return None
    # To a tenth of a degree: what a page shows, not what a Fahrenheit reading divides into.
    shown = plain(Fraction(round(ambient * 10), 10))
    return step(f"ambient {shown} °C", f"{plain(amps)} × {exact(factor)}", "A", printed.cite_for(edition))


def _for_bundling(amps: Fraction, together: int, edition: str) -> Step:
    printed = table("bundling-adjustment")
    row = next(each for each in printed if together <= (each.number("up to") or together))
    what = f"{together} current-carrying conductors together"
    return step(what, f"{exact(amps)} × {row.text('percent')} %", "A", printed.cite_for(edition))


def _limits(conductor: Conductor, size: WireSize) -> list[tuple[int, str, str]]:
    limits = []
    if conductor.held_to_c is not None:
        why = f"the cable is held to its {conductor.held_to_c} °C column"
        limits.append((conductor.held_to_c, why, "334.80"))
    terminals = conductor.terminals_c or (60 if size <= WireSize("1 AWG") else 75)
    limits.append((terminals, f"terminals at {terminals} °C", "110.14(C)(1)"))
    return limits


def _small_conductor_limit(size: WireSize, metal: str, edition: str) -> Step | None:
    printed = table("small-conductor-limit")
    if (metal, size.name) not in printed:
        return None
    row = printed.row((metal, size.name))
    since, amps = row.number("since"), row.number("limit")
    if amps is None or (since is not None and edition_year(edition) < since):
        return None
    return step(f"limit for {size} {metal}", plain(amps), "A", printed.cite_for(edition))


def _standard(amps: Fraction, upwards: bool, edition: str) -> Step:
    above, below = rating_at_or_above(amps, edition), rating_at_or_below(amps, edition)
    if upwards and above is not None and amps < above <= NEXT_SIZE_UP_TO_A:
        what = f"next standard rating above {exact(amps)} A"
        return step(what, plain(above), "A", cite_in(edition, "240.4(B)"))
    if below is None:
        return step(f"no standard breaker is within {exact(amps)} A", "0", "A", cite_in(edition, "240.6(A)"))
    what = f"largest standard rating within {exact(amps)} A"
    return step(what, plain(below), "A", cite_in(edition, "240.6(A)"))


def _with_limit(standard: Step, limit: Step | None) -> tuple[Step, ...]:
    if limit is None:
        return (standard,)
    sum_ = f"min({plain(standard.value)}, {plain(limit.value)})"
    held = step("the smaller of the two", sum_, "A", limit.cite)
    return (standard, limit, held)
