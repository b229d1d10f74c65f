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

from junctionary.formulas.ampacity import Conductor, ampacity, largest_breaker
from junctionary.formulas.box_fill import BoxContents, Entering, Yoke, box_fill
from junctionary.formulas.box_volume import BoxVolume
from junctionary.formulas.receptacle import largest_cord_load, receptacle_fit
from junctionary.formulas.sums import evaluate
from junctionary.sources import cite
from junctionary.sources.citing import CONFIRMED
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


FORMULAS: dict[str, Callable[[dict[str, Any], str], dict[str, Any]]] = {
    "ampacity": _ampacity,
    "box-fill": _box_fill,
    "cord-load": _cord_load,
    "most-conductors": _most_conductors,
    "receptacle": _receptacle,
}
