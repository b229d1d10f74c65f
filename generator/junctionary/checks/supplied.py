"""Panels by what supplies them: where neutral and ground may meet, and what a feeder must bring."""

from junctionary.figures.grounds import building_of
from junctionary.house.model import House, Panel
from junctionary.house.network import is_service_panel
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sources import edition_year

GROUND_TO_EVERY_BUILDING = 2008
"""The edition from which a feeder to another building brings a ground (250.32(B))."""


def at_service(house: House, panel: Panel) -> bool | None:
    """Whether the utility's conductors end in a panel; None where nothing tells what feeds it."""
    if is_service_panel(house, panel):
        return True
    return False if panel.feeder is not None else None


def bond_untold(panel: Panel) -> str | None:
    """The gap where nobody told whether neutral and ground are joined in a panel."""
    known = isinstance(panel.record.bonded, bool)
    return None if known else f"whether neutral and ground are joined in panel {panel.id}"


def old_three_wire(house: House, panel: Panel) -> bool | tuple[str, ...]:
    """Whether the neutral may serve as ground in a panel: or the facts that would tell.

    Only behind a feeder of before 2008 to a building that stands apart and that no metal
    path joins to the rest (250.32(B), the exception for what exists).
    """
    feeder = house.circuits.get(panel.feeder or "")
    editions = (panel.edition, *([feeder.edition] if feeder else []))
    if min(map(edition_year, editions)) >= GROUND_TO_EVERY_BUILDING:
        return False
    named = building_of(house, panel.id)
    building = next((each for each in house.record.buildings if each.id == named), None)
    if building is None:
        return (f"in which building panel {panel.id} stands",)
    if not isinstance(building.detached, bool):
        return (f"whether building {building.id} stands apart",)
    if not building.detached:
        return False
    if building.metal_path is None or building.metal_path is UNKNOWN:
        return (f"whether a metal path joins building {building.id} to the house",)
    return building.metal_path is NONE


def supply_of_building(house: House, building: str) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The feeders of panels in a building, and the branch circuits that come there from elsewhere."""
    panels = [each for each in house.panels if building_of(house, each) == building]
    feeders = [house.panels[each].feeder for each in panels]
    branches = [
        circuit.id
        for circuit in house.circuits.values()
        if circuit.record.purpose not in ("feeder", "source")
        and circuit.breakers
        and not any(house.breakers[each].panel in panels for each in circuit.breakers)
        and any(
            house.rooms[each].record.building == building for each in circuit.rooms if each in house.rooms
        )
    ]
    return tuple(each for each in feeders if each is not None), tuple(branches)
