"""A circuit is in use, and nobody has noted what dies when its breaker is off.

Why it matters: a directory that was written from memory is wrong somewhere; whoever opens a box trusts it.
What to do: switch the breaker off, try everything it is said to feed and the neighbours, and log what died.
Cannot tell: when the stage of the circuit's boxes is not recorded. One entry for a breaker is enough.
    Circuits with no device recorded, and feeders, are left alone.
Stands: on the breaker's line.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite

RULE = Rule(
    ADVICE,
    (cite("practice", "Each breaker is switched off once, and what died is written down."),),
    ENERGISED,
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: hall, says: "Hall"}    #! breaker-off-proof-missing
[circuits/hall.yaml]
circuit: hall
name: Hall
runs:
  - {id: h1, cable: 14/2 NM-B, from: main, to: H1}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
stage: energised
[boxes/hall.yaml]
room: hall
boxes:
  H1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: [tamper-resistant]}
"""

PASSES = FAILS.replace(
    "[boxes/hall.yaml]",
    "[log.yaml]\n- {date: 2026-05-20, test: breaker-off, about: main/1, died: H1.r1}\n[boxes/hall.yaml]",
).replace("    #! breaker-off-proof-missing", "")

UNTOLD = FAILS.replace("stage: energised\n", "").replace("    #! breaker-off-proof-missing", "")

IN_USE = ("energised", "verified")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each breaker of a branch circuit in use."""
    proved = {name for entry in house.log if entry.test == "breaker-off" for name in entry.about or ()}
    for circuit in house.circuits.values():
        devices = [house.devices[each] for each in circuit.devices]
        if not devices or not figures.circuits[circuit.id].branch:
            continue
        stages = {house.boxes[each.box].stage for each in devices}
        for id_ in circuit.breakers:
            if id_ in proved or circuit.id in proved:
                continue
            breaker = house.breakers[id_]
            if stages & set(IN_USE):
                yield Fault(
                    place=breaker.place,
                    about=(id_, circuit.id),
                    found=f"Nothing in the log says what dies when {id_} is off.",
                    allowed="For each breaker, one entry of what died.",
                    because="A directory written from memory is wrong somewhere.",
                    do="Switch it off, try what it is said to feed and its neighbours, and log what died.",
                    edition=circuit.edition,
                )
            elif None in stages:
                needs = tuple(
                    f"at which stage box {each.box} is"
                    for each in devices
                    if house.boxes[each.box].stage is None
                )
                yield CannotTell((id_, circuit.id), needs, breaker.place)
