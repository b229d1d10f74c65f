"""Gathers what can be looked up in a house."""

from collections.abc import Iterable, Iterator

from junctionary.house.dark import FedBy, fed_by
from junctionary.house.model import Box, Breaker, Device, House
from junctionary.house.switching_off import Isolation
from junctionary.records.panels import Surge
from junctionary.records.places import At
from junctionary.records.rooms import Thing
from junctionary.sheets.caution import UNKNOWN
from junctionary.sheets.face_words import face_words
from junctionary.sheets.found import Found
from junctionary.sheets.links import Ref
from junctionary.sheets.makeup import cable_words, device_words
from junctionary.sheets.naming import breaker_words, said, source_words, where
from junctionary.sheets.survey import Survey
from junctionary.units import Quantity

SHEETS = {
    "make-dead": ("Make a box dead", "the list to switch off, then the test"),
    "where-to-look": ("It is dead: where to look", "resets first, then likely places; it trips: what then"),
    "one-more": ("Room for one more", "what is free on a circuit, and whether a cable may start from a box"),
    "outage": ("Outage card", "other sources, and the order to switch in"),
    "notes": ("Safety", "cautions and emergency"),
    "splices": ("Splices and pigtails", "junction boxes, buried and hidden joints, hard to reach first"),
    "panels": ("Panels and sources", "every panel: what feeds it, neutral and ground, subpanels"),
    "circuits": ("Circuits", "every circuit, its breaker, its rooms"),
    "rooms": ("Rooms", "every room, and what feeds it"),
    "boxes": ("Boxes", "every box, where it is and what is in it"),
    "not-recorded": ("Not recorded", "unknown, old, abandoned and untraced wires: what is missing"),
    "terms": ("Terms and symbols", "the words, symbols and colours of these sheets"),
    "history": ("Proof and history", "tests that are due, photographs, inspections, permits, ages, trips"),
    "checklist": ("Stage checklist", "what must be ready for rough-in and final, room by room"),
    "loads": ("Loads", "will the service carry a car charger, a heat pump: the load calculation"),
    "statement": (
        "Statement",
        "for a buyer, a seller, an insurer: permits, wiring type, panel age, open defects",
    ),
    "findings": ("Findings", "known defects and open hazards"),
    "one-line": ("One-line diagram", "service, panels, feeders, wire sizes, as an insurer asks"),
}


def things(survey: Survey) -> tuple[Found, ...]:
    """Everything that can be found, kind by kind, in the order of the record."""
    house = survey.house
    loads = _loads_at(house)
    feeds = {each: fed_by(house, survey.network, each) for each in house.devices}
    return (
        *(_point(survey, each, feeds[each.id], loads.get(each.id, ())) for each in house.devices.values()),
        *_appliances(survey, feeds),
        *_breakers(house),
        *(_box(survey, each) for each in house.boxes.values()),
        *_rooms(house),
        *_circuits(house),
        *_panels(house),
        *_cables(house),
        *(
            Found("sheet", id_, name, says, "", Ref("sheet", id_), (name, says))
            for id_, (name, says) in SHEETS.items()
        ),
    )


def fed_words(fed: FedBy) -> str:
    """The breakers of a device: ``main 17``; ``main 27 by its label``; that none is on record."""
    if not fed.breakers:
        return "breaker not recorded"
    told = breakers_said(fed.breakers)
    doubt = "; in part unknown" if fed.unknown else ""
    return f"{told} by its label{doubt}" if fed.by_label else f"{told}{doubt}"


def breakers_said(breakers: Iterable[str]) -> str:
    """``main 17``, ``main 6 and 8``, ``main 2+4 and shop 1``: a panel is named once."""
    by: dict[str, list[str]] = {}
    for each in breakers:
        panel, _, spaces = each.partition("/")
        by.setdefault(panel, []).append(spaces)
    return ", ".join(
        f"{panel} {', '.join(spaces[:-1]) + ' and ' if spaces[1:] else ''}{spaces[-1]}"
        for panel, spaces in by.items()
    )


def place_of(house: House, box: Box) -> str:
    """Where a box is: ``Kitchen, north wall, 44 in up``."""
    at, room = box.record.at, house.rooms.get(box.room)
    parts = [room.name if room else box.room]
    parts += [box.name] if box.name else []
    if at is not None:
        # Many a name says the wall or the ceiling itself.
        parts += [surface] if (surface := _surface(at)) and surface not in (box.name or "") else []
        parts += [f"{said(house, at.up)} up"] if at.up is not None else []
    return ", ".join(parts)


def _surface(at: At) -> str:
    if at.wall is not None:
        return f"{at.wall} wall"
    return "ceiling" if at.ceiling is not None else "floor" if at.floor is not None else ""


def _point(survey: Survey, device: Device, fed: FedBy, loads: tuple[str, ...]) -> Found:
    house = survey.house
    box = house.boxes[device.box]
    near = (thing.what for thing in _things_at(house, box))
    name = f"{device.id}, {device_words(device)}"
    used = f" ({', '.join(loads)})" if loads else ""
    return Found(
        "point", device.id, f"{name}{used}", place_of(house, box), fed_words(fed), Ref("point", device.id),
        (device.id, name, device.kind.is_, place_of(house, box), *loads, *near),
    )  # fmt: skip


def _loads_at(house: House) -> dict[str, tuple[str, ...]]:
    """By device, the names of what is plugged into it or wired to it."""
    found: dict[str, tuple[str, ...]] = {}
    for circuit in house.circuits.values():
        for load in circuit.loads:
            at = device_at(house, load.plugged or load.wired)
            if at is not None:
                found[at] = (*found.get(at, ()), load.called)
    return found


def device_at(house: House, said_: str | None) -> str | None:
    """The device of a load, also where half of it is named; None where it is not recorded."""
    if said_ is None:
        return None
    return next((each for each in (said_, said_.rpartition(".")[0]) if each in house.devices), None)


def _things_at(house: House, box: Box) -> Iterator[Thing]:
    """What stands along the wall before a box, where both places are recorded."""
    at, room = box.record.at, house.rooms.get(box.room)
    if room is None or at is None or at.wall is None or not isinstance(at.along, Quantity):
        return
    here = at.along.to("ft")
    for thing in room.record.things:
        if thing.wall == at.wall and isinstance(thing.along, Quantity):
            first = thing.along.to("ft")
            width = thing.width.to("ft") if isinstance(thing.width, Quantity) else 0
            if first <= here <= first + width:
                yield thing


def _appliances(survey: Survey, feeds: dict[str, FedBy]) -> Iterator[Found]:
    house = survey.house
    for circuit in house.circuits.values():
        for load in circuit.loads:
            at = device_at(house, load.plugged or load.wired)
            name = load.name or load.is_.replace("-", " ").capitalize()
            if at is not None:
                box = house.boxes[house.devices[at].box]
                place, off, to = f"at {at}, {place_of(house, box)}", fed_words(feeds[at]), Ref("point", at)
            else:
                place, to = f"on {circuit.name}, where is not recorded", Ref("circuit", circuit.id)
                off = breakers_said(circuit.breakers) or "breaker not recorded"
            yield Found("appliance", load.id, name, place, off, to, (load.id, name, load.is_, place))


def feeds_words(house: House, breaker: Breaker) -> str:
    """What a breaker feeds: its circuit or source by name, else what the door card says."""
    if breaker.spaces == ("main",):
        return "the whole panel"
    circuit, source = house.circuits.get(str(breaker.feeds)), house.sources.get(str(breaker.feeds))
    says = circuit.name if circuit else source_words(source) if source else breaker.says
    return says or "what it feeds is not recorded"


def _breakers(house: House) -> Iterator[Found]:
    for each in house.breakers.values():
        feeds = feeds_words(house, each)
        name = f"Breaker {breaker_words(each.id)}: {feeds}"
        # Of a circuit with two breakers each is found by its own half, lest one be taken for the other.
        halved = each.conductor is not None and each.says is not None
        if halved:
            name += f" ({each.conductor}: {each.says})"
        words = (each.id, "breaker", breaker_words(each.id), each.says or "", "" if halved else feeds)
        # The sheet of what it feeds says what goes dark with it; where it stands is told at once.
        known = each.feeds in house.circuits or each.feeds in house.sources
        to = Ref("circuit", str(each.feeds)) if known else Ref("space", each.id)
        yield Found("breaker", each.id, name, face_words(house, each), "", to, words)


def _box(survey: Survey, box: Box) -> Found:
    house = survey.house
    holds = ", ".join(device_words(each) for each in box.devices) or "joints only"
    place = place_of(house, box)
    name = f"Box {box.id}, {holds}"
    kinds = tuple(each.kind.is_ for each in box.devices)
    off = off_words(survey.isolations[box.id])
    return Found("box", box.id, name, place, off, Ref("box", box.id), (box.id, "box", name, place, *kinds))


def off_words(isolation: Isolation) -> str:
    """What must be off before it is opened, in a line; unknown comes before all."""
    breakers = breakers_said(each.id for each in isolation.breakers)
    if isolation.unknown or not isolation.breakers:
        return f"{UNKNOWN}{f'; and {breakers}' if breakers else ''}"
    word = "before opening, off:" if len(isolation.breakers) == 1 else "before opening, ALL off:"
    return f"{word} {breakers}"


def _rooms(house: House) -> Iterator[Found]:
    levels = {each.id: each.name for each in house.record.levels}
    for room in house.rooms.values():
        breakers = dict.fromkeys(
            one for each in room.circuits if each in house.circuits for one in house.circuits[each].breakers
        )
        place = levels.get(room.record.level or "", "level not recorded")
        off = breakers_said(breakers) or "breaker not recorded"
        words = (room.id, room.name, room.record.kind, place)
        yield Found("room", room.id, room.name, place, off, Ref("room", room.id), words)


def _circuits(house: House) -> Iterator[Found]:
    for each in house.circuits.values():
        off = breakers_said(each.breakers) or "breaker not recorded"
        rooms = ", ".join(house.rooms[room].name for room in each.rooms if room in house.rooms)
        words = (each.id, each.name, "circuit", each.record.purpose or "")
        yield Found("circuit", each.id, each.name, rooms, off, Ref("circuit", each.id), words)


def _panels(house: House) -> Iterator[Found]:
    for panel in house.panels.values():
        at = panel.record.at
        room = house.rooms.get(at.room) if at is not None and at.room is not None else None
        place = ", ".join(each for each in (room.name if room else "", where(house, at)) if each)
        also = ("subpanel" if panel.feeder else "", "surge" if isinstance(panel.record.surge, Surge) else "")
        words = (panel.id, panel.name, "panel", "fusebox", "breakerbox", place, *also)
        yield Found("panel", panel.id, panel.name, place, "", Ref("panel", panel.id), words)
    for source in house.sources.values():
        name = source_words(source)
        off = source.shut_off or source.enters
        yield Found(
            "panel", source.id, name, source.is_.replace("-", " "), breaker_words(off) if off else "",
            Ref("circuit", source.id), (source.id, name, source.is_, "source"),
        )  # fmt: skip


def _cables(house: House) -> Iterator[Found]:
    for run in house.runs.values():
        ends = " to ".join(end.id or f"an end {end.kind}" for end in run.ends)
        circuit = house.circuits.get(run.circuit)
        off = (breakers_said(circuit.breakers) if circuit else "") or "breaker not recorded"
        cable = cable_words(run)
        name = f"{run.id}, {cable}"
        yield Found("cable", run.id, name, ends, off, Ref("run", run.id), (run.id, "cable", cable, ends))
