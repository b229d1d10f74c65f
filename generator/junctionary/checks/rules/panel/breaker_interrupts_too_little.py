"""A breaker may meet a larger fault current than it is made to interrupt.

Why it matters: a breaker that is to open more than it can opens with an arc that it does not put out. It
    bursts in the face of whoever has just switched it on.
What to do: put in a breaker, or a main ahead of it that is listed together with it, that interrupts what the
    utility can deliver there. The number stands on its label, in amperes with the letters AIR or AIC.
Cannot tell: when the fault current at the service is not told for a panel (`fault_level`), or what its
    breakers interrupt is not (`interrupts`, under `breakers` in a file of devices). Looked at is the panel
    for which the fault current is told, without its main; farther on it is smaller. From memory.
Stands: on the breaker's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.figures.fault import UNTOLD_SERVICE
from junctionary.figures.service import service_panel
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.panels import MAIN
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "110.9"),), ROUGHED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
service: {system: 120/240 V, rating: 100 A, disconnect: main, fault_level: {line_to_neutral: 14 kA, at: main}}
[panels/main.yaml]
panel: main
spaces: 2
fed_by: service
bonded: true
breakers:
  1: {kind: half, rating: 15 A, feeds: den, says: "Den, receptacles"}    #! breaker-interrupts-too-little
[circuits/den.yaml]
circuit: den
name: Den receptacles
[devices/all.yaml]
breakers:
  half: {interrupts: 10 kA}
"""

PASSES = FAILS.replace("interrupts: 10 kA", "interrupts: 22 kA").replace(
    "    #! breaker-interrupts-too-little", ""
)

UNTOLD = PASSES.replace("{interrupts: 22 kA}", "{trips_at_once: 150 A}")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each breaker of the panel for which the fault current is told."""
    service = house.record.service
    level = service.fault_level if service is not None else None
    panel = house.panels.get(level.at) if level is not None else service_panel(house)
    if panel is None:
        return
    if level is None:
        yield CannotTell((panel.id,), (UNTOLD_SERVICE,), panel.place)
        return
    untold = False
    for breaker in (each for each in panel.breakers if each.spaces != (MAIN,)):
        interrupts = breaker.kind.interrupts if breaker.kind is not None else None
        untold = untold or interrupts is None
        if interrupts is not None and interrupts.to("A") < level.line_to_neutral.to("A"):
            yield Fault(
                place=breaker.place,
                about=(breaker.id, panel.id),
                found=f"Breaker {breaker.id} interrupts {amps(interrupts.to('A'))}, and a fault behind "
                f"it may draw {amps(level.line_to_neutral.to('A'))}.",
                allowed="A breaker that interrupts what is available where it stands.",
                because="It bursts when it is to open a fault right behind it.",
                do="Have a breaker put in that interrupts as much, or a main that is listed with it.",
                edition=panel.edition,
            )
    if untold:
        yield CannotTell((panel.id,), (f"what the breakers of panel {panel.id} interrupt",), panel.place)
