"""The edges of boxes, runs and devices."""

from collections.abc import Iterable, Mapping

from junctionary.house.contacts import Contact, contacts_of
from junctionary.house.model import Box, House, Member
from junctionary.house.network.edges import Edge, EdgeKind
from junctionary.house.network.unknowns import colours_of, end_name
from junctionary.house.terminals import Terminal, terminals_of

KIND_OF_MEMBER: Mapping[str, EdgeKind] = {
    "conductor": "joint",
    "pigtail": "pigtail",
    "lead": "lead",
    "jumper": "jumper",
    "box": "box",
}


def box_edges(house: House) -> Iterable[Edge]:
    """Who is in which joint, and what lands on which terminal; one edge for each pigtail."""
    for box in house.boxes.values():
        told: set[frozenset[str]] = set()
        for joint in box.joints:
            for member in joint.members:
                told.add(frozenset((joint.id, member.name)))
                yield Edge(joint.id, member.name, KIND_OF_MEMBER[member.kind], joint.id, joint.place)
        for landing in box.landings:
            for wire in landing.wires:
                # A pigtail is told from both its ends: in its joint and on its terminal.
                pair = frozenset((landing.terminal, wire.name))
                if pair not in told:
                    told.add(pair)
                    kind: EdgeKind = "pigtail" if wire.kind == "pigtail" else "landing"
                    yield Edge(landing.terminal, wire.name, kind, landing.terminal, landing.place)


def run_edges(house: House, spoken: Mapping[str, tuple[str, ...]]) -> Iterable[Edge]:
    """One edge for each conductor of each run; of an unknown cable, for each colour that a box speaks of."""
    for run in house.runs.values():
        for colour in (*colours_of(run, spoken), *(() if run.conductors else (None,))):
            yield Edge(end_name(run, 0, colour), end_name(run, 1, colour), "conductor", run.id, run.place)


def spoken_colours(house: House) -> dict[str, tuple[str, ...]]:
    """By run, the colours that boxes name where the cable itself is unknown or not recorded."""
    bare = {run.id for run in house.runs.values() if not run.conductors}
    found: dict[str, dict[str, None]] = {}
    if bare:
        for box in house.boxes.values():
            if not bare.isdisjoint(box.runs):
                for name in _ends_spoken_of(box):
                    run, _, colour = name.partition("/")[2].partition(".")
                    if run in bare and colour:
                        found.setdefault(run, {})[colour] = None
    return {run: tuple(colours) for run, colours in found.items()}


def _ends_spoken_of(box: Box) -> Iterable[str]:
    members: Iterable[Member] = (
        *(member for joint in box.joints for member in joint.members),
        *(wire for landing in box.landings for wire in landing.wires),
    )
    yield from (member.name for member in members if member.kind == "conductor")
    yield from (*box.capped, *box.loose)


def device_edges(house: House, wired: Mapping[str, object]) -> Iterable[Edge]:
    """What each device connects inside; ``wired`` are the points that an edge already meets."""
    known: dict[tuple[str, str | None, bool], tuple[Contact, ...]] = {}
    for device in house.devices.values():
        traveling = f"{device.id}.traveler" in wired
        key = (device.kind_id, device.split, traveling)
        if key not in known:
            known[key] = contacts_of(device.kind, device.split, ("traveler",) if traveling else ())
        for contact in known[key]:
            opened_by = None if contact.kind == "tab" else device.id
            a, b = f"{device.id}.{contact.a}", f"{device.id}.{contact.b}"
            yield Edge(a, b, contact.kind, device.id, device.place, opened_by, contact.state)


def terminals_of_all(house: House) -> dict[str, Terminal]:
    """Every terminal and lead of the house by its full name."""
    known: dict[str, tuple[Terminal, ...]] = {}
    found: dict[str, Terminal] = {}
    for device in house.devices.values():
        if device.kind_id not in known:
            known[device.kind_id] = terminals_of(device.kind)
        for each in known[device.kind_id]:
            found[f"{device.id}.{each.name}"] = each
    return found
