"""What the record dates: dates that cannot be, permits and surge protection that name what is not there."""

from collections.abc import Iterator
from itertools import pairwise

from junctionary.house.ids import Ids, unknown_id
from junctionary.house.model import Box, Device
from junctionary.house.names import is_named, known_names
from junctionary.house.panels import breaker_key
from junctionary.problems import Problem
from junctionary.records import Records, words
from junctionary.records.circuits import LoadRecord
from junctionary.records.house import Source
from junctionary.records.panels import BreakerRecord, PanelRecord, Surge
from junctionary.records.permits import Permit
from junctionary.records.runs import RunRecord
from junctionary.records.values import Said

Aged = PanelRecord | BreakerRecord | RunRecord | LoadRecord | Source | Surge
STEPS = ("applied", "issued", "closed")


def later(one: str, other: str) -> bool:
    """Whether a date is certainly later than another; a year alone is no later than a day within it."""
    length = min(len(one), len(other))
    return one[:length] > other[:length]


def replace_by(box: Box, device: Device) -> str | Said | None:
    """The date printed on a device by which it is to be replaced: its own, or else that of its kind."""
    own = box.record.replace_by.get(device.local)
    return own if own is not None else device.kind.replace_by


def wrong_dates(records: Records, ids: Ids) -> list[Problem]:
    """Every date that cannot be, and every permit or place of surge protection that is not recorded."""
    recorded = records.house.recorded
    return [
        *(problem for each in _aged(ids) for problem in _age(each, recorded)),
        *(problem for panel in ids.panels.values() for problem in _surge(panel)),
        *(problem for each in records.house.permits or () for problem in _permit(each, ids)),
        *_permit_numbers(records),
    ]


def _aged(ids: Ids) -> Iterator[Aged]:
    for panel in ids.panels.values():
        yield panel
        yield from (each for each in panel.breakers.values() if isinstance(each, BreakerRecord))
        if isinstance(panel.surge, Surge):
            yield panel.surge
    yield from ids.runs.values()
    yield from ids.loads.values()
    yield from ids.sources.values()


def _age(each: Aged, recorded: str | None) -> Iterator[Problem]:
    made, installed = each.made, each.installed
    if isinstance(made, str) and isinstance(installed, str) and later(made, installed):
        place = each.value_place("installed")
        found = f"installed {installed}, but made {made}"
        yield Problem(place, found, "made before it was installed", "correct one of the two dates")
    for key, said in (("made", made), ("installed", installed)):
        if isinstance(said, str) and recorded and later(said, recorded):
            found = f"{key} {said}, after the date of the record, {recorded}"
            do = "correct the date, or `recorded` in house.yaml"
            yield Problem(each.value_place(key), found, "a date no later than the record", do)


def _surge(panel: PanelRecord) -> Iterator[Problem]:
    surge = panel.surge
    if not isinstance(surge, Surge) or not isinstance(surge.connected, str):
        return
    if surge.connected not in words.SURGE_AT and breaker_key(panel, surge.connected) is None:
        place = surge.value_place("connected")
        known = (*words.SURGE_AT, *(each for each in panel.breakers if breaker_key(panel, each)))
        yield unknown_id("breaker", surge.connected, place, known)


def _permit(permit: Permit, ids: Ids) -> Iterator[Problem]:
    for number, name in enumerate(permit.covers or ()):
        if not is_named(name, ids) and not ids.lost:
            yield unknown_id("thing", name, permit.value_place("covers", number), known_names(ids))
    told = [(key, said) for key in STEPS if isinstance(said := getattr(permit, key), str)]
    for (first, earlier), (second, said) in pairwise(told):
        if later(earlier, said):
            found = f"permit {permit.number} {second} {said}, but {first} {earlier}"
            do = "correct one of the two dates"
            yield Problem(permit.value_place(second), found, f"{first} before it was {second}", do)


def _permit_numbers(records: Records) -> Iterator[Problem]:
    permits = records.house.permits or []
    numbers = [each.number for each in permits]
    for index, each in enumerate(permits):
        if each.number in numbers[:index]:
            found = f"permit {each.number} is told twice"
            yield Problem(each.value_place("number"), found, "each permit once", "put the two together")
    for entry in records.log:
        if entry.permit is not None and entry.permit not in numbers:
            yield unknown_id("permit", entry.permit, entry.value_place("permit"), numbers)
