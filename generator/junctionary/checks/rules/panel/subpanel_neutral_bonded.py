"""Neutral and ground are joined in a panel behind a feeder.

Why it matters: part of every load's current comes back on the feeder's ground, on cabinets and on pipes,
    and metal that somebody may touch is live against earth when the neutral fails.
What to do: take out the bonding screw or strap in this panel, with the feeder off and proved dead, and
    keep neutrals and grounds on bars of their own. They meet at the service and nowhere after it.
Cannot tell: when what feeds a panel, or whether the two are joined in it, is unknown or not recorded.
    A panel in another building, behind a feeder of before 2008 that brings no ground, may keep its
    joined neutral where no metal path runs between the buildings; what that hangs on is asked for.
Stands: on the panel's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.supplied import at_service, bond_untold, old_three_wire
from junctionary.figures import Figures
from junctionary.house.model import House, Panel
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "250.24(A)"),
        cite("nec-2023", "250.142(B)"),
        cite("nec-2023", "408.40"),
    ),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
bonded: true
breakers:
  1+3: {rating: 60 A, feeds: to-shed, says: Shed panel}
[panels/shed.yaml]
panel: shed    #! subpanel-neutral-bonded
spaces: 6
fed_by: to-shed
bonded: true
[circuits/to-shed.yaml]
circuit: to-shed
name: Feeder to the shed
purpose: feeder
runs:
  - {id: f1, cable: 6/3 NM-B, from: main, to: shed}
"""

PASSES = FAILS.replace("to-shed\nbonded: true", "to-shed\nbonded: false").replace(
    "    #! subpanel-neutral-bonded", ""
)

UNTOLD = PASSES.replace("\nbonded: false", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each panel that the service does not feed itself."""
    for panel in house.panels.values():
        served = at_service(house, panel)
        if served:
            continue
        if gap := bond_untold(panel):
            yield CannotTell((panel.id,), (gap,), panel.place)
        elif panel.record.bonded is True and served is None:
            yield CannotTell((panel.id,), (f"what feeds panel {panel.id}",), panel.place)
        elif panel.record.bonded is True:
            yield from _bonded(house, figures, panel)


def _bonded(house: House, figures: Figures, panel: Panel) -> Iterator[Fault | CannotTell]:
    about = (panel.id, *([panel.feeder] if panel.feeder else []))
    feeder = house.circuits.get(panel.feeder or "")
    grounds = [figures.grounds[each] for each in feeder.runs] if feeder is not None else []
    old = (
        False
        if any(each.made in ("wire", "armor", "raceway") for each in grounds)
        else old_three_wire(house, panel)
    )
    untold = tuple(lack for each in grounds for lack in each.lacks if each.made == "unknown")
    if feeder is not None and not grounds:
        untold = (f"the cable of circuit {feeder.id}",)
    if old is True and not untold:
        return
    if gaps := untold if old is True else old:
        yield CannotTell(about, gaps, panel.place)
        return
    yield Fault(
        place=panel.place,
        about=about,
        found=f"Neutral and ground are joined in panel {panel.id}, which a feeder supplies.",
        allowed="Neutral and ground meet at the service and nowhere after it.",
        because="The neutral's current divides over the ground and every metal part joined to it.",
        do=f"With the feeder of {panel.id} off and proved dead, take out its bonding screw or strap.",
        edition=panel.edition,
    )
