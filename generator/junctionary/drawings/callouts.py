"""Callouts: blocks of words one under another, each as near its mark as its neighbours allow."""

from collections.abc import Sequence


def spread(middles: Sequence[float], heights: Sequence[float], top: float, bottom: float) -> list[float]:
    """The upper edge of each block, in order, so that none overlaps and the displacements squared are least.

    ``middles`` are where the blocks would have their middles. All keep
    between top and bottom as long as they fit there; else they run on below.
    """
    before = [sum(heights[:index]) for index in range(len(heights))]
    wanted = [
        middle - height / 2 - offset for middle, height, offset in zip(middles, heights, before, strict=True)
    ]
    pools: list[tuple[float, int]] = []
    for value in wanted:
        pools.append((value, 1))
        # Blocks that would overlap move together, to the mean of what each wants.
        while len(pools) > 1 and pools[-2][0] > pools[-1][0]:
            (one, many), (other, more) = pools[-2:]
            pools[-2:] = [((one * many + other * more) / (many + more), many + more)]
    lowest = max(top, bottom - sum(heights))
    shifts = [min(max(value, top), lowest) for value, count in pools for _ in range(count)]
    return [shift + offset for shift, offset in zip(shifts, before, strict=True)]
