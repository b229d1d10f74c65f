"""What voltage a device is made for, and what its conductors bring it."""

from fractions import Fraction
from typing import Literal

from junctionary.figures.drawn_at import volts_of
from junctionary.house.model import Device, House
from junctionary.house.network import Network
from junctionary.house.outlets import Outlet, outlets_of_device
from junctionary.house.terminals import is_across

Brings = Literal["both legs", "one leg", "one leg twice"]


def made_for(house: House, device: Device) -> Fraction | None:
    """The nominal voltage of a device, by its kind, face or leads; None where nothing tells."""
    return volts_of(house, None, device)


def brought(network: Network, outlet: Outlet) -> Brings | None:
    """What the conductors bring to an outlet, every switch closed; None where they do not tell."""
    feeds = {feed.pole: feed for name in outlet.carries for feed in network.zone_of(name).feeds}
    legs = [each.leg for each in feeds.values()]
    if None in legs or not legs:
        return None
    if len(set(legs)) > 1:
        return "both legs"
    if len(feeds) > 1:
        return "one leg twice"
    returns = any(network.roles(each).neutral and not network.zone_of(each).feeds for each in outlet.carries)
    return "one leg" if returns else None


def wrongly_fed(house: House, network: Network, device: Device) -> Brings | None:
    """What a device is brought that it is not made for; None where it suits, or nothing tells."""
    volts = made_for(house, device)
    if volts is None:
        return None
    suits: tuple[Brings, ...] = ("both legs",) if is_across(volts) else ("one leg", "one leg twice")
    for outlet in outlets_of_device(device):
        found = brought(network, outlet)
        if found is not None and found not in suits:
            return found
    return None
