"""Where a second source (generator, solar, battery, vehicle) meets the network."""

from collections.abc import Iterable, Mapping

from junctionary.house.model import House
from junctionary.house.network.panel_ends import breaker_named, is_ground
from junctionary.house.network.panel_wiring import buses, poles
from junctionary.house.network.unknowns import end_name
from junctionary.house.terminals import Terminal
from junctionary.records.house import Source

UTILITY = ("utility", "service")


def entries_of(house: House, terminals: Mapping[str, Terminal]) -> dict[str, tuple[str, ...]]:
    """By source, the points it can make live: its inlet, its runs, the breaker or panel it enters.

    None are given for a source of which the record does not say where it enters.
    """
    return {
        id_: tuple(dict.fromkeys(_entries(house, source, terminals))) for id_, source in house.sources.items()
    }


def entering(house: House) -> dict[str, str]:
    """By source, the breaker at which it enters; without those of which that is not recorded."""
    found = {each.id: breaker_named(house, each.enters) for each in house.sources.values() if each.enters}
    return {id_: breaker.id for id_, breaker in found.items() if breaker is not None}


def _entries(house: House, source: Source, terminals: Mapping[str, Terminal]) -> Iterable[str]:
    box = house.boxes.get(source.at or "")
    panel = house.panels.get(source.at or "")
    if box is not None:
        for device in box.devices:
            if device.kind.is_ == "inlet":
                yield from (name for name in (f"{device.id}.x", f"{device.id}.y") if name in terminals)
    elif panel is not None:
        yield from buses(panel)
    for record in source.runs:
        run = house.runs.get(record.id)
        if run is not None and run.circuit == source.id:
            for conductor in run.conductors:
                if not is_ground(conductor):
                    yield from (end_name(run, side, conductor.colour) for side in (0, 1))
    for name in (source.enters, source.charges_from):
        if isinstance(name, str) and name not in UTILITY:
            yield from _points_named(house, name, terminals)


def _points_named(house: House, name: str, terminals: Mapping[str, Terminal]) -> Iterable[str]:
    breaker = breaker_named(house, name)
    if breaker is not None:
        yield from poles(breaker)
    elif name in house.panels:
        yield from buses(house.panels[name])
    elif name in house.circuits:
        for each in house.circuits[name].breakers:
            yield from poles(house.breakers[each])
    elif name.partition(".")[0] in house.boxes:
        prefix = f"{name}."
        yield from (
            each for each, told in terminals.items() if each.startswith(prefix) and told.role == "hot"
        )
