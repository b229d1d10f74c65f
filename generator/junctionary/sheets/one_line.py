"""E-607: the service one-line diagram: sources, mains, panels, feeders, bonds and grounds."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import ClassVar, Literal

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.entries import Table
from junctionary.sheets.links import Ref
from junctionary.sheets.titleblock import Sheet

Bond = Literal["joined", "apart", "unknown"]
Device = Literal["breaker", "fuse", "none", "unknown"]


SURGE = "SPD"
"""What stands in the sign of a surge protective device."""


@dataclass(frozen=True, slots=True)
class Label:
    """What a part is called and what is said of it, line by line, and where it leads."""

    name: str
    lines: tuple[str, ...] = ()
    ref: Ref | None = None


@dataclass(frozen=True, slots=True)
class Ground:
    """Neutral and ground at a panel: whether they are joined there, and the electrodes."""

    bond: Bond
    label: Label
    electrodes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class End:
    """Where a tap ends that leads to no panel: a source or surge protection by its sign, or circuits."""

    sign: str
    label: Label


@dataclass(frozen=True, slots=True)
class Tap:
    """What hangs on a panel: its breaker, the wire, and what is at the other end.

    ``interlocked`` when it and the main of the panel cannot both be on.
    """

    breaker: Label | None
    wire: Label | None
    to: "Bus | End"
    interlocked: bool = False


@dataclass(frozen=True, slots=True)
class Bus:
    """A panel: its main, its bus, what hangs on it, its ground."""

    label: Label
    main: Label
    device: Device
    taps: tuple[Tap, ...]
    ground: Ground


@dataclass(frozen=True, slots=True)
class Feed:
    """What a panel that no other panel feeds hangs on: the parts from the supply down, and the wire.

    ``aside`` hangs on that wire, ahead of the main.
    """

    parts: tuple[End, ...]
    wire: Label | None
    bus: Bus
    aside: End | None = None


@dataclass(frozen=True, slots=True)
class OneLine:
    """The whole diagram. ``apart`` are sources of which it is not recorded where they enter."""

    title: str
    says: str
    feeds: tuple[Feed, ...]
    apart: tuple[End, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class OneLineSheet(Sheet):
    """The diagram, and the same in a schedule."""

    before: BeforeOpening
    diagram: OneLine
    schedule: Table
    section: ClassVar[str] = "panels"


def buses(feeds: tuple[Feed, ...]) -> Iterator[Bus]:
    """Every panel of the diagram, supply side first."""
    waiting = [feed.bus for feed in feeds]
    while waiting:
        bus = waiting.pop(0)
        yield bus
        waiting.extend(tap.to for tap in bus.taps if isinstance(tap.to, Bus))
