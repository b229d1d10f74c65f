"""Which runs lie in walls that somebody saw open, for the checks of the work before it is covered."""

from junctionary.house.model import Run
from junctionary.records.cables import Cable

SHEATHED = ("NM-B", "NM", "NMC", "UF-B", "UF", "SER", "SEU", "AC", "MC")
AS_FOUND = "as-found"


def is_in_walls(run: Run) -> bool:
    """Whether a run is a cable in the building that was put in before somebody's eyes.

    Raceways and open wiring have rules of their own; what is buried lies in no
    wall; old work that was found closed cannot be looked into.
    """
    return (
        isinstance(run.cable, Cable)
        and run.cable.kind in SHEATHED
        and run.record.buried is None
        and run.stage != AS_FOUND
    )
