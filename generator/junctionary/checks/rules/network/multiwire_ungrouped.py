"""The wires of a shared neutral are not kept together in the panel.

Why it matters: whoever works in the panel cannot see which neutral belongs to which hots, and parts one
    that still carries the other's current.
What to do: tie the hots and their neutral together once inside the panel, near where they enter.
Cannot tell: when the circuit comes in by a raceway or by more than one cable, and nobody wrote whether
    its wires are tied together (``grouped:`` in the circuit's file); or when its cable at the panel is
    not known. One cable that holds all of them makes the group plain.
Stands: on the circuit's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Circuit, House, Run
from junctionary.house.network import Network, listed
from junctionary.records.cables import Cable
from junctionary.records.values import UNKNOWN
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.4(D)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
ties: [[1, 3]]
breakers:
  1: {rating: 20 A, feeds: bench.black, says: "Bench, left"}
  3: {rating: 20 A, feeds: bench.red, says: "Bench, right"}
[circuits/bench.yaml]
circuit: bench    #! multiwire-ungrouped
name: Bench
grouped: false
runs:
  - id: b1
    cable: {raceway: 3/4 in EMT, wires: [12 AWG black, 12 AWG red, 12 AWG white]}
    from: main
    to: unknown
"""

PASSES = FAILS.replace("grouped: false", "grouped: true").replace("    #! multiwire-ungrouped", "")

UNTOLD = PASSES.replace("grouped: true\n", "")

SINCE = 2008


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit of several single poles, by what holds its wires together where it enters its panel."""
    for circuit in house.circuits.values():
        breakers = [house.breakers[each] for each in circuit.breakers]
        if len(breakers) < 2 or edition_year(circuit.edition) < SINCE or circuit.record.grouped is True:
            continue
        home = _home_runs(house, circuit)
        if circuit.record.grouped is False:
            yield Fault(
                place=circuit.place,
                about=(circuit.id, *circuit.breakers),
                found=f"The wires of {circuit.id} are not tied together in panel {breakers[0].panel}.",
                allowed="Hots and neutral of one circuit tied together once, or all in one cable.",
                because="Nobody can see there which neutral belongs to these hots.",
                do=f"Tie the hots of {listed(circuit.breakers)} to their neutral where they come in.",
                edition=circuit.edition,
            )
        elif circuit.record.grouped is UNKNOWN or not (len(home) == 1 and _one_cable(home[0])):
            needs = (f"whether the wires of {circuit.id} are tied together in panel {breakers[0].panel}",)
            yield CannotTell((circuit.id, *circuit.breakers), needs, circuit.place)


def _home_runs(house: House, circuit: Circuit) -> list[Run]:
    panels = {house.breakers[each].panel for each in circuit.breakers}
    runs = [house.runs[each] for each in circuit.runs]
    return [run for run in runs if any(end.id in panels for end in run.ends)]


def _one_cable(run: Run) -> bool:
    return isinstance(run.cable, Cable) and run.cable.raceway is None and len(run.conductors) > 2
