"""Receptacles where large loads are usual hang on lighting wire.

Why it matters: 14 AWG wire on a 15 A breaker carries one large load and little beside it. Where people
    plug in heaters, irons, tools or cooking appliances the breaker opens, and a larger one is tempting.
What to do: plug in only what the message says; at the next work in the wall, bring 12 AWG on a 20 A breaker.
    Never put a larger breaker on this wire.
Cannot tell: when a cable of such a circuit is not recorded. It speaks of a receptacle in a kitchen, dining
    room, pantry, laundry, bathroom, garage or workshop, and of any on a circuit meant for lighting; a
    bedroom's or a hall's on 14 AWG is as it should be, and one that a recorded load takes up is left out.
Stands: on the circuit's key, once for a circuit.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.checks.wording import amps
from junctionary.figures import Figures
from junctionary.figures.receptacles import outlets_of
from junctionary.house.model import Circuit, House
from junctionary.house.network import Network, listed
from junctionary.sources import cite

RULE = Rule(
    ADVICE, (cite("practice", "Receptacles for large loads are wired with 12 AWG on 20 A."),), ROUGHED
)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
breakers:
  3: {rating: 15 A, feeds: shop, says: "Workshop, bench receptacles"}
[circuits/shop.yaml]
circuit: shop    #! lighting-wire-feeds-receptacles
name: Workshop bench
runs:
  - {id: b1, cable: 14/2 NM-B, from: main, to: W1}
[rooms/shop.yaml]
room: shop
name: Workshop
kind: workshop
[boxes/shop.yaml]
room: shop
boxes:
  W1: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-15R}
"""

PASSES = FAILS.replace("14/2 NM-B", "12/2 NM-B").replace("    #! lighting-wire-feeds-receptacles", "")

UNTOLD = PASSES.replace("cable: 12/2 NM-B", "cable: unknown")

LIGHTING_WIRE_A = 15
"""The largest breaker of wire that is lighting wire."""

LARGE_LOADS_USUAL = ("kitchen", "dining", "pantry", "laundry", "bathroom", "garage", "workshop")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each branch circuit with receptacles where large loads are usual, by the wire that governs it."""
    for circuit in house.circuits.values():
        limit = figures.circuits[circuit.id]
        wanted = _wanted(house, circuit, figures) if limit.branch else ()
        if not wanted:
            continue
        governs = limit.limiting.without_hole.value if limit.limiting is not None else None
        if governs is not None and governs <= LIGHTING_WIRE_A:
            yield _fault(circuit, wanted, figures)
        elif untold := tuple(f"the cable of run {each.name}" for each in limit.wires if each.size is None):
            yield CannotTell((circuit.id, *wanted), untold, circuit.place)


def _wanted(house: House, circuit: Circuit, figures: Figures) -> tuple[str, ...]:
    """The receptacles of a circuit where large loads are usual and that no recorded load takes up."""
    found = []
    loads = figures.loads[circuit.id].draws
    for id_ in figures.outlets[circuit.id].devices:
        device = house.devices[id_]
        room = house.rooms.get(house.boxes[device.box].room)
        there = room is not None and room.record.kind in LARGE_LOADS_USUAL
        usual = there or circuit.record.purpose == "lighting"
        plugged = sum(1 for each in loads if each.plugged and each.device == id_)
        if usual and outlets_of(device.kind) > plugged:
            found.append(id_)
    return tuple(found)


def _fault(circuit: Circuit, wanted: tuple[str, ...], figures: Figures) -> Fault:
    governs = figures.circuits[circuit.id].limiting
    assert governs is not None
    hang = "hangs" if len(wanted) == 1 else "hang"
    room = next((each.room for each in figures.loads[circuit.id].poles if each.room is not None), None)
    one = ""
    if room is not None and room.cord is not None and room.cord.value is not None:
        one = f" One plugged load at most {amps(room.cord.value)}."
    left = ""
    if room is not None and room.now.value is not None:
        left = f" Beside what is recorded, {amps(room.now.value)} can be plugged in."
    return Fault(
        place=circuit.place,
        about=(circuit.id, *wanted),
        found=f"{listed(wanted)} {hang} on {governs.what} wire.",
        allowed=f"At most {amps(governs.without_hole.value or governs.breaker.steps[-1].value)} "
        f"on the whole circuit.{one}{left}",
        because="A heater, an iron or a large tool takes nearly all of it.",
        do="Keep large loads on other circuits, and never put a larger breaker on this wire.",
        working=room.now.steps if room is not None else (),
        edition=circuit.edition,
    )
