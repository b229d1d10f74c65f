"""A bedroom, the room outside it, or a whole storey has no smoke alarm.

Why it matters: a fire at night is smelt by nobody asleep; the alarm is the only one that wakes them.
What to do: put a wired alarm with a battery into each bedroom, outside each sleeping area and on every
    storey, the cellar among them.
Cannot tell: when what is in a box of the room, its level, or to which room a bedroom's door leads is not
    recorded. Attics and crawlspaces count as no storey. Outside a bedroom is the room its door leads to,
    with what is open to that. An alarm on a battery alone has no box, and is not seen. Rooms built before
    the 2008 edition are left alone.
Stands: on the room's key: of the bedroom, or of the first room of the storey.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.figures import Figures
from junctionary.figures.gaps import boxes_untold, unseen_in
from junctionary.house.model import House, Room
from junctionary.house.network import Network
from junctionary.records.words import ROOM_KINDS
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("irc-2018", "R314.3"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: alarms, says: "Smoke alarms"}
[circuits/alarms.yaml]
circuit: alarms
name: Smoke alarms
runs:
  - {id: a1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: a2, cable: 14/2 NM-B, from: D1, to: D2}
[rooms/north.yaml]
room: north    #! smoke-alarm-missing
name: North room
kind: bedroom
complete: true
level: upper
[boxes/north.yaml]
room: north
boxes:
  D1: {devices: {q1: duplex}, makeup: pigtailed}
[rooms/landing.yaml]
room: landing
name: Landing
kind: hall
complete: true
level: upper
things: [{what: door, wall: north, to: north}]
[boxes/landing.yaml]
room: landing
boxes:
  D2: {devices: {q1: alarm}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
  alarm: {is: smoke-alarm, leads: [18 AWG black, 18 AWG white], marks: [wireless]}
[house.yaml]
house: Example
reference: nec-2023
levels: [{id: upper, name: Upper floor}]
"""

PASSES = FAILS.replace("{q1: duplex}", "{q1: alarm}").replace("    #! smoke-alarm-missing", "")

UNTOLD = PASSES.replace("{devices: {q1: alarm}, makeup: pigtailed}", "{makeup: unknown}")

NO_STOREY = ("attic", "crawlspace", "outdoors", "porch", "deck", "garage", "workshop", "storage")
NO_WAY_OUT = ("closet", "bathroom", "bedroom", "outdoors", "porch", "deck", "attic")
"""What a bedroom's door may lead to that is not outside its sleeping area."""
WAYS = ("door", "opening")
Ways = Mapping[str, Sequence[tuple[str, str]]]
ALARM = "smoke-alarm"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each bedroom, then each level that people live on."""
    ways = _ways(house)
    for room in rooms_of(house, "bedroom"):
        yield from _judged(house, [room], f"{room.name} has no smoke alarm.")
        yield from _outside(house, room, ways)
    levels: dict[str | None, list[Room]] = {}
    for room in rooms_of(house, *(each for each in ROOM_KINDS if each not in NO_STOREY)):
        levels.setdefault(room.record.level, []).append(room)
    for level, rooms in levels.items():
        bare = [each for each in rooms if each.record.kind == "bedroom" and not _alarms(house, each)]
        # Older rooms ask for no alarm, and one that hangs in them is heard all the same.
        heard = any(_alarms(house, each) for each in house.rooms.values() if each.record.level == level)
        if level is None:
            silent = [each for each in rooms if not _alarms(house, each) and each not in bare]
            for each in silent:
                yield CannotTell((each.id,), (f"the level of room {each.id}",), each.place)
            continue
        if bare or heard:
            continue
        name = next((each.name for each in house.record.levels if each.id == level), level)
        yield from _judged(house, rooms, f"The storey {name} has no smoke alarm.")


def _outside(house: House, bedroom: Room, ways: Ways) -> Iterator[Fault | CannotTell]:
    """The rooms that a bedroom opens to, with what is open to them."""
    first = [each for each, _ in ways.get(bedroom.id, ()) if house.rooms[each].record.kind not in NO_WAY_OUT]
    open_to = [beyond for each in first for beyond, by in ways.get(each, ()) if by == "opening"]
    beside = [house.rooms[each] for each in dict.fromkeys((*first, *open_to)) if each != bedroom.id]
    if not beside:
        yield CannotTell((bedroom.id,), (f"which room {bedroom.id} opens to",), bedroom.place)
        return
    said = f"Outside {bedroom.name}, in {' and '.join(each.name for each in beside)}, "
    for found in _judged(house, beside, f"{said}there is no smoke alarm."):
        yield replace(found, place=bedroom.place, about=(bedroom.id, *found.about))


def _ways(house: House) -> Ways:
    """By room, the rooms to which a door or an opening leads, told from either side, and by which."""
    found: dict[str, list[tuple[str, str]]] = {}
    for room in house.rooms.values():
        for thing in room.record.things:
            if thing.what in WAYS and isinstance(thing.to, str) and thing.to in house.rooms:
                found.setdefault(room.id, []).append((thing.to, thing.what))
                found.setdefault(thing.to, []).append((room.id, thing.what))
    return found


def _judged(house: House, rooms: list[Room], found: str) -> Iterator[Fault | CannotTell]:
    first = rooms[0]
    if any(_alarms(house, each) for each in rooms):
        return
    needs = [gap for each in rooms for id_ in each.boxes if (gap := unseen_in(house.boxes[id_]))]
    needs += [gap for each in rooms for gap in boxes_untold(each)]
    if needs:
        yield CannotTell((first.id,), tuple(dict.fromkeys(needs)), first.place)
        return
    yield Fault(
        place=first.place,
        about=(first.id,),
        found=found,
        allowed="An alarm in each sleeping room, outside each sleeping area and on each storey.",
        because="Nobody asleep smells smoke.",
        do="Put in a wired alarm with a battery, joined to the others.",
        edition=first.edition,
    )


def _alarms(house: House, room: Room) -> bool:
    return any(each.kind.is_ == ALARM for id_ in room.boxes for each in house.boxes[id_].devices)
