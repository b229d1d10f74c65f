"""A light in a crawlspace is on a circuit that opens on no ground fault.

Why it matters: whoever crawls there lies on damp earth, with the lamp a hand's breadth from the head; a
    broken bulb or a crushed cable kills.
What to do: feed it from a breaker that opens on a ground fault, or from the load side of a GFCI device
    outside the crawlspace.
Cannot tell: when what feeds the light or what its breaker guards against is not recorded. Asked of lights
    of 120 V since the 2017 edition (from memory).
Stands: on the light's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.ground_fault_wired import light_in_crawlspace
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.8(C)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, guards: [], feeds: crawl, says: "Crawlspace, light"}
[circuits/crawl.yaml]
circuit: crawl
name: Crawlspace light
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: D1}
[rooms/crawl.yaml]
room: crawl
name: Crawlspace
kind: crawlspace
[boxes/crawl.yaml]
room: crawl
boxes:
  D1:
    devices: {f1: lamp}    #! crawlspace-light-without-gfci
    makeup: end-of-run
[devices/all.yaml]
devices:
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
"""

PASSES = FAILS.replace("guards: []", "guards: [gfci]").replace("    #! crawlspace-light-without-gfci", "")

UNTOLD = PASSES.replace("guards: [gfci], ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each light in a crawlspace, by what guards it."""
    for device in house.devices.values():
        guarded = figures.guarded.get(device.id)
        if guarded is None or not light_in_crawlspace(house, device):
            continue
        held = guarded.against("gfci")
        about = (device.id, *device.circuits, *guarded.breakers)
        if held is None:
            yield CannotTell(about, guarded.lacks, device.place)
        elif not held:
            yield Fault(
                place=device.place,
                about=about,
                found=f"{device.id} lights a crawlspace, and nothing on its way to the source opens on a "
                "ground fault.",
                allowed="There, a light of 120 V that opens on a ground fault.",
                because="Whoever crawls there lies on damp earth with the lamp in reach.",
                do="Feed it from a GFCI breaker, or from the load side of a GFCI device outside.",
                edition=house.boxes[device.box].edition,
            )
