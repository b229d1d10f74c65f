"""What to reset for a device of which nothing else is told."""

from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.resets import Reset, resets_of
from junctionary.house.supply import Supply
from junctionary.house.told import told


def resets_for(house: House, network: Network, supply: Supply, device: str) -> tuple[Reset, ...]:
    """What to reset for a dead device, nothing else told; none where it cannot be seen dead or live."""
    if not any(each.device == device for each in supply.outlets.values()):
        return ()
    return resets_of(house, network, supply, told(house, supply.outlets, (device,), (), {}), ())
