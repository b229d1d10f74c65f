"""What a box offers a cable that would start in it: where it is always hot, its neutral, a ground.

By the network, not by colour. Always hot is what no hand and no clock can
switch: only the breaker, and the contacts of a GFCI device, stand before it.
"""

from collections import deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from junctionary.house.model import Box, House
from junctionary.house.network import EdgeKind, Feed, Network, entering
from junctionary.house.supply import Supply

NOT_CROSSED: frozenset[EdgeKind] = frozenset(
    {"switch", "breaker", "main", "service", "bus", "feeder", "bar", "bond"}
)
"""Where a walk outward from a breaker's pole ends."""


@dataclass(frozen=True, slots=True)
class Offer:
    """One pole's supply in one box, as a cable that starts there could take it.

    ``behind`` are the GFCI devices before it. ``hot`` are the points of the box that are always
    hot, empty where the pole reaches it through switches alone; ``neutral`` those of the same circuit on
    the same side of those devices. ``circuit`` is None where the breaker is not known to feed one.
    """

    box: str
    feed: Feed
    circuit: str | None
    behind: tuple[str, ...]
    hot: tuple[str, ...]
    neutral: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BoxOffers:
    """All that a box offers. ``ground`` are its equipment grounds; ``doubts`` what nobody could tell of it.

    ``passing`` are circuits whose cables only pass through uncut; ``untold`` those of which no conductor
    in the box is known to come from a breaker.
    """

    box: str
    offers: tuple[Offer, ...]
    ground: tuple[str, ...]
    passing: tuple[str, ...]
    untold: tuple[str, ...]
    doubts: tuple[str, ...]


def offers_of(house: House, network: Network, supply: Supply) -> dict[str, BoxOffers]:
    """What every box offers, in time near-linear in the house."""
    reached: dict[str, Mapping[str, tuple[str, ...]]] = {}
    enters = entering(house)
    found = {}
    for box in house.boxes.values():
        inside = points_in(house, box)
        feeds = dict.fromkeys(
            feed
            for each in inside
            if each in network.zone_at and _carries(network, each)
            for feed in network.zone_of(each).feeds
        )
        for feed in feeds:
            if feed.pole not in reached:
                reached[feed.pole] = always_hot(network, feed.pole)
        offers = tuple(
            offer
            for feed in feeds
            for offer in _offers(house, network, supply, box, feed, reached[feed.pole])
        )
        of_runs = {house.runs[each].circuit for each in box.runs}
        told = {each.circuit for each in offers}
        fed = {each.feed.breaker for each in offers}
        told |= {source for source, breaker in enters.items() if breaker in fed}
        found[box.id] = BoxOffers(
            box=box.id,
            offers=offers,
            ground=tuple(each for each in (*inside, f"{box.id}/box") if _grounds(network, each)),
            passing=tuple(
                dict.fromkeys(
                    circuit
                    for each in box.passing
                    if (circuit := house.runs[each.run].circuit) not in of_runs
                )
            ),
            untold=tuple(each for each in box.circuits if each in of_runs and each not in told),
            doubts=tuple(dict.fromkeys(each.reason for each in network.index.unknown_of_box.get(box.id, ()))),
        )
    return found


def points_in(house: House, box: Box) -> dict[str, tuple[str, ...]]:
    """The joints of a box and the conductor ends in it, each with the circuits it is of."""
    found = {each.id: each.circuits for each in box.joints}
    members = (
        member
        for held in (*(joint.members for joint in box.joints), *(each.wires for each in box.landings))
        for member in held
        if member.kind == "conductor" and member.run is not None
    )
    for each in members:
        found[each.name] = (house.runs[each.run or ""].circuit,)
    for name in (*box.capped, *box.loose):
        run = name.partition("/")[2].rpartition(".")[0]
        found[name] = (house.runs[run].circuit,) if run in house.runs else ()
    return found


def always_hot(network: Network, pole: str) -> dict[str, tuple[str, ...]]:
    """The points that a pole makes hot with every switch open, each with the GFCI devices before it."""
    found: dict[str, tuple[str, ...]] = {pole: ()}
    waiting = deque([pole])
    while waiting:
        point = waiting.popleft()
        for edge in network.at[point]:
            other = edge.other(point)
            if edge.kind in NOT_CROSSED or other in found:
                continue
            found[other] = (*found[point], edge.of) if edge.kind == "protector" else found[point]
            waiting.append(other)
    return found


def _offers(
    house: House,
    network: Network,
    supply: Supply,
    box: Box,
    feed: Feed,
    reached: Mapping[str, tuple[str, ...]],
) -> Iterator[Offer]:
    """What one pole offers in a box, once for each side of a GFCI device."""
    feeds = house.breakers[feed.breaker].feeds
    circuit = feeds if isinstance(feeds, str) and feeds in house.circuits else None
    inside = points_in(house, box)
    sides: dict[tuple[str, ...], list[str]] = {}
    for point in inside:
        if point in reached:
            sides.setdefault(reached[point], []).append(point)
    if not sides:
        yield Offer(box.id, feed, circuit, (), (), ())
    back = [
        point
        for point, circuits in inside.items()
        if circuit in circuits and _is_neutral_of(network, point, feed)
    ]
    for behind, hot in sides.items():
        own = tuple(each for each in back if _guards_back(supply, each) == behind)
        yield Offer(box.id, feed, circuit, behind, tuple(hot), own)


def _carries(network: Network, point: str) -> bool:
    return network.zone_of(point).carries


def _is_neutral_of(network: Network, point: str, feed: Feed) -> bool:
    """Whether a point is a neutral, and of the circuits that this pole's circuit must be dead with."""
    if point not in network.zone_at or feed.pole not in network.zone_at:
        return False
    roles, groups = network.roles(point), network.groups.of_zone
    own = groups.get(network.zone_at[feed.pole])
    same = own is not None and groups.get(network.zone_at[point]) == own
    return same and bool(roles.neutral) and not roles.hot


def _guards_back(supply: Supply, point: str) -> tuple[str, ...] | None:
    """The GFCI devices on a neutral's way, from the source outward; None where it is switched."""
    tree = supply.trees["neutral"]
    if point not in tree.toward:
        return None
    trail = list(tree.trail(point))
    if any(each.kind == "switch" for each in trail):
        return None
    return tuple(each.of for each in reversed(trail) if each.kind == "protector")


def _grounds(network: Network, point: str) -> bool:
    """Whether a point is an equipment ground: on the way to a ground bar, and carrying nothing."""
    return point in network.zone_at and not _carries(network, point) and bool(network.roles(point).ground)
