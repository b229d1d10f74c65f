"""The bus of each panel that a solar plant or a battery feeds beside its main."""

from dataclasses import dataclass
from fractions import Fraction

from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, step
from junctionary.house.model import Breaker, House, Panel
from junctionary.house.network import breaker_named
from junctionary.house.panels import MAIN
from junctionary.sources import cite_in
from junctionary.units import Quantity

BESIDE_UTILITY = ("solar", "battery", "vehicle")
"""Kinds of source that feed while the utility does."""
SHARE_PERCENT = 120


@dataclass(frozen=True, slots=True)
class SharedBus:
    """The bus of one panel: what its main and its sources let in together, and what it may bear, in A.

    ``steps`` end in the two sums; ``lacks`` are ratings that are not recorded.
    """

    panel: str
    breakers: tuple[Breaker, ...]
    enters_a: Fraction
    bears_a: Fraction
    steps: tuple[Step, ...]
    lacks: tuple[str, ...]


def shared_buses(house: House) -> tuple[SharedBus, ...]:
    """Each panel into which sources feed that are never parted from its main by an interlock."""
    entering: dict[str, list[Breaker]] = {}
    for source in house.sources.values():
        breaker = breaker_named(house, source.enters) if source.enters else None
        beside = source.is_ in BESIDE_UTILITY
        if beside and breaker is not None and f"{breaker.panel}/{MAIN}" not in breaker.interlocked_with:
            entering.setdefault(breaker.panel, []).append(breaker)
    return tuple(_shared(house, house.panels[each], tuple(found)) for each, found in entering.items())


def _shared(house: House, panel: Panel, breakers: tuple[Breaker, ...]) -> SharedBus:
    feeder = house.circuits.get(panel.feeder or "")
    feeding = [house.breakers[each].rating for each in feeder.breakers] if feeder is not None else []
    supply = [each.to("A") for each in (panel.record.main, *feeding) if isinstance(each, Quantity)]
    sources = [each.rating.to("A") for each in breakers if isinstance(each.rating, Quantity)]
    rating = panel.record.rating
    lacks = [f"the rating of {each.id}" for each in breakers if not isinstance(each.rating, Quantity)]
    if not supply:
        lacks.append(f"the main of panel {panel.id}")
    if not isinstance(rating, Quantity):
        lacks.append(f"the rating of panel {panel.id}")
    if lacks or not isinstance(rating, Quantity):
        return SharedBus(panel.id, breakers, Fraction(0), Fraction(0), (), tuple(lacks))
    clause = cite_in(panel.edition, "705.12")
    enters = step("main and source", " + ".join(map(plain, (min(supply), *sources))), "A", clause)
    bears = step(f"{SHARE_PERCENT} % of the bus", f"{SHARE_PERCENT} % × {plain(rating.to('A'))}", "A", clause)
    return SharedBus(panel.id, breakers, enters.value, bears.value, (enters, bears), ())
