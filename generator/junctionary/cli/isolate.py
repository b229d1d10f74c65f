"""``junctionary isolate``: which breakers must all be off before a box or a panel is opened."""

from argparse import Namespace
from collections.abc import Iterator

from junctionary.cli.asking import asked_house, caution_lines, give, no_such, off_lines
from junctionary.house import isolate as isolating
from junctionary.house.model import House
from junctionary.house.network import network
from junctionary.house.switching_off import Isolation


def run(asked: Namespace) -> int:
    """Exit code 0, or 2 for a name that no box, device or panel has."""
    house = asked_house(asked)
    if house is None:
        return 2
    if asked.id in house.panels:
        isolation = isolating.isolate_panel(house, network(house), asked.id)
    elif asked.id in house.boxes or asked.id in house.devices:
        box = asked.id if asked.id in house.boxes else house.devices[asked.id].box
        isolation = isolating.isolate(house, network(house), box)
    else:
        return no_such(
            asked.id, [*house.boxes, *house.devices, *house.panels], "no box, device or panel", house
        )
    return give(asked, house, isolation, _lines(house, asked.id, isolation))


def _lines(house: House, asked: str, isolation: Isolation) -> Iterator[str]:
    of = isolation.of if asked == isolation.of else f"{isolation.of}, the box of {asked}"
    yield f"{house.name}: before {of} is opened"
    yield from caution_lines()
    yield "Switch off all of these:"
    yield from off_lines(house, isolation, "  ")
    if isolation.first:
        yield "What goes dark with it that matters:"
        yield from (f"  {each.name} ({each.matters}, {each.circuit})" for each in isolation.first)
