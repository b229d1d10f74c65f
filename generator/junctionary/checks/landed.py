"""How wires are landed, for the checks of terminals."""

from junctionary.house.model import House, Landing
from junctionary.units import WireSize

PUSH_IN_TAKES = WireSize("14 AWG")
MAY_HAVE_PUSH_IN = ("receptacle", "gfci-receptacle", "gfci-device", "switch")


def may_be_push_in(house: House, landing: Landing) -> bool:
    """Whether a landing whose way is not told may be in a push-in hole, by what its device has."""
    device = house.devices.get(landing.device)
    if device is None:
        return False
    ways = device.kind.ways_to_land(landing.terminal.removeprefix(f"{device.id}."))
    return "push-in" in ways if ways is not None else device.kind.is_ in MAY_HAVE_PUSH_IN


def fits_push_in(landing: Landing) -> bool:
    """Whether all its wires are 14 AWG copper, as far as they are recorded."""
    return not any(
        each.size not in (None, PUSH_IN_TAKES) or each.metal not in (None, "copper") for each in landing.wires
    )
