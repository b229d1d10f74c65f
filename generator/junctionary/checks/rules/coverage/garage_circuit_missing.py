"""A garage with power has no 20 A circuit of its own.

Why it matters: tools and chargers in the garage overload a circuit that also feeds the house.
What to do: run a 20 A circuit for the garage's receptacles.
Cannot tell: when the purpose of a circuit, its breaker or its rating is not recorded and would decide.
    A garage that stands apart is asked only if it has power: a box, a panel or a circuit in it or its
    building; with none recorded, and not every box of it, that cannot be told. Rooms built before the
    2017 edition are left alone. A multiwire circuit counts for each hot.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import has_power, rooms_of, shortage
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "210.11(C)(4)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 4
breakers:
  2: blank
  4: blank
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Garage, one"}
  3: {rating: 20 A, guards: [gfci, afci], feeds: two, says: "Garage, two"}
[circuits/one.yaml]
circuit: one
name: Garage, one
purpose: general
serves: [garage]
[circuits/two.yaml]
circuit: two
name: Garage, two
purpose: general
serves: [garage]
[rooms/garage.yaml]
room: garage    #! garage-circuit-missing
name: Garage
kind: garage
"""

PASSES = FAILS.replace("purpose: general", "purpose: garage").replace("    #! garage-circuit-missing", "")

UNTOLD = FAILS.replace("purpose: general\n", "").replace("    #! garage-circuit-missing", "")

NEEDED = 1
ASKED_SINCE = 2017


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The garages with power, against the circuits of that purpose in the whole house."""
    short = shortage(house, rooms_of(house, "garage"), "garage", NEEDED, ASKED_SINCE)
    rooms = [each for each in rooms_of(house, "garage") if edition_year(each.edition) >= ASKED_SINCE]
    powered = {each.id: has_power(house, each) for each in rooms}
    asked = [each for each in rooms if powered[each.id] is not False]
    if short is None or not asked:
        return
    counted = short[1]
    room = next((each for each in asked if powered[each.id]), None)
    if room is None:
        yield CannotTell((asked[0].id,), (f"whether {asked[0].id} has power",), asked[0].place)
        return
    if counted.lacks:
        yield CannotTell((room.id,), counted.lacks, room.place)
        return
    yield Fault(
        place=room.place,
        about=(room.id,),
        found=f"No 20 A circuit of the house is for {room.name}.",
        allowed="At least one 20 A circuit for the garage's receptacles.",
        because="Tools there overload a circuit that also feeds the house.",
        do="Run a 20 A circuit for the garage's receptacles.",
        edition=room.edition,
    )
