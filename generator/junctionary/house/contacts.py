"""What a device connects inside itself: tabs, and contacts that open.

Loads are left out: a lamp's hot lead and its neutral lead are not one point.
"""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Literal

from junctionary.house.terminals import terminals_of
from junctionary.records.devices import DeviceKind

OFF, ON = 0, 1
"""The two positions of a switch; of a 3-way or 4-way they are only told apart, neither is on."""

SPLIT_WORDS = {"brass": ("brass",), "silver": ("silver",), "both": ("brass", "silver")}


@dataclass(frozen=True, slots=True)
class Contact:
    """Two terminals that the device connects, always (``state`` None) or in one of its positions."""

    a: str
    b: str
    kind: Literal["tab", "switch", "protector"]
    state: int | None = None


def contacts_of(kind: DeviceKind, split: str | None, wired: Collection[str]) -> tuple[Contact, ...]:
    """What a device of this kind connects between its terminals.

    ``split`` says whose tab is removed (brass, silver, both); a word that is
    none of these leaves both tabs in doubt, and they count as there, so that
    nothing is taken for apart. ``wired`` are the terminals that hold a wire:
    a dimmer's traveler makes it a 3-way only where one is landed on it.
    """
    names = {each.name for each in terminals_of(kind)}
    if "brass-top" in names:
        gone = removed_tabs(split) or ()
        return tuple(
            Contact(f"{side}-top", f"{side}-bottom", "tab")
            for side in ("brass", "silver")
            if side not in gone
        )
    if "load-brass" in names:
        return _both("protector", ("line-brass", "load-brass"), ("line-silver", "load-silver"))
    if "load-1" in names:
        return _both("switch", ("line-1", "load-1"), ("line-2", "load-2"))
    if "common" in names:
        return (
            Contact("common", "traveler-1", "switch", OFF),
            Contact("common", "traveler-2", "switch", ON),
        )
    if "in-1" in names:
        return (
            Contact("in-1", "out-1", "switch", OFF),
            Contact("in-2", "out-2", "switch", OFF),
            Contact("in-1", "out-2", "switch", ON),
            Contact("in-2", "out-1", "switch", ON),
        )
    if "brass-1" in names:
        return (Contact("brass-1", "brass-2", "switch", ON),)
    if "load" in names:
        traveling = (Contact("line", "traveler", "switch", OFF),) if "traveler" in wired else ()
        return (Contact("line", "load", "switch", ON), *traveling)
    return ()


def removed_tabs(split: str | None) -> tuple[str, ...] | None:
    """The sides (brass, silver) whose tab is removed; None where the word does not tell."""
    return () if split is None else SPLIT_WORDS.get(split)


def _both(kind: Literal["switch", "protector"], *pairs: tuple[str, str]) -> tuple[Contact, ...]:
    return tuple(Contact(a, b, kind, ON) for a, b in pairs)
