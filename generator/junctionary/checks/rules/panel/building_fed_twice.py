"""A building that stands apart is fed by more than one feeder or circuit.

Why it matters: whoever works there switches off the panel, or the one breaker they know, and takes the
    building for dead. What else comes from the house stays live.
What to do: feed everything there from one feeder and its panel, or from one circuit. Until then write at the
    building, beside its switch, every breaker that feeds it.
Cannot tell: when what feeds a circuit that serves the building is not recorded. A multiwire circuit is one. A
    circuit for lighting, which may be switched from both buildings, and a second source are left alone, and
    so is work before the 2008 edition. From memory.
Stands: on the building's line in house.yaml.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import HELD_SINCE
from junctionary.checks.supplied import supply_of_building
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "225.30"),), ROUGHED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
buildings:
  - {id: house}
  - {id: shed, detached: true, electrodes: [rod, rod]}    #! building-fed-twice
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, guards: [gfci], feeds: bench, says: "Shed, bench"}
  2: {rating: 20 A, guards: [gfci], feeds: wall, says: "Shed, wall receptacles"}
[circuits/bench.yaml]
circuit: bench
name: Bench
purpose: workshop
serves: [shop]
[circuits/wall.yaml]
circuit: wall
name: Wall receptacles
purpose: workshop
serves: [shop]
[rooms/shop.yaml]
room: shop
name: Shed
kind: workshop
building: shed
"""

PASSES = (
    FAILS.replace('  2: {rating: 20 A, guards: [gfci], feeds: wall, says: "Shed, wall receptacles"}\n', "")
    .replace(
        "[circuits/wall.yaml]\ncircuit: wall\nname: Wall receptacles\npurpose: workshop\nserves: [shop]\n", ""
    )
    .replace("    #! building-fed-twice", "")
)

UNTOLD = FAILS.replace("    #! building-fed-twice", "").replace(
    '  2: {rating: 20 A, guards: [gfci], feeds: wall, says: "Shed, wall receptacles"}\n', ""
)

SWITCHED_FROM_BOTH = "lighting"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each building that stands apart, by what feeds it."""
    for building in house.record.buildings:
        if building.detached is not True:
            continue
        feeders, branches = supply_of_building(house, building.id)
        supply = tuple(
            each
            for each in dict.fromkeys((*feeders, *branches))
            if house.circuits[each].record.purpose != SWITCHED_FROM_BOTH
            and edition_year(house.circuits[each].edition) >= HELD_SINCE
        )
        unfed = [
            each.id
            for each in house.circuits.values()
            if not each.breakers
            and each.rooms
            and all(
                house.rooms[room].record.building == building.id for room in each.rooms if room in house.rooms
            )
        ]
        if len(supply) > 1:
            yield Fault(
                place=building.place,
                about=(building.id, *supply),
                found=f"Building {building.id} is fed by {listed(supply)}.",
                allowed="One feeder, or one circuit, for a building that stands apart.",
                because="Whoever switches one of them off takes the building for dead.",
                do="Feed all of it from one; until then write every breaker beside its switch.",
                edition=max((house.circuits[each].edition for each in supply), key=edition_year),
            )
        elif unfed:
            needs = tuple(f"which breaker feeds circuit {each}" for each in unfed)
            yield CannotTell((building.id, *unfed), needs, building.place)
