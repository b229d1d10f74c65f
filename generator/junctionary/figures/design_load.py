"""The load that a circuit is built for: how much, between which legs, and at which outlets."""

from collections.abc import Iterable, Sequence

from junctionary.formulas.sums import plain
from junctionary.formulas.worked import Worked, finished, lacking, step
from junctionary.house.model import Circuit, House
from junctionary.house.terminals import RECEPTACLES, WIRED
from junctionary.sources import cite
from junctionary.tables import table
from junctionary.units import Quantity

DESIGN_PERCENT = 80
DESIGN = cite(
    "practice", "The design load for voltage drop is 80 % of the breaker, at the circuit's farthest outlet"
)
HOTS_AT_120 = 1
"""A face with one hot is at 120 V."""


def design_load(house: House, circuit: Circuit) -> Worked:
    """80 % of the breaker, in A; of two the larger."""
    ratings = {each: house.breakers[each].rating for each in circuit.breakers}
    lacks = [f"the rating of {each}" for each, rating in ratings.items() if not isinstance(rating, Quantity)]
    if not ratings:
        lacks.append(f"which breaker feeds circuit {circuit.id}")
    rated = [rating.to("A") for rating in ratings.values() if isinstance(rating, Quantity)]
    if lacks or not rated:
        return lacking(lacks, "A")
    load = step("design load", f"{DESIGN_PERCENT} % × {plain(max(rated))}", "A", DESIGN)
    return finished(load.value, "A", [load])


def design_legs(house: House, circuit: Circuit, outlets: Sequence[str], *, neutral: bool) -> tuple[str, ...]:
    """Between which legs it hangs: both, unless the circuit has a neutral and outlets at 120 V."""
    breakers = [house.breakers[each] for each in circuit.breakers]
    legs = [
        leg or f"{each.panel}/{space}"
        for each in breakers
        for leg, space in zip(each.legs, each.spaces, strict=True)
    ]
    if not legs:
        return ("A",)
    at_120 = any(_at_120(house, circuit, box) for box in outlets)
    both = len(legs) > 1 and not (neutral and at_120)
    return tuple(legs[:2]) if both else (legs[0],)


def is_outlet(house: House, circuit: Circuit, at: str) -> bool:
    """Whether current is drawn there: a receptacle, a lamp or an appliance; or the panel a feeder ends in."""
    return at in house.panels or any(True for _ in _outlets(house, circuit, at))


def _outlets(house: House, circuit: Circuit, box: str) -> Iterable[str]:
    for device in house.boxes[box].devices if box in house.boxes else ():
        if device.kind.is_ in (*RECEPTACLES, *WIRED) and circuit.id in (device.circuits or (circuit.id,)):
            yield device.id


def _at_120(house: House, circuit: Circuit, box: str) -> bool:
    faces = table("receptacle-faces")
    for id_ in _outlets(house, circuit, box):
        kind = house.devices[id_].kind
        if kind.is_ not in RECEPTACLES:
            if kind.is_ != "appliance":
                return True
        elif kind.face is None or (kind.face in faces and faces.number(kind.face, "hots") == HOTS_AT_120):
            return True
    return False
