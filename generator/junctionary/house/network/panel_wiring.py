"""The edges of panels: mains, buses, breaker poles, bonds, and the service."""

from collections.abc import Iterable

from junctionary.house.model import Breaker, House, Panel
from junctionary.house.network.edges import Edge
from junctionary.records.values import NONE

MAIN = "main"
SERVICE = "service"
LEGS = ("A", "B")


def is_service_panel(house: House, panel: Panel) -> bool:
    """Whether the utility's conductors end in this panel.

    The record says so; or it is the only panel and nothing is said of what feeds it.
    """
    if panel.record.fed_by is not None:
        return panel.record.fed_by == SERVICE
    if panel.feeder is not None:
        return False
    service = house.record.service
    return len(house.panels) == 1 or (service is not None and service.disconnect == panel.id)


def has_main(panel: Panel) -> bool:
    """Whether a main breaker, its rating known or not, stands before the bus."""
    return panel.record.main is not None and panel.record.main is not NONE


def branch_breakers(panel: Panel) -> Iterable[Breaker]:
    """Its breakers but for the main."""
    return (each for each in panel.breakers if each.spaces != (MAIN,))


def poles(breaker: Breaker) -> tuple[str, ...]:
    """The load terminals of a breaker, one for each space; of a panel's main, the legs of its bus."""
    if breaker.spaces == (MAIN,):
        return tuple(f"{breaker.panel}/{leg}" for leg in breaker.legs)
    return tuple(f"{breaker.panel}/{space}" for space in breaker.spaces)


def bus_of(panel: str, leg: str | None) -> str:
    """The bus on which a pole stands; one of its own for poles whose leg nothing tells."""
    return f"{panel}/{leg or 'bus'}"


def bar_of(panel: str, bar: str) -> str:
    """The point of a panel's bar, ``neutral`` or ``ground``."""
    return f"{panel}/{bar}"


def panel_edges(house: House) -> Iterable[Edge]:
    """What is built into each panel, and how the utility comes to those it feeds."""
    for panel in house.panels.values():
        for breaker in branch_breakers(panel):
            for leg, pole in zip(breaker.legs, poles(breaker), strict=True):
                bus = bus_of(panel.id, leg)
                yield Edge(bus, pole, "breaker", breaker.id, breaker.place, opened_by=breaker.id)
        if panel.record.bonded is True:
            place = panel.record.place_of("bonded")
            yield Edge(bar_of(panel.id, "neutral"), bar_of(panel.id, "ground"), "bond", panel.id, place)
        if is_service_panel(house, panel):
            yield from _service_edges(house, panel)


def buses(panel: Panel) -> tuple[str, ...]:
    """The buses of a panel: both legs, and the one of poles whose leg nothing tells where there are such."""
    untold = any(leg is None for breaker in panel.breakers for leg in breaker.legs)
    return tuple(bus_of(panel.id, leg) for leg in (*LEGS, *((None,) if untold else ())))


def _service_edges(house: House, panel: Panel) -> Iterable[Edge]:
    service = house.record.service
    dead = bus_of(panel.id, "B") if service is not None and service.system == "120 V" else None
    main = next((each for each in panel.breakers if each.spaces == (MAIN,)), None)
    for bus in buses(panel):
        if bus == dead:
            continue
        line = f"{SERVICE}/{bus.rpartition('/')[2]}"
        if main is not None:
            yield Edge(line, bus, "main", main.id, main.place, opened_by=main.id)
        else:
            yield Edge(line, bus, "service", panel.id, panel.place)
    yield Edge(f"{SERVICE}/neutral", bar_of(panel.id, "neutral"), "service", panel.id, panel.place)
