"""A panel hangs in a bathroom or a clothes closet, or over the steps of a stair.

Why it matters: steam rusts a breaker until it no longer opens; clothes on a rail catch what an arc throws
    out; and whoever reaches for the main from a step falls. In each of them somebody works in the panel
    badly, or not at all.
What to do: have the panel moved, or the room made into another. Where a closet holds no clothes, record it
    as a utility room or a store; where the panel is over a landing, record the landing as a room of its own.
Cannot tell: when in which room the panel hangs is not recorded. A disconnect with no breaker or fuse in
    it is left alone, and so are panels built before the 2008 edition.
Stands: on the panel's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import HELD_SINCE
from junctionary.figures import Figures
from junctionary.house.model import House, Panel
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "240.24(D)"),
        cite("nec-2023", "240.24(E)"),
        cite("nec-2023", "240.24(F)"),
    ),
    ROUGHED,
)

FAILS = """
[panels/main.yaml]
panel: main    #! panel-in-wrong-room
spaces: 8
at: {room: bath, wall: north, along: 2 ft, up: 5 ft}
[rooms/bath.yaml]
room: bath
name: Bathroom
kind: bathroom
complete: true
[rooms/utility.yaml]
room: utility
name: Utility room
kind: utility
"""

PASSES = FAILS.replace("room: bath, wall", "room: utility, wall").replace("    #! panel-in-wrong-room", "")

UNTOLD = PASSES.replace("room: utility, wall: north", "wall: north")

WRONG = {
    "bathroom": ("a bathroom", "Steam rusts breakers until they no longer open.", ""),
    "closet": (
        "a closet",
        "Clothes before it catch what an arc throws out.",
        ", or, where no clothes are kept there, record the room as a utility room or a store",
    ),
    "stair": (
        "a stair",
        "Whoever reaches for it from a step falls.",
        ", or, where it is over a landing, record the landing as a room of its own",
    ),
}
"""The rooms by their kind: in words, why not there, and what else may mend it."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each panel with breakers or fuses in it, by the room it hangs in."""
    for panel in house.panels.values():
        if edition_year(panel.edition) < HELD_SINCE or _only_switches(panel):
            continue
        at = panel.record.at
        room = house.rooms.get(at.room) if at is not None and at.room is not None else None
        if room is None:
            yield CannotTell((panel.id,), (f"in which room panel {panel.id} is",), panel.place)
        elif room.record.kind in WRONG:
            kind, because, otherwise = WRONG[room.record.kind]
            yield Fault(
                place=panel.place,
                about=(panel.id, room.id),
                found=f"Panel {panel.id} is in {room.name}, {kind}.",
                allowed="No breaker or fuse in a bathroom, in a clothes closet or over the steps of a stair.",
                because=because,
                do=f"Have the panel moved{otherwise}.",
                edition=panel.edition,
            )


def _only_switches(panel: Panel) -> bool:
    return panel.record.kind == "disconnect" and not panel.breakers
