"""A box with wiring in it cannot be reached without breaking the building.

Why it matters: joints loosen with the years. One that is plastered over cannot be looked at, mended
    or even found, and whoever searches for the fault does not know that it exists.
What to do: make an opening and a cover at the box, or take the joint out and run the cable whole.
    A cover that shows is no blemish; a box that does not is a fault.
Cannot tell: when a box has no device, no cover and nothing about how it is reached; or when that or
    its place is unknown or not recorded. A box behind a hatch, or hidden by what can be moved, is reachable.
Stands: on the box's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.records.boxes import Reach
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "314.29"),), ROUGHED)

FAILS = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: unknown, to: J1}
  - {id: b2, cable: 12/2 NM-B, from: J1, to: unknown}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  J1:    #! box-not-reachable
    at: {wall: north, along: 6 ft, up: 3 ft}
    makeup: splice-through
    cover: blank
    reach: {behind: drywall}
"""

PASSES = FAILS.replace("{behind: drywall}", "{through: closet hatch}").replace("    #! box-not-reachable", "")

UNTOLD = PASSES.replace("    cover: blank\n", "").replace("    reach: {through: closet hatch}\n", "")

IN_VIEW = ("blank", "plate", "in-use", "canopy")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box that has wiring in it."""
    for box in house.boxes.values():
        if not (box.runs or box.passing or box.joints or box.landings):
            continue
        reach = box.record.reach
        behind = reach.behind if isinstance(reach, Reach) else None
        if reach is NONE or behind is not None:
            yield Fault(
                place=box.place,
                about=(box.id, *box.circuits),
                found=f"Box {box.id} is {f'behind {behind}' if behind else 'recorded as out of reach'}.",
                allowed="Every box can be reached without removing any part of the building.",
                because="What is joined in it cannot be looked at or mended, and will be forgotten.",
                do="Open the surface and put a cover there, or take the joints out of it.",
                edition=box.edition,
            )
        elif needs := _needs(box):
            yield CannotTell((box.id, *box.circuits), needs, box.place)


def _needs(box: Box) -> tuple[str, ...]:
    """What is missing before a box can be called reachable."""
    reach = box.record.reach
    if isinstance(reach, Reach) and (reach.through or reach.hidden_by):
        return ()
    if reach is UNKNOWN:
        return (f"how box {box.id} is reached",)
    if box.devices:
        return ()
    if box.record.cover not in IN_VIEW:
        return (f"the cover of box {box.id}, or how it is reached",)
    return () if box.record.at else (f"where box {box.id} is, or how it is reached",)
