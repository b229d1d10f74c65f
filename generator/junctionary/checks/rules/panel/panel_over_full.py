"""A panel holds more breakers than it is made for.

Why it matters: its bus and its cabinet were tested with so many breakers and no more. Beyond that it runs
    hot, and half-size breakers put where they do not belong sit on the bus badly.
What to do: move circuits to a panel with room, or have a larger panel put in. The label inside the door
    says how many circuits it takes, and in which spaces half-size breakers may stand.
Cannot tell: when no breaker is recorded, or half-size breakers bring the poles above the spaces and how
    many circuits the label allows is not recorded. Spaces of which the record says nothing are taken to
    be empty.
Stands: on the panel's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "408.54"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main    #! panel-over-full
spaces: 2
circuits: 2
breakers:
  1a: {rating: 15 A, feeds: den, says: Den}
  1b: {rating: 15 A, feeds: hall, says: Hall}
  2: unused
[circuits/den.yaml]
circuit: den
name: Den
[circuits/hall.yaml]
circuit: hall
name: Hall
"""

PASSES = FAILS.replace("circuits: 2", "circuits: 4").replace("    #! panel-over-full", "")

UNTOLD = PASSES.replace("circuits: 4\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each panel's poles, used or not, against what it may hold."""
    for panel in house.panels.values():
        limits = figures.panels[panel.id]
        if limits.lacks:
            yield CannotTell((panel.id,), limits.lacks, panel.place)
        elif limits.most is not None and limits.poles > limits.most:
            yield Fault(
                place=panel.place,
                about=(panel.id,),
                found=f"Panel {panel.id} holds {limits.poles} poles of breakers.",
                allowed=f"At most {limits.most} poles.",
                because="Its bus and cabinet run hotter than they were tested for.",
                do=f"Move circuits of {panel.id} to a panel that has room for them.",
                edition=panel.edition,
            )
