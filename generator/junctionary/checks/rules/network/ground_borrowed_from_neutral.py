"""A device's ground is fed from its neutral.

Why it matters: the metal of whatever is plugged in carries the neutral's current, and becomes live
    as soon as that neutral comes loose anywhere. A plug-in tester shows such a receptacle as right.
What to do: with the circuit off and the box proved dead, take the jumper out. Join the terminal to a ground
    that comes from the panel; where there is none, use what the code allows without one, and label it.
Cannot tell: when a cable, an end, a landing or a make-up on the way is unknown or not recorded.
Stands: on the line of the joint or the terminal where the two meet, or the device's. One finding for all
    that hang on one neutral.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import meeting_of, neutral_or_ground, places_of
from junctionary.figures import Figures
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network, listed
from junctionary.house.terminals import terminals_of
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "250.142(B)"),), MADE_UP)

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
  - {id: b1, cable: 14/2 NM no ground, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}
    terminals:
      r1.brass: b1.black
      r1.silver: b1.white
      r1.green: {wire: r1.silver-bottom}    #! ground-borrowed-from-neutral
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = (
    FAILS.replace("14/2 NM no ground", "14/2 NM-B")
    .replace("{wire: r1.silver-bottom}    #! ground-borrowed-from-neutral", "b1.bare")
)  # fmt: skip

UNTOLD = PASSES.replace("from: main", "from: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each grounding terminal or lead that shares its conductor with a neutral and with no ground."""
    found: dict[int, list[tuple[Box, Device, str]]] = {}
    for box in house.boxes.values():
        for device in box.devices:
            for each in terminals_of(device.kind):
                name = f"{device.id}.{each.name}"
                if each.role != "ground":
                    continue
                roles = network.roles(name)
                if roles.neutral and not roles.ground:
                    found.setdefault(network.zone_at[name], []).append((box, device, name))
                elif not roles.ground and roles.unknown:
                    place = places_of(box, device).get(name, device.place)
                    yield CannotTell((device.id, box.id, name), roles.unknown, place)
    for number, devices in found.items():
        yield _told(house, network, number, devices)


def _told(house: House, network: Network, number: int, found: list[tuple[Box, Device, str]]) -> Fault:
    box, device, name = found[0]
    met = meeting_of(house, frozenset(network.zones[number].points), neutral_or_ground)
    place, at = met or (places_of(box, device).get(name, device.place), name)
    devices = tuple(dict.fromkeys(each.id for _, each, _ in found))
    return Fault(
        place=place,
        about=(*devices, *dict.fromkeys(each.id for each, _, _ in found), at, *device.circuits),
        found=f"The ground of {listed(devices)} is joined to the neutral at {at}, and to no ground.",
        allowed="A ground that comes from the panel on a conductor of its own.",
        because="The metal goes live when that neutral comes loose, and a plug-in tester does not show it.",
        do=f"With the circuit proved dead, part the two at {at}, and bring a ground, or label it.",
        edition=box.edition,
    )
