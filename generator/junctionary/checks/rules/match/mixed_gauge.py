"""The wire at the panel is thicker than a wire farther along the circuit.

Why it matters: whoever sees only the panel takes the whole circuit for the thicker wire, and one day puts in
    the breaker that would suit it. Then the thin wire overheats inside a wall, unguarded.
What to do: write at the panel which wire governs and the largest breaker it allows; or replace the thin wire.
Cannot tell: when a cable of the circuit, or its breaker, is not recorded. It speaks only where the thin wire
    governs and the wire at the panel would take a larger breaker: a thicker wire farther along
    misleads nobody at the panel. A breaker that is too large already is breaker-outrates-wire.
Stands: on the line of the run that governs, or of the joint whose pigtail does.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps, headed
from junctionary.figures import CircuitLimit, Figures, WireLimit
from junctionary.house.model import Circuit, House
from junctionary.house.network import Network, listed
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(
    ADVICE,
    (
        cite("practice", "Where sizes mix on a circuit, the smallest governs, and the panel says so."),
        cite("nec-2023", "240.4(D)"),
    ),
    ROUGHED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, feeds: den, says: "Den, receptacles"}
[circuits/den.yaml]
circuit: den
name: Den receptacles
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
  - {id: b2, cable: 14/2 NM-B, from: D1, to: D2}    #! mixed-gauge
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1: {devices: {r1: duplex}, makeup: pigtailed}
  D2: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("14/2 NM-B", "12/2 NM-B").replace("    #! mixed-gauge", "")

UNTOLD = PASSES.replace("b2, cable: 12/2 NM-B", "b2, cable: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each branch circuit, by the wire at its panel and the one that governs."""
    for circuit in house.circuits.values():
        limit = figures.circuits[circuit.id]
        if limit.branch and len(limit.wires) > 1:
            yield from _judged(house, circuit, limit)
        elif limit.branch and not circuit.runs:
            yield CannotTell((circuit.id,), (f"the cables of circuit {circuit.id}",), circuit.place)


def _judged(house: House, circuit: Circuit, limit: CircuitLimit) -> Iterator[Fault | CannotTell]:
    panels = {house.breakers[each].panel for each in circuit.breakers}
    home = [each for each in limit.wires if each.name in house.runs and _starts(house, each.name, panels)]
    at_panel = min((each for each in home if each.size is not None), key=_guarded, default=None)
    governs = limit.limiting
    if at_panel is not None and governs is not None and _thinner(governs, at_panel):
        ratings = [house.breakers[each].rating for each in circuit.breakers]
        rated = [each.to("A") for each in ratings if isinstance(each, Quantity)]
        if not rated or max(rated) <= _guarded(governs):
            yield _fault(circuit, governs, at_panel, limit)
        return
    untold = [f"the cable of run {each.name}" for each in limit.wires if each.size is None]
    if not circuit.breakers:
        untold.append(f"which breaker feeds circuit {circuit.id}")
    if untold:
        yield CannotTell((circuit.id,), tuple(untold), circuit.place)


def _starts(house: House, run: str, panels: set[str]) -> bool:
    return any(end.kind == "panel" and end.id in panels for end in house.runs[run].ends)


def _guarded(wire: WireLimit) -> int:
    """The largest breaker for a wire by its size, in A, as far as it is known."""
    return int(wire.without_hole.value or 0)


def _thinner(wire: WireLimit, than: WireLimit) -> bool:
    if wire.size is None or than.size is None or wire.without_hole.value is None:
        return False
    return wire.size < than.size and _guarded(wire) < _guarded(than)


def _fault(circuit: Circuit, governs: WireLimit, at_panel: WireLimit, limit: CircuitLimit) -> Fault:
    assert governs.without_hole.value is not None
    thin = [each.name for each in limit.wires if each.size == governs.size]
    return Fault(
        place=governs.place,
        about=(governs.name, circuit.id, at_panel.name, *circuit.breakers),
        found=f"{headed(at_panel.called)} at the panel is {at_panel.what}, and farther along "
        f"{listed(tuple(thin))} {'is' if len(thin) == 1 else 'are'} {governs.what}.",
        allowed=f"A breaker of at most {amps(governs.without_hole.value)}, as {governs.called} governs.",
        because="The wire seen at the panel suggests a larger breaker than the rest can bear.",
        do=f"Write at the panel: {amps(governs.without_hole.value)} at most, "
        f"{governs.size} farther along; or replace the thin wire.",
        working=governs.without_hole.steps,
        edition=governs.edition,
    )
