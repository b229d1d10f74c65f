"""Names as answers give them, where the log, the photos, the loads and the sources speak of something."""

from collections.abc import Iterable

from junctionary.house.ids import Ids, unknown_id
from junctionary.house.makeup.bench import ALIASES
from junctionary.house.panels import breaker_key, breaker_names
from junctionary.house.terminals import HALVES, terminals_of
from junctionary.marks import Place
from junctionary.problems import Problem
from junctionary.records import Records
from junctionary.records.panels import BreakerRecord
from junctionary.records.rooms import Thing

PARTS_OF_PANEL = ("neutral", "ground", "A", "B")


def unknown_names(records: Records, ids: Ids) -> list[Problem]:
    """Every id in the log, the photos, the loads, the sources, the rooms and the routes that is not known."""
    return [
        *_log(records, ids), *_photos(records, ids), *_loads(ids), *_house(records, ids),
        *_rooms(records, ids), *_routes(ids), *_guards(records, ids),
    ]  # fmt: skip


def is_named(name: str, ids: Ids) -> bool:
    """Whether something of the house has this name, whatever its kind."""
    if name == "service" or any(ids.has(kind, name) for kind in SIMPLE):
        return True
    if "/" in name:
        return _in_panel_or_box(name, ids)
    whole, _, rest = name.partition(".")
    if whole in ids.runs and rest:
        return _has_colour(ids, whole, rest)
    return whole in ids.boxes and _in_device(ids, whole, rest)


SIMPLE = ("box or panel", "room", "circuit", "run", "load", "source", "level", "building")


def _in_panel_or_box(name: str, ids: Ids) -> bool:
    whole, _, rest = name.partition("/")
    if whole in ids.panels:
        bars = rest in PARTS_OF_PANEL or rest.startswith(("neutral-bar", "ground-bar"))
        run, _, colour = rest.partition(".")
        return (
            bars
            or breaker_key(ids.panels[whole], rest) is not None
            or (run in ids.runs and _has_colour(ids, run, colour))
        )
    if whole not in ids.boxes:
        return False
    run, _, colour = rest.partition(".")
    if run in ids.runs:
        return _has_colour(ids, run, colour)
    return rest == "box" or rest in ids.boxes[whole].jumpers or (rest[:1] == "j" and rest[1:].isdigit())


def _has_colour(ids: Ids, run: str, colour: str) -> bool:
    conductors = getattr(ids.runs[run].cable, "conductors", ())
    return not conductors or colour in [each.colour for each in conductors]


def _in_device(ids: Ids, box: str, rest: str) -> bool:
    local, _, part = rest.partition(".")
    devices = ids.boxes[box].devices
    if rest == "box.screw":
        return True
    if local not in devices or not part:
        return local in devices
    kind = ids.device_kinds.get(devices[local])
    if kind is None:
        return True
    names = [each.name for each in terminals_of(kind)]
    return (
        part in names
        or ("brass-top" in names and part in (*HALVES, *ALIASES))
        or (part in HALVES and "load-brass" in names)
    )


def known_names(ids: Ids) -> list[str]:
    """Every name that something of the house has."""
    devices = [f"{box}.{local}" for box, record in ids.boxes.items() for local in record.devices]
    simple = [each for kind in SIMPLE for each in ids.known(kind)]
    return [*simple, *devices, *breaker_names(ids), *_terminals(ids)]


def _terminals(ids: Ids) -> Iterable[str]:
    for box, record in ids.boxes.items():
        for local, kind in record.devices.items():
            if kind in ids.device_kinds:
                yield from (f"{box}.{local}.{each.name}" for each in terminals_of(ids.device_kinds[kind]))


def _check(name: str, place: Place, ids: Ids) -> list[Problem]:
    """A problem unless the name is known, or may stand in a file that could not be read."""
    if is_named(name, ids) or ids.lost:
        return []
    return [unknown_id("thing", name, place, known_names(ids))]


def _device(name: str, place: Place, ids: Ids) -> list[Problem]:
    whole, _, rest = name.partition(".")
    if ids.may_stand_elsewhere("device") or (whole in ids.boxes and rest and _in_device(ids, whole, rest)):
        return []
    if whole in ids.boxes and not rest:
        own = [f"{whole}.{local}" for local in ids.boxes[whole].devices]
        return [unknown_id("device", name, place, own, ids.is_else(name))]
    devices = [f"{box}.{local}" for box, record in ids.boxes.items() for local in record.devices]
    return [unknown_id("device", name, place, devices)]


def breaker_named(name: str, ids: Ids) -> bool:
    """Whether ``main/6``, ``main/2+4`` or ``main/main`` is a breaker of this house."""
    panel, _, spaces = name.partition("/")
    return panel in ids.panels and bool(spaces) and breaker_key(ids.panels[panel], spaces) is not None


def _breaker(name: str, place: Place, ids: Ids) -> list[Problem]:
    if breaker_named(name, ids) or ids.may_stand_elsewhere("breaker"):
        return []
    feeding = _feeding(name, ids)
    but = f"{ids.is_else(name)}, fed by {' and '.join(feeding)}" if feeding else ids.is_else(name)
    return [unknown_id("breaker", name, place, feeding or breaker_names(ids), but)]


def _feeding(circuit: str, ids: Ids) -> list[str]:
    """The breakers that feed a circuit, where one was named in place of its breaker."""
    return [
        f"{panel}/{spaces}"
        for panel, record in ids.panels.items()
        for spaces, each in record.breakers.items()
        if isinstance(each, BreakerRecord)
        and isinstance(each.feeds, str)
        and each.feeds.partition(".")[0] == circuit
    ]


def _log(records: Records, ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    for entry in records.log:
        for key, said in (("about", entry.about), ("died", entry.died)):
            for number, name in enumerate(said or ()):
                problems += _check(name, entry.value_place(key, number), ids)
        for number, name in enumerate(entry.while_ or ()):
            problems += ids.missing("load", name, entry.value_place("while", number))
        if entry.trip is not None:
            problems += _breaker(entry.trip, entry.value_place("trip"), ids)
    return problems


def _photos(records: Records, ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    for photo in records.photos:
        for number, name in enumerate(photo.shows):
            problems += _check(name, photo.value_place("shows", number), ids)
        if photo.room is not None:
            problems += ids.missing("room", photo.room, photo.value_place("room"))
    return problems


def _loads(ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    for load in ids.loads.values():
        for key in ("plugged", "wired"):
            if said := getattr(load, key):
                problems += _device(said, load.value_place(key), ids)
        for key in ("instead_of", "part_of"):
            if said := getattr(load, key):
                problems += ids.missing("load", said, load.value_place(key))
    return problems


def _house(records: Records, ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    service = records.house.service
    if service and service.disconnect:
        problems += ids.missing("panel", service.disconnect, service.value_place("disconnect"))
    if service and service.fault_level:
        problems += ids.missing("panel", service.fault_level.at, service.fault_level.value_place("at"))
    for source in ids.sources.values():
        if source.at is not None:
            problems += ids.missing("box or panel", source.at, source.value_place("at"))
        if source.enters is not None:
            problems += _breaker(source.enters, source.value_place("enters"), ids)
        if source.shut_off is not None and not breaker_named(source.shut_off, ids):
            problems += _device(source.shut_off, source.value_place("shut_off"), ids)
        if isinstance(source.charges_from, str) and source.charges_from not in ("utility", "service"):
            problems += _check(source.charges_from, source.value_place("charges_from"), ids)
    return problems


def _rooms(records: Records, ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    for room in ids.rooms.values():
        for kind, said in (("level", room.level), ("building", room.building)):
            if said is not None:
                problems += ids.missing(kind, said, room.value_place(kind))
        for thing in room.things:
            if isinstance(thing.to, str):
                problems += ids.missing("room", thing.to, thing.value_place("to"))
            problems += _swing(room.room, thing, ids)
        if room.stairs and room.stairs.to:
            problems += ids.missing("room", room.stairs.to, room.stairs.value_place("to"))
        for bundle in room.bundles:
            for number, run in enumerate(bundle.runs):
                problems += ids.missing("run", run, bundle.value_place("runs", number))
    for file in records.boxes:
        problems += ids.missing("room", file.room, file.value_place("room"))
        for box in file.boxes.values():
            if box.at and box.at.room:
                problems += ids.missing("room", box.at.room, box.at.value_place("room"))
    return problems


def _swing(room: str, thing: Thing, ids: Ids) -> list[Problem]:
    """A door swings into one of the two rooms it joins."""
    into = thing.swings_into
    if not isinstance(into, str):
        return []
    place = thing.value_place("swings_into")
    if problems := ids.missing("room", into, place):
        return problems
    joined = (room, thing.to) if isinstance(thing.to, str) else (room,)
    if into in joined or (thing.to is not None and not isinstance(thing.to, str)):
        return []
    return [
        Problem(
            place,
            f"a {thing.what} of {room} swings into {into}",
            f"one of the rooms it joins: {' or '.join(joined)}",
            "name that room, or tell where it leads with to",
        )
    ]


def _routes(ids: Ids) -> list[Problem]:
    problems: list[Problem] = []
    for run in ids.runs.values():
        for number, point in enumerate(run.route or ()):
            if point.box is not None:
                problems += ids.missing("box or panel", point.box, run.value_place("route", number, "box"))
            if point.room is not None:
                problems += ids.missing("room", point.room, run.value_place("route", number, "room"))
    return problems


def _guards(records: Records, ids: Ids) -> list[Problem]:
    """What guards a circuit or a device: a breaker, or a GFCI device."""
    said = [(each.guarded_by, each.value_place("guarded_by")) for each in records.circuits if each.guarded_by]
    for box in ids.boxes.values():
        said += [(each, box.value_place("guarded_by", local)) for local, each in box.guarded_by.items()]
    problems: list[Problem] = []
    for name, place in said:
        if "/" in name:
            problems += _breaker(name, place, ids)
        else:
            problems += _device(name, place, ids)
    return problems
