"""A record opened: read, understood, linked, worked out and judged, or stopped by its problems."""

from argparse import Namespace
from dataclasses import dataclass
from pathlib import Path

from junctionary.checks.accepting import accept
from junctionary.checks.engine import judge
from junctionary.checks.finding import Judgement
from junctionary.data import data_dir
from junctionary.figures import Figures, work_out
from junctionary.house.link import link
from junctionary.house.model import House
from junctionary.house.network import Network, network
from junctionary.problems import Problem
from junctionary.read.folder import RecordFiles, read_record
from junctionary.records import understand


@dataclass(frozen=True, slots=True)
class Result:
    """What came of a record that could be read."""

    house: House
    network: Network
    figures: Figures
    judgement: Judgement


@dataclass(frozen=True, slots=True)
class Opened:
    """A record's files and problems, and what came of it unless a problem stopped it."""

    folder: Path
    files: RecordFiles
    problems: tuple[Problem, ...]
    result: Result | None


def record_folder(asked: Namespace) -> Path:
    """The folder asked for: the one named, the demo house, or ``content`` here."""
    if asked.demo:
        return data_dir("content")
    return asked.record if asked.record is not None else Path("content")


@dataclass(frozen=True, slots=True)
class Linked:
    """A record's files and problems, and its house unless a problem stopped it."""

    folder: Path
    files: RecordFiles
    problems: tuple[Problem, ...]
    house: House | None


def link_record(folder: Path) -> Linked:
    """Read, understood and linked, each stage with its problems; nothing is judged."""
    files, problems = read_record(folder)
    trees = [(tree.source.file, tree.root) for tree in files.trees]
    records, misread = understand([*trees, *((file, None) for file in files.unread)])
    problems += misread
    house = None
    if records is not None:
        house, unlinked = link(records)
        problems += unlinked
    problems = sorted(dict.fromkeys(problems), key=lambda problem: problem.place)
    stopped = any(problem.stops for problem in problems)
    return Linked(folder, files, tuple(problems), None if stopped else house)


def open_record(folder: Path) -> Opened:
    """Every stage in order; the last two run only when no problem stops."""
    linked = link_record(folder)
    files, problems, house = linked.files, linked.problems, linked.house
    if house is None:
        return Opened(folder, files, problems, None)
    joined = network(house)
    figures = work_out(house, joined)
    judgement, unmet = accept(judge(house, joined, figures), house.accepted)
    problems = tuple(sorted((*problems, *unmet), key=lambda problem: problem.place))
    stopped = any(problem.stops for problem in problems)
    return Opened(folder, files, problems, None if stopped else Result(house, joined, figures, judgement))
