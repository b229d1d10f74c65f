"""Which of the usual connectors a joint takes: the smallest that is listed to hold it."""

from collections.abc import Iterable

from junctionary.formulas.connector import JointWire, Listing, connector_fit
from junctionary.house.makeup.bench import Bench
from junctionary.house.model import Member
from junctionary.records.devices import ConnectorKind


def connector_for(bench: Bench, members: Iterable[Member]) -> str | None:
    """The id of the smallest usual connector known to hold these, or None when none is known to.

    Smallest by its ports; connectors without ports stand as the list has them.
    """
    wires = [JointWire(each.size, each.metal) for each in members]
    usual = [(id_, bench.connectors[id_]) for id_ in bench.usual.splice if id_ in bench.connectors]
    if all(kind.ports is not None for _, kind in usual):
        usual.sort(key=lambda each: each[1].ports or 0)
    edition = bench.usual.edition
    return next((id_ for id_, kind in usual if connector_fit(listing_of(kind), wires, edition).fits), None)


def listing_of(kind: ConnectorKind) -> Listing:
    """What a kind of connector says it may hold."""
    accepts = kind.accepts
    metals = tuple(kind.metals or (accepts.metals if accepts else ())) or ("copper",)
    return Listing(
        holds=tuple(kind.holds or ()),
        ports=kind.ports,
        smallest=accepts.smallest if accepts else None,
        largest=accepts.largest if accepts else None,
        metals=metals,
    )
