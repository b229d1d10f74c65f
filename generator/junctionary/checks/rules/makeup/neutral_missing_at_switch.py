"""No neutral is at a switch for lights.

Why it matters: a timer, a sensor or a dimmer that needs a little current comes some day; with no neutral
    there, somebody lets it flow through the ground.
What to do: run a cable with one conductor more to the switch, and cap the neutral there until it is
    wanted.
Cannot tell: when an end in the box is unknown or not recorded, or the make-up of the box is. Not asked
    before the 2011 edition, where the cable is in a raceway, or of a switch that turns no light. In the 2011
    edition it is asked wherever the wall is finished; since 2014 of the lights of rooms to live in and
    bathrooms alone, since 2017 of halls and stairs too (from memory): not of garages, unfinished cellars,
    closets, laundries and stores. Of several switches for one light, one with a neutral is enough.
Stands: on the device's line. One finding for each light without a neutral at any of its switches.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wired import doubts_in
from junctionary.figures import Figures
from junctionary.house.model import Device, House, Room
from junctionary.house.network import Network, is_ground
from junctionary.records.cables import Cable
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "404.2(C)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
  - {id: d1, cable: 14/2 NM-B, from: D1, to: D2}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {f1: lamp}
    makeup: {feed: b1, loop: d1}
  D2:
    devices: {s1: switch}    #! neutral-missing-at-switch
    makeup: {loop: d1}
    marked: {d1.white: black}
[devices/all.yaml]
devices:
  switch: {is: switch, ways: 1}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = (
    FAILS.replace("    #! neutral-missing-at-switch", "")
    .replace("id: d1, cable: 14/2", "id: d1, cable: 14/3")
    .replace("    marked: {d1.white: black}", "    capped: [d1.white]")
)  # fmt: skip

UNTOLD = (
    FAILS.replace("    #! neutral-missing-at-switch", "")
    .replace("from: main", "from: unknown")
)  # fmt: skip

SINCE = 2011
SWITCHES = ("switch", "dimmer", "timer", "sensor")
IN_REACH = ("attic", "crawlspace", "outdoors", "deck", "porch")
"""Places where a cable can be added to a switch box later without opening a finish, or weather is."""
LIVED_IN_SINCE = 2014
LIVED_IN = (
    "kitchen", "dining", "living", "family", "bedroom", "bathroom", "office", "den", "library", "sunroom",
    "recreation",
)  # fmt: skip
PASSED_THROUGH_SINCE = 2017
PASSED_THROUGH = ("hall", "foyer", "stair")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each light that a switch turns, by what comes to the boxes of its switches."""
    said: set[str] = set()
    tables = figures.lamps
    tabled = {each for table in tables for each in table.switches}
    for device in house.devices.values():
        if device.id not in tabled and _is_asked(house, device, device):
            names = network.index.carrying.get(device.id, ())
            untold = dict.fromkeys(reason for each in names for reason in network.roles(each).unknown)
            untold |= dict.fromkeys(doubts_in(network, house.boxes[device.box]))
            if untold:
                yield CannotTell((device.id, device.box), tuple(untold), device.place)
    for table in tables:
        switches = [house.devices[each] for each in table.switches]
        if house.devices[table.device].kind.is_ != "luminaire" or said & set(table.switches):
            continue
        asked = [each for each in switches if _is_asked(house, each, house.devices[table.device])]
        if not asked or any(_has_neutral(house, network, each.box) for each in switches):
            continue
        said.update(table.switches)
        first = asked[0]
        about = (first.id, first.box, table.device)
        ends = [each for one in switches for each in _ends(house, network, one.box)]
        needs = dict.fromkeys(reason for each in ends for reason in network.roles(each).unknown)
        for each in switches:
            needs |= dict.fromkeys(doubts_in(network, house.boxes[each.box]))
        if needs:
            yield CannotTell(about, tuple(needs), first.place)
            continue
        yield Fault(
            place=first.place,
            about=about,
            found=f"No neutral is in {first.box}, where {first.id} turns {table.device}.",
            allowed="A neutral at the switch, in use or capped.",
            because="Whatever needs a little current there some day will send it through the ground.",
            do=f"Run a cable with one conductor more to {first.box}, and cap the neutral.",
            edition=house.boxes[first.box].edition,
        )


def _is_asked(house: House, device: Device, light: Device) -> bool:
    """Whether a neutral is asked at a switch: since 2014 by the room that it lights, before by its own."""
    box = house.boxes[device.box]
    if device.kind.is_ not in SWITCHES or edition_year(box.edition) < SINCE:
        return False
    lit = edition_year(box.edition) >= LIVED_IN_SINCE
    room = house.rooms.get(house.boxes[light.box].room if lit else box.room)
    if room is not None and not _is_asked_in(room, edition_year(box.edition)):
        return False
    cables = [house.runs[each].cable for each in box.runs]
    return not any(isinstance(each, Cable) and each.raceway for each in cables)


def _is_asked_in(room: Room, year: int) -> bool:
    """Whether the edition asks it in such a room: at first in all whose walls are closed, then in fewer."""
    kind, record = room.record.kind, room.record
    if year < LIVED_IN_SINCE:
        return kind not in IN_REACH and record.finished is not False
    finished_cellar = kind in ("basement", "cellar") and record.finished is True
    return kind in LIVED_IN or finished_cellar or (kind in PASSED_THROUGH and year >= PASSED_THROUGH_SINCE)


def _ends(house: House, network: Network, box: str) -> list[str]:
    """The conductor ends in a box, those of runs that pass through it left out."""
    names = [
        (edge.a if side == 0 else edge.b)
        for run in house.boxes[box].runs
        for side in (0, 1)
        if house.runs[run].ends[side].id == box
        for edge in network.index.conductors.get(run, ())
    ]
    return list(dict.fromkeys(names))


def _has_neutral(house: House, network: Network, box: str) -> bool:
    return any(
        said.neutral and not said.hot and not is_ground(each.rpartition(".")[2])
        for each in _ends(house, network, box)
        if (said := network.roles(each))
    )
