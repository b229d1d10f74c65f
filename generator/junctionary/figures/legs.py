"""What each leg of the service carries, circuit by circuit, and how far the two differ."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from junctionary.figures.draws import LINE_TO_NEUTRAL, Draw, by_circuit, together
from junctionary.figures.dwelling_parts import (
    BY_CIRCUIT,
    GENERAL,
    counted_circuits,
    counts_by_nameplate,
    is_covered,
    is_outside,
    lamps_of,
    legs_of,
    sort_loads,
    words_of,
)
from junctionary.formulas.dwelling import amount, lighting_va_per_ft2
from junctionary.formulas.dwelling_service import LegPart, leg_load
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.house.model import Circuit, House
from junctionary.house.network.panel_wiring import LEGS
from junctionary.sources import cite

WITHIN_PERCENT = 20
"""How far the legs may differ, in % of the heavier: our threshold, marked practice."""

LEAST_A = 15
"""By less than the smallest circuit carries nothing is out of balance, in A: there is none to move."""


@dataclass(frozen=True, slots=True)
class OnLeg:
    """What one circuit puts on a leg, in VA at 120 V; a load at 240 V stands half on each."""

    circuit: str
    part: LegPart


@dataclass(frozen=True, slots=True)
class Leg:
    """One leg: what each circuit puts on it, and together, in VA. ``load`` lacks what is missing anywhere.

    ``least_va`` is what is certain of it, and ``least_a`` the same in A.
    """

    leg: str
    on_it: tuple[OnLeg, ...]
    load: Worked
    least_va: Fraction

    @property
    def least_a(self) -> Fraction:
        """What is certain of it, in A at 120 V."""
        return self.least_va / LINE_TO_NEUTRAL


@dataclass(frozen=True, slots=True)
class Legs:
    """Both legs, and by how many % of the heavier they differ."""

    legs: tuple[Leg, ...]
    unbalance: Worked

    @property
    def balanced(self) -> bool | None:
        """Whether they are within the threshold, or nearer than any circuit's worth; None where untold."""
        if self.unbalance.value is None:
            return None
        light, heavy = sorted(each.least_a for each in self.legs)
        return self.unbalance.value <= WITHIN_PERCENT or heavy - light < LEAST_A


def legs_of_service(
    house: House, draws: Mapping[str, Draw], area_ft2: Fraction | None, gaps: tuple[str, ...]
) -> Legs:
    """The load of each leg by nameplate: general lighting spread evenly over its circuits (practice).

    Of heating and cooling only the heavier counts. ``gaps`` are what may hide a load.
    """
    circuits = counted_circuits(house)
    dwelling = sort_loads(house, draws, circuits, area_ft2)
    lacks = [*gaps, *dwelling.all_lacks()]
    spread = sum(legs_of(house, each) for each in circuits if _shares_lighting(house, each))
    # In whole VA, upwards.
    share = Fraction(ceil((area_ft2 or Fraction(0)) * lighting_va_per_ft2(house.edition) / (spread or 1)))
    idle, on_each = _idle(draws), by_circuit(draws)
    on_legs: dict[str, list[OnLeg]] = {each: [] for each in LEGS}
    for circuit in circuits:
        beside = on_each.get(circuit.id, ())
        for leg, part in _of_circuit(house, beside, circuit, share, idle, lacks):
            on_legs[leg].append(OnLeg(circuit.id, part))
    gathered = tuple(dict.fromkeys(lacks))
    found = []
    for leg, on_it in on_legs.items():
        load = leg_load(tuple(each.part for each in on_it), "VA", house.edition)
        known = load.value or Fraction(0)
        told = lacking(gathered, "VA", load.steps) if gathered else load
        found.append(Leg(leg, tuple(on_it), told, known))
    return Legs(tuple(found), _unbalance(found, gathered))


def _shares_lighting(house: House, circuit: Circuit) -> bool:
    return circuit.record.purpose in GENERAL and not is_outside(house, circuit)


def _idle(draws: Mapping[str, Draw]) -> set[str]:
    """Loads that do not run at the heaviest hour: those barred, and the lesser of heat and cold."""
    kept = together(draws.values())
    heating = [each for each in kept if each.is_ in ("space-heater", "furnace")]
    cooling = [each for each in kept if each.is_ == "air-conditioner"]
    lesser = min((heating, cooling), key=_weight) if heating and cooling else []
    return {each.id for each in draws.values()} - {each.id for each in kept} | {each.id for each in lesser}


def _weight(draws: Sequence[Draw]) -> Fraction:
    return sum((each.volt_amps.value or Fraction(0) for each in draws), Fraction(0))


def _of_circuit(
    house: House,
    draws: Sequence[Draw],
    circuit: Circuit,
    share: Fraction,
    idle: set[str],
    lacks: list[str],
) -> Iterator[tuple[str, LegPart]]:
    breakers = [house.breakers[each] for each in circuit.breakers]
    own = [leg for each in breakers for leg in each.legs]
    by_purpose = Fraction(0)
    if circuit.record.purpose in BY_CIRCUIT:
        by_purpose = amount(f"{circuit.record.purpose} circuit", "load")
    elif _shares_lighting(house, circuit):
        by_purpose = share
    if by_purpose:
        for leg in own:
            if leg is None:
                lacks.append(f"which leg feeds circuit {circuit.id}")
            else:
                yield leg, LegPart(circuit.name, by_purpose)
    covered = is_covered(house, circuit)
    lamps: dict[str, Fraction] = {}
    for draw in draws:
        if draw.id in idle or not counts_by_nameplate(draw, covered):
            continue
        legs = draw.connection.legs or (tuple(filter(None, own)) if len(own) == 1 else ())
        if not legs or draw.amps.value is None:
            lacks.extend(draw.amps.lacks or draw.connection.lacks or (f"which leg feeds {draw.id}",))
            continue
        for leg in legs:
            va = draw.amps.value * LINE_TO_NEUTRAL
            if draw.recorded:
                yield leg, LegPart(words_of(circuit, draw, draws), va, draw.motor is True)
            else:
                lamps[leg] = lamps.get(leg, Fraction(0)) + va
    for leg, va in lamps.items():
        yield leg, LegPart(lamps_of(circuit), va)


def _unbalance(legs: list[Leg], lacks: tuple[str, ...]) -> Worked:
    heavy, light = sorted((each.least_va for each in legs), reverse=True)
    steps: list[Step] = []
    if heavy:
        sum_ = f"({plain(heavy)} − {plain(light)}) / {plain(heavy)} × 100"
        practice = cite("practice", f"Legs differ by no more than {WITHIN_PERCENT} % of the heavier.")
        steps.append(step("difference, in % of the heavier leg", sum_, "%", practice))
    if lacks:
        return lacking(lacks, "%", steps)
    return finished(steps[-1].value if steps else Fraction(0), "%", steps)
