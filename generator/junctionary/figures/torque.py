"""What is recorded of the torque at each screw, beside what the device lists."""

from collections.abc import Iterator
from dataclasses import dataclass

from junctionary.formulas.torque import TorqueMatch, compare_torque
from junctionary.house.model import Box, Device, House, Landing
from junctionary.house.terminals import has_leads
from junctionary.records.values import Said
from junctionary.units import Quantity

SCREWS = ("loop", "clamp-plate", "lug")


@dataclass(frozen=True, slots=True)
class Tightened:
    """One screw, and the torque it was given.

    ``said`` is a measured torque, ``listed``, NONE, UNKNOWN or None; ``listed`` what its
    device lists; ``match`` compares the two where both are values.
    """

    terminal: str
    device: str
    box: str
    said: Quantity | str | Said | None
    listed: Quantity | None
    match: TorqueMatch | None

    @property
    def recorded(self) -> bool:
        """Whether the record says that it was tightened to a torque."""
        return isinstance(self.said, Quantity) or self.said == "listed"


def screws_of(house: House, box: Box) -> Iterator[Tightened]:
    """Every landing of a box that is held by a screw; push-in terminals and leads have none."""
    for landing in box.landings:
        device = house.devices.get(landing.device)
        if device is not None and _has_screw(device, landing):
            said = _in_log(house, landing) or landing.torque
            listed = device.kind.torque if isinstance(device.kind.torque, Quantity) else None
            match = (
                compare_torque(said, listed, box.edition)
                if isinstance(said, Quantity) and said.kind == "torque" and listed
                else None
            )
            yield Tightened(landing.terminal, device.id, box.id, said, listed, match)


def _has_screw(device: Device, landing: Landing) -> bool:
    if landing.how is not None:
        return landing.how in SCREWS
    ways = device.kind.ways_to_land(landing.terminal.removeprefix(f"{device.id}."))
    return any(each in SCREWS for each in ways) if ways else not has_leads(device.kind)


def _in_log(house: House, landing: Landing) -> Quantity | str | None:
    """The latest torque in the log about this terminal, its device or its box: a value, or that it passed."""
    about = (landing.terminal, landing.device, landing.box)
    entries = [each for each in house.log if each.test == "torque" and set(about) & set(each.about or ())]
    for entry in sorted(entries, key=lambda each: each.date, reverse=True):
        if entry.value is not None and entry.value.kind == "torque":
            return entry.value
        if entry.result == "pass":
            return "listed"
    return None
