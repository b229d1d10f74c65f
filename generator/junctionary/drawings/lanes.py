"""Routes that share a stretch of a wall, drawn side by side.

Two dashed lines on one another fill each other's gaps and look solid: an
assumed route would pass for a recorded one. So each has a lane of its own
wherever it runs along with another.
"""

from collections.abc import Sequence
from itertools import pairwise

Point = tuple[float, float]


def side_by_side(routes: Sequence[Sequence[Point]], step: float) -> list[list[Point]]:
    """The routes with each upright and each level leg moved to its lane; a slanting leg has none.

    Lanes lie about the line itself, ``step`` apart, or nearer where there are
    more than six. Routes that only meet end to end keep one lane.
    """
    # For each line, upright or level, the lanes of it with the spans taken in each.
    taken: dict[tuple[int, float], list[list[tuple[float, float]]]] = {}
    chosen: list[list[tuple[int, int, float, int]]] = []
    for route in routes:
        ours = []
        for index, (a, b) in enumerate(pairwise(route)):
            if a[0] != b[0] and a[1] != b[1]:
                continue
            # An upright leg keeps its x, axis 0; its lane moves it along that axis.
            axis = 0 if a[0] == b[0] else 1
            span = (min(a[1 - axis], b[1 - axis]), max(a[1 - axis], b[1 - axis]))
            lanes = taken.setdefault((axis, a[axis]), [])
            lane = next((i for i, spans in enumerate(lanes) if not _overlap(span, spans)), len(lanes))
            if lane == len(lanes):
                lanes.append([])
            lanes[lane].append(span)
            ours.append((index, axis, a[axis], lane))
        chosen.append(ours)

    def moved(axis: int, at: float, lane: int) -> float:
        beside = len(taken[axis, at]) - 1
        return at + (lane - beside / 2) * min(step, 6 * step / max(beside, 1))

    done: list[list[Point]] = []
    for route, legs in zip(routes, chosen, strict=True):
        points = [list(each) for each in route]
        for index, axis, at, lane in legs:
            for end in (index, index + 1):
                points[end][axis] = moved(axis, at, lane)
        done.append([(x, y) for x, y in points])
    return done


def _overlap(span: tuple[float, float], others: Sequence[tuple[float, float]]) -> bool:
    return any(span[0] < high and low < span[1] for low, high in others)
