"""Worked examples printed elsewhere: what we compute is what they print, to the digits they print.

One YAML file an outside source. ``printed`` holds what the source prints, as printed;
``printed_wrong`` what it prints wrongly, with ``right`` beside it: we must agree with the latter only.
"""

import re
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml
from published import dwellings

from junctionary.formulas.ampacity import Conductor, ampacity, largest_breaker
from junctionary.formulas.box_fill import BoxContents, Entering, Yoke, box_fill
from junctionary.formulas.box_volume import BoxVolume
from junctionary.formulas.circuit_load import least_for_range, most_fastened, range_demand
from junctionary.formulas.fault import adiabatic_k, least_area
from junctionary.formulas.grounding import electrode_conductor, equipment_ground
from junctionary.formulas.receptacle import largest_cord_load, receptacle_fit
from junctionary.formulas.resistance import Wire, circular_mils, drop_constant
from junctionary.formulas.sums import evaluate
from junctionary.formulas.voltage_drop import (
    OUT_AND_BACK,
    drop_by_area,
    drop_by_resistance,
    least_area_for_drop,
    most_drop,
    percent_of,
    size_for,
)
from junctionary.sources import cite
from junctionary.sources.citing import CONFIRMED
from junctionary.tables import table
from junctionary.units import WireSize, decimal


def _examples() -> list[Any]:
    found = []
    for path in sorted(Path(__file__).parent.glob("*.yaml")):
        data = yaml.load(path.read_text(encoding="utf-8"), yaml.BaseLoader)
        found += [
            pytest.param({"source": data["source"], **each}, id=each["id"]) for each in data["examples"]
        ]
    return found


@pytest.mark.parametrize("example", _examples())
def test_what_is_computed_is_what_is_printed(example: dict[str, Any]) -> None:
    assert cite(example["source"], example["clause"]).summary
    assert example["mark"] in CONFIRMED
    ours = FORMULAS[example["formula"]](example["given"], example["edition"])
    trusted = example["right"] if "printed_wrong" in example else example["printed"]
    for name, printed in trusted.items():
        assert _agrees(ours[name], printed), f"{name}: {ours[name]}, printed {printed}"
    for name, printed in example.get("printed_wrong", {}).items():
        assert not _agrees(ours[name], printed), f"{name} agrees with a value known to be wrong"


def _agrees(ours: Any, printed: Any) -> bool:
    if isinstance(printed, list):
        return sorted(ours) == sorted(evaluate(each) for each in printed)
    if isinstance(ours, str):
        return ours == printed
    if re.fullmatch(r"[\d.]+", printed):
        digits = len(printed.partition(".")[2])
        return decimal(ours, digits) == printed
    return ours == evaluate(printed)


def _wires(told: list[str]) -> list[tuple[int, WireSize]]:
    return [(int(count), WireSize(size)) for count, _, size in (each.partition(" x ") for each in told)]


def _flat(told: list[str]) -> tuple[WireSize, ...]:
    return tuple(size for count, size in _wires(told) for _ in range(count))


def _yes(answer: bool | None) -> str:
    return {True: "yes", False: "no", None: "cannot tell"}[answer]


def _box_fill(given: dict[str, Any], edition: str) -> dict[str, Any]:
    contents = BoxContents(
        entering=tuple(
            Entering("conductors", size, count) for count, size in _wires(given.get("conductors", []))
        ),
        grounds=_flat(given.get("grounds", [])),
        isolated_grounds=_flat(given.get("isolated_grounds", [])),
        clamps_inside=given.get("clamps") == "inside",
        yokes=tuple(Yoke("device", WireSize(each)) for each in given.get("yokes", [])),
    )
    marked = Fraction(given["volume"]) if "volume" in given else None
    fill = box_fill(contents, BoxVolume("here", marked, given.get("standard")), edition)
    return {
        "filled": fill.filled.value,
        "parts": [each.value for each in fill.filled.steps[:-1]],
        "fits": _yes(fill.fits),
    }


def _most_conductors(given: dict[str, Any], edition: str) -> dict[str, Any]:
    def fits(count: int) -> bool | None:
        entering = (Entering("conductors", WireSize(given["size"]), count),)
        return box_fill(BoxContents(entering), BoxVolume("here", standard=given["box"]), edition).fits

    return {"most": Fraction(max(count for count in range(1, 60) if fits(count)))}


def _ampacity(given: dict[str, Any], edition: str) -> dict[str, Any]:
    conductor = Conductor(
        size=WireSize(given["size"]),
        metal=given.get("metal", "copper"),
        insulation_c=int(given["insulation"]),
        ambient_c=evaluate(given["ambient"]),
        together=int(given["together"]),
        held_to_c=int(given["held_to"]) if "held_to" in given else None,
        terminals_c=int(given["terminals"]) if "terminals" in given else None,
    )
    carried = ampacity(conductor, edition)
    return {
        "adjusted": next((each.value for each in carried.steps if "together" in each.what), None),
        "ampacity": carried.value,
        "breaker": largest_breaker(conductor, True, edition).value,
    }


def _receptacle(given: dict[str, Any], edition: str) -> dict[str, Any]:
    circuit, receptacle = Fraction(given["circuit"]), Fraction(given["receptacle"])
    return {"fits": _yes(receptacle_fit(circuit, receptacle, int(given["outlets"]), edition).fits)}


def _cord_load(given: dict[str, Any], edition: str) -> dict[str, Any]:
    circuit, receptacle = Fraction(given["circuit"]), Fraction(given["receptacle"])
    return {"load": largest_cord_load(circuit, receptacle, int(given["outlets"]), edition).value}


def _fastened(given: dict[str, Any], edition: str) -> dict[str, Any]:
    return {"most": most_fastened(Fraction(given["circuit"]), edition).value}


def _range_circuit(given: dict[str, Any], edition: str) -> dict[str, Any]:
    va = Fraction(given["va"])
    least = least_for_range(va, edition)
    counts = range_demand("range", va, Fraction(240), edition).value * 240 / 1000
    return {"least": least.value if least else None, "kW": counts}


def _voltage_drop(given: dict[str, Any], edition: str) -> dict[str, Any]:
    amps, feet, volts = (Fraction(given[each]) for each in ("amps", "feet", "volts"))
    ways = given.get("ways", OUT_AND_BACK)
    if "ohm" in given or "table" in given:
        column = f"copper {given['made']}" if "made" in given else "copper"
        ohm = (
            Fraction(given["ohm"]) if "ohm" in given else table(given["table"]).number(given["size"], column)
        )
        drop = drop_by_resistance(ohm, amps, feet, ways)
    else:
        mils = circular_mils(WireSize(given["size"]))
        drop = drop_by_area(drop_constant("copper", given["made"]), amps, feet, mils, ways)
    return {"drop": drop.value, "percent": percent_of(drop.value, volts).value}


def _drop_allowed(given: dict[str, Any], edition: str) -> dict[str, Any]:
    allowed = most_drop(Fraction(given["volts"]), Fraction(given["percent"]))
    return {"allowed": allowed.value, "left": allowed.steps[-1].value}


def _size_for_drop(given: dict[str, Any], edition: str) -> dict[str, Any]:
    amps, feet, volts = (Fraction(given[each]) for each in ("amps", "feet", "volts"))
    allowed, k = most_drop(volts, Fraction(given["percent"])).value, drop_constant("copper", "stranded")
    size = size_for(least_area_for_drop(k, amps, feet, allowed).value)
    drops = {
        each: drop_by_area(k, amps, feet, circular_mils(WireSize(each))).value for each in given["sizes"]
    }
    return {"size": str(size), "allowed": allowed, **drops}


def _fault_area(given: dict[str, Any], edition: str) -> dict[str, Any]:
    k = adiabatic_k(Wire(WireSize("14 AWG"), given["metal"]))
    return {"area": least_area(Fraction(given["amps"]), Fraction(given["seconds"]), k).value}


def _equipment_ground(given: dict[str, Any], edition: str) -> dict[str, Any]:
    circuit = WireSize("500 kcmil")  # so large that the table alone decides
    device = Fraction(given["device"])
    return {
        metal: str(equipment_ground(device, metal, circuit, circuit, edition).size)
        for metal in ("copper", "aluminium")
    }


def _electrode_conductor(given: dict[str, Any], edition: str) -> dict[str, Any]:
    supply = WireSize(given["service"]), given["metal"]
    return {
        metal: str(electrode_conductor(*supply, metal, given["electrode"], edition).size)
        for metal in ("copper", "aluminium")
    }


FORMULAS: dict[str, Callable[[dict[str, Any], str], dict[str, Any]]] = {
    "ampacity": _ampacity,
    "box-fill": _box_fill,
    "cord-load": _cord_load,
    "cooking": dwellings.cooking,
    "drop-allowed": _drop_allowed,
    "electrode-conductor": _electrode_conductor,
    "equipment-ground": _equipment_ground,
    "dwelling-optional": dwellings.optional,
    "dwelling-standard": dwellings.standard,
    "fault-area": _fault_area,
    "leg": dwellings.leg,
    "fastened": _fastened,
    "most-conductors": _most_conductors,
    "range-circuit": _range_circuit,
    "receptacle": _receptacle,
    "size-for-drop": _size_for_drop,
    "voltage-drop": _voltage_drop,
}
