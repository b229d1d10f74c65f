"""What must not go dark unnoticed: loads that matter, and smoke alarms, by circuit."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.model import Circuit, House
from junctionary.records.circuits import LoadRecord

ORDER = ("medical", "alarm", "heat", "water", "food", "data")
"""Which is told first."""


@dataclass(frozen=True, slots=True)
class Matter:
    """One thing that matters: its id (a load or a device), its name, why it matters, its circuit.

    ``at`` is the device it is plugged into or wired to, or None where that is not recorded.
    """

    id: str
    name: str
    matters: str
    circuit: str
    at: str | None


def matters_of(house: House, circuit: Circuit) -> tuple[Matter, ...]:
    """What matters on one circuit: loads said to matter, and smoke alarms where no load speaks of them."""
    loads = tuple(
        Matter(load.id, load.called, load.matters, circuit.id, _device_at(house, load))
        for load in circuit.loads
        if load.matters is not None
    )
    if any(each.matters == "alarm" for each in loads):
        return loads
    alarms = tuple(
        Matter(each, f"smoke alarm {each}", "alarm", circuit.id, each)
        for each in circuit.devices
        if house.devices[each].kind.is_ == "smoke-alarm"
    )
    return loads + alarms


def _device_at(house: House, load: LoadRecord) -> str | None:
    """The device of a load: ``K2.r1`` also where half of it is named, as ``K2.r1.top``."""
    said = load.plugged or load.wired
    return (
        next((each for each in (said, said.rpartition(".")[0]) if each in house.devices), None)
        if said
        else None
    )


def in_order(matters: Iterable[Matter]) -> tuple[Matter, ...]:
    """Each once, what people and their alarms depend on first."""
    return tuple(sorted(dict.fromkeys(matters), key=lambda each: ORDER.index(each.matters)))


def panels_fed_by(house: House) -> dict[str, tuple[str, ...]]:
    """By feeder circuit, the panels it feeds."""
    found: dict[str, list[str]] = {}
    for panel in house.panels.values():
        if panel.feeder is not None:
            found.setdefault(panel.feeder, []).append(panel.id)
    return {circuit: tuple(panels) for circuit, panels in found.items()}


def circuits_behind(
    house: House, breakers: Iterable[str], fed: Mapping[str, tuple[str, ...]]
) -> tuple[str, ...]:
    """The circuits that the panels' words put behind some breakers, those of the subpanels they feed too.

    A main stands before every breaker of its panel. ``fed`` is ``panels_fed_by``.
    """
    waiting, seen, found = list(breakers), set[str](), dict[str, None]()
    while waiting:
        each = waiting.pop(0)
        breaker = house.breakers.get(each)
        if breaker is None or each in seen:
            continue
        seen.add(each)
        panels: tuple[str, ...] = ()
        if breaker.spaces == ("main",):
            panels = (breaker.panel,)
        elif isinstance(breaker.feeds, str) and breaker.feeds in house.circuits:
            found[breaker.feeds] = None
            panels = fed.get(breaker.feeds, ())
        waiting += [one.id for panel in panels for one in house.panels[panel].breakers]
    return tuple(found)
