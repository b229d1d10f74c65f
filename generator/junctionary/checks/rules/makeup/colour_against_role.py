"""A wire's colour says something other than what it carries.

Why it matters: the next person goes by colours: a green that is live kills, a black that is neutral is
    cut and capped as if it were hot.
What to do: use the right conductor; a white may be re-marked where the code allows it, a green never;
    a wire of 4 AWG or larger may be marked white or green at each end.
Cannot tell: when what a conductor carries cannot be told from the record. A white that carries a hot has
    a check of its own. A conductor that comes to nothing is not judged, nor the bare neutral of an SEU cable
    of before the 1996 edition, which a range or a dryer may have.
Stands: on the run's line, one finding a run.
"""

from collections.abc import Iterator

from junctionary.checks.carried import carries, unmarked_ends
from junctionary.checks.finding import DEFECT, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House, Run
from junctionary.house.network import Network, is_ground
from junctionary.records.cables import Cable, Conductor
from junctionary.records.words import NEUTRAL_COLOURS, UNTOLD_COLOURS
from junctionary.sources import cite, edition_year
from junctionary.units import WireSize

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

ROLE = {"hot": "a hot", "neutral": "a neutral", "ground": "an equipment ground"}
MARKED_FROM = WireSize("4 AWG")
BARE_NEUTRAL_BEFORE = 1996
NEUTRALS = (*NEUTRAL_COLOURS, *UNTOLD_COLOURS)
"""Colours a neutral may have; the wires of knob-and-tube have letters, and any colour."""


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run, conductor by conductor."""
    for run in house.runs.values():
        wrong: list[str] = []
        unknown: list[str] = []
        for wire in run.conductors:
            told = carries(house, network, run, wire.colour)
            if _is_marked(house, run, wire) or (told.role == "neutral" and _is_old_bare(run, wire)):
                continue
            if told.role is None:
                unknown += told.unknown
            elif is_ground(wire.colour) and told.role != "ground":
                wrong.append(f"the {wire.colour} wire serves as {ROLE[told.role]}")
            elif not is_ground(wire.colour) and told.role == "ground":
                wrong.append(f"the {wire.colour} wire serves as an equipment ground")
            elif told.role == "neutral" and wire.colour not in NEUTRALS:
                wrong.append(f"the {wire.colour} wire serves as a neutral")
        if wrong:
            yield Fault(
                place=run.place,
                about=(run.id, run.circuit),
                found=f"In run {run.id}, {' and '.join(wrong)}.",
                allowed="A neutral white or grey; an equipment ground bare, green or green with yellow; "
                "no other wire so coloured.",
                because="The next person goes by colours.",
                do="With the circuit proved dead, use the right conductor.",
                edition=run.edition,
            )
        elif unknown:
            yield CannotTell((run.id, run.circuit), tuple(dict.fromkeys(unknown)), run.place)


def _is_marked(house: House, run: Run, wire: Conductor) -> bool:
    """Whether a large wire is marked at each of its ends, as 200.6(B) and 250.119 let it be."""
    large = wire.insulated and not is_ground(wire.colour) and wire.size >= MARKED_FROM
    return large and not any(unmarked_ends(house, run, wire.colour))


def _is_old_bare(run: Run, wire: Conductor) -> bool:
    cable = run.cable.kind if isinstance(run.cable, Cable) else None
    return wire.colour == "bare" and cable == "SEU" and edition_year(run.edition) < BARE_NEUTRAL_BEFORE
