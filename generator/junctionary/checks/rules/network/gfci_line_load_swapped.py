"""A GFCI device is fed on its load terminals.

Why it matters: when it trips it may leave its own face live, and an older one shows nothing wrong. What
    it was meant to guard may not be guarded.
What to do: with the box proved dead, put the feed on the terminals marked line and what goes on to
    others on those marked load; then press test, and check that its own face goes dead.
Cannot tell: when something unknown or not recorded stands between the device and a breaker.
Stands: on the line of the load terminal, or the device's.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import places_of
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.network.edges import OPEN_IN_ZONES
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "110.3(B)"),), MADE_UP)

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
    devices: {r1: gfci}
    terminals:
      r1.load-brass: {wire: b1.black}    #! gfci-line-load-swapped
      r1.load-silver: b1.white
      r1.green: b1.bare
[devices/all.yaml]
devices:
  gfci: {is: gfci-receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("r1.load-", "r1.line-").replace(
    "{wire: b1.black}    #! gfci-line-load-swapped", "b1.black"
)

UNTOLD = PASSES.replace("from: main", "from: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each GFCI device, by the side on which a breaker is met with its own contacts open."""
    for box in house.boxes.values():
        for device in box.devices:
            line, load = f"{device.id}.line-brass", f"{device.id}.load-brass"
            if line not in network.terminals:
                continue
            places = places_of(box, device)
            if _fed(network, load, device.id) and not _fed(network, line, device.id):
                yield Fault(
                    place=places.get(load, device.place),
                    about=(device.id, box.id, load, *device.circuits),
                    found=f"The feed of {device.id} is on {load}.",
                    allowed="The feed on the line terminals, what goes on to others on the load terminals.",
                    because="Tripped, it may leave its own face live, and guard nothing.",
                    do=f"With {box.id} proved dead, change line and load over, then press test.",
                    edition=box.edition,
                )
            elif not network.zone_of(line).feeds and (needs := network.roles(line).unknown):
                yield CannotTell((device.id, box.id), needs, places.get(line, device.place))


def _fed(network: Network, start: str, device: str) -> bool:
    """Whether a breaker is met from a terminal without going through the device itself."""
    poles = {feed.pole for feed in network.zone_of(start).feeds}
    waiting, seen = [start], {start}
    while waiting and poles:
        point = waiting.pop()
        if point in poles:
            return True
        for edge in network.at[point]:
            other = edge.other(point)
            if edge.kind not in OPEN_IN_ZONES and edge.opened_by != device and other not in seen:
                seen.add(other)
                waiting.append(other)
    return False
