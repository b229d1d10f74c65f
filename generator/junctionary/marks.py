"""Where a value stands in the record: file, line and column.

Everything read from a record remembers its place, so that every message can
say ``file:line:column`` and a page can show the lines behind it.
"""

from typing import Any, NamedTuple


class Place(NamedTuple):
    """One point in one file of a record.

    ``file`` is relative to the record's folder, with forward slashes;
    ``line`` and ``column`` count from 1, the column in characters.
    """

    file: str
    line: int
    column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


class MarkedMap(dict[str, Any]):
    """A mapping that knows where it, its keys and its values stand."""

    __slots__ = ("key_places", "place", "value_places")

    def __init__(self, place: Place) -> None:
        super().__init__()
        self.place = place
        self.key_places: dict[str, Place] = {}
        self.value_places: dict[str, Place] = {}


class MarkedList(list[Any]):
    """A list that knows where it and its items stand."""

    __slots__ = ("item_places", "place")

    def __init__(self, place: Place) -> None:
        super().__init__()
        self.place = place
        self.item_places: list[Place] = []
