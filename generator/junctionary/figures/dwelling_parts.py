"""Which loads of a house count in its load calculation, and as what.

Lamps, fans and what is merely plugged in on general, small-appliance and laundry circuits are
covered by the amounts for floor area and circuits, and are not counted again; nor is an outlet
on such a circuit. Everything else counts by its nameplate. A detached building is no part of the
floor area, so that all its loads count.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from junctionary.figures.circuits import NO_BRANCH_CIRCUITS
from junctionary.figures.draws import LINE_TO_NEUTRAL, Draw, by_circuit, line_to_line, together
from junctionary.formulas.cooking import LEAST_VA
from junctionary.formulas.dwelling import Dwelling, Heat, Heater, Item, Leg
from junctionary.house.model import Breaker, Circuit, House
from junctionary.house.terminals import is_across
from junctionary.records.values import NONE

GENERAL = ("general", "lighting", "receptacles", "bathroom", "garage", "outdoor", "smoke-alarms", "workshop")
"""Purposes of circuits that the amount for the floor area covers, within the dwelling."""

BY_CIRCUIT = ("small-appliance", "laundry")
"""Purposes that count by the circuit."""

PART_OF_LIGHTING = ("lighting", "alarm")
COOKING = ("range", "oven", "cooktop")
TURNS_AIR = ("heat-pump", "air-handler")


@dataclass(slots=True)
class _Sorted:
    cooking: list[Item] = field(default_factory=list)
    dryers: list[Item] = field(default_factory=list)
    appliances: list[Item] = field(default_factory=list)
    others: list[Item] = field(default_factory=list)
    heating: list[Heater] = field(default_factory=list)
    cooling: list[Item] = field(default_factory=list)
    chargers: list[Item] = field(default_factory=list)


def volts_of_service(house: House) -> int:
    """Nominal volts of the service: between its legs, or to the neutral where it has but one."""
    service = house.record.service
    return int(LINE_TO_NEUTRAL if service and service.system == "120 V" else line_to_line(house))


def counted_circuits(house: House) -> tuple[Circuit, ...]:
    """The circuits whose load counts: all but feeders and sources, and those nothing feeds."""
    return tuple(
        each
        for each in house.circuits.values()
        if each.breakers and each.record.purpose not in NO_BRANCH_CIRCUITS
    )


def is_covered(house: House, circuit: Circuit) -> bool:
    """Whether the amount for the floor area, or for its kind of circuit, covers what is plugged in on it."""
    return circuit.record.purpose in (*GENERAL, *BY_CIRCUIT) and not is_outside(house, circuit)


def is_outside(house: House, circuit: Circuit) -> bool:
    """Whether a circuit serves a detached building, which is no part of the floor area.

    One fed from a panel there does, or one all of whose rooms are there.
    """
    detached = {each.id for each in house.record.buildings if each.detached is True}
    at = [house.panels[house.breakers[each].panel].record.at for each in circuit.breakers]
    rooms = [each.room for each in at if each and each.room] if at else []
    from_there = {house.rooms[each].record.building for each in rooms if each in house.rooms}
    serves = {house.rooms[each].record.building for each in circuit.rooms if each in house.rooms}
    return any(each and each <= detached for each in (from_there, serves))


def _how_many(house: House, circuits: Iterable[Circuit], purpose: str) -> int:
    """How many circuits of a purpose there are, one with two legs as two."""
    return sum(legs_of(house, each) for each in circuits if each.record.purpose == purpose)


def legs_of(house: House, circuit: Circuit) -> int:
    """The poles that feed a circuit: two for a multiwire one."""
    return sum(house.breakers[each].poles for each in circuit.breakers) or 1


def sort_loads(
    house: House, draws: Mapping[str, Draw], circuits: Iterable[Circuit], area_ft2: Fraction | None
) -> Dwelling:
    """The loads on these circuits as the formulas take them; of those never together the heaviest."""
    kept = tuple(circuits)
    ids = {each.id for each in kept}
    parts = _Sorted()
    on_each = by_circuit(draws)
    lamps: dict[tuple[str, Leg], list[Draw]] = {}
    for draw in together(each for each in draws.values() if each.circuit in ids):
        circuit = house.circuits[draw.circuit or ""]
        covered = is_covered(house, circuit)
        leg = _leg_of(house, circuit, draw)
        if draw.recorded:
            _place(parts, draw, item_of(draw, words_of(circuit, draw, on_each[circuit.id]), leg), covered)
        elif not covered:
            lamps.setdefault((circuit.id, leg), []).append(draw)
    parts.others += [_lamps(house.circuits[id_], leg, found) for (id_, leg), found in lamps.items()]
    return Dwelling(
        area_ft2=area_ft2,
        small_appliance=_how_many(house, kept, "small-appliance"),
        laundry=_how_many(house, kept, "laundry"),
        cooking=tuple(parts.cooking),
        dryers=tuple(parts.dryers),
        appliances=tuple(parts.appliances),
        others=tuple(parts.others),
        heating=tuple(parts.heating),
        cooling=tuple(parts.cooling),
        chargers=tuple(parts.chargers),
        volts=volts_of_service(house),
        lacks=tuple(_gaps(house, draws, kept)),
    )


def counts_by_nameplate(draw: Draw, covered: bool) -> bool:
    """Whether a load counts by its nameplate, and is not within the amounts for area and circuits."""
    parts = _Sorted()
    _place(parts, draw, item_of(draw, draw.name, "either"), covered)
    own = (parts.cooking, parts.dryers, parts.appliances, parts.others, parts.chargers)
    return any(own) or bool(parts.heating or parts.cooling)


def words_of(circuit: Circuit, draw: Draw, beside: Sequence[Draw]) -> str:
    """A load by its name; by its circuit's, where it has none and nothing is ``beside`` it there."""
    unnamed = draw.name == draw.is_.replace("-", " ")
    said = circuit.name if len(beside) == 1 and unnamed and draw.recorded else draw.name
    return f"{said[:1].upper()}{said[1:]}"


def lamps_of(circuit: Circuit) -> str:
    """What the lamps, fans and other devices of one circuit are called together."""
    return f"{circuit.name}, lamps and the like"


def _leg_of(house: House, circuit: Circuit, draw: Draw) -> Leg:
    """The one leg that a load at 120 V stands on; either, where that is not recorded."""
    poles = [leg for each in circuit.breakers for leg in house.breakers[each].legs]
    legs: set[str | None] = {*draw.connection.legs} or ({*poles} if len(poles) == 1 else set())
    return "A" if legs == {"A"} else "B" if legs == {"B"} else "either"


def item_of(draw: Draw, what: str, leg: Leg) -> Item:
    """A load as the formulas take it, on the leg it stands on where it runs from one to the neutral."""
    to_neutral = draw.volts is None or not is_across(draw.volts)
    return Item(
        what=what,
        va=draw.volt_amps.value,
        motor=draw.motor is True,
        neutral=to_neutral,
        leg=leg if to_neutral else None,
        lacks=draw.volt_amps.lacks,
    )


def _lamps(circuit: Circuit, leg: Leg, lamps: list[Draw]) -> Item:
    """The lamps, fans and other devices that draw of themselves on one circuit, as one load."""
    lacks = tuple(dict.fromkeys(lack for each in lamps for lack in each.volt_amps.lacks))
    total = sum((each.volt_amps.value or Fraction(0) for each in lamps), Fraction(0))
    return Item(lamps_of(circuit), None if lacks else total, neutral=True, leg=leg, lacks=lacks)


def _place(parts: _Sorted, draw: Draw, item: Item, covered: bool) -> None:
    loose = draw.fastened is not True or not draw.recorded or draw.is_ in PART_OF_LIGHTING
    plugged_in_general = covered and loose
    if draw.is_ in COOKING and (item.va is None or item.va > LEAST_VA):
        parts.cooking.append(item)
    elif draw.is_ == "dryer" and not item.neutral:
        parts.dryers.append(item)
    elif draw.is_ in TURNS_AIR:
        parts.heating.append(Heater(item, "compressor"))
        parts.cooling.append(item)
    elif draw.is_ == "air-conditioner":
        parts.cooling.append(item)
    elif draw.is_ == "furnace":
        # With a motor it burns something else, and what it draws turns the air.
        parts.heating.append(Heater(item, "compressor" if item.motor else "central"))
    elif draw.is_ == "space-heater" and not plugged_in_general:
        how: Heat = "supplement" if draw.part_of else "separate"
        parts.heating.append(Heater(item, how))
    elif draw.is_ == "car-charger":
        parts.chargers.append(item)
    elif not plugged_in_general:
        (parts.appliances if draw.fastened and draw.recorded else parts.others).append(item)


def _gaps(house: House, draws: Mapping[str, Draw], circuits: Iterable[Circuit]) -> Iterable[str]:
    """What may hide a load: a circuit of no told purpose, and one of its own with no load told."""
    loaded = {each.circuit for each in draws.values()}
    for circuit in circuits:
        if circuit.record.purpose is None:
            yield f"the purpose of circuit {circuit.id}"
        elif circuit.id not in loaded and not is_covered(house, circuit):
            yield f"which loads circuit {circuit.id} feeds"


def untold_breakers(house: House, panels: Iterable[str]) -> Iterable[str]:
    """The gaps where a breaker may feed a load nobody recorded; one that is kept off feeds none."""
    for id_ in panels:
        panel = house.panels[id_]
        own = [each for each in panel.breakers if each.spaces != ("main",)]
        if not own and not panel.fillers:
            yield f"the breakers of panel {id_}"
        yield from (f"what breaker {each.id} feeds" for each in own if _feeds_unknown(each))


def kept_off(house: House) -> tuple[str, ...]:
    """The breakers that are kept off, of which nobody knows what they feed."""
    return tuple(
        each.id
        for each in house.breakers.values()
        if not isinstance(each.feeds, str) and each.record.kept_off is True
    )


def _feeds_unknown(breaker: Breaker) -> bool:
    return (
        not isinstance(breaker.feeds, str)
        and breaker.feeds is not NONE
        and breaker.record.kept_off is not True
    )
