"""A dwelling's service has no surge protection.

Why it matters: a surge on the line reaches the electronics of every GFCI, AFCI and smoke alarm, which may
    then no longer guard anybody and look as they did.
What to do: have a licensed electrician put in a surge protective device of type 1 or 2 at the service, or
    beside it; then write it under the panel's `surge`.
Cannot tell: when the record does not say whether there is one, or of what type it is, or no panel is
    recorded as the one the service feeds.
Stands: on the panel's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.supplied import at_service
from junctionary.figures import Figures
from junctionary.house.model import House, Panel
from junctionary.house.network import Network
from junctionary.records.panels import Surge
from junctionary.records.values import NONE
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "230.67"),), MADE_UP)

SINCE = 2020
"""The edition from which a new or replaced service of a dwelling has surge protection."""

SERVICE_TYPES = (1, 2)

FAILS = """
[panels/main.yaml]
panel: main    #! surge-protection-missing
spaces: 8
fed_by: service
surge: none
"""

PASSES = FAILS.replace("surge: none", "surge: {type: 2, connected: lugs}").replace(
    "    #! surge-protection-missing", ""
)

UNTOLD = PASSES.replace("type: 2, ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each panel that the service feeds; where that feeds panels alone, those may have it."""
    panels = tuple(house.panels.values())
    served = [each for each in panels if at_service(house, each)]
    if panels and not served and any(edition_year(each.edition) >= SINCE for each in panels):
        yield CannotTell(
            tuple(each.id for each in panels), ("which panel the service feeds",), panels[0].place
        )
    for panel in served:
        if edition_year(panel.edition) < SINCE:
            continue
        lacks = _lacks(panel)
        beyond = [_lacks(each) for each in _beyond(house, panel)] if lacks is not None else []
        if lacks is None or (beyond and all(each is None for each in beyond)):
            continue
        if lacks or (beyond and all(each != "" for each in beyond)):
            needs = tuple(each for each in (lacks, *beyond) if each)
            yield CannotTell((panel.id,), needs, panel.place)
        else:
            yield Fault(
                place=panel.place,
                about=(panel.id,),
                found=_found(panel),
                allowed="The service of a dwelling has a surge protective device of type 1 or 2.",
                because="A surge can silence every GFCI, AFCI and alarm at once, and none of them shows it.",
                do=f"Have a licensed electrician put one in at {panel.id} or beside it.",
                edition=panel.edition,
            )


def _lacks(panel: Panel) -> str | None:
    """None where a device of the right type is recorded; the missing fact; or empty where there is none."""
    surge = panel.record.surge
    if surge is NONE:
        return ""
    if not isinstance(surge, Surge):
        return f"whether panel {panel.id} has surge protection"
    if not isinstance(surge.type, int):
        return f"the type of the surge protection of panel {panel.id}"
    return None if surge.type in SERVICE_TYPES else ""


def _found(panel: Panel) -> str:
    surge = panel.record.surge
    if isinstance(surge, Surge):
        return f"The surge protection of panel {panel.id} is of type {surge.type}, made to be plugged in."
    return f"Panel {panel.id}, which the service feeds, has no surge protection."


def _beyond(house: House, panel: Panel) -> tuple[Panel, ...]:
    """The panels next to the service's, where it feeds nothing else; they may have it instead."""
    fed = {each.feeds for each in panel.breakers if isinstance(each.feeds, str)}
    panels = tuple(each for each in house.panels.values() if each.feeder in fed)
    return panels if len(panels) == len(fed) else ()
