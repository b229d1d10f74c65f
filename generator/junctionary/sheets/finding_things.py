"""Gathers what can be looked up in a house."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from junctionary.house.dark import FedBy, fed_by
from junctionary.house.model import Box, Breaker, Device, House
from junctionary.house.resets import Reset
from junctionary.house.supply import Supply
from junctionary.house.switching_off import Isolation
from junctionary.records.panels import Surge
from junctionary.records.rooms import Thing
from junctionary.sheets.caution import UNKNOWN
from junctionary.sheets.face_words import face_place, face_words, panel_words
from junctionary.sheets.found import Found
from junctionary.sheets.links import Ref, in_a_row
from junctionary.sheets.makeup import cable_words, device_words, plain_words
from junctionary.sheets.naming import breaker_words, said, source_words, surface, where
from junctionary.sheets.resets import resets_for
from junctionary.sheets.second_sources import sources_off, stopping
from junctionary.sheets.spoken import breakers_spoken
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

ASKED_FOR = {
    "make-dead": "turn shut switch off, isolate, lock out, de-energize, replace, change, swap, open",
    "where-to-look": "not working, no power, lost, broken, tripped, trips, tripping, fault, troubleshoot",
    "one-more": "add an outlet, a light, extend, another, extra, overload, capacity, spare, heater",
    "outage": "power failure, blackout, generator, storm, utility, backup, main switch",
    "notes": "emergency, fire, smoke, smell, burning, shock, spark, buzzing, flood, help, danger",
    "rooms": "floor plan, house, everything",
    "terms": "legend, meaning, abbreviation",
}
"""What people type who want one of these sheets, and no heading says."""

PLAIN = {
    "receptacle": "outlet",
    "gfci-receptacle": "outlet",
    "luminaire": "light",
}
"""What everybody calls a kind of device; as good as the trade's word."""

MAIN_SWITCH = "main switch, main disconnect, shut off, master, whole house, everything"


def things(survey: Survey, supply: Supply) -> tuple[Found, ...]:
    """Everything that can be found, kind by kind, in the order of the record."""
    house = survey.house
    loads = _loads_at(house)
    fed = {each: _fed(survey, supply, each) for each in house.devices}
    worked = _worked(survey)
    return (
        *(
            _point(survey, each, fed[each.id], loads.get(each.id, ()), worked.get(each.id, ()))
            for each in house.devices.values()
        ),
        *_appliances(survey, fed),
        *_breakers(house),
        *(_box(survey, each) for each in house.boxes.values()),
        *_rooms(house),
        *_circuits(house),
        *_panels(house),
        *_cables(house),
        *(
            Found(
                "sheet", id_, name, says, "", Ref("sheet", id_), (name, ASKED_FOR.get(id_, "")), (), (says,)
            )
            for id_, (name, says) in SHEETS.items()
        ),
    )


@dataclass(frozen=True, slots=True)
class _Fed:
    """What feeds a device, and what to reset first, in words."""

    off: str
    reset: str


def _fed(survey: Survey, supply: Supply, device: str) -> _Fed:
    house, fed = survey.house, fed_by(survey.house, survey.network, device)
    at = face_place(house.breakers[fed.breakers[0]]) if len(fed.breakers) == 1 else ""
    told = breakers_spoken(house, fed.breakers)
    off = _with_doubts(fed, f"{told}, {at}" if at else told)
    resets = resets_for(house, survey.network, supply, device)
    return _Fed(off, _first_reset(house, device, resets))


def _first_reset(house: House, device: str, resets: Iterable[Reset]) -> str:
    """The GFCI device to try first, or the breaker that does its work; nothing where there is neither."""
    for each in resets:
        if each.kind == "gfci" and each.id == device:
            return "Dead? First press its own reset."
        if each.kind == "gfci":
            return f"Dead? First reset {each.id}: {place_of(house, house.boxes[house.devices[each.id].box])}."
        if each.kind == "breaker" and "gfci" in (house.breakers[each.id].guards or ()):
            return "Dead? First its breaker, which is a GFCI too: fully off, then on."
    return ""


def fed_words(fed: FedBy) -> str:
    """The breakers of a device: ``main 17``; ``main 27, by its label``; that none is on record."""
    return _with_doubts(fed, breakers_said(fed.breakers))


def _with_doubts(fed: FedBy, told: str) -> str:
    if not fed.breakers:
        return "breaker not recorded"
    doubt = "; in part unknown" if fed.unknown else ""
    return f"{told}, by its label{doubt}" if fed.by_label else f"{told}{doubt}"


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
        parts += filter(None, [surface(at, box.name)])
        parts += [f"{said(house, at.up)} up"] if at.up is not None else []
    return ", ".join(parts)


def _worked(survey: Survey) -> dict[str, tuple[str, ...]]:
    """By switch, the devices it works, as far as the record tells."""
    found: dict[str, dict[str, None]] = {}
    for each in survey.figures.lamps:
        for switch in each.switches:
            found.setdefault(switch, {})[each.device] = None
    return {switch: tuple(devices) for switch, devices in found.items()}


def _point(
    survey: Survey, device: Device, fed: _Fed, loads: tuple[str, ...], worked: tuple[str, ...]
) -> Found:
    house = survey.house
    box = house.boxes[device.box]
    near = tuple(thing.what for thing in _things_at(house, box))
    used = f" ({', '.join(loads)})" if loads else ""
    if worked:
        used = f" (works {'; '.join(dict.fromkeys(_called(house, each) for each in worked))})"
        near = (*near, *(PLAIN.get(house.devices[each].kind.is_, "") for each in worked))
    return Found(
        "point", device.id, f"{device.id}, {plain_words(device)}{used}", place_of(house, box), fed.off,
        Ref("point", device.id),
        (device.id, device_words(device), device.kind.is_, PLAIN.get(device.kind.is_, ""), *loads),
        room_words(house, box.room), (*_near(house, box), *near, used), fed.reset,
    )  # fmt: skip


def _called(house: House, device: str) -> str:
    """A device by its room and its box's name: ``Front porch, porch lamp``."""
    box = house.boxes[house.devices[device].box]
    room = house.rooms[box.room].name if box.room in house.rooms else box.room
    return f"{room}, {box.name}" if box.name else f"{device}, {room}"


def room_words(house: House, id_: str) -> tuple[str, ...]:
    """What a room is called: its name, and what kind of room it is."""
    room = house.rooms.get(id_)
    return (room.name, room.record.kind or "") if room else (id_,)


def _near(house: House, box: Box) -> tuple[str, ...]:
    """Where in its room a box is, and on which level."""
    room = house.rooms.get(box.room)
    levels = (each.name for each in house.record.levels if room and each.id == room.record.level)
    return (place_of(house, box).partition(", ")[2], *(each for each in levels if each))


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


def _appliances(survey: Survey, fed: dict[str, _Fed]) -> Iterator[Found]:
    house = survey.house
    for circuit in house.circuits.values():
        for load in circuit.loads:
            at = device_at(house, load.plugged or load.wired)
            name = load.name or load.is_.replace("-", " ").capitalize()
            if at is not None:
                box = house.boxes[house.devices[at].box]
                place, to, told = f"at {at}, {place_of(house, box)}", Ref("point", at), fed[at]
                room, near = room_words(house, box.room), (at, *_near(house, box))
            else:
                place, to = f"on {circuit.name}, where is not recorded", Ref("circuit", circuit.id)
                told = _Fed(_breakers_of(house, circuit.breakers), "")
                room, near = (circuit.name,), ()
            kinds = (load.id, name, load.is_)
            yield Found("appliance", load.id, name, place, told.off, to, kinds, room, near, told.reset)


def _breakers_of(house: House, breakers: Iterable[str]) -> str:
    return breakers_spoken(house, breakers) or "breaker not recorded"


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
        called = breakers_spoken(house, (each.id,)).removeprefix("the ")
        name = f"{called[0].upper()}{called[1:]}: {feeds}"
        # Of a circuit with two breakers each is found by its own half, lest one be taken for the other.
        halved = each.conductor is not None and each.says is not None
        if halved:
            name += f" ({each.conductor}: {each.says})"
        main = each.spaces == ("main",)
        also = MAIN_SWITCH if main else ""
        # Who asks for the main switch asks where its panel is.
        place = panel_words(house, each.panel) if main else face_words(house, each)
        words = (each.id, "breaker", breaker_words(each.id), each.says or "", "" if halved else feeds, also)
        # The sheet of what it feeds says what goes dark with it; where it stands is told at once.
        known = each.feeds in house.circuits or each.feeds in house.sources
        to = Ref("circuit", str(each.feeds)) if known else Ref("space", each.id)
        # Every breaker is in some panel: that word would find them all.
        panel = house.panels[each.panel].name.replace("panel", "")
        yield Found("breaker", each.id, name, place, "", to, words, (panel,))


def _box(survey: Survey, box: Box) -> Found:
    house = survey.house
    holds = ", ".join(plain_words(each) for each in box.devices) or "joints only"
    place = place_of(house, box)
    name = f"Box {box.id}, {holds}"
    kinds = tuple(each.kind.is_ for each in box.devices)
    return Found(
        "box", box.id, name, place, _off_spoken(house, survey.isolations[box.id]), Ref("box", box.id),
        (box.id, "box", "" if box.devices else "junction"), room_words(house, box.room),
        (*_near(house, box), name, *kinds),
    )  # fmt: skip


def _off_spoken(house: House, isolation: Isolation) -> str:
    breakers = breakers_spoken(house, (each.id for each in isolation.breakers))
    return _before_opening(house, isolation, breakers)


def off_words(house: House, isolation: Isolation) -> str:
    """What must be off before it is opened, in a line, second sources included; unknown comes before all."""
    return _before_opening(house, isolation, breakers_said(each.id for each in isolation.breakers))


def _before_opening(house: House, isolation: Isolation, breakers: str) -> str:
    sources = sources_off(house, (each.id for each in isolation.sources))
    told = "; and ".join(each for each in (breakers, sources) if each)
    if isolation.unknown or not isolation.breakers:
        return f"{UNKNOWN}{f'; and {told}' if told else ''}"
    count = len(isolation.breakers) + len(isolation.sources)
    return f"before opening, {'ALL off' if count > 1 else 'off'}: {told}"


def _rooms(house: House) -> Iterator[Found]:
    levels = {each.id: each.name for each in house.record.levels}
    for room in house.rooms.values():
        fed = {
            one for each in room.circuits if each in house.circuits for one in house.circuits[each].breakers
        }
        breakers = [each for each in house.breakers if each in fed]
        place = levels.get(room.record.level or "", "level not recorded")
        off = _breakers_of(house, breakers)
        words = (room.id, room.name, room.record.kind)
        yield Found("room", room.id, room.name, place, off, Ref("room", room.id), words, (), (place,))


def _circuits(house: House) -> Iterator[Found]:
    for each in house.circuits.values():
        off = _breakers_of(house, each.breakers)
        rooms = in_a_row(house.rooms[room].name for room in each.rooms if room in house.rooms)
        words = (each.id, each.name, "circuit", each.record.purpose or "")
        yield Found("circuit", each.id, each.name, rooms, off, Ref("circuit", each.id), words)


def _panels(house: House) -> Iterator[Found]:
    for panel in house.panels.values():
        at = panel.record.at
        room = house.rooms.get(at.room) if at is not None and at.room is not None else None
        place = ", ".join(each for each in (room.name if room else "", where(house, at)) if each)
        also = ("subpanel" if panel.feeder else "", "surge" if isinstance(panel.record.surge, Surge) else "")
        words = (panel.id, panel.name, "panel", *also)
        yield Found("panel", panel.id, panel.name, place, "", Ref("panel", panel.id), words, (), (place,))
    for source in house.sources.values():
        name = source_words(source)
        yield Found(
            "panel", source.id, name, source.is_.replace("-", " "),
            stopping(house, source),
            Ref("circuit", source.id), (source.id, name, source.is_, "source"),
        )  # fmt: skip


def _cables(house: House) -> Iterator[Found]:
    for run in house.runs.values():
        ends = " to ".join(end.id or f"an end {end.kind}" for end in run.ends)
        circuit = house.circuits.get(run.circuit)
        off = _breakers_of(house, circuit.breakers if circuit else ())
        cable = cable_words(run)
        name = f"{run.id}, {cable}"
        yield Found(
            "cable", run.id, name, ends, off, Ref("run", run.id), (run.id, "cable", cable), (), (ends,)
        )
