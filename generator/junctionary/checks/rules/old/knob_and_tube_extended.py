"""A newer cable is fed from knob-and-tube wiring, and no ground was brought to it.

Why it matters: the old wires have no ground, are cooled by open air only, and were sized for a few lamps;
    what is hung on them since has no ground either, and overloads them where nobody sees it.
What to do: feed the newer part from a new circuit, and leave the old one to what it was made for. An old
    installation may be extended, but then an equipment ground is run to the extension.
Cannot tell: when a cable at a box to which knob-and-tube comes, or whether its ground comes to the source,
    is unknown or not recorded. Old wires that go on as knob-and-tube are left alone, and so is a newer
    cable whose ground comes to the source, or that was put in before the 1962 edition.
Stands: on the newer run's line.
"""

from collections.abc import Iterator

from junctionary.checks.carried import carries
from junctionary.checks.finding import DEFECT, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.open_wiring import is_knob_and_tube
from junctionary.figures import Figures
from junctionary.house.model import House, Run
from junctionary.house.network import Network
from junctionary.records.cables import Cable
from junctionary.sources import cite, edition_year

RULE = Rule(DEFECT, (cite("nec-2023", "250.130(C)"), cite("nec-2023", "394.10")), ROUGHED)

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


GROUND_SINCE = 1962


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each run that starts where knob-and-tube of its circuit ends."""
    ends = {
        (run.to.id, run.circuit)
        for run in house.runs.values()
        if is_knob_and_tube(run) and run.to.kind == "box"
    }
    for run in house.runs.values():
        starts_there = (run.from_.id, run.circuit) in ends and not is_knob_and_tube(run)
        if not starts_there or edition_year(run.edition) < GROUND_SINCE:
            continue
        if not isinstance(run.cable, Cable):
            yield CannotTell((run.id, run.circuit), (f"the cable of run {run.id}",), run.place)
            continue
        grounds = [carries(house, network, run, each.colour) for each in run.conductors if each.is_ground]
        if any(each.role == "ground" for each in grounds):
            continue
        if unknown := tuple(dict.fromkeys(why for each in grounds for why in each.unknown)):
            yield CannotTell((run.id, run.circuit), unknown, run.place)
        else:
            yield _fault(run)


def _fault(run: Run) -> Fault:
    return Fault(
        place=run.place,
        about=(run.id, run.circuit),
        found=f"Run {run.id} is fed from knob-and-tube at {run.from_.id}, and no ground comes with it.",
        allowed="Knob-and-tube extended only with an equipment ground run to the extension.",
        because="The old wires have no ground, and were sized for a few lamps.",
        do="Feed this part from a new circuit, or run a ground to it and record it.",
        edition=run.edition,
    )
