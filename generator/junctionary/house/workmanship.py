"""How the work in a box was done: the nearest word wins."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeVar

from junctionary.house.ids import Ids
from junctionary.problems import Problem
from junctionary.records import Records
from junctionary.records.boxes import BoxRecord, LookedAt, Workmanship
from junctionary.records.house import HouseRecord, Practice
from junctionary.records.rooms import RoomRecord
from junctionary.records.runs import Evidence
from junctionary.records.values import Said
from junctionary.units import Quantity

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Usual:
    """What holds for one box unless a terminal or a joint says otherwise."""

    termination: str | None
    torque: Quantity | str | Said | None
    splice: tuple[str, ...]
    free_conductor: Quantity | None
    looked_at: LookedAt | None
    evidence: Evidence | None
    stage: str | None
    edition: str


def usual(box: BoxRecord, defaults: Workmanship | None, room: RoomRecord | None, house: HouseRecord) -> Usual:
    """Box over the file's defaults over the room over the house."""
    practices = (box, defaults, room.practice if room else None, house.practice)
    near: list[Workmanship | Practice] = [each for each in practices if each is not None]
    work = [each for each in (box, defaults) if each is not None]
    own: list[Workmanship | RoomRecord] = [each for each in (box, defaults, room) if each is not None]
    torque: Quantity | str | Said | None = None
    for each in reversed(near):
        torque = torque if each.torque is None else each.torque
    return Usual(
        termination=_nearest(each.termination for each in near),
        torque=torque,
        splice=tuple(_nearest(each.splice for each in near) or ()),
        free_conductor=_nearest(each.free_conductor for each in near),
        looked_at=_nearest(each.looked_at for each in work),
        evidence=_nearest(each.evidence for each in own),
        stage=_nearest(each.stage for each in own),
        edition=_nearest(each.built_to for each in own) or house.reference,
    )


def unknown_connectors(records: Records, ids: Ids) -> list[Problem]:
    """Connectors named in a list of usual splices that no file under devices/ tells."""
    said: list[Practice | Workmanship | None] = [records.house.practice]
    said += [room.practice for room in records.rooms]
    for file in records.boxes:
        said += [file.defaults, *file.boxes.values()]
    problems: list[Problem] = []
    for each in said:
        for number, connector in enumerate((each.splice if each else None) or ()):
            assert each is not None
            problems += ids.missing("connector", connector, each.value_place("splice", number))
    return problems


def _nearest(values: Iterable[T | None]) -> T | None:
    return next((each for each in values if each is not None), None)
