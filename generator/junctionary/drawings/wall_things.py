"""What breaks a wall or stands against it, as it is faced."""

from junctionary.drawings.ink import Lettering, Mark, Stroke, line, rect
from junctionary.drawings.placing import Extent, line_room
from junctionary.drawings.plan_names import name_beside, name_in
from junctionary.drawings.wall_pieces import Piece
from junctionary.sheets.elevation import WallThing


def clipped(at: Extent, frame: Extent) -> Extent | None:
    """The part of an extent that lies within a frame."""
    left, top = max(at[0], frame[0]), max(at[1], frame[1])
    right, bottom = min(at[2], frame[2]), min(at[3], frame[3])
    return (left, top, right, bottom) if left < right and top < bottom else None


def thing_room(thing: WallThing, piece: Piece, frame: Extent) -> Extent | None:
    """What it covers of a piece of its wall."""
    left, right = piece.x(thing.left), piece.x(thing.left + thing.width)
    return clipped((left, piece.y(thing.up + thing.height), right, piece.y(thing.up)), frame)


def edge_room(thing: WallThing, piece: Piece, frame: Extent) -> list[Extent]:
    """The room its four edges take."""
    at = thing_room(thing, piece, frame)
    if at is None:
        return []
    left, top, right, bottom = at
    sides = ((left, top, right, top), (left, bottom, right, bottom))
    posts = ((left, top, left, bottom), (right, top, right, bottom))
    return [each for a, b, c, d in (*sides, *posts) for each in line_room((a, b), (c, d), 1)]


def thing_on_wall(thing: WallThing, piece: Piece, frame: Extent) -> list[Mark]:
    """Its outline; the leaf of a door by two lines that meet at its hinges."""
    at = thing_room(thing, piece, frame)
    if at is None:
        return []
    left, top, right, bottom = at
    weight = "hole" if thing.breaks_wall else "thing"
    kind = f"{weight} dashed-fine" if thing.assumed else weight
    marks: list[Mark] = [rect(left, top, right - left, bottom - top, kind)]
    middle, y = (left + right) / 2, (top + bottom) / 2
    if thing.what == "window" or thing.hinged == "both":
        marks.append(line(middle, top, middle, bottom, "hair"))
    leaves = {"left": ((left, right),), "right": ((right, left),), "both": ((left, middle), (right, middle))}
    for hinge, edge in leaves.get(thing.hinged, ()):
        marks.append(Stroke(f"M{edge:.1f} {top:.1f}L{hinge:.1f} {y:.1f}L{edge:.1f} {bottom:.1f}", "leg"))
    return marks


def name_of_thing(
    thing: WallThing, piece: Piece, frame: Extent, taken: list[Extent], lines: list[Extent]
) -> tuple[Lettering, ...]:
    """What it is, within its outline or close beside it; left to the list where neither has room."""
    at = thing_room(thing, piece, frame)
    if at is None:
        return ()
    left, top, right, bottom = at
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    text = thing.what.replace("-", " ")
    said = name_in(text, corners, "note", taken, lines)
    return said or name_beside(text, corners, "note", [*taken, *lines], frame)
