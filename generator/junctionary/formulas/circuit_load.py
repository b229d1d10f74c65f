"""The load of one circuit: connected, continuous, by demand; what is left; legs and neutral.

All in A, with worked steps. A dwelling's calculated load is another matter (article 220).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from junctionary.formulas.cooking import cooking_steps
from junctionary.formulas.dwelling import Item
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import cite, cite_in

LARGE_RANGE_VA = 8750
LEAST_LARGE_RANGE_A = 40


@dataclass(frozen=True, slots=True)
class Part:
    """What one load brings to a circuit: the step that works out its A, and whether it is continuous."""

    drawn: Step
    continuous: bool = False


def connected_load(parts: Iterable[Part], lacks: Iterable[str] = ()) -> Worked:
    """All parts added up; with ``lacks`` there is no value, and the last step is what it is at least."""
    steps = [each.drawn for each in parts]
    total = step("connected load", _added(each.value for each in steps), "A")
    gaps = tuple(lacks)
    if gaps:
        return lacking(gaps, "A", [*steps, total])
    return finished(total.value, "A", [*steps, total])


def sized_load(parts: Iterable[Part], edition: str, lacks: Iterable[str] = ()) -> Worked:
    """What breaker and wire are sized for: 125 % of the continuous load, and the rest (210.19, 210.20)."""
    kept = tuple(parts)
    continuous = sum((each.drawn.value for each in kept if each.continuous), Fraction(0))
    rest = sum((each.drawn.value for each in kept if not each.continuous), Fraction(0))
    clause = cite_in(edition, "210.20(A)")
    sum_ = f"125 % × {plain(continuous)}" if continuous else plain(rest)
    if continuous and rest:
        sum_ = f"{sum_} + {plain(rest)}"
    what = (
        "to be sized for: 125 % of the continuous load, and the rest" if continuous else "nothing continuous"
    )
    part = step(what, sum_, "A", clause)
    gaps = tuple(lacks)
    cites = (cite_in(edition, "210.19(A)"),)
    return lacking(gaps, "A", [part], cites) if gaps else finished(part.value, "A", [part], cites)


def most_continuous(rating_a: Fraction, edition: str) -> Worked:
    """The most continuous load, in A, behind a breaker of that rating: 80 %, which is 125 % turned about."""
    part = step(
        "at most for hours: 80 % of the breaker",
        f"80 % × {plain(rating_a)}",
        "A",
        cite_in(edition, "210.20(A)"),
    )
    return finished(part.value, "A", [part])


def most_fastened(rating_a: Fraction, edition: str) -> Worked:
    """The most that equipment fastened in place, lamps aside, may draw beside lights or receptacles, in A.

    For 15 and 20 A circuits: half the rating; others lack a rule.
    """
    if rating_a not in (15, 20):
        return lacking([f"a rule for fastened loads on a {plain(rating_a)} A circuit"], "A")
    clause = cite_in(edition, "210.23(B)(2)")
    part = step("half of the circuit", f"50 % × {plain(rating_a)}", "A", clause)
    return finished(part.value, "A", [part], [cite("cfr-24-3280", "3280.805(a)(3)(i)")])


def least_for_range(va: Fraction, edition: str) -> Worked | None:
    """The least rating, in A, of the circuit of a household range: 40 from 8-3/4 kW; None below that."""
    if va < LARGE_RANGE_VA:
        return None
    part = step("a range of 8-3/4 kW or more", str(LEAST_LARGE_RANGE_A), "A", cite_in(edition, "210.19(C)"))
    return finished(part.value, "A", [part])


def range_demand(what: str, va: Fraction, volts: Fraction, edition: str) -> Step:
    """What one household range counts for on its own circuit, in A, by Table 220.55 (its note 4)."""
    by_table = cooking_steps((Item(what, va),), edition)[0]
    return step(
        f"{by_table.what}, at {plain(volts)} V", f"{by_table.sum} / {plain(volts)}", "A", by_table.cite
    )


@dataclass(frozen=True, slots=True)
class Room:
    """What can still be added to a circuit, in A, and the number that limits it, in words.

    ``cord`` is the most that one plugged load may draw there; None where there is nowhere to plug in.
    """

    now: Worked
    continuous: Worked
    limit: str
    cord: Worked | None

    @property
    def left_a(self) -> Fraction:
        """What is left of the rating, in A; with something not recorded, at most that."""
        return self.now.steps[0].value


def room_left(
    rating_a: Fraction,
    rated: str,
    load_a: Fraction,
    cord: Worked | None,
    edition: str,
    lacks: Iterable[str] = (),
) -> Room:
    """What is left of a rating (``rated`` says whose) beside a load sized for, and in one receptacle.

    ``cord`` is the most one plugged load may draw; None where nothing is to be plugged in. With
    ``lacks`` there are no values, and the last steps are what is left at most.
    """
    left = step(f"left of {rated}", f"max(0, {plain(rating_a)} − {plain(load_a)})", "A")
    long = step("80 % of what is left", f"80 % × {plain(left.value)}", "A", cite_in(edition, "210.20(A)"))
    before, limit = [left], rated
    gaps = [*lacks, *(cord.lacks if cord else ())]
    sums = [plain(left.value), plain(long.value)]
    if cord is not None and cord.value is not None:
        before += cord.steps
        sums = [f"min({each}, {plain(cord.value)})" for each in sums]
        if cord.value < left.value:
            limit = "what one plugged load may draw"
    now, lasting = (
        step(f"can be added {how}", sum_, "A")
        for how, sum_ in zip(("now", "for three hours or more"), sums, strict=True)
    )
    if gaps:
        told = lacking(gaps, "A", [*before, now]), lacking(gaps, "A", [long, lasting])
    else:
        told = finished(now.value, "A", [*before, now]), finished(lasting.value, "A", [long, lasting])
    return Room(*told, limit, cord)


def neutral_current(
    back: tuple[tuple[str, Fraction], tuple[str, Fraction]], legs: Literal["opposite", "same"]
) -> Worked:
    """The current of a neutral that two hots share, in A, from what each sends back on it, by its name.

    The difference on opposite legs, the sum on one.
    """
    parts = [step(f"{name} sends back", plain(value), "A") for name, value in back]
    one, other = (plain(each) for _, each in sorted(back, key=lambda each: -each[1]))
    sign, word = ("−", "difference") if legs == "opposite" else ("+", "sum")
    shared = cite("practice", "A shared neutral carries the difference of opposite legs, and the sum of one.")
    part = step(f"neutral: the {word}, as they are on {legs} legs", f"{one} {sign} {other}", "A", shared)
    return finished(part.value, "A", [*parts, part])


def _added(values: Iterable[Fraction]) -> str:
    return " + ".join(plain(each) for each in values) or "0"
