"""E-62x: a circuit, its map, and whether wire, breaker and devices match."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar, Literal

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.drop_plot import DropPlot
from junctionary.sheets.entries import Excerpt, Fact, FindingEntry, MissingEntry, Severity, Table, Working
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.titleblock import Sheet

Symbol = Literal[
    "breaker", "panel", "receptacle", "receptacle-single", "receptacle-240", "gfci", "switch", "switch-3",
    "switch-4", "light", "fan", "smoke-alarm", "junction", "inlet", "appliance", "unknown",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class MapRun:
    """The cable into a node: ``12/2``, ``38 ft``; thin where smaller than a run before it."""

    ref: Ref
    cable: str
    length: str
    thin: bool = False
    dashed: bool = False
    severity: Severity | None = None


@dataclass(frozen=True, slots=True)
class MapNode:
    """A breaker, a box or an end of the map, with what hangs on it.

    ``notes`` are short lines under its name: its devices, what guards it,
    the voltage drop there. Where a run comes back to a box already drawn the
    node is a leaf that says so.
    """

    ref: Ref | None
    name: str
    symbol: Symbol
    notes: tuple[str, ...] = ()
    run: MapRun | None = None
    branches: tuple["MapNode", ...] = ()
    severity: Severity | None = None


@dataclass(frozen=True, slots=True)
class CircuitMap:
    """The tree from the breaker to the last box."""

    title: str
    says: str
    root: MapNode

    @property
    def key(self) -> str:
        """What its lines mean, where they are not all alike."""
        runs = [each.run for each in nodes(self.root) if each.run is not None]
        said = (
            ("Thin: smaller wire than before it.", any(each.thin for each in runs)),
            ("Dashed: an end of it is not known.", any(each.dashed for each in runs)),
        )
        return " ".join(words for words, met in said if met)


@dataclass(frozen=True, slots=True)
class MatchLine:
    """One part held against the breaker: its rating or size, what it may be, how it stands.

    ``stands`` is a word: ``fits``, ``too small``, ``not recorded``.
    """

    part: str
    has: str
    may: str
    stands: str
    because: str
    severity: Severity | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitSheet(Sheet):
    """A circuit from its breaker to its last box; ``dark_says`` names what a feeder takes with it."""

    before: BeforeOpening
    facts: tuple[Fact, ...]
    map: CircuitMap | None
    match: tuple[MatchLine, ...]
    goes_dark: Table
    runs: Table
    joints: Table
    loads: Table
    dark_says: Phrase = ()
    plot: DropPlot | None = None
    at_boxes: Table | None = None
    workings: tuple[Working, ...] = ()
    findings: tuple[FindingEntry, ...] = ()
    today: tuple[FindingEntry, ...] = ()
    missing: tuple[MissingEntry, ...] = ()
    excerpts: tuple[Excerpt, ...] = ()
    section: ClassVar[str] = "circuits"

    def anchors(self) -> tuple[Ref, ...]:
        """Every run of the circuit."""
        return self.runs.refs()


def nodes(root: MapNode) -> Iterator[MapNode]:
    """Every node of a map, supply side first."""
    waiting = [root]
    while waiting:
        node = waiting.pop()
        yield node
        waiting.extend(reversed(node.branches))
