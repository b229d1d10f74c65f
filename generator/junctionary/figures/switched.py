"""What each switch carries, where its breaker lets through more than the switch is rated for."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.draws import Draw, together
from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Step, step
from junctionary.house.lamps import LampTable
from junctionary.house.model import House
from junctionary.units import Quantity


@dataclass(frozen=True, slots=True)
class SwitchLoad:
    """A switch, its rating and what may run together behind it, in A; ``rating_a`` None where not recorded.

    ``least_a`` is what is certain of the load, ``lacks`` what is missing to know it all.
    """

    switch: str
    draws: tuple[str, ...]
    rating_a: Fraction | None
    least_a: Fraction
    steps: tuple[Step, ...]
    lacks: tuple[str, ...]


def switch_loads(
    house: House, draws: Mapping[str, Draw], lamps: Iterable[LampTable]
) -> tuple[SwitchLoad, ...]:
    """Each switch that governs something and is rated below its breaker, or whose rating is not recorded."""
    at: dict[str, list[Draw]] = {}
    for draw in draws.values():
        for terminal in draw.connection.terminals:
            at.setdefault(terminal, []).append(draw)
    behind: dict[str, dict[str, Draw]] = {}
    for table in lamps:
        for switch in table.switches:
            behind.setdefault(switch, {}).update({each.id: each for each in at.get(table.outlet, ())})
    return tuple(
        _load(house, switch, tuple(found.values()))
        for switch, found in behind.items()
        if found and _may_be_less(house, switch, found.values())
    )


def _may_be_less(house: House, switch: str, draws: Iterable[Draw]) -> bool:
    rating = house.devices[switch].kind.rating
    breakers = {feed.breaker for each in draws for feed in each.connection.feeds}
    ratings = [house.breakers[each].rating for each in breakers]
    known = [each.to("A") for each in ratings if isinstance(each, Quantity)]
    return rating is None or len(known) < len(ratings) or not known or max(known) > rating.to("A")


def _load(house: House, switch: str, draws: tuple[Draw, ...]) -> SwitchLoad:
    kept = together(draws)
    rating = house.devices[switch].kind.rating
    known = [each for each in kept if each.amps.value is not None]
    total = sum((each.amps.value or Fraction(0) for each in known), Fraction(0))
    parts = [step(each.name, plain(each.amps.value or Fraction(0)), "A") for each in known]
    parts.append(step("together", " + ".join(plain(each.value) for each in parts) or "0", "A"))
    return SwitchLoad(
        switch,
        tuple(each.id for each in kept),
        rating.to("A") if rating is not None else None,
        total,
        tuple(parts),
        tuple(dict.fromkeys(lack for each in kept for lack in each.amps.lacks)),
    )
