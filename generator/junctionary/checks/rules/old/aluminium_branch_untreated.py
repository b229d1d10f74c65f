"""A branch circuit has small aluminium wire on terminals or in joints that are not made for it.

Why it matters: aluminium creeps from under a screw and grows an oxide that does not conduct; such
    connections are many times likelier than copper ones to reach a temperature that starts a fire.
What to do: have a licensed electrician rewire in copper, or make every connection with the special crimp or
    set-screw connector that public safety agencies name. A device marked for aluminium is a lesser remedy.
Cannot tell: when a cable, what a device is marked for, or by what a joint is made is not recorded. Wire
    larger than 8 AWG, as for ranges and feeders, is left alone.
Stands: on the circuit's key, one finding a circuit.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import Figures
from junctionary.figures.gaps import unseen_on
from junctionary.house.model import Box, Circuit, House, Joint, Landing
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import WireSize

RULE = Rule(ADVICE, (cite("cpsc-516", "repair"), cite("cpsc-516", "risk")), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  1: {rating: 15 A, guards: [], feeds: hall, says: "Hall"}
[circuits/hall.yaml]
circuit: hall    #! aluminium-branch-untreated
name: Hall
built_to: nec-1971
runs:
  - {id: h1, cable: 12/2 NM aluminium, from: main, to: H1}
[rooms/hall.yaml]
room: hall
name: Hall
kind: hall
built_to: nec-1971
[boxes/hall.yaml]
room: hall
boxes:
  H1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R, rating: 15 A, marks: []}
"""

PASSES = FAILS.replace("marks: []", "marks: [aluminium-rated]").replace(
    "    #! aluminium-branch-untreated", ""
)

UNTOLD = PASSES.replace(", marks: [aluminium-rated]", "")

METAL = "aluminium"
MARK = "aluminium-rated"
SMALL = WireSize("8 AWG")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each branch circuit with small aluminium wire."""
    for circuit in house.circuits.values():
        if not figures.circuits[circuit.id].branch or not _has_aluminium(house, circuit):
            continue
        bad: list[str] = []
        needs = list(unseen_on(house, circuit))
        for box in (house.boxes[each] for each in circuit.boxes):
            for name, suits in _connections(house, box):
                if suits is False:
                    bad.append(name)
                elif suits is None:
                    needs.append(f"whether {name} is made for aluminium")
        if bad:
            yield Fault(
                place=circuit.place,
                about=(circuit.id, *bad),
                found=f"Small aluminium wire is on or in what is not made for it: {', '.join(bad)}.",
                allowed="Copper, or connections made for aluminium at every end.",
                because="Such connections are many times likelier to reach a temperature that starts a fire.",
                do="Have a licensed electrician rewire it, or treat every connection.",
                edition=circuit.edition,
            )
        elif needs:
            yield CannotTell((circuit.id,), tuple(dict.fromkeys(needs)), circuit.place)


def _has_aluminium(house: House, circuit: Circuit) -> bool:
    wires = (wire for each in circuit.runs for wire in house.runs[each].conductors)
    return any(wire.metal == METAL and wire.size <= SMALL for wire in wires)


def _connections(house: House, box: Box) -> Iterator[tuple[str, bool | None]]:
    """Each joint and terminal of a box that holds aluminium, and whether it is made for it."""
    for joint in box.joints:
        if any(each.metal == METAL for each in joint.members):
            yield joint.id, _joint_suits(joint)
    for landing in box.landings:
        if any(each.metal == METAL for each in landing.wires):
            yield landing.terminal, _terminal_suits(house, landing)


def _joint_suits(joint: Joint) -> bool | None:
    kind = joint.connector
    if kind is None:
        return None
    told = kind.metals or (kind.accepts.metals if kind.accepts else None)
    return METAL in told if told else None


def _terminal_suits(house: House, landing: Landing) -> bool | None:
    device = house.devices.get(landing.device)
    if device is None:
        return None
    if MARK in (device.kind.marks or ()) or (device.kind.accepts and METAL in device.kind.accepts.metals):
        return True
    return False if device.kind.marks is not None else None
