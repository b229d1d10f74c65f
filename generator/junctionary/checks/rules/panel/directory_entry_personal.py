"""An entry on the panel's door goes by who lives there.

Why it matters: whoever stands before the panel in an emergency, or buys the house, does not know whose
    room is whose; and next year it is another's.
What to do: write the place instead, which stays: "North bedroom, upper floor".
Cannot tell: when what the door says of a breaker is not recorded. Taken for personal are words such as
    mum, kids, tenant or my, and whatever belongs to somebody (Kim's room); a bare name is not known for
    one.
Stands: on the breaker's line.
"""

from collections.abc import Iterator

from junctionary.checks.directory import feeding, person_in
from junctionary.checks.finding import DEFECT, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "408.4(A)"),), ENERGISED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: up, says: "Kim's room"}    #! directory-entry-personal
  3: {rating: 15 A, feeds: down, says: "Kids' bedroom, lights"}    #! directory-entry-personal
[circuits/up.yaml]
circuit: up
name: North bedroom
[circuits/down.yaml]
circuit: down
name: South bedroom
"""

PASSES = (
    FAILS.replace("\"Kim's room\"}    #! directory-entry-personal", "North bedroom receptacles}")
    .replace("\"Kids' bedroom, lights\"}    #! directory-entry-personal", "\"Furnace's outlet, cellar\"}")
)  # fmt: skip

UNTOLD = PASSES.replace(", says: North bedroom receptacles", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each breaker that feeds something, by the words on the door."""
    for panel in house.panels.values():
        for breaker in feeding(panel):
            about = (breaker.id, *([breaker.feeds] if isinstance(breaker.feeds, str) else []))
            if breaker.says is None:
                yield CannotTell(about, (f"what the door says of {breaker.id}",), breaker.place)
            elif person := person_in(breaker.says, house):
                yield Fault(
                    place=breaker.place,
                    about=about,
                    found=f'The door says "{breaker.says}" of {breaker.id}: "{person}" is somebody.',
                    allowed="An entry that does not hang on who lives there.",
                    because="Whoever does not know the household cannot tell which room is meant.",
                    do="Write the place and the thing it feeds on the door, and in the record.",
                    edition=panel.edition,
                )
