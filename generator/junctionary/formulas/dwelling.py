"""What a dwelling's load calculation starts from, and the parts its methods share (article 220; 120 in 2026).

Loads are in VA. Nothing here rounds: fractions of an ampere are dropped by whoever shows them (220.5(B)).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import Citation, cite_for, cite_in, edition_year
from junctionary.tables import table

VOLTS = 240
"""Nominal volts between the legs of a dwelling's service (220.5(A))."""

TO_NEUTRAL = 120
"""Nominal volts from a leg to the neutral: all there is where a service has one leg."""

Heat = Literal["compressor", "supplement", "central", "separate"]
Leg = Literal["A", "B", "either"]


@dataclass(frozen=True, slots=True)
class Item:
    """One load that is counted by its nameplate; ``va`` is None where that is not recorded.

    ``neutral``: it also loads the neutral, as what runs at 120 V does; ``leg`` is the one it does so
    with, "either" where that is not recorded, None where it is spread over both. ``lacks`` says what
    would tell ``va``, where that is not simply what it draws.
    """

    what: str
    va: Fraction | None
    motor: bool = False
    neutral: bool = False
    leg: Leg | None = None
    lacks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Heater:
    """Heating that may run with the rest of it.

    ``how``: the compressor of a heat pump (and what turns the air), heat that supplements one,
    central heat, or a heater with its own control. ``pieces`` counts those with their own control.
    """

    item: Item
    how: Heat
    pieces: int = 1


@dataclass(frozen=True, slots=True)
class Dwelling:
    """Everything a dwelling's load is worked out from.

    ``area_ft2`` by outside dimensions, None where not recorded, 0 where general lighting is no
    part of it (a feeder to an outbuilding). ``volts`` is nominal, between the legs or, with one
    leg, to the neutral. ``appliances`` are fastened in place, ``others`` are
    not and still have circuits of their own. ``lacks`` are gaps the caller knows of, each of
    which may hide a load.
    """

    area_ft2: Fraction | None = Fraction(0)
    small_appliance: int = 0
    laundry: int = 0
    cooking: tuple[Item, ...] = ()
    dryers: tuple[Item, ...] = ()
    appliances: tuple[Item, ...] = ()
    others: tuple[Item, ...] = ()
    heating: tuple[Heater, ...] = ()
    cooling: tuple[Item, ...] = ()
    chargers: tuple[Item, ...] = ()
    volts: int = VOLTS
    lacks: tuple[str, ...] = ()

    def all_lacks(self) -> tuple[str, ...]:
        """The gaps told, the floor area, and the nameplate of each load that has none."""
        area = ("the floor area, by outside dimensions",) if self.area_ft2 is None else ()
        unread = [
            lack
            for each in self.items()
            if each.va is None
            for lack in each.lacks or (f"what {each.what} draws",)
        ]
        return tuple(dict.fromkeys((*self.lacks, *area, *unread)))

    def items(self) -> tuple[Item, ...]:
        """Every load that is counted by its nameplate."""
        heaters = tuple(each.item for each in self.heating)
        counted = (*self.cooking, *self.dryers, *self.appliances, *self.others)
        return (*counted, *heaters, *self.cooling, *self.chargers)


@dataclass(frozen=True, slots=True)
class DemandLoad:
    """A calculated load by one method: in VA, and in A at the dwelling's voltage.

    ``least_va`` and ``least_a`` are what is certain whatever is not recorded besides;
    they are the load itself where nothing is missing. ``parts`` are the steps that are added up.
    """

    method: str
    edition: str
    va: Worked
    amps: Worked
    least_va: Fraction
    least_a: Fraction
    parts: tuple[Step, ...]


def amount(what: str, column: str) -> Fraction:
    """One of the fixed amounts; raises UnknownKeyError."""
    found = table("dwelling-amounts").number(what, column)
    assert found is not None, f"{what} has no {column}"
    return found


def amount_cite(what: str, edition: str) -> Citation:
    """The clause of a fixed amount, as the edition numbers it."""
    return cite_in(edition, table("dwelling-amounts").row(what).text("clause"))


def lighting_va_per_ft2(edition: str) -> Fraction:
    """General lighting in VA/ft²: 3, and 2 from the 2026 edition."""
    found = Fraction(0)
    for row in table("general-lighting"):
        since, load = row.number("since"), row.number("load")
        if load is not None and since is not None and (not found or since <= edition_year(edition)):
            found = load
    return found


def general_lighting(dwelling: Dwelling, edition: str) -> list[Step]:
    """General lighting, small-appliance and laundry circuits, each as a step."""
    steps = []
    if dwelling.area_ft2:
        each = lighting_va_per_ft2(edition)
        what = f"general lighting and receptacles, {plain(each)} VA/ft²"
        sum_ = f"{plain(dwelling.area_ft2)} × {plain(each)}"
        steps.append(step(what, sum_, "VA", cite_in(edition, "220.41")))
    for count, what in (
        (dwelling.small_appliance, "small-appliance circuit"),
        (dwelling.laundry, "laundry circuit"),
    ):
        if count:
            said = what if count == 1 else f"{count} {what}s"
            sum_ = f"{count} × {plain(amount(what, 'load'))}"
            steps.append(step(said, sum_, "VA", amount_cite(what, edition)))
    return steps


def nameplates(items: Iterable[Item], edition: str, clause: str) -> list[Step]:
    """Each load as a step, at its nameplate; those with none are left out and are among the gaps."""
    cited = cite_in(edition, clause)
    return [step(each.what, plain(each.va), "VA", cited) for each in items if each.va is not None]


def charger_steps(chargers: tuple[Item, ...], edition: str) -> list[Step]:
    """Car chargers, each at the larger of its nameplate and 7200 VA where the edition asks that."""
    cited = cite_for(edition, "220.57")
    if cited is None:
        return [step(each.what, plain(each.va), "VA") for each in chargers if each.va is not None]
    least = plain(amount("car charger", "load"))
    return [
        step(
            f"{each.what}, no less than {least} VA",
            f"max({least}, {plain(each.va or Fraction(0))})",
            "VA",
            cited,
        )
        for each in chargers
    ]


def added(values: Iterable[Step]) -> str:
    """The values of steps as a sum."""
    return " + ".join(plain(each.value) for each in values) or "0"


def closed(
    method: str, clause: str, edition: str, dwelling: Dwelling, steps: list[Step], parts: list[Step]
) -> DemandLoad:
    """The load from its last parts: their total, and what it draws."""
    total = step(f"calculated load, {method}", added(parts), "VA", cite_in(edition, clause))
    draws = step(
        f"at {dwelling.volts} V",
        f"{plain(total.value)} / {dwelling.volts}",
        "A",
        cite_in(edition, "220.5(B)"),
    )
    gaps = dwelling.all_lacks()
    kept = (*steps, total)
    if gaps:
        va, amps = lacking(gaps, "VA", kept), lacking(gaps, "A", [draws])
    else:
        va, amps = finished(total.value, "VA", kept), finished(draws.value, "A", [draws])
    return DemandLoad(method, edition, va, amps, total.value, draws.value, tuple(parts))
