"""The places a hand can go to: what a connection of the network is in the house, and how likely it fails."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from junctionary.house.model import Box, End, House, Landing
from junctionary.house.network import Edge, Network
from junctionary.house.terminals import RECEPTACLES
from junctionary.house.weights import CHANGED, DAMP_ROOMS, RECENT_DAYS, WEIGHTS
from junctionary.records.values import UNKNOWN
from junctionary.units import Quantity

BARE = ("none", "tape")


@dataclass(frozen=True, slots=True)
class Site:
    """One place of a possible fault, by the id of what is there: ``K1/j1``, ``K1.r1.brass``, ``main/6``.

    ``weight`` is an ordering by practice and ``kind`` one of ``WEIGHTS``;
    ``why`` are phrases. It is in a box, in a panel, or (a run) between two
    ends. ``wall`` and ``up`` are None where they are not recorded.
    """

    id: str
    kind: str
    weight: int
    why: tuple[str, ...]
    box: str | None = None
    panel: str | None = None
    run: str | None = None
    room: str | None = None
    wall: str | None = None
    up: Quantity | str | None = None


@dataclass(frozen=True, slots=True)
class SiteFacts:
    """What is looked up for every site of a house: landings, joints and recent changes."""

    house: House
    network: Network
    landings: dict[str, Landing]
    connectors: dict[str, str | None]
    changed: dict[str, str]


def facts_of(house: House, network: Network) -> SiteFacts:
    """What sites are worked out from; once for a house."""
    landings = {each.terminal: each for box in house.boxes.values() for each in box.landings}
    connectors = {
        joint.id: joint.connector.is_ if joint.connector is not None else joint.by and str(joint.by)
        for joint in house.joints()
    }
    return SiteFacts(house, network, landings, connectors, _changed(house))


def sites_of(facts: SiteFacts, edge: Edge) -> tuple[Site, ...]:
    """Where this connection can have failed: one place, or both ends of a pigtail."""
    house = facts.house
    if edge.kind == "conductor":
        run = house.runs[edge.of]
        ends = " and ".join(_end(house, end) for end in run.ends)
        return (_site(facts, run.id, "hidden cable", (f"between {ends}",), run=run.id),)
    if edge.kind in ("breaker", "main"):
        return (_site(facts, edge.of, "breaker", ("the breaker",), panel=edge.of.partition("/")[0]),)
    if edge.kind in ("bar", "bus", "bond"):
        panel = edge.b.partition("/")[0]
        return (
            _site(facts, edge.a, "landing on a bar or bus", (f"where it lands on {edge.b}",), panel=panel),
        )
    if edge.kind in ("service", "feeder"):
        panel = edge.b.partition("/")[0]
        why = (_utility(edge.a),) if edge.kind == "service" else (f"feeds {panel}",)
        return (_site(facts, edge.a, "utility's side" if edge.kind == "service" else "hidden cable", why),)
    if edge.kind == "tab":
        box = house.devices[edge.of].box
        side = edge.a.rpartition(".")[2].partition("-")[0]
        why = (f"the {side} tab between its halves",)
        # Of its two tabs each is a place: either may be gone alone.
        return (_site(facts, f"{edge.of}.{side}", "device's own tab", why, box),)
    if edge.kind in ("switch", "protector"):
        why = ("its contact" if edge.kind == "switch" else "its contacts, which open together",)
        return (_site(facts, edge.of, "device's own contact", why, house.devices[edge.of].box),)
    if edge.kind == "landing" and edge.b.partition("/")[0] in house.panels:
        panel, _, space = edge.b.partition("/")
        breaker = next((each.id for each in house.panels[panel].breakers if space in each.spaces), edge.b)
        return (
            _site(facts, breaker, "breaker", (f"the breaker, or where {edge.a} lands on it",), panel=panel),
        )
    held = [end for end in (edge.a, edge.b) if end in facts.connectors or end in facts.landings]
    if not held:
        return (_site(facts, edge.of, "splice", (f"between {edge.a} and {edge.b}",)),)
    return tuple(_joint(facts, end) if end in facts.connectors else _terminal(facts, end) for end in held)


def _utility(point: str) -> str:
    """The utility's conductor of ``service/neutral`` or ``service/A``, in words."""
    end = point.partition("/")[2]
    return {
        "neutral": "the utility's neutral conductor",
        "bus": "a hot conductor of the utility",
    }.get(end, f"the utility's hot conductor of leg {end}")


def _end(house: House, end: End) -> str:
    if end.id is not None and end.kind == "panel" and end.id in house.panels:
        return house.panels[end.id].name
    return end.id or f"an end {end.kind}"


def _joint(facts: SiteFacts, joint: str) -> Site:
    by = facts.connectors[joint]
    if by is None or by == str(UNKNOWN):
        said = "not recorded" if by is None else "unknown"
        kind, why = "joint of unknown connector", f"its connector is {said}"
    elif by in BARE:
        kind, why = "joint without a connector", "joined without a connector"
    else:
        kind, why = "splice", f"a {by} splice"
    return _site(facts, joint, kind, (why,), joint.partition("/")[0])


def _terminal(facts: SiteFacts, terminal: str) -> Site:
    landing = facts.landings[terminal]
    if landing.how == "push-in":
        kind, why = "push-in termination", "a push-in termination"
    elif landing.how is None:
        kind, why = "termination not recorded", "how it is landed is not recorded"
    elif _feeds_through(facts, landing):
        kind, why = "feed-through screw", f"the circuit goes on through this device ({landing.how})"
    else:
        kind, why = "screw", f"a termination ({landing.how})"
    return _site(facts, terminal, kind, (why,), landing.box)


def _feeds_through(facts: SiteFacts, landing: Landing) -> bool:
    """Whether two cables land on one side of a receptacle, so that the device itself joins them."""
    device = facts.house.devices.get(landing.device)
    if device is None or device.kind.is_ not in RECEPTACLES:
        return False
    zone = facts.network.zone_at[landing.terminal]
    wires = (
        wire
        for each in facts.network.index.terminals[device.id]
        if facts.network.zone_at[each] == zone and each in facts.landings
        for wire in facts.landings[each].wires
        if wire.kind == "conductor"
    )
    return len(list(wires)) > 1


def _site(
    facts: SiteFacts,
    id_: str,
    kind: str,
    why: Iterable[str],
    box: str | None = None,
    panel: str | None = None,
    run: str | None = None,
) -> Site:
    """A site with its weight, raised where it is damp and where it was changed of late."""
    reasons = list(why)
    record = facts.house.boxes.get(box or "")
    weight = WEIGHTS[kind]
    if record is not None and _is_damp(facts.house, record) and WEIGHTS["place outdoors or damp"] > weight:
        weight = WEIGHTS["place outdoors or damp"]
        reasons.append("outdoors or damp")
    device = id_.rpartition(".")[0]
    changed = next((facts.changed[each] for each in (id_, device, box, run) if each in facts.changed), None)
    if changed is not None:
        weight *= CHANGED
        reasons.append(f"changed {changed}")
    at = record.record.at if record is not None else None
    if panel is not None:
        at = facts.house.panels[panel].record.at
    room = record.room if record is not None else at.room if at is not None else None
    return Site(
        id=id_, kind=kind, weight=weight, why=tuple(reasons), box=box, panel=panel, run=run, room=room,
        wall=at.wall if at is not None else None,
        up=at.up if at is not None else None,
    )  # fmt: skip


def _is_damp(house: House, box: Box) -> bool:
    if box.record.exposed is not None:
        return box.record.exposed in ("damp", "wet")
    return box.room in house.rooms and house.rooms[box.room].record.kind in DAMP_ROOMS


def _changed(house: House) -> dict[str, str]:
    """By id, the date of its newest change, where that is recent by the newest date of the record."""
    newest = max((entry.date for entry in house.log), default=None)
    if newest is None:
        return {}
    since = str(date.fromisoformat(newest) - timedelta(days=RECENT_DAYS))
    changes = [entry for entry in house.log if entry.change is not None and entry.date >= since]
    changes.sort(key=lambda each: each.date)
    return {about: entry.date for entry in changes for about in entry.about or ()}
