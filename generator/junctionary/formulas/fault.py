"""The current of a fault at the end of a cable, and the heat it leaves in the wire."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from junctionary.formulas.resistance import Wire, resistance
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import cite
from junctionary.tables import table

LOOP = cite("iec-60364-4-41", "411.4")
ADIABATIC = cite("iec-60364-5-54", "543.1.2")
PICK_UP = cite(
    "practice", "A breaker that records no pick-up is taken to open at once from 10 times its rating"
)
TIMES_RATING = 10
CENTRE_TAP = cite(
    "practice",
    "A fault from one leg to the centre of a transformer's winding has 1.5 times the current of one across",
)
PLAIN_SUM = cite(
    "practice", "Impedances are added as plain numbers, which errs towards the smaller fault current"
)
VOLTS = Fraction(120)
WINDING_V = Fraction(240)
FINE = 100000
"""Impedances before the service are rounded up to one part of an ohm in so many."""


@dataclass(frozen=True, slots=True)
class Loop:
    """One cable of a fault's way: out by one conductor and back by another.

    ``lacks`` says what is not recorded of it; then it adds nothing, and the
    current is at most what the rest lets through.
    """

    what: str
    feet: Fraction | None
    out: Wire | None
    back: Wire | None
    lacks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FaultCurrent:
    """A fault's current in A; ``most`` is what it is at most where something is missing."""

    flows: Worked
    most: Fraction | None


def source_from_level(level_a: Fraction) -> Worked:
    """The impedance in ohm of all that lies before the service, from the fault current there; rounded up."""
    sum_ = f"ceil({plain(VOLTS)} / {plain(level_a)} × {FINE}) / {FINE}"
    ohm = step("before the service, rounded up", sum_, "ohm", LOOP)
    return finished(ohm.value, "ohm", [ohm])


def source_from_transformer(kva: Fraction, percent: Fraction, drop: Sequence[Loop], edition: str) -> Worked:
    """The impedance in ohm before the service, from a 120/240 V transformer and the service drop.

    From one leg to the winding's centre it is a third of that across: 1.5 times
    the current flows, at half the voltage.
    """
    volts = plain(WINDING_V)
    across = step(
        "across the transformer", f"{volts} × {volts} × {plain(percent)} % / ({plain(kva)} × 1000)", "ohm"
    )
    sum_ = f"ceil({plain(across.value)} / 3 × {FINE}) / {FINE}"
    ohm = step("from one leg to its centre, rounded up", sum_, "ohm", CENTRE_TAP)
    steps, cables, lacks = _cables(drop, edition)
    total = step(
        "before the service", " + ".join(plain(each.value) for each in (ohm, *cables)), "ohm", PLAIN_SUM
    )
    shown = (across, ohm, *steps, *cables, total)
    return lacking(lacks, "ohm", shown) if lacks else finished(total.value, "ohm", shown)


def fault_current(source: Worked, loops: Sequence[Loop], edition: str) -> FaultCurrent:
    """The current in A of a fault beyond these cables, at 120 V from a leg to the neutral or the ground."""
    steps, cables, lacks = _cables(loops, edition)
    missing = (*source.lacks, *lacks)
    known = [*([] if source.value is None else [source.value]), *(each.value for each in cables)]
    whole = step("the whole loop", " + ".join(map(plain, known)) or "0", "ohm", PLAIN_SUM)
    shown = (*source.steps, *steps, *cables, whole)
    if not whole.value:
        return FaultCurrent(lacking(missing or ("any impedance of the loop",), "A", shown), None)
    current = step("the fault's current", f"{plain(VOLTS)} / {plain(whole.value)}", "A", LOOP)
    if missing:
        return FaultCurrent(lacking(missing, "A", (*shown, current)), current.value)
    return FaultCurrent(finished(current.value, "A", (*shown, current)), current.value)


def _cables(loops: Sequence[Loop], edition: str) -> tuple[list[Step], list[Step], list[str]]:
    """The resistances looked up, the ohms of each cable, and what is missing."""
    found = [_in_loop(each, edition) for each in loops]
    looked_up = dict.fromkeys(each for steps, _, _ in found for each in steps)
    cables = [cable for _, cable, _ in found if cable is not None]
    return list(looked_up), cables, [lack for *_, lacks in found for lack in lacks]


@cache
def _in_loop(loop: Loop, edition: str) -> tuple[tuple[Step, ...], Step | None, tuple[str, ...]]:
    """The same of one cable."""
    wires = [each for each in (loop.out, loop.back) if each is not None]
    ohms = {wire: resistance(wire, edition) for wire in wires}
    unprinted = [
        f"a resistance for {wire}: the table prints none" for wire, ohm in ohms.items() if ohm is None
    ]
    found = tuple(ohm for ohm in ohms.values() if ohm is not None)
    lacks = (*loop.lacks, *unprinted)
    if lacks or loop.feet is None or len(wires) < 2:
        return (), None, lacks or (f"the length and both conductors of {loop.what}",)
    feet = plain(loop.feet)
    out, back = plain(found[0].value), plain(found[-1].value)
    way = f"2 × {out}" if out == back else f"({out} + {back})"
    return found, step(f"{loop.what}, {feet} ft", f"{way} × {feet} / 1000", "ohm", LOOP), ()


def pick_up(rating_a: Fraction, recorded_a: Fraction | None) -> Worked:
    """The current in A from which a breaker opens at once."""
    if recorded_a is not None:
        told = step("opens at once, as recorded", plain(recorded_a), "A")
        return finished(told.value, "A", [told])
    usual = step("opens at once, by practice", f"{TIMES_RATING} × {plain(rating_a)}", "A", PICK_UP)
    return finished(usual.value, "A", [usual])


def adiabatic_k(wire: Wire, insulation: str = "thermoplastic", lies: str = "in cable") -> Step | None:
    """k of the adiabatic equation for a conductor; None where there is none for its metal."""
    printed = table("adiabatic-k")
    key = (wire.metal, insulation, lies)
    if key not in printed:
        return None
    row = printed.row(key)
    cited = cite(printed.publication, row.text("clause"))
    return step(f"k, {wire.metal} {lies}, {insulation}", row.text("k"), "A√s/mm²", cited)


def least_area(current_a: Fraction, seconds: Fraction, k: Step) -> Worked:
    """The area in mm² that takes a fault's heat: the square root of I² t, over k; the current rounded up."""
    whole = -(-current_a.numerator // current_a.denominator)
    sum_ = f"sqrt({whole} × {whole} × {plain(seconds)}) / {plain(k.value)}"
    area = step(f"for {whole} A during {seconds} s", sum_, "mm²", ADIABATIC)
    return finished(area.value, "mm²", [k, area])


def withstood(wire: Wire, seconds: Fraction) -> Worked:
    """The current in A that a wire takes for a time: k S over the square root of t."""
    k = adiabatic_k(wire)
    if k is None:
        return lacking([f"k for {wire.metal}"], "A")
    area = area_mm2(wire)
    sum_ = f"{plain(k.value)} × {plain(area)} / sqrt({plain(seconds)})"
    most = step(f"{wire} during {seconds} s", sum_, "A", ADIABATIC)
    return finished(most.value, "A", [k, most])


def area_mm2(wire: Wire) -> Fraction:
    """A wire's area in mm² to a hundredth, by the gauge's formula."""
    return Fraction(round(wire.size.area_mm2 * 100), 100)
