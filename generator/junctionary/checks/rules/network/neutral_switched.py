"""A switch stands in the neutral alone.

Why it matters: the lamp goes out and stays live: whoever changes it with the switch off can touch the
    hot.
What to do: with the circuit proved dead, join the neutral through and bring the hot to the switch.
Cannot tell: when nothing tells what a switch's terminals come to in the end, because something on the
    way is unknown or not recorded. A disconnect that opens the hot as well is left alone.
Stands: on the line of the switch's first terminal, or the switch's own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import places_of
from junctionary.figures import Figures
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "404.2(B)"),), MADE_UP)

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
  - {id: b2, cable: 14/2 NM-B, from: D1, to: D2}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {s1: switch}
    joints:
      - {join: [b1.black, b2.black]}
      - {join: [b1.bare, b2.bare, s1.green]}
    terminals:
      s1.brass-1: {wire: b1.white}    #! neutral-switched
      s1.brass-2: b2.white
  D2:
    devices: {f1: lamp}
    makeup: end-of-run
[devices/all.yaml]
devices:
  switch: {is: switch, ways: 1}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = (
    FAILS.replace("[b1.black, b2.black]", "[b1.white, b2.white]")
    .replace("{wire: b1.white}    #! neutral-switched", "b1.black")
    .replace("s1.brass-2: b2.white", "s1.brass-2: b2.black")
)  # fmt: skip

UNTOLD = PASSES.replace("from: main", "from: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each switch, by what its terminals come to with every switch closed."""
    for box in house.boxes.values():
        for device in box.devices:
            contacts = [
                edge
                for name in network.index.carrying.get(device.id, ())
                for edge in network.at[name]
                if edge.kind == "switch" and edge.a == name
            ]
            if contacts:
                yield from _judged(network, box, device, [edge.a for edge in contacts])


def _judged(network: Network, box: Box, device: Device, names: list[str]) -> Iterator[Fault | CannotTell]:
    roles = [network.roles(each) for each in names]
    places = places_of(box, device)
    place = min((places[each] for each in places if each in names), default=device.place)
    if any(each.hot or each.sources for each in roles):
        return
    if any(each.neutral for each in roles):
        yield Fault(
            place=place,
            about=(device.id, box.id, *device.circuits),
            found=f"{device.id} opens the neutral, and no hot.",
            allowed="A switch opens the hot; the neutral goes through whole.",
            because="What it switches off stays live.",
            do=f"With {box.id} proved dead, join the neutral through and land the hot on {device.id}.",
            edition=box.edition,
        )
    elif needs := tuple(dict.fromkeys(reason for each in roles for reason in each.unknown)):
        yield CannotTell((device.id, box.id), needs, place)
