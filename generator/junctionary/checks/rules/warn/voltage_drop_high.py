"""A circuit loses much of its voltage on the way to an outlet.

Why it matters: lamps dim when a tool starts, motors run hot, heaters give less, and what is lost
    warms the wire in the wall. It is no breach of the code, which only recommends the limit.
What to do: put in larger wire, its ground with it, for the run that loses most, move the load to a
    circuit that begins nearer, or share it between two circuits.
Cannot tell: when a length, a cable or what is drawn is not recorded, or the cables form a loop, and
    the design load would pass the limit. The limit is 3 % from the panel, and 5 % with the feeders
    before it, at what the record says is drawn. The design load is 80 % of the breaker at the
    farthest outlet (practice). Resistances are those at 75 °C, wire solid to 10 AWG and stranded
    above; the way to a switch and back is not counted. One finding for each circuit.
Stands: on the line of the run that loses most.
"""

from collections.abc import Iterator

from junctionary.checks.finding import ADVICE, ROUGHED, CannotTell, Fault, Rule
from junctionary.figures import CircuitDrop, Figures, Lost
from junctionary.formulas.sums import plain
from junctionary.formulas.voltage_drop import drop_limits
from junctionary.house.model import House
from junctionary.house.network import Network
from junctionary.sources import cite
from junctionary.units import decimal

RULE = Rule(ADVICE, (cite("nec-2023", "210.19 note"), cite("nec-2023", "215.2 note")), ROUGHED)

FAILS = """
[panels/main.yaml]
panel: main
spaces: 8
fed_by: service
breakers:
  3: {rating: 20 A, feeds: shed, says: "Shed, receptacles"}
[circuits/shed.yaml]
circuit: shed
name: Shed receptacles
runs:
  - {id: s1, cable: 12/2 UF-B, from: main, to: S1, length: 95 ft}    #! voltage-drop-high
  - {id: s2, cable: 12/2 NM-B, from: S1, to: S2, length: 12 ft}
loads:
  - {id: heater, is: space-heater, draws: 1500 W, plugged: S2.r1}
[rooms/shed.yaml]
room: shed
name: Shed
kind: storage
[boxes/shed.yaml]
room: shed
boxes:
  S1: {devices: {r1: duplex}, makeup: pigtailed}
  S2: {devices: {r1: duplex}, makeup: end-of-run}
[devices/all.yaml]
devices:
  duplex: {is: receptacle, face: 5-20R}
"""

PASSES = FAILS.replace("12/2", "10/2").replace("    #! voltage-drop-high", "")

UNTOLD = PASSES.replace("length: 95 ft", "length: unknown")


def check(house: House, network: Network, figures: Figures) -> Iterator[Fault | CannotTell]:
    """Each circuit's worst outlet at the recorded load."""
    for drop in figures.drops.values():
        worst = drop.worst(drop.recorded)
        if worst is not None and worst.within is False:
            yield _fault(house, drop, worst)
        elif needs := tuple(dict.fromkeys(_needs(drop, worst))):
            yield CannotTell((drop.circuit,), needs, house.circuits[drop.circuit].place)


def _needs(drop: CircuitDrop, worst: Lost | None) -> Iterator[str]:
    """What is missing, unless even the design load stays within the limits."""
    yield from drop.lacks
    design = drop.worst(drop.design)
    if design is not None and not drop.lacks and design.within:
        return
    if worst is not None:
        yield from worst.from_service.lacks
    yield from drop.untold
    if not drop.drawn:
        yield f"what is drawn on circuit {drop.circuit}"


def _fault(house: House, drop: CircuitDrop, lost: Lost) -> Fault:
    circuit = house.circuits[drop.circuit]
    run = house.runs[lost.most_in] if lost.most_in else None
    least = "" if lost.percent is not None else "at least "
    lost_v = lost.from_panel.value if lost.from_panel.value is not None else lost.least
    percent, service = lost.least_percent, lost.percent_from_service
    assert lost_v is not None
    assert percent is not None
    found = (
        f"At the recorded load {least}{decimal(lost_v, 1)} V of {plain(lost.volts)} V, "
        f"{decimal(percent, 1)} %, is lost between panel {drop.panel} and {lost.at}"
    )
    if service is not None and service != percent:
        found += f", and {decimal(service, 1)} % from the service"
    branch, whole = drop_limits()
    larger = "Put in larger wire, ground and all"
    larger += f", in run {run.id}, which loses most" if run else ""
    return Fault(
        place=run.place if run else circuit.place,
        about=(*((run.id,) if run else ()), circuit.id, lost.at),
        found=f"{found}.{_design_words(drop)}",
        allowed=f"At most {plain(branch)} % in a circuit, and {plain(whole)} % with the feeders before it.",
        because="Lamps dim, motors run hot and heaters give less.",
        do=f"{larger}, or move load to another circuit.",
        working=(lost.from_panel if percent > branch else lost.from_service).steps,
        edition=circuit.edition,
    )


def _design_words(drop: CircuitDrop) -> str:
    design = drop.worst(drop.design)
    if design is None or design.percent is None or drop.design_load.value is None:
        return ""
    amps = plain(drop.design_load.value)
    return f" At design load, {amps} A at {design.at}, it would be {decimal(design.percent, 1)} %."
