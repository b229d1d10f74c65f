"""The panel's door says other than what the breaker feeds.

Why it matters: somebody switches off what the door names and opens a box that is still live, or leaves
    the right breaker on while something burns.
What to do: put the card made from this record on the door, or correct the circuit in the record if the
    door is right. A breaker-off test tells which of the two is.
Cannot tell: when what the door says, what a breaker feeds, or what its circuit serves is not recorded. An
    entry is taken for wrong only where it names a room of the house or a kind of appliance, the circuit
    touches nothing of what it names, and the two have no word of their own in common. What names neither
    is not judged.
Stands: on the breaker's line.
"""

from collections.abc import Iterator

from junctionary.checks.directory import feeding
from junctionary.checks.door import any_named, doubts, named_in, served_by, shares_a_word
from junctionary.checks.finding import DEFECT, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Breaker, Circuit, House, Panel
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "408.4(A)"),), ENERGISED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1+3: {rating: 30 A, feeds: heater, says: Clothes dryer}    #! directory-entry-wrong
  2: {rating: 15 A, feeds: den, says: "Kitchen, lights"}    #! directory-entry-wrong
[circuits/heater.yaml]
circuit: heater
name: Water heater
serves: [cellar]
loads:
  - {id: tank, is: water-heater}
[circuits/den.yaml]
circuit: den
name: Den
serves: [den]
[rooms/den.yaml]
room: den
name: Den
kind: den
[rooms/kitchen.yaml]
room: kitchen
name: Kitchen
kind: kitchen
[rooms/cellar.yaml]
room: cellar
name: Cellar
kind: cellar
"""

PASSES = (
    FAILS.replace("Clothes dryer}    #! directory-entry-wrong", '"Hot water tank, cellar"}')
    .replace('"Kitchen, lights"}    #! directory-entry-wrong', '"Den and kitchen, lights"}')
)  # fmt: skip

UNTOLD = PASSES.replace("Den and kitchen", "Kitchen").replace(
    "name: Den\nserves: [den]", "name: Second circuit"
)


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each breaker's entry against its circuit."""
    for panel in house.panels.values():
        for breaker in feeding(panel):
            circuit = house.circuits.get(breaker.feeds) if isinstance(breaker.feeds, str) else None
            if breaker.says is None:
                needs = (f"what the door says of {breaker.id}",)
                yield CannotTell((breaker.id,), needs, breaker.place)
            elif not isinstance(breaker.feeds, str):
                yield CannotTell((breaker.id,), (f"what {breaker.id} feeds",), breaker.place)
            elif circuit is not None:
                yield from _judged(house, figures, panel, breaker, breaker.says, circuit)


def _judged(
    house: House, figures: Figures, panel: Panel, breaker: Breaker, says: str, circuit: Circuit
) -> Iterator[Fault | CannotTell]:
    named = named_in(says, house)
    served = served_by(circuit, house, figures)
    if not (named.rooms or named.loads) or any_named(named, served) or shares_a_word(says, served):
        return
    if needs := tuple(doubts(named, served, circuit, house)):
        yield CannotTell((breaker.id, circuit.id), needs, breaker.place)
        return
    rooms = ", ".join(house.rooms[each].name for each in circuit.rooms if each in house.rooms)
    feeds = f"{circuit.name} ({rooms})" if rooms else circuit.name
    yield Fault(
        place=breaker.place,
        about=(breaker.id, circuit.id),
        found=f'The door says "{says}" of {breaker.id}, which feeds {feeds}.',
        allowed="The door says what the breaker feeds.",
        because="Whoever goes by the door opens a box that is still live.",
        do=f"Find out by a breaker-off test what {breaker.id} feeds, and correct the door or the record.",
        edition=panel.edition,
    )
