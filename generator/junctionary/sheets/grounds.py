"""Grounds as the sheets of circuits and panels show them: what each has, what it needs, and the sum."""

from collections.abc import Iterable, Iterator

from junctionary.figures import ClearSide, ElectrodeWire, PanelLimits, RunGround
from junctionary.formulas.grounding import AREA, GroundSize
from junctionary.house.model import Circuit, House, Panel
from junctionary.records.cables import Conductor
from junctionary.sheets.circuit import MatchLine
from junctionary.sheets.circuit_tree import gravest
from junctionary.sheets.entries import Fact, Working, WorkingLine
from junctionary.sheets.links import Phrase, Ref
from junctionary.sheets.naming import NOT_RECORDED, counted, said
from junctionary.sheets.reckoning import line
from junctionary.sheets.survey import Survey, cited

STANDS = {True: "fits", False: "too small", None: "cannot tell"}


def ground_matches(survey: Survey, circuit: Circuit) -> Iterator[MatchLine]:
    """The ground of each run where it is not simply as large as the circuit's own wires."""
    for ground in _worth_showing(survey, circuit):
        assert ground.wire is not None
        assert ground.needs is not None
        grave = gravest(survey, {Ref("run", ground.run)}) if ground.suits is False else None
        yield MatchLine(
            part=f"ground of {ground.run}",
            has=_wire(ground.wire),
            may=_least(ground.needs, ground.wire),
            stands=STANDS[ground.suits],
            because="; ".join(ground.lacks) or cited(ground.needs.worked.cites),
            severity=grave,
        )


def ground_workings(survey: Survey, circuit: Circuit) -> Iterator[Working]:
    """The sum of each such ground."""
    for ground in _worth_showing(survey, circuit):
        assert ground.wire is not None
        assert ground.needs is not None
        yield _working(f"Ground of run {ground.run}", ground.needs, ground.wire, ground.suits, ground.lacks)


def panel_workings(survey: Survey, panel: Panel) -> Iterator[Working]:
    """The sums of the ground that comes with a panel's feeder, and of the wires to its electrodes."""
    feeder = survey.house.circuits.get(panel.feeder or "")
    if feeder is not None:
        yield from ground_workings(survey, feeder)
    shown: set[tuple[object, ...]] = set()
    for each in _electrodes(survey, panel):
        key = (each.electrode, each.wire, each.needs)
        if key not in shown:
            shown.add(key)
            title = f"Wire to the {each.electrode} electrode"
            yield _working(title, each.needs, each.wire, each.suits, each.lacks)


def panel_facts(survey: Survey, panel: Panel) -> Iterator[Fact]:
    """The bond, the ground that comes with the feeder, the electrodes, the poles and the clear space."""
    house, limits = survey.house, survey.figures.panels[panel.id]
    yield Fact("neutral and ground", (_bond(house, panel),))
    feeder = house.circuits.get(panel.feeder or "")
    for ground in (survey.figures.grounds[each] for each in feeder.runs) if feeder else ():
        yield Fact(f"ground with feeder {ground.run}", _of_feeder(ground))
    told = [_electrode(each) for each in _electrodes(survey, panel)]
    for what, wire in dict.fromkeys(told):
        several = told.count((what, wire))
        yield Fact(counted(several, f"{what} electrode") if several > 1 else f"{what} electrode", (wire,))
    most = f" of {limits.most}" if limits.most is not None else "; how many it may hold is not recorded"
    yield Fact("poles taken", (f"{limits.poles}{most}",))
    yield Fact("kept clear before it", (_clear(house, limits),))


def _clear(house: House, limits: PanelLimits) -> str:
    """``3 ft wide, 2 ft deep (3 ft asked), height not recorded``."""
    return ", ".join(_side(house, each) for each in limits.sides)


def _electrode(each: ElectrodeWire) -> tuple[str, str]:
    wire = _wire(each.wire) if each.wire else f"wire {NOT_RECORDED}"
    need = f", {_least(each.needs, each.wire)}" if each.needs.size else ""
    return each.electrode, f"{wire}{need}"


def _side(house: House, side: ClearSide) -> str:
    word = {"width": "wide", "depth": "deep", "height": "high"}[side.name]
    if side.has is None:
        return f"{side.name} {NOT_RECORDED}"
    asked = "" if side.stands == "enough" else f" ({said(house, side.least)} asked)"
    return f"{said(house, side.has)} {word}{asked}"


def _bond(house: House, panel: Panel) -> str:
    bonded = panel.record.bonded
    if not isinstance(bonded, bool):
        return said(house, bonded)
    return "joined here" if bonded else "kept apart here"


def _of_feeder(ground: RunGround) -> Phrase:
    if ground.wire is not None and ground.needs is not None:
        need = f", {_least(ground.needs, ground.wire)}" if ground.needs.size else ""
        return (f"{_wire(ground.wire)}{need}",)
    words = {"none": "none", "armor": "the cable's armor", "raceway": "the metal conduit"}
    return (words.get(ground.made, NOT_RECORDED),)


def _worth_showing(survey: Survey, circuit: Circuit) -> Iterable[RunGround]:
    for each in circuit.runs:
        ground = survey.figures.grounds[each]
        if ground.wire is None or ground.needs is None:
            continue
        hot = [one.size for one in survey.house.runs[each].conductors if not one.is_ground]
        smaller = any(size > ground.wire.size for size in hot)
        if circuit.record.purpose == "feeder" or smaller or ground.suits is not True:
            yield ground


def _electrodes(survey: Survey, panel: Panel) -> Iterator[ElectrodeWire]:
    return (each for each in survey.figures.electrodes if each.panel == panel.id)


def _working(
    title: str, needs: GroundSize, wire: Conductor | None, suits: bool | None, lacks: tuple[str, ...]
) -> Working:
    lines = [line(each, unit=AREA, places=0) for each in needs.worked.steps]
    if needs.size is not None:
        lines.append(WorkingLine("The least size with that area", "", str(needs.size), True))
    has = f"It is {_wire(wire)}" if wire is not None else "What it is, is not recorded"
    stands = {True: ": it will do.", False: ": too small.", None: "."}[suits]
    gaps = f" Cannot be told without {'; '.join(lacks)}." if lacks and wire is not None else ""
    return Working(title, AREA, tuple(lines), f"{has}{stands}{gaps}", cited(needs.worked.cites))


def _wire(wire: Conductor) -> str:
    return f"{wire.size} {wire.metal}"


def _least(needs: GroundSize, wire: Conductor | None) -> str:
    if needs.size is None:
        return "cannot tell"
    return f"at least {needs.size} {wire.metal if wire else 'copper'}"
