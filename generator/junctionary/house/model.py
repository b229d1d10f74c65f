"""The linked House: every record tied to every other, frozen.

Names, as answers give them: breaker ``main/6``, device ``K1.r1``, terminal
``K1.r1.brass``, conductor end in a box ``K1/a1.black``, joint ``K1/j1``.
Where a fact is not recorded the value is None; where somebody looked and
cannot tell it is UNKNOWN.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from junctionary.marks import Place
from junctionary.records.accepted import Acceptance
from junctionary.records.boxes import BoxRecord, LookedAt
from junctionary.records.cables import Cable, Conductor
from junctionary.records.circuits import CircuitRecord, LoadRecord
from junctionary.records.devices import BreakerKind, ConnectorKind, DeviceKind
from junctionary.records.house import HouseRecord, Source
from junctionary.records.log import LogEntry
from junctionary.records.panels import BreakerRecord, PanelRecord
from junctionary.records.photos import PhotoRecord
from junctionary.records.rooms import RoomRecord
from junctionary.records.runs import Evidence, RunRecord
from junctionary.records.values import Said
from junctionary.units import Quantity, WireSize

Role = Literal["hot", "neutral", "ground"]


@dataclass(frozen=True, slots=True)
class End:
    """One end of a run: in a box, in a panel, nowhere (``none``), ``unknown``, or ``unrecorded``."""

    kind: Literal["box", "panel", "none", "unknown", "unrecorded"]
    id: str | None = None


@dataclass(frozen=True, slots=True)
class Run:
    """One cable, from its supply side to its other end; ``circuit`` may be the source whose run it is."""

    id: str
    circuit: str
    cable: Cable | Said | None
    from_: End
    to: End
    length: Quantity | Said | None
    edition: str
    stage: str | None
    evidence: Evidence | None
    record: RunRecord
    place: Place

    @property
    def conductors(self) -> tuple[Conductor, ...]:
        """Its conductors, none when the cable is unknown or not recorded."""
        return self.cable.conductors if isinstance(self.cable, Cable) else ()

    @property
    def ends(self) -> tuple[End, End]:
        """Both ends, the supply side first."""
        return (self.from_, self.to)


@dataclass(frozen=True, slots=True)
class Breaker:
    """A breaker or fuse; ``id`` is panel/space, two spaces joined by a plus.

    A panel's main is ``main/main`` with the one space ``main`` and both legs.
    """

    id: str
    panel: str
    spaces: tuple[str, ...]
    legs: tuple[str | None, ...]
    rating: Quantity | Said | None
    guards: tuple[str, ...] | None
    feeds: str | Said | None
    conductor: str | None
    says: str | None
    tied_to: tuple[str, ...]
    interlocked_with: tuple[str, ...]
    kind: BreakerKind | None
    record: BreakerRecord
    place: Place

    @property
    def poles(self) -> int:
        """One pole a space."""
        return len(self.spaces)


@dataclass(frozen=True, slots=True)
class Panel:
    """One panel; ``fillers`` says of each space without a breaker whether it is unused, blank or open."""

    id: str
    name: str
    breakers: tuple[Breaker, ...]
    fillers: Mapping[str, str]
    feeder: str | None
    edition: str
    record: PanelRecord
    place: Place


@dataclass(frozen=True, slots=True)
class Circuit:
    """What one breaker (or one handle-tied pair) feeds. ``boxes`` run from the panel outward."""

    id: str
    name: str
    breakers: tuple[str, ...]
    runs: tuple[str, ...]
    boxes: tuple[str, ...]
    rooms: tuple[str, ...]
    devices: tuple[str, ...]
    loads: tuple[LoadRecord, ...]
    edition: str
    record: CircuitRecord
    place: Place


@dataclass(frozen=True, slots=True)
class Device:
    """One device in its box; ``circuits`` are those whose conductors land on it."""

    id: str
    local: str
    box: str
    kind_id: str
    kind: DeviceKind
    circuits: tuple[str, ...]
    split: str | None
    labels: tuple[str, ...]
    guarded_by: str | None
    place: Place


@dataclass(frozen=True, slots=True)
class Member:
    """One thing held by a joint or a terminal.

    ``name`` is a conductor end (``K1/a1.black``), a terminal reached by a
    pigtail or a lead (``K1.r1.brass``), the box's screw (``K1/box``), a
    jumper (``K1/g1``), or a joint (``K1/j2``) whose pigtail lands here. On a
    terminal, a pigtail that names another terminal is one wire between the
    two, and stands on both.
    """

    kind: Literal["conductor", "pigtail", "lead", "box", "jumper"]
    name: str
    size: WireSize | None
    metal: str | None
    run: str | None = None
    colour: str | None = None


@dataclass(frozen=True, slots=True)
class Joint:
    """Conductors joined together. ``expanded`` is the word it was expanded from, or None when written out.

    ``by`` is a connector's id; NONE, ``solder`` or ``tape`` where there is no
    connector; UNKNOWN; or None when it is not recorded.
    """

    id: str
    box: str
    members: tuple[Member, ...]
    by: str | Said | None
    connector: ConnectorKind | None
    circuits: tuple[str, ...]
    role: Role | None
    expanded: str | None
    place: Place


@dataclass(frozen=True, slots=True)
class Landing:
    """What is landed on one terminal, and how. ``torque`` is a value, ``listed``, NONE, UNKNOWN or None.

    The box's own screw is a terminal too: ``terminal`` and ``device`` are then ``K1/box``.
    """

    terminal: str
    device: str
    box: str
    wires: tuple[Member, ...]
    how: str | None
    turn: str | None
    bare: Quantity | None
    torque: Quantity | str | Said | None
    expanded: str | None
    place: Place


@dataclass(frozen=True, slots=True)
class PassThrough:
    """A run that passes through a box uncut, with the loop left in it."""

    run: str
    loop: Quantity | None


@dataclass(frozen=True, slots=True)
class Box:
    """One box, its runs, its devices and its make-up.

    ``runs`` are those that end here; ``passing`` only pass through;
    ``capped`` and ``loose`` are conductor ends in no joint; ``untold`` are
    conductor ends that nothing mentions, a run of unknown cable among them
    as a whole (``K1/a1``). ``makeup_words`` are the words and keys of the
    make-up as written (``pigtailed``; ``feed``, ``guarded``).
    ``makeup_unknown`` when the make-up is written ``unknown``;
    ``makeup_unrecorded`` when none is written.
    """

    id: str
    room: str
    name: str | None
    circuits: tuple[str, ...]
    runs: tuple[str, ...]
    passing: tuple[PassThrough, ...]
    devices: tuple[Device, ...]
    joints: tuple[Joint, ...]
    landings: tuple[Landing, ...]
    capped: tuple[str, ...]
    loose: tuple[str, ...]
    untold: tuple[str, ...]
    makeup_words: tuple[str, ...]
    makeup_unknown: bool
    makeup_unrecorded: bool
    torque: Quantity | str | Said | None
    free_conductor: Quantity | None
    looked_at: LookedAt | None
    stage: str | None
    edition: str
    evidence: Evidence | None
    record: BoxRecord
    place: Place

    def device(self, local: str) -> Device | None:
        """The device of that local id, or None."""
        return next((each for each in self.devices if each.local == local), None)


@dataclass(frozen=True, slots=True)
class Room:
    """One room and what is in it."""

    id: str
    name: str
    boxes: tuple[str, ...]
    panels: tuple[str, ...]
    circuits: tuple[str, ...]
    edition: str
    stage: str | None
    record: RoomRecord
    place: Place


@dataclass(frozen=True, slots=True)
class House:
    """The whole record, linked. Every mapping is by id, in the order of the record; rooms by name."""

    name: str
    edition: str
    panels: Mapping[str, Panel]
    breakers: Mapping[str, Breaker]
    circuits: Mapping[str, Circuit]
    runs: Mapping[str, Run]
    rooms: Mapping[str, Room]
    boxes: Mapping[str, Box]
    devices: Mapping[str, Device]
    device_kinds: Mapping[str, DeviceKind]
    connectors: Mapping[str, ConnectorKind]
    sources: Mapping[str, Source]
    log: tuple[LogEntry, ...]
    photos: tuple[PhotoRecord, ...]
    accepted: tuple[Acceptance, ...]
    record: HouseRecord

    def joints(self) -> tuple[Joint, ...]:
        """Every joint of the house, box by box."""
        return tuple(joint for box in self.boxes.values() for joint in box.joints)
