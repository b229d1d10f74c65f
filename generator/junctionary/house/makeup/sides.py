"""Which terminals of a device take the supply, and which what goes on from it."""

from collections.abc import Collection
from dataclasses import dataclass

from junctionary.house.terminals import GFCI, GROUND_NAMES, has_leads, terminals_of
from junctionary.records.devices import DeviceKind

SWITCHING = ("switch", "dimmer", "timer", "sensor", "disconnect")
TWO_POLE = (("line-1", "line-2"), ("load-1", "load-2"))


@dataclass(frozen=True, slots=True)
class Sides:
    """Terminals of one device: ``near`` the supply, and ``far`` where the circuit goes on or out switched."""

    hot: tuple[str, ...] = ()
    neutral: tuple[str, ...] = ()
    ground: tuple[str, ...] = ()
    far_hot: tuple[str, ...] = ()
    far_neutral: tuple[str, ...] = ()


def sides_of(kind: DeviceKind, taken: Collection[str] = ()) -> Sides:
    """The terminals a word of make-up lands on; of two alike, the upper unless it is ``taken``.

    A three-way or four-way switch has no supply side: where it lands is told.
    A dimmer, timer or sensor takes a neutral only where its kind says so, by
    a white lead or by how its neutral lands.
    """
    names = [each.name for each in terminals_of(kind)]
    ground = tuple(each for each in names if each in GROUND_NAMES)
    if kind.is_ in GFCI:
        return Sides(("line-brass",), ("line-silver",), ground, ("load-brass",), ("load-silver",))
    if "line-1" in names:
        return Sides(TWO_POLE[0], (), ground, TWO_POLE[1])
    if kind.is_ == "switch":
        ways = kind.ways or 1
        return Sides(("brass-1",), (), ground, ("brass-2",)) if ways == 1 else Sides(ground=ground)
    if "common" in names:
        return Sides(ground=ground)
    if kind.is_ in SWITCHING:
        return Sides(("line",), ("neutral",) if _takes_neutral(kind) else (), ground, ("load",))
    if has_leads(kind):
        roles = {each.name: each.role for each in terminals_of(kind)}
        return Sides(
            tuple(each for each in names if roles[each] == "hot"),
            tuple(each for each in names if roles[each] == "neutral"),
            ground,
        )
    if "brass-top" in names:
        brass = [each for each in ("brass-top", "brass-bottom") if each not in taken]
        silver = [each for each in ("silver-top", "silver-bottom") if each not in taken]
        return Sides(tuple(brass[:1]), tuple(silver[:1]), ground, tuple(brass[1:]), tuple(silver[1:]))
    hot = tuple(each for each in ("x", "y", "brass") if each in names)
    neutral = tuple(each for each in ("w", "silver") if each in names)
    return Sides(hot, neutral, ground, hot, neutral)


def is_switch(kind: DeviceKind) -> bool:
    """Whether it opens a hot conductor, so that where its other side goes must be told."""
    return kind.is_ in SWITCHING


def _takes_neutral(kind: DeviceKind) -> bool:
    return any(lead.colour == "white" for lead in kind.leads or ()) or "neutral" in (kind.lands or {})
