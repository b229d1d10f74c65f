"""Builds the plan of a room and the plan of a level."""

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from junctionary.house.geometry import Shape, Spot, inches, other_face, spot
from junctionary.house.model import Box, House, Panel, Room
from junctionary.records.rooms import Thing
from junctionary.sheets.circuit import Symbol
from junctionary.sheets.legend import SYMBOLS
from junctionary.sheets.links import Phrase, Ref, listed
from junctionary.sheets.makeup import symbol_of
from junctionary.sheets.naming import breaker_link, breaker_words, circuit_link, counted, link
from junctionary.sheets.plan import (
    HomeRun,
    Inches,
    Plan,
    PlanBox,
    PlanCircuit,
    PlanFixture,
    PlanRoom,
    PlanSide,
    PlanWire,
)
from junctionary.sheets.plan_gaps import gaps
from junctionary.sheets.plan_reach import out_of_reach
from junctionary.sheets.survey import Survey
from junctionary.units import Quantity, show_as

DEPTHS_IN = {
    "counter": 25, "cooktop": 22, "range": 26, "refrigerator": 30, "basin": 20, "tub": 30, "shower": 36,
    "washer": 28, "dryer": 28, "furnace": 28, "water-heater": 24, "fireplace": 20, "railing": 3, "sink": 20,
}  # fmt: skip
"""How deep a thing is taken to be where its depth is not recorded. Practice."""

USUAL_UP_IN = {"receptacle": (12, 20), "switch": (42, 50)}
"""Heights that need no note beside the symbol. Practice."""

PATTERNS = 6
"""How many patterns of line there are; the number tells circuits apart where patterns come round again."""


def room_plan(survey: Survey, room: Room) -> Plan | None:
    """The plan of one room; None where its outline is not recorded."""
    house = survey.house
    known = survey.shapes
    if room.id not in known:
        return None
    shape = known[room.id]
    boxes = [house.boxes[each] for each in room.boxes]
    panels = [house.panels[each] for each in room.panels]
    numbers = circuit_numbers(house)
    placed, unplaced = boxes_placed(house, known, boxes, panels, numbers)
    names = {each.name for each in placed}
    joined = {
        house.runs[each.run.id].circuit for each in _wires(house, names, dict.fromkeys(room.circuits, 0))
    }
    # Circuits whose line is drawn come first, so that their patterns differ.
    ordered = sorted(room.circuits, key=lambda each: each not in joined)
    patterns = {each: index % PATTERNS for index, each in enumerate(ordered)}
    return Plan(
        id=f"plan-{room.id}",
        title=f"Plan of {room.name}",
        says=f"{counted(len(placed), 'box or panel', 'boxes and panels')} on the plan of {room.name}, "
        f"{counted(len(patterns), 'circuit')}; each box leads to its sheet.",
        rooms=(
            PlanRoom(
                Ref("room", room.id),
                room.name,
                corners(shape.outline),
                unbuilt=tuple(_unbuilt(house, known, room, shape)),
            ),
        ),
        gaps=gaps(known, (room, *_beside(house, known, room))),
        fixtures=tuple(fixtures(room, shape)),
        boxes=placed,
        wires=tuple(_wires(house, names, patterns)),
        home_runs=tuple(home_runs(house, known, names, patterns)),
        controls=tuple(each for each in survey.controls if set(each) <= names),
        circuits=tuple(
            PlanCircuit(numbers[each], pattern, _circuit_words(house, each))
            for each, pattern in patterns.items()
        ),
        sides=tuple(
            PlanSide(_point(each.left), _point(each.right), length_words(house, each.length_in))
            for each in shape.walls
        ),
        far=tuple(out_of_reach(survey, room, shape)),
        north_deg=north_deg(house),
        scale=scale_steps(house),
        unplaced=unplaced,
        signs=signs_of(placed),
    )


def signs_of(boxes: Iterable[PlanBox]) -> tuple[tuple[Symbol, str], ...]:
    """The symbols of these boxes with what they mean, in the order of the legend.

    A receptacle that guards is drawn as any other, with its letters beside it.
    """
    used = {"receptacle" if each == "gfci" else each for box in boxes for each in box.symbols}
    return tuple((symbol, means) for symbol, means in SYMBOLS.items() if symbol in used)


def circuit_numbers(house: House) -> dict[str, str]:
    """A circuit by its space: ``6``, ``2+4``; with its panel's name where that is not the first panel."""
    first = next(iter(house.panels), None)
    numbers = {}
    for circuit in house.circuits.values():
        named = [
            (spaces if panel == first else f"{panel} {spaces}")
            for panel, _, spaces in (each.partition("/") for each in circuit.breakers)
        ]
        numbers[circuit.id] = ", ".join(named) or "?"
    return {**{each: each for each in house.sources}, **numbers}


def _circuit_words(house: House, circuit: str) -> Phrase:
    breakers = house.circuits[circuit].breakers if circuit in house.circuits else ()
    fed = listed(tuple(breaker_link(each) for each in breakers)) or ("breaker not recorded",)
    return (circuit_link(house, circuit), " (", *fed, ")")


def boxes_placed(
    house: House,
    known: Mapping[str, Shape],
    boxes: Iterable[Box],
    panels: Iterable[Panel],
    numbers: Mapping[str, str],
) -> tuple[tuple[PlanBox, ...], tuple[Phrase, ...]]:
    """What can be placed, and what cannot, with the reason."""
    placed: list[PlanBox] = []
    unplaced: list[Phrase] = []
    for box in boxes:
        at = box.record.at
        place = spot(at, known.get((at.room if at else None) or box.room))
        if place is None:
            unplaced.append((link(house, box.id), f": {_why(at is None)}"))
            continue
        placed.append(
            PlanBox(
                Ref("box", box.id),
                box.id,
                _symbols(box),
                _point(place.point),
                _inward(place),
                tuple(numbers.get(each, each) for each in box.circuits),
                tuple(_notes(house, box, place)),
            )
        )
    for panel in panels:
        place = spot(panel.record.at, known.get((panel.record.at.room if panel.record.at else None) or ""))
        if place is None:
            unplaced.append((link(house, panel.id), f": {_why(panel.record.at is None)}"))
            continue
        placed.append(
            PlanBox(Ref("panel", panel.id), panel.id, ("panel",), _point(place.point), _inward(place))
        )
    return tuple(placed), tuple(unplaced)


def _why(nothing_told: bool) -> str:
    return "place not recorded" if nothing_told else "the wall or the distance along it is not recorded"


def _symbols(box: Box) -> tuple[Symbol, ...]:
    if not box.devices:
        return ("unknown",) if box.makeup_unknown else ("junction",)
    return tuple(symbol_of(each) for each in box.devices)


def _notes(house: House, box: Box, place: Spot) -> Iterator[str]:
    symbols = _symbols(box)
    if "gfci" in symbols:
        yield "GF"
    if box.record.exposed == "wet" or box.record.cover == "in-use":
        yield "WP"
    sort = "switch" if all(each.startswith("switch") for each in symbols) else "receptacle"
    low, high = USUAL_UP_IN[sort]
    if place.up_in is not None and not low <= place.up_in <= high:
        yield f"+{height_figure(house, place.up_in)}"


def height_figure(house: House, up_in: Fraction) -> str:
    """A height as a bare figure, in inches or in centimetres, as the house shows lengths."""
    value = up_in if house.record.shows == "imperial" else up_in * Fraction("2.54")
    return f"{float(value):.4g}" if house.record.shows == "imperial" else f"{float(value):.0f}"


def length_words(house: House, length_in: Fraction) -> str:
    """A length in inches in the words of this house."""
    return show_as(Quantity(length_in, "in", "length"), house.record.shows)


def north_deg(house: House) -> float | None:
    """How far north lies clockwise from the plan's up; None where it is not recorded."""
    return float(house.record.north.to("deg")) if house.record.north is not None else None


def scale_steps(house: House) -> tuple[tuple[float, str], ...]:
    """The lengths a scale bar may show, in inches, longest first."""
    if house.record.shows == "imperial":
        return ((240.0, "20 ft"), (120.0, "10 ft"), (60.0, "5 ft"), (24.0, "2 ft"))
    return ((196.85, "5 m"), (78.74, "2 m"), (39.37, "1 m"))


def _beside(house: House, known: Mapping[str, Shape], room: Room) -> Iterator[Room]:
    """Rooms of the same level, whose doors may stand in this room's walls."""
    for other in house.rooms.values():
        if other.id != room.id and other.record.level == room.record.level and other.id in known:
            yield other


def _unbuilt(
    house: House, known: Mapping[str, Shape], room: Room, shape: Shape
) -> Iterator[tuple[Inches, Inches]]:
    """Where no room stands along the outline of a garden."""
    for wall in shape.walls if room.record.kind == "outdoors" else ():
        built = sorted(
            tuple(sorted((wall.along_of(face.left), wall.along_of(face.right))))
            for other, face in other_face(house, known, room, wall)
            if other.record.kind != "outdoors"
        )
        at = Fraction(0)
        for low, high in [*built, (wall.length_in, wall.length_in)]:
            if low > at:
                yield _point(wall.at(at)), _point(wall.at(low))
            at = max(at, high)


def fixtures(room: Room, shape: Shape) -> Iterator[PlanFixture]:
    """What stands along the walls of a room or free in it."""
    # What stands on a counter is drawn over it.
    for thing in sorted(room.record.things, key=lambda each: each.what != "counter"):
        fixture = _fixture(thing, shape)
        if fixture is not None:
            yield fixture
    for island in room.record.islands:
        around = tuple((float(inches(x)), float(inches(y))) for x, y in island.outline)
        yield PlanFixture(island.name or "island", around, assumed=False)


def _fixture(thing: Thing, shape: Shape) -> PlanFixture | None:
    """The thing seen from above, its back to the wall; hung cabinets are left to the elevations."""
    wall = shape.wall(thing.wall)
    if wall is None or thing.along is None or thing.width is None:
        return None
    if thing.depth is None and thing.what not in DEPTHS_IN:
        return None
    depth = float(inches(thing.depth)) if thing.depth is not None else float(DEPTHS_IN[thing.what])
    near = inches(thing.along)
    (x1, y1), (x2, y2) = _point(wall.at(near)), _point(wall.at(near + inches(thing.width)))
    dx, dy = -wall.facing[0], -wall.facing[1]
    # A sink stands in its counter, a hand's breadth from the wall.
    off = 3.0 if thing.what == "sink" else 0.0
    deep = depth - off
    seen = (
        (x1 + dx * off, y1 + dy * off),
        (x2 + dx * off, y2 + dy * off),
        (x2 + dx * deep, y2 + dy * deep),
        (x1 + dx * deep, y1 + dy * deep),
    )
    return PlanFixture(thing.what, seen, thing.depth is None)


def _wires(house: House, names: set[str], patterns: Mapping[str, int]) -> Iterator[PlanWire]:
    for run in house.runs.values():
        start, end = (each.id for each in run.ends)
        if any(each.kind != "box" or each.id not in names for each in run.ends) or start == end:
            continue
        if run.circuit in patterns:
            yield PlanWire(Ref("run", run.id), str(start), str(end), patterns[run.circuit])


def home_runs(
    house: House, known: Mapping[str, Shape], names: set[str], patterns: Mapping[str, int]
) -> Iterator[HomeRun]:
    """Runs from these boxes to a panel, with the breaker at their other end."""
    numbers = circuit_numbers(house)
    for run in house.runs.values():
        for near, far in (run.ends, run.ends[::-1]):
            if near.kind == "panel" and far.kind == "box" and far.id in names and near.id:
                at = house.panels[near.id].record.at
                place = spot(at, known.get((at.room if at else None) or ""))
                circuit = house.circuits.get(run.circuit)
                ours = [
                    breaker_words(each)
                    for each in (circuit.breakers if circuit else ())
                    if house.breakers[each].panel == near.id
                ]
                yield HomeRun(
                    Ref("run", run.id),
                    str(far.id),
                    " + ".join(ours) or str(near.id),
                    numbers.get(run.circuit, str(near.id)),
                    _point(place.point) if place else None,
                    patterns.get(run.circuit, 0),
                )


def corners(outline: Iterable[tuple[Fraction, Fraction]]) -> tuple[Inches, ...]:
    """The corners of an outline, in inches."""
    return tuple(map(_point, outline))


def _point(point: tuple[Fraction, Fraction]) -> Inches:
    return (float(point[0]), float(point[1]))


def _inward(place: Spot) -> Inches | None:
    return (-place.wall.facing[0], -place.wall.facing[1]) if place.wall is not None else None
