"""A kitchen has fewer than two 20 A circuits for small appliances.

Why it matters: a kettle and a toaster together are more than one circuit carries; with one, the
    breaker trips until somebody puts in a larger one.
What to do: run a second 20 A circuit to the counters, and record both with their purpose.
Cannot tell: when the purpose of a circuit, its breaker or its rating is not recorded and would decide.
    Rooms built before the 2008 edition are left alone. A multiwire circuit counts for each hot.
Stands: on the room's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.purposes import rooms_of, shortage
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "210.11(C)(1)"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 4
breakers:
  2: blank
  4: blank
  1: {rating: 20 A, guards: [gfci, afci], feeds: one, says: "Kitchen, one"}
  3: {rating: 20 A, guards: [gfci, afci], feeds: two, says: "Kitchen, two"}
[circuits/one.yaml]
circuit: one
name: Kitchen, one
purpose: small-appliance
serves: [kitchen]
[circuits/two.yaml]
circuit: two
name: Kitchen, two
purpose: general
serves: [kitchen]
[rooms/kitchen.yaml]
room: kitchen    #! small-appliance-circuits-few
name: Kitchen
kind: kitchen
"""

PASSES = FAILS.replace("purpose: general", "purpose: small-appliance").replace(
    "    #! small-appliance-circuits-few", ""
)

UNTOLD = FAILS.replace("purpose: general\n", "").replace("    #! small-appliance-circuits-few", "")

NEEDED = 2


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The kitchen, against the circuits of that purpose in the whole house."""
    short = shortage(house, rooms_of(house, "kitchen"), "small-appliance", NEEDED)
    if short is None:
        return
    room, counted = short
    if counted.lacks:
        yield CannotTell((room.id,), counted.lacks, room.place)
        return
    yield Fault(
        place=room.place,
        about=(room.id,),
        found=f"{room.name} is served by {'one' if counted.circuits else 'no'} 20 A small-appliance circuit.",
        allowed="Two or more 20 A small-appliance circuits.",
        because="A kettle and a toaster together are more than one circuit carries.",
        do="Run another 20 A circuit to the counters.",
        edition=room.edition,
    )
