"""Builds the sheet of a room."""

from collections.abc import Iterator
from fractions import Fraction

from junctionary.house.model import Box, House, Room
from junctionary.records.rooms import Thing
from junctionary.records.values import NONE
from junctionary.sheets.elevations import BESIDE_IN, elevations
from junctionary.sheets.entries import Fact, Row, Table
from junctionary.sheets.isolation import before_room
from junctionary.sheets.links import Link, Phrase, Ref, joints, listed, plain
from junctionary.sheets.makeup import cable_words, device_words, makeup_words
from junctionary.sheets.naming import (
    NOT_RECORDED,
    breaker_link,
    circuit_link,
    end_link,
    natural,
    recorded,
    room_link,
    said,
    several,
    where,
)
from junctionary.sheets.plans import length_words, room_plan
from junctionary.sheets.room import RoomSheet
from junctionary.sheets.survey import (
    Survey,
    boxes_known,
    edition_words,
    excerpts,
    in_fewer,
    known_words,
    sentence,
    title,
)
from junctionary.sheets.titleblock import room_number


def room_sheet(survey: Survey, room_id: str) -> RoomSheet:
    """The sheet of one room."""
    house = survey.house
    room = house.rooms[room_id]
    ref = Ref("room", room_id)
    missing = survey.missing_at.get(ref, ())
    position = list(house.rooms).index(room_id) + 1
    number = room_number(position)
    walls = elevations(survey, room, position)
    known_by = boxes_known(house.boxes[each] for each in room.boxes)
    return RoomSheet(
        title=title(survey, room.name, number, known_words(known_by, len(missing))),
        ref=ref,
        heading=room.name,
        lead=_lead(house, room),
        before=before_room(survey, room_id),
        facts=tuple(_facts(house, room)),
        boxes=Table(
            ("box", "where", "holds", "fed by", "made up"),
            tuple(box_row(survey, house.boxes[each]) for each in room.boxes),
        ),
        fed_by=_fed_by(house, room),
        things=_things(house, room),
        passes=_passes(house, room),
        plan=room_plan(survey, room),
        walls=tuple(each for each in walls if not each.is_bare),
        bare=tuple(each.title.removeprefix(f"{room.name}, ") for each in walls if each.is_bare),
        reach=length_words(house, Fraction(BESIDE_IN)),
        findings=survey.findings_at.get(ref, ()),
        today=survey.today_at.get(ref, ()),
        missing=in_fewer(missing),
        excerpts=excerpts(survey, room.place),
    )


def box_row(survey: Survey, box: Box, *before: Phrase) -> Row:
    """A box in a schedule; ``before`` are cells between its id and where it is."""
    house = survey.house
    held = [device_words(each).split(",")[0] for each in box.devices]
    holds = ", ".join(several(held.count(each), each) for each in dict.fromkeys(held))
    made = "unknown" if box.makeup_unknown else NOT_RECORDED if box.makeup_unrecorded else "written out"
    return Row(
        (
            (Link(box.id, Ref("box", box.id)), f" {box.name}" if box.name else ""),
            *before,
            (where(house, box.record.at),),
            (holds or "no device",),
            fed_by(house, box.circuits),
            (makeup_words(box) or made,),
        )
    )


def fed_by(house: House, circuits: tuple[str, ...]) -> Phrase:
    """Circuits with their breakers: ``Den receptacles (main 14)``."""
    pieces: list[str | Link] = []
    names = tuple(circuit_link(house, each) for each in circuits)
    comma, _ = joints(plain((each,)) for each in names)
    for index, (circuit, name) in enumerate(zip(circuits, names, strict=True)):
        pieces += [comma, name] if index else [name]
        breakers = house.circuits[circuit].breakers if circuit in house.circuits else ()
        if breakers:
            pieces += [" (", *listed(tuple(breaker_link(each) for each in breakers), "+"), ")"]
    return tuple(pieces) or (NOT_RECORDED,)


def _lead(house: House, room: Room) -> Phrase:
    level = next(
        (each.name for each in house.record.levels if each.id == room.record.level), "level not recorded"
    )
    held = recorded(len(room.boxes), "box", "boxes")
    return (f"{sentence(level)} ", sentence(f"{held}, {recorded(len(room.circuits), 'circuit')}"))


def _facts(house: House, room: Room) -> Iterator[Fact]:
    record = room.record
    yield Fact("kind", (record.kind,))
    yield Fact("ceiling", (said(house, record.ceiling),))
    if record.outline:
        corners = "; ".join(", ".join(said(house, each) for each in point) for point in record.outline)
        yield Fact("outline", (corners,))
    yield Fact("finished", (said(house, record.finished),))
    if record.ambient is not None:
        yield Fact("temperature", (said(house, record.ambient),))
    yield Fact("stage", (room.stage or NOT_RECORDED,))
    yield Fact("judged by", (edition_words(room.edition),))
    for bundle in record.bundles:
        runs = listed(tuple(Link(each, Ref("run", each)) for each in bundle.runs))
        yield Fact(f"runs together, {bundle.id}", (f"{bundle.is_}: ", *runs))
    for panel in room.panels:
        yield Fact("panel", (Link(house.panels[panel].name, Ref("panel", panel)),))
    if record.note:
        yield Fact("note", (record.note,))


def _fed_by(house: House, room: Room) -> Table:
    rows = []
    for id_ in room.circuits:
        circuit = house.circuits[id_]
        here = sorted((each for each in circuit.boxes if each in room.boxes), key=natural)
        breakers = listed(tuple(breaker_link(each) for each in circuit.breakers)) or (NOT_RECORDED,)
        boxes = listed(tuple(Link(each, Ref("box", each)) for each in here)) or ("none recorded",)
        rows.append(Row((breakers, (circuit_link(house, id_),), boxes)))
    return Table(("breaker", "circuit", "boxes here"), tuple(rows))


def _things(house: House, room: Room) -> Table:
    rows = []
    for thing in room.record.things:
        to: Phrase = (room_link(house, thing.to),) if isinstance(thing.to, str) else ("",)
        to = (*to, *_swing(room, thing))
        rows.append(
            Row(
                (
                    (thing.what,),
                    (f"{thing.wall} wall",),
                    (said(house, thing.along),),
                    (said(house, thing.width),),
                    to,
                )
            )
        )
    return Table(("what", "on", "from its left end", "width", "to"), tuple(rows))


def _swing(room: Room, thing: Thing) -> Phrase:
    """How a door hangs and which way it opens, as far as the record tells."""
    side = {"left": "hinged on the left", "right": "hinged on the right", "both": "a pair"}
    hung = "slides" if thing.hinged is NONE else side.get(str(thing.hinged), "")
    into = thing.swings_into
    if not isinstance(into, str):
        return (f", {hung}",) if hung else ()
    opens = "swings into this room" if into == room.id else "swings out of it"
    return (", ".join(("", *filter(None, (hung, opens)))),)


def _passes(house: House, room: Room) -> Table:
    """Runs told to pass here: through a box of the room, by their route, or by the room's name."""
    here = {
        run.id: run
        for run in house.runs.values()
        if room.id in (run.record.through or ())
        or any(point.room == room.id for point in run.record.route or ())
        or any(each.run == run.id for box in room.boxes for each in house.boxes[box].passing)
    }
    rows = [
        Row(
            (
                (Link(run.id, Ref("run", run.id)),),
                (cable_words(run),),
                (end_link(house, run.from_),),
                (end_link(house, run.to),),
                (circuit_link(house, run.circuit),),
            )
        )
        for run in here.values()
        if not any(end.id in room.boxes for end in run.ends)
    ]
    return Table(("run", "cable", "from", "to", "circuit"), tuple(rows))
