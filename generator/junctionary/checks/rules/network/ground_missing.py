"""A device has a grounding terminal, and nothing joins it to the panel's ground.

Why it matters: with no way back to the panel, a fault to metal trips nothing; the metal stays live
    until a hand gives it a way.
What to do: with the breakers off and the box proved dead, join the terminal to the ground of the cable that
    feeds it, and follow that back where it is lost. Where the old cable has none, run one, or use what the
    code allows without it.
Cannot tell: when a cable, an end, a landing or a make-up on the way is unknown or not recorded; or, where
    no ground comes to the box, whether a luminaire or an appliance has a lead for one.
    Where no ground conductor comes to the box, a switch is left alone, and a receptacle has a check
    of its own. A terminal joined to a neutral is told of as a borrowed ground.
Stands: on the terminal's or the joint's line, or the device's. One finding a device.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.grounded import grounds_come
from junctionary.checks.wired import doubts_in, places_of
from junctionary.figures import Figures
from junctionary.figures.places import has_ground_hole
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network
from junctionary.house.terminals import has_leads, terminals_of
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "250.114"),
        cite("nec-2023", "406.4"),
    ),
    MADE_UP,
)

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
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}    #! ground-missing
    capped: [b1.bare]
    terminals:
      r1.brass: b1.black
      r1.silver: b1.white
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = (
    FAILS.replace("    capped: [b1.bare]\n", "")
    .replace("    #! ground-missing", "")
    .replace("      r1.silver: b1.white", "      r1.silver: b1.white\n      r1.green: b1.bare")
)

UNTOLD = PASSES.replace("from: main", "from: unknown")

SWITCHES = ("switch", "dimmer", "timer", "sensor")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each grounding terminal or lead, by what it comes to."""
    for box in house.boxes.values():
        for device in box.devices:
            grounds = [
                f"{device.id}.{each.name}" for each in terminals_of(device.kind) if each.role == "ground"
            ]
            if grounds and device.kind.is_ != "inlet" and not _never_had_one(house, box, device):
                yield from _judged(house, network, box, device, grounds[0])


def _never_had_one(house: House, box: Box, device: Device) -> bool:
    """Whether no ground comes to the box, and the device may do without or another rule speaks of it."""
    if grounds_come(house, box) is not False:
        return False
    return device.kind.is_ in SWITCHES or has_ground_hole(device.kind)


def _judged(
    house: House, network: Network, box: Box, device: Device, name: str
) -> Iterator[Fault | CannotTell]:
    roles = network.roles(name)
    if roles.ground or roles.neutral or roles.hot:
        return
    places = places_of(box, device)
    needs = roles.unknown if name in places else (*roles.unknown, *doubts_in(network, box))
    none_comes = grounds_come(house, box) is False
    if none_comes and has_leads(device.kind) and device.kind.leads is None:
        needs = (*needs, f"the leads of {device.id}")
    if needs:
        yield CannotTell((device.id, box.id, name), needs, places.get(name, device.place))
        return
    mend = f"With {box.id} proved dead, join {name} to the ground of the feeding cable, whole to the panel."
    if none_comes:
        mend = f"Run a ground to {box.id} from the panel, and join {name} to it."
    yield Fault(
        place=places.get(name, device.place),
        about=(device.id, box.id, name, *device.circuits),
        found=f"Nothing joins {name} to the ground of a panel.",
        allowed="A way from every grounding terminal to the panel's ground.",
        because="A fault to metal trips nothing, and leaves the metal live.",
        do=mend,
        edition=box.edition,
    )
