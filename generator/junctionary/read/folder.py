"""A record's folder: which files belong to it, and each of them read."""

import hashlib
import os
import re
import stat
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from junctionary.marks import MarkedList, MarkedMap, Place
from junctionary.problems import MISSPELT, Problem, nearest
from junctionary.read.loader import load
from junctionary.read.source import Source, digest, place_after, source_line

HOUSE = "house.yaml"
LOG = "log.yaml"
ACCEPTED = "accepted.yaml"
PHOTOS = "photos/photos.yaml"
FOLDERS = ("panels", "circuits", "rooms", "boxes", "devices")
PICTURES = (".jpg", ".jpeg", ".png", ".webp")

_YAML = re.compile(r"\.ya?ml(?:\.|$)", re.IGNORECASE)
"""A name that somebody gave to a YAML file; an editor may have put an ending of its own after it."""

MAX_TEXT_BYTES = 8_000_000
MAX_PICTURE_BYTES = 60_000_000

_KNOWN_AT_THE_TOP = (HOUSE, LOG, ACCEPTED, *FOLDERS, "photos", "notes")


@dataclass(frozen=True, slots=True)
class Tree:
    """One YAML file and what stands in it: a mapping, or for log.yaml and accepted.yaml a list."""

    source: Source
    root: MarkedMap | MarkedList

    @property
    def part(self) -> str:
        """What of the record it tells: "house", "log", or the name of its folder."""
        return self.source.file.split("/")[0].removesuffix(".yaml")


@dataclass(frozen=True, slots=True)
class RecordFiles:
    """A record as read: every file that belongs to it, and the YAML ones as trees, both by name.

    ``unread`` are the YAML files that gave no tree, and those passed over by their name or place.
    """

    folder: Path
    sources: tuple[Source, ...] = ()
    trees: tuple[Tree, ...] = ()
    unread: tuple[str, ...] = ()

    def part(self, name: str) -> tuple[Tree, ...]:
        """The trees of one part: house, panels, circuits, rooms, boxes, devices, photos, log."""
        return tuple(tree for tree in self.trees if tree.part == name)

    def line_at(self, place: Place) -> str | None:
        """The line a place points at, as it was written; None where there is none."""
        return source_line(place, self.sources)

    @property
    def digest(self) -> str:
        """One SHA-256 for the whole record, as ``digest`` makes it."""
        return digest(self.sources)


def read_record(folder: Path) -> tuple[RecordFiles, list[Problem]]:
    """The record in a folder, as far as it can be read, and all problems and warnings.

    Files and folders whose names begin with a dot are passed over in
    silence; anything else that is no part of a record gets a warning. A
    problem with the folder itself has a place with an empty file name.
    """
    problems: list[Problem] = []
    if told := _no_folder(folder):
        return RecordFiles(folder), [told]
    sources: list[Source] = []
    trees: list[Tree] = []
    passed_over: list[str] = []
    files = sorted(_members(folder, problems, passed_over))
    for file in files:
        raw = _bytes(folder, file, problems)
        if raw is None:
            continue
        source, sound = _source(file, raw, problems)
        sources.append(source)
        if sound and file.endswith(".yaml"):
            root, found = load(source.text, file)
            problems += found
            if told := _wrong_root(file, root):
                problems.append(told)
            elif isinstance(root, MarkedMap | MarkedList):
                trees.append(Tree(source, root))
    if HOUSE not in files and not os.path.lexists(folder / HOUSE):
        # Of a folder that is no record only a house file under another name is worth a word.
        problems = [
            each
            for each in problems
            if "/" in each.place.file or nearest(each.place.file, (HOUSE,), MISSPELT)
        ]
        told = Problem(
            Place(HOUSE, 1, 1), f"no {HOUSE} in {folder}", "a record's folder", _record_near(folder)
        )
        problems.append(told)
    problems.sort(key=lambda problem: problem.place)
    read = {tree.source.file for tree in trees}
    unread = tuple(file for file in files if file.endswith(".yaml") and file not in read)
    return RecordFiles(folder, tuple(sources), tuple(trees), (*unread, *passed_over)), problems


def _record_near(folder: Path) -> str:
    """What to do about a folder without a house file: the one above or within it that has one, if any."""
    above = folder.resolve().parent
    if folder.name in (*FOLDERS, "photos", "notes") and (above / HOUSE).is_file():
        return f"give {folder.parent}"
    within = sorted(each.parent.name for each in folder.glob(f"*/{HOUSE}"))
    return f"give {folder / within[0]}" if within else f"write a {HOUSE} there"


def _no_folder(folder: Path) -> Problem | None:
    place = Place("", 1, 1)
    try:
        mode = folder.stat().st_mode
    except FileNotFoundError:
        return Problem(place, f"there is no {folder}", "a record's folder", "check the name")
    except (OSError, ValueError) as error:
        return Problem(
            place, f"{folder} cannot be opened: {_why(error)}", "a record's folder", "check the folder"
        )
    if not stat.S_ISDIR(mode):
        do = f"give {folder.parent}" if folder.suffix == ".yaml" else "give the folder that holds house.yaml"
        return Problem(place, f"{folder} is a file", "a record's folder", do)
    return None


def _members(folder: Path, problems: list[Problem], passed_over: list[str]) -> Iterator[str]:
    """The names of all files of the record, as they stand in the folder and one level down.

    What looks like a part of the record and cannot be one stops: a circuit
    left out in silence would be missing on a list of breakers. By
    ``passed_over`` no id is called unknown that may stand there.
    """
    for name, is_folder in _listed(folder, "", problems):
        if name in _KNOWN_AT_THE_TOP and is_folder == ("." not in name):
            if is_folder:
                yield from _members_of(folder, name, problems, passed_over)
            else:
                yield name
        elif name in _KNOWN_AT_THE_TOP:
            due = "file" if "." in name else "folder"
            problems.append(
                Problem(
                    Place(name, 1, 1), f"{name} is no {due}", f"a {due} of that name", "rename or mend it"
                )
            )
        else:
            told = _stranger(name, name, _KNOWN_AT_THE_TOP, stops=is_folder and _holds_yaml(folder / name))
            problems.append(told)
            if told.stops:
                near = nearest(name, FOLDERS) if is_folder else None
                passed_over += [f"{each}/{name}" for each in ([near] if near else FOLDERS)]


def _members_of(folder: Path, part: str, problems: list[Problem], passed_over: list[str]) -> Iterator[str]:
    for name, is_folder in _listed(folder / part, part, problems):
        file = f"{part}/{name}"
        if is_folder:
            stops = _holds_yaml(folder / file) or _YAML.search(name) is not None
            found = f"{file} is a folder in a folder"
            problems.append(Problem(Place(file, 1, 1), found, "files only", "move its files up", stops))
            passed_over += [file] if stops else []
        elif _belongs(part, name):
            yield file
        else:
            problems.append(_stranger(file, name, ("photos.yaml",) if part == "photos" else ()))
            passed_over += [file] if problems[-1].stops else []


def _belongs(part: str, name: str) -> bool:
    if part == "photos":
        return name == "photos.yaml" or name.lower().endswith(PICTURES)
    return name.endswith(".md" if part == "notes" else ".yaml")


def _listed(folder: Path, part: str, problems: list[Problem]) -> list[tuple[str, bool]]:
    """Visible entries with whether each is a folder; unreadable ones become problems."""
    try:
        with os.scandir(folder) as entries:
            found = sorted(
                (entry.name, os.path.isdir(entry.path)) for entry in entries if not entry.name.startswith(".")
            )
    except OSError as error:
        place = Place(part, 1, 1)
        problems.append(
            Problem(
                place,
                f"{part or folder} cannot be listed: {_why(error)}",
                "a readable folder",
                "check who may read it",
            )
        )
        return []
    kept = []
    for name, is_folder in found:
        try:
            name.encode()
        except UnicodeEncodeError:
            shown = os.fsencode(name).decode("utf-8", "backslashreplace")
            file = f"{part}/{shown}" if part else shown
            problems.append(
                Problem(
                    Place(file, 1, 1), f"{shown} has a name that is not UTF-8", "a plain name", "rename it"
                )
            )
        else:
            kept.append((name, is_folder))
    return kept


def _holds_yaml(folder: Path) -> bool:
    """Whether a folder that is no part of a record holds what could be one."""
    try:
        return any(_YAML.search(name) for name in os.listdir(folder))
    except OSError:
        return True


def _stranger(file: str, name: str, known: tuple[str, ...], stops: bool = False) -> Problem:
    """A problem for what looks like a part of a record and is none, else a warning, with what it may be."""
    stem, dot, ending = name.rpartition(".")
    part = file.rpartition("/")[0]
    stops = stops or (part != "notes" and _YAML.search(name) is not None)
    do = "move it elsewhere, or begin its name with a dot"
    if stops and not part:
        do = f"move it into {', '.join(FOLDERS[:-1])} or {FOLDERS[-1]}, or begin its name with a dot"
    if (
        dot
        and ending.lower() in ("yml", "yaml")
        and (part not in ("", "photos", "notes") or f"{stem.lower()}.yaml" in known)
    ):
        do = f"rename it to {stem if part else stem.lower()}.yaml"
    elif part in FOLDERS and (meant := _YAML.search(name)):
        do = f"rename it to {name[: meant.start()]}.yaml"
    elif part == "notes" and ending.lower() in ("markdown", "md", "txt"):
        do = f"rename it to {stem}.md"
    elif part == "photos":
        do = "save it as .jpg or .png if it is a picture, else move it elsewhere"
        if near := nearest(name, known):
            do = f"rename it to {near}"
    elif near := nearest(name, known):
        do = f"rename it to {near}"
    belongs = {"notes": "notes in .md files", "photos": f"photos.yaml and pictures ({', '.join(PICTURES)})"}
    expected = belongs.get(part, ".yaml files" if part else f"only {', '.join(known)}")
    found = f"{file} is no part of a record and was not read"
    return Problem(Place(file, 1, 1), found, expected, do, stops)


def _bytes(folder: Path, file: str, problems: list[Problem]) -> bytes | None:
    """The bytes of one file, or None with a problem noted."""
    most = MAX_PICTURE_BYTES if file.lower().endswith(PICTURES) else MAX_TEXT_BYTES
    path = folder / file
    place = Place(file, 1, 1)
    try:
        # Looked at before it is opened: opening a pipe or a device could wait for ever.
        if not stat.S_ISREG(path.stat().st_mode):
            problems.append(
                Problem(place, f"{file} is no ordinary file", "an ordinary file", "replace or remove it")
            )
            return None
        with path.open("rb") as opened:
            raw = opened.read(most + 1)
    except OSError as error:
        problems.append(
            Problem(
                place,
                f"{file} cannot be read: {_why(error)}",
                "a readable file",
                "check it and who may read it",
            )
        )
        return None
    if len(raw) > most:
        problems.append(
            Problem(
                place,
                f"{file} is larger than {most // 1_000_000} MB",
                "a smaller file",
                "split it or scale it down",
            )
        )
        return None
    return raw


def _source(file: str, raw: bytes, problems: list[Problem]) -> tuple[Source, bool]:
    """The file as a Source, and whether its text is good to be parsed."""
    sha256 = hashlib.sha256(raw).hexdigest()
    if file.lower().endswith(PICTURES):
        return Source(file, "", sha256), False
    body = raw.removeprefix(BOM_UTF8)
    try:
        return Source(file, body.decode("utf-8"), sha256), True
    except UnicodeDecodeError as error:
        if raw.startswith((BOM_UTF16_LE, BOM_UTF16_BE)):
            place, found = Place(file, 1, 1), "this file is saved as UTF-16"
        else:
            place = place_after(file, body[: error.start].decode("utf-8"))
            found = f"the byte 0x{body[error.start]:02X} is not UTF-8"
        problems.append(Problem(place, found, "UTF-8 text", "save it again as UTF-8"))
        return Source(file, body.decode("utf-8", "replace"), sha256), False


def _wrong_root(file: str, root: object) -> Problem | None:
    """A problem where a file holds a list or a single value and a mapping is due, or the other way."""
    if root is None or (file == PHOTOS and isinstance(root, MarkedMap | MarkedList)):
        return None
    if file in (LOG, ACCEPTED):
        if isinstance(root, MarkedList):
            return None
        said = "a mapping" if isinstance(root, MarkedMap) else "a single value"
        return Problem(
            Place(file, 1, 1), f"{file} is {said}", "a list of dated entries", "begin each with a hyphen"
        )
    if isinstance(root, MarkedMap):
        return None
    said = "a list" if isinstance(root, MarkedList) else "a single value"
    return Problem(Place(file, 1, 1), f"{file} is {said}", "keys with values", "begin with a key and a colon")


def _why(error: Exception) -> str:
    """The system's own reason, without a path."""
    return (getattr(error, "strerror", None) or str(error)).lower()
