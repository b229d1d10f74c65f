"""Circuits by their purpose and rating, for the checks of what a dwelling must have."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from junctionary.figures.places import is_detached
from junctionary.house.model import Circuit, House, Panel, Room
from junctionary.house.panels import MAIN
from junctionary.records.values import NONE
from junctionary.sources import edition_year
from junctionary.units import Quantity

TWENTY_A = 20
HELD_SINCE = 2008
"""The earliest edition whose text stands behind these checks; rooms of earlier work are left alone."""


@dataclass(frozen=True, slots=True)
class Counted:
    """How many 20 A circuits there are for a purpose, and what is missing to count them all."""

    circuits: int
    lacks: tuple[str, ...]


def circuits_for(house: House, purpose: str) -> Counted:
    """The 20 A circuits of that purpose; a multiwire one counts for each of its hots.

    A circuit whose purpose is not recorded may be one.
    """
    count = 0
    lacks: list[str] = []
    for circuit in house.circuits.values():
        if circuit.record.purpose is None:
            lacks.append(f"the purpose of circuit {circuit.id}")
        elif circuit.record.purpose == purpose:
            breakers = [house.breakers[each] for each in circuit.breakers]
            known = [each.rating for each in breakers if isinstance(each.rating, Quantity)]
            count += sum(each.to("A") == TWENTY_A for each in known)
            lacks += [
                f"the rating of {each.id}" for each in breakers if not isinstance(each.rating, Quantity)
            ]
            if not breakers:
                lacks.append(f"which breaker feeds circuit {circuit.id}")
    return Counted(count, (*lacks, *spaces_untold(house)))


def shortage(
    house: House, rooms: Iterable[Room], purpose: str, needed: int, since: int = HELD_SINCE
) -> tuple[Room, Counted] | None:
    """The first of these rooms built under ``since`` or later, and the 20 A circuits for its purpose.

    None where there is no such room, or they are as many as are needed.
    """
    room = next((each for each in rooms if edition_year(each.edition) >= since), None)
    counted = circuits_for(house, purpose)
    return None if room is None or counted.circuits >= needed else (room, counted)


def spaces_untold(house: House) -> Iterator[str]:
    """What may hide a circuit: no panel, a space of which nothing is told, a breaker nobody could trace."""
    if not house.panels:
        yield "the panel, and what each of its breakers feeds"
    for breaker in house.breakers.values():
        named = isinstance(breaker.feeds, str) or breaker.feeds is NONE or breaker.spaces == (MAIN,)
        if not named and not breaker.record.kept_off:
            yield f"what breaker {breaker.id} feeds"
    for panel in house.panels.values():
        if numbers := untold_spaces(panel):
            yield f"what is in spaces {', '.join(map(str, numbers))} of panel {panel.id}"


def untold_spaces(panel: Panel) -> tuple[int, ...]:
    """The spaces of a panel of which nothing is told, by their numbers."""
    told = {space.rstrip("ab") for each in panel.breakers for space in each.spaces} | set(panel.fillers)
    numbers = tuple(each for each in range(1, panel.record.spaces + 1) if str(each) not in told)
    return numbers if len(told) < panel.record.spaces else ()


def rooms_of(house: House, *kinds: str) -> Iterator[Room]:
    """The rooms of these kinds that were built under an edition that is held here."""
    return (
        room
        for room in house.rooms.values()
        if room.record.kind in kinds and edition_year(room.edition) >= HELD_SINCE
    )


def has_power(house: House, room: Room) -> bool | None:
    """Whether a room has power; None where it stands apart, and nothing there tells.

    A room of the house itself is taken to have it.
    """
    if not is_detached(house, room):
        return True
    alike = [each for each in house.rooms.values() if each.record.building == room.record.building]
    boxed = any(each.boxes or each.circuits for each in alike)
    ids = {each.id for each in alike}
    panels = any(each.record.at and each.record.at.room in ids for each in house.panels.values())
    named = any(each in ids for one in house.circuits.values() for each in one.rooms)
    if boxed or panels or named:
        return True
    return False if room.record.complete is True else None


def is_twenty(house: House, circuit: Circuit) -> bool | None:
    """Whether every breaker of a circuit is 20 A; None where a rating is not recorded."""
    ratings = [house.breakers[each].rating for each in circuit.breakers]
    known = [each.to("A") == TWENTY_A for each in ratings if isinstance(each, Quantity)]
    if not all(known):
        return False
    return True if ratings and len(known) == len(ratings) else None
