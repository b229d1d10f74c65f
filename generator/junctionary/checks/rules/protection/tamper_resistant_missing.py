"""A receptacle within a child's reach has no shutters.

Why it matters: a child who pushes a key or a pin into one slot is burned or killed; shutters open only
    to a plug with both blades.
What to do: put in a receptacle marked tamper-resistant.
Cannot tell: when the marks of the device or its height are not recorded, where they decide.
    Left alone: work before the 2008 edition; through 2017 attics, crawlspaces, closets and stores; before
    2017 receptacles of 250 V (from memory); and since the 2011 edition what is above 5-1/2 ft, two-slot, or
    taken up by appliances that stay: one for a single receptacle, two for a duplex.
Stands: on the receptacle's line, each on its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.places import is_125_volt, is_small_receptacle, volts_of
from junctionary.figures.receptacles import is_taken_up
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "406.12"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, guards: [afci], feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    at: {wall: north, along: 4 ft, up: 14 in}
    devices: {r1: duplex}    #! tamper-resistant-missing
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: []}
"""

PASSES = FAILS.replace("marks: []", "marks: [tamper-resistant]").replace(
    "    #! tamper-resistant-missing", ""
)

UNTOLD = PASSES.replace(", marks: [tamper-resistant]", "")

ASKED_SINCE = 2008
EXCEPTIONS_SINCE = 2011
MARK = "tamper-resistant"
EVERY_ROOM_SINCE = 2020
AT_250_V_SINCE = 2017
NOT_COVERED = ("attic", "crawlspace", "closet", "storage", "other")
"""Rooms of which 210.52 asks no receptacle: until the 2017 edition the shutters follow it."""
OUT_OF_REACH_IN = 66
TWO_SLOT = "1-15R"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each receptacle of 15 or 20 A in a room that is covered, by its edition at 125 V or up to 250 V."""
    for device in house.devices.values():
        box = house.boxes[device.box]
        room = house.rooms.get(box.room)
        year = edition_year(box.edition)
        if not _is_of_the_kind(device, year) or year < ASKED_SINCE or MARK in (device.kind.marks or ()):
            continue
        if room is None or (room.record.kind in NOT_COVERED and year < EVERY_ROOM_SINCE):
            continue
        if _excepted(house, box, device):
            continue
        needs = []
        if device.kind.marks is None:
            needs.append(f"whether {device.kind_id} is tamper-resistant")
        if _in_reach(box) is None and edition_year(box.edition) >= EXCEPTIONS_SINCE:
            needs.append(f"how high box {box.id} is")
        if needs:
            yield CannotTell((device.id, *device.circuits), tuple(needs), device.place)
            continue
        yield Fault(
            place=device.place,
            about=(device.id, *device.circuits),
            found=f"{device.id} is not marked tamper-resistant.",
            allowed="In a dwelling, a receptacle listed as tamper-resistant.",
            because="A child can push a thin metal thing into one slot.",
            do="Put in a receptacle that is marked tamper-resistant.",
            edition=box.edition,
        )


def _is_of_the_kind(device: Device, year: int) -> bool:
    if not is_small_receptacle(device.kind):
        return False
    return is_125_volt(device.kind) or (year >= AT_250_V_SINCE and volts_of(device.kind) == "250")


def _excepted(house: House, box: Box, device: Device) -> bool:
    if edition_year(box.edition) < EXCEPTIONS_SINCE:
        return False
    return _in_reach(box) is False or device.kind.face == TWO_SLOT or is_taken_up(house, device)


def _in_reach(box: Box) -> bool | None:
    """Whether it is no higher than 5-1/2 ft; None where its height is not recorded."""
    at = box.record.at
    if at is None:
        return None
    if at.ceiling is not None or at.floor is not None:
        return at.ceiling is None
    return at.up.to("in") <= OUT_OF_REACH_IN if at.up is not None else None
