"""What each run may carry, and the largest breaker that may guard it."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from junctionary.figures.insulation import insulation_of
from junctionary.figures.surroundings import BASE_C, Company, Warmth, company_of, warmth_along
from junctionary.formulas.ampacity import Conductor, ampacity, largest_breaker
from junctionary.formulas.worked import Worked, lacking
from junctionary.house.model import House, Joint, Run
from junctionary.marks import Place
from junctionary.records.cables import Conductor as Strand
from junctionary.records.words import NEUTRAL_COLOURS
from junctionary.tables import table
from junctionary.units import WireSize

LEAST_INSULATION_C = 60
MARKED_LUGS_C = 75
SMALLER_NEUTRAL_ALLOWED = ("range", "feeder", "source")
"""Where the neutral may be smaller than the other conductors, so that it does not govern."""


@dataclass(frozen=True, slots=True)
class WireLimit:
    """What one run, or one pigtail thinner than its cables, may carry in A, by its smallest conductor.

    ``breaker`` is the largest that may guard it; ``without_hole`` the same were
    it in no sealed hole, and ``hole`` that hole. ``taken`` says what was taken
    for granted. ``name`` is the run's id or the joint's, ``called`` that in words.
    """

    name: str
    called: str
    circuit: str
    place: Place
    edition: str
    size: WireSize | None
    metal: str | None
    ampacity: Worked
    breaker: Worked
    without_hole: Worked
    hole: str | None = None
    taken: tuple[str, ...] = ()

    @property
    def what(self) -> str:
        """``14 AWG copper``, as far as it is recorded."""
        return f"{self.size} {self.metal}" if self.size else "not recorded"


def wire_limit(house: House, run: Run, several_receptacles: bool | None) -> WireLimit:
    """The limit of one run. ``several_receptacles``: see ``largest_breaker``."""
    smallest = min(_judged(house, run), key=lambda each: each.size, default=None)
    if smallest is None:
        none = lacking([f"the cable of run {run.id}"], "A")
        called, hole = f"run {run.id}", company_of(house, run).hole
        return WireLimit(
            run.id, called, run.circuit, run.place, run.edition, None, None, none, none, none, hole
        )
    warmth, company = warmth_along(house, run), company_of(house, run)
    harshest = _conductor(house, run, smallest.size, smallest.metal)
    harshest = replace(harshest, ambient_c=warmth.harshest_c, together=company.harshest)
    kindest = replace(harshest, ambient_c=warmth.kindest_c, together=company.kindest)
    between = (*warmth.missing, *company.missing)
    absent = tuple(_absent(run, harshest, company))

    def settled(harsh: Conductor, kind: Conductor) -> Worked:
        return _settled(
            largest_breaker(harsh, several_receptacles, run.edition),
            largest_breaker(kind, several_receptacles, run.edition),
            between,
            absent,
        )

    breaker = settled(harshest, kindest)
    return WireLimit(
        name=run.id,
        called=f"run {run.id}",
        circuit=run.circuit,
        place=run.place,
        edition=run.edition,
        size=smallest.size,
        metal=smallest.metal,
        ampacity=ampacity(harshest, run.edition) if breaker.value is not None else _lack(breaker),
        breaker=breaker,
        without_hole=settled(
            replace(harshest, together=company.without_hole), replace(kindest, together=company.without_hole)
        )
        if company.hole
        else breaker,
        hole=company.hole,
        taken=tuple(_taken(harshest, warmth, company)),
    )


def least_size(house: House, run: Run, amps: Fraction) -> WireSize | None:
    """The smallest size of a run's metal that may carry ``amps`` A where the run lies; None where unknown.

    No standard rating is taken above what it carries, and what nobody recorded is taken at its harshest.
    """
    judged = min(_judged(house, run), key=lambda each: each.size, default=None)
    if judged is None:
        return None
    warmth, company = warmth_along(house, run), company_of(house, run)
    for each in table("conductor-area"):
        conductor = _conductor(house, run, WireSize(each.text("size")), judged.metal)
        conductor = replace(conductor, ambient_c=warmth.harshest_c, together=company.harshest)
        carried = largest_breaker(conductor, True, run.edition).value
        if carried is not None and carried >= amps:
            return conductor.size
    return None


def pigtail_limit(joint: Joint, circuit: str, edition: str) -> WireLimit | None:
    """The limit of a joint's thinnest pigtail or jumper, where it is thinner than the cables there.

    Its insulation is taken at 60 °C and its surroundings at 30 °C: as with any
    small conductor it is 240.4(D) that binds.
    """
    through = [each.size for each in joint.members if each.kind == "conductor" and each.size is not None]
    short = [each for each in joint.members if each.kind in ("pigtail", "jumper") and each.size is not None]
    thin = min(short, key=lambda each: each.size.circular_mils if each.size else 0, default=None)
    if thin is None or thin.size is None or not through or thin.size >= min(through):
        return None
    metal = thin.metal or "copper"
    conductor = Conductor(thin.size, metal, LEAST_INSULATION_C, BASE_C, together=1)
    limit = largest_breaker(conductor, True, edition)
    carried = ampacity(conductor, edition)
    called = f"a pigtail of joint {joint.id}"
    return WireLimit(joint.id, called, circuit, joint.place, edition, thin.size, metal, carried, limit, limit)


def _conductor(house: House, run: Run, size: WireSize, metal: str) -> Conductor:
    insulation = insulation_of(run)
    return Conductor(
        size=size,
        metal=metal,
        insulation_c=insulation.celsius if insulation else None,
        held_to_c=insulation.held_to_c if insulation else None,
        ambient_c=None,
        together=None,
        terminals_c=_terminals_c(house, run),
    )


def _terminals_c(house: House, run: Run) -> int | None:
    """What both ends are marked for: only a panel's lugs say so, and a box's terminals never do."""
    lugs = [house.panels[end.id].record.lugs if end.kind == "panel" and end.id else None for end in run.ends]
    marked = [each for each in lugs if each is not None and each.to("C") >= MARKED_LUGS_C]
    return MARKED_LUGS_C if len(marked) == len(lugs) else None


def _judged(house: House, run: Run) -> list[Strand]:
    """The conductors that must carry the current: no ground, no neutral where a smaller one is allowed."""
    carrying = [each for each in run.conductors if not each.is_ground]
    circuit = house.circuits.get(run.circuit)
    if circuit and circuit.record.purpose in SMALLER_NEUTRAL_ALLOWED:
        carrying = [each for each in carrying if each.colour not in NEUTRAL_COLOURS]
    return carrying


def _settled(harsh: Worked, kind: Worked, between: tuple[str, ...], absent: tuple[str, ...]) -> Worked:
    """The harsher figure where the gap makes no difference, else what would tell.

    ``between`` would tell the harshest from the kindest; without ``absent`` there is no figure at all.
    """
    if harsh.value is not None and harsh.value == kind.value:
        return harsh
    if kind.value is not None:
        return lacking(between or harsh.lacks, "A", kind.steps)
    return lacking(absent or kind.lacks, "A", kind.steps)


def _absent(run: Run, conductor: Conductor, company: Company) -> Iterable[str]:
    if conductor.insulation_c is None:
        yield f"what the insulation of run {run.id} is"
    if conductor.together is None:
        yield from company.missing


def _lack(breaker: Worked) -> Worked:
    return lacking(breaker.lacks, "A", breaker.steps)


def _taken(conductor: Conductor, warmth: Warmth, company: Company) -> Iterable[str]:
    """What the figure takes for granted, in words for its page."""
    if warmth.harshest_c == BASE_C:
        yield "30 °C or less along the run, as no room on its way records more"
    if warmth.harshest_c > warmth.kindest_c:
        yield f"{warmth.harshest_c} °C in an attic, as nobody recorded it"
    if conductor.terminals_c is None:
        yield "terminals marked for 60 °C (75 °C above 1 AWG), as nothing recorded says more"
    if company.hole is None and company.kindest == company.harshest == company.without_hole:
        yield "no bundle but those recorded"
