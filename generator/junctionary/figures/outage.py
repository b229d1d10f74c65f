"""What matters, held against what a source of an outage can carry, leg by leg."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.draws import Draw
from junctionary.formulas.circuit_load import Part, connected_load
from junctionary.formulas.worked import Worked
from junctionary.house.network.panel_wiring import LEGS


@dataclass(frozen=True, slots=True)
class LegLoad:
    """What matters on one leg, in A, all at once; where something is not recorded, at least its last step."""

    leg: str
    load: Worked

    @property
    def least_a(self) -> Fraction:
        """What is drawn on the leg at least."""
        return self.load.steps[-1].value


@dataclass(frozen=True, slots=True)
class Carried:
    """Loads in the order in which they matter, held against a rating in A on each leg.

    ``alone`` are more than the source can carry, whatever else is off. ``beyond`` are those that no longer
    fit once all that matters more is on. ``untold`` are those of which the draw is not recorded; they may
    make it less. ``rest_a`` is what all others draw at once on the fuller leg.
    """

    rating_a: Fraction
    legs: tuple[LegLoad, ...]
    alone: tuple[Draw, ...]
    beyond: tuple[Draw, ...]
    untold: tuple[Draw, ...]
    rest_a: Fraction

    @property
    def fits(self) -> bool | None:
        """Whether all of them can run at once; None where what is not recorded decides."""
        if any(each.least_a > self.rating_a for each in self.legs):
            return False
        return None if self.untold else True


def carried(draws: Iterable[Draw], rating_a: Fraction) -> Carried:
    """What a source with that rating on each leg can carry of these loads, the most important first.

    A load of which the leg is not recorded is counted on both.
    """
    kept = tuple(draws)
    known = [each for each in kept if each.amps.value is not None]
    on: Mapping[str, list[Draw]] = {leg: [each for each in known if leg in _legs(each)] for leg in LEGS}
    lacks = [lack for each in kept for lack in each.amps.lacks]
    running = dict.fromkeys(LEGS, Fraction(0))
    alone: list[Draw] = []
    beyond: list[Draw] = []
    for each in known:
        amps = each.amps.value or Fraction(0)
        if amps > rating_a:
            alone.append(each)
        elif any(running[leg] + amps > rating_a for leg in _legs(each)):
            beyond.append(each)
        else:
            running |= {leg: running[leg] + amps for leg in _legs(each)}
    return Carried(
        rating_a=rating_a,
        legs=tuple(
            LegLoad(leg, connected_load([Part(each.amps.steps[-1]) for each in own], lacks))
            for leg, own in on.items()
        ),
        alone=tuple(alone),
        beyond=tuple(beyond),
        untold=tuple(each for each in kept if each.amps.value is None),
        rest_a=max(running.values()),
    )


def _legs(draw: Draw) -> tuple[str, ...]:
    known = tuple(each for each in draw.connection.legs if each in LEGS)
    return known if len(known) == len(draw.connection.feeds) and known else LEGS
