"""E-5xx: a box, its make-up, fill and terminations."""

from dataclasses import dataclass
from typing import ClassVar, Literal

from junctionary.sheets.caution import BeforeOpening
from junctionary.sheets.circuit import Symbol
from junctionary.sheets.entries import Excerpt, Fact, FindingEntry, MissingEntry, Working
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.photo import Photo
from junctionary.sheets.titleblock import Sheet

EndState = Literal["joined", "landed", "capped", "loose", "passing", "unknown", "not-recorded"]


@dataclass(frozen=True, slots=True)
class Conductor:
    """One conductor of a cable (or a lead) where it ends in this box.

    ``id`` is ``a1.black``; ``colour`` its insulation (``bare`` for none);
    ``marked`` the colour it was re-marked. ``meets`` is the joint's or
    terminal's name on this sheet, empty where it meets none.
    """

    id: str
    colour: str
    size: str
    state: EndState
    meets: str = ""
    marked: str = ""


@dataclass(frozen=True, slots=True)
class Cable:
    """A run as it enters this box. ``side`` is where the supply is: ``feed`` or ``onward``."""

    ref: Ref
    id: str
    cable: str
    length: str
    side: Literal["feed", "onward", "unknown"]
    other_end: Link | str
    circuit: Link | None
    conductors: tuple[Conductor, ...]


@dataclass(frozen=True, slots=True)
class Joint:
    """Conductors connected together: its members, what holds them, how it is known.

    ``name`` is its short name on the sheet (``j1``); ``members`` are
    conductor ids and, for a pigtail, terminal names; ``role`` is the word a
    reader wants: ``hot``, ``neutral``, ``ground``. ``by_word``: it follows from
    the word its box was written with, and was not recorded as seen.
    """

    ref: Ref
    name: str
    role: str
    members: tuple[str, ...]
    connector: str
    pigtail: str
    known_by: str
    by_word: bool = False


@dataclass(frozen=True, slots=True)
class Terminal:
    """A terminal of a device: its name, what lands, how, and how tight.

    ``wires`` are conductor ids landed straight; ``from_joint`` names the
    joint whose pigtail lands here; ``colour`` is the landing conductor's.
    ``by_word`` as for a joint.
    """

    name: str
    wires: tuple[str, ...]
    from_joint: str
    colour: str
    how: str
    torque: str
    measured: str
    circuit: str = ""
    by_word: bool = False


@dataclass(frozen=True, slots=True)
class Device:
    """A device in the box, its terminals in the order they are drawn; ``face`` is its NEMA configuration."""

    ref: Ref
    id: str
    says: str
    symbol: Symbol
    terminals: tuple[Terminal, ...]
    feeds: Phrase = ()
    face: str = ""


@dataclass(frozen=True, slots=True)
class MakeUp:
    """How the conductors of one box are joined and landed."""

    title: str
    says: str
    cables: tuple[Cable, ...]
    joints: tuple[Joint, ...]
    devices: tuple[Device, ...]
    written_as: str = ""
    enclosure: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxSheet(Sheet):
    """A box, as somebody about to open it needs it."""

    before: BeforeOpening
    facts: tuple[Fact, ...]
    makeup: MakeUp | None
    fill: Working | None
    evidence: tuple[Fact, ...]
    circuits: tuple[Phrase, ...] = ()
    room: Link | None = None
    findings: tuple[FindingEntry, ...] = ()
    today: tuple[FindingEntry, ...] = ()
    missing: tuple[MissingEntry, ...] = ()
    excerpts: tuple[Excerpt, ...] = ()
    photos: tuple[Photo, ...] = ()
    section: ClassVar[str] = "boxes"

    def anchors(self) -> tuple[Ref, ...]:
        """Every device and joint in the box."""
        if self.makeup is None:
            return ()
        devices = (device.ref for device in self.makeup.devices)
        return (*devices, *(joint.ref for joint in self.makeup.joints))
