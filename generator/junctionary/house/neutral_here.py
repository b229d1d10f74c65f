"""Whether there is a neutral in a device's box that belongs with it, and which white wires are hot."""

from dataclasses import dataclass
from typing import Literal

from junctionary.house.model import Box, House
from junctionary.house.network import Network


@dataclass(frozen=True, slots=True)
class NeutralHere:
    """``answer`` is unknown where the record cannot tell. ``at`` are the points of the box that are neutral.

    ``hot_whites`` are the white conductors of the box that can be live.
    """

    answer: Literal["yes", "no", "unknown"]
    at: tuple[str, ...]
    hot_whites: tuple[str, ...]
    why: tuple[str, ...] = ()


def neutral_here(house: House, network: Network, device_id: str) -> NeutralHere:
    """By the network, not by colour. KeyError where there is no such device.

    A neutral counts only where it is of a circuit that also reaches the
    device: one borrowed from another circuit is none.
    """
    box = house.boxes[house.devices[device_id].box]
    groups = network.groups.of_zone
    zones = {network.zone_at[each] for each in network.index.carrying.get(device_id, ())}
    own = {groups[each] for each in zones if each in groups and network.zones[each].feeds}
    found = [
        each
        for each in _inside(box)
        if each in network.zone_at
        and groups.get(network.zone_at[each]) in own
        and network.roles(each).neutral
        and not network.roles(each).hot
    ]
    doubts = dict.fromkeys(each.reason for each in network.index.unknown_of_box.get(box.id, ()))
    doubts |= {each.reason: None for zone in zones for each in network.zones[zone].unknown}
    if not own:
        doubts[f"nothing recorded leads from {device_id} to a breaker"] = None
    whites = tuple(
        each
        for each in _inside(box)
        if each.endswith(".white") and each in network.zone_at and network.roles(each).hot
    )
    # A doubt does not unmake a neutral that the record shows on the same circuit.
    answer: Literal["yes", "no", "unknown"] = "yes" if found else "unknown" if doubts else "no"
    return NeutralHere(answer, tuple(found), whites, () if found else tuple(doubts))


def _inside(box: Box) -> tuple[str, ...]:
    """The joints of a box and the conductor ends in it, each once."""
    ends = (
        member.name
        for held in (*(joint.members for joint in box.joints), *(each.wires for each in box.landings))
        for member in held
        if member.kind == "conductor"
    )
    return tuple(dict.fromkeys((*(each.id for each in box.joints), *ends, *box.capped, *box.loose)))
