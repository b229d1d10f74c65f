"""What kind of trouble the dead points are together: one point, one circuit, a lost leg, a shared neutral."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from junctionary.house.model import House, Role
from junctionary.house.network import Edge, Feed, Network, called, listed
from junctionary.house.supply import Supply
from junctionary.house.told import Told

ScopeKind = Literal[
    "nothing", "half", "point", "part", "circuit", "leg", "shared-neutral", "several", "untraced"
]


@dataclass(frozen=True, slots=True)
class Scope:
    """What the dead points are together, in words; ``stop`` are reasons to stop the search there."""

    kind: ScopeKind
    says: tuple[str, ...]
    stop: tuple[str, ...] = ()


def scope_of(
    house: House, network: Network, held: Supply, marks: Told, left: Mapping[Role, Iterable[Edge]]
) -> Scope:
    """The scope of what is dead; ``left`` are the connections that may be the fault."""
    if not marks.dead:
        return Scope("nothing", ("a ground is open; everything works",) if marks.ground else ())
    feeds = {each: held.feeds[each] for each in marks.dead}
    poles = {feed.pole: feed for some in feeds.values() for feed in some}
    breakers = tuple(dict.fromkeys(feed.breaker for feed in poles.values()))
    if not breakers:
        return Scope("untraced", ("the record leads from what is dead to no breaker",))
    neutral = any(edge.kind == "conductor" for edge in left.get("neutral", ()))
    legs = {feed.leg for feed in poles.values()}
    if len(poles) == len(legs) == 2 and neutral and all(len(some) == 1 for some in feeds.values()):
        stop = "an open shared neutral puts up to 240 V on what hangs on the two legs"
        shared = f"what is dead hangs on {listed(poles)}, which share a neutral"
        return Scope("shared-neutral", (shared,), (f"{stop}: {listed(breakers)} off, unplug electronics",))
    if len(breakers) > 1:
        return _several(house, held, marks, breakers)
    says = list(_partner(network, held, marks, breakers[0]))
    devices = tuple(dict.fromkeys(held.outlets[each].device for each in marks.dead))
    if len(devices) == 1:
        return _one(held, marks, devices[0], says)
    whole = [each for each in held.outlets if breakers[0] in _breakers(held.feeds[each])]
    circuits = _circuits(house, breakers)
    if set(whole) <= {*marks.dead}:
        first = (
            f"all of {circuits} is dead: its breaker, where it lands in the panel, the cable from there to"
            " its first box, or that box"
        )
        return Scope("circuit", (first, *says))
    first = f"part of {circuits} is dead: look between what works and what does not"
    return Scope("part", (first, *says))


def _breakers(feeds: Iterable[Feed]) -> set[str]:
    return {feed.breaker for feed in feeds}


def _circuits(house: House, breakers: Iterable[str]) -> str:
    """The circuits of some breakers by name, or the breakers where none is told."""
    feeds = (house.breakers[each].feeds for each in breakers if each in house.breakers)
    return called(house, dict.fromkeys(each for each in feeds if isinstance(each, str)) or breakers)


def _one(held: Supply, marks: Told, device: str, says: Iterable[str]) -> Scope:
    halves = [each for each in held.outlets.values() if each.device == device]
    if len(marks.dead) < len(halves):
        return Scope(
            "half", (f"one half of {device} is dead: its switch, its tab, or the wire from the switch", *says)
        )
    rest = "its lamp or what is plugged in, the device itself, or its pigtails"
    return Scope("point", (f"only {device} is told to be dead: {rest}", *says))


def _several(
    house: House,
    held: Supply,
    marks: Told,
    breakers: tuple[str, ...],
) -> Scope:
    hung = f"what is dead hangs on {listed(breakers)}"
    legs = [{feed.leg for feed in held.feeds[each]} for each in marks.dead if held.feeds[each]]
    common = {leg for leg in set.intersection(*legs) if leg is not None}
    # What works on that leg of one of these panels proves the leg.
    panels = {each.partition("/")[0] for each in breakers}
    live = (feed for each in marks.live for feed in held.feeds[each])
    proved = {feed.leg for feed in live if feed.breaker.partition("/")[0] in panels}
    if len(common) == 1 and not common & proved:
        says = (
            f"{hung}, all on leg {common.pop()}, one half of the service: that half may be lost,"
            " at the utility, the meter, the main or the bus",
            "the sign of it: the dead leg shows faint power while a 240 V load is on",
        )
        return Scope("leg", says, ("two-pole breakers off, then call the utility or a licensed electrician",))
    circuits = _circuits(house, breakers)
    return Scope("several", (f"{hung} ({circuits})",))


def _partner(network: Network, held: Supply, marks: Told, breaker: str) -> Iterable[str]:
    """Whether something on the other leg of the same neutral works."""
    neutrals = {network.zone_at[start] for each in marks.dead for start in held.starts["neutral"][each]}
    for each in marks.live:
        if any(network.zone_at[start] in neutrals for start in held.starts["neutral"][each]):
            other = _breakers(held.feeds[each]) - {breaker}
            if not other:
                continue
            yield (
                f"{each} on {listed(sorted(other))} shares its neutral and works: "
                "so look at the dead one's own hot, breaker or branch, not the shared part of the neutral"
            )
            return
