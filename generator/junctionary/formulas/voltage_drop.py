"""What is lost on the way: voltage drop in one wire, along several, and the wire that keeps it small."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from junctionary.formulas.resistance import Wire, circular_mils, resistance
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import cite
from junctionary.tables import table
from junctionary.units import WireSize

OUT_AND_BACK, OUT_ONLY, THREE_PHASE = "2", "1", "sqrt(3)"
"""How often a length counts: both wires, one wire of a balanced pair of legs, three phases."""

OHMS_LAW = cite("practice", "What a wire loses is its current times its resistance, out and back")


def drop_by_area(
    k: Fraction, amps: Fraction, feet: Fraction, mils: Fraction, ways: str = OUT_AND_BACK
) -> Worked:
    """The drop in V by the circular-mil form: 2 K I D / CM."""
    sum_ = f"{ways} × {plain(k)} × {plain(amps)} × {plain(feet)} / {plain(mils)}"
    lost = step(f"{plain(amps)} A through {plain(feet)} ft", sum_, "V", table("drop-constant").cite)
    return finished(lost.value, "V", [lost])


def drop_by_resistance(
    ohm_per_kft: Fraction, amps: Fraction, feet: Fraction, ways: str = OUT_AND_BACK
) -> Worked:
    """The drop in V by the resistance form: 2 × D / 1000 × R × I."""
    sum_ = f"{ways} × {plain(feet)} / 1000 × {plain(ohm_per_kft)} × {plain(amps)}"
    lost = step(f"{plain(amps)} A through {plain(feet)} ft", sum_, "V", OHMS_LAW)
    return finished(lost.value, "V", [lost])


def percent_of(drop: Fraction, volts: Fraction) -> Step:
    """A drop in percent of the voltage it is taken from."""
    return step(f"of {plain(volts)} V", f"{plain(drop)} / {plain(volts)} × 100", "%")


def most_drop(volts: Fraction, percent: Fraction) -> Worked:
    """The drop in V that a limit in percent allows; its last step is what is left at the load."""
    allowed = step(f"{plain(percent)} % of {plain(volts)} V", f"{plain(percent)} % × {plain(volts)}", "V")
    left = step("left at the load", f"{plain(volts)} − {plain(allowed.value)}", "V")
    return finished(allowed.value, "V", [allowed, left])


def drop_limits() -> tuple[Fraction, Fraction]:
    """The limits recommended, in percent: of a circuit alone, and together with the feeders before it."""
    printed = table("voltage-drop-limits")
    alone, together = (
        printed.number(each, "percent") for each in ("branch circuit", "feeder and branch circuit")
    )
    assert alone is not None
    assert together is not None
    return alone, together


def least_area_for_drop(k: Fraction, amps: Fraction, feet: Fraction, most_v: Fraction) -> Worked:
    """The area in circular mils that keeps a drop within ``most_v``: 2 K I D / VD."""
    sum_ = f"2 × {plain(k)} × {plain(amps)} × {plain(feet)} / {plain(most_v)}"
    area = step(f"for at most {plain(most_v)} V", sum_, "cmil", table("drop-constant").cite)
    return finished(area.value, "cmil", [area])


def size_for(area_cmil: Fraction) -> WireSize | None:
    """The smallest tabulated size that has this area; None past the table's end."""
    sizes = (WireSize(each.text("size")) for each in table("conductor-area"))
    return next((each for each in sizes if (circular_mils(each) or 0) >= area_cmil), None)


@dataclass(frozen=True, slots=True)
class Span:
    """One cable on the way from the supply, and what it carries on each leg, in A.

    ``hot`` and ``neutral`` are the smallest of their kind in it. ``lacks`` says
    what is not recorded of it; then it adds nothing, and the whole is at least
    what the rest adds.
    """

    what: str
    feet: Fraction | None
    hot: Wire | None
    neutral: Wire | None
    amps: Mapping[str, Fraction]
    lacks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Part:
    """What one cable loses: the resistances looked up for it, and its step, or what it lacks."""

    looked_up: tuple[Step, ...]
    lost: Step | None
    lacks: tuple[str, ...]


def lost_in(span: Span, legs: Sequence[str], edition: str) -> Part:
    """The drop in V in one cable, from one leg to the neutral or between two legs.

    The neutral carries what one leg has above the others; a load between two
    legs loses the same in both and nothing in the neutral. Currents are taken
    in step with the voltage, as those of heaters and lamps are.
    """
    wires = (span.hot,) if len(legs) > 1 else (span.hot, span.neutral)
    if span.lacks or span.feet is None or None in wires:
        return Part((), None, span.lacks or (f"the neutral of {span.what}",))
    ohms = {wire: resistance(wire, edition) for wire in wires if wire is not None}
    printed = {wire: each for wire, each in ohms.items() if each is not None}
    unprinted = [each for each in ohms if each not in printed]
    if unprinted:
        lacks = tuple(f"a resistance for {each}: the table prints none" for each in unprinted)
        return Part(tuple(printed.values()), None, lacks)
    values = {wire: each.value for wire, each in printed.items()}
    return Part(tuple(printed.values()), _lost(span, span.feet, legs, values), ())


@dataclass(frozen=True, slots=True)
class WayDrop:
    """What is lost along a way, in V; ``known`` is what the recorded part of it loses."""

    lost: Worked
    known: Fraction


def drop_along(parts: Sequence[Part]) -> WayDrop:
    """The drop in V along cables one after another."""
    lost = [part.lost for part in parts if part.lost is not None]
    lacks = [lack for part in parts for lack in part.lacks]
    total = step("lost on the way", " + ".join(_signed(each.value) for each in lost) or "0", "V")
    looked_up = dict.fromkeys(each for part in parts for each in part.looked_up)
    shown = (*looked_up, *lost, *([total] if len(lost) != 1 else []))
    if lacks:
        return WayDrop(lacking(lacks, "V", shown, [OHMS_LAW]), total.value)
    return WayDrop(finished(total.value, "V", shown, [OHMS_LAW]), total.value)


def _lost(span: Span, length: Fraction, legs: Sequence[str], ohms: Mapping[Wire, Fraction]) -> Step:
    assert span.hot is not None
    feet, hot = plain(length), ohms[span.hot]
    out = [span.amps.get(leg, Fraction(0)) for leg in legs]
    if len(legs) > 1:
        back, back_ohm = out[1], hot
    else:
        assert span.neutral is not None
        others = sum((amps for leg, amps in span.amps.items() if leg not in legs), Fraction(0))
        back, back_ohm = out[0] - others, ohms[span.neutral]
    if back == out[0] and back_ohm == hot:
        sum_ = f"2 × {_signed(out[0])} × {plain(hot)} × {feet} / 1000"
    else:
        sum_ = f"({_signed(out[0])} × {plain(hot)} + {_signed(back)} × {plain(back_ohm)}) × {feet} / 1000"
    return step(f"{span.what}, {feet} ft", sum_, "V", OHMS_LAW)


def _signed(value: Fraction) -> str:
    return f"({plain(value)})" if value < 0 else plain(value)


def flows(ways: Iterable[tuple[Sequence[str], Fraction, Sequence[str]]]) -> dict[str, dict[str, Fraction]]:
    """What each cable of a tree carries on each leg, in A, by the loads beyond it.

    A load is the cables on its way from the supply, its current, and its legs.
    """
    found: dict[str, dict[str, Fraction]] = {}
    for cables, amps, legs in ways:
        for cable in cables:
            carried = found.setdefault(cable, {})
            for leg in legs:
                carried[leg] = carried.get(leg, Fraction(0)) + amps
    return found
