"""One plugged load draws more than its receptacle may carry for one.

Why it matters: a receptacle among several is made for part of the circuit. One load that takes more
    heats the contacts, hour after hour, and leaves nothing for the others.
What to do: plug it in where the receptacle and the circuit allow it, or give it a circuit of its own.
Cannot tell: when the load's draw or voltage, the receptacle it is plugged into or that one's rating, the
    breaker or its rating is not recorded. A load alone on a circuit of more than 20 A is held against
    its breaker only, as is one fastened in place and alone on its circuit, one among several at 40 or
    50 A, and one on a receptacle that does not suit its circuit, which is another check's matter.
Stands: on the load's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ENERGISED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps, headed
from junctionary.figures import CordLoad, Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "210.21(B)(2)"),
        cite("nec-2023", "210.23(B)(1)"),
        cite("cfr-29-1910", "1910.304(b) Table S-4"),
    ),
    ENERGISED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 20 A, feeds: den, says: "Den, receptacles"}
[circuits/den.yaml]
circuit: den
name: Den receptacles
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
loads:
  - {id: heater, is: space-heater, draws: 1500 W, plugged: D1.r1}    #! one-cord-load-too-large
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("5-15R", "5-20R").replace("    #! one-cord-load-too-large", "")

UNTOLD = PASSES.replace("draws: 1500 W, ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each plugged load against the most that one may draw there."""
    for load in figures.cord_loads:
        draw = load.draw
        if load.over is None:
            needs = (*draw.amps.lacks, *load.most.lacks)
            yield CannotTell((draw.id, load.device, load.circuit), needs, draw.place)
        elif load.over:
            yield _fault(house, load)
    held = {each.draw.id for each in figures.cord_loads}
    for draw in figures.draws.values():
        nowhere = draw.device is None and draw.box is None and draw.fastened is not True
        if draw.recorded and draw.id not in held and nowhere:
            yield CannotTell((draw.id, draw.circuit or ""), (f"where {draw.id} is plugged in",), draw.place)


def _fault(house: House, load: CordLoad) -> Fault:
    draw, most = load.draw, load.most
    assert draw.amps.value is not None
    assert most.value is not None
    return Fault(
        place=draw.place,
        about=(draw.id, load.device, load.circuit),
        found=f"{headed(draw.name)} draws {amps(draw.amps.value)} at {load.device}.",
        allowed=f"At most {amps(most.value)}: {most.steps[-1].what}.",
        because="The receptacle's contacts heat for as long as it runs.",
        do="Plug it in where the receptacle allows it, or give it a circuit of its own.",
        working=(*draw.amps.steps, *most.steps),
        edition=house.boxes[house.devices[load.device].box].edition,
    )
