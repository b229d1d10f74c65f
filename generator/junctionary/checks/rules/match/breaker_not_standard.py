"""A breaker or fuse is of a rating that is not a standard one.

Why it matters: no such device is listed. It was read wrongly, or it is not what it is taken for, and then
    nothing that rests on its rating holds.
What to do: read it again with the power off, and correct the record; or put in a breaker of a standard
    rating that the wire allows.
Cannot tell: when its rating is not recorded.
Stands: on the breaker's line, and for a main on its panel's line `main`.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.formulas.standard_rating import (
    breaker_ratings,
    fuse_ratings,
    rating_at_or_above,
    rating_at_or_below,
)
from junctionary.formulas.sums import plain
from junctionary.house.model import Breaker, House
from junctionary.house.network import Network
from junctionary.records import words
from junctionary.records.values import NONE
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(DEFECT, (cite("nec-2023", "240.6(A)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 22 A, feeds: den, says: "Den, receptacles"}    #! breaker-not-standard
[circuits/den.yaml]
circuit: den
name: Den receptacles
"""

PASSES = FAILS.replace("22 A", "20 A").replace("    #! breaker-not-standard", "")

UNTOLD = FAILS.replace("22 A", "unknown").replace("    #! breaker-not-standard", "")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Every breaker and fuse of every panel, the mains among them."""
    for panel in house.panels.values():
        fused = panel.record.kind == "fuse-panel"
        for breaker in panel.breakers:
            if isinstance(breaker.rating, Quantity):
                if breaker.rating.to("A") not in _standard(breaker, fused, panel.edition):
                    yield _fault(breaker, breaker.rating, panel.edition)
            elif breaker.feeds is not NONE:
                yield CannotTell((breaker.id,), (f"the rating of {breaker.id}",), breaker.place)


def _standard(breaker: Breaker, fused: bool, edition: str) -> tuple[object, ...]:
    fuse = fused or breaker.record.kind in words.BREAKER_KINDS
    return fuse_ratings() if fuse else breaker_ratings(edition)


def _fault(breaker: Breaker, rating: Quantity, edition: str) -> Fault:
    around = (rating_at_or_below(rating.to("A"), edition), rating_at_or_above(rating.to("A"), edition))
    near = " or ".join(f"{plain(each)} A" for each in around if each is not None)
    feeds = (breaker.feeds,) if isinstance(breaker.feeds, str) else ()
    return Fault(
        place=breaker.place,
        about=(breaker.id, *feeds),
        found=f"Breaker {breaker.id} is recorded as {rating}.",
        allowed=f"A standard rating: the nearest are {near}." if near else "A standard rating.",
        because="No such breaker is listed, and all that rests on its rating is in doubt.",
        do="Read it again, and correct the record; or put in a standard breaker that the wire allows.",
        edition=edition,
    )
