"""Which edges of a graph lie on some way between two points that passes no point twice."""

from collections.abc import Sequence


def on_the_way(edges: Sequence[tuple[int, int]], one: int, other: int) -> tuple[int, ...]:
    """The numbers of those edges, in order; none where no way leads from one point to the other.

    They are the edges of the block that an edge drawn between the two would be
    in (Hopcroft and Tarjan's blocks); near-linear in the edges.
    """
    drawn = len(edges)
    at: dict[int, list[tuple[int, int]]] = {one: [], other: []}
    for number, (a, b) in enumerate((*edges, (one, other))):
        at.setdefault(a, []).append((number, b))
        at.setdefault(b, []).append((number, a))
    # The drawn edge is walked first, so that its block is the one that ends with it.
    at[one] = [(drawn, other), *(each for each in at[one] if each[0] != drawn)]
    order, low = {one: 0}, {one: 0}
    taken: list[int] = []
    walked: set[int] = set()
    stack = [(one, iter(at[one]), -1)]
    while stack:
        point, ways, came = stack[-1]
        for number, beyond in ways:
            if number in walked or beyond == point:
                continue
            walked.add(number)
            taken.append(number)
            if beyond in order:
                low[point] = min(low[point], order[beyond])
                continue
            order[beyond] = low[beyond] = len(order)
            stack.append((beyond, iter(at[beyond]), number))
            break
        else:
            stack.pop()
            if stack:
                before = stack[-1][0]
                low[before] = min(low[before], low[point])
                if low[point] >= order[before]:
                    start = taken.index(came)
                    block, taken = taken[start:], taken[:start]
                    if drawn in block:
                        return tuple(sorted(each for each in block if each != drawn))
    return ()
