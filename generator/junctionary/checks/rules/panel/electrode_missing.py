"""The service, or a building that stands apart, has no grounding electrode.

Why it matters: lightning and what the utility's high-voltage lines throw onto the house then find no way to
    earth but through the wiring, the appliances, and whoever touches them.
What to do: have electrodes put in, such as two rods or the steel in the foundation, and joined to the
    service, or to the panel of the building.
Cannot tell: when what electrodes there are is not recorded. A building that stands apart needs none where a
    single branch circuit feeds it, with an equipment ground. Whether one rod is enough is not judged. The
    service of a panel built before the 2008 edition, and a building all of whose supply is, is left alone.
Stands: on the service's key in house.yaml, or the building's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import HELD_SINCE
from junctionary.checks.supplied import supply_of_building
from junctionary.figures import Figures
from junctionary.figures.service import service_panel
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.records.house import Building
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "250.32(A)"), cite("nec-2023", "250.50")), ROUGHED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
service: {disconnect: main, electrodes: [rod, rod]}
buildings:
  - {id: house}
  - {id: shed, detached: true, metal_path: none, electrodes: []}    #! electrode-missing
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
breakers:
  1+3: {rating: 60 A, feeds: to-shed, says: Shed panel}
[panels/shed.yaml]
panel: shed
at: {room: shop, wall: north, along: 2 ft, up: 5 ft}
spaces: 6
fed_by: to-shed
bonded: false
[circuits/to-shed.yaml]
circuit: to-shed
name: Feeder to the shed
purpose: feeder
runs:
  - {id: f1, cable: 6/3 UF-B, from: main, to: shed, buried: 24 in}
[rooms/shop.yaml]
room: shop
name: Shed
kind: workshop
building: shed
"""

PASSES = FAILS.replace("electrodes: []", "electrodes: [rod, rod]").replace("    #! electrode-missing", "")

UNTOLD = PASSES.replace(", electrodes: [rod, rod]", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The service, and each building that stands apart and is fed by more than one branch circuit."""
    yield from _of_service(house)
    for building in house.record.buildings:
        if building.detached is not True or building.electrodes:
            continue
        feeders, branches = supply_of_building(house, building.id)
        supply = (*feeders, *branches)
        editions = [house.circuits[each].edition for each in supply]
        if all(edition_year(each) < HELD_SINCE for each in editions) or (len(supply) == 1 and branches):
            continue
        place = building.place
        if building.electrodes is None:
            yield CannotTell((building.id, *supply), (f"what electrodes building {building.id} has",), place)
            continue
        yield _fault(building, supply, max(editions, key=edition_year))


def _of_service(house: House) -> Iterator[Fault | CannotTell]:
    """A service with none; where one is told without them electrode-wire-too-small asks for them."""
    service, panel = house.record.service, service_panel(house)
    if panel is None or edition_year(panel.edition) < HELD_SINCE:
        return
    if service is None:
        yield CannotTell((panel.id,), ("what electrodes the service has",), panel.place)
    if service is None or service.electrodes != []:
        return
    yield Fault(
        place=house.record.place_of("service"),
        about=(panel.id,),
        found="The service has no grounding electrode.",
        allowed="Electrodes of the building, joined to the service.",
        because="Lightning then finds no way to earth but through the house.",
        do="Have electrodes put in, such as two rods, and joined to the service.",
        edition=panel.edition,
    )


def _fault(building: Building, supply: tuple[str, ...], edition: str) -> Fault:
    return Fault(
        place=building.place,
        about=(building.id, *supply),
        found=f"Building {building.id} is fed by {' and '.join(supply)} and has no grounding electrode.",
        allowed="Electrodes of its own, unless one branch circuit with a ground is all that feeds it.",
        because="Lightning then finds no way to earth but through the wiring and whoever touches it.",
        do=f"Have electrodes put in at building {building.id}, such as two rods, and joined to its panel.",
        edition=edition,
    )
