"""The breaker by which a generator, a battery or a solar plant enters is larger than its cable or its inlet.

Why it matters: seen from the panel that breaker is all that guards the cable. Should it ever be on together
    with the utility, by a slip or a broken interlock, a fault in the inlet burns the cable and opens nothing.
What to do: put in the breaker that the cable and the inlet allow; or a larger inlet with a larger cable.
Cannot tell: when the cables of the source, the breaker's rating, or what warms a cable on its way is not
    recorded. The inlet's own rating counts where its kind tells it.
Stands: on the breaker's line.
"""

from collections.abc import Iterator
from fractions import Fraction

from junctionary.checks.finding import HAZARD, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, breaker_named
from junctionary.records.house import Source
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(HAZARD, (cite("nec-2023", "240.4"), cite("nec-2023", "240.4(D)")), ROUGHED)

FAILS = """
[house.yaml]
house: Example
reference: nec-2023
sources:
  - {id: genny, is: generator-inlet, at: I1, rating: 30 A, enters: main/2+4, without_utility: runs,
     runs: [{id: g1, cable: 10/3 UF-B, from: I1, to: main, length: 20 ft}]}
[panels/main.yaml]
panel: main
main: 100 A
rating: 100 A
spaces: 8
fed_by: service
bonded: true
breakers:
  2+4: {rating: 50 A, feeds: genny, says: Generator inlet}    #! source-breaker-too-large
interlocks: [[main, 2+4]]
[rooms/yard.yaml]
room: yard
name: Yard
kind: outdoors
[boxes/yard.yaml]
room: yard
boxes:
  I1: {devices: {i1: inlet}, makeup: end-of-run, cover: in-use}
[devices/all.yaml]
devices:
  inlet: {is: inlet, face: L14-30, rating: 30 A}
"""

PASSES = FAILS.replace("rating: 50 A, feeds", "rating: 30 A, feeds").replace(
    "    #! source-breaker-too-large", ""
)

UNTOLD = PASSES.replace("cable: 10/3 UF-B", "cable: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each second source that enters by a breaker, by its cables and its inlet."""
    for source in house.sources.values():
        breaker = breaker_named(house, source.enters) if source.enters else None
        if breaker is None:
            continue
        runs = [each.id for each in house.runs.values() if each.circuit == source.id]
        limits = {f"run {each}": figures.wires[each].breaker.value for each in runs}
        limits |= _inlets(house, source)
        known = {what: most for what, most in limits.items() if most is not None}
        least = min(known, key=lambda each: known[each], default=None)
        about = (breaker.id, source.id, *runs)
        rating = breaker.rating.to("A") if isinstance(breaker.rating, Quantity) else None
        if rating is not None and least is not None and rating > known[least]:
            yield Fault(
                place=breaker.place,
                about=about,
                found=f"Breaker {breaker.id}, by which {source.id} enters, is rated {amps(rating)}, and "
                f"{least} allows {amps(known[least])}.",
                allowed=f"At most {amps(known[least])} for that source.",
                because="Seen from the panel that breaker is all that guards the cable and the inlet.",
                do=f"Put in a breaker of {amps(known[least])}, or a larger inlet with a larger cable.",
                edition=house.panels[breaker.panel].edition,
            )
            continue
        needs = [] if rating is not None else [f"the rating of {breaker.id}"]
        needs += [] if runs else [f"the cables of {source.id}"]
        needs += [lack for each in runs for lack in figures.wires[each].breaker.lacks]
        if needs:
            yield CannotTell(about, tuple(dict.fromkeys(needs)), breaker.place)


def _inlets(house: House, source: Source) -> dict[str, Fraction]:
    """The inlets in the source's box that tell a rating, in A."""
    box = house.boxes.get(source.at or "")
    inlets = [each for each in box.devices if each.kind.is_ == "inlet"] if box is not None else []
    return {f"inlet {each.id}": each.kind.rating.to("A") for each in inlets if each.kind.rating is not None}
