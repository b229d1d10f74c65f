"""Which stretches of a line are too far from the nearest of some points on it."""

from collections.abc import Iterable
from fractions import Fraction

Interval = tuple[Fraction, Fraction]


def between(breaks: Iterable[Interval], length_in: Fraction) -> list[Interval]:
    """What is left of a closed loop of that length once the breaks are taken out, each as (from, to).

    A stretch that runs over the loop's start ends beyond its length. A loop
    without breaks is one stretch from 0 to its length.
    """
    cut: list[Interval] = []
    for start, end in sorted((start % length_in, start % length_in + (end - start)) for start, end in breaks):
        if cut and start <= cut[-1][1]:
            cut[-1] = (cut[-1][0], max(cut[-1][1], end))
        else:
            cut.append((start, end))
    if not cut:
        return [(Fraction(0), length_in)]
    # The last break may reach over the loop's start into the first.
    over = cut[-1][1] - length_in
    while len(cut) > 1 and over >= cut[0][0]:
        over = max(over, cut.pop(0)[1])
        cut[-1] = (cut[-1][0], over + length_in)
    ends = [(*cut, (cut[0][0] + length_in, Fraction(0)))[index + 1][0] for index in range(len(cut))]
    return [(each[1], end) for each, end in zip(cut, ends, strict=True) if end > each[1]]


def out_of_reach(
    stretch: Interval, points: Iterable[Fraction], reach_in: Fraction, loop_in: Fraction, *, closed: bool
) -> list[Interval]:
    """The parts of a stretch that lie farther than ``reach_in`` from every point that stands on it.

    ``loop_in`` is the length of the loop the stretch is of; ``closed`` where the
    stretch is the whole of it, and reaches over its own ends.
    """
    start, end = stretch
    turns = (-loop_in, Fraction(0), loop_in)
    here = [each + turn for each in points for turn in turns]
    if not closed:
        here = [each for each in here if start <= each <= end]
    left: list[Interval] = []
    at = start
    for point in sorted(here):
        if point - reach_in > at:
            left.append((at, min(point - reach_in, end)))
        at = max(at, point + reach_in)
        if at >= end:
            return left
    return [*left, (at, end)]
