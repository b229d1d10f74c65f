"""One box laid open: its runs and devices, and what each name in its make-up stands for."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple

from junctionary.house.model import Role, Run
from junctionary.house.terminals import has_leads, terminals_of
from junctionary.house.workmanship import Usual
from junctionary.marks import Place
from junctionary.problems import Problem, nearest
from junctionary.records.boxes import BoxRecord, BoxSize
from junctionary.records.cables import Conductor
from junctionary.records.devices import ConnectorKind, DeviceKind
from junctionary.records.words import GROUND_COLOURS, NEUTRAL_COLOURS, UNTOLD_COLOURS
from junctionary.units import WireSize

AtomKind = Literal["conductor", "lead", "terminal", "box", "jumper"]

LEAD_OF = {"line": "black", "load": "red", "neutral": "white"}  # practice: a dimmer's leads
ALIASES = {"brass": ("brass-top", "brass-bottom"), "silver": ("silver-top", "silver-bottom")}


class Atom(NamedTuple):
    """One thing a joint may hold: a conductor end, a lead, a terminal, the box's screw, a jumper."""

    kind: AtomKind
    name: str
    size: WireSize | None = None
    metal: str | None = None
    run: str | None = None
    colour: str | None = None
    device: str | None = None
    terminal: str | None = None


@dataclass(frozen=True, slots=True)
class Wrong:
    """A name that stands for nothing in the box: the phrases of a problem."""

    found: str
    expected: str
    do: str

    def at(self, place: Place) -> Problem:
        """The problem, at the place where the name stands."""
        return Problem(place, self.found, self.expected, self.do)


@dataclass(frozen=True, slots=True)
class Bench:
    """One box laid open.

    ``runs`` are those that end here and ``devices`` those whose kind is known,
    by local id; ``kindless`` are the others. ``every_run`` are all
    of the house. ``lost`` are the kinds of file of which one could not be read,
    and ``ends_missing`` when a run that may end here has an end that is not known.
    """

    box: str
    record: BoxRecord
    runs: Mapping[str, Run]
    every_run: Mapping[str, Run]
    devices: Mapping[str, DeviceKind]
    kindless: frozenset[str]
    connectors: Mapping[str, ConnectorKind]
    usual: Usual
    lost: frozenset[str] = frozenset()
    ends_missing: bool = False

    @property
    def is_metal(self) -> bool:
        """Whether the box itself must be bonded."""
        return isinstance(self.record.size, BoxSize) and self.record.size.is_metal is True

    def circuits(self, runs: Iterable[str | None]) -> tuple[str, ...]:
        """The circuits of these runs, each once."""
        known = (self.runs[each].circuit for each in runs if each is not None and each in self.runs)
        return tuple(dict.fromkeys(known))

    def conductor(self, run: Run, conductor: Conductor) -> Atom:
        """The end in this box of one conductor of a run."""
        name = f"{self.box}/{run.id}.{conductor.colour}"
        return Atom("conductor", name, conductor.size, conductor.metal, run=run.id, colour=conductor.colour)

    def conductors(self, run: Run) -> tuple[Atom, ...]:
        """The ends in this box of all conductors of a run."""
        return tuple(self.conductor(run, each) for each in run.conductors)

    def terminal(self, device: str, terminal: str) -> Atom:
        """A terminal of a device here, or its own lead."""
        kind = self.devices[device]
        name = f"{self.box}.{device}.{terminal}"
        if not has_leads(kind):
            return Atom("terminal", name, device=device, terminal=terminal)
        colour = LEAD_OF.get(terminal, terminal)
        lead = next((each for each in kind.leads or () if each.colour == colour), None)
        size, metal = (lead.size, lead.metal) if lead else (None, None)
        return Atom("lead", name, size, metal, colour=colour, device=device, terminal=terminal)

    def screw(self) -> Atom:
        """The box's own grounding screw."""
        return Atom("box", f"{self.box}/box")

    def role(self, atom: Atom) -> Role | None:
        """What a conductor end serves as: by its colour, or by how it is re-marked here."""
        marked = self.record.marked.get(f"{atom.run}.{atom.colour}")
        return role_of_colour(marked or atom.colour or "")

    def role_by_colour(self, atom: Atom) -> Role | None:
        """What the colour of its insulation alone says."""
        return role_of_colour(atom.colour or "")


def role_of_colour(colour: str) -> Role | None:
    """What the colour of an insulation says; None for old wires that only a letter tells apart."""
    if colour in NEUTRAL_COLOURS:
        return "neutral"
    if colour in GROUND_COLOURS:
        return "ground"
    return None if colour in UNTOLD_COLOURS else "hot"


def resolve(bench: Bench, said: str, taken: frozenset[str] = frozenset()) -> Atom | Wrong:
    """What ``a1.black``, ``r1.brass``, ``box.screw`` or ``g1`` stands for in this box.

    ``brass`` and ``silver`` are whichever screw is not among the ``taken``.
    """
    whole, _, part = said.partition(".")
    if said == "box.screw":
        return bench.screw()
    if said in bench.record.jumpers:
        jumper = bench.record.jumpers[said]
        return Atom("jumper", f"{bench.box}/{said}", jumper.size, jumper.metal, colour=jumper.colour)
    if whole in bench.runs:
        return _conductor(bench, bench.runs[whole], part)
    if whole in bench.devices:
        return _terminal(bench, whole, part, taken)
    if whole in bench.kindless:
        return Atom("terminal", f"{bench.box}.{said}", device=whole, terminal=part)
    if "circuits" in bench.lost and whole not in bench.every_run:
        return Atom("conductor", f"{bench.box}/{said}", run=whole, colour=part)
    return _nothing(bench, whole, said)


def names_on(bench: Bench) -> list[str]:
    """Every id that may begin a name in this box's make-up."""
    return [*bench.runs, *bench.devices, *bench.kindless, *bench.record.jumpers, "box"]


def _conductor(bench: Bench, run: Run, colour: str) -> Atom | Wrong:
    colours = [each.colour for each in run.conductors]
    if not colour:
        example = colours[0] if colours else "black"
        return Wrong(
            f"{run.id} is a whole run",
            "one conductor of it",
            f"name the conductor, such as {run.id}.{example}",
        )
    if not colours:
        return Atom("conductor", f"{bench.box}/{run.id}.{colour}", run=run.id, colour=colour)
    for each in run.conductors:
        if each.colour == colour:
            return bench.conductor(run, each)
    near = nearest(colour, colours)
    return Wrong(
        f"run {run.id} has no {colour} conductor",
        f"one of {', '.join(f'{run.id}.{each}' for each in colours)}",
        f"write {run.id}.{near}" if near else "name a conductor that it has",
    )


def _terminal(bench: Bench, device: str, terminal: str, taken: frozenset[str]) -> Atom | Wrong:
    names = [each.name for each in terminals_of(bench.devices[device])]
    if terminal in names:
        return bench.terminal(device, terminal)
    either = [each for each in ALIASES.get(terminal, ()) if each in names]
    if either:
        free = [each for each in either if f"{bench.box}.{device}.{each}" not in taken]
        return bench.terminal(device, (free or either)[0])
    near = nearest(terminal, [*names, *(each for each in ALIASES if f"{each}-top" in names)])
    found = f"device {device} has no terminal {terminal!r}" if terminal else f"{device} is a whole device"
    return Wrong(
        found,
        f"one of {', '.join(f'{device}.{each}' for each in names)}",
        f"write {device}.{near}" if near else "name one of its terminals",
    )


def _nothing(bench: Bench, whole: str, said: str) -> Wrong:
    if whole in bench.every_run:
        here = ", ".join(bench.runs) or "none"
        return Wrong(
            f"run {whole} does not end in {bench.box}",
            f"a run that ends here: {here}",
            f"correct the id, or the from: or to: of {whole}",
        )
    known = names_on(bench)
    near = nearest(whole, known)
    return Wrong(
        f"{said!r} is neither a run nor a device in {bench.box}",
        f"{near!r}, the nearest known here" if near else f"one of {', '.join(known)}",
        f"write {near}" if near else "correct the id",
    )
