"""The demo house with its seeded faults mended, and copies of it with one slip written in."""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, fields
from functools import cache, cached_property
from pathlib import Path
from random import Random

import yaml

from junctionary.checks.engine import judge
from junctionary.checks.finding import Finding
from junctionary.figures import work_out
from junctionary.house.link import link
from junctionary.house.model import Box, House
from junctionary.house.network import network
from junctionary.read.loader import load
from junctionary.records import Records, understand

ROOT = Path(__file__).parents[2]
CONTENT = ROOT / "content"
Line = tuple[str, int]


class NoRecord(ValueError):  # noqa: N818 - it says what came out
    """A slip was written so that the record cannot be read any more: a fault of the mutation."""


@dataclass(frozen=True)
class Seed:
    """A record with one slip in it.

    ``where`` is the id of what it was done to. ``stands`` are the lines on which the rule must find it:
    all of them, or any one where ``any_of`` is set. ``changed`` are the texts that differ; empty where
    the linked house was changed.
    """

    where: str
    make: Callable[[], House]
    stands: tuple[Line, ...]
    any_of: bool = False
    changed: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Demo:
    """The texts of a record by file, and what each was understood as."""

    files: Mapping[str, str]

    @cached_property
    def house(self) -> House:
        return linked(self.files)

    def boxes(self) -> list[Box]:
        return list(self.house.boxes.values())


@cache
def _understood(file: str, text: str, house_text: str) -> Records:
    roots = [("house.yaml", load(house_text, "house.yaml")[0])] if file != "house.yaml" else []
    root, problems = load(text, file)
    records, misread = understand([*roots, (file, root)])
    if records is None or problems or misread:
        raise NoRecord("; ".join(map(str, (*problems, *misread))) or f"{file} holds nothing")
    return records


def linked(files: Mapping[str, str]) -> House:
    """The house of these texts; a file that did not change is understood once. Raises NoRecord."""
    parts = [_understood(file, text, files["house.yaml"]) for file, text in files.items()]
    many = {
        each.name: tuple(one for part in parts for one in getattr(part, each.name))
        for each in fields(Records)
        if each.name not in ("house", "lost")
    }
    house, problems = link(Records(house=parts[0].house, **many))
    if house is None or problems:
        raise NoRecord("; ".join(map(str, problems)))
    return house


def all_findings(house: House) -> tuple[Finding, ...]:
    """What every rule finds in a house."""
    joined = network(house)
    return judge(house, joined, work_out(house, joined)).findings


def as_it_is() -> dict[str, str]:
    """The texts of the demo house by file, house.yaml first."""
    paths = sorted(CONTENT.rglob("*.yaml"), key=lambda path: (path.name != "house.yaml", path))
    return {path.relative_to(CONTENT).as_posix(): path.read_text("utf-8") for path in paths}


@cache
def mended() -> Demo:
    """The demo house with every edit of mended.yaml made."""
    files = as_it_is()
    for mend in yaml.safe_load((ROOT / "tests/mended.yaml").read_text("utf-8")):
        text = files[mend["file"]]
        assert text.count(mend["was"]) == 1, (
            f"{mend['file']} has {mend['was']!r} {text.count(mend['was'])} times"
        )
        files[mend["file"]] = text.replace(mend["was"], mend["is"])
    return Demo(files)


class Slip:
    """The texts of a record while a slip is written into them."""

    def __init__(self, demo: Demo, where: str) -> None:
        self._before = demo.files
        self.files = dict(demo.files)
        self.where = where

    def swap(self, file: str, was: str, is_: str) -> "Slip":
        """One text of a file put in place of another that stands there once."""
        assert self.files[file].count(was) == 1, f"{file} has {was!r} {self.files[file].count(was)} times"
        self.files[file] = self.files[file].replace(was, is_)
        return self

    def box(self, box: str, **keys: str | None) -> "Slip":
        """Keys of a box written anew, each as the text after its colon; None takes a key out."""
        for key, value in keys.items():
            file, start, end = self.block(box)
            lines = self.files[file].splitlines()
            old = [n for n in range(start + 1, end) if lines[n].startswith(f"    {key}:")]
            told = [f"    {key}: {value}"] if value is not None else []
            if old:
                after = next((n for n in range(old[0] + 1, end) if not lines[n].startswith("     ")), end)
                lines[old[0] : after] = told
            else:
                lines[start + 1 : start + 1] = told
            self.files[file] = "\n".join(lines) + "\n"
        return self

    def run(self, run: str, **keys: str) -> "Slip":
        """Keys of a run's line written anew."""
        file, number = self.line_of_run(run)
        lines = self.files[file].splitlines()
        for key, value in keys.items():
            lines[number - 1] = _with_key(lines[number - 1], key, value, f"{{id: {run}")
        self.files[file] = "\n".join(lines) + "\n"
        return self

    def new_run(self, circuit: str, text: str) -> "Slip":
        """One more run of a circuit, the first of its list, so that nothing below it reads otherwise."""
        return self.swap(f"circuits/{circuit}.yaml", "\nruns:\n", f"\nruns:\n  - {{{text}}}\n")

    def breaker(self, breaker: str, **keys: str) -> "Slip":
        """Keys of a breaker's line written anew."""
        file, number = self.line_of_breaker(breaker)
        lines = self.files[file].splitlines()
        for key, value in keys.items():
            lines[number - 1] = _with_key(lines[number - 1], key, value, "{rating: 0 A")
        self.files[file] = "\n".join(lines) + "\n"
        return self

    def forget(self, device: str) -> "Slip":
        """A device taken out of the house: the log speaks of its box, and what was plugged in is gone."""
        name = re.escape(device)
        box = device.partition(".")[0]
        for file, text in self.files.items():
            if file == "log.yaml":
                self.files[file] = re.sub(rf"(?<=[\[ ]){name}(?=[,\]])", box, text)
            elif file.startswith("circuits/"):
                self.files[file] = re.sub(
                    rf"\n  - {{[^\n]*(plugged|wired): {name}(\.\w+)?[,}}][^\n]*", "", text
                )
                self.files[file] = re.sub(r"\nloads:\n$", "\n", self.files[file])
        return self

    def line_of_box(self, box: str, starts: str = "") -> Line:
        """The line of a box's key, or the one in it that starts so."""
        file, start, end = self.block(box)
        lines = self.files[file].splitlines()
        if not starts:
            return file, start + 1
        return file, 1 + next(n for n in range(start + 1, end) if lines[n].strip().startswith(starts))

    def line_of_run(self, run: str) -> Line:
        return self._line_with(f"  - {{id: {run},")

    def line_of_breaker(self, breaker: str) -> Line:
        panel, _, space = breaker.partition("/")
        return self._line_with(f"  {space}:", f"panels/{panel}.yaml")

    def seed(self, *stands: Line, any_of: bool = False) -> Seed:
        changed = {file: text for file, text in self.files.items() if text != self._before.get(file)}
        return Seed(self.where, lambda: linked(self.files), stands, any_of, changed)

    def _line_with(self, starts: str, only: str | None = None) -> Line:
        for file, text in self.files.items():
            if only is None or file == only:
                for number, line in enumerate(text.splitlines(), 1):
                    if line.startswith(starts):
                        return file, number
        raise NoRecord(f"no line starts with {starts!r}")

    def block(self, box: str) -> tuple[str, int, int]:
        """The file of a box, and the numbers of its first line and of the first behind it, from 0."""
        for file, text in self.files.items():
            if not file.startswith("boxes/"):
                continue
            lines = text.splitlines()
            for start, line in enumerate(lines):
                if line.startswith(f"  {box}:"):
                    inside = (n for n in range(start + 1, len(lines)) if not lines[n].startswith("    "))
                    return file, start, next(inside, len(lines))
        raise NoRecord(f"no box {box}")


def _with_key(line: str, key: str, value: str, after: str) -> str:
    told = re.compile(rf"(?<=[ {{]){key}: (\[[^\]]*\]|\{{[^}}]*\}}|\"[^\"]*\"|[^,}}]*)")
    if told.search(line):
        return told.sub(lambda _: f"{key}: {value}", line, count=1)
    at = line.index(after.split(":", maxsplit=1)[0])
    comma = line.index(",", at)
    return f"{line[:comma]}, {key}: {value}{line[comma:]}"


def drawn(sites: Iterable[Seed], places: int, chance: Random) -> list[Seed]:
    """All of them, or so many drawn at random."""
    listed = list(sites)
    return listed if len(listed) <= places else chance.sample(listed, places)
