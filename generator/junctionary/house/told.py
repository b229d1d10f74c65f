"""What was told of a search: which outlets are dead, which work, and what a meter showed."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.house.model import House, Role
from junctionary.house.outlets import Outlet, named
from junctionary.house.readings import READINGS, Reading


@dataclass(frozen=True, slots=True)
class Told:
    """Outlets by id: ``dead``, ``live``, and those read with an open ``ground``; each once, in order.

    ``roles`` are those in which readings let the fault lie; ``single`` when
    they prove that one conductor alone is gone, ``whole`` when both are.
    ``readings`` are by outlet. ``wrong`` says what contradicts itself.
    """

    dead: tuple[str, ...]
    live: tuple[str, ...]
    ground: tuple[str, ...]
    proved_ground: tuple[str, ...]
    roles: tuple[Role, ...]
    single: bool
    whole: bool
    readings: Mapping[str, Reading]
    wrong: tuple[str, ...]


def told(
    house: House,
    outlets: Mapping[str, Outlet],
    dead: Iterable[str],
    live: Iterable[str],
    readings: Mapping[str, str],
) -> Told:
    """What was told, name by name. KeyError for a name of nothing, or of a reading there is not."""
    off, on = _outlets(house, outlets, dead), _outlets(house, outlets, live)
    ground: dict[str, None] = {}
    proved: dict[str, None] = {}
    read: dict[str, Reading] = {}
    for name, word in readings.items():
        reading = READINGS[word]
        for each in _outlets(house, outlets, (name,)):
            read[each] = reading
            if word == "healthy":
                on[each] = proved[each] = None
            elif reading.roles == ("ground",):
                ground[each] = None
            elif reading.roles:
                off[each] = None
    roles: tuple[Role, ...] = ("hot", "neutral")
    bearing = [read[each] for each in off if each in read and read[each].roles]
    for reading in bearing:
        if not reading.whole:
            roles = tuple(each for each in roles if each in reading.roles)
    wrong = [f"{each} is told to be dead and to work" for each in off if each in on]
    if bearing and not roles:
        wrong.append("the readings speak of an open hot here and of an open neutral there")
    single, whole = any(each.whole is False for each in bearing), any(each.whole for each in bearing)
    if single and whole:
        wrong.append("the readings speak of one conductor gone here and of both there")
    if off and ground:
        wrong.append("an open ground makes nothing dead: look for it by itself")
    return Told(
        tuple(off), tuple(on), tuple(ground), tuple(proved), roles, single, whole, read, tuple(wrong)
    )  # fmt: skip


def _outlets(house: House, outlets: Mapping[str, Outlet], names: Iterable[str]) -> dict[str, None]:
    found: dict[str, None] = {}
    for name in names:
        meant = named(house, outlets, name)
        if not meant:
            raise KeyError(name)
        found.update(dict.fromkeys(meant))
    return found
