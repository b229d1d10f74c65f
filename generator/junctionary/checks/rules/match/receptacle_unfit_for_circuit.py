"""A receptacle's rating does not suit the circuit, which has two or more.

Why it matters: a face rated above the circuit takes plugs of loads the circuit cannot carry; one
    rated below it may be made to carry more than it is built for.
What to do: put in a receptacle of a rating the circuit allows. Do not put in a larger breaker for
    the receptacle's sake: the wire decides that.
Cannot tell: when the breaker of the circuit, its rating, or the receptacle's rating or face is not
    recorded; when it would hang on whether the receptacle is the only one; or when the make-up or
    the devices of a box are not recorded.
Stands: on the receptacle's line, each on its own. The only receptacle of a circuit has a check of its own.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures, ReceptacleMatch
from junctionary.figures.gaps import unseen_in
from junctionary.formulas.receptacle import LEAST_FOR_SEVERAL_A
from junctionary.formulas.sums import plain
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.marks import Place
from junctionary.sources import cite

RULE = Rule(
    DEFECT,
    (
        cite("nec-2023", "210.21(B)(3)"),
        cite("nec-2023", "210.18"),
        cite("cfr-29-1910", "1910.304(b) Table S-5"),
    ),
    MADE_UP,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, feeds: den, says: "Den, receptacles"}
[circuits/den.yaml]
circuit: den
name: Den receptacles
runs:
  - {id: b1, cable: 12/2 NM-B, from: main, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}    #! receptacle-unfit-for-circuit
    makeup: end-of-run
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, rating: 20 A}
"""

PASSES = FAILS.replace("rating: 15 A", "rating: 20 A").replace("    #! receptacle-unfit-for-circuit", "")

UNTOLD = PASSES.replace("rating: 20 A, feeds", "rating: unknown, feeds")

BECAUSE = {
    "too large": "It takes the plug of a load that this circuit cannot carry.",
    "too small": "More current may be drawn through it than it is built for.",
    "not allowed": "Whatever is plugged in may draw more than this circuit carries.",
}


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each receptacle of a circuit with several, against each breaker that feeds it."""
    for box in house.boxes.values():
        if gap := unseen_in(box):
            yield CannotTell((box.id, *box.circuits), (gap,), box.place)
    for device, matches in figures.receptacles.items():
        for match in matches:
            if match.count is not None and match.count.outlets == 1:
                continue
            place = house.devices[device].place
            if match.fit.fits is None:
                yield CannotTell(_about(match), match.fit.lacks, place)
            elif not match.fit.fits:
                yield _fault(match, place, house.boxes[house.devices[device].box].edition)


def _fault(match: ReceptacleMatch, place: Place, edition: str) -> Fault:
    assert match.rating_a is not None
    assert match.breaker_a is not None
    circuit, fit = f"a {plain(match.breaker_a)} A circuit", match.fit
    smaller = ", or a smaller breaker where the wire asks for it" if fit.verdict == "too small" else ""
    allowed, because = f"On {circuit} with several, {fit.allowed}.", BECAUSE[fit.verdict]
    do = f"Put in a receptacle rated {fit.allowed}{smaller}."
    if fit.verdict == "not allowed":
        allowed = f"{fit.allowed[:1].upper()}{fit.allowed[1:]}."
        do = "Move it to another circuit."
        if match.breaker_a > LEAST_FOR_SEVERAL_A:
            because = "A circuit with several outlets is of 15, 20, 30, 40 or 50 A, as receptacles are."
            do = "Leave one receptacle on it, or put in a breaker of such a rating that the wire allows."
    return Fault(
        place=place,
        about=_about(match),
        found=f"{match.device} is rated {plain(match.rating_a)} A, on {circuit} ({match.breaker}).",
        allowed=allowed,
        because=because,
        do=do,
        edition=edition,
    )


def _about(match: ReceptacleMatch) -> tuple[str, ...]:
    return tuple(each for each in (match.device, match.circuit, match.breaker) if each is not None)
