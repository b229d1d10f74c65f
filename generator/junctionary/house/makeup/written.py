"""Joints and terminals that are written out, one by one."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from junctionary.house.makeup.bench import ALIASES, Atom, Bench, Wrong, resolve
from junctionary.marks import Place
from junctionary.problems import Problem, nearest
from junctionary.records import words
from junctionary.records.boxes import JointRecord, TerminalRecord


@dataclass(frozen=True, slots=True)
class WrittenJoint:
    """A joint as written."""

    atoms: tuple[Atom, ...]
    record: JointRecord


@dataclass(frozen=True, slots=True)
class WrittenLanding:
    """A terminal as written; with no wires it says only how what comes there is landed."""

    atom: Atom
    wires: tuple[Atom, ...]
    record: TerminalRecord
    place: Place


@dataclass(frozen=True, slots=True)
class Written:
    """All that a box's record writes out; to the names ``mentioned`` an expanded joint gives way."""

    joints: tuple[WrittenJoint, ...]
    landings: tuple[WrittenLanding, ...]
    capped: tuple[Atom, ...]
    loose: tuple[Atom, ...]
    uncut: tuple[str, ...]
    mentioned: frozenset[str]


@dataclass(slots=True)
class _Tally:
    """What was mentioned so far and where, with the problems found on the way."""

    bench: Bench
    at: dict[str, Place] = field(default_factory=dict)
    ends_of_jumpers: dict[str, int] = field(default_factory=dict)
    reserved: frozenset[str] = frozenset()
    problems: list[Problem] = field(default_factory=list)

    def take(self, said: str, place: Place) -> Atom | None:
        """What a name stands for, now taken; None, with a problem noted, when it stands for nothing."""
        atom = resolve(self.bench, said, frozenset(self.at) | self.reserved)
        if isinstance(atom, Wrong):
            self.problems.append(atom.at(place))
            return None
        self.mention(atom, said, place)
        return atom

    def mention(self, atom: Atom, said: str, place: Place) -> None:
        """Note that a thing is spoken for; a second time is a problem."""
        if atom.kind == "jumper":
            count = self.ends_of_jumpers[atom.name] = self.ends_of_jumpers.get(atom.name, 0) + 1
            if count <= 2:
                return
        if atom.kind == "box":
            return
        if atom.name in self.at:
            self.problems.append(
                Problem(
                    place,
                    f"{said} is told twice, first at {self.at[atom.name]}",
                    "each conductor and terminal in one place",
                    "take it out of one of the two",
                )
            )
        else:
            self.at[atom.name] = place


def read_written(bench: Bench) -> tuple[Written, list[Problem]]:
    """What is written out joint by joint and terminal by terminal, and what in it stands for nothing."""
    tally = _Tally(bench)
    tally.reserved = _named_exactly(bench)
    joints = [_joint(each, tally) for each in bench.record.joints]
    landings = [_landing(key, each, tally) for key, each in bench.record.terminals.items()]
    capped = _ends("capped", bench.record.capped, tally)
    loose = _ends("loose", bench.record.loose, tally)
    uncut = tuple(_passing(tally))
    tally.problems += _half_jumpers(tally)
    written = Written(
        joints=tuple(joints),
        landings=tuple(each for each in landings if each is not None),
        capped=tuple(capped),
        loose=tuple(loose),
        uncut=uncut,
        mentioned=frozenset(tally.at),
    )
    return written, tally.problems


def _named_exactly(bench: Bench) -> frozenset[str]:
    """Screws named as top or bottom, which ``brass`` and ``silver`` must leave free."""
    said = [each for joint in bench.record.joints for each in joint.join] + list(bench.record.terminals)
    exact = {screw for pair in ALIASES.values() for screw in pair}
    return frozenset(f"{bench.box}.{each}" for each in said if each.rpartition(".")[2] in exact)


def _joint(record: JointRecord, tally: _Tally) -> WrittenJoint:
    atoms = []
    for number, said in enumerate(record.join):
        atom = tally.take(said, record.value_place("join", number))
        if atom is not None:
            atoms.append(atom)
    if len(record.join) < 2:
        found = f"a joint of {', '.join(record.join) or 'nothing'}"
        do = "name what it is joined to, or write it under capped:"
        tally.problems.append(Problem(record.place_of("join"), found, "at least two members", do))
    if isinstance(record.by, str) and record.by not in tally.bench.connectors:
        known = [*tally.bench.connectors, *words.CONNECTORS, *words.JOINED_WITHOUT]
        if record.by not in known and "devices" not in tally.bench.lost:
            near = nearest(record.by, known)
            tally.problems.append(
                Problem(
                    record.value_place("by"),
                    f"no connector {record.by!r} is recorded",
                    f"{near!r}, the nearest known connector" if near else f"one of {', '.join(known)}",
                    f"write {near}"
                    if near
                    else f"tell {record.by} under connectors: in devices/, or write unknown",
                )
            )
    return WrittenJoint(tuple(atoms), record)


def _landing(key: str, record: TerminalRecord, tally: _Tally) -> WrittenLanding | None:
    place = tally.bench.record.key_place("terminals", key)
    if record.wire is None:
        return _annotation(key, record, place, tally)
    atom = tally.take(key, place)
    wires = []
    for number, said in enumerate(record.wire):
        wire = tally.take(said, tally.bench.record.value_place("terminals", key, "wire", number))
        if wire is not None:
            wires.append(wire)
    if atom is None or not _takes_a_wire(key, atom, record, place, tally):
        return None
    return WrittenLanding(atom, tuple(wires), record, place)


def _takes_a_wire(key: str, atom: Atom, record: TerminalRecord, place: Place, tally: _Tally) -> bool:
    """Whether a wire can be landed there: on a screw, and not on a lead or another wire."""
    if atom.kind in ("terminal", "box"):
        return True
    what = "the device's own lead" if atom.kind == "lead" else "a wire"
    do = f"write it as a joint: {{join: [{key}, {', '.join(record.wire or ())}]}}"
    tally.problems.append(Problem(place, f"{key} is {what}", "a terminal", do))
    return False


def _annotation(key: str, record: TerminalRecord, place: Place, tally: _Tally) -> WrittenLanding | None:
    """A terminal that says only how its wire is landed: it takes nothing, and replaces nothing."""
    atom = resolve(tally.bench, key)
    if isinstance(atom, Wrong):
        tally.problems.append(atom.at(place))
        return None
    return WrittenLanding(atom, (), record, place)


def _ends(key: str, references: Iterable[str], tally: _Tally) -> list[Atom]:
    """The conductor ends (or leads) of a list; a whole run stands for all its conductors."""
    record, found = tally.bench.record, []
    for number, said in enumerate(references):
        place = record.value_place(key, number)
        run = tally.bench.runs.get(said)
        if run is not None and run.conductors:
            for atom in tally.bench.conductors(run):
                tally.mention(atom, f"{run.id}.{atom.colour}", place)
                found.append(atom)
        elif run is not None:
            atom = Atom("conductor", f"{tally.bench.box}/{run.id}", run=run.id)
            tally.mention(atom, run.id, place)
            found.append(atom)
        else:
            taken = tally.take(said, place)
            if taken is not None and taken.kind not in ("conductor", "lead"):
                do = f"take it out of {key}:"
                tally.problems.append(Problem(place, f"{said} is no wire's end", "a conductor or a lead", do))
            elif taken is not None:
                found.append(taken)
    return found


def _passing(tally: _Tally) -> Iterable[str]:
    """The runs that pass through uncut; one that ends here too is a problem."""
    bench = tally.bench
    for number, each in enumerate(bench.record.passes):
        place = bench.record.value_place("passes", number, "run")
        if each.run in bench.runs:
            tally.problems.append(
                Problem(
                    place,
                    f"run {each.run} passes through {bench.box} and ends in it",
                    "a run that does one or the other",
                    f"take it out of passes:, or correct the from: or to: of {each.run}",
                )
            )
        elif each.run not in bench.every_run and "circuits" not in bench.lost:
            near = nearest(each.run, [id_ for id_ in bench.every_run if id_ not in bench.runs])
            tally.problems.append(
                Problem(
                    place,
                    f"no run {each.run!r} is recorded",
                    f"{near!r}, the nearest known run" if near else "a known run",
                    f"write {near}" if near else f"record {each.run}, or correct the id",
                )
            )
        else:
            yield each.run


def _half_jumpers(tally: _Tally) -> list[Problem]:
    """A jumper joins two things: named once, it leads nowhere."""
    record, problems = tally.bench.record, []
    for id_ in record.jumpers:
        count = tally.ends_of_jumpers.get(f"{tally.bench.box}/{id_}", 0)
        if count < 2:
            said = "nothing names it" if count == 0 else "one joint names it"
            problems.append(
                Problem(record.key_place("jumpers", id_), f"jumper {id_} joins two joints, but {said}",
                        f"{id_} in both joints", f"add {id_} to the joints it lies between")
            )  # fmt: skip
    return problems
