"""Neutral and ground are not joined at the service.

Why it matters: a fault to metal then has no way back to the transformer but the earth, which carries too
    little to trip any breaker: every grounded case of the house stays live.
What to do: have a licensed electrician put in the main bonding jumper, the screw or strap that came with
    the panel, with the utility's power off.
Cannot tell: when whether the two are joined is unknown or not recorded, or no panel is recorded as the
    one the service feeds.
Stands: on the panel's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.checks.supplied import at_service, bond_untold
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "250.24(B)"), cite("nec-2023", "250.28")), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main    #! service-bond-missing
spaces: 8
fed_by: service
bonded: false
"""

PASSES = FAILS.replace("bonded: false", "bonded: true").replace("    #! service-bond-missing", "")

UNTOLD = PASSES.replace("bonded: true", "bonded: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The panel with the service's disconnect, or else each panel that the service feeds."""
    served = [each for each in house.panels.values() if at_service(house, each)]
    service = house.record.service
    disconnects = [each for each in served if service is not None and service.disconnect == each.id]
    panels = tuple(house.panels.values())
    if panels and not served:
        yield CannotTell(
            tuple(each.id for each in panels), ("which panel the service feeds",), panels[0].place
        )
    for panel in disconnects or served:
        if gap := bond_untold(panel):
            yield CannotTell((panel.id,), (gap,), panel.place)
        elif panel.record.bonded is False:
            yield Fault(
                place=panel.place,
                about=(panel.id,),
                found=f"Neutral and ground are kept apart in panel {panel.id}, which the service feeds.",
                allowed="At the service disconnect a main bonding jumper joins neutral, ground and cabinet.",
                because="A fault to metal trips nothing, and leaves the metal live.",
                do=f"Have a licensed electrician put in the main bonding jumper of {panel.id}.",
                edition=panel.edition,
            )
