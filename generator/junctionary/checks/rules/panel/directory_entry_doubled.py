"""Two entries on a panel's door say the same.

Why it matters: whoever switches off the one they find first believes the place is dead, and the
    other breaker still feeds it.
What to do: add to each what tells it from the other, such as the wall, the room or the thing.
Cannot tell: when what the door says of a breaker is not recorded. Two breakers of one circuit may
    say the same; entries that are vague have a check of their own.
Stands: on the breaker's line, each that says what an earlier one says.
"""

from collections.abc import Iterator

from junctionary.checks.directory import feeding, folded, vague_because
from junctionary.checks.finding import DEFECT, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Breaker, House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "408.4(A)"),), ENERGISED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 20 A, feeds: left, says: Kitchen counter}
  3: {rating: 20 A, feeds: right, says: "kitchen  counter."}    #! directory-entry-doubled
[circuits/left.yaml]
circuit: left
name: Counter left
[circuits/right.yaml]
circuit: right
name: Counter right
"""

PASSES = FAILS.replace(
    '"kitchen  counter."}    #! directory-entry-doubled', '"Kitchen counter, right of the sink"}'
)

UNTOLD = PASSES.replace(", says: Kitchen counter}", "}")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The entries of each panel, one against those before it."""
    for panel in house.panels.values():
        if not panel.breakers and not panel.fillers:
            yield CannotTell((panel.id,), (f"the breakers of panel {panel.id}",), panel.place)
        silent = [each.id for each in feeding(panel) if each.says is None]
        if silent:
            yield CannotTell(
                (panel.id, *silent), (f"what the door says of {', '.join(silent)}",), panel.place
            )
        first: dict[str, Breaker] = {}
        for breaker in feeding(panel):
            if breaker.says is None or vague_because(breaker.says, house):
                continue
            other = first.setdefault(folded(breaker.says), breaker)
            same_circuit = isinstance(breaker.feeds, str) and breaker.feeds == other.feeds
            if other is not breaker and not same_circuit:
                fed = (each.feeds for each in (breaker, other) if isinstance(each.feeds, str))
                yield Fault(
                    place=breaker.place,
                    about=(breaker.id, other.id, *fed),
                    found=f'The door says "{breaker.says}" of {breaker.id}, as it does of {other.id}.',
                    allowed="Every circuit told apart from all others.",
                    because="Whoever switches off the first one found believes the place is dead.",
                    do="Add to each entry what tells it from the other.",
                    edition=panel.edition,
                )
