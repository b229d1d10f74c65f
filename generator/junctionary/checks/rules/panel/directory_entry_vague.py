"""An entry on the panel's door does not tell its circuit from the others.

Why it matters: in an emergency somebody who does not know the house reads the door. "Lights" or
    "Bedroom" leaves them to try breakers one after another, or to trust the wrong one.
What to do: write the place and the thing: "Upper hall, lights and receptacles". The directory card
    of this manual is made from the record and may be put on the door.
Cannot tell: when a breaker feeds something and what the door says of it is not recorded, or when no
    breaker of a panel is recorded. An entry is
    taken for vague when every word of it would fit another circuit as well: a use with no place, a
    place with no use, or a kind of room of which the house has several. A place with no use is enough
    where it is one room that no other circuit serves. Fillers and breakers that feed nothing are
    not judged.
Stands: on the breaker's line.
"""

from collections.abc import Iterator

from junctionary.checks.directory import feeding, vague_because
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
  1: {rating: 15 A, feeds: up, says: Lights}    #! directory-entry-vague
  3: {rating: 20 A, feeds: unknown, says: "?"}    #! directory-entry-vague
  5: unused
[circuits/up.yaml]
circuit: up
name: Upper hall
"""

PASSES = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, feeds: up, says: "Upper hall, lights"}
  3: {rating: 20 A, feeds: unknown, says: Perhaps the old well pump}
  5: unused
[circuits/up.yaml]
circuit: up
name: Upper hall
"""

UNTOLD = PASSES.replace(', says: "Upper hall, lights"', "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each breaker that feeds something, by the words on the door."""
    for panel in house.panels.values():
        if not panel.breakers and not panel.fillers:
            yield CannotTell((panel.id,), (f"the breakers of panel {panel.id}",), panel.place)
        for breaker in feeding(panel):
            about = (breaker.id, *([breaker.feeds] if isinstance(breaker.feeds, str) else []))
            if breaker.says is None:
                yield CannotTell(about, (f"what the door says of {breaker.id}",), breaker.place)
            elif why := vague_because(breaker.says, house):
                yield Fault(
                    place=breaker.place,
                    about=about,
                    found=f'The door says "{breaker.says}" of {breaker.id}: {why}.',
                    allowed="A clear and specific purpose, told apart from every other circuit.",
                    because="Whoever must switch it off in a hurry cannot know which it is.",
                    do="Write the place and the thing it feeds on the door, and in the record.",
                    edition=panel.edition,
                )
