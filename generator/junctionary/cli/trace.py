"""``junctionary trace``: the way from a point back to its source, joint by joint."""

from argparse import Namespace
from collections.abc import Iterator

from junctionary.cli.asking import asked_house, caution_lines, give, no_such
from junctionary.house.model import House
from junctionary.house.network import network
from junctionary.house.trace import Path, Way, trace


def run(asked: Namespace) -> int:
    """Exit code 0, or 2 for a name that nothing in the network has."""
    house = asked_house(asked)
    if house is None:
        return 2
    joined = network(house)
    try:
        path = trace(house, joined, asked.id)
    except KeyError:
        return no_such(
            asked.id, [*house.devices, *joined.at], "no device, terminal, joint or conductor", house
        )
    return give(asked, house, path, _lines(house, path))


def _lines(house: House, path: Path) -> Iterator[str]:
    yield from caution_lines()
    yield f"{house.name}: {path.of} traced to its source, every switch closed"
    for role, some in (("hot", path.hot), ("neutral", path.neutral), ("ground", path.ground)):
        if not some:
            yield f"{role}: nothing recorded leads there"
        for way in some:
            yield from _way_lines(way)
    yield from (f"unknown: {reason}" for reason in path.unknown)


def _way_lines(way: Way) -> Iterator[str]:
    yield f"{way.role}:"
    yield f"  {way.points[0]}"
    for edge, point in zip(way.edges, way.points[1:], strict=True):
        by = f" {edge.of}" if edge.kind in ("conductor", "breaker", "main", "switch", "protector") else ""
        yield f"  {point}  ({edge.kind}{by})"
    if not way.complete:
        yield "  the record leads no farther"
    for each in way.protectors:
        guards = "not recorded" if each.guards is None else ", ".join(each.guards)
        yield f"  guarded by {each.id}: {guards}"
    length = way.length
    missing = f"; length not recorded of {', '.join(length.missing)}" if length.missing else ""
    yield f"  length {length.known}{' at least' if length.missing else ''}{missing}"
