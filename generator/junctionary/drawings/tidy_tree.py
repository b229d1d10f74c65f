"""A tree in columns and rows: the longest way on stays in line, a branch drops to the first row free for it.

A chain longer than the field has columns goes on in a strip below, headed by
the box where it broke off.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TypeAlias

from junctionary.sheets.circuit import MapNode

Cell: TypeAlias = tuple[int, int]
"""Column and row."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A node in its column and row.

    ``forks``: it has siblings; ``goes_on``: its branches come in a strip
    below; ``carried``: it heads such a strip, and was drawn whole above.
    """

    node: MapNode
    column: int
    row: int
    parent_row: int | None = None
    forks: bool = False
    goes_on: bool = False
    carried: bool = False


def onward_first(node: MapNode) -> list[MapNode]:
    """The branches, the one that goes farthest first; the record's order otherwise."""
    return sorted(node.branches, key=depth, reverse=True)


def depth(node: MapNode) -> int:
    """How many nodes stand in line from this one to its farthest."""
    return 1 + max((depth(branch) for branch in node.branches), default=0)


def even_columns(deep: int, most: int) -> int:
    """Columns for a tree so deep, at most so many: strips of about one length, not a full one and a stump."""
    if deep <= most:
        return deep
    strips = math.ceil((deep - 1) / (most - 1))
    return math.ceil((deep - 1) / strips) + 1


def strips(root: MapNode, columns: int) -> Iterator[tuple[Placed, ...]]:
    """The tree strip by strip, each no wider than so many columns."""
    waiting = [root]
    while waiting:
        head = waiting.pop(0)
        strip, _ = _spread(head, 0, columns)
        if head is not root:
            strip[0] = replace(strip[0], carried=True)
        waiting += [each.node for each in strip if each.goes_on]
        yield tuple(strip)


def _spread(node: MapNode, column: int, columns: int) -> tuple[list[Placed], set[Cell]]:
    """A node at the top of what hangs on it, and every cell that takes, the wires down to branches too."""
    goes_on = bool(node.branches) and column == columns - 1
    placed, taken = [Placed(node, column, 0, goes_on=goes_on)], {(column, 0)}
    row = 0
    for branch in () if goes_on else onward_first(node):
        below, cells = _spread(branch, column + 1, columns)
        above = row
        while any((x, y + row) in taken for x, y in cells):
            row += 1
        taken |= {(x, y + row) for x, y in cells} | {(column + 1, y) for y in range(above, row)}
        forks = len(node.branches) > 1
        placed.append(replace(below[0], row=row, parent_row=0, forks=forks))
        placed += [replace(each, row=each.row + row, parent_row=_lower(each, row)) for each in below[1:]]
    return placed, taken


def _lower(placed: Placed, rows: int) -> int | None:
    return None if placed.parent_row is None else placed.parent_row + rows
