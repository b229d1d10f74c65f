"""Equipment fastened in place takes more than half of a circuit that also feeds lights or receptacles.

Why it matters: what is fastened in place runs whenever it likes. The rest of the circuit then has too little
    left for lamps and plugs, and the breaker opens in use.
What to do: give the fastened equipment a circuit of its own.
Cannot tell: when what it draws is not recorded, or whether a plugged load is fastened in place, where the
    answer hangs on it. What is wired counts as fastened; lamps do not count. A receptacle that holds
    the fastened load itself does not count as another outlet. Circuits of more than 20 A have no such share.
Stands: on the line of the largest fastened load.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps, headed
from junctionary.figures import Figures, FixedLoads
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "210.23(B)(2)"),
        cite("cfr-24-3280", "3280.805(a)(3)(i)"),
    ),
    ROUGHED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, feeds: den, says: "Den, receptacles and heater"}
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
  - {id: b2, cable: 12/2 NM-B, from: D1, to: D2}
loads:
  - {id: heater, is: space-heater, draws: 1500 W, wired: D2.h1, continuous: false}    #! fixed-load-over-half
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1: {devices: {r1: duplex}, makeup: pigtailed}
  D2: {devices: {h1: wall-heater}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
  wall-heater: {is: appliance, volts: 120 V, leads: [14 AWG black, 14 AWG white, 14 AWG green]}
"""

PASSES = FAILS.replace("1500 W", "1000 W").replace("    #! fixed-load-over-half", "")

UNTOLD = PASSES.replace("draws: 1000 W, ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The fastened loads behind each breaker against half its rating."""
    for fixed in figures.fixed_loads:
        circuit = house.circuits[fixed.circuit]
        assert fixed.most.value is not None
        about = (fixed.circuit, fixed.breaker)
        if fixed.draws and fixed.total.steps[-1].value > fixed.most.value:
            yield _fault(house, fixed)
        elif fixed.total.lacks:
            yield CannotTell(about, fixed.total.lacks, circuit.place)
        elif fixed.perhaps_a > fixed.most.value:
            needs = tuple(f"whether {each.id} is fastened in place" for each in fixed.perhaps)
            yield CannotTell(about, needs, fixed.perhaps[0].place)


def _fault(house: House, fixed: FixedLoads) -> Fault:
    known = [each for each in fixed.draws if each.amps.value is not None]
    largest = max(known, key=lambda each: each.amps.value or 0)
    assert fixed.most.value is not None
    return Fault(
        place=largest.place,
        about=(largest.id, fixed.circuit, fixed.breaker, *fixed.beside),
        found=f"{headed(listed(tuple(each.name for each in known)))}, fastened in place, "
        f"{'draws' if len(known) == 1 else 'draw'} {amps(fixed.total.steps[-1].value)} beside "
        f"{listed(fixed.beside)}.",
        allowed=f"At most {amps(fixed.most.value)}, half of circuit {fixed.circuit}.",
        because="Too little is left for the lights and plugs that share the circuit.",
        do="Give the fastened equipment a circuit of its own.",
        working=(*fixed.total.steps, *fixed.most.steps),
        edition=house.circuits[fixed.circuit].edition,
    )
