"""Where switches send the circuit: switched legs, travelers and switch loops."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from junctionary.house.makeup.bench import Atom, Bench, Wrong, resolve
from junctionary.house.makeup.knots import Doubt, Key, Tie
from junctionary.house.makeup.plan import Plan, switches_of
from junctionary.house.makeup.sides import is_switch, sides_of
from junctionary.house.model import Run
from junctionary.marks import Place
from junctionary.problems import Problem
from junctionary.records.devices import DeviceKind


@dataclass(slots=True)
class Legs:
    """What the switching words of one entry say.

    ``supplied`` are conductors and terminals that hang on the supply because
    a word says so: a switch's common, the wire of a loop that brings it.
    """

    ties: list[Tie] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    supplied: list[Atom] = field(default_factory=list)

    @property
    def spoken(self) -> frozenset[str]:
        """The names of everything a switching word places."""
        return frozenset(tie.atom.name for tie in self.ties) | {atom.name for atom in self.supplied}

    def doubt(self, names: Iterable[str], place: Place, found: str, expected: str, do: str) -> None:
        """A word that cannot be followed."""
        self.doubts.append(Doubt(frozenset(names), Problem(place, found, expected, do)))


def switching(bench: Bench, plan: Plan) -> Legs:
    """The ties of ``switched``, ``three_way``, ``four_way`` and ``loop`` in one entry."""
    legs = Legs()
    named = _named(bench, plan)
    for device, targets in plan.entry.switched.items():
        if device in bench.devices:
            _switched(bench, plan, legs, device, targets, named)
    for device, three in plan.entry.three_way.items():
        if device in bench.devices:
            place = plan.entry.value_place("three_way", device)
            if three.common != "feed":
                _land(bench, plan, legs, device, ("common",), (three.common,), named, "three_way", place)
            elif _has(bench, device, ("common",), legs, place):
                legs.supplied.append(bench.terminal(device, "common"))
            travelers = ("traveler-1", "traveler-2")
            _land(bench, plan, legs, device, travelers, three.travelers, named, "three_way", place)
    for device, four in plan.entry.four_way.items():
        if device in bench.devices:
            place = plan.entry.value_place("four_way", device)
            _land(bench, plan, legs, device, ("in-1", "in-2"), four.in_, named, "four_way", place)
            _land(bench, plan, legs, device, ("out-1", "out-2"), four.out, named, "four_way", place)
    if plan.loop is not None:
        _loop(bench, plan, legs, plan.loop)
    return legs


def _named(bench: Bench, plan: Plan) -> frozenset[str]:
    """Conductors and terminals named one by one, which a whole run or device then leaves out."""
    said: list[str] = [each for targets in plan.entry.switched.values() for each in targets]
    for three in plan.entry.three_way.values():
        said += [three.common, *three.travelers]
    for four in plan.entry.four_way.values():
        said += [*four.in_, *four.out]
    atoms = [resolve(bench, each) for each in said if "." in each]
    return frozenset(atom.name for atom in atoms if isinstance(atom, Atom))


def _switched(
    bench: Bench, plan: Plan, legs: Legs, device: str, targets: tuple[str, ...], named: frozenset[str]
) -> None:
    kind = bench.devices[device]
    far = sides_of(kind).far_hot if is_switch(kind) else ()
    place = plan.entry.key_place("switched", device)
    if not far:
        what = f"a {kind.ways}-way switch" if kind.is_ == "switch" else f"a {kind.is_}"
        legs.doubt(
            [],
            place,
            f"switched: {{{device}: ...}}, but {device} is {what}",
            "a switch with one side in and one out",
            _instead(kind, device),
        )
        return
    _land(
        bench, plan, legs, device, far, targets, named, "switched", plan.entry.value_place("switched", device)
    )


def _instead(kind: DeviceKind, device: str) -> str:
    """How a switch of several ways is told."""
    if kind.ways == 4:
        return f"write four_way: {{{device}: {{in: ..., out: ...}}}}, each the cable or its two conductors"
    if kind.ways == 3:
        return (
            f"write three_way: {{{device}: {{common: ..., travelers: ...}}}}: feed or a cable, and the cable "
            "of its travelers"
        )
    return "name the switch that does it"


def _has(bench: Bench, device: str, terminals: tuple[str, ...], legs: Legs, place: Place) -> bool:
    for terminal in terminals:
        atom = resolve(bench, f"{device}.{terminal}")
        if isinstance(atom, Wrong):
            legs.doubts.append(Doubt(frozenset(), atom.at(place)))
            return False
    return True


def _land(
    bench: Bench,
    plan: Plan,
    legs: Legs,
    device: str,
    terminals: tuple[str, ...],
    targets: tuple[str, ...],
    named: frozenset[str],
    word: str,
    place: Place,
) -> None:
    """Tie what each target brings to the terminals, in order; several targets of one terminal are joined."""
    if not _has(bench, device, terminals, legs, place):
        return
    brought: list[tuple[Atom, ...]] = []
    whole = [each for each in targets if "." not in each]
    for target in whole:
        atoms = _brings(bench, target, len(terminals), named)
        if atoms is None:
            continue
        if len(atoms) != len(terminals):
            ends = (
                ", ".join(f"{target}.{atom.colour or atom.terminal}" for atom in atoms) or "no hot conductor"
            )
            need = "two conductors" if len(terminals) == 2 else "one conductor"
            legs.doubt(
                [atom.name for atom in atoms],
                place,
                f"{target} at {device} of {bench.box} brings {ends}",
                need,
                f"name which: {target}.black or {target}.red, or mark a white that is hot under marked:",
            )
            continue
        brought.append(atoms)
    single = [resolve(bench, each) for each in targets if "." in each]
    found = tuple(each for each in single if isinstance(each, Atom))
    if len(terminals) == 1:
        brought += [(atom,) for atom in found]
    elif found and len(found) != len(terminals):
        said = ", ".join(each for each in targets if "." in each)
        legs.doubt(
            [], place, f"{said} at {device} of {bench.box}", "two conductors", "name both, or the whole run"
        )
        return
    elif found:
        brought.append(found)
    if not brought:
        return
    for position, terminal in enumerate(terminals):
        key: Key = (str(plan.number), word, device, terminal)
        legs.ties += [Tie(key, atoms[position], word) for atoms in brought]
        legs.ties.append(Tie(key, bench.terminal(device, terminal), word))


def _brings(bench: Bench, target: str, wanted: int, named: frozenset[str]) -> tuple[Atom, ...] | None:
    """The hot conductors of a run, or the hot side of a device here; None where nothing is known of it."""
    if target in bench.runs:
        conductors = [atom for atom in bench.conductors(bench.runs[target]) if atom.name not in named]
        hots = tuple(atom for atom in conductors if bench.role(atom) == "hot")
        if wanted == 2 and len(hots) == 1:
            # Two legs in a two-wire cable: the white is hot, marked or not.
            return (*hots, *(atom for atom in conductors if bench.role(atom) == "neutral"))
        return hots
    if target in bench.devices:
        kind = bench.devices[target]
        return tuple(bench.terminal(target, each) for each in sides_of(kind).hot)
    return None


def _loop(bench: Bench, plan: Plan, legs: Legs, loop: Run) -> None:
    """Two wires: the re-marked white brings supply down, the black returns; three: black down, red back."""
    wires = {
        each.colour or "": each for each in bench.conductors(loop) if bench.role_by_colour(each) != "ground"
    }
    down, back = {
        frozenset({"black", "white"}): ("white", "black"),
        frozenset({"black", "red", "white"}): ("black", "red"),
    }.get(frozenset(wires), ("", ""))
    place = plan.entry.value_place("loop")
    if not down:
        listed = ", ".join(wires) or "none"
        legs.doubt(
            [atom.name for atom in wires.values()],
            place,
            f"loop: {loop.id}, whose insulated conductors are {listed}",
            "black and white, or black, red and white",
            "write its joints and terminals out",
        )
        return
    legs.supplied.append(wires[down])
    key: Key = (str(plan.number), "loop", loop.id)
    legs.ties.append(Tie(key, wires[back], "loop"))
    if plan.at_switch:
        _loop_at_switch(bench, plan, legs, key, place)
    else:
        _loop_at_lamp(bench, plan, legs, key, place)


def _loop_at_switch(bench: Bench, plan: Plan, legs: Legs, key: Key, place: Place) -> None:
    told = (*plan.entry.switched, *plan.entry.three_way, *plan.entry.four_way)
    switches = [
        each
        for each in switches_of(bench, plan)
        if each not in told and sides_of(bench.devices[each]).far_hot
    ]
    if len(switches) != 1:
        listed = ", ".join(switches) or "none"
        ends = [(each, far) for each in switches for far in sides_of(bench.devices[each]).far_hot]
        legs.doubt(
            [f"{bench.box}.{each}.{far}" for each, far in ends],
            place,
            f"loop: at the switch, where the switches of this entry are: {listed}",
            "one switch",
            "name it: devices: [s1], or write its terminals out",
        )
        return
    far = sides_of(bench.devices[switches[0]]).far_hot
    legs.ties.append(Tie(key, bench.terminal(switches[0], far[0]), "loop"))


def _loop_at_lamp(bench: Bench, plan: Plan, legs: Legs, key: Key, place: Place) -> None:
    told = {each.partition(".")[0] for targets in plan.entry.switched.values() for each in targets}
    loads = [each for each in plan.devices if not is_switch(bench.devices[each]) and each not in told]
    lamps = [each for each in loads if bench.devices[each].is_ in ("luminaire", "fan")]
    lamps = lamps or loads
    hots = {each: sides_of(bench.devices[each]).hot for each in lamps}
    alike = len({bench.devices[each].is_ for each in lamps}) <= 1
    if not alike or any(len(hot) > 1 for hot in hots.values()):
        legs.doubt(
            [f"{bench.box}.{each}.{hot}" for each in lamps for hot in hots[each]],
            place,
            f"loop: at {', '.join(lamps)}, and to which of them it returns is not told",
            "one lamp with one hot lead",
            "write the joint of the returning wire out",
        )
        return
    legs.ties += [Tie(key, bench.terminal(each, hot), "loop") for each in lamps for hot in hots[each]]
