"""What a circuit loses on the way, box by box, as it is plotted against the way from the panel."""

from dataclasses import dataclass

from junctionary.sheets.links import Ref


@dataclass(frozen=True, slots=True)
class DropPoint:
    """A box, so far from the panel along the wire; ``before`` is the point its cable comes from.

    ``before`` is None where it comes from the panel itself. Drops are in percent of the
    nominal voltage, from the panel; None where it cannot be told.
    """

    ref: Ref
    name: str
    before: str | None
    way: float
    recorded: float | None
    design: float | None


@dataclass(frozen=True, slots=True)
class DropPlot:
    """The points branch by branch from the panel, the limit in percent, and what the lines are called.

    ``unit`` is that of ``way``, as the house shows lengths; ``untold`` are the
    boxes that cannot be placed, or whose drop cannot be told.
    """

    title: str
    says: str
    points: tuple[DropPoint, ...]
    limit: float
    limit_words: str
    unit: str
    recorded_words: str
    design_words: str
    untold: tuple[str, ...]
