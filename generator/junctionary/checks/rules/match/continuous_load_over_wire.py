"""A load that runs for hours needs a larger wire than it has, though breaker and wire match.

Why it matters: up to 800 A the breaker may be the next size above the wire. A load for hours that uses the
    breaker to its four fifths then loads the wire beyond what it is made to carry.
What to do: turn the load down, where it can be set; or put in larger wire.
Cannot tell: when the draw of a load that may be continuous is not recorded, or the cable, or what warms it
    on its way. The wire, as warmth and bundling leave it, is held against 125 % of what is continuous
    and the rest, which is the stricter reading. A breaker above the wire is breaker-outrates-wire,
    and a load above the breaker's four fifths continuous-over-eighty-percent.
Stands: on the line of the run that carries least.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps, headed
from junctionary.figures import Figures, PoleLoad, WireLimit
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.19(A)"), cite("nec-2023", "310.16")), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  2+4: {rating: 60 A, feeds: charger, says: Car charger}
[circuits/charger.yaml]
circuit: charger
name: Car charger
runs:
  - {id: c1, cable: 6/2 NM-B, from: main, to: G1}    #! continuous-load-over-wire
loads:
  - {id: car, is: car-charger, draws: 48 A, volts: 240 V, wired: G1.v1, continuous: true}
[rooms/garage.yaml]
room: garage
name: Garage
kind: garage
[boxes/garage.yaml]
room: garage
boxes:
  G1:
    devices: {v1: charger}
    marked: {c1.white: black}
    joints:
      - {join: [c1.black, v1.black], by: splice}
      - {join: [c1.white, v1.red], by: splice}
      - {join: [c1.bare, v1.green], by: splice}
[devices/all.yaml]
devices:
  charger: {is: appliance, volts: 240 V, leads: [6 AWG black, 6 AWG red, 10 AWG green]}
connectors:
  splice: {is: set-screw, ports: 2, accepts: 14 to 4 AWG copper}
"""

PASSES = FAILS.replace("draws: 48 A", "draws: 44 A").replace("    #! continuous-load-over-wire", "")

UNTOLD = PASSES.replace("cable: 6/2 NM-B", "cable: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each branch circuit with a continuous load, by the wire that may carry least."""
    for circuit in house.circuits.values():
        limit = figures.circuits[circuit.id]
        for pole in figures.loads[circuit.id].poles:
            if limit.branch and pole.continuous_a and not _over_breaker(pole):
                yield from _judged(house, pole, limit.wires)


def _over_breaker(pole: PoleLoad) -> bool:
    return pole.rating_a is not None and pole.least_sized_a > pole.rating_a


def _judged(house: House, pole: PoleLoad, wires: tuple[WireLimit, ...]) -> Iterator[Fault | CannotTell]:
    known = [each for each in wires if each.ampacity.value is not None]
    least = min(known, key=lambda each: each.ampacity.value or 0, default=None)
    if least is not None and pole.least_sized_a > (least.ampacity.value or 0):
        if pole.rating_a is None or (least.without_hole.value or 0) >= pole.rating_a:
            yield _fault(house, pole, least)
        return
    lacks = [lack for each in wires for lack in each.ampacity.lacks]
    lacks += [lack for each in pole.draws if each.continuous is not False for lack in each.amps.lacks]
    if lacks or not wires:
        needs = tuple(dict.fromkeys(lacks)) or (f"the cables of circuit {pole.circuit}",)
        yield CannotTell((pole.circuit, pole.breaker), needs, house.circuits[pole.circuit].place)


def _fault(house: House, pole: PoleLoad, wire: WireLimit) -> Fault:
    long = [each for each in pole.draws if each.continuous and each.amps.value is not None]
    assert wire.ampacity.value is not None
    return Fault(
        place=wire.place,
        about=(wire.name, pole.circuit, pole.breaker, *(each.id for each in long)),
        found=f"{headed(wire.called)} is {wire.what}, and {listed(tuple(each.name for each in long))} "
        f"may run for hours at {amps(pole.continuous_a)}.",
        allowed=f"Wire that may carry at least {amps(pole.least_sized_a)}; "
        f"this may carry {amps(wire.ampacity.value)}.",
        because="The wire overheats under a load for hours, and the breaker does not open.",
        do="Turn the load down where it can be set, or put in larger wire.",
        working=(*pole.load.steps, *pole.sized.steps, *wire.ampacity.steps),
        edition=wire.edition,
    )
