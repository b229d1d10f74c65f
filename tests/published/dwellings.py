"""The published examples of a dwelling's load, put to our formulas."""

from fractions import Fraction
from typing import Any

from junctionary.formulas.cooking import cooking_steps
from junctionary.formulas.dwelling import DemandLoad, Dwelling, Heater, Item
from junctionary.formulas.dwelling_optional import optional_load
from junctionary.formulas.dwelling_service import LegPart, least_service, leg_load, lighting_circuits
from junctionary.formulas.dwelling_standard import neutral_load, standard_load
from junctionary.formulas.worked import Step, Worked


def standard(given: dict[str, Any], edition: str) -> dict[str, Any]:
    house = _dwelling(given)
    load, neutral = standard_load(house, edition), neutral_load(house, edition)
    volts = Fraction(given.get("volts", 120))
    lighting = lighting_circuits(house.area_ft2, Fraction(15), edition, volts)
    tiers = [
        each for each in load.va.steps if each.what.startswith(("the first", "what is above", "the rest"))
    ]
    return {
        "lighting": _value(load.va.steps, "together"),
        "demand": sum((each.value for each in tiers), Fraction(0)),
        "rest": tiers[-1].value,
        "cooking": _value(load.va.steps, "cooking appliance 1, column C"),
        "dryers": _value(load.va.steps, "dryer 1, no less than 5000 VA"),
        "neutral": neutral.amps.value,
        "neutral va": neutral.va.value,
        "lighting amps": _value(lighting.steps, f"at {volts} V"),
        "circuits of 15 A": lighting.value,
        "circuits of 20 A": lighting_circuits(house.area_ft2, Fraction(20), edition, volts).value,
        **_whole(load, edition),
    }


def optional(given: dict[str, Any], edition: str) -> dict[str, Any]:
    load = optional_load(_dwelling(given), edition)
    return {
        "general": _value(load.va.steps, "general load"),
        "general demand": _value(load.va.steps, "the first 10000 VA in full")
        + _value(load.va.steps, "the rest at 40 %"),
        "climate": _value(load.va.steps, "the larger of heating and cooling"),
        **_whole(load, edition),
    }


def leg(given: dict[str, Any], edition: str) -> dict[str, Any]:
    loads = [each.partition(" ") for each in given["loads"]]
    parts = tuple(
        LegPart(each, Fraction(amps), word == "motor") for each, (amps, _, word) in enumerate(loads)
    )
    found = leg_load(parts, "A", edition).value
    assert found is not None
    return {"amps": found, "service": least_service(found, edition).value}


def cooking(given: dict[str, Any], edition: str) -> dict[str, Any]:
    va = sum((each.value for each in cooking_steps(_items(given, "cooking"), edition)), Fraction(0))
    neutral = neutral_load(Dwelling(cooking=_items(given, "cooking")), edition)
    return {"kVA": va / 1000, "neutral kVA": neutral.least_va / 1000}


def _dwelling(given: dict[str, Any]) -> Dwelling:
    heaters = [each.partition(" in ") for each in given.get("heaters", [])]
    heating = [
        Heater(Item(f"heater {va}", Fraction(va)), "separate", int(pieces)) for va, _, pieces in heaters
    ]
    if "heat_pump" in given:
        heating.append(Heater(Item("heat pump", Fraction(given["heat_pump"])), "compressor"))
        heating.append(Heater(Item("backup", Fraction(given["supplement"])), "supplement"))
    return Dwelling(
        area_ft2=Fraction(given["area"]),
        small_appliance=int(given.get("small_appliance", 0)),
        laundry=int(given.get("laundry", 0)),
        cooking=_items(given, "cooking"),
        dryers=_items(given, "dryers"),
        appliances=_items(given, "appliances"),
        heating=tuple(heating),
        cooling=_items(given, "cooling"),
    )


def _items(given: dict[str, Any], kind: str) -> tuple[Item, ...]:
    name = {"cooking": "cooking appliance", "dryers": "dryer"}.get(kind, kind)
    told = [each.partition(" ") for each in given.get(kind, [])]
    return tuple(
        Item(f"{name} {number}", Fraction(va), neutral=word == "neutral")
        for number, (va, _, word) in enumerate(told, 1)
    )


def _whole(load: DemandLoad, edition: str) -> dict[str, Any]:
    service: Worked = least_service(load.least_a, edition)
    return {"total": load.va.value, "amps": load.amps.value, "service": service.value}


def _value(steps: tuple[Step, ...], what: str) -> Fraction:
    return next((each.value for each in steps if each.what == what), Fraction(0))
