"""What matters, held against what a source of an outage can carry, leg by leg."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.draws import Draw
from junctionary.formulas.circuit_load import Part, connected_load
from junctionary.formulas.worked import Worked
from junctionary.house.network.panel_wiring import LEGS

STARTING = 3
"""What a motor takes at least while it starts, times its running current (practice)."""


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

    ``alone`` are more than the source can carry, whatever else is off; ``starting`` are motors that take
    more than that while they start; ``shared`` are those on one breaker with either, which stays off.
    ``beyond`` are those that no longer fit once all that matters more is on. ``untold`` are those of
    which the draw is not recorded; they may make it less. ``rest_a`` is what all others draw at once on
    the fuller leg.
    """

    rating_a: Fraction
    legs: tuple[LegLoad, ...]
    alone: tuple[Draw, ...]
    starting: tuple[Draw, ...]
    shared: tuple[Draw, ...]
    beyond: tuple[Draw, ...]
    untold: tuple[Draw, ...]
    rest_a: Fraction

    @property
    def left_off(self) -> tuple[Draw, ...]:
        """What is not switched on at all with this source."""
        return (*self.alone, *self.starting, *self.shared)

    @property
    def fits(self) -> bool | None:
        """Whether all of them can run at once; None where what is not recorded decides."""
        if self.left_off or any(each.least_a > self.rating_a for each in self.legs):
            return False
        return None if self.untold else True


def carried(draws: Iterable[Draw], rating_a: Fraction, house: Iterable[Draw] = ()) -> Carried:
    """What a source with that rating on each leg can carry of these loads, the most important first.

    A load of which the leg is not recorded is counted on both. ``house`` are all draws of the house:
    what is fastened in place and too much keeps its breaker off, whether it matters or not.
    """
    kept = tuple(draws)
    too_much = [each for each in dict.fromkeys((*kept, *house)) if not each.plugged]
    too_much = [each for each in too_much if _alone(each, rating_a) or _starts(each, rating_a)]
    known = [each for each in kept if each.amps.value is not None]
    on: Mapping[str, list[Draw]] = {leg: [each for each in known if leg in _legs(each)] for leg in LEGS}
    lacks = [lack for each in kept for lack in each.amps.lacks]
    running = dict.fromkeys(LEGS, Fraction(0))
    alone: list[Draw] = []
    starting: list[Draw] = []
    shared: list[Draw] = []
    beyond: list[Draw] = []
    for each in known:
        amps = each.amps.value or Fraction(0)
        if _alone(each, rating_a):
            alone.append(each)
        elif _starts(each, rating_a):
            starting.append(each)
        elif any(_on_one_breaker(each, other) for other in too_much):
            shared.append(each)
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
        starting=tuple(starting),
        shared=tuple(shared),
        beyond=tuple(beyond),
        untold=tuple(each for each in kept if each.amps.value is None),
        rest_a=max(running.values()),
    )


def _alone(draw: Draw, rating_a: Fraction) -> bool:
    return draw.amps.value is not None and draw.amps.value > rating_a


def _starts(draw: Draw, rating_a: Fraction) -> bool:
    return bool(draw.motor) and draw.amps.value is not None and draw.amps.value * STARTING > rating_a


def _on_one_breaker(one: Draw, other: Draw) -> bool:
    """One circuit, and a leg of it in common: the two halves of a shared neutral have a breaker each."""
    return one.circuit is not None and one.circuit == other.circuit and bool({*_legs(one)} & {*_legs(other)})


def _legs(draw: Draw) -> tuple[str, ...]:
    known = tuple(each for each in draw.connection.legs if each in LEGS)
    return known if len(known) == len(draw.connection.feeds) and known else LEGS
