"""A shared neutral goes through a device's own terminals.

Why it matters: take that device out and the loads beyond it, on both legs, stand in series across
    240 V; what is small there burns.
What to do: with the breakers off and the box proved dead, join the whites under a connector and bring one
    pigtail to the device.
Cannot tell: when the make-up of a box on a circuit of several breakers is unknown or not recorded.
Stands: on the line of the terminal, or the device's.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import doubts_in, places_of
from junctionary.figures import Figures
from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "300.13(B)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, feeds: bench.black, says: "Bench, left"}
  3: {rating: 20 A, feeds: bench.red, says: "Bench, right"}
ties: [[1, 3]]
[circuits/bench.yaml]
circuit: bench
name: Bench
runs:
  - {id: b1, cable: 12/3 NM-B, from: main, to: D1}
  - {id: b2, cable: 12/3 NM-B, from: D1, to: D2}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}
    joints:
      - {join: [b1.black, b2.black, r1.brass]}
      - {join: [b1.red, b2.red]}
      - {join: [b1.bare, b2.bare, r1.green]}
    terminals:
      r1.silver-top: {wire: b1.white}    #! shared-neutral-through-device
      r1.silver-bottom: b2.white
  D2:
    capped: [b2]
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
"""

PASSES = (
    FAILS.replace("      r1.silver-top: {wire: b1.white}    #! shared-neutral-through-device\n", "")
    .replace("    terminals:\n", "")
    .replace("      r1.silver-bottom: b2.white\n", "      - {join: [b1.white, b2.white, r1.silver]}\n")
)  # fmt: skip

UNTOLD = (
    PASSES.partition("  D1:")[0] + """  D1: {makeup: unknown}
  D2: {capped: [b2]}
"""
)  # fmt: skip


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device, by the neutrals of cables that are joined by its terminals alone."""
    for box in house.boxes.values():
        shared = [each for each in box.runs if is_shared(network, each)]
        if not shared:
            continue
        if needs := doubts_in(network, box):
            yield CannotTell((box.id, *shared), needs, box.place)
        for device in box.devices:
            if found := _through(network, box, device):
                yield _told(box, device, found)


def is_shared(network: Network, run: str) -> bool:
    """Whether a run has hots of two poles or more, and a neutral beside them."""
    roles = [network.roles(edge.a) for edge in network.index.conductors.get(run, ())]
    poles = {feed.pole for each in roles for feed in each.hot}
    return len(poles) > 1 and any(each.neutral and not each.hot for each in roles)


def _through(network: Network, box: Box, device: Device) -> dict[str, tuple[str, ...]]:
    """By terminal of a device, the neutrals landed on it, where two come to its joined terminals."""
    landed: dict[str, tuple[str, ...]] = {}
    for landing in box.landings:
        if landing.device == device.id and network.terminals[landing.terminal].role == "neutral":
            landed[landing.terminal] = tuple(
                each.name for each in landing.wires if each.kind == "conductor" and each.run is not None
            )
    wires = [each for names in landed.values() for each in names]
    runs = {each.partition("/")[2].partition(".")[0] for each in wires}
    shared = sum(is_shared(network, each) for each in runs)
    joined = len({network.net_at[each] for each in wires}) == 1
    # Only where a shared run comes in by the device, and something goes on from it.
    return landed if shared and len(wires) > 1 and joined else {}


def _told(box: Box, device: Device, landed: dict[str, tuple[str, ...]]) -> Fault:
    places = places_of(box, device)
    wires = [each for names in landed.values() for each in names]
    return Fault(
        place=min(places.get(each, device.place) for each in landed),
        about=(device.id, box.id, *wires, *device.circuits),
        found=f"The shared neutral goes through {device.id}: {listed(wires)} meet on its terminals.",
        allowed="A shared neutral that stays whole when a device is taken out.",
        because="With the device out, loads of both legs beyond it stand in series across 240 V.",
        do=f"With both breakers off and {box.id} proved dead, join the whites and bring a pigtail.",
        edition=box.edition,
    )
