"""Marked trees become typed records: one model for each kind of file."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import TypeAdapter, ValidationError

from junctionary.marks import MarkedList, MarkedMap, Place
from junctionary.problems import Problem
from junctionary.records.accepted import Acceptance
from junctionary.records.boxes import BoxesFile
from junctionary.records.circuits import CircuitRecord
from junctionary.records.devices import DevicesFile
from junctionary.records.house import HouseRecord
from junctionary.records.log import LogEntry
from junctionary.records.misread import problems_of
from junctionary.records.panels import PanelRecord
from junctionary.records.photos import PhotoRecord, PhotosFile
from junctionary.records.reading import Reading, Record
from junctionary.records.rooms import RoomRecord
from junctionary.records.values import shown

R = TypeVar("R", bound=Record)


@dataclass(frozen=True, slots=True)
class Records:
    """Every record of a house, each kind in the order of its files.

    ``lost`` names the kinds of file of which one could not be understood: an
    id that is not found may stand there.
    """

    house: HouseRecord
    panels: tuple[PanelRecord, ...]
    circuits: tuple[CircuitRecord, ...]
    rooms: tuple[RoomRecord, ...]
    boxes: tuple[BoxesFile, ...]
    devices: tuple[DevicesFile, ...]
    log: tuple[LogEntry, ...]
    photos: tuple[PhotoRecord, ...]
    accepted: tuple[Acceptance, ...] = ()
    lost: frozenset[str] = frozenset()


def understand(trees: Iterable[tuple[str, Any]]) -> tuple[Records | None, list[Problem]]:
    """Typed records from ``(file, root)`` pairs; None when house.yaml itself could not be understood.

    A root that is None stands for a file that could not be read, of which
    the problems are told already.
    """
    problems: list[Problem] = []
    kept: dict[str, list[Any]] = {}
    lost: set[str] = set()
    for file, root in trees:
        kind = file.split("/")[0].removesuffix(".yaml")
        if root is None:
            lost.add(kind)
        elif kind in LISTS:
            kept[kind] = _entries(LISTS[kind], file, root, problems)
        elif kind in MODELS:
            if other := _other_kind(kind, root):
                do = f"move it to {other}/, or begin the file with {MODELS[kind].keys_of()[0]}: ..."
                found = f"a file of {other} among {kind}"
                problems.append(Problem(root.place, found, f"files of {kind} only", do))
                lost |= {kind, other}
                continue
            record = _one(MODELS[kind], file, root, problems)
            if record is None:
                lost.add(kind)
            else:
                kept.setdefault(kind, []).append(record)
    if not kept.get("house"):
        return None, problems
    return (
        Records(
            house=kept["house"][0],
            panels=tuple(kept.get("panels", ())),
            circuits=tuple(kept.get("circuits", ())),
            rooms=tuple(kept.get("rooms", ())),
            boxes=tuple(kept.get("boxes", ())),
            devices=tuple(kept.get("devices", ())),
            log=tuple(kept.get("log", ())),
            accepted=tuple(kept.get("accepted", ())),
            photos=tuple(photo for file in kept.get("photos", ()) for photo in file.photos),
            lost=frozenset(lost),
        ),
        problems,
    )


MODELS: dict[str, type[Record]] = {
    "house": HouseRecord,
    "panels": PanelRecord,
    "circuits": CircuitRecord,
    "rooms": RoomRecord,
    "boxes": BoxesFile,
    "devices": DevicesFile,
    "photos": PhotosFile,
}

LISTS: dict[str, type[Record]] = {"log": LogEntry, "accepted": Acceptance}

FILES = MODELS | LISTS
"""Every kind of file, by the name of the file or its folder; of log and accepted each entry."""


def _other_kind(kind: str, root: Any) -> str | None:
    """The folder a file belongs in, where it lacks what its own asks and begins as those of another."""
    begins = {MODELS[each].keys_of()[0]: each for each in ("panels", "circuits", "rooms")}
    begins |= {"house": "house"}
    if kind not in (*begins.values(), "boxes", "devices") or not isinstance(root, MarkedMap):
        return None
    if MODELS[kind].keys_of()[0] in root:
        return None
    return next((begins[key] for key in root if key in begins and key not in MODELS[kind].keys_of()), None)


def _one(model: type[R], file: str, root: Any, problems: list[Problem]) -> R | None:
    if not isinstance(root, MarkedMap):
        found = "a list" if isinstance(root, MarkedList) else "a single value"
        place = getattr(root, "place", Place(file, 1, 1))
        do = f"begin the file with {model.keys_of()[0]}: ..."
        problems.append(Problem(place, found, "keys and values", do))
        return None
    reading = Reading()
    try:
        return model.model_validate(root, context=reading)
    except ValidationError as error:
        problems += problems_of(error, root, model)
        return None
    finally:
        problems += reading.problems


def _entries(model: type[R], file: str, root: Any, problems: list[Problem]) -> list[R]:
    if not isinstance(root, MarkedList):
        place = getattr(root, "place", Place(file, 1, 1))
        do = f"begin each entry with - {{{model.keys_of()[0]}: ...}}"
        problems.append(Problem(place, shown(root), "a list of entries", do))
        return []
    reading = Reading()
    entries: list[R] = []
    adapter = TypeAdapter(list[model])  # type: ignore[valid-type]
    try:
        entries = adapter.validate_python(list(root), context=reading)
    except ValidationError as error:
        problems += problems_of(error, root, model)
    problems += reading.problems
    return entries
