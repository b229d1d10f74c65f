"""The supply of one entry: how its hot conductors are told apart, and what has been tied to it."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from junctionary.house.makeup.bench import Atom, Bench
from junctionary.house.makeup.knots import Doubt, Key, Tie
from junctionary.house.makeup.plan import Plan
from junctionary.house.makeup.sides import Sides, sides_of
from junctionary.house.makeup.switching import Legs
from junctionary.house.model import Run
from junctionary.marks import Place
from junctionary.problems import Problem

NEAR, FAR = "near", "far"


@dataclass(slots=True)
class Supply:
    """What is worked out of one entry on the way.

    ``taken`` are names that are written out. ``carrier`` is the device whose
    own terminals carry the circuit on, or guard what lies beyond; ``several``
    when any run brings more than one hot; ``straight`` are knots whose wires
    land together on one terminal.
    """

    bench: Bench
    plan: Plan
    legs: Legs
    taken: frozenset[str]
    carrier: str | None = None
    white_is_hot: bool = False
    several: bool = False
    ties: list[Tie] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    straight: set[Key] = field(default_factory=set)

    @property
    def line(self) -> tuple[Run, ...]:
        """The runs that carry the supply itself, and not only what a switch sends out."""
        some = (self.plan.feed, *self.plan.onward, *self.plan.guarded)
        return tuple(run for run in some if run is not None)

    def hots(self, run: Run) -> tuple[Atom, ...]:
        """The hot conductors of a run that no switching word has placed."""
        return tuple(each for each in self.left(run) if self.role(each) == "hot")

    def left(self, run: Run) -> tuple[Atom, ...]:
        """The conductors of a run that no switching word has placed and that are neither capped nor loose."""
        away = {*self.bench.record.capped, *self.bench.record.loose}
        atoms = (each for each in self.bench.conductors(run) if each.name not in self.legs.spoken)
        return tuple(each for each in atoms if f"{each.run}.{each.colour}" not in away)

    def role(self, atom: Atom) -> str | None:
        """What a conductor serves as here; a white may be the second hot of a two-wire cable."""
        role = self.bench.role(atom)
        return "hot" if role == "neutral" and self.white_is_hot else role

    def label(self, atom: Atom) -> str:
        """How its hot is told from the others of the entry: by colour, where any run has more than one."""
        return (atom.colour or "") if self.several else ""

    def sides(self, device: str) -> Sides:
        """The terminals of a device, of two alike the one that nothing else has taken."""
        prefix = f"{self.bench.box}.{device}."
        names = {
            name.removeprefix(prefix) for name in self.taken | self.legs.spoken if name.startswith(prefix)
        }
        return sides_of(self.bench.devices[device], names)

    def key(self, flow: str, side: str, label: str) -> Key:
        """The knot of one flow of this entry on one side of its carrier."""
        return (str(self.plan.number), flow, side, label)

    def tie(self, key: Key, atoms: Iterable[Atom], word: str | None = None) -> None:
        """Add these to a knot."""
        self.ties += [Tie(key, atom, word or self.plan.word) for atom in atoms]

    def doubt(self, names: Iterable[str], place: Place, found: str, expected: str, do: str) -> None:
        """Note that the entry cannot be expanded honestly where these are concerned."""
        self.doubts.append(Doubt(frozenset(names), Problem(place, found, expected, do)))

    def is_sent(self, device: str) -> bool:
        """Whether a switching word says where something of this device goes."""
        return any(name.startswith(f"{self.bench.box}.{device}.") for name in self.legs.spoken)

    def of(self, device: str, terminals: Iterable[str]) -> list[str]:
        """The full names of some terminals of a device."""
        return [f"{self.bench.box}.{device}.{each}" for each in terminals]
