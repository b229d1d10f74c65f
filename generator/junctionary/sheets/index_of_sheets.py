"""The index of sheets: what it holds besides the sheets that every manual has, in the order of numbers."""

from collections.abc import Iterator

from junctionary.house.model import House
from junctionary.sheets.cover import IndexLine
from junctionary.sheets.levels import levels_of
from junctionary.sheets.links import Link, Ref
from junctionary.sheets.titleblock import card_number, level_number, panel_number, room_number


def in_order(*lines: IndexLine) -> tuple[IndexLine, ...]:
    """The lines by their numbers."""
    return tuple(sorted(lines, key=lambda each: each.number))


def series(house: House, has_notes: bool) -> Iterator[IndexLine]:
    """Each level and each panel; one line for the series where there are many, as of rooms and boxes."""
    names = {each.id: each.name for each in house.record.levels}
    for position, level in enumerate(levels_of(house), 1):
        yield IndexLine(
            level_number(position), Link(f"Plan, {names[level]}", Ref("level", level)), "its rooms and boxes"
        )
    for position, panel in enumerate(house.panels.values(), 1):
        yield IndexLine(
            panel_number(position), Link(panel.name, Ref("panel", panel.id)), "its face and schedule"
        )
        card = Link(f"{panel.name}, directory card", Ref("card", panel.id))
        yield IndexLine(card_number(position), card, "to print for its door")
    if house.rooms:
        rooms = Ref("sheet", "rooms")
        first, last = room_number(1), room_number(len(house.rooms))
        numbers = first if first == last else f"{first} to {last}"
        yield IndexLine(numbers, Link("Each room", rooms), "plan, what feeds it, what to switch off")
        if any(each.record.outline is not None for each in house.rooms.values()):
            walls = numbers.replace("E-1", "E-2")
            yield IndexLine(
                f"{walls}, by wall", Link("Each wall", rooms), "boxes, cable routes, where not to drill"
            )
    if house.boxes:
        boxes = Ref("sheet", "boxes")
        yield IndexLine(
            "E-5xx-box", Link("Each box", boxes), "make-up, fill, terminations, what to switch off"
        )
    if house.devices:
        find = Ref("sheet", "find")
        yield IndexLine(
            "E-5xx-box.device", Link("Each outlet and switch", find), "what feeds it, what goes dark with it"
        )
    if house.circuits:
        circuits = Ref("sheet", "circuits")
        yield IndexLine("E-62x-space", Link("Each circuit", circuits), "map, match, load, voltage drop")
    if has_notes:
        yield IndexLine("E-011 on", Link("Each note", Ref("sheet", "notes")), "safety and how-to")
    yield IndexLine(
        "E-004-check", Link("Each check", Ref("sheet", "rules")), "what it looks at, on what authority"
    )
