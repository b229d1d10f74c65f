"""What is looked up again and again while lists are put together, gathered once for a house."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TypeVar

from junctionary.house.matters import Matter, matters_of, panels_fed_by
from junctionary.house.model import House, Panel
from junctionary.house.network.edges import Edge
from junctionary.house.network.panel_wiring import MAIN, has_main, is_service_panel
from junctionary.house.network.second_sources import entering
from junctionary.house.network.unknowns import Unknown
from junctionary.house.terminals import Terminal
from junctionary.records.values import UNKNOWN

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Index:
    """Facts by what they are about.

    ``conductors`` are the edges of a run, one for each conductor.
    ``terminals`` are those of a device, ``carrying`` those other than grounds. ``mains`` are
    those of the panels the utility feeds or may feed, ``untold_breakers`` those of which
    nothing tells what they feed, ``unplaced`` the second sources of which
    nothing tells where they enter; ``entering`` the breakers at which second sources enter.
    """

    conductors: Mapping[str, tuple[Edge, ...]]
    terminals: Mapping[str, tuple[str, ...]]
    carrying: Mapping[str, tuple[str, ...]]
    unknown_of_run: Mapping[str, tuple[Unknown, ...]]
    unknown_of_box: Mapping[str, tuple[Unknown, ...]]
    panels_fed: Mapping[str, tuple[str, ...]]
    matters: Mapping[str, tuple[Matter, ...]]
    breaker_order: Mapping[str, int]
    mains: tuple[str, ...]
    untold_breakers: tuple[str, ...]
    unplaced: tuple[str, ...]
    entering: tuple[str, ...]


def index_of(
    house: House,
    edges: Iterable[Edge],
    terminals: Mapping[str, Terminal],
    unknowns: Iterable[Unknown],
    entries: Mapping[str, tuple[str, ...]],
) -> Index:
    """The index of a house; ``entries`` are the points of each second source."""
    unknowns = tuple(unknowns)
    first = [each for each in house.panels.values() if _may_be_first(house, each)]
    return Index(
        conductors=by((edge.of, edge) for edge in edges if edge.kind == "conductor"),
        terminals=by((name.rpartition(".")[0], name) for name in terminals),
        carrying=carrying_of(terminals),
        unknown_of_run=by((run, each) for each in unknowns for run in each.runs),
        unknown_of_box=by((each.box, each) for each in unknowns if each.box is not None),
        panels_fed=panels_fed_by(house),
        matters={each.id: matters_of(house, each) for each in house.circuits.values()},
        breaker_order={each: number for number, each in enumerate(house.breakers)},
        mains=tuple(f"{each.id}/{MAIN}" for each in first if has_main(each)),
        untold_breakers=tuple(
            each.id
            for each in house.breakers.values()
            if not isinstance(each.feeds, str) and each.spaces != (MAIN,)
        ),
        unplaced=tuple(each for each, names in entries.items() if not names),
        entering=tuple(dict.fromkeys(entering(house).values())),
    )


def _may_be_first(house: House, panel: Panel) -> bool:
    """Whether the utility feeds a panel, or may: nothing tells what does."""
    untold = panel.feeder is None and (panel.record.fed_by is None or panel.record.fed_by is UNKNOWN)
    return untold or is_service_panel(house, panel)


def carrying_of(terminals: Mapping[str, Terminal]) -> dict[str, tuple[str, ...]]:
    """By device, its terminals other than grounds."""
    return by((name.rpartition(".")[0], name) for name, each in terminals.items() if each.role != "ground")


def by(pairs: Iterable[tuple[str, T]]) -> dict[str, tuple[T, ...]]:
    """Pairs gathered by their first member, in order."""
    found: dict[str, list[T]] = {}
    for key, each in pairs:
        found.setdefault(key, []).append(each)
    return {key: tuple(each) for key, each in found.items()}
