"""What a check says: a finding, or that it cannot tell because a fact is missing."""

from dataclasses import dataclass
from typing import Literal

from junctionary.formulas.worked import Step
from junctionary.marks import Place
from junctionary.records.accepted import Acceptance
from junctionary.sources import Citation

Severity = Literal["hazard", "defect", "advice"]
HAZARD: Severity = "hazard"
DEFECT: Severity = "defect"
ADVICE: Severity = "advice"
SEVERITIES: tuple[Severity, ...] = (HAZARD, DEFECT, ADVICE)

Cheap = Literal["roughed", "made-up", "energised"]
ROUGHED: Cheap = "roughed"
MADE_UP: Cheap = "made-up"
ENERGISED: Cheap = "energised"
LAST_CHEAP: dict[Cheap, str] = {
    ROUGHED: "before the wall closes",
    MADE_UP: "before energising",
    ENERGISED: "before final",
}
"""The last stage at which a failure is cheap to mend, and what that is before, in the order of the work."""


@dataclass(frozen=True, slots=True)
class Rule:
    """How grave the fault is, and on what authority it is one, by the newest edition's numbers.

    ``stage`` is the last at which the fault costs little to mend: once the wall is
    closed, the box made up or the circuit energised it costs more.
    """

    severity: Severity
    cites: tuple[Citation, ...]
    stage: Cheap


@dataclass(frozen=True, slots=True)
class Finding:
    """A fault found: always found, allowed, because, do, source, in this order.

    ``about`` are ids, the subject first: boxes, devices, runs, circuits,
    breakers, terminals. ``working`` is the sum the judgement rests on.
    ``accepted`` is the record's word that somebody lets it stand, and why.
    """

    rule: str
    severity: Severity
    place: Place
    about: tuple[str, ...]
    found: str
    allowed: str
    because: str
    do: str
    cites: tuple[Citation, ...]
    working: tuple[Step, ...] = ()
    accepted: Acceptance | None = None


@dataclass(frozen=True, slots=True)
class Unrecorded:
    """A check that cannot tell: ``needs`` names the missing facts in plain words."""

    rule: str
    about: tuple[str, ...]
    needs: tuple[str, ...]
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Fault:
    """What a rule's own function yields; the engine adds the rule's name, severity and sources.

    ``edition`` is the one the subject is judged by, where that need not be the house's.
    """

    place: Place
    about: tuple[str, ...]
    found: str
    allowed: str
    because: str
    do: str
    working: tuple[Step, ...] = ()
    edition: str | None = None


@dataclass(frozen=True, slots=True)
class CannotTell:
    """A rule's third answer: the facts it lacks about a subject."""

    about: tuple[str, ...]
    needs: tuple[str, ...]
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class Judgement:
    """All that the checks say of one house, most grave first, then by place."""

    findings: tuple[Finding, ...]
    unrecorded: tuple[Unrecorded, ...]
