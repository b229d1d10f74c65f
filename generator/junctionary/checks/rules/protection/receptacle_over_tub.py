"""A receptacle stands over a bathtub, in a shower, or beside one.

Why it matters: whoever lies in the water is earthed through it. A hair dryer or a radio that is plugged in
    there falls in, and is switched off with a wet hand.
What to do: take it out, join the cable through behind a blank cover outside the wet space, and put the
    receptacle beside the basin. Until then plug nothing into it.
Cannot tell: when the place of the tub or shower, how far it stands out from its wall, or the place of the box
    is not recorded, where they decide. Since the 2020 edition the space of 3 ft beside it counts as well, up
    to 8 ft above the floor, but not in a room of which no corner is farther away (from memory). Work before
    the 2008 edition is left alone.
Stands: on the receptacle's line, each on its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import HELD_SINCE
from junctionary.figures import Figures
from junctionary.figures.tubs import NearTub, near_tubs
from junctionary.house.model import Device, House
from junctionary.house.network import Network
from junctionary.house.terminals import RECEPTACLES
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "406.9(C)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [gfci], feeds: bath, says: "Bathroom, receptacles"}
[circuits/bath.yaml]
circuit: bath
name: Bathroom
purpose: bathroom
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/bath.yaml]
room: bath
name: Bathroom
kind: bathroom
outline: [[0 ft, 0 ft], [12 ft, 0 ft], [12 ft, 8 ft], [0 ft, 8 ft]]
things:
  - {what: tub, wall: north, along: 0 ft, width: 5 ft, depth: 30 in}
[boxes/bath.yaml]
room: bath
boxes:
  D1:
    at: {wall: north, along: 3 ft, up: 44 in}
    devices: {r1: duplex}    #! receptacle-over-tub
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("along: 3 ft, up", "along: 10 ft, up").replace("    #! receptacle-over-tub", "")

UNTOLD = PASSES.replace("{wall: north, along: 10 ft, up: 44 in}", "{wall: north, up: 44 in}")

BESIDE_SINCE = 2020


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each receptacle of a room with a tub or a shower."""
    for device in house.devices.values():
        box = house.boxes[device.box]
        room = house.rooms.get(box.room)
        year = edition_year(box.edition)
        if device.kind.is_ not in RECEPTACLES or room is None or year < HELD_SINCE:
            continue
        near = near_tubs(room, box)
        over = [each for each in near if each.within]
        beside = [each for each in near if each.beside and year >= BESIDE_SINCE]
        untold = [
            each for each in near if each.within is None or (each.beside is None and year >= BESIDE_SINCE)
        ]
        if over or beside:
            yield _fault(house, device, (over or beside)[0])
        elif untold:
            needs = tuple(dict.fromkeys(lack for each in untold for lack in each.lacks))
            yield CannotTell((device.id, *device.circuits), needs, device.place)


def _fault(house: House, device: Device, near: NearTub) -> Fault:
    box = house.boxes[device.box]
    where = "in the space of" if near.within else "less than 3 ft beside"
    more = ", nor within 3 ft of its edge" if edition_year(box.edition) >= BESIDE_SINCE else ""
    return Fault(
        place=device.place,
        about=(device.id, *device.circuits),
        found=f"{device.id} is {where} the {near.what} of {house.rooms[box.room].name}.",
        allowed=f"No receptacle in the space of a tub or a shower{more}.",
        because="What is plugged in there falls into the water with somebody in it.",
        do="Take it out and put it beside the basin; until then plug nothing into it.",
        edition=box.edition,
    )
