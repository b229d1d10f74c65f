"""A GFCI device cannot be reached without climbing, crawling or moving something.

Why it matters: it is to be tested every month, and is reset by whoever stands in the dark when it has
    tripped. One in an attic or behind a cupboard is never tested, and is found only when the freezer has
    thawed.
What to do: move it to where a hand reaches it, and feed from its load side what it guards; or guard the
    circuit by its breaker.
Cannot tell: when where its box is, is not recorded. Out of reach is what is in an attic or a crawlspace, in a
    ceiling, above 6 ft 7 in, behind a hatch, or hidden by something (heights by practice). Asked since the
    2011 edition. What is closed in behind a surface box-not-reachable tells.
Stands: on the device's line, each on its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.protection import guards_of_kind
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.records.boxes import Reach
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.8"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, guards: [], feeds: garden, says: "Garden, receptacles"}
[circuits/garden.yaml]
circuit: garden
name: Garden
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/workshop.yaml]
room: workshop
name: Workshop
kind: workshop
[boxes/workshop.yaml]
room: workshop
boxes:
  D1:
    at: {wall: north, along: 4 ft, up: 8 ft}
    devices: {r1: gfci}    #! guard-out-of-reach
    makeup: end-of-run
[devices/all.yaml]
devices:
  gfci: {is: gfci-receptacle, face: 5-20R, rating: 20 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace("up: 8 ft", "up: 44 in").replace("    #! guard-out-of-reach", "")

UNTOLD = PASSES.replace(", up: 44 in", "")

SINCE = 2011
HIGHEST_IN = 79
CLIMBED_TO = {"attic": "an attic", "crawlspace": "a crawlspace"}


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device that guards what hangs on it, by where its box is."""
    for device in house.devices.values():
        box = house.boxes[device.box]
        room = house.rooms.get(box.room)
        if "gfci" not in guards_of_kind(device.kind) or edition_year(box.edition) < SINCE:
            continue
        kind = room.record.kind if room is not None else ""
        where = f"in {CLIMBED_TO[kind]}" if kind in CLIMBED_TO else _out_of_reach(box)
        if where is None:
            yield CannotTell((device.id, *device.circuits), (f"how high box {box.id} is",), device.place)
        elif where:
            yield Fault(
                place=device.place,
                about=(device.id, *device.circuits),
                found=f"{device.id} guards against ground faults and is {where}.",
                allowed="A guard that a hand reaches without climbing or moving anything.",
                because="It is never tested there, and whoever must reset it does not find it.",
                do="Move it to where it is reached, or guard the circuit by its breaker.",
                edition=box.edition,
            )


def _out_of_reach(box: Box) -> str | None:
    """Why it is out of reach, in words; empty where it is not, None where its height is not recorded."""
    reach, at = box.record.reach, box.record.at
    if isinstance(reach, Reach) and reach.behind:
        return ""
    if isinstance(reach, Reach) and reach.hidden_by:
        return f"behind {reach.hidden_by}"
    if isinstance(reach, Reach) and reach.through:
        return f"behind {reach.through}"
    if at is None or (at.ceiling is None and at.floor is None and at.up is None):
        return None
    if at.ceiling is not None:
        return "in a ceiling"
    return "above 6 ft 7 in" if at.up is not None and at.up.to("in") > HIGHEST_IN else ""
