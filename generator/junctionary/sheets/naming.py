"""Names as answers give them, turned into links; and which pages a name concerns."""

import re
from collections.abc import Iterable

from junctionary.house.model import End, House
from junctionary.house.panels import MAIN
from junctionary.marks import Place
from junctionary.records.house import Source
from junctionary.records.places import At
from junctionary.records.values import Said
from junctionary.sheets.links import Link, Ref
from junctionary.units import Quantity, show_as

NOT_RECORDED = "not recorded"

_POWER = re.compile(r"(?<=\d )(in|ft|mm|cm|m)([23])\b")
_RAISED = {"2": "²", "3": "³"}
_NUMBERED = re.compile(r"(\D*)(\d*)")


def ref_of(house: House, name: str, place: Place | None = None) -> Ref | None:
    """The thing a name means: ``main/6``, ``K1``, ``K1.r1.brass``, ``K1/j1``, ``K1/a1.black``, ``a1``.

    Of a room and a circuit of one name it is the circuit, unless the place is in the room's file.
    """
    if name in house.breakers:
        return Ref("space", name)
    whole, slash, _ = name.partition("/")
    if slash:
        if whole in house.boxes:
            joints = {joint.id for joint in house.boxes[whole].joints}
            return Ref("joint", name) if name in joints else Ref("box", whole)
        return Ref("panel", whole) if whole in house.panels else None
    if name in house.boxes:
        return Ref("box", name)
    if name in house.runs:
        return Ref("run", name)
    if name in house.circuits:
        is_room = name in house.rooms and place is not None and place.file == house.rooms[name].place.file
        return Ref("room" if is_room else "circuit", name)
    if name in house.panels:
        return Ref("panel", name)
    if name in house.rooms:
        return Ref("room", name)
    box, dot, part = name.partition(".")
    if dot and box in house.boxes:
        device = f"{box}.{part.partition('.')[0]}"
        return Ref("device", device) if device in house.devices else Ref("box", box)
    return Ref("run", box) if dot and box in house.runs else None


def link(house: House, name: str, text: str = "", place: Place | None = None) -> Link | str:
    """A name as a link, or as plain words where the manual has no place for it; a breaker as ``main 6``."""
    ref = ref_of(house, name, place)
    if ref is None:
        return text or name
    return Link(text or (breaker_words(name) if ref.kind == "space" else name), ref)


def circuit_link(house: House, id_: str) -> Link | str:
    """A circuit, or the wiring of a second source, by its name for people."""
    if id_ in house.circuits:
        return Link(house.circuits[id_].name, Ref("circuit", id_))
    return Link(source_words(house.sources[id_]), Ref("circuit", id_)) if id_ in house.sources else id_


def breaker_words(id_: str) -> str:
    """``main 6`` for ``main/6``, ``main of panel shop`` for ``shop/main``."""
    panel, _, space = id_.partition("/")
    return f"main of panel {panel}" if space == MAIN else f"{panel} {space}".strip()


def breaker_link(id_: str) -> Link:
    """A breaker by panel and space."""
    return Link(breaker_words(id_), Ref("space", id_))


def source_words(source: Source) -> str:
    """A source by its name, or by what it is."""
    return source.name or source.is_.replace("-", " ")


def counted(number: int, one: str, many: str = "") -> str:
    """``1 fact``, ``3 facts``, ``no facts``."""
    return f"{number or 'no'} {one if number == 1 else many or one + 's'}"


def recorded(number: int, one: str, many: str = "") -> str:
    """``3 boxes``; none is ``no box recorded``: that nobody wrote one down does not say there is none."""
    return counted(number, one, many) if number else f"no {one} recorded"


def several(number: int, word: str) -> str:
    """``2 switches``, ``switch``: a word for a device, and how many there are when more than one."""
    if number == 1:
        return word
    ending = "es" if word.endswith(("ch", "s", "x")) else "s"
    return f"{number} {word}{ending}"


def room_link(house: House, id_: str) -> Link | str:
    """A room by its name."""
    return Link(house.rooms[id_].name, Ref("room", id_)) if id_ in house.rooms else id_


def end_link(house: House, end: End) -> Link | str:
    """The end of a run: the box or panel, or in words that there is none, or that nobody can tell."""
    if end.id is not None and end.kind in ("box", "panel"):
        return Link(end.id, Ref("box" if end.kind == "box" else "panel", end.id))
    return {"none": "nowhere", "unknown": "unknown"}.get(end.kind, NOT_RECORDED)


def said(house: House, value: object) -> str:
    """A value as this house shows it: ``not recorded`` when left out, ``unknown`` or ``none`` as written."""
    if value is None:
        return NOT_RECORDED
    if isinstance(value, Quantity):
        return raised(show_as(value, house.record.shows))
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Said | str | int):
        return str(value)
    return " ".join(map(str, value)) if isinstance(value, list | tuple) else str(value)


def raised(words: str) -> str:
    """Units as they are printed: ``20.3 in³`` for ``20.3 in3``."""
    return _POWER.sub(lambda each: each[1] + _RAISED[each[2]], words)


def natural(id_: str) -> tuple[tuple[str, int], ...]:
    """What sorts ``K2`` before ``K10``."""
    return tuple((letters, int(number or 0)) for letters, number in _NUMBERED.findall(id_))


def surface(at: At, name: str | None = None) -> str:
    """``east wall``, ``ceiling`` or ``floor``; nothing where the name of what is there says it itself."""
    on = f"{at.wall} wall" if at.wall is not None else ""
    on = on or ("ceiling" if at.ceiling is not None else "floor" if at.floor is not None else "")
    return "" if on in (name or "") else on


def where(house: House, at: At | None, name: str | None = None) -> str:
    """Where a thing is, in words, without the wall or the ceiling that its name says itself."""
    if at is None:
        return "place not recorded"
    parts: list[str] = []
    if at.wall is not None:
        parts += filter(None, [surface(at, name)])
        if at.along is not None:
            parts.append(f"{said(house, at.along)} from its left end")
    for flat, point in (("ceiling", at.ceiling), ("floor", at.floor)):
        if point is not None:
            x, y = (said(house, each) for each in point)
            east, south = _toward(x, "east", "west"), _toward(y, "south", "north")
            parts += [] if flat in (name or "") else [flat]
            parts.append(f"{east} and {south} of the house's north-west corner")
    if at.up is not None:
        parts.append(f"{said(house, at.up)} up")
    parts += [
        f"really in the {room} {side} it" for side, room in (("above", at.above), ("below", at.below)) if room
    ]
    return ", ".join(parts) or ("" if surface(at) else "place not recorded")


def _toward(length: str, ahead: str, back: str) -> str:
    """``2 ft north`` for -2 ft south."""
    return f"{length.removeprefix('-')} {back if length.startswith('-') else ahead}"


def homes(house: House, about: Iterable[str], place: Place | None = None) -> set[Ref]:
    """The pages that what is said about these names belongs on.

    A room and a circuit may have one name: which of the two is meant is told by
    the file it stands in, and where no place is given both are.
    """
    found: set[Ref] = set()
    for name in about:
        if name in house.rooms and name in house.circuits:
            room = Ref("room", name)
            if place is None or place.file == house.rooms[name].place.file:
                found.add(room)
            if place is None or room not in found:
                found.add(Ref("circuit", name))
            continue
        ref = ref_of(house, name)
        if ref is None:
            continue
        if ref.kind in ("box", "device", "joint"):
            found |= _of_box(house, ref)
        elif ref.kind == "run":
            found.add(Ref("circuit", house.runs[ref.id].circuit))
        elif ref.kind == "space":
            breaker = house.breakers[ref.id]
            found.add(Ref("panel", breaker.panel))
            if isinstance(breaker.feeds, str):
                found.add(Ref("circuit", breaker.feeds))
        else:
            found.add(ref)
    return found


def box_of(ref: Ref) -> str:
    """The box of a box, a device or a joint."""
    return ref.id if ref.kind == "box" else ref.id.replace("/", ".").partition(".")[0]


def _of_box(house: House, ref: Ref) -> set[Ref]:
    id_ = box_of(ref)
    box = house.boxes[id_]
    circuits = box.circuits
    if ref.kind == "device":
        circuits = house.devices[ref.id].circuits or circuits
    if ref.kind == "joint":
        circuits = next((each.circuits for each in box.joints if each.id == ref.id), circuits)
    return {Ref("box", id_), Ref("room", box.room), *(Ref("circuit", each) for each in circuits)}
