"""A receptacle with a ground hole is fed by a cable that has no ground.

Why it matters: whoever plugs in a tool with a three-pin plug trusts a ground that is not there; a
    fault to its case trips nothing.
What to do: run a ground with the circuit; or put in a two-slot receptacle, or a GFCI one marked "no
    equipment ground", or guard it by a GFCI and mark it "GFCI protected" and "no equipment ground". No
    ground is carried on from such a receptacle.
Cannot tell: when a cable that comes to the box is unknown or not recorded, or when what guards a
    receptacle that is marked so is not.
Stands: on the receptacle's line. Where a ground comes to the box and is not joined, another check speaks.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.grounded import NO_GROUND_LABEL, grounds_come
from junctionary.figures import Figures
from junctionary.figures.places import has_ground_hole
from junctionary.house.model import Device, House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "406.4(D)(2)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, guards: [], feeds: den, says: "Den"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM no ground, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
built_to: nec-1956
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}    #! three-hole-on-no-ground
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A}
"""

PASSES = FAILS.replace("guards: []", "guards: [gfci]").replace(
    "    devices: {r1: duplex}    #! three-hole-on-no-ground",
    "    devices: {r1: duplex}\n    labels: {r1: [gfci-protected, no-equipment-ground]}",
)

UNTOLD = PASSES.replace("guards: [gfci], ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each receptacle with a ground hole in a box to which no ground comes."""
    for device in house.devices.values():
        box = house.boxes[device.box]
        if not has_ground_hole(device.kind):
            continue
        come = grounds_come(house, box)
        if come is None:
            untold = tuple(f"the cable of run {each}" for each in box.runs if not house.runs[each].conductors)
            yield CannotTell((device.id, box.id), untold or (f"the cables of box {box.id}",), device.place)
        if come is not False:
            continue
        guarded = figures.guarded[device.id]
        marked = NO_GROUND_LABEL in device.labels
        held = guarded.against("gfci")
        if marked and held is None:
            yield CannotTell((device.id, *guarded.breakers), guarded.lacks, device.place)
        elif not (marked and held):
            yield _fault(device, bool(held), box.edition)


def _fault(device: Device, guarded: bool, edition: str) -> Fault:
    do = "Mark it" if guarded else "Put in a two-slot receptacle, or guard it by a GFCI and mark it"
    return Fault(
        place=device.place,
        about=(device.id, *device.circuits),
        found=f"{device.id} has a ground hole, and no cable at its box has a ground"
        + (" (a GFCI guards it; no label says so)." if guarded else "."),
        allowed="Without a ground: two slots, or a GFCI and the label that says there is no ground.",
        because="A fault to the case of what is plugged in trips nothing.",
        do=f'{do} "GFCI protected" and "no equipment ground"; or run a ground.',
        edition=edition,
    )
