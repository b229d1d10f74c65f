"""The only receptacle of a circuit is rated below its breaker.

Why it matters: alone on its circuit it may be made to carry all that the breaker lets through, and
    it is not built for that: it heats, chars and burns.
What to do: put in a single receptacle rated as the breaker or above, or a smaller breaker where the
    load allows it.
Cannot tell: when the breaker of the circuit, its rating, or the receptacle's rating or face is not
    recorded. A duplex is two receptacles and is judged by another check, as is a circuit of which
    it is not known whether it has more than one.
Stands: on the receptacle's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.formulas.sums import plain
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "210.21(B)(1)"),
        cite("cfr-29-1926", "1926.404(b)(2)(i)"),
    ),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  2+4: {rating: 30 A, feeds: saw, says: Table saw}
[circuits/saw.yaml]
circuit: saw
name: Table saw
runs:
  - {id: s1, cable: 10/2 NM-B, from: main, to: W1}
[rooms/shop.yaml]
room: shop
name: Workshop
kind: workshop
[boxes/shop.yaml]
room: shop
boxes:
  W1:
    devices: {r1: saw-outlet}    #! single-receptacle-underrated
    marked: {s1.white: black}
    terminals: {r1.x: s1.black, r1.y: s1.white, r1.g: s1.bare}
[devices/all.yaml]
devices:
  saw-outlet: {is: receptacle, face: 6-20R, rating: 20 A, outlets: 1}
"""

PASSES = FAILS.replace("6-20R, rating: 20 A", "6-30R, rating: 30 A").replace(
    "    #! single-receptacle-underrated", ""
)

UNTOLD = PASSES.replace("rating: 30 A, feeds", "rating: unknown, feeds")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """The receptacle of each circuit that has just one."""
    for device, matches in figures.receptacles.items():
        for match in matches:
            if match.count is None or match.count.outlets != 1:
                continue
            place = house.devices[device].place
            about = tuple(each for each in (device, match.circuit, match.breaker) if each is not None)
            if match.fit.fits is None:
                yield CannotTell(about, match.fit.lacks, place)
            elif (
                match.fit.verdict == "too small"
                and match.rating_a is not None
                and match.breaker_a is not None
            ):
                yield Fault(
                    place=place,
                    about=about,
                    found=f"{device} is rated {plain(match.rating_a)} A and is alone on {match.breaker}, "
                    f"{plain(match.breaker_a)} A.",
                    allowed=f"A single receptacle is rated {match.fit.allowed}.",
                    because="The breaker lets more current through it than it is built for.",
                    do=f"Put in a single receptacle rated {match.fit.allowed}, "
                    f"or a breaker of at most {plain(match.rating_a)} A.",
                    edition=house.boxes[house.devices[device].box].edition,
                )
