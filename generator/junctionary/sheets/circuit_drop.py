"""What a circuit's wire loses on the way, and what a short circuit at its end comes to, for its sheet."""

import re
from collections.abc import Iterable, Iterator
from fractions import Fraction

from junctionary.figures import CircuitDrop, CircuitFault, EndFault, Heat, Lost
from junctionary.figures.cabling import Cabling, cabling_of
from junctionary.formulas.fault import FaultCurrent
from junctionary.formulas.sums import plain
from junctionary.formulas.voltage_drop import drop_limits, percent_of
from junctionary.formulas.worked import Step, Worked
from junctionary.house.model import Circuit
from junctionary.sheets.entries import Row, Table, Working, WorkingLine
from junctionary.sheets.fill import FEW
from junctionary.sheets.links import Phrase
from junctionary.sheets.links import plain as plain_words
from junctionary.sheets.naming import link
from junctionary.sheets.reckoning import clause
from junctionary.sheets.survey import Survey, cited
from junctionary.sources import Citation
from junctionary.units import decimal

SHORT = 24
"""Nor does one of numbers as long as this say anything more."""

AS_PRINTED = {"ohm/kft": "ohm", "A√s/mm²": "A√s/mm²"}
"""Units of values looked up, which keep the digits they are printed with, and what stands behind them."""

_ROUNDED_UP = re.compile(r"ceil\((.+) × 100000\) / 100000")
"""What the words beside it say: rounded up."""

MINUS = "\N{MINUS SIGN}"
RISES = " Below nought it is a rise: the other leg's current in the shared neutral outweighs it."

DIGITS = {"V": 2, "ohm": 4, "A": 0, "%": 1, "mm²": 2}


def drop_note(survey: Survey, circuit: str, at: str) -> tuple[str, ...]:
    """``1.8 % drop``: what is lost on the way to a box at the recorded load, for the circuit's map.

    A rise where the other leg's current in a shared neutral outweighs it.
    """
    drop = survey.figures.drops.get(circuit)
    lost = drop.recorded.get(at) if drop is not None and drop.drawn else None
    if lost is None or lost.percent is None:
        return ()
    shown = decimal(lost.percent, 1)
    return (f"{shown.removeprefix('-')} % {'rise' if shown.startswith('-') else 'drop'}",)


def branch_by_branch(cabling: Cabling) -> tuple[str, ...]:
    """What the cables reach, from the panel on, what goes farthest last, as on the map of a phone."""
    onward: dict[tuple[str, ...], list[str]] = {}
    for at in cabling.boxes:
        onward.setdefault(cabling.ways[at][:-1], []).append(at)

    def deep(at: str) -> int:
        return 1 + max(map(deep, onward.get(cabling.ways[at], ())), default=0)

    waiting = sorted(onward.get((), ()), key=deep, reverse=True)
    ordered = []
    while waiting:
        at = waiting.pop()
        ordered.append(at)
        waiting += sorted(onward.get(cabling.ways[at], ()), key=deep, reverse=True)
    return tuple(ordered)


def drop_workings(survey: Survey, circuit: Circuit) -> Iterator[Working]:
    """The drop at the recorded and at the design load at the worst outlet, and the fault at the worst box."""
    drop, fault = survey.figures.drops.get(circuit.id), survey.figures.faults.get(circuit.id)
    if drop is not None:
        yield from _drops(drop)
    if fault is not None and fault.worst is not None:
        yield _fault(fault, fault.worst)
        if fault.heat is not None:
            yield _heat(fault, fault.heat)


def drop_table(survey: Survey, circuit: Circuit) -> Table | None:
    """What is lost on the way to each box, and what a fault there comes to; None where none is reached."""
    drop, fault = survey.figures.drops.get(circuit.id), survey.figures.faults.get(circuit.id)
    if drop is None or fault is None or not drop.design:
        return None
    ordered = branch_by_branch(cabling_of(survey.house, circuit))
    rows = tuple(
        Row(_cells((link(survey.house, at),), at, drop, fault)) for at in ordered if at in drop.design
    )
    heads = ("at", "recorded", "design load", "spread", "leg to neutral", "leg to ground")
    load = drop.design_load.value
    if load is None:
        says = f"The design load cannot be told without {'; '.join(drop.design_load.lacks)}."
    else:
        outlets = len(drop.outlets) or len(drop.design)
        spread = f", or spread evenly over {outlets} outlets" if outlets > 1 else ""
        says = (
            f"Design load: {plain(load)} A, 80 % of the breaker, all of it at that one box{spread}. "
            "Amperes: what flows in a short circuit there."
        )
    below = any(plain_words(cell).startswith(MINUS) for row in rows for cell in row.cells)
    return Table(heads, rows, figures=(1, 2, 3, 4, 5), caption=f"{says}{RISES if below else ''}")


def _cells(at: Phrase, where: str, drop: CircuitDrop, fault: CircuitFault) -> tuple[Phrase, ...]:
    end = fault.boxes.get(where)
    return (
        at,
        (_percent(drop.recorded.get(where)) if drop.drawn else "nothing",),
        (_percent(drop.design.get(where)),),
        (_percent(drop.spread.get(where)),),
        (_amps(end.to_neutral if end else None),),
        (_amps(end.to_ground if end else None),),
    )


def _percent(lost: Lost | None) -> str:
    if lost is None or lost.percent is None:
        least = lost.least_percent if lost is not None else None
        return f"over {decimal(least, 1)} %" if least is not None else "cannot tell"
    return f"{decimal(lost.percent, 1).replace('-', MINUS)} %"


def _amps(current: FaultCurrent | None) -> str:
    if current is None:
        return "no such wire"
    if current.flows.value is None:
        return f"under {decimal(current.most, 0)} A" if current.most is not None else "cannot tell"
    return f"{decimal(current.flows.value, 0)} A"


def _drops(drop: CircuitDrop) -> Iterator[Working]:
    recorded, design = drop.worst(drop.recorded), drop.worst(drop.design)
    if recorded is not None and drop.drawn:
        yield _drop(f"Voltage drop at the recorded load, to {recorded.at}", recorded, _limits_words(recorded))
    if design is not None:
        load = drop.design_load.value
        amps = f", {plain(load)} A" if load is not None else ""
        spread = drop.worst(drop.spread)
        evenly = (
            f" Spread evenly over the outlets it would be {decimal(spread.percent, 1)} % at {spread.at}."
            if spread is not None and spread.percent is not None and len(drop.outlets) > 1
            else ""
        )
        says = f"80 % of the breaker at the farthest outlet: to build by, not what is drawn.{evenly}"
        title = f"Voltage drop at design load{amps}, at {design.at}"
        yield _drop(title, design, says, *drop.design_load.cites)


def _limits_words(lost: Lost) -> str:
    alone, together = drop_limits()
    said = {True: "Within", False: "Above", None: "To be held against"}[lost.within]
    return (
        f"{said} what is recommended: {plain(alone)} % in a circuit, {plain(together)} % with its feeders. "
        "Resistances are those of wire at 75 °C."
    )


def _drop(title: str, lost: Lost, says: str, *more: Citation) -> Working:
    own, whole = lost.from_panel, lost.from_service
    fed = whole.value is not None and whole.steps != own.steps
    lines = list(_summed(whole if fed else own, lost.least))
    if fed and own.value is not None:
        lines.append(WorkingLine("of it from the panel", _added(own.steps[-1]), decimal(own.value, 2)))
    if own.value is not None:
        lines.append(_percent_line(percent_of(own.value, lost.volts), "lost from the panel"))
    if fed and whole.value is not None:
        lines.append(_percent_line(percent_of(whole.value, lost.volts), "lost from the service"))
    lacks = lost.from_panel.lacks or lost.from_service.lacks
    missing = f"Cannot be told without: {'; '.join(lacks)}." if lacks else ""
    return Working(title, "V", tuple(lines), missing or says, _sources((*lost.from_service.cites, *more)))


def _sources(cites: Iterable[Citation]) -> str:
    """What a figure rests on, and how it is known where it was not seen in full."""
    return cited(str(each) if each.publication == "practice" else clause(each) for each in cites)


def _percent_line(step: Step, what: str) -> WorkingLine:
    return WorkingLine(f"{what}, {step.what}", step.sum, f"{decimal(step.value, 1)} %", True)


def _summed(worked: Worked, least: Fraction | None) -> Iterator[WorkingLine]:
    for step in worked.steps:
        if step.what == "lost on the way":
            what = step.what if worked.value is not None else "lost, as far as recorded"
            if worked.value is not None or least is not None:
                yield WorkingLine(what, _added(step), decimal(step.value, 2), True)
        else:
            yield _line(step, "V")


def _line(step: Step, unit: str) -> WorkingLine:
    if step.unit in AS_PRINTED:
        return WorkingLine(step.what, "", f"{step.sum} {AS_PRINTED[step.unit]}")
    shown = decimal(step.value, DIGITS.get(step.unit, 2))
    how = _ROUNDED_UP.sub(r"\1", step.sum)
    return WorkingLine(step.what, how, shown if step.unit == unit else f"{shown} {step.unit}")


def _added(step: Step) -> str:
    """A chain of additions, unless it only repeats the column above it."""
    return step.sum if step.sum.count(" + ") < FEW and len(step.sum) <= SHORT else "added up"


def _fault(fault: CircuitFault, end: EndFault) -> Working:
    of = min(
        (each for each in end.both if each.most is not None), key=lambda each: each.most or 0, default=None
    )
    assert of is not None
    to = "neutral" if of is end.to_neutral else "ground"
    *steps, current = of.flows.steps
    lines = [_line(each, "A") for each in steps if each.what != "the whole loop"]
    whole = next(each for each in steps if each.what == "the whole loop")
    lines.append(WorkingLine(whole.what, _added(whole), f"{decimal(whole.value, 4)} ohm"))
    what = current.what if of.flows.value is not None else "the fault's current, at most"
    lines.append(WorkingLine(what, current.sum, decimal(current.value, 0), True))
    lines += [_line(each, "A") for each in fault.pick_up.steps]
    return Working(
        f"Short circuit at {end.at}, leg to {to}: the smallest on the circuit",
        "A",
        tuple(lines),
        _fault_says(fault, of),
        _sources((*of.flows.cites, *fault.pick_up.cites)),
    )


def _fault_says(fault: CircuitFault, of: FaultCurrent) -> str:
    if fault.at_once is None:
        lacks = dict.fromkeys((*of.flows.lacks, *fault.pick_up.lacks, *fault.lacks))
        return f"Whether the breaker opens at once cannot be told without: {'; '.join(lacks)}."
    opens = "opens at once." if fault.at_once else "does not open at once: it waits for its thermal part."
    return f"The breaker {opens} No two have quite the same pick-up; the true current is somewhat larger."


def _heat(fault: CircuitFault, heat: Heat) -> Working:
    lines = [_line(each, "mm²") for each in heat.area.steps]
    lines.append(WorkingLine(f"the {heat.wire} in run {heat.run} has", "by its gauge", decimal(heat.has, 2)))
    says = {
        True: "The wire stands it, where the breaker opens at once within one cycle, 1/60 s.",
        False: "The wire's insulation does not stand it.",
        None: f"Cannot be told without: {'; '.join(heat.area.lacks)}.",
    }[heat.fits]
    return Working(
        f"Heat of a short circuit at {heat.at}: the hottest on the circuit",
        "mm²",
        tuple(lines),
        says,
        _sources(heat.area.cites),
    )
