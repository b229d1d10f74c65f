"""A screw was measured at another torque than its device lists.

Why it matters: too loose, the wire works free and the terminal burns; too tight, the wire is cut or
    the screw strips, and it loosens later. A device's listing holds only at its listed torque.
What to do: with the breakers off and the box proved dead, loosen the screw, look at wire and screw, and
    tighten it anew to the listed value with a torque tool; then log the new value.
Cannot tell: when a value was measured and none is recorded as listed for the device. Within a tenth
    of the listed value counts as listed (our threshold, by practice). Where nothing was measured,
    torque-not-recorded speaks. A measurement in the log wins over what the box's file says, and where
    the two are different values that is a fault of its own. The clause on torque came in 2017; that
    the listing is followed was asked before it.
Stands: on the terminal's line, or the device's where the landing comes from a word of make-up; one
    finding a screw.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures, Tightened
from junctionary.figures.torque import FAILED
from junctionary.formulas.torque import in_both_units
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.marks import Place
from junctionary.sources import cite
from junctionary.units import Quantity

RULE = Rule(DEFECT, (cite("nec-2023", "110.14(D)"), cite("nec-2023", "110.3(B)")), MADE_UP)

FAILS = """
[circuits/den.yaml]
circuit: den
name: Den
runs:
  - {id: b1, cable: 12/2 NM-B, from: unknown, to: D1}
[rooms/den.yaml]
room: den
name: Den
kind: den
[boxes/den.yaml]
room: den
boxes:
  D1:
    devices: {r1: duplex}    #! torque-off
    makeup: end-of-run
    torque: listed
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R, torque: 14 in-lb}
[log.yaml]
- {date: 2026-05-21, test: torque, about: D1.r1.brass, value: 9 in-lb, with: torque screwdriver}
"""

PASSES = FAILS.replace("9 in-lb", "1.58 N m").replace("    #! torque-off", "")

UNTOLD = PASSES.replace(", torque: 14 in-lb", "")

CUT_OR_LOOSE = {
    "too loose": "A loose screw heats and burns.",
    "too tight": "A screw driven too hard cuts the wire or strips.",
}


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each screw whose torque was measured."""
    for box in house.boxes.values():
        place = {each.terminal: each.place for each in box.landings}
        for each in (figures.torques[name] for name in place if name in figures.torques):
            yield from _judged(each, box, place[each.terminal])


def _judged(screw: Tightened, box: Box, place: Place) -> Iterator[Fault | CannotTell]:
    about = (screw.terminal, screw.device, box.id)
    when = f" on {screw.tested}" if screw.tested else ""
    listed = f"{in_both_units(screw.listed)}, as its device lists" if screw.listed else "As its device lists"
    anew = "With the box proved dead, tighten it anew to the listed value and log it."
    if screw.said == FAILED:
        yield Fault(
            place,
            about,
            f"The torque of {screw.terminal} did not pass{when}.",
            f"{listed}.",
            "A screw that is not as listed heats, or has cut the wire.",
            anew,
            edition=box.edition,
        )
    if not isinstance(screw.said, Quantity):
        return
    if screw.match is None:
        yield CannotTell(about, (f"the torque that {screw.device} lists",), place)
    elif screw.match.verdict != "as listed":
        yield Fault(
            place,
            about,
            f"{screw.terminal} was at {in_both_units(screw.said)}{when}.",
            f"{listed}.",
            CUT_OR_LOOSE[screw.match.verdict],
            anew,
            edition=box.edition,
        )
    elif screw.differs is not None:
        yield Fault(
            place,
            about,
            f"The log says {in_both_units(screw.said)} of {screw.terminal}{when}, and the box's file "
            f"{in_both_units(screw.differs)}.",
            f"{listed}.",
            "One of the two is wrong, and nobody can tell afterwards which.",
            "Write down the value that was measured, in both places or in the log alone.",
            edition=box.edition,
        )
