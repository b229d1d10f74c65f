"""A newer cable is fed from knob-and-tube wiring.

Why it matters: the old wires have no ground, are cooled by open air only, and were sized for a few lamps;
    what is hung on them since overloads them where nobody sees it.
What to do: feed the newer part from a new circuit, and leave the old one to what it was made for.
Cannot tell: when a cable at a box to which knob-and-tube comes is unknown or not recorded.
    Old wires that go on as knob-and-tube are left alone.
Stands: on the newer run's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.open_wiring import is_knob_and_tube
from junctionary.figures import Figures
from junctionary.house.model import House, Run
from junctionary.house.network import Network
from junctionary.records.cables import Cable
from junctionary.sources import cite

RULE = Rule(DEFECT, (cite("nec-2023", "394.12"),), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [], feeds: hall, says: "Hall"}
[circuits/hall.yaml]
circuit: hall
name: Hall
built_to: nec-1971
runs:
  - id: h1
    cable: {open: knob-and-tube, wires: [14 AWG a, 14 AWG b]}
    from: main
    to: H1
  - {id: h2, cable: 14/2 NM no ground, from: H1, to: H2}    #! knob-and-tube-extended
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
built_to: nec-1971
[boxes/hall.yaml]
room: hall
boxes:
  H1:
    joints:
      - {join: [h1.a, h2.black], by: solder}
      - {join: [h1.b, h2.white], by: solder}
  H2: {capped: [h2]}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: []}
"""

PASSES = FAILS.replace(
    "14/2 NM no ground", "{open: knob-and-tube, wires: [14 AWG black, 14 AWG white]}"
).replace("    #! knob-and-tube-extended", "")

UNTOLD = PASSES.replace("{open: knob-and-tube, wires: [14 AWG black, 14 AWG white]}", "unknown").replace(
    "h2.black], by: solder", "h2.black], by: tape"
)


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run that starts where knob-and-tube of its circuit ends."""
    ends = {
        (run.to.id, run.circuit)
        for run in house.runs.values()
        if is_knob_and_tube(run) and run.to.kind == "box"
    }
    for run in house.runs.values():
        if (run.from_.id, run.circuit) not in ends or is_knob_and_tube(run):
            continue
        if not isinstance(run.cable, Cable):
            yield CannotTell((run.id, run.circuit), (f"the cable of run {run.id}",), run.place)
        else:
            yield _fault(run)


def _fault(run: Run) -> Fault:
    return Fault(
        place=run.place,
        about=(run.id, run.circuit),
        found=f"Run {run.id} is fed from knob-and-tube wiring at {run.from_.id}.",
        allowed="Knob-and-tube only as it was put in.",
        because="The old wires have no ground, and were sized for a few lamps.",
        do="Feed this part from a new circuit.",
        edition=run.edition,
    )
