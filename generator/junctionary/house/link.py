"""Typed records become one linked House; every loose end is told in one pass."""

from collections.abc import Mapping
from typing import TypeVar

from junctionary.house.boxes import link_boxes
from junctionary.house.circuits import link_circuits
from junctionary.house.dates import wrong_dates
from junctionary.house.ends import link_runs
from junctionary.house.ids import Ids, gather
from junctionary.house.model import Box, Circuit, House, Panel, Room
from junctionary.house.names import unknown_names
from junctionary.house.panels import link_panels, whole_name
from junctionary.house.rings import panels_in_rings
from junctionary.house.standing import out_of_place
from junctionary.house.workmanship import unknown_connectors
from junctionary.problems import Problem
from junctionary.records import Records
from junctionary.records.house import Source
from junctionary.records.log import LogEntry

R = TypeVar("R", LogEntry, Source)


def link(records: Records) -> tuple[House | None, list[Problem]]:
    """The House, or None where a problem keeps it from being known; and all problems, by place."""
    ids, problems = gather(records)
    runs, in_runs = link_runs(ids, records.house)
    boxes, in_boxes = link_boxes(ids, records.house, runs, ends_missing=bool(in_runs))
    panels, in_panels = link_panels(ids, records.house, runs)
    circuits, in_circuits = link_circuits(ids, records.house, runs, boxes, panels)
    problems += [*in_runs, *in_boxes, *in_panels, *in_circuits, *panels_in_rings(panels)]
    problems += [*unknown_connectors(records, ids), *unknown_names(records, ids)]
    problems += [*wrong_dates(records, ids), *out_of_place(records, ids)]
    problems = sorted(dict.fromkeys(problems), key=lambda problem: problem.place)
    if any(problem.stops for problem in problems):
        return None, problems
    house = House(
        name=records.house.house,
        edition=records.house.reference,
        panels=panels,
        breakers={each.id: each for panel in panels.values() for each in panel.breakers},
        circuits=circuits,
        runs=runs,
        rooms=_rooms(ids, records, boxes, panels, circuits),
        boxes=boxes,
        devices={device.id: device for box in boxes.values() for device in box.devices},
        device_kinds=ids.device_kinds,
        connectors=ids.connectors,
        sources={id_: _by_whole_names(each, ids, "enters", "shut_off") for id_, each in ids.sources.items()},
        log=tuple(_by_whole_names(each, ids, "trip", "about") for each in records.log),
        photos=records.photos,
        accepted=records.accepted,
        record=records.house,
    )
    return house, problems


def _by_whole_names(record: R, ids: Ids, *keys: str) -> R:
    """A record in which every breaker goes by its whole name, as it does everywhere in a house."""
    said = {key: getattr(record, key) for key in keys if getattr(record, key) is not None}
    whole = {
        key: whole_name(told, ids) if isinstance(told, str) else tuple(whole_name(each, ids) for each in told)
        for key, told in said.items()
    }
    return record if whole == said else record.model_copy(update=whole)


def _rooms(
    ids: Ids,
    records: Records,
    boxes: Mapping[str, Box],
    panels: Mapping[str, Panel],
    circuits: Mapping[str, Circuit],
) -> dict[str, Room]:
    """Every room with what is in it, by name; its circuits in the order of their breakers."""
    within: dict[str, list[str]] = {}
    for box in boxes.values():
        within.setdefault(box.room, []).append(box.id)
    stands = {
        each.id: at for at, each in enumerate(one for panel in panels.values() for one in panel.breakers)
    }
    served: dict[str, list[str]] = {}
    last = len(stands)
    for circuit in sorted(
        circuits.values(),
        key=lambda each: min((stands.get(one, last) for one in each.breakers), default=last),
    ):
        for room in circuit.rooms:
            served.setdefault(room, []).append(circuit.id)
    return {
        id_: Room(
            id=id_,
            name=record.name,
            boxes=tuple(within.get(id_, ())),
            panels=tuple(
                each.id for each in panels.values() if each.record.at and each.record.at.room == id_
            ),
            circuits=tuple(served.get(id_, ())),
            edition=record.built_to or records.house.reference,
            stage=record.stage,
            record=record,
            place=record.place,
        )
        for id_, record in sorted(ids.rooms.items(), key=lambda each: (each[1].name.casefold(), each[0]))
    }
