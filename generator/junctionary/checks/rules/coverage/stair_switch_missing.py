"""The light of a stair cannot be switched from both of its ends.

Why it matters: whoever comes to the dark end of a stair walks it blind; falls on stairs kill.
What to do: put in a pair of 3-way switches, one at each floor, for a light on the stair.
Cannot tell: when where the stair leads, the level of a room, or what switches its light is not recorded.
    A stair counts from six risers, indoors; a light that a sensor turns is switched for whoever comes.
    Stairs built before the 2008 edition are left alone.
Stands: on the key of the room that the stair stands in.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of
from junctionary.figures import Figures
from junctionary.figures.places import OPEN_AIR, gives_light
from junctionary.house.lamps import LampTable
from junctionary.house.model import House, Room
from junctionary.house.network import Network
from junctionary.records.words import ROOM_KINDS
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.70(A)"),), ROUGHED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
levels:
  - {id: ground, name: Ground floor}
  - {id: upper, name: Upper floor}
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: lights, says: "Den lights"}
[circuits/lights.yaml]
circuit: lights
name: Den lights
runs:
  - {id: a1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: a2, cable: 14/2 NM-B, from: D1, to: D2}
  - {id: a3, cable: 14/3 NM-B, from: D1, to: U1}
[rooms/hall.yaml]
room: hall    #! stair-switch-missing
name: Hall
kind: stair
level: ground
stairs: {risers: 14, to: landing}
[rooms/landing.yaml]
room: landing
name: Landing
kind: closet
level: upper
[boxes/hall.yaml]
room: hall
boxes:
  D1:
    devices: {s1: switch}
    makeup: {feed: a1, onward: [a3], switched: {s1: a2}}
  D2: {devices: {f1: lamp}, makeup: end-of-run}
[boxes/landing.yaml]
room: landing
boxes:
  U1: {devices: {f1: lamp}, makeup: {feed: a3}, capped: [a3.red]}
[devices/all.yaml]
devices:
  switch: {is: switch, ways: 1, rating: 15 A}
  three: {is: switch, ways: 3, rating: 15 A}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("risers: 14", "risers: 5").replace("    #! stair-switch-missing", "")

UNTOLD = FAILS.replace(", to: landing}", "}").replace("    #! stair-switch-missing", "")

LEAST_RISERS = 6
BY_ITSELF = "sensor"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each stair by the lights at either end of it, and where they are switched."""
    for room in rooms_of(house, *(each for each in ROOM_KINDS if each not in OPEN_AIR)):
        stairs = room.record.stairs
        if stairs is None or stairs.risers < LEAST_RISERS:
            continue
        other = house.rooms.get(stairs.to) if stairs.to is not None else None
        levels = [each.record.level for each in (room, other) if each is not None]
        needs = [] if other is not None else [f"where the stair of {room.id} leads"]
        needs += [f"the level of {each.id}" for each in (room, other) if each and each.record.level is None]
        if needs:
            yield CannotTell((room.id,), tuple(needs), room.place)
            continue
        tables = [each for each in figures.lamps if _lights(house, each, room, other)]
        if any(set(levels) <= _levels(house, each) or _by_itself(house, each) for each in tables):
            continue
        if unknown := tuple(dict.fromkeys(why for each in tables for why in each.unknown)):
            yield CannotTell((room.id,), unknown, room.place)
            continue
        yield Fault(
            place=room.place,
            about=(room.id, *dict.fromkeys(switch for each in tables for switch in each.switches)),
            found=f"No light of the stair from {room.name} is switched at both of its ends.",
            allowed="For a stair of six risers or more, a switch at each floor.",
            because="Whoever comes to its dark end walks the stair blind.",
            do="Put in a pair of 3-way switches, one at each floor.",
            edition=room.edition,
        )


def _lights(house: House, table: LampTable, room: Room, other: Room | None) -> bool:
    device = house.devices[table.device]
    rooms = [each.id for each in (room, other) if each is not None]
    return gives_light(device.kind) is not False and house.boxes[device.box].room in rooms


def _by_itself(house: House, table: LampTable) -> bool:
    """Whether a sensor turns the light for whoever comes, as 210.70(A)(2) allows on a stair."""
    return any(house.devices[each].kind.is_ == BY_ITSELF for each in table.switches if each in house.devices)


def _levels(house: House, table: LampTable) -> set[str | None]:
    """The levels on which the switches stand that toggle this light whatever the others do."""
    rooms = (house.boxes[house.devices[each].box].room for each in table.always if each in house.devices)
    return {house.rooms[each].record.level for each in rooms if each in house.rooms}
