"""Two breakers feed one conductor.

Why it matters: with one of them off the wire stays live from the other, and the wire is guarded by
    both ratings together; where they are on opposite legs it is a dead short.
What to do: switch both off, find where the two circuits meet, prove that box dead, and part them there.
Cannot tell: when conductors of several circuits enter a box whose make-up is unknown or not recorded.
    Every switch counts as closed.
Stands: on the line of the joint or the terminal where the two meet; on the device's where its own tab or
    contact joins them; else on the second breaker's.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import circuit_meeting, doubts_in
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, Zone, listed
from junctionary.house.network.ties import traced_circuits
from junctionary.marks import Place
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("practice", "Each hot conductor is fed by one breaker."),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: den, says: "Den"}
  3: {rating: 15 A, feeds: hall, says: "Hall"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    joints:
      - {join: [b1.black, h1.black]}    #! circuits-joined
      - {join: [b1.bare, h1.bare]}
    capped: [b1.white, h1.white]
"""

PASSES = FAILS.replace("      - {join: [b1.black, h1.black]}    #! circuits-joined\n", "").replace(
    "capped: [", "capped: [b1.black, h1.black, "
)

UNTOLD = FAILS.partition("    joints:")[0].replace("  D1:", "  D1: {makeup: unknown}")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each piece of conductor that two poles make live, every switch closed."""
    for zone in network.zones:
        feeds = {feed.pole: feed for feed in zone.feeds if feed.edge.kind == "breaker"}
        if len(feeds) < 2:
            continue
        breakers = tuple(dict.fromkeys(feed.breaker for feed in feeds.values()))
        met = circuit_meeting(house, frozenset(zone.points)) or _inside(house, network, zone)
        last = list(feeds.values())[-1]
        place, at = met or (last.edge.place, last.pole)
        yield Fault(
            place=place,
            about=(at, *breakers, *zone.runs),
            found=f"The poles {listed(feeds)} feed one conductor; they meet at {at}.",
            allowed="One breaker pole for each hot conductor.",
            because="With one of them off it stays live, and its wire is guarded by neither rating.",
            do=f"Switch off {listed(breakers)}, prove it dead, and part the circuits at {at}.",
        )
    for box in house.boxes.values():
        circuits = traced_circuits(house, box.runs)
        if len(circuits) > 1 and (needs := doubts_in(network, box)):
            yield CannotTell((box.id, *circuits), needs, box.place)


def _inside(house: House, network: Network, zone: Zone) -> tuple[Place, str] | None:
    """The device whose tab or contact joins conductors of two circuits."""
    devices = dict.fromkeys(each.rpartition(".")[0] for each in zone.points if each in network.terminals)
    found = (house.devices[each] for each in devices if len(house.devices[each].circuits) > 1)
    return next(((each.place, each.id) for each in found), None)
