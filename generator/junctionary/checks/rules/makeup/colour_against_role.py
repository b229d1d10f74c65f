"""A wire's colour says something other than what it carries.

Why it matters: the next person goes by colours: a green that is live kills, a black that is neutral is
    cut and capped as if it were hot.
What to do: use the right conductor; a white may be re-marked where the code allows it, a green never.
Cannot tell: when what a conductor carries cannot be told from the record. A white that carries a hot has
    a check of its own. A conductor that comes to nothing is not judged.
Stands: on the run's line, one finding a run.
"""

from collections.abc import Iterator

from junctionary.checks.carried import carries
from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network, is_ground
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "200.6"), cite("nec-2023", "250.119")), MADE_UP)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: hall, says: "Hall", lands: {bare: 1, white: neutral-bar/1}}
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: H1}    #! colour-against-role
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:
    devices: {r1: duplex}
    terminals:
      r1.brass: h1.bare
      r1.silver: h1.white
    capped: [h1.black]
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, per_terminal: 2, marks: [tamper-resistant]}
  switch: {is: switch, ways: 1, rating: 15 A}
  lamp: {is: luminaire, leads: [18 AWG black, 18 AWG white, 18 AWG green]}
connectors:
  lever-2: {is: lever, ports: 2, accepts: 20 to 12 AWG copper}
  lever-3: {is: lever, ports: 3, accepts: 20 to 12 AWG copper}
"""

PASSES = (
    FAILS.replace(", lands: {bare: 1, white: neutral-bar/1}", "")
    .replace("    #! colour-against-role", "")
    .replace("r1.brass: h1.bare", "r1.brass: h1.black")
    .replace("    capped: [h1.black]\n", "      r1.green: h1.bare\n")
)

UNTOLD = PASSES.replace("from: main", "from: unknown")

NEUTRALS = ("white", "grey", "white-red", "white-black", "a", "b", "c", "d")
"""Colours a neutral may have; the wires of knob-and-tube have letters, and any colour."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run, conductor by conductor."""
    for run in house.runs.values():
        wrong: list[str] = []
        unknown: list[str] = []
        for wire in run.conductors:
            told = carries(house, network, run, wire.colour)
            if told.role is None:
                unknown += told.unknown
            elif is_ground(wire.colour) and told.role != "ground":
                wrong.append(f"{wire.colour} carries a {told.role}")
            elif not is_ground(wire.colour) and told.role == "ground":
                wrong.append(f"{wire.colour} is a ground")
            elif told.role == "neutral" and wire.colour not in NEUTRALS:
                wrong.append(f"{wire.colour} is a neutral")
        if wrong:
            yield Fault(
                place=run.place,
                about=(run.id, run.circuit),
                found=f"In run {run.id}, {' and '.join(wrong)}.",
                allowed="Neutral white or grey, ground bare or green, and no other so coloured.",
                because="The next person goes by colours.",
                do="With the circuit proved dead, use the right conductor.",
                edition=run.edition,
            )
        elif unknown:
            yield CannotTell((run.id, run.circuit), tuple(dict.fromkeys(unknown)), run.place)
