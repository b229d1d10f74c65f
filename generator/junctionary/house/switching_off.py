"""The list of what to switch off, put together from what is in hand: groups, labels, handles, sources."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from junctionary.house.matters import Matter, circuits_behind, in_order
from junctionary.house.model import House
from junctionary.house.network import Group, Network, called, listed

BACKFED = "a second source can feed back through it"


@dataclass(frozen=True, slots=True)
class Off:
    """A breaker, or a second source, to switch off, and why; each reason is a phrase."""

    id: str
    why: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Isolation:
    """What to switch off before something is opened.

    ``of`` is the id asked about. ``breakers`` stand in the order of the
    panels; ``sources`` are second sources that reach it past them. Where
    ``unknown`` has a reason the list stands, but may be too short: then all
    ``mains`` off too (and every source is listed with the breaker at which it
    enters, since a main does not stop it), and still test. ``first`` is what goes dark that matters;
    ``stays_live`` what none of this makes dead.
    """

    of: str
    breakers: tuple[Off, ...]
    sources: tuple[Off, ...]
    unknown: tuple[str, ...]
    mains: tuple[str, ...]
    first: tuple[Matter, ...]
    stays_live: tuple[str, ...] = ()


@dataclass(slots=True)
class InHand:
    """What is in hand: groups, and breakers and sources each with its reasons.

    ``reached`` are the conductors that a breaker makes live, ``labels`` the
    circuits that the record says it feeds.
    """

    groups: dict[int, None] = field(default_factory=dict)
    reached: dict[str, dict[str, None]] = field(default_factory=dict)
    labels: dict[str, dict[str, None]] = field(default_factory=dict)
    why: dict[str, dict[str, None]] = field(default_factory=dict)
    sources: dict[str, dict[str, None]] = field(default_factory=dict)
    unknown: dict[str, None] = field(default_factory=dict)

    def off(self, breaker: str, why: str) -> None:
        """Add a breaker, or a reason for it."""
        self.why.setdefault(breaker, {})[why] = None

    def source(self, source: str, why: str) -> None:
        """Add a second source, or a reason for it."""
        self.sources.setdefault(source, {})[why] = None

    def doubt(self, *reasons: str) -> None:
        """Add reasons why the list may be too short."""
        self.unknown.update(dict.fromkeys(reasons))


def told(
    house: House, network: Network, of: str, hand: InHand, stays_live: tuple[str, ...] = ()
) -> Isolation:
    """The whole list. Where it is empty, or where anything is unknown, it says why and names every source."""
    groups = network.groups.each
    for number in hand.groups:
        hand.doubt(*groups[number].unknown)
        _take_group(house, groups[number], hand)
    _take_rest(house, hand)
    _take_beside(network, hand)
    if not hand.why and not hand.unknown:
        hand.doubt(f"nothing tells what feeds {of}")
    if hand.unknown:
        for breaker in network.index.untold_breakers:
            if breaker not in hand.why:
                hand.off(breaker, "nothing tells what it feeds")
        for source in house.sources:
            hand.source(source, "a main does not stop it")
        for breaker in network.index.entering:
            if breaker not in hand.why:
                hand.off(breaker, BACKFED)
    for source in network.index.unplaced:
        hand.source(source, "where it enters is not recorded")
    _follow_handles(house, hand)
    circuits = circuits_behind(house, hand.why, network.index.panels_fed)
    return Isolation(
        of=of,
        breakers=_in_order(hand.why, network.index.breaker_order),
        sources=tuple(Off(each, tuple(why)) for each, why in hand.sources.items()),
        unknown=tuple(hand.unknown),
        mains=network.index.mains,
        first=in_order(each for circuit in circuits for each in network.index.matters[circuit]),
        stays_live=stays_live,
    )


def _in_order(why: Mapping[str, Mapping[str, None]], order: Mapping[str, int]) -> tuple[Off, ...]:
    return tuple(Off(each, tuple(why[each])) for each in sorted(why, key=order.__getitem__))


def _take_group(house: House, group: Group, hand: InHand) -> None:
    """Every breaker of a group: because it reaches what is here, or because of what ties it to that."""
    for breaker in group.breakers:
        if breaker in hand.reached:
            hand.off(breaker, f"reaches {listed(hand.reached[breaker])}")
        for reason in group.why.get(breaker, ()):
            hand.off(breaker, reason)
        if breaker in hand.labels and breaker not in hand.why:
            hand.off(breaker, _by_label(house, hand, breaker))
        if breaker not in hand.why:
            hand.off(breaker, "is joined to what is here")
    for source in group.sources:
        if source not in hand.sources:
            hand.source(source, "makes part of this live itself")


def _take_rest(house: House, hand: InHand) -> None:
    """Breakers by the record's word for the circuit alone, whatever the conductors say."""
    for breaker in hand.reached:
        if breaker not in hand.why:
            hand.off(breaker, f"reaches {listed(hand.reached[breaker])}")
    for breaker in hand.labels:
        if breaker not in hand.why:
            hand.off(breaker, _by_label(house, hand, breaker))


def _by_label(house: House, hand: InHand, breaker: str) -> str:
    return f"is recorded as feeding {called(house, hand.labels[breaker])}"


def _take_beside(network: Network, hand: InHand) -> None:
    """What may meet these groups in a box whose make-up is not known: one such box far, and no farther."""
    for number in tuple(hand.groups):
        for other, reason in network.groups.each[number].may_join:
            if other not in hand.groups:
                for breaker in network.groups.each[other].breakers:
                    if breaker not in hand.why:
                        hand.off(breaker, reason)
                for source in network.groups.each[other].sources:
                    if source not in hand.sources:
                        hand.source(source, reason)


def _follow_handles(house: House, hand: InHand) -> None:
    """Handle ties: a hand that moves one moves the other."""
    for breaker in tuple(hand.why):
        for other in house.breakers[breaker].tied_to:
            hand.off(other, f"its handle is tied to {breaker}")
