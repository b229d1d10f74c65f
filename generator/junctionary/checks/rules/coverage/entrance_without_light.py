"""Outside a door of the house there is no light that a switch governs.

Why it matters: whoever steps out at night walks down steps that are not seen, and whoever comes home looks
    for the lock in the dark.
What to do: put a lighting outlet beside the door or over it, with a switch inside; a sensor or a timer may
    turn it as well.
Cannot tell: when no door to the open air is recorded at all, or what is in the boxes there, or what
    switches a light, is not. One light serves all doors to the same outdoor area, and a door for vehicles
    is none. Left alone are decks and porches whose level is more than 4 ft up, unless a stair from them is
    recorded, and areas built before the 2008 edition.
Stands: on the key of the outdoor area.
"""

from collections.abc import Iterator

from junctionary.checks.entrances import is_entered
from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.figures import Figures
from junctionary.figures.gaps import boxes_untold, unseen_in
from junctionary.figures.places import OPEN_AIR, gives_light
from junctionary.house.model import House, Room
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.70(A)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci, gfci], feeds: one, says: "Back door, light"}
[circuits/one.yaml]
circuit: one
name: Back door
runs:
  - {id: a1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: a2, cable: 14/2 NM-B, from: D1, to: D2}
[rooms/utility.yaml]
room: utility
name: Utility room
kind: utility
[rooms/yard.yaml]
room: yard    #! entrance-without-light
name: Back yard
kind: outdoors
complete: true
things:
  - {what: door, wall: north, to: utility}
[boxes/utility.yaml]
room: utility
boxes:
  D1: {makeup: splice-through}
[boxes/yard.yaml]
room: yard
boxes:
  D2: {devices: {f1: lamp}, makeup: end-of-run}
[devices/all.yaml]
devices:
  switch: {is: switch, ways: 1, rating: 15 A}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace(
    "D1: {makeup: splice-through}", "D1: {devices: {s1: switch}, makeup: {feed: a1, switched: {s1: a2}}}"
).replace("    #! entrance-without-light", "")

UNTOLD = PASSES.replace("D2: {devices: {f1: lamp}, makeup: end-of-run}", "D2: {makeup: unknown}")

HIGH_IN = 48


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each outdoor area to which a door leads, by the lights in it and what switches them."""
    areas = [each for each in rooms_of(house, *OPEN_AIR) if not _is_up(house, each)]
    entered = {each.id: is_entered(house, each) for each in areas}
    tables = {each.device: each for each in figures.lamps}
    for room in areas:
        if entered[room.id] is False or (entered[room.id] is None and True in entered.values()):
            continue
        lights = [
            device
            for id_ in room.boxes
            for device in house.boxes[id_].devices
            if gives_light(device.kind) is not False
        ]
        if any(tables[each.id].switches for each in lights if each.id in tables):
            continue
        needs = [gap for id_ in room.boxes if (gap := unseen_in(house.boxes[id_]))]
        needs += [why for each in lights if each.id in tables for why in tables[each.id].unknown]
        needs += [
            reason.reason
            for each in lights
            if each.id not in tables
            for name in network.index.carrying.get(each.id, ())
            for reason in network.unknown_at(name)
        ]
        needs += boxes_untold(room)
        if entered[room.id] is None:
            needs.append(f"whether a door of the house leads to {room.id}")
        if needs:
            yield CannotTell((room.id,), tuple(dict.fromkeys(needs)), room.place)
            continue
        yield Fault(
            place=room.place,
            about=(room.id,),
            found=f"A door leads to {room.name}, and no light there is governed by a switch, as recorded.",
            allowed="Outside each door at grade, a lighting outlet with a switch.",
            because="Whoever steps out at night does not see the steps.",
            do="Put in a lighting outlet by the door, and a switch for it inside.",
            edition=room.edition,
        )


def _is_up(house: House, room: Room) -> bool:
    """Whether a deck or porch is a storey up and no stair from it is recorded."""
    floor = next((each.floor for each in house.record.levels if each.id == room.record.level), None)
    raised = room.record.kind != "outdoors" and floor is not None and floor.to("in") > HIGH_IN
    return raised and room.record.stairs is None
