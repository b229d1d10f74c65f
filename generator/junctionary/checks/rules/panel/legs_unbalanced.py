"""The two legs of the service differ by more than a fifth of the heavier, and by a circuit's worth.

Why it matters: the fuller leg sets what the service can give, so room on the other goes unused;
    the neutral carries the difference, and the voltage at lamps on the heavy leg drops with every
    load that starts.
What to do: move a 120 V circuit of the heavy leg to a space on the other. Keep the poles of a
    multiwire circuit on two legs when you do.
Cannot tell: when the legs of a breaker, the floor area, or what a load draws is not recorded.
    Counted are the nameplates of loads with circuits of their own, 1500 VA for each small-appliance and
    laundry circuit, and general lighting spread evenly over its circuits; a fifth, and 15 A at least,
    is our threshold, and common practice.
Stands: on the line of the panel where the service is disconnected.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.legs import LEAST_A, WITHIN_PERCENT
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import decimal

RULE = Rule(
    ADVICE,
    (cite("practice", "Legs that differ by no more than a fifth of the heavier, or by less than 15 A."),),
    ROUGHED,
)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
floor_area: 300 ft2
[panels/main.yaml]
panel: main    #! legs-unbalanced
spaces: 8
fed_by: service
breakers:
  1: {rating: 20 A, feeds: north, says: "Kitchen counter, north"}
  5: {rating: 20 A, feeds: west, says: "Kitchen counter, west"}
  3: {rating: 15 A, feeds: den, says: "Den, receptacles and lights"}
[circuits/north.yaml]
circuit: north
name: Kitchen counter, north
purpose: small-appliance
[circuits/west.yaml]
circuit: west
name: Kitchen counter, west
purpose: small-appliance
[circuits/den.yaml]
circuit: den
name: Den
purpose: general
"""

PASSES = (
    FAILS.replace("  5: {rating", "  7: {rating")
    .replace("300 ft2", "60 ft2")
    .replace("    #! legs-unbalanced", "")
)

UNTOLD = PASSES.replace("floor_area: 60 ft2\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Leg A against leg B, where there are two."""
    service = house.record.service
    if service and service.system == "120 V":
        return
    legs = figures.service.legs
    panel = house.panels.get(figures.service.panel or "")
    place = panel.place if panel else house.record.place
    about = (panel.id,) if panel else tuple(house.panels) or ("service",)
    if legs.balanced is None:
        yield CannotTell(about, legs.unbalance.lacks, place)
    elif legs.balanced is False and legs.unbalance.value is not None:
        light, heavy = sorted(legs.legs, key=lambda each: each.least_va)
        yield Fault(
            place=place,
            about=about,
            found=f"Leg {heavy.leg} carries {decimal(heavy.least_a, 0)} A and leg {light.leg} "
            f"{decimal(light.least_a, 0)} A: they differ by {decimal(legs.unbalance.value, 0)} % "
            "of the heavier.",
            allowed=f"At most {WITHIN_PERCENT} % of the heavier, or less than {LEAST_A} A.",
            because="The heavy leg sets what the service can give, and the neutral carries the difference.",
            do=f"Move a 120 V circuit from leg {heavy.leg} to a space on leg {light.leg}.",
            working=legs.unbalance.steps,
            edition=figures.service.edition,
        )
