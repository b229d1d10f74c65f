"""What rules about fault currents share: what they say where facts are missing."""

from collections.abc import Iterable, Iterator, Sequence

from junctionary.checks.finding import CannotTell
from junctionary.figures import UNTOLD_SERVICE
from junctionary.house.model import House
from junctionary.house.network import is_service_panel


def unless_service(house: House, untold: Iterable[tuple[str, Sequence[str]]]) -> Iterator[CannotTell]:
    """Each circuit with what it lacks; the fault current at the service is asked for once for a house."""
    asked = False
    for circuit, lacks in untold:
        needs = tuple(dict.fromkeys(each for each in lacks if each != UNTOLD_SERVICE))
        asked = asked or len(needs) < len(set(lacks))
        if needs:
            yield CannotTell((circuit,), needs, house.circuits[circuit].place)
    panels = list(house.panels.values())
    first = next((each for each in panels if is_service_panel(house, each)), panels[0] if panels else None)
    if asked and first is not None:
        yield CannotTell((first.id,), (UNTOLD_SERVICE,), first.place)
