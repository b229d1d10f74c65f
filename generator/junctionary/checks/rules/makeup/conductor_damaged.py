"""A sheath, an insulation or a conductor was seen to be damaged.

Why it matters: a nick breaks under the next bend; a cut or brittle insulation lets current out to wood,
    metal or a hand.
What to do: with the breakers off and the box proved dead, cut back to sound wire, or replace the cable.
    Move brittle insulation no more than must be.
Cannot tell: when the box was made up and nobody noted how sheath, insulation and copper were
    found. Damage that is noted as mended is let pass.
Stands: on the box's key.
"""

from collections.abc import Iterator

from junctionary.checks.finding import HAZARD, MADE_UP, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import BEFORE_MAKE_UP
from junctionary.house.model import Box, House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    HAZARD,
    (
        cite("nec-2023", "110.12"),
        cite("practice", "A nicked, kinked or cut conductor is cut back to sound wire."),
    ),
    MADE_UP,
)

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
  - {id: h1, cable: 14/2 NM-B, from: main, to: H1}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
[boxes/hall.yaml]
room: hall
boxes:
  H1:    #! conductor-damaged
    devices: {r1: duplex}
    makeup: end-of-run
    looked_at: {sheath: sound, insulation: cut through by the clamp, copper: sound}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, strip: 5/8 in}
"""

PASSES = FAILS.replace("insulation: cut through by the clamp", "insulation: sound").replace(
    "    #! conductor-damaged", ""
)

UNTOLD = PASSES.replace("    looked_at: {sheath: sound, insulation: sound, copper: sound}\n", "")

SOUND = ("sound", "whole", "none")
MENDED = "mended"


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each box by how its wires were found."""
    for box in house.boxes.values():
        if not box.runs or box.stage in BEFORE_MAKE_UP:
            continue
        damage = [f"{part} {said}" for part, said in _seen(box) if said and not _is_sound(said)]
        unseen = [part for part, said in _seen(box) if said is None]
        if damage:
            yield Fault(
                place=box.place,
                about=(box.id, *box.circuits),
                found=f"In box {box.id}: {'; '.join(damage)}.",
                allowed="Sound sheath, insulation and copper.",
                because="Current finds its way out through damaged insulation; a nick breaks.",
                do="With the box proved dead, cut back to sound wire or replace the cable.",
                edition=box.edition,
            )
        elif unseen:
            needs = (f"how {' and '.join(unseen)} in box {box.id} were found",)
            yield CannotTell((box.id, *box.circuits), needs, box.place)


def _seen(box: Box) -> tuple[tuple[str, str | None], ...]:
    seen = box.looked_at
    parts = ("sheath", "insulation", "copper")
    return tuple((each, getattr(seen, each) if seen else None) for each in parts)


def _is_sound(said: str) -> bool:
    return said.lower() in SOUND or MENDED in said.lower()
