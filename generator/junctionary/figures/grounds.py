"""The ground each run has beside the one it needs, and the wire to each grounding electrode."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from junctionary.figures.insulation import insulation_of
from junctionary.figures.wire import least_size
from junctionary.formulas.grounding import (
    LEAST_UNKNOWN,
    GroundSize,
    electrode_conductor,
    equipment_ground,
)
from junctionary.house.model import House, Run
from junctionary.marks import Place
from junctionary.records.cables import Cable, Conductor
from junctionary.records.house import Building, Electrode, Service
from junctionary.records.words import NEUTRAL_COLOURS
from junctionary.units import Quantity, WireSize

Made = Literal["wire", "armor", "raceway", "none", "unknown"]

GROUNDING_RACEWAYS = ("EMT", "RMC", "IMC")
"""Metal raceways that are themselves the ground of what runs in them (250.118, from memory)."""

FLEXIBLE = ("FMC", "LFMC")
"""Flexible metal conduit is a ground only where it is short, and its breaker small."""


@dataclass(frozen=True, slots=True)
class RunGround:
    """The equipment ground of one run.

    ``made`` is what it is; ``wire`` its conductor where it is one. ``needs`` is the least
    size and its sum, None where no wire is to be judged. ``suits`` is None where it cannot
    be told, and ``lacks`` says what would tell.
    """

    run: str
    circuit: str
    place: Place
    edition: str
    made: Made
    wire: Conductor | None = None
    needs: GroundSize | None = None
    lacks: tuple[str, ...] = ()

    @property
    def suits(self) -> bool | None:
        """Whether its size will do."""
        if self.wire is None or self.needs is None:
            return None
        return self.needs.suits(self.wire.size)


@dataclass(frozen=True, slots=True)
class ElectrodeWire:
    """The wire to one electrode of the service or of a building, taken to go to it alone.

    ``at`` is ``service`` or the building's id, ``panel`` the one whose supply it is sized by.
    """

    at: str
    electrode: str
    place: Place
    edition: str
    panel: str | None
    wire: Conductor | None
    needs: GroundSize
    lacks: tuple[str, ...]

    @property
    def suits(self) -> bool | None:
        """Whether its size will do, or None where it cannot be told."""
        return None if self.wire is None else self.needs.suits(self.wire.size)


def run_grounds(house: House) -> Mapping[str, RunGround]:
    """The ground of every run."""
    ratings = _ratings(house)
    return {each.id: _of_run(house, each, ratings.get(each.circuit)) for each in house.runs.values()}


def _ratings(house: House) -> Mapping[str, Fraction | None]:
    """The largest rating among the breakers of each circuit or source; None where one is not known."""
    found: dict[str, Fraction | None] = {}
    for breaker in house.breakers.values():
        if not isinstance(breaker.feeds, str):
            continue
        amps = breaker.rating.to("A") if isinstance(breaker.rating, Quantity) else None
        before = found.get(breaker.feeds, Fraction(0))
        found[breaker.feeds] = None if amps is None or before is None else max(before, amps)
    return found


def _of_run(house: House, run: Run, rating: Fraction | None) -> RunGround:
    made, wire = ground_of(run)
    if wire is None:
        conduit = isinstance(run.cable, Cable)
        gap = (
            f"whether the conduit of run {run.id} is its ground" if conduit else f"the cable of run {run.id}"
        )
        untold = (gap,) if made == "unknown" else ()
        return RunGround(run.id, run.circuit, run.place, run.edition, made, lacks=untold)
    live = [each for each in run.conductors if not each.is_ground]
    circuit = min((each.size for each in live if each.colour not in NEUTRAL_COLOURS), default=None)
    least = least_size(house, run, rating) if rating is not None else None
    needs = equipment_ground(rating, wire.metal, circuit, least, run.edition)
    lacks = () if needs.suits(wire.size) is not None else tuple(_named(run, needs.worked.lacks))
    return RunGround(run.id, run.circuit, run.place, run.edition, made, wire, needs, lacks)


def ground_of(run: Run) -> tuple[Made, Conductor | None]:
    """What the equipment ground of a run is made of, and its conductor where it is a wire."""
    if not isinstance(run.cable, Cable):
        return "unknown", None
    grounds = [each for each in run.conductors if each.is_ground]
    wire = min((each for each in grounds if each.colour != "armor"), key=_size, default=None)
    if wire is not None:
        return "wire", wire
    if grounds:
        return "armor", None
    if run.cable.kind in FLEXIBLE:
        return "unknown", None
    return ("raceway" if run.cable.kind in GROUNDING_RACEWAYS else "none"), None


def _size(conductor: Conductor) -> WireSize:
    return conductor.size


def _named(run: Run, lacks: tuple[str, ...]) -> Iterator[str]:
    """What a sum lacks, with the run it is about."""
    for each in lacks:
        if each == LEAST_UNKNOWN and insulation_of(run) is None:
            yield f"what the insulation of run {run.id} is"
        else:
            yield f"{each}, for run {run.id}"


def electrode_wires(house: House) -> tuple[ElectrodeWire, ...]:
    """The wire to each electrode that is recorded, the service's first."""
    service = house.record.service
    found = list(_of_service(house, service)) if service is not None else []
    for building in house.record.buildings:
        found += _of_building(house, building)
    return tuple(found)


def _of_service(house: House, service: Service) -> Iterator[ElectrodeWire]:
    conductors = service.conductors
    size, metal = (conductors.size, conductors.metal) if conductors is not None else (None, None)
    panel = service.disconnect if service.disconnect in house.panels else None
    edition = house.panels[panel].edition if panel else house.edition
    for number, electrode in enumerate(service.electrodes or ()):
        place = service.value_place("electrodes", number)
        yield _to(electrode, "service", place, edition, panel, size, metal)


def _of_building(house: House, building: Building) -> Iterator[ElectrodeWire]:
    """A building's electrodes go by the feeder of its panel, the largest where there are several."""
    feeders = [
        (max(hot, key=_size), panel)
        for panel in house.panels.values()
        if building_of(house, panel.id) == building.id and panel.feeder in house.circuits
        for run in (house.runs[each] for each in house.circuits[panel.feeder or ""].runs)
        if (
            hot := [
                each for each in run.conductors if not each.is_ground and each.colour not in NEUTRAL_COLOURS
            ]
        )
    ]
    supply, panel = max(feeders, key=lambda each: each[0].size, default=(None, None))
    size, metal = (supply.size, supply.metal) if supply is not None else (None, None)
    edition = panel.edition if panel is not None else house.edition
    for number, electrode in enumerate(building.electrodes or ()):
        place = building.value_place("electrodes", number)
        yield _to(electrode, building.id, place, edition, panel.id if panel else None, size, metal)


def building_of(house: House, panel: str) -> str | None:
    """The building in which a panel stands, by its room; None where nothing tells it."""
    at = house.panels[panel].record.at
    room = house.rooms.get(at.room) if at is not None and at.room is not None else None
    return room.record.building if room is not None else None


def _to(
    electrode: Electrode,
    at: str,
    place: Place,
    edition: str,
    panel: str | None,
    supply: WireSize | None,
    supply_metal: str | None,
) -> ElectrodeWire:
    wire = electrode.wire if isinstance(electrode.wire, Conductor) else None
    kind = None if electrode.is_ == "other" else electrode.is_
    needs = electrode_conductor(supply, supply_metal, wire.metal if wire else "copper", kind, edition)
    where = "the service" if at == "service" else at
    lacks: tuple[str, ...] = ()
    if wire is None:
        lacks = (f"what wire goes to the {electrode.is_} electrode of {where}",)
    elif needs.suits(wire.size) is None:
        lacks = tuple(f"{each} ({where})" for each in needs.worked.lacks)
    return ElectrodeWire(at, electrode.is_, place, edition, panel, wire, needs, lacks)
