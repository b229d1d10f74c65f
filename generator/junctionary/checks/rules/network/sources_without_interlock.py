"""A second source can be on the wires together with the utility.

Why it matters: it feeds back into the street, where people work on lines they take for dead; and when
    the utility comes back, the two meet out of step.
What to do: fit a listed interlock or transfer switch, so that one must be off before the other is on.
    Until then leave the source unplugged.
Cannot tell: when the record does not say where a source enters, or what it does without the utility.
    One that stops, or that parts itself from the utility by its own listed gear, is left alone.
Stands: on the line of the breaker it enters by, or the panel's.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import Breaker, House
from junctionary.house.network import Network, breaker_named
from junctionary.house.network.panel_wiring import MAIN
from junctionary.sources import cite

RULE = Rule(HAZARD, (cite("nec-2023", "702.5"),), MADE_UP)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
sources:
  - {id: genny, is: generator-inlet, enters: main/2+4, without_utility: runs}
[panels/main.yaml]
panel: main
main: 100 A
spaces: 8
breakers:
  2+4: {rating: 30 A, feeds: genny, says: "Generator"}    #! sources-without-interlock
"""

PASSES = FAILS.replace("spaces: 8", "spaces: 8\ninterlocks: [[main, 2+4]]").replace(
    "    #! sources-without-interlock", ""
)

UNTOLD = PASSES.replace(", without_utility: runs", "").replace("interlocks: [[main, 2+4]]\n", "")

PARTED = ("stops", "islands")
"""What keeps a source from the street by itself, by its listing."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each second source, by where it enters and what keeps it from the utility."""
    for source in house.sources.values():
        breaker = breaker_named(house, source.enters) if source.enters else None
        panel = house.panels.get(source.enters or "")
        place = breaker.place if breaker else panel.place if panel else source.place_of("id")
        about = (source.id, *((breaker.id,) if breaker else ()))
        if source.without_utility in PARTED or (breaker and f"{breaker.panel}/{MAIN}" in _apart(breaker)):
            continue
        if source.without_utility is None:
            yield CannotTell(about, (f"what {source.id} does when the utility is gone",), place)
        elif breaker is None:
            entering = f"where {source.id} enters, and what keeps it from the utility"
            yield CannotTell(about, (entering,), place)
        else:
            yield Fault(
                place=place,
                about=about,
                found=f"Breaker {breaker.id}, by which {source.id} enters, is not interlocked with the main.",
                allowed="The source or the utility, never both.",
                because="It can feed back into the street, or meet the utility out of step.",
                do="Fit a listed interlock or a transfer switch; until then leave the source unplugged.",
                edition=house.panels[breaker.panel].edition,
            )


def _apart(breaker: Breaker) -> tuple[str, ...]:
    """What can never be on together with a breaker."""
    return breaker.interlocked_with
