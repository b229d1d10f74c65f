"""What connects two points of the house, whether it can open, and where the record says so.

A load is no edge: nothing leads from a lamp's hot lead to its neutral lead.
"""

from dataclasses import dataclass
from typing import Literal

from junctionary.marks import Place

EdgeKind = Literal[
    "conductor",  # one wire of a run, end to end
    "joint",  # a wire in a joint
    "pigtail",  # from a joint, or another terminal, to a terminal by a piece of wire
    "lead",  # a device's own lead in a joint
    "jumper",  # a jumper in a joint
    "box",  # the box's screw in a joint
    "landing",  # a wire on a terminal, or on a breaker
    "tab",  # inside a device, and always closed
    "switch",  # a contact moved by hand, by a clock or by a sensor
    "protector",  # a contact of a GFCI device
    "breaker",  # a pole, from the bus to its load terminal
    "main",  # a pole of a panel's main, from what feeds the panel to its bus
    "service",  # from the utility to a panel with nothing between
    "bus",  # a feeder's conductor on the bus of the panel it feeds
    "feeder",  # a feeder of which no run is recorded
    "bar",  # a wire on a neutral or ground bar
    "bond",  # neutral and ground joined in a panel
]

SWITCHED: frozenset[EdgeKind] = frozenset({"switch", "protector", "breaker", "main"})
"""Edges that can open."""

OPEN_IN_NETS: frozenset[EdgeKind] = SWITCHED | {"bond"}
"""Edges that no net crosses."""

OPEN_IN_ZONES: frozenset[EdgeKind] = frozenset({"breaker", "main", "service", "bar", "bond"})
"""Edges that no zone crosses: contacts are closed, and what meets only at a panel's bar or bus is apart."""


@dataclass(frozen=True, slots=True)
class Edge:
    """A connection between two points.

    ``of`` is the id of what makes it: run, joint, terminal, device, breaker or
    panel. ``opened_by`` is the breaker or device that can open it, or None.
    ``state`` is the one of a switch's two positions in which the contact is
    closed. Of a breaker, a main or the service, ``a`` is the supply side.
    """

    a: str
    b: str
    kind: EdgeKind
    of: str
    place: Place
    opened_by: str | None = None
    state: int | None = None

    def other(self, point: str) -> str:
        """The point at the other end."""
        return self.b if point == self.a else self.a
