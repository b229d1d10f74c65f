"""Builds the plot of what a circuit loses on the way."""

from collections.abc import Mapping
from fractions import Fraction

from junctionary.figures import CircuitDrop, Lost
from junctionary.figures.cabling import Cabling, cabling_of
from junctionary.formulas.sums import plain
from junctionary.formulas.voltage_drop import drop_limits
from junctionary.house.model import Circuit
from junctionary.sheets.circuit_drop import branch_by_branch
from junctionary.sheets.drop_plot import DropPlot, DropPoint
from junctionary.sheets.links import Ref
from junctionary.sheets.survey import Survey
from junctionary.units import convert, decimal


def drop_plot(survey: Survey, circuit: Circuit) -> DropPlot | None:
    """The plot of one circuit; None where the drop at no box can be told."""
    house = survey.house
    drop = survey.figures.drops.get(circuit.id)
    if drop is None:
        return None
    cabling = cabling_of(house, circuit)
    metric = house.record.shows == "metric"
    points, untold = [], []
    for at in (each for each in branch_by_branch(cabling) if each in drop.design):
        feet = cabling.feet_to(at)
        recorded = _percent(drop.recorded, at) if drop.drawn else None
        design = _percent(drop.design, at)
        if feet is None or (recorded is None and design is None):
            untold.append(at)
            continue
        way = convert(feet, "ft", "m") if metric else feet
        ref = Ref("panel" if at in house.panels else "box", at)
        points.append(DropPoint(ref, at, _before(cabling, at), float(way), recorded, design))
    if not points:
        return None
    alone, _ = drop_limits()
    return DropPlot(
        title=f"Voltage drop, {circuit.name}",
        says=_says(drop),
        points=tuple(points),
        limit=float(alone),
        limit_words=_limit_words(drop, alone),
        unit="m" if metric else "ft",
        recorded_words="recorded load" if any(each.recorded is not None for each in points) else "",
        design_words=_design_words(drop) if any(each.design is not None for each in points) else "",
        untold=tuple(untold),
    )


def _percent(case: Mapping[str, Lost], at: str) -> float | None:
    lost = case.get(at)
    return None if lost is None or lost.percent is None else float(lost.percent)


def _before(cabling: Cabling, at: str) -> str | None:
    """The box whose way is this one's, less its last run; None where that is the panel."""
    way = cabling.ways[at][:-1]
    return next((each for each in cabling.boxes if way and cabling.ways[each] == way), None)


def _limit_words(drop: CircuitDrop, limit: Fraction) -> str:
    """``3 % of 120 V, 3.6 V``."""
    volts = {each.volts for each in drop.design.values()}
    of = next(iter(volts)) if len(volts) == 1 else None
    at = f" of {plain(of)} V, {decimal(limit * of / 100, 1)} V" if of is not None else ""
    return f"{plain(limit)} %{at}"


def _design_words(drop: CircuitDrop) -> str:
    load = drop.design_load.value
    return f"design load, {plain(load)} A at that box alone" if load is not None else "design load"


def _says(drop: CircuitDrop) -> str:
    said = []
    for words, case in (("recorded", drop.recorded if drop.drawn else {}), ("design", drop.design)):
        worst = drop.worst(case)
        if worst is not None and worst.percent is not None:
            said.append(f"at the {words} load most is lost at {worst.at}, {decimal(worst.percent, 1)} %")
    words = "; ".join(said)
    return f"{words[:1].upper()}{words[1:]}." if words else "What is lost on the way to each box."
