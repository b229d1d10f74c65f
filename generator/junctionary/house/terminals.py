"""The terminals of each kind of device, by the device's own marking."""

from fractions import Fraction
from typing import Literal, NamedTuple

from junctionary.records.devices import DeviceKind

TerminalRole = Literal["hot", "neutral", "ground", "switched", "traveler"]


class Terminal(NamedTuple):
    """One terminal: its marking and what it is meant to carry."""

    name: str
    role: TerminalRole


RECEPTACLES = ("receptacle", "gfci-receptacle")
GFCI = ("gfci-receptacle", "gfci-device")
WIRED = ("luminaire", "fan", "smoke-alarm", "appliance", "doorbell-transformer")
HALVES = ("top", "bottom")
GROUND_NAMES = ("green", "g", "bare")
TWO_POLE_THREE_WIRE = ("6-15R", "6-20R", "6-30R", "6-50R")
THREE_WIRE = ("10-30R", "10-50R")
TWO_WIRE = ("1-15R",)
FOUR_WIRE = ("14-20R", "14-30R", "14-50R", "14-60R")
LEAST_TWO_LEG_V = 200
"""From here up a voltage is that between the two legs, 208 or 240 V: a plain appliance has no neutral."""


def _terminals(*pairs: tuple[str, TerminalRole]) -> tuple[Terminal, ...]:
    return tuple(Terminal(name, role) for name, role in pairs)


GREEN: tuple[str, TerminalRole] = ("green", "ground")


def terminals_of(kind: DeviceKind) -> tuple[Terminal, ...]:
    """The terminals a device of this kind has, by its marking (NEMA WD 6 faces; switches by their ways)."""
    face = kind.face or ""
    if kind.is_ == "receptacle" and face in TWO_POLE_THREE_WIRE:
        return _terminals(("x", "hot"), ("y", "hot"), ("g", "ground"))
    if (kind.is_ == "receptacle" and face in FOUR_WIRE) or kind.is_ == "inlet":
        return _terminals(("x", "hot"), ("y", "hot"), ("w", "neutral"), ("g", "ground"))
    if kind.is_ == "receptacle" and face in THREE_WIRE:
        return _terminals(("x", "hot"), ("y", "hot"), ("w", "neutral"))
    if kind.is_ == "receptacle":
        ground = () if face in TWO_WIRE else (GREEN,)
        if kind.outlets == 1:
            return _terminals(("brass", "hot"), ("silver", "neutral"), *ground)
        return _terminals(
            ("brass-top", "hot"),
            ("brass-bottom", "hot"),
            ("silver-top", "neutral"),
            ("silver-bottom", "neutral"),
            *ground,
        )
    if kind.is_ in GFCI:
        return _terminals(
            ("line-brass", "hot"),
            ("line-silver", "neutral"),
            ("load-brass", "hot"),
            ("load-silver", "neutral"),
            GREEN,
        )
    if kind.is_ == "disconnect" or (kind.is_ == "switch" and kind.poles == 2):
        return _terminals(
            ("line-1", "hot"), ("line-2", "hot"), ("load-1", "switched"), ("load-2", "switched"), GREEN
        )
    if kind.is_ == "switch" or (kind.is_ == "dimmer" and kind.ways == 3):
        return {
            3: _terminals(
                ("common", "switched"), ("traveler-1", "traveler"), ("traveler-2", "traveler"), GREEN
            ),
            4: _terminals(
                ("in-1", "traveler"),
                ("in-2", "traveler"),
                ("out-1", "traveler"),
                ("out-2", "traveler"),
                GREEN,
            ),
        }.get(kind.ways or 1, _terminals(("brass-1", "switched"), ("brass-2", "switched"), GREEN))
    if kind.is_ in ("dimmer", "timer", "sensor"):
        return _terminals(
            ("line", "hot"), ("load", "switched"), ("neutral", "neutral"), ("traveler", "traveler"), GREEN
        )
    return _leads(kind)


def _leads(kind: DeviceKind) -> tuple[Terminal, ...]:
    across = kind.volts is not None and is_across(kind.volts.to("V"))
    usual = ("black", "red", "green") if across else ("black", "white", "green")
    colours = [lead.colour for lead in kind.leads] if kind.leads else usual
    roles: dict[str, TerminalRole] = {"white": "neutral", "green": "ground", "bare": "ground"}
    return tuple(Terminal(colour, roles.get(colour, "hot")) for colour in colours)


def is_across(volts: Fraction) -> bool:
    """Whether a nominal voltage is one between the two legs."""
    return volts >= LEAST_TWO_LEG_V


def has_leads(kind: DeviceKind) -> bool:
    """Whether it is joined by its own leads rather than landed on screws."""
    return kind.is_ in WIRED or bool(kind.leads)
