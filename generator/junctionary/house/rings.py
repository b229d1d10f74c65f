"""Panels that feed one another in a ring, so that nothing outside could feed them."""

from collections.abc import Iterable, Mapping

from junctionary.house.model import Panel
from junctionary.problems import Problem


def panels_in_rings(panels: Mapping[str, Panel]) -> Iterable[Problem]:
    """A problem for each panel whose feeder hangs, by however many panels, on the panel itself."""
    fed_from = {
        breaker.feeds: panel.id
        for panel in panels.values()
        for breaker in panel.breakers
        if isinstance(breaker.feeds, str)
    }
    for panel in panels.values():
        before, seen = fed_from.get(panel.feeder or ""), list[str]()
        while before is not None and before != panel.id and before not in seen:
            seen.append(before)
            before = fed_from.get(panels[before].feeder or "")
        if before == panel.id:
            way = " and ".join(reversed(seen)) or panel.id
            yield Problem(
                panel.record.value_place("fed_by") if panel.record.fed_by else panel.place,
                f"panel {panel.id} is fed from {way}, which hangs on {panel.id} itself",
                "a feeder whose breaker stands nearer the service",
                "correct which panel that feeder's breaker is in, or what feeds this panel",
            )
