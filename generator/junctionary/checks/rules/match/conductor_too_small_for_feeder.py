"""A feeder's conductors, or the service conductors, are too small for what guards or loads them.

Why it matters: everything behind them runs through these wires, often for hours on end; where the
    breaker is too large for them nothing opens before the insulation fails.
What to do: put in the breaker the conductors allow and hold the load against it, or replace them
    with larger ones. Service conductors are the utility's and an electrician's matter.
Cannot tell: when the cable, its insulation, its surroundings or the breaker is not recorded, or the
    metal of the service conductors or the rating of the service. Conductors that carry a dwelling's
    whole load at 120/240 V, 100 to 400 A, need only 83 % of the rating; others may have the next standard
    breaker above what they carry, but must carry the calculated load. Service conductors are taken at
    75 °C in air of 30 °C. Whether the breaker carries the load has a check of its own.
Stands: on the line of the feeder's run, or of the service conductors in house.yaml.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import FeederLoad, Figures, ServiceLoad
from junctionary.formulas.dwelling_service import whole_amps
from junctionary.formulas.sums import plain
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import decimal

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "215.2(A)"),
        cite("nec-2023", "310.12"),
        cite("nec-2023", "310.16"),
        cite("nec-2023", "240.4(B)"),
        cite("nec-2023", "110.14(C)(1)"),
    ),
    ROUGHED,
)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
service:
  system: 120/240 V
  rating: 200 A
  conductors: {size: 2/0 AWG, metal: aluminium}    #! conductor-too-small-for-feeder
[panels/main.yaml]
panel: main
main: 200 A
spaces: 8
fed_by: service
breakers:
  1+3: {rating: 60 A, feeds: shed-feeder, says: "Shed, its panel"}
[panels/shed.yaml]
panel: shed
spaces: 8
fed_by: shed-feeder
breakers: {1: {rating: 20 A, feeds: bench, says: "Bench, shed"}}
[circuits/feeder.yaml]
circuit: shed-feeder
name: Feeder to the shed
purpose: feeder
runs:
  - {id: f1, cable: 8/3 NM-B, from: main, to: shed, length: 60 ft}    #! conductor-too-small-for-feeder
[circuits/bench.yaml]
circuit: bench
name: Bench
purpose: appliance
loads: [{id: saw, is: tool, draws: 1800 W, motor: true}]
"""

PASSES = (
    FAILS.replace("8/3 NM-B", "6/3 NM-B")
    .replace("2/0 AWG", "4/0 AWG")
    .replace("    #! conductor-too-small-for-feeder", "")
)

UNTOLD = PASSES.replace("cable: 6/3 NM-B", "cable: unknown").replace(", metal: aluminium", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each feeder's conductors, then the service's."""
    for feeder in figures.feeders.values():
        yield from _feeder(house, feeder)
    yield from _service(house, figures.service)


def _feeder(house: House, feeder: FeederLoad) -> Iterator[Fault | CannotTell]:
    place = feeder.wire.place if feeder.wire else house.circuits[feeder.circuit].place
    about = (feeder.wire.name if feeder.wire else feeder.circuit, feeder.circuit, feeder.panel)
    if feeder.wire_fits is None:
        needs = (*feeder.lacks, *feeder.allowed.lacks, *feeder.ampacity.lacks)
        yield CannotTell(about, tuple(dict.fromkeys(needs)), place)
    elif feeder.wire_fits is False and feeder.wire is not None:
        wire, carries = feeder.wire, feeder.wire.ampacity.value
        allowed = feeder.allowed.value if feeder.allowed.value is not None else wire.breaker.value
        rating = (
            f"breaker {feeder.breaker} of {plain(feeder.breaker_a)} A" if feeder.breaker_a else "its load"
        )
        assert carries is not None
        assert allowed is not None
        within = (
            f" It must carry {decimal(feeder.sized_a, 1)} A." if whole_amps(feeder.sized_a) > carries else ""
        )
        yield Fault(
            place=place,
            about=about,
            found=f"Run {wire.name} is {wire.what}, which carries {plain(carries)} A, "
            f"behind {rating}.{within}",
            allowed=f"At most a {plain(allowed)} A breaker, and no load above {plain(carries)} A.",
            because="The feeder overheats before its breaker opens.",
            do=f"Put in a {plain(allowed)} A breaker and keep the load within it, "
            "or replace the feeder's conductors.",
            working=feeder.allowed.steps or wire.breaker.steps,
            edition=feeder.load.edition,
        )


def _service(house: House, service: ServiceLoad) -> Iterator[Fault | CannotTell]:
    wire = service.wire
    told = house.record.service
    panel = house.panels.get(service.panel or "")
    about = (panel.id,) if panel else ("service",)
    if wire is None:
        place = told.place if told is not None else panel.place if panel is not None else None
        if place is not None:
            yield CannotTell(about, ("the size of the service conductors",), place)
        return
    if wire.fits is None:
        needs = tuple(dict.fromkeys((*wire.carries.lacks, *wire.needs.lacks)))
        yield CannotTell(about, needs, wire.place)
    elif wire.fits is False and wire.rating_a is not None:
        larger = f"{wire.least} {wire.metal}" if wire.least else "larger conductors"
        carries = plain(wire.carries.value or wire.rating_a)
        rating, needed = plain(wire.rating_a), plain(wire.needs.value or wire.rating_a)
        yield Fault(
            place=wire.place,
            about=about,
            found=f"The service conductors are {wire.size} {wire.metal}, which carry {carries} A, "
            f"for a service of {rating} A.",
            allowed=f"At least {needed} A for a service of {rating} A."
            if wire.by_share
            else f"A service of at most {needed} A.",
            because="All that the house draws runs through them, and the utility's fuse guards them late.",
            do=f"Have an electrician and the utility put in {larger}, or a smaller main breaker.",
            working=(*wire.carries.steps, *wire.needs.steps),
            edition=service.edition,
        )
