"""Every id of a record, by kind: what is told twice, and what an id that is not found was meant to be."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TypeVar

from junctionary.marks import Place
from junctionary.problems import Problem, nearest
from junctionary.records import Records
from junctionary.records.boxes import BoxesFile, BoxRecord
from junctionary.records.circuits import CircuitRecord, LoadRecord
from junctionary.records.devices import BreakerKind, ConnectorKind, DeviceKind
from junctionary.records.house import Building, Level, Source
from junctionary.records.panels import PanelRecord
from junctionary.records.rooms import RoomRecord
from junctionary.records.runs import RunRecord
from junctionary.records.values import ID

T = TypeVar("T")

_NAME = re.compile(rf"{ID}(?:[/.+]{ID})*")

RECORDED = {
    "panel": "in a file of its own in panels/",
    "breaker": "under breakers: of its panel",
    "circuit": "in a file of its own in circuits/",
    "circuit or source": "in a file of its own in circuits/",
    "load": "under loads: of its circuit",
    "run": "under runs: of its circuit",
    "room": "in a file of its own in rooms/",
    "wall": "under walls: of the room",
    "box": "under boxes: in boxes/",
    "box or panel": "under boxes: in boxes/, or as a panel",
    "device": "under devices: of its box",
    "kind of device": "under devices: in devices/",
    "connector": "under connectors: in devices/",
    "kind of breaker": "under breakers: in devices/",
    "level": "under levels: in house.yaml, such as levels: [{id: ground, name: Ground floor}]",
    "building": "under buildings: in house.yaml",
    "permit": "under permits: in house.yaml",
}
"""Where each kind of thing is recorded, for whoever named one that is not."""

FILES_OF = {
    "panel": ("panels",),
    "breaker": ("panels",),
    "circuit": ("circuits",),
    "load": ("circuits",),
    "run": ("circuits",),
    "room": ("rooms",),
    "box": ("boxes",),
    "box or panel": ("boxes", "panels"),
    "device": ("boxes", "devices"),
    "kind of device": ("devices",),
    "connector": ("devices",),
    "kind of breaker": ("devices",),
}
"""Where each kind of id is told; an id is not called unknown while one of these files cannot be read."""


@dataclass(frozen=True, slots=True)
class Ids:
    """The records of a house by their ids; of two with one id the first counts.

    ``owner`` is the circuit of a run, or the source whose run it is.
    """

    panels: Mapping[str, PanelRecord]
    circuits: Mapping[str, CircuitRecord]
    runs: Mapping[str, RunRecord]
    owner: Mapping[str, str]
    loads: Mapping[str, LoadRecord]
    rooms: Mapping[str, RoomRecord]
    boxes: Mapping[str, BoxRecord]
    file_of: Mapping[str, BoxesFile]
    device_kinds: Mapping[str, DeviceKind]
    connectors: Mapping[str, ConnectorKind]
    breaker_kinds: Mapping[str, BreakerKind]
    sources: Mapping[str, Source]
    levels: Mapping[str, Level]
    buildings: Mapping[str, Building]
    lost: frozenset[str]

    def may_stand_elsewhere(self, kind: str) -> bool:
        """Whether a file that could not be read may hold an id of this kind."""
        return any(each in self.lost for each in FILES_OF.get(kind, ()))

    def of_kind(self, kind: str) -> tuple[Mapping[str, object], ...]:
        """The records that may go by an id of this kind."""
        by_kind: dict[str, tuple[Mapping[str, object], ...]] = {
            "panel": (self.panels,), "circuit": (self.circuits,), "run": (self.runs,), "load": (self.loads,),
            "room": (self.rooms,), "box": (self.boxes,), "box or panel": (self.boxes, self.panels),
            "kind of device": (self.device_kinds,), "connector": (self.connectors,),
            "kind of breaker": (self.breaker_kinds,), "source": (self.sources,),
            "level": (self.levels,), "building": (self.buildings,),
            "circuit or source": (self.circuits, self.sources),
        }  # fmt: skip
        return by_kind[kind]

    def known(self, kind: str) -> tuple[str, ...]:
        """The ids of one kind, in the order of the record."""
        return tuple(id_ for records in self.of_kind(kind) for id_ in records)

    def has(self, kind: str, word: str) -> bool:
        """Whether an id of this kind is recorded."""
        return any(word in records for records in self.of_kind(kind))

    def missing(self, kind: str, word: str, place: Place) -> list[Problem]:
        """A problem when no such id is known, naming the nearest that is."""
        if self.has(kind, word) or self.may_stand_elsewhere(kind):
            return []
        return [unknown_id(kind, word, place, self.known(kind), self.is_else(word))]

    def is_else(self, word: str) -> str:
        """``hall is a room``: what has this id though it was not meant; nothing where nothing has."""
        kind = next(
            (each for each in ("room", "circuit", "panel", "box", "load", "run") if self.has(each, word)), ""
        )
        return f"; {word} is a {kind}" if kind else ""


def unknown_id(kind: str, word: str, place: Place, known: Iterable[str], but: str = "") -> Problem:
    """The problem of an id that nothing in the record has; ``but`` says what has it besides.

    An id that is near is no more than a guess: K3 and K4 are as near as K3 and a slip of the finger.
    """
    known = list(dict.fromkeys(known))
    found = f"no {kind} {word!r} is recorded{but}"
    record = f"record {word} {RECORDED[kind]}" if kind in RECORDED else f"record {word}"
    is_else = but.startswith(";")
    near = None if is_else or word.isdecimal() else nearest(word, known)
    if near is not None:
        do = f"write {near} if that is meant, else {record}"
        return Problem(place, found, f"{near!r}, the nearest known {kind}", do)
    some = ", ".join(known[:6]) + (", ..." if len(known) > 6 else "")
    expected = f"a known {kind}: {some}" if known else f"a known {kind}; none is recorded"
    do = f"{record}, or correct the id"
    if word in ("unknown", "none"):
        do = "name one that is recorded, or leave the key out where nothing is known"
    elif not _NAME.fullmatch(word):
        do = "name one that is recorded, or write this in note:"
    return Problem(place, found, expected, do)


def gather(records: Records) -> tuple[Ids, list[Problem]]:
    """All ids of a record, and a problem for each that is told twice."""
    problems: list[Problem] = []
    house = records.house

    def once(kind: str, told: Iterable[tuple[str, Place, T]]) -> dict[str, T]:
        kept, doubled = first_of_each(kind, told)
        problems.extend(doubled)
        return kept

    runs = [(run, circuit.circuit) for circuit in records.circuits for run in circuit.runs]
    runs += [(run, source.id) for source in house.sources for run in source.runs]
    owner: dict[str, str] = {}
    for run, circuit in runs:
        owner.setdefault(run.id, circuit)
    boxes = [(id_, file) for file in records.boxes for id_ in file.boxes]
    ids = Ids(
        panels=once("panel", ((each.panel, each.value_place("panel"), each) for each in records.panels)),
        circuits=once(
            "circuit", ((each.circuit, each.value_place("circuit"), each) for each in records.circuits)
        ),
        runs=once("run", ((run.id, run.value_place("id"), run) for run, _ in runs)),
        owner=owner,
        loads=once(
            "load",
            ((load.id, load.value_place("id"), load) for each in records.circuits for load in each.loads),
        ),
        rooms=once("room", ((each.room, each.value_place("room"), each) for each in records.rooms)),
        boxes=once("box", ((id_, file.key_place("boxes", id_), file.boxes[id_]) for id_, file in boxes)),
        file_of=dict(reversed(boxes)),
        device_kinds=once("kind of device", _kinds(records, "devices")),
        connectors=once("connector", _kinds(records, "connectors")),
        breaker_kinds=once("kind of breaker", _kinds(records, "breakers")),
        sources=once("source", ((each.id, each.value_place("id"), each) for each in house.sources)),
        levels=once("level", ((each.id, each.value_place("id"), each) for each in house.levels)),
        buildings=once("building", ((each.id, each.value_place("id"), each) for each in house.buildings)),
        lost=records.lost,
    )
    once(
        "bundle", ((each.id, each.value_place("id"), each) for room in records.rooms for each in room.bundles)
    )
    problems += _shared(ids, records)
    return ids, problems


def first_of_each(kind: str, told: Iterable[tuple[str, Place, T]]) -> tuple[dict[str, T], list[Problem]]:
    """The first thing of each id, and a problem for every later one, naming where the first stands."""
    kept: dict[str, T] = {}
    first: dict[str, Place] = {}
    problems: list[Problem] = []
    for id_, place, thing in told:
        if id_ in kept:
            problems.append(
                Problem(
                    place,
                    f"the {kind} {id_!r} is told twice, first at {first[id_]}",
                    f"an id of its own for each {kind} of the house",
                    "give one of them another id",
                )
            )
        else:
            kept[id_], first[id_] = thing, place
    return kept, problems


def _kinds(records: Records, key: str) -> Iterable[tuple[str, Place, T]]:
    for file in records.devices:
        for id_, kind in getattr(file, key).items():
            yield id_, file.key_place(key, id_), kind


def _shared(ids: Ids, records: Records) -> list[Problem]:
    """Ids that a box and a panel share, or a circuit and a source: a run or a breaker could mean either."""
    problems = []
    for panel in records.panels:
        if panel.panel in ids.boxes:
            stands = ids.file_of[panel.panel].key_place("boxes", panel.panel)
            problems.append(_twofold(panel.value_place("panel"), panel.panel, "a panel and a box", stands))
    for source in ids.sources.values():
        if source.id in ids.circuits:
            stands = ids.circuits[source.id].value_place("circuit")
            problems.append(_twofold(source.value_place("id"), source.id, "a source and a circuit", stands))
    return problems


def _twofold(place: Place, id_: str, both: str, stands: Place) -> Problem:
    return Problem(
        place,
        f"{id_!r} is {both}, which stands at {stands}",
        "an id for each of its own",
        "give one of them another id",
    )
