"""What must be off before each box, panel and cable is opened, as the lookups are given it.

The lists are those of ``house/isolate.py``, word for word: a page only puts
several together, and there unknown wins.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from junctionary.house.isolate import isolate_panel, isolate_run
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.house.switching_off import Isolation
from junctionary.sheets.face_words import face_words
from junctionary.sheets.finding_things import feeds_words, place_of
from junctionary.sheets.naming import breaker_words, source_words


@dataclass(frozen=True, slots=True)
class OffList:
    """One list. ``wires`` are what is to be tested there, ``place`` where it is."""

    of: str
    place: str
    breakers: tuple[tuple[str, tuple[str, ...]], ...]
    sources: tuple[tuple[str, tuple[str, ...]], ...]
    unknown: tuple[str, ...]
    first: tuple[str, ...]
    stays_live: tuple[str, ...]
    wires: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Handle:
    """A breaker or a source as it is looked for with a hand: its name, what it feeds, where it stands."""

    name: str
    says: str
    at: str


def box_lists(house: House, isolations: Mapping[str, Isolation]) -> dict[str, OffList]:
    """The list of every box, of the isolations of all boxes."""
    return {
        each.id: _list(isolations[each.id], place_of(house, each), wires_of(house, each))
        for each in house.boxes.values()
    }


def panel_lists(house: House, network: Network) -> dict[str, OffList]:
    """The list of every panel."""
    return {
        each.id: _list(isolate_panel(house, network, each.id), each.name) for each in house.panels.values()
    }


def run_lists(house: House, network: Network) -> dict[str, OffList]:
    """The list of every cable."""
    return {each: _list(isolate_run(house, network, each), f"cable {each}") for each in house.runs}


def handles(house: House) -> dict[str, Handle]:
    """Every breaker, in the order in which lists name them."""
    return {
        each.id: Handle(breaker_words(each.id), feeds_words(house, each), face_words(house, each))
        for each in house.breakers.values()
    }


def source_handles(house: House) -> dict[str, Handle]:
    """Every second source, and where it is shut off."""
    return {
        each.id: Handle(
            source_words(each),
            each.is_.replace("-", " "),
            f"shut off at {breaker_words(at)}"
            if (at := each.shut_off or each.enters)
            else "where it is shut off is not recorded",
        )
        for each in house.sources.values()
    }


def wires_of(house: House, box: Box) -> tuple[str, ...]:
    """Every conductor in a box, those that only pass through among them; a cable of which none is known."""
    found: dict[str, None] = {}
    for id_, how in (
        *((each, "") for each in box.runs),
        *((each.run, " (passes through)") for each in box.passing),
    ):
        conductors = house.runs[id_].conductors
        for each in conductors:
            found[f"{id_}.{each.colour}{how}"] = None
        if not conductors:
            found[f"{id_}, whose conductors are not known{how}"] = None
    return tuple(found)


def _list(isolation: Isolation, place: str, wires: tuple[str, ...] = ()) -> OffList:
    return OffList(
        of=isolation.of,
        place=place,
        breakers=tuple((each.id, each.why) for each in isolation.breakers),
        sources=tuple((each.id, each.why) for each in isolation.sources),
        unknown=isolation.unknown,
        first=tuple(f"{each.name} ({each.matters})" for each in isolation.first),
        stays_live=isolation.stays_live,
        wires=wires,
    )
