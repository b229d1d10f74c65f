"""A figure with its working: each step's sum as text, its unit, what it rests on."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from junctionary.formulas.sums import evaluate, plain
from junctionary.sources import Citation


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a working; ``sum`` works out to ``value``."""

    what: str
    sum: str
    value: Fraction
    unit: str
    cite: Citation | None = None

    def __str__(self) -> str:
        shown = plain(self.value) if self.value.denominator <= 10_000 else f"{float(self.value):.4g}"
        if self.sum.replace(".", "").isdigit():
            return f"{self.what}: {self.sum} {self.unit}"
        return f"{self.what}: {self.sum} = {shown} {self.unit}"


@dataclass(frozen=True, slots=True)
class Worked:
    """A figure and how it came about.

    ``value`` is None exactly where something is missing, and then ``lacks`` says
    what, in plain phrases, and ``steps`` hold what could be worked out all the same.
    """

    value: Fraction | None
    unit: str
    steps: tuple[Step, ...] = ()
    cites: tuple[Citation, ...] = ()
    lacks: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if (self.value is None) != bool(self.lacks):
            raise ValueError("a figure has either a value or a list of what it lacks")


def step(what: str, sum_: str, unit: str, cite: Citation | None = None) -> Step:
    """A step whose value is worked out from the very sum that is shown."""
    return Step(what, sum_, evaluate(sum_), unit, cite)


def finished(value: Fraction, unit: str, steps: Iterable[Step], cites: Iterable[Citation] = ()) -> Worked:
    """A figure that lacks nothing; it cites what its steps cite, and ``cites`` besides."""
    kept = tuple(steps)
    return Worked(value, unit, kept, _cited(kept, cites))


def lacking(
    lacks: Iterable[str], unit: str, steps: Iterable[Step] = (), cites: Iterable[Citation] = ()
) -> Worked:
    """A figure that cannot be given, and the facts it wants."""
    kept = tuple(steps)
    return Worked(None, unit, kept, _cited(kept, cites), tuple(dict.fromkeys(lacks)))


def _cited(steps: tuple[Step, ...], more: Iterable[Citation]) -> tuple[Citation, ...]:
    named = (each.cite for each in steps if each.cite is not None)
    return tuple(dict.fromkeys((*named, *more)))
