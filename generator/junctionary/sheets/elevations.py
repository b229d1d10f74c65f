"""Builds the elevations of a room, one for each wall of its outline."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import pairwise

from junctionary.house.geometry import Shape, Wall, inches, other_face, spot
from junctionary.house.model import House, Panel, Room
from junctionary.house.routes import Piece, on_wall
from junctionary.records.boxes import BoxSize
from junctionary.records.rooms import Thing
from junctionary.sheets.circuit import Symbol
from junctionary.sheets.elevation import Caution, Elevation, WallBox, WallRun, WallThing
from junctionary.sheets.links import Kind, Link, Phrase, Ref, listed
from junctionary.sheets.makeup import cable_words, symbol_of
from junctionary.sheets.naming import counted
from junctionary.sheets.photo import photos_of_wall
from junctionary.sheets.plans import length_words
from junctionary.sheets.survey import Survey
from junctionary.sheets.titleblock import elevation_number

CEILING_IN = Fraction(96)
"""How high a wall is drawn where its height is not recorded. Practice."""

BESIDE_IN = 8.0
"""How far to each side of a box or a route the caution reaches. Practice: a stud bay is 16 in wide."""

HEIGHTS_IN = {
    "door": (0, 80), "opening": (0, 80), "window": (36, 80), "fireplace": (0, 42), "cabinets": (54, 84),
    "counter": (0, 36), "sink": (28, 36), "cooktop": (34, 36), "range": (0, 36), "basin": (0, 34),
    "tub": (0, 22), "shower": (0, 80), "refrigerator": (0, 68), "washer": (0, 38), "dryer": (0, 38),
    "furnace": (0, 60), "water-heater": (0, 60), "railing": (0, 36),
}  # fmt: skip
"""Foot and head of things whose height is not recorded. Practice."""


def elevations(survey: Survey, room: Room, position: int) -> tuple[Elevation, ...]:
    """Every named wall of the room, clockwise; ``position`` is the room's, for the numbers of the sheets."""
    known = survey.shapes
    if room.id not in known:
        return ()
    shape = known[room.id]
    return tuple(
        _elevation(survey, known, room, shape, wall, position)
        for wall in shape.walls
        if wall == shape.wall(wall.name)
    )


def _elevation(
    survey: Survey, known: Mapping[str, Shape], room: Room, shape: Shape, wall: Wall, position: int
) -> Elevation:
    house = survey.house
    things = tuple(
        each for thing in room.record.things if thing.wall == wall.name and (each := _thing(thing))
    )
    tallest = max((each.up + each.height for each in things), default=0.0)
    height = shape.height_in or max(CEILING_IN, Fraction(tallest) + 12)
    boxes = [*_boxes(house, known, room, wall), *_panels(house, known, room, wall)]
    pieces = on_wall(house, known, survey.routes, room, wall, height)
    runs = [_run(house, piece, behind=False) for piece in pieces]
    behind, behind_runs, others = _behind(survey, known, room, wall, height)
    beside = [each for each in behind if 0 <= each.at[0] <= float(wall.length_in)]
    inside = [each for each in beside if each.at[1] <= float(height)]
    higher = tuple(each.ref.id for each in beside if each not in inside)
    inside_runs = [
        each for each in behind_runs if all(-1 <= x <= float(wall.length_in) + 1 for x, _ in each.points)
    ]
    everything = [*boxes, *inside]
    astray = _astray(house, room, wall, boxes)
    lines = [*runs, *inside_runs]
    return Elevation(
        id=f"wall-{room.id}-{wall.name}".replace(" ", "-"),
        number=elevation_number(position, wall.name or ""),
        title=f"{room.name}, {wall.name} wall",
        says=f"{counted(len(boxes), 'box', 'boxes')} on this face, {counted(len(inside), 'box', 'boxes')} "
        f"on the other; {counted(len({each.ref for each in lines}), 'cable')} drawn, recorded ones solid, "
        "assumed ones dashed. Hatched: do not drill or nail.",
        length=float(wall.length_in),
        height=float(height),
        height_assumed=shape.height_in is None,
        ends=_ends(shape, wall),
        length_words=length_words(house, wall.length_in),
        height_words=length_words(house, height),
        boxes=tuple(everything),
        runs=tuple(lines),
        things=things,
        cautions=tuple(_cautions([*boxes, *beside], lines, float(wall.length_in), float(height))),
        notes=tuple(_notes(house, room, astray, higher, others)),
        astray=astray,
        photos=photos_of_wall(house, room.id, wall.name),
    )


def _boxes(house: House, known: Mapping[str, Shape], room: Room, wall: Wall) -> Iterator[WallBox]:
    for id_ in room.boxes:
        box = house.boxes[id_]
        if box.record.at is None or box.record.at.wall != wall.name:
            continue
        place = spot(box.record.at, known.get(room.id))
        if place is None or place.wall != wall or place.along_in is None or place.up_in is None:
            continue
        if place.along_in > wall.length_in:
            continue
        symbol: Symbol = symbol_of(box.devices[0]) if box.devices else "junction"
        yield WallBox(
            Ref("box", id_),
            id_,
            symbol,
            (size.gangs or 1) if isinstance(size := box.record.size, BoxSize) else 1,
            (float(place.along_in), float(place.up_in)),
            length_words(house, place.along_in),
            length_words(house, place.up_in),
        )


def _panels(house: House, known: Mapping[str, Shape], room: Room, wall: Wall) -> Iterator[WallBox]:
    for id_ in room.panels:
        panel: Panel = house.panels[id_]
        place = spot(panel.record.at, known.get(room.id))
        if place is None or place.wall != wall or place.along_in is None or place.up_in is None:
            continue
        yield WallBox(
            Ref("panel", id_),
            id_,
            "panel",
            1,
            (float(place.along_in), float(place.up_in)),
            length_words(house, place.along_in),
            length_words(house, place.up_in),
        )


def _behind(
    survey: Survey, known: Mapping[str, Shape], room: Room, wall: Wall, height: Fraction
) -> tuple[list[WallBox], list[WallRun], list[str]]:
    """What opens on the other face of this wall, seen through it."""
    house = survey.house
    boxes: list[WallBox] = []
    runs: list[WallRun] = []
    rooms: list[str] = []
    for other, face in other_face(house, known, room, wall):
        rooms.append(other.name)

        def through(x: Fraction, face: Wall = face) -> float:
            return float(wall.along_of(face.at(x)))

        for each in (*_boxes(house, known, other, face), *_panels(house, known, other, face)):
            along = through(Fraction(each.at[0]))
            said = length_words(house, Fraction(along).limit_denominator(16))
            boxes.append(
                WallBox(
                    each.ref, each.name, each.symbol, each.gangs, (along, each.at[1]), said, each.up, True
                )
            )
        for piece in on_wall(house, known, survey.routes, other, face, height):
            moved = tuple((Fraction(through(x)), y) for x, y in piece.points)
            runs.append(_run(house, Piece(piece.run, moved, piece.assumed, piece.way), behind=True))
    return boxes, runs, rooms


def _run(house: House, piece: Piece, *, behind: bool) -> WallRun:
    run = house.runs[piece.run]
    # The wires of a raceway are told on the sheet of the circuit.
    cable = cable_words(run).partition(":")[0].removesuffix(" NM-B")
    return WallRun(
        Ref("run", run.id),
        cable,
        tuple((float(x), float(y)) for x, y in piece.points),
        piece.assumed,
        "plates" in (run.record.protected or ()),
        behind,
        piece.way == "untold",
    )


def _thing(thing: Thing) -> WallThing | None:
    if thing.along is None or thing.width is None:
        return None
    foot, head = HEIGHTS_IN[thing.what]
    low = float(inches(thing.up)) if thing.up is not None else float(foot)
    tall = float(inches(thing.height)) if thing.height is not None else max(float(head) - low, 12.0)
    known = thing.height is not None and (thing.up is not None or not foot)
    hinged = thing.hinged if isinstance(thing.hinged, str) else ""
    near, wide = float(inches(thing.along)), float(inches(thing.width))
    return WallThing(thing.what, near, wide, low, tall, not known, hinged)


def _cautions(
    boxes: Iterable[WallBox],
    runs: Iterable[WallRun],
    length: float,
    height: float,
) -> Iterator[Caution]:
    """Floor to ceiling at every box and every upright of a route; along every other stretch of one.

    A run whose way nothing tells may as well leave its box to either side:
    the whole length of the wall is hatched at the height of that box.
    """
    columns = [each.at[0] for each in boxes]
    rows: dict[tuple[float, float], list[tuple[float, float]]] = {}
    for run in runs:
        if run.untold:
            up = run.points[0][1]
            rows.setdefault((max(0.0, up - BESIDE_IN), min(height, up + BESIDE_IN)), []).append((0.0, length))
        for (x1, y1), (x2, y2) in pairwise(run.points):
            if x1 == x2:
                columns.append(x1)
            else:
                reach = (max(0.0, min(y1, y2) - BESIDE_IN), min(height, max(y1, y2) + BESIDE_IN))
                rows.setdefault(reach, []).append((min(x1, x2), max(x1, x2)))
    spans = sorted((max(0.0, x - BESIDE_IN), min(length, x + BESIDE_IN)) for x in columns)
    for left, right in _joined(spans):
        yield Caution(left, 0.0, right - left, height)
    for (foot, head), along in sorted(rows.items()):
        for left, right in _joined(sorted(along)):
            yield Caution(left, foot, right - left, head - foot)


def _joined(spans: list[tuple[float, float]]) -> Iterator[tuple[float, float]]:
    """Spans that touch or overlap, as one."""
    kept: list[tuple[float, float]] = []
    for left, right in spans:
        if kept and left <= kept[-1][1]:
            kept[-1] = (kept[-1][0], max(kept[-1][1], right))
        elif right > left:
            kept.append((left, right))
    yield from kept


def _ends(shape: Shape, wall: Wall) -> tuple[str, str]:
    """The corners a wall ends in, by the walls it meets there."""
    before = next((each.name for each in shape.walls if each.right == wall.left), None)
    after = next((each.name for each in shape.walls if each.left == wall.right), None)
    return (f"{before or 'left'} corner", f"{after or 'right'} corner")


def _astray(house: House, room: Room, wall: Wall, boxes: list[WallBox]) -> tuple[str, ...]:
    """Boxes told to be on this wall at no place that can be drawn."""
    here = {each.name for each in boxes}
    return tuple(
        id_
        for id_ in room.boxes
        if (at := house.boxes[id_].record.at) is not None and at.wall == wall.name and id_ not in here
    )


def _notes(
    house: House, room: Room, astray: tuple[str, ...], higher: tuple[str, ...], others: list[str]
) -> Iterator[Phrase]:
    if astray:
        yield ("On this wall, but at no place on it that is recorded: ", *_linked("box", astray), ".")
    if higher:
        yield ("On the other face, above the ceiling here: ", *_linked("box", higher), ".")
    passing = [
        run.id
        for run in house.runs.values()
        if room.id in (run.record.through or ()) and not run.record.route
    ]
    if passing:
        yield ("Through this room by a way not recorded: ", *_linked("run", passing), ".")
    if others:
        rooms = " and ".join(dict.fromkeys(others))
        yield (
            f"Its other face is in: {rooms}. What is recorded there is drawn finely, at its height there.",
        )


def _linked(kind: Kind, ids: Sequence[str]) -> Phrase:
    return listed(tuple(Link(each, Ref(kind, each)) for each in ids))
