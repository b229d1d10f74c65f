"""A panel has two supplies at once: two feeders, or a feeder beside the service.

Why it matters: whoever switches off the one it is known by works on a bus that the other keeps alive; and
    the two breakers stand in parallel, so that a fault draws through both before either opens.
What to do: turn off both, and have an electrician take one of the two feeders off. Where one of them is
    a mistake of the record, correct what feeds the panel, or where that feeder's run ends.
Cannot tell: when a feeder stands on a breaker and nothing tells which panel it feeds. A generator or another
    second source has a check of its own, and the runs of one feeder are one supply.
Stands: on the panel's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Circuit, House, Panel
from junctionary.house.network import Network, is_service_panel
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "240.8"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
breakers:
  1+3: {rating: 60 A, feeds: north-feeder, says: "Shed panel, by the north wall"}
  2+4: {rating: 60 A, feeds: south-feeder, says: "Shed panel, by the south wall"}
[panels/shed.yaml]
panel: shed    #! panel-fed-twice
spaces: 8
fed_by: north-feeder
bonded: false
[circuits/north.yaml]
circuit: north-feeder
name: Feeder by the north wall
purpose: feeder
runs: [{id: f1, cable: 6/3 NM-B, from: main, to: shed}]
[circuits/south.yaml]
circuit: south-feeder
name: Feeder by the south wall
purpose: feeder
runs: [{id: f2, cable: 6/3 NM-B, from: main, to: shed}]
"""

PASSES = (
    FAILS.replace("panel: shed    #! panel-fed-twice", "panel: shed")
    .replace("id: f2, cable: 6/3 NM-B, from: main, to: shed", "id: f2, cable: 6/3 NM-B, from: main, to: barn")
    .replace(
        "[circuits/north.yaml]",
        """[panels/barn.yaml]
panel: barn
spaces: 8
fed_by: south-feeder
bonded: false
[circuits/north.yaml]""",
    )
)

UNTOLD = FAILS.replace("panel: shed    #! panel-fed-twice", "panel: shed").replace(
    "id: f2, cable: 6/3 NM-B, from: main, to: shed", "id: f2, cable: 6/3 NM-B, from: main, to: unknown"
)

SERVICE = "service"
FEEDER = "feeder"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each panel by what ends in it; then each feeder that ends in none."""
    supplied = {panel.id: list(_supplies(house, panel)) for panel in house.panels.values()}
    for panel in house.panels.values():
        supplies = supplied[panel.id]
        if len(supplies) > 1:
            breakers = [
                each for id_ in supplies if id_ in house.circuits for each in house.circuits[id_].breakers
            ]
            said = " and ".join("the service" if each == SERVICE else f"feeder {each}" for each in supplies)
            yield Fault(
                place=panel.place,
                about=(panel.id, *(each for each in supplies if each in house.circuits), *breakers),
                found=f"Panel {panel.id} is supplied by {said}.",
                allowed="One supply.",
                because="With one off the other keeps it alive, and their breakers stand in parallel.",
                do="Turn off both, and have an electrician take one of them off; "
                "or correct the record, if it errs.",
                edition=panel.edition,
            )
    ending = {each for supplies in supplied.values() for each in supplies}
    for circuit in house.circuits.values():
        if circuit.record.purpose == FEEDER and circuit.breakers and circuit.id not in ending:
            yield CannotTell((circuit.id,), (f"which panel feeder {circuit.id} feeds",), circuit.place)


def _supplies(house: House, panel: Panel) -> Iterator[str]:
    """What feeds a panel: the service, the feeder it names, and every other that ends in it."""
    if is_service_panel(house, panel):
        yield SERVICE
    for circuit in house.circuits.values():
        if circuit.id == panel.feeder or _ends_in(house, circuit, panel):
            yield circuit.id


def _ends_in(house: House, circuit: Circuit, panel: Panel) -> bool:
    """Whether a feeder that a breaker of another panel feeds ends in this one."""
    from_panels = {house.breakers[each].panel for each in circuit.breakers}
    if circuit.record.purpose != FEEDER or not from_panels or panel.id in from_panels:
        return False
    ends = (end for run in circuit.runs for end in house.runs[run].ends)
    return any(end.kind == "panel" and end.id == panel.id for end in ends)
