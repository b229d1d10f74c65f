"""A receptacle is in use, and nobody has noted a polarity test of it.

Why it matters: a tester in the face finds hot and neutral exchanged, and a ground that is open, in seconds.
What to do: plug in a tester, and log what it shows; it does not show neutral and ground exchanged.
Cannot tell: when the stage of the box is not recorded. A test of the device, its box or its circuit counts.
    Old work that was found so is left alone.
Stands: on the circuit's key, one finding a circuit.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ENERGISED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.places import is_125_volt
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.house.terminals import RECEPTACLES
from junctionary.sources import cite

RULE = Rule(
    ADVICE, (cite("practice", "Every receptacle is tested for polarity once it is live."),), ENERGISED
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [afci], feeds: hall, says: "Hall"}
[circuits/hall.yaml]
circuit: hall    #! polarity-test-missing
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
    "[log.yaml]\n- {date: 2026-05-20, test: polarity, about: H1.r1, result: pass}\n[boxes/hall.yaml]",
).replace("    #! polarity-test-missing", "")

UNTOLD = FAILS.replace("stage: energised\n", "").replace("    #! polarity-test-missing", "")

IN_USE = ("energised", "verified")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit by its 120 V receptacles."""
    tested = {name for entry in house.log if entry.test == "polarity" for name in entry.about or ()}
    for circuit in house.circuits.values():
        untested = [
            device
            for device in (house.devices[each] for each in circuit.devices)
            if device.kind.is_ in RECEPTACLES
            and is_125_volt(device.kind)
            and not {device.id, device.box, circuit.id} & tested
        ]
        bare = [each.id for each in untested if house.boxes[each.box].stage in IN_USE]
        needs = [
            f"at which stage box {each.box} is" for each in untested if house.boxes[each.box].stage is None
        ]
        if bare:
            yield Fault(
                place=circuit.place,
                about=(circuit.id, *bare),
                found=f"No polarity test is logged of {', '.join(bare)}.",
                allowed="One test of each receptacle once it is live.",
                because="A tester in the face finds exchanged wires and an open ground in seconds.",
                do="Plug in a tester at each, and log what it shows.",
                edition=circuit.edition,
            )
        elif needs:
            yield CannotTell((circuit.id,), tuple(dict.fromkeys(needs)), circuit.place)
