"""Joints and landings made from what is written out and from the knots of the words."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from junctionary.house.makeup.bench import Atom, Bench
from junctionary.house.makeup.connecting import connector_for
from junctionary.house.makeup.knots import Key, Knot
from junctionary.house.makeup.written import Written, WrittenJoint, WrittenLanding
from junctionary.house.model import Joint, Landing, Member, Role
from junctionary.house.terminals import terminals_of
from junctionary.marks import Place
from junctionary.problems import Problem
from junctionary.records.boxes import TerminalRecord
from junctionary.records.cables import Conductor
from junctionary.records.values import Said


@dataclass(frozen=True, slots=True)
class Made:
    """What a box holds once it is made up."""

    joints: tuple[Joint, ...]
    landings: tuple[Landing, ...]


@dataclass(slots=True)
class _Making:
    """One box being made up: what is said of single terminals, and what is made so far."""

    bench: Bench
    said: Mapping[str, WrittenLanding]
    joints: list[Joint] = field(default_factory=list)
    landings: list[Landing] = field(default_factory=list)

    def next_id(self) -> str:
        return f"{self.bench.box}/j{len(self.joints) + 1}"


def make(
    bench: Bench, written: Written, knots: Iterable[Knot], straight: frozenset[Key]
) -> tuple[Made, list[Problem]]:
    """The joints and landings of a box, those written out first; and words on terminals that hold nothing."""
    making = _Making(bench, {each.atom.name: each for each in written.landings})
    for joint in written.joints:
        _written_joint(making, joint)
    for each in written.landings:
        if each.wires:
            _land(making, each.atom, tuple(_wire(atom) for atom in each.wires), None, each.place)
        for atom in each.wires:
            if atom.kind == "terminal":
                _land(making, atom, (_wire(each.atom),), None, each.place)
    for knot in knots:
        _knot(making, knot, knot.key in straight)
    return Made(tuple(making.joints), tuple(making.landings)), _about_nothing(making, written)


def _written_joint(making: _Making, joint: WrittenJoint) -> None:
    bench, record = making.bench, joint.record
    wires = [atom for atom in joint.atoms if atom.kind != "terminal"]
    terminals = [atom for atom in joint.atoms if atom.kind == "terminal"]
    roles = {_role(bench, atom) for atom in joint.atoms if atom.kind != "box"}
    role = roles.pop() if len(roles) == 1 else None
    told = (record.by,) if record.by is not None else None
    _join(making, wires, terminals, role, None, record.place, record.pigtail, told)


def _knot(making: _Making, knot: Knot, lands_together: bool) -> None:
    """One wire to one terminal lands straight; all else is a joint, with a pigtail to each terminal."""
    wires, terminals = knot.wires, knot.terminals
    if not wires and len(terminals) == 2 and knot.word in ("switched", "three_way", "four_way"):
        # A switch beside the outlet it serves: one wire, from screw to screw.
        for here, there in (terminals, terminals[::-1]):
            _land(making, here, (_wire(there),), knot.word, knot.place)
        return
    if not wires or (len(wires) == 1 and not terminals):
        return
    if len(terminals) == 1 and (len(wires) == 1 or lands_together):
        _land(making, terminals[0], tuple(_member(each) for each in wires), knot.word, knot.place)
        return
    screw = [each for each in wires if each.kind == "box"]
    if screw and not terminals and (len(wires) == 2 or knot.key[1] == "armor"):
        on_box = tuple(_member(each) for each in wires if each.kind != "box")
        _land(making, screw[0], on_box, knot.word, knot.place)
        return
    _join(making, list(wires), list(terminals), knot.role, knot.word, knot.place, None, None)


def _join(
    making: _Making,
    wires: list[Atom],
    terminals: list[Atom],
    role: Role | None,
    word: str | None,
    place: Place,
    pigtail: Conductor | None,
    told: tuple[str | Said] | None,
) -> None:
    bench = making.bench
    largest = _largest(wires)
    size = pigtail.size if pigtail else largest.size if largest else None
    metal = pigtail.metal if pigtail else largest.metal if largest else None
    # The box's screw and the terminals are reached by pigtails alike.
    members = tuple(
        Member("box", each.name, size, metal) if each.kind == "box" else _member(each) for each in wires
    ) + tuple(Member("pigtail", each.name, size, metal) for each in terminals)
    if told is None:
        connector_id = connector_for(bench, members)
        by: str | Said | None = connector_id
    else:
        by = told[0]
        connector_id = by if isinstance(by, str) else None
    id_ = making.next_id()
    making.joints.append(
        Joint(
            id=id_,
            box=bench.box,
            members=members,
            by=by,
            connector=bench.connectors.get(connector_id) if connector_id else None,
            circuits=bench.circuits(each.run for each in wires),
            role=role,
            expanded=word,
            place=place,
        )
    )
    for each in terminals:
        _land(making, each, (Member("pigtail", id_, size, metal),), word, place)


def _land(making: _Making, atom: Atom, wires: tuple[Member, ...], word: str | None, place: Place) -> None:
    bench = making.bench
    said = making.said.get(atom.name)
    record: TerminalRecord | None = said.record if said else None
    if said is not None:
        place = said.place
    elif word is not None and atom.device is not None:
        place = bench.record.key_place("devices", atom.device)
    making.landings.append(
        Landing(
            terminal=atom.name,
            device=f"{bench.box}.{atom.device}" if atom.device else atom.name,
            box=bench.box,
            wires=wires,
            how=(record.how if record else None) or _usual_way(bench, atom),
            turn=record.turn if record else None,
            bare=record.bare if record else None,
            torque=record.torque if record and record.torque is not None else bench.usual.torque,
            expanded=word,
            place=place,
        )
    )


def _usual_way(bench: Bench, atom: Atom) -> str | None:
    """The practice's way to land, or the device's own where it takes no other; None where neither tells."""
    kind = bench.devices.get(atom.device or "")
    if kind is None or atom.terminal is None:
        return None
    ways = kind.ways_to_land(atom.terminal)
    usual = bench.usual.termination
    if ways is None or usual in ways:
        return usual
    return ways[0] if len(ways) == 1 else None


def _wire(atom: Atom) -> Member:
    """A wire on a terminal; where another terminal is named, the piece of wire that leads there."""
    return Member("pigtail", atom.name, None, None) if atom.kind == "terminal" else _member(atom)


def _member(atom: Atom) -> Member:
    assert atom.kind != "terminal"
    return Member(atom.kind, atom.name, atom.size, atom.metal, atom.run, atom.colour)


def _largest(wires: Iterable[Atom]) -> Atom | None:
    """The largest wire, when the size of every one is known."""
    known = [each for each in wires if each.kind != "box"]
    sized = [(each.size, each) for each in known if each.size is not None]
    return (
        max(sized, key=lambda pair: pair[0].circular_mils)[1] if sized and len(sized) == len(known) else None
    )


def _role(bench: Bench, atom: Atom) -> Role | None:
    if atom.kind in ("conductor", "jumper"):
        return bench.role(atom)
    kind = bench.devices.get(atom.device or "")
    roles = {each.name: each.role for each in terminals_of(kind)} if kind else {}
    role = roles.get(atom.terminal or "")
    return "neutral" if role == "neutral" else "ground" if role == "ground" else "hot" if role else None


def _about_nothing(making: _Making, written: Written) -> list[Problem]:
    landed = {each.terminal for each in making.landings}
    return [
        Problem(
            each.place,
            f"nothing lands on {each.atom.device}.{each.atom.terminal}, of which this speaks",
            "a terminal on which a wire is landed",
            "add wire: and the conductor, or correct the terminal",
        )
        for each in written.landings
        if not each.wires and each.record.wire is None and each.atom.name not in landed
    ]
