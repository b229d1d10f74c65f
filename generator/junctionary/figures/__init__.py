"""Every figure of a house, worked out once: what a page shows and a check judges is the same number."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from junctionary.figures.circuits import CircuitLimit, circuit_limit
from junctionary.figures.coverage import Reached, counters, wall_spaces
from junctionary.figures.depth import BoxDepth, depth_of
from junctionary.figures.draws import Draw, by_circuit, draws_of
from junctionary.figures.drop import CircuitDrop, Lost, drops_of
from junctionary.figures.fault import UNTOLD_SERVICE, CircuitFault, EndFault, Heat, faults_of
from junctionary.figures.feeders import FeederLoad, feeder_loads
from junctionary.figures.fill import Fill, fill_of
from junctionary.figures.grounds import ElectrodeWire, RunGround, electrode_wires, run_grounds
from junctionary.figures.joints import joint_fit
from junctionary.figures.load_limits import (
    CordLoad,
    FixedLoads,
    RangeCircuit,
    cord_loads,
    fixed_loads,
    range_circuits,
)
from junctionary.figures.loads import CircuitLoads, PoleLoad, circuit_loads
from junctionary.figures.panels import ClearSide, PanelLimits, panel_limits
from junctionary.figures.protection import Guarded, guarded_devices
from junctionary.figures.receptacles import (
    ReceptacleCount,
    ReceptacleMatch,
    receptacle_count,
    receptacle_matches,
)
from junctionary.figures.service import ServiceLoad, floor_area, service_load
from junctionary.figures.torque import Tightened, screws_of
from junctionary.figures.wire import WireLimit, wire_limit
from junctionary.formulas.fit import Fit
from junctionary.house.lamps import LampTable, lamp_tables
from junctionary.house.model import House
from junctionary.house.network import Network

__all__ = [
    "UNTOLD_SERVICE",
    "BoxDepth",
    "CircuitDrop",
    "CircuitFault",
    "CircuitLimit",
    "CircuitLoads",
    "ClearSide",
    "CordLoad",
    "Draw",
    "ElectrodeWire",
    "EndFault",
    "FeederLoad",
    "Figures",
    "Fill",
    "FixedLoads",
    "Guarded",
    "Heat",
    "Lost",
    "PanelLimits",
    "PoleLoad",
    "RangeCircuit",
    "Reached",
    "ReceptacleCount",
    "ReceptacleMatch",
    "RunGround",
    "ServiceLoad",
    "Tightened",
    "WireLimit",
    "work_out",
]


@dataclass(frozen=True, slots=True)
class Figures:
    """The figures of one house, each mapping in the order of the record.

    ``fill`` is by box (none for a joint without one), and so is ``depths`` (none for a box
    without a device); ``wires`` by run;
    ``circuits`` by circuit; ``joints`` by joint (none for one made without a
    connector); ``torques`` by terminal, for those with a screw; ``outlets``
    by circuit; ``receptacles`` by device, one for each circuit that feeds it;
    ``guarded`` by device that has an outlet; ``wall_spaces`` and ``counters`` by room of the
    kinds that are measured; ``lamps`` are the tables of every switched outlet.
    ``draws`` by load, and by device for what a device itself draws; ``loads`` by circuit;
    ``cord_loads`` are the plugged loads held against their receptacles, ``fixed_loads``
    what is fastened in place beside lights or receptacles, ``ranges`` the ranges and their breakers;
    ``grounds`` by run; ``electrodes`` are the wires to the grounding
    electrodes; ``panels`` by panel; ``drops`` and ``faults`` by circuit;
    ``service`` is the house's own; ``feeders`` are by the panel each feeds.
    """

    fill: Mapping[str, Fill]
    depths: Mapping[str, BoxDepth]
    wires: Mapping[str, WireLimit]
    circuits: Mapping[str, CircuitLimit]
    joints: Mapping[str, Fit]
    torques: Mapping[str, Tightened]
    outlets: Mapping[str, ReceptacleCount]
    receptacles: Mapping[str, tuple[ReceptacleMatch, ...]]
    guarded: Mapping[str, Guarded]
    wall_spaces: Mapping[str, Reached]
    counters: Mapping[str, Reached]
    lamps: tuple[LampTable, ...]
    draws: Mapping[str, Draw]
    service: ServiceLoad
    feeders: Mapping[str, FeederLoad]
    loads: Mapping[str, CircuitLoads]
    cord_loads: tuple[CordLoad, ...]
    fixed_loads: tuple[FixedLoads, ...]
    ranges: tuple[RangeCircuit, ...]
    grounds: Mapping[str, RunGround]
    electrodes: tuple[ElectrodeWire, ...]
    panels: Mapping[str, PanelLimits]
    drops: Mapping[str, CircuitDrop]
    faults: Mapping[str, CircuitFault]


def work_out(house: House, network: Network) -> Figures:
    """Every figure of a house; a fact not recorded gives a figure that says what it lacks."""
    outlets = {each.id: receptacle_count(house, each) for each in house.circuits.values()}
    wires = {
        each.id: wire_limit(house, each, outlets[each.circuit].several if each.circuit in outlets else None)
        for each in house.runs.values()
    }
    fills = {each.id: fill_of(house, each) for each in house.boxes.values()}
    depths = {each.id: depth_of(house, each) for each in house.boxes.values()}
    joints = {each.id: joint_fit(house, each) for each in house.joints()}
    draws = draws_of(house, network)
    on_circuit = by_circuit(draws)
    limits = {each.id: circuit_limit(house, each, wires) for each in house.circuits.values()}
    matches = {each.id: receptacle_matches(house, network, each, outlets) for each in house.devices.values()}
    lamps = lamp_tables(house, network)
    return Figures(
        fill=MappingProxyType({id_: fill for id_, fill in fills.items() if fill is not None}),
        depths=MappingProxyType({id_: depth for id_, depth in depths.items() if depth is not None}),
        wires=MappingProxyType(wires),
        circuits=MappingProxyType(limits),
        joints=MappingProxyType({id_: fit for id_, fit in joints.items() if fit is not None}),
        torques=MappingProxyType(
            {each.terminal: each for box in house.boxes.values() for each in screws_of(house, box)}
        ),
        outlets=MappingProxyType(outlets),
        receptacles=MappingProxyType({id_: each for id_, each in matches.items() if each}),
        guarded=MappingProxyType(guarded_devices(house, network)),
        wall_spaces=MappingProxyType(wall_spaces(house, lamps)),
        counters=MappingProxyType(counters(house)),
        lamps=lamps,
        draws=MappingProxyType(draws),
        cord_loads=tuple(cord_loads(house, draws, matches)),
        fixed_loads=tuple(fixed_loads(house, draws, matches)),
        ranges=tuple(range_circuits(house, draws)),
        service=service_load(house, draws),
        feeders=MappingProxyType(feeder_loads(house, draws, wires, floor_area(house))),
        loads=MappingProxyType(
            {
                each.id: circuit_loads(house, each, on_circuit.get(each.id, ()), limits[each.id], matches)
                for each in house.circuits.values()
            }
        ),
        grounds=MappingProxyType(run_grounds(house)),
        electrodes=electrode_wires(house),
        panels=MappingProxyType({each.id: panel_limits(house, each) for each in house.panels.values()}),
        drops=MappingProxyType(drops_of(house, draws)),
        faults=MappingProxyType(faults_of(house)),
    )
