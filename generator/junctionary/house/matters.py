"""What must not go dark unnoticed: loads that matter, and smoke alarms, by circuit."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.model import Circuit, House

ORDER = ("medical", "alarm", "heat", "water", "food", "data")
"""Which is told first."""


@dataclass(frozen=True, slots=True)
class Matter:
    """One thing that matters: its id (a load or a device), its name, why it matters, its circuit."""

    id: str
    name: str
    matters: str
    circuit: str


def matters_of(house: House, circuit: Circuit) -> tuple[Matter, ...]:
    """What matters on one circuit: its loads said to matter, and its smoke alarms."""
    loads = tuple(
        Matter(load.id, load.name or load.is_, load.matters, circuit.id)
        for load in circuit.loads
        if load.matters is not None
    )
    alarms = tuple(
        Matter(each, f"smoke alarm {each}", "alarm", circuit.id)
        for each in circuit.devices
        if house.devices[each].kind.is_ == "smoke-alarm"
    )
    return loads + alarms


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
