"""What is recorded of the torque at each screw, beside what the device lists."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from junctionary.formulas.torque import TorqueMatch, compare_torque
from junctionary.house.model import Box, Device, House, Landing
from junctionary.house.terminals import has_leads
from junctionary.records.log import LogEntry
from junctionary.records.values import Said
from junctionary.units import Quantity

SCREWS = ("loop", "clamp-plate", "lug")
FAILED = "not as listed"
"""What is said of a screw whose test failed, with no value noted."""

EITHER_SCREW = ("brass", "silver")
"""A receptacle's two screws of a side go by one name where a wire is landed on one of them only."""


@dataclass(frozen=True, slots=True)
class Tightened:
    """One screw, and the torque it was given.

    ``said`` is a measured torque, ``listed``, ``not as listed``, NONE, UNKNOWN or None;
    ``listed`` what its device lists; ``match`` compares the two where both are values.
    A test in the log wins, and ``tested`` is its date; ``differs`` is then what the box's
    own file says, where that is another value.
    """

    terminal: str
    device: str
    box: str
    said: Quantity | str | Said | None
    listed: Quantity | None
    match: TorqueMatch | None
    tested: str | None = None
    differs: Quantity | None = None

    @property
    def recorded(self) -> bool:
        """Whether the record says that it was tightened to a torque."""
        return isinstance(self.said, Quantity) or self.said in ("listed", FAILED)


def screws_of(house: House, box: Box) -> Iterator[Tightened]:
    """Every landing of a box that is held by a screw; push-in terminals and leads have none."""
    for landing in box.landings:
        device = house.devices.get(landing.device)
        if device is not None and _has_screw(device, landing):
            entry = _in_log(house, landing, box.landings)
            said = _told(entry) if entry else landing.torque
            listed = device.kind.torque if isinstance(device.kind.torque, Quantity) else None
            match = (
                compare_torque(said, listed, box.edition)
                if isinstance(said, Quantity) and said.kind == "torque" and listed
                else None
            )
            yield Tightened(
                landing.terminal,
                device.id,
                box.id,
                said,
                listed,
                match,
                entry.date if entry else None,
                _differs(said, landing.torque, box.edition),
            )


def _has_screw(device: Device, landing: Landing) -> bool:
    if landing.how is not None:
        return landing.how in SCREWS
    ways = device.kind.ways_to_land(landing.terminal.removeprefix(f"{device.id}."))
    return any(each in SCREWS for each in ways) if ways else not has_leads(device.kind)


def _in_log(house: House, landing: Landing, beside: Sequence[Landing]) -> LogEntry | None:
    """The test that tells of this screw: the latest; of one day, the nearest to it, then the last."""
    names = [landing.box, landing.device, *_own_names(landing, beside)]
    found = [
        (entry.date, max(names.index(each) for each in entry.about or () if each in names), number)
        for number, entry in enumerate(house.log)
        if entry.test == "torque" and _told(entry) and set(names) & set(entry.about or ())
    ]
    return house.log[max(found)[-1]] if found else None


def _own_names(landing: Landing, beside: Sequence[Landing]) -> Iterator[str]:
    local = landing.terminal.removeprefix(f"{landing.device}.")
    side = local.partition("-")[0]
    if side in EITHER_SCREW:
        both = [each for each in beside if each.terminal.startswith(f"{landing.device}.{side}")]
        if len(both) == 1:
            yield f"{landing.device}.{side}"
    yield landing.terminal


def _told(entry: LogEntry) -> Quantity | str | None:
    """What a test says of a torque: its value, that it passed, or that it did not."""
    if entry.value is not None and entry.value.kind == "torque":
        return entry.value
    return {"pass": "listed", "fail": FAILED}.get(entry.result or "")


def _differs(said: object, written: object, edition: str) -> Quantity | None:
    if not (isinstance(said, Quantity) and isinstance(written, Quantity) and written.kind == said.kind):
        return None
    return None if compare_torque(said, written, edition).verdict == "as listed" else written
