"""Whether a ground comes to a box at all: none is asked for where there never was one."""

from junctionary.house.model import Box, House
from junctionary.house.network import is_ground

NO_GROUND_LABEL = "no-equipment-ground"


def grounds_come(house: House, box: Box) -> bool | None:
    """Whether a cable that ends in the box has a ground; None where a cable is not known."""
    cables = [house.runs[each] for each in box.runs]
    if any(any(map(is_ground, each.conductors)) for each in cables):
        return True
    return None if not cables or any(not each.conductors for each in cables) else False
