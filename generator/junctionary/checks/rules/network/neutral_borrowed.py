"""A hot comes back on the neutral of another circuit.

Why it matters: the neutral may carry two circuits' current with no breaker to notice, and who opens it
    with the one breaker off has the other's current in his hand.
What to do: switch off both circuits, prove the box dead, part the neutrals, and give each hot the neutral
    of its own cable.
Cannot tell: when a neutral or a hot on the way meets something unknown or not recorded.
    Two hots that a record gives one circuit share their neutral by right.
Stands: on the line of the joint or the terminal where the circuits' neutrals meet; else on the terminal
    or the device that has the one's hot and the other's neutral. One finding for each such neutral.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.wired import circuit_meeting, circuits_of_breaker, circuits_on, places_of
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, Zone, listed
from junctionary.marks import Place
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "200.4(A)"),
        cite("nec-2023", "300.3(B)"),
    ),
    MADE_UP,
)

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
    devices: {r1: duplex}
    capped: [b1.white, h1.black, h1.bare]
    terminals:
      r1.brass: b1.black
      r1.silver: {wire: h1.white}    #! neutral-borrowed
      r1.green: b1.bare
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("{wire: h1.white}    #! neutral-borrowed", "b1.white").replace(
    "[b1.white, h1", "[h1.white, h1"
)

UNTOLD = PASSES.replace("from: main", "from: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each device with a hot and a neutral, and each neutral that lies on bars for two circuits."""
    borrowed: dict[int, tuple[str, Place, tuple[str, ...]]] = {}
    for box in house.boxes.values():
        for device in box.devices:
            own = network.index.carrying.get(device.id, ())
            for name in (each for each in own if network.terminals[each].role == "neutral"):
                zone = network.zone_of(name)
                if zone.feeds or zone.sources:
                    continue
                place = places_of(box, device).get(name, device.place)
                circuits = _circuits_of_hots(house, network, device.id)
                lent = tuple(each for each in circuits_on(house, zone) if each not in circuits)
                if circuits and lent:
                    borrowed.setdefault(network.zone_at[name], (name, place, (*lent, *circuits)))
                elif name in places_of(box, device) and (needs := _needs(network, device.id, zone)):
                    yield CannotTell((device.id, box.id, name), needs, place)
    for number, zone in enumerate(network.zones):
        circuits = circuits_on(house, zone)
        if len(circuits) > 1 and zone.carries and not zone.feeds and not _has_feeder(house, circuits):
            borrowed.setdefault(number, (circuits[0], house.circuits[circuits[0]].place, circuits))
    for number, (name, place, circuits) in borrowed.items():
        if any(edge.b.endswith("/ground") for edge in network.zones[number].bars):
            continue
        at, where = circuit_meeting(house, frozenset(network.zones[number].points)) or (place, name)
        yield Fault(
            place=at,
            about=(where, *circuits),
            found=f"At {where} the neutrals of {listed(circuits)} are used one for the other.",
            allowed="Each circuit comes back on the neutral that runs beside its own hot.",
            because="It may carry both circuits, and it is live though one breaker is off.",
            do=f"Switch off both circuits, prove them dead, and part the neutrals at {where}.",
        )


def _needs(network: Network, device: str, neutral: Zone) -> tuple[str, ...]:
    """What is not known of a neutral, and of the hots that should come back on it."""
    own = (each for each in network.index.carrying[device] if network.terminals[each].role == "hot")
    unknown = (*neutral.unknown, *(one for each in own for one in network.unknown_at(each)))
    return tuple(dict.fromkeys(each.reason for each in unknown))


def _circuits_of_hots(house: House, network: Network, device: str) -> tuple[str, ...]:
    own = (each for each in network.index.carrying[device] if network.terminals[each].role == "hot")
    feeds = (feed for each in own for feed in network.zone_of(each).feeds)
    return tuple(dict.fromkeys(each for feed in feeds for each in circuits_of_breaker(house, feed.breaker)))


def _has_feeder(house: House, circuits: tuple[str, ...]) -> bool:
    """Whether a feeder or a source's own run is among them: these are no branch circuits."""
    feeders = {each.feeder for each in house.panels.values()}
    return any(each in feeders or each not in house.circuits for each in circuits)
