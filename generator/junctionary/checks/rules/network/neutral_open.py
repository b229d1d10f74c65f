"""A device is fed, but its neutral has no way back to the panel.

Why it matters: it does not work, and as soon as something is switched on, the loose neutral becomes
    live through it. A tester at the hot terminal finds nothing wrong.
What to do: switch the circuit off, prove dead every white in the boxes on the way, and find the one that
    is not joined. Take it as live until then.
Cannot tell: when a cable, an end, a landing or a make-up on the way is unknown or not recorded.
    A hot where the neutral should be is reversed, and is told of by that name.
Stands: on the terminal's or the joint's line, or the device's; where several devices share one loose
    neutral, on the first of them, and the others are named with it.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import doubts_in, places_of
from junctionary.figures import Figures
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (cite("practice", "Every device that is fed has a neutral that comes back to the bar of its panel."),),
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
  - {id: b2, cable: 14/2 NM-B, from: D1, to: D2}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    joints:
      - {join: [b1.black, b2.black]}
      - {join: [b1.bare, b2.bare]}
    capped: [b1.white, b2.white]
  D2:
    devices: {r1: duplex}    #! neutral-open
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = (
    FAILS.replace("capped: [b1.white, b2.white]", "cover: blank")
    .replace("joints:", "joints:\n      - {join: [b1.white, b2.white]}")
    .replace("    #! neutral-open", "")
)  # fmt: skip

UNTOLD = PASSES.replace("from: main", "from: unknown")

OPTIONAL = ("switch", "dimmer", "timer", "sensor", "disconnect", "inlet")
"""Devices that work without a neutral, or that bring one."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each neutral terminal or lead of a device that is live elsewhere."""
    loose: dict[int, list[tuple[Box, Device, str]]] = {}
    for box in house.boxes.values():
        for device in box.devices:
            for name in _open(network, box, device):
                loose.setdefault(network.zone_at[name], []).append((box, device, name))
    for number, found in loose.items():
        yield _told(network, number, found)


def _open(network: Network, box: Box, device: Device) -> list[str]:
    """The neutral terminals of a device that come to no bar and to no hot."""
    if device.kind.is_ in OPTIONAL:
        return []
    own = network.index.carrying.get(device.id, ())
    fed = [network.roles(each) for each in own if network.terminals[each].role == "hot"]
    if not any(each.hot or each.sources or each.unknown for each in fed):
        return []
    names = [each for each in own if network.terminals[each].role == "neutral"]
    roles = {each: network.roles(each) for each in names}
    return [each for each, said in roles.items() if not (said.neutral or said.hot or said.sources)]


def _told(network: Network, number: int, found: list[tuple[Box, Device, str]]) -> Fault | CannotTell:
    box, device, name = found[0]
    place = places_of(box, device).get(name, device.place)
    devices = tuple(dict.fromkeys(each.id for _, each, _ in found))
    about = (*devices, *dict.fromkeys(each.id for each, _, _ in found), name)
    unknown = dict.fromkeys(each.reason for each in network.zones[number].unknown)
    for at, each, terminal in found:
        if terminal not in places_of(at, each):
            unknown.update(dict.fromkeys(doubts_in(network, at)))
    hot = [each for each in network.index.carrying[device.id] if network.terminals[each].role == "hot"]
    if not any(network.roles(each).hot or network.roles(each).sources for each in hot):
        unknown.update(dict.fromkeys(reason for each in hot for reason in network.roles(each).unknown))
    if unknown:
        return CannotTell(about, tuple(unknown), place)
    return Fault(
        place=place,
        about=about,
        found=f"The neutral of {listed(devices)} comes to no bar, while the hot is fed.",
        allowed="A way from every neutral terminal to the bar of its panel.",
        because="The loose neutral goes live through whatever is switched on.",
        do=f"Follow the neutral back from {name} to the end that is not joined; treat it as live till then.",
        edition=box.edition,
    )
