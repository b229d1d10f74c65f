"""A feeder brings no ground to its panel.

Why it matters: nothing leads a fault in that panel's circuits back to the service, so no breaker opens,
    and grounds joined only to a rod stay live.
What to do: bring a ground of the right size with the feeder, and then part neutral and ground in the
    panel. Until then, take whatever metal it feeds for live while something is wrong.
Cannot tell: when the feeder's cable is unknown or not recorded, or flexible metal conduit may or may not
    be its ground. A feeder of before 2008 to another building may do without, where neutral and ground
    are joined in its panel and no metal path runs between the buildings; what that hangs on is asked for.
Stands: on the line of the feeder's run without a ground.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.supplied import bond_untold, old_three_wire
from junctionary.figures import Figures
from junctionary.house.model import Circuit, House, Panel
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "215.6"), cite("nec-2023", "250.32(B)")), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
bonded: true
breakers:
  1+3: {rating: 60 A, feeds: to-shed, says: Shed panel}
[panels/shed.yaml]
panel: shed
spaces: 6
fed_by: to-shed
bonded: false
[circuits/to-shed.yaml]
circuit: to-shed
name: Feeder to the shed
purpose: feeder
runs:
  - {id: f1, cable: 6/3 UF-B no ground, from: main, to: shed}    #! feeder-without-ground
"""

PASSES = FAILS.replace("UF-B no ground", "UF-B").replace("    #! feeder-without-ground", "")

UNTOLD = PASSES.replace("cable: 6/3 UF-B", "cable: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The feeder of each panel that has one."""
    for panel in house.panels.values():
        feeder = house.circuits.get(panel.feeder or "")
        if feeder is not None:
            yield from _judged(house, figures, panel, feeder)


def _judged(house: House, figures: Figures, panel: Panel, feeder: Circuit) -> Iterator[Fault | CannotTell]:
    about = (feeder.id, panel.id)
    grounds = [figures.grounds[each] for each in feeder.runs]
    needs = tuple(lack for each in grounds if each.made == "unknown" for lack in each.lacks)
    without = [each for each in grounds if each.made == "none"]
    if not grounds:
        needs = (f"the cable of circuit {feeder.id}",)
    if not without:
        if needs:
            yield CannotTell(about, needs, feeder.place)
        return
    old = old_three_wire(house, panel)
    if old is True and panel.record.bonded is True:
        return
    gaps = old if isinstance(old, tuple) else ()
    if old is True and (gap := bond_untold(panel)):
        gaps = (gap,)
    if gaps:
        yield CannotTell(about, gaps, without[0].place)
        return
    runs = tuple(each.run for each in without)
    yield Fault(
        place=without[0].place,
        about=(*runs, *about),
        found=f"The feeder of panel {panel.id} has no ground in {listed(runs)}.",
        allowed="A feeder brings an equipment ground, by a wire or by metal conduit.",
        because="A fault in what the panel feeds trips nothing, and leaves metal live.",
        do=f"Run a ground with {listed(runs)}, and keep neutral and ground apart in {panel.id}.",
        edition=min(panel.edition, feeder.edition),
    )
