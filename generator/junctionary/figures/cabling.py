"""The cables of each circuit as a tree from its panel, and how far each box lies along it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from junctionary.formulas.resistance import Wire
from junctionary.house.model import Circuit, House, Run
from junctionary.house.network import is_service_panel
from junctionary.records.cables import Conductor
from junctionary.records.words import NEUTRAL_COLOURS
from junctionary.units import Quantity


@dataclass(frozen=True, slots=True)
class Wired:
    """What one cable is to a current: its length, and the smallest of its hots, neutrals and grounds.

    ``neutral`` is None where no conductor of it returns to the neutral bar,
    ``ground`` where it has no equipment grounding conductor.
    ``lacks`` says what is not recorded of it.
    """

    run: str
    feet: Fraction | None
    hot: Wire | None
    neutral: Wire | None
    ground: Wire | None
    lacks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Cabling:
    """The cables of one circuit: for each box or panel they reach, the runs on the way from its panel.

    ``loops`` are runs that come back to what was already reached, and ``astray``
    those that no other leads to. ``poles`` counts the hots that feed it; ``neutral`` says
    whether any of its conductors is one. ``lacks`` says why the tree may not be whole.
    """

    circuit: str
    panel: str | None
    poles: int
    neutral: bool
    ways: Mapping[str, tuple[str, ...]]
    wired: Mapping[str, Wired]
    loops: tuple[str, ...]
    astray: tuple[str, ...]
    lacks: tuple[str, ...]

    @property
    def boxes(self) -> tuple[str, ...]:
        """What the cables reach, nearest first, without the panel they start from."""
        return tuple(each for each in self.ways if each != self.panel)

    def feet_to(self, at: str) -> Fraction | None:
        """How many feet of cable lead from the panel to a box; None where a length is not recorded."""
        lengths = [self.wired[run].feet for run in self.ways.get(at, ())]
        known = [each for each in lengths if each is not None]
        return sum(known, Fraction(0)) if lengths and len(known) == len(lengths) else None


def cabling_of(house: House, circuit: Circuit) -> Cabling:
    """The tree of one circuit's cables."""
    breakers = [house.breakers[each] for each in circuit.breakers]
    panels = list(dict.fromkeys(each.panel for each in breakers))
    runs = [house.runs[each] for each in circuit.runs]
    poles = sum(each.poles for each in breakers)
    panel = panels[0] if len(panels) == 1 else None
    ways, loops, astray = _tree(panel, runs) if panel else ({}, (), tuple(each.id for each in runs))
    home = [run for run in runs if any(end.id == panel for end in run.ends)]
    neutral = poles == 1 or any(len(_insulated(run)) > poles for run in home)
    lacks = [f"which breaker feeds circuit {circuit.id}"] if panel is None else []
    lacks += [
        f"which of the runs that close a loop is open ({each} closes it: voltage drop needs a tree)"
        for each in loops
    ]
    lacks += [f"how run {each} is reached from the panel" for each in astray if panel]
    lacks += [
        f"where run {run.id} ends"
        for run in runs
        if any(end.kind in ("unknown", "unrecorded") for end in run.ends)
    ]
    if not runs:
        lacks.append(f"the cables of circuit {circuit.id}")
    wired = {run.id: wired_of(run, neutral=neutral) for run in runs}
    return Cabling(circuit.id, panel, poles, neutral, ways, wired, loops, astray, tuple(dict.fromkeys(lacks)))


def wired_of(run: Run, *, neutral: bool) -> Wired:
    """What a run is to a current. ``neutral``: its white is one, and not a re-marked hot."""
    lacks = []
    if not run.conductors:
        lacks.append(f"the cable of run {run.id}")
    if not isinstance(run.length, Quantity):
        lacks.append(f"the length of run {run.id}")
    # To a hundredth of a foot: what a page shows, not what a metre divides into.
    feet = Fraction(round(run.length.to("ft") * 100), 100) if isinstance(run.length, Quantity) else None
    insulated = _insulated(run)
    whites = [each for each in insulated if each.colour in NEUTRAL_COLOURS] or insulated[-1:]
    hots = [each for each in insulated if each.colour not in NEUTRAL_COLOURS] or insulated
    grounds = [each for each in run.conductors if each.is_ground]
    return Wired(
        run.id,
        feet,
        _smallest(hots),
        _smallest(whites) if neutral and len(insulated) > 1 else None,
        _smallest(grounds),
        tuple(lacks),
    )


def feeders_of(house: House, cablings: Mapping[str, Cabling], panel: str | None) -> tuple[str, ...] | None:
    """The circuits that feed a panel, the first from the service; None where the record does not tell."""
    found: list[str] = []
    while panel is not None:
        record = house.panels[panel]
        if record.feeder is None:
            return tuple(reversed(found)) if is_service_panel(house, record) else None
        if record.feeder in found or record.feeder not in cablings:
            return None
        found.append(record.feeder)
        panel = cablings[record.feeder].panel
    return None


def way_before(
    house: House, cablings: Mapping[str, Cabling], feeders: tuple[str, ...] | None
) -> tuple[str, ...]:
    """The runs of the feeders before a panel, from the service on."""
    found: list[str] = []
    for feeder, after in zip(feeders or (), (*(feeders or ())[1:], None), strict=False):
        ends = (
            [cablings[after].panel]
            if after
            else [panel.id for panel in house.panels.values() if panel.feeder == feeder]
        )
        ways = cablings[feeder].ways
        found += next((ways[end] for end in ends if end is not None and end in ways), ())
    return tuple(found)


def _tree(
    panel: str, runs: Iterable[Run]
) -> tuple[dict[str, tuple[str, ...]], tuple[str, ...], tuple[str, ...]]:
    """The way to each end the runs reach, the runs that close a loop, those that are not reached."""
    ways: dict[str, tuple[str, ...]] = {panel: ()}
    left = {run.id: run for run in runs}
    loops: list[str] = []
    waiting = [panel]
    while waiting:
        at = waiting.pop(0)
        for run in [each for each in left.values() if any(end.id == at for end in each.ends)]:
            del left[run.id]
            other = run.to if run.from_.id == at else run.from_
            if other.id is None:
                # An end that is nowhere or unknown takes no load that is recorded.
                continue
            if other.id in ways:
                loops.append(run.id)
                continue
            ways[other.id] = (*ways[at], run.id)
            waiting.append(other.id)
    return ways, tuple(loops), tuple(left)


def _insulated(run: Run) -> list[Conductor]:
    return [each for each in run.conductors if not each.is_ground]


def _smallest(conductors: Iterable[Conductor]) -> Wire | None:
    found = min(conductors, key=lambda each: each.size, default=None)
    return Wire(found.size, found.metal) if found else None
