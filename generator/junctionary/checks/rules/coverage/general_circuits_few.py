"""A dwelling has fewer circuits for general lighting than its floor area asks for.

Why it matters: lamps and what is plugged in all over the house then hang on too few breakers. One of them
    opens every other evening, half of the house goes dark with it, and somebody puts in a larger one.
What to do: add circuits for lighting and receptacles until together they carry what the message says.
Cannot tell: when the floor area, the purpose of a circuit or the rating of a breaker is not recorded, or a
    panel's space may hide a circuit. Counted are circuits for general use, lighting, receptacles, outdoors
    and smoke alarms, a multiwire one for each hot; those that the code asks for beside them, as for
    bathrooms, are not. A house built before the 2008 edition is left alone.
Stands: on the line of the panel where the service is disconnected.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import HELD_SINCE, spaces_untold
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.figures.lighting_circuits import lighting_shared
from junctionary.figures.service import service_panel
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.11(A)"), cite("nec-2023", "220.41")), ROUGHED)

FAILS = """
[house.yaml]
house: Example
built: 2024
reference: nec-2023
floor_area: 1500 ft2
[panels/main.yaml]
panel: main    #! general-circuits-few
spaces: 4
fed_by: service
bonded: true
breakers:
  1: {rating: 15 A, feeds: up, says: "Upper floor, lights and receptacles"}
  2: {rating: 15 A, feeds: down, says: "Ground floor, lights and receptacles"}
  3: blank
  4: blank
[circuits/up.yaml]
circuit: up
name: Upper floor
purpose: general
[circuits/down.yaml]
circuit: down
name: Ground floor
purpose: general
"""

PASSES = FAILS.replace("rating: 15 A", "rating: 20 A").replace("    #! general-circuits-few", "")

UNTOLD = PASSES.replace("floor_area: 1500 ft2\n", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The circuits for general lighting against the floor area."""
    panel = service_panel(house)
    built = house.record.built
    if panel is None or (built is not None and built < HELD_SINCE):
        return
    shared = lighting_shared(house)
    if shared.needs.value is not None and shared.carries_a >= shared.needs.value:
        return
    needs = [*shared.needs.lacks, *shared.lacks, *spaces_untold(house)]
    needs += [
        f"the purpose of circuit {each.id}" for each in house.circuits.values() if not each.record.purpose
    ]
    if needs or shared.needs.value is None:
        yield CannotTell((panel.id, *shared.circuits), tuple(needs), panel.place)
        return
    yield Fault(
        place=panel.place,
        about=(panel.id, *shared.circuits),
        found=f"The circuits for general lighting carry {amps(shared.carries_a)} together.",
        allowed=f"For this floor area, {amps(shared.needs.value)} or more.",
        because="Too much of the house hangs on each, so that they open in use.",
        do="Add circuits of 15 or 20 A for lighting and receptacles.",
        working=shared.needs.steps,
        edition=house.edition,
    )
