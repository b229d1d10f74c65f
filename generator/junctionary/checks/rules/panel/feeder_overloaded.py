"""The load fed through a feeder is more than its breaker may carry.

Why it matters: the breaker at the supply end opens, and everything behind the second panel goes
    dark at once; or it carries more than it should for hours and ages.
What to do: move circuits back to the first panel, keep two loads from running together, or put in
    a larger feeder with its breaker: the conductors are held against that breaker.
Cannot tell: when the feeder's breaker or its rating, or what hangs behind it, is not recorded and
    the load that is recorded fits. The load is worked out by the standard method, general lighting by
    the share of the dwelling's lighting circuits that the second panel feeds. A car charger runs for hours,
    so that breaker and conductors must be for a quarter more than it draws. Fractions of an ampere below
    a half are dropped.
Stands: on the line of the panel that is fed.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.formulas.sums import plain
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import decimal

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "215.2(A)"),
        cite("nec-2023", "220.45"),
        cite("nec-2023", "220.53"),
        cite("nec-2023", "215.3"),
    ),
    ROUGHED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1+3: {rating: 30 A, feeds: shed-feeder, says: "Shed, its panel"}
[panels/shed.yaml]
panel: shed    #! feeder-overloaded
spaces: 8
fed_by: shed-feeder
breakers:
  1+3: {rating: 30 A, feeds: kiln, says: "Kiln, shed"}
  5: {rating: 20 A, feeds: bench, says: "Bench, shed"}
[circuits/feeder.yaml]
circuit: shed-feeder
name: Feeder to the shed
purpose: feeder
runs: [{id: f1, cable: 10/3 NM-B, from: main, to: shed, length: 60 ft}]
[circuits/kiln.yaml]
circuit: kiln
name: Kiln
purpose: appliance
loads: [{id: kiln-1, is: other, draws: 5.7 kW, volts: 240 V, fastened: true}]
[circuits/bench.yaml]
circuit: bench
name: Bench
purpose: appliance
loads: [{id: saw, is: tool, draws: 1800 W, motor: true}]
"""

PASSES = FAILS.replace("draws: 5.7 kW", "draws: 3 kW").replace("    #! feeder-overloaded", "")

UNTOLD = PASSES.replace(", draws: 1800 W", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each feeder's breaker against the load behind it."""
    for feeder in figures.feeders.values():
        panel = house.panels[feeder.panel]
        about = (panel.id, feeder.circuit, *((feeder.breaker,) if feeder.breaker else ()))
        load = feeder.load
        if feeder.carries_load is None:
            yield CannotTell(about, tuple(dict.fromkeys((*feeder.lacks, *feeder.sized.lacks))), panel.place)
        elif feeder.carries_load is False and feeder.breaker_a is not None:
            least = "at least " if load.amps.lacks else ""
            rating = plain(feeder.breaker_a)
            longer = (
                f", {decimal(feeder.sized_a, 1)} A with the quarter more that a car charger asks for,"
                if feeder.sized_a > load.least_a
                else ""
            )
            yield Fault(
                place=panel.place,
                about=about,
                found=f"The load of panel {panel.id} is {least}{decimal(load.least_a, 1)} A"
                f"{longer or ','} and breaker "
                f"{feeder.breaker} that feeds it is rated {rating} A.",
                allowed=f"At most {rating} A through that breaker.",
                because="It opens and the whole panel goes dark, or carries too much for hours.",
                do="Move circuits to the panel before it, or put in a larger feeder with its breaker.",
                working=(*load.va.steps, *(load.amps.steps if not longer else feeder.sized.steps)),
                edition=load.edition,
            )
