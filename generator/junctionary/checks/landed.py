"""How wires are landed, for the checks of terminals."""

from junctionary.figures.receptacles import rating_of
from junctionary.house.model import Device, House, Landing
from junctionary.house.terminals import terminals_of
from junctionary.units import WireSize

PUSH_IN_TAKES = WireSize("14 AWG")
MOST_A = 20
MAY_HAVE_PUSH_IN = ("receptacle", "gfci-receptacle", "gfci-device", "switch")


def may_be_push_in(house: House, landing: Landing) -> bool:
    """Whether a landing whose way is not told may be in a push-in hole, by what its device has."""
    device = house.devices.get(landing.device)
    if device is None or _is_no_place_for_one(device, landing.terminal):
        return False
    ways = device.kind.ways_to_land(landing.terminal.removeprefix(f"{device.id}."))
    return "push-in" in ways if ways is not None else device.kind.is_ in MAY_HAVE_PUSH_IN


def how_landed(device: str) -> str:
    """The fact that is missing where nobody told how a device's wires are landed, in one wording."""
    return f"how the wires on {device} are landed"


def fits_push_in(landing: Landing) -> bool:
    """Whether all its wires are 14 AWG copper, as far as they are recorded."""
    return not any(
        each.size not in (None, PUSH_IN_TAKES) or each.metal not in (None, "copper") for each in landing.wires
    )


def _is_no_place_for_one(device: Device, terminal: str) -> bool:
    """A ground is under a screw of its own, and a device above 20 A has lugs."""
    part = terminal.removeprefix(f"{device.id}.")
    grounds = [each.name for each in terminals_of(device.kind) if each.role == "ground"]
    rating = rating_of(device.kind)
    return part in grounds or (rating is not None and rating > MOST_A)
