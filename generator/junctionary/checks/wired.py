"""Where the wires of a box are told, for checks that stand on a terminal, a lead or a joint."""

from collections.abc import Callable, Collection, Iterator

from junctionary.house.model import Box, Device, House
from junctionary.house.network import Network, Zone, is_ground, is_untraced
from junctionary.marks import Place

Side = Callable[[str], str | None]
"""From a thing in a joint or on a terminal to which of two sides it is of, or None where it tells nothing."""

PLAIN_LEADS = ("red", "blue", "orange", "yellow")
"""Leads that need not come to a panel: an alarm's to other alarms, a fan's to a switch."""


def places_of(box: Box, device: Device) -> dict[str, Place]:
    """Where each terminal or lead of a device is wired, of those that are."""
    own = f"{device.id}."
    found: dict[str, Place] = {}
    for joint in box.joints:
        for member in joint.members:
            if member.name.startswith(own):
                found[member.name] = joint.place if joint.expanded is None else device.place
    for landing in box.landings:
        for wire in landing.wires:
            # A lead, or a pigtail from this device, landed on another device's terminal.
            if wire.name.startswith(own):
                found.setdefault(wire.name, landing.place if landing.expanded is None else device.place)
        if landing.device == device.id:
            found[landing.terminal] = landing.place if landing.expanded is None else device.place
    return found


def doubts_in(network: Network, box: Box) -> tuple[str, ...]:
    """Why the make-up of a box is not known whole: it is unknown, not recorded, or an end is told nowhere."""
    whole = (each.reason for each in network.index.unknown_of_box.get(box.id, ()))
    return (*whole, *(f"{each} is told nowhere" for each in box.untold))


def circuits_on(house: House, zone: Zone) -> tuple[str, ...]:
    """The circuits whose own conductors lie on a bar for a zone."""
    runs = (house.runs[edge.of] for edge in zone.bars if edge.of in house.runs)
    return tuple(dict.fromkeys(each.circuit for each in runs))


def circuits_of_breaker(house: House, breaker: str) -> tuple[str, ...]:
    """The circuits that a breaker feeds by the record's word."""
    feeds = house.breakers[breaker].feeds
    return (feeds,) if isinstance(feeds, str) else ()


def meeting_of(house: House, points: Collection[str], side: Side) -> tuple[Place, str] | None:
    """The first joint or terminal among some points that holds both sides, and its name."""
    for name, place, members in _holding(house):
        if name in points:
            sides = {side(each) for each in (name, *members)} - {None}
            if len(sides) > 1:
                return place, name
    return None


def circuit_meeting(house: House, points: Collection[str]) -> tuple[Place, str] | None:
    """The first joint or terminal among some points that holds conductors of two circuits, and its name."""

    def circuit(name: str) -> str | None:
        run = house.runs.get(name.partition("/")[2].partition(".")[0])
        return run.circuit if run is not None and not is_untraced(house, run.circuit) else None

    return meeting_of(house, points, circuit)


def neutral_or_ground(name: str) -> str | None:
    """Of which of the two a thing in a joint is, by its marking: good to find a place, not to judge."""
    word = name.rpartition("/")[2].rpartition(".")[2]
    if is_ground(word) or word in ("g", "box"):
        return "ground"
    plain = word.removeprefix("line-").removeprefix("load-")
    return "neutral" if plain.startswith(("silver", "white", "grey")) or plain == "w" else None


def _holding(house: House) -> Iterator[tuple[str, Place, tuple[str, ...]]]:
    for box in house.boxes.values():
        for landing in box.landings:
            yield landing.terminal, landing.place, tuple(each.name for each in landing.wires)
        for joint in box.joints:
            yield joint.id, joint.place, tuple(each.name for each in joint.members)


def open_together(house: House, breakers: Collection[str]) -> bool:
    """Whether a hand that switches off one of these breakers switches off all."""
    first, *others = breakers
    joined = {first, *house.breakers[first].tied_to}
    return all(each in joined for each in others)
