"""What must be off before each box, panel and cable is opened, as the lookups are given it.

The lists are those of ``house/isolate.py``, with breakers named as people
speak of them: a page only puts several together, and there unknown wins.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from junctionary.house.isolate import isolate_panel, isolate_run
from junctionary.house.model import Box, End, House
from junctionary.house.network import Network
from junctionary.house.switching_off import Isolation
from junctionary.sheets.face_words import face_words
from junctionary.sheets.finding_things import feeds_words, place_of
from junctionary.sheets.naming import source_words
from junctionary.sheets.second_sources import stopping
from junctionary.sheets.spoken import handle_words, panels_spoken, spoken


@dataclass(frozen=True, slots=True)
class OffList:
    """One list. ``wires`` are what is to be tested there, cable by cable; ``place`` is where it is."""

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
        each.id: _list(house, isolations[each.id], place_of(house, each), wires_of(house, each))
        for each in house.boxes.values()
    }


def panel_lists(house: House, network: Network) -> dict[str, OffList]:
    """The list of every panel."""
    return {
        each.id: _list(house, isolate_panel(house, network, each.id), each.name)
        for each in house.panels.values()
    }


def run_lists(house: House, network: Network) -> dict[str, OffList]:
    """The list of every cable."""
    return {each: _list(house, isolate_run(house, network, each), f"cable {each}") for each in house.runs}


def handles(house: House) -> dict[str, Handle]:
    """Every breaker, in the order in which lists name them."""
    return {
        each.id: Handle(handle_words(house, each.id), feeds_words(house, each), face_words(house, each))
        for each in house.breakers.values()
    }


def source_handles(house: House) -> dict[str, Handle]:
    """Every second source, and what is done so that it makes nothing live."""
    return {
        each.id: Handle(source_words(each), each.is_.replace("-", " "), stopping(house, each))
        for each in house.sources.values()
    }


def wires_of(house: House, box: Box) -> tuple[str, ...]:
    """Every cable in a box, one that only passes through too: ``dp1 (to box K12): black, white, bare``."""
    found = []
    for id_, how in (
        *((each, "") for each in box.runs),
        *((each.run, "; it passes through") for each in box.passing),
    ):
        run = house.runs[id_]
        ends = [each for each in run.ends if each.id != box.id] if not how else list(run.ends)
        other = " and ".join(_end_words(house, each) for each in ends)
        colours = ", ".join(each.colour for each in run.conductors) or "whose conductors are not known"
        found.append(f"{id_} ({other}{how}): {colours}")
    return tuple(dict.fromkeys(found))


def _end_words(house: House, end: End) -> str:
    if end.kind == "panel" and end.id is not None:
        return f"to {panels_spoken(house).get(end.id, f'panel {end.id}')}"
    if end.kind == "box" and end.id is not None:
        return f"to box {end.id}"
    return {"none": "goes nowhere", "unknown": "where to is unknown"}.get(
        end.kind, "where to is not recorded"
    )


def _list(house: House, isolation: Isolation, place: str, wires: tuple[str, ...] = ()) -> OffList:
    return OffList(
        of=isolation.of,
        place=place,
        breakers=tuple((each.id, _said(house, each.why)) for each in isolation.breakers),
        sources=tuple((each.id, _said(house, each.why)) for each in isolation.sources),
        unknown=_said(house, isolation.unknown),
        first=tuple(f"{each.name} ({each.matters})" for each in isolation.first),
        stays_live=_said(house, isolation.stays_live),
        wires=wires,
    )


def _said(house: House, reasons: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(spoken(house, each) for each in reasons)
