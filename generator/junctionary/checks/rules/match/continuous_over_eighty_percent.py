"""A load that runs for hours is too large for its breaker, though the breaker's rating covers it.

Why it matters: a breaker in a closed panel is made to carry four fifths of its rating for hours. Above that
    it warms, opens for no fault, and ages.
What to do: move a load to another circuit; or put in a larger breaker where wire, receptacles and the
    equipment's instructions allow that.
Cannot tell: when the breaker's rating or the draw of a load that may be continuous is not recorded, or
    whether a load runs for three hours or more, where the answer hangs on it. Water heaters, car
    chargers, network gear, alarms and fastened space heaters count as continuous where nobody says;
    cooking, washing, cold food, tools and lamps do not. A load above the breaker's rating itself is
    circuit-overloaded.
Stands: on the breaker's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures, PoleLoad
from junctionary.house.model import House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.20(A)"), cite("nec-2023", "210.19(A)")), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  2+4: {rating: 40 A, feeds: charger, says: Car charger}    #! continuous-over-eighty-percent
[circuits/charger.yaml]
circuit: charger
name: Car charger
runs:
  - {id: c1, cable: 8/2 NM-B, from: main, to: G1}
loads:
  - {id: car, is: car-charger, draws: 40 A, volts: 240 V, wired: G1.v1, continuous: true}
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
  charger: {is: appliance, volts: 240 V, leads: [8 AWG black, 8 AWG red, 10 AWG green]}
connectors:
  splice: {is: set-screw, ports: 2, accepts: 14 to 6 AWG copper}
"""

PASSES = FAILS.replace("draws: 40 A", "draws: 32 A").replace("    #! continuous-over-eighty-percent", "")

UNTOLD = PASSES.replace("draws: 32 A, ", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """125 % of what is continuous, and the rest, against each breaker of a branch circuit."""
    for circuit in house.circuits.values():
        if not figures.circuits[circuit.id].branch:
            continue
        for pole in figures.loads[circuit.id].poles:
            # Above the rating even without its quarter: circuit-overloaded speaks of that.
            if pole.rating_a is None or pole.least_a <= pole.rating_a:
                yield from _judged(house, pole)


def _judged(house: House, pole: PoleLoad) -> Iterator[Fault | CannotTell]:
    unread = [each for each in pole.draws if each.amps.value is None and each.continuous is not False]
    place = house.breakers[pole.breaker].place
    about = (pole.breaker, pole.circuit)
    if pole.rating_a is None:
        if pole.continuous_a or unread:
            yield CannotTell(about, (f"the rating of {pole.breaker}",), place)
    elif pole.continuous_a and pole.least_sized_a > pole.rating_a:
        yield _fault(house, pole)
    elif unread:
        yield CannotTell(about, tuple(lack for each in unread for lack in each.amps.lacks), unread[0].place)
    elif pole.perhaps_sized_a > pole.rating_a:
        needs = tuple(f"whether {each.id} runs for three hours or more" for each in pole.unsure)
        yield CannotTell(about, needs, pole.unsure[0].place)


def _fault(house: House, pole: PoleLoad) -> Fault:
    long = [each for each in pole.draws if each.continuous and each.amps.value is not None]
    assert pole.rating_a is not None
    more = " together with the rest of its load" if len(long) < len(pole.draws) else ""
    return Fault(
        place=house.breakers[pole.breaker].place,
        about=(pole.breaker, pole.circuit, *(each.id for each in long)),
        found=f"Breaker {pole.breaker} is rated {amps(pole.rating_a)}, and "
        f"{listed(tuple(each.name for each in long))} may run for hours at "
        f"{amps(pole.continuous_a)}{more}.",
        allowed=f"A rating of at least {amps(pole.least_sized_a)}.",
        because="For hours on end a breaker carries four fifths of its rating; above that it opens in use.",
        do="Move a load to another circuit, or put in a larger breaker if wire and equipment allow it.",
        working=(*pole.load.steps, *pole.sized.steps),
        edition=house.circuits[pole.circuit].edition,
    )
