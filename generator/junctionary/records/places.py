"""Where a thing is: on a wall, in a ceiling, in a floor."""

from junctionary.records.reading import Record
from junctionary.records.values import Height, Id, Length, Point, Text


class At(Record):
    """A place: ``{wall, along, up}``, ``{ceiling: [x, y]}`` or ``{floor: [x, y]}``.

    ``along`` is from the wall's left end as you face it to the centre,
    ``up`` from the finished floor (outside: from grade). ``above`` or
    ``below`` names the room in which the thing really is.
    """

    room: Id | None = None
    wall: Text | None = None
    along: Length | None = None
    up: Height | None = None
    ceiling: Point | None = None
    floor: Point | None = None
    above: Text | None = None
    below: Text | None = None
