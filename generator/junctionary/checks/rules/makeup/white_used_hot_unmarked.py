"""A white or grey wire is hot, and nothing at its ends says so.

Why it matters: whoever opens the box takes a white for the neutral, and touches it.
What to do: re-mark it with tape or paint at every end where it is seen, or use a cable with another colour.
Cannot tell: when what the wire carries, or the make-up of a box at its end, is not recorded. A loop told by
    its word is re-marked by that word. Open wiring, where whites mean nothing, is left alone. Whether a
    white may be hot at all at that place, as a switch's return may not, is not judged. Work before the
    1999 edition is left alone: a switch loop's white needed no mark then (from memory).
Stands: on the run's line, one finding a run.
"""

from collections.abc import Iterator

from junctionary.checks.carried import carries, unmarked_ends
from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "200.7(C)(1)"),), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: hall, says: "Hall"}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: H2}
  - {id: l1, cable: 14/2 NM-B, from: H2, to: H1}    #! white-used-hot-unmarked
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:
    devices: {s1: switch}
    terminals:
      s1.brass-1: l1.white
      s1.brass-2: l1.black
      s1.green: l1.bare
  H2:
    devices: {f1: lamp}
    marked: {l1.white: black}
    joints:
      - {join: [h1.black, l1.white], by: lever-2}
      - {join: [l1.black, f1.black], by: lever-2}
      - {join: [h1.white, f1.white], by: lever-2}
      - {join: [h1.bare, l1.bare, f1.green], by: lever-3}
[devices/all.yaml]
devices:
  switch: {is: switch, ways: 1, rating: 15 A}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
connectors:
  lever-2: {is: lever, ports: 2, accepts: 20 to 12 AWG copper}
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
"""

PASSES = FAILS.replace(
    "    devices: {s1: switch}\n", "    devices: {s1: switch}\n    marked: {l1.white: black}\n"
).replace("    #! white-used-hot-unmarked", "")

UNTOLD = PASSES.replace("from: main, to: H2", "from: unknown, to: H2")

WHITES = ("white", "grey")
ASKED_SINCE = 1999


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each white of each run."""
    for run in house.runs.values():
        for wire in run.conductors:
            if wire.colour not in WHITES or edition_year(run.edition) < ASKED_SINCE:
                continue
            told = carries(house, network, run, wire.colour)
            if told.role is None and told.unknown:
                yield CannotTell((run.id, run.circuit), tuple(dict.fromkeys(told.unknown)), run.place)
            elif told.role == "hot" and (bare := list(unmarked_ends(house, run, wire.colour))):
                yield Fault(
                    place=run.place,
                    about=(run.id, run.circuit, *bare),
                    found=f"The {wire.colour} of run {run.id} is hot; not re-marked in {' and '.join(bare)}.",
                    allowed="A hot white re-marked wherever it is seen.",
                    because="Whoever opens the box takes a white for the neutral.",
                    do="With the circuit proved dead, re-mark it at each end.",
                    edition=run.edition,
                )
