"""Every figure of a house, worked out once: what a page shows and a check judges is the same number."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from junctionary.figures.circuits import CircuitLimit, circuit_limit
from junctionary.figures.coverage import Reached, counters, wall_spaces
from junctionary.figures.fill import Fill, fill_of
from junctionary.figures.joints import joint_fit
from junctionary.figures.protection import Guarded, guarded_devices
from junctionary.figures.receptacles import (
    ReceptacleCount,
    ReceptacleMatch,
    receptacle_count,
    receptacle_matches,
)
from junctionary.figures.torque import Tightened, screws_of
from junctionary.figures.wire import WireLimit, wire_limit
from junctionary.formulas.fit import Fit
from junctionary.house.lamps import LampTable, lamp_tables
from junctionary.house.model import House
from junctionary.house.network import Network

__all__ = [
    "CircuitLimit",
    "Figures",
    "Fill",
    "Guarded",
    "Reached",
    "ReceptacleCount",
    "ReceptacleMatch",
    "Tightened",
    "WireLimit",
    "work_out",
]


@dataclass(frozen=True, slots=True)
class Figures:
    """The figures of one house, each mapping in the order of the record.

    ``fill`` is by box (none for a joint without one); ``wires`` by run;
    ``circuits`` by circuit; ``joints`` by joint (none for one made without a
    connector); ``torques`` by terminal, for those with a screw; ``outlets``
    by circuit; ``receptacles`` by device, one for each circuit that feeds it;
    ``guarded`` by device that has an outlet; ``wall_spaces`` and ``counters`` by room of the
    kinds that are measured; ``lamps`` are the tables of every switched outlet.
    """

    fill: Mapping[str, Fill]
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


def work_out(house: House, network: Network) -> Figures:
    """Every figure of a house; a fact not recorded gives a figure that says what it lacks."""
    outlets = {each.id: receptacle_count(house, each) for each in house.circuits.values()}
    wires = {
        each.id: wire_limit(house, each, outlets[each.circuit].several if each.circuit in outlets else None)
        for each in house.runs.values()
    }
    fills = {each.id: fill_of(house, each) for each in house.boxes.values()}
    joints = {each.id: joint_fit(house, each) for each in house.joints()}
    matches = {each.id: receptacle_matches(house, network, each, outlets) for each in house.devices.values()}
    return Figures(
        fill=MappingProxyType({id_: fill for id_, fill in fills.items() if fill is not None}),
        wires=MappingProxyType(wires),
        circuits=MappingProxyType(
            {each.id: circuit_limit(house, each, wires) for each in house.circuits.values()}
        ),
        joints=MappingProxyType({id_: fit for id_, fit in joints.items() if fit is not None}),
        torques=MappingProxyType(
            {each.terminal: each for box in house.boxes.values() for each in screws_of(house, box)}
        ),
        outlets=MappingProxyType(outlets),
        receptacles=MappingProxyType({id_: each for id_, each in matches.items() if each}),
        guarded=MappingProxyType(guarded_devices(house, network)),
        wall_spaces=MappingProxyType(wall_spaces(house)),
        counters=MappingProxyType(counters(house)),
        lamps=lamp_tables(house, network),
    )
