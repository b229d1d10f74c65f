"""``junctionary suspect``: where to look first when something is dead."""

import sys
from argparse import Namespace
from collections.abc import Iterator

from junctionary.cli.asking import asked_house, caution_lines, give, no_such, off_lines
from junctionary.house.model import House
from junctionary.house.network import network
from junctionary.house.outlets import named, names, outlets_of
from junctionary.house.readings import READINGS
from junctionary.house.sites import Site
from junctionary.house.suspects import Suspicion, suspects
from junctionary.house.switching_off import Isolation


def run(asked: Namespace) -> int:
    """Exit code 0, or 2 for a name that nothing to be dead or live has, or for no such reading."""
    if "list" in asked.reading:
        for name, reading in READINGS.items():
            print(f"{name:18} {reading.shows}: {reading.means}")
        return 0
    readings: dict[str, str] = {}
    for each in asked.reading:
        point, equals, word = each.rpartition("=")
        if not equals:
            print(f"a reading is written ID=READING, such as K1.r1=hot-only, not {each!r}", file=sys.stderr)
            return 2
        if word not in READINGS:
            return no_such(word, READINGS, "no reading")
        readings[point] = word
    if not (asked.dead or readings):
        print("nothing is told to be dead: name it after --dead, or give a --reading", file=sys.stderr)
        return 2
    house = asked_house(asked)
    if house is None:
        return 2
    for name in (*asked.dead, *asked.live, *readings):
        meant = named(house, outlets_of(house), name)
        if meant is None:
            return no_such(name, names(house), "nothing that can be dead or live", house)
        if not meant:
            told = "the record has no receptacle, lamp, fan or appliance there"
            print(f"{name} cannot be told to be dead or live: {told}", file=sys.stderr)
            return 2
    suspicion = suspects(house, network(house), asked.dead, asked.live, readings)
    return give(asked, house, suspicion, _lines(house, suspicion))


def _lines(house: House, found: Suspicion) -> Iterator[str]:
    yield "STOP, breaker or main off if you can reach it without danger, and call for help, at any of:"
    yield from (f"  - {sign}" for sign in found.signs)
    if found.stop:
        yield "STOP here:"
        yield from (f"  - {reason}" for reason in found.stop)
    yield f"{house.name}: where to look"
    yield f"  dead   {', '.join(found.dead)}"
    yield f"  works  {', '.join(found.live) or 'nothing told'}"
    yield from (f"  {each}" for each in found.scope.says)
    if found.resets:
        yield "Try first; nothing is opened:"
    for each in found.resets:
        told = " (all of it hangs on this)" if each.common else ""
        told += " (by its label)" if each.by_label else ""
        yield f"  {each.kind} {each.id}{told}: {each.do}"
    yield from _suspect_lines(house, found)
    if found.unexplained:
        yield "No single fault explains this:"
        yield from (f"  - {each}" for each in found.unexplained)
    yield from (f"unknown: {reason}" for reason in found.unknown)
    if found.next is not None:
        yield f"Next: {found.next.do}"
    if not found.suspects:
        yield from caution_lines()


def _suspect_lines(house: House, found: Suspicion) -> Iterator[str]:
    if not found.suspects:
        return
    yield from caution_lines()
    ends = dict.fromkeys(filter(None, (found.last_live, found.first_dead)))
    named = ["the service" if each == "service" else each for each in ends]
    between = f" between {' and '.join(named)}" if len(named) > 1 else ""
    yield f"Then these{between}, likeliest first by common practice; each alone explains it:"
    lists: dict[str, Isolation] = {}
    for each in found.suspects:
        roles = " and ".join(each.roles)
        why = "; ".join(each.site.why) or each.site.kind
        told = f"({roles}; weight {each.site.weight})"
        utility = each.site.kind == "utility's side"
        yield f"  {why} {told}" if utility else f"  {each.site.id} {told}: {why}"
        yield f"      {_where(house, each.site)}"
        if each.before is not None:
            lists[each.before.of] = each.before
    yield "Off before any of it is touched:"
    for of, isolation in lists.items():
        yield f"  {of}"
        yield from off_lines(house, isolation, "    ")


def _where(house: House, site: Site) -> str:
    """Where a place is, in words: ``K1, Kitchen, north wall, 44 in up``."""
    parts = [site.box or site.panel or (f"in the walls, run {site.run}" if site.run else "before the panels")]
    if site.room is not None and site.room in house.rooms:
        parts.append(house.rooms[site.room].name)
    if site.wall is not None:
        parts.append(f"{site.wall} wall")
    if site.up is not None:
        parts.append(f"{site.up} up")
    return ", ".join(parts)
