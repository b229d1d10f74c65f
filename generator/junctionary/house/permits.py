"""The permits work was done under: what was inspected under each, and the rooms that none covers."""

from collections.abc import Iterable

from junctionary.house.model import House
from junctionary.records.log import LogEntry
from junctionary.records.permits import Permit
from junctionary.records.values import NONE

UNDER_WAY = ("planned", "roughed", "covered", "made-up")
"""Stages at which a permit is open because the work goes on."""


def inspections_of(house: House, permit: Permit) -> tuple[LogEntry, ...]:
    """The inspections logged under a permit, the oldest first."""
    found = (each for each in house.log if each.inspection and each.permit == permit.number)
    return tuple(sorted(found, key=lambda each: each.date))


def not_passed(entries: Iterable[LogEntry]) -> tuple[LogEntry, ...]:
    """The inspections that failed, in whole or in part, and that no later one of the same things passed."""
    inspections = sorted((each for each in entries if each.inspection), key=lambda each: each.date)
    return tuple(
        each
        for number, each in enumerate(inspections)
        if each.result in ("fail", "partly")
        and not any(_passes(later, each) for later in inspections[number + 1 :])
    )


def _passes(later: LogEntry, before: LogEntry) -> bool:
    same = later.inspection == before.inspection and later.permit == before.permit
    # One about nothing in particular is about all that its permit covers.
    whole = not later.about or (before.about is not None and set(before.about) <= set(later.about))
    return same and later.result == "pass" and whole


def concerned(house: House, entry: LogEntry) -> tuple[str, ...]:
    """What an inspection was of: what it names, else what its permit covers, else the panels."""
    permits = (each for each in house.record.permits or () if each.number == entry.permit)
    covers = next((each.covers for each in permits), None)
    return tuple(entry.about or covers or house.panels)


def rooms_without_permit(house: House) -> tuple[str, ...]:
    """The rooms that no permit on record covers, by itself or with its building."""
    covered = {name for permit in house.record.permits or () for name in permit.covers or ()}
    return tuple(each.id for each in house.rooms.values() if not covered & {each.id, each.record.building})


def is_left_open(house: House, permit: Permit) -> bool:
    """Whether a permit is open though nothing that it covers is recorded as work under way."""
    return permit.closed is NONE and not any(_stage(house, name) in UNDER_WAY for name in permit.covers or ())


def _stage(house: House, name: str) -> str | None:
    kinds = (house.rooms, house.boxes, house.panels, house.circuits, house.runs)
    return next((kind[name].record.stage for kind in kinds if name in kind), None)
