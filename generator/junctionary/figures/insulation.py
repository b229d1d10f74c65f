"""How warm a conductor's insulation may become, by what is printed on the cable or the wire.

From memory, after NEC Table 310.4(A) and the cable articles; old NM and UF-B are
taken at 60 °C, the least they are made with. What is not named here is not known.
"""

import re
from dataclasses import dataclass

from junctionary.house.model import Run
from junctionary.records.cables import Cable


@dataclass(frozen=True, slots=True)
class Insulation:
    """The insulation's rating in °C, and the column its cable is held to in the end, or None."""

    celsius: int
    held_to_c: int | None = None


BY_CABLE = {
    "NM-B": Insulation(90, 60),
    "NMC-B": Insulation(90, 60),
    "NM": Insulation(60),
    "UF-B": Insulation(60),
    "UF": Insulation(60),
    "SER": Insulation(75),
    "SEU": Insulation(75),
    "USE": Insulation(75),
}
BY_MARKING = {
    "THHN": 90, "THWN-2": 90, "XHHW-2": 90, "RHW-2": 90, "RHH": 90, "USE-2": 90, "THW-2": 90,
    "THWN": 75, "XHHW": 75, "THW": 75, "RHW": 75, "RH": 75, "USE": 75,
    "TW": 60, "T": 60, "UF": 60, "R": 60,
}  # fmt: skip

_DEGREES = re.compile(r"(60|75|90) ?°? ?C")
_BETWEEN_MARKINGS = re.compile(r"\s*(?:/|,|\bor\b|\s)\s*")


def insulation_of(run: Run) -> Insulation | None:
    """The insulation of a run's conductors, or None where nothing tells it; of several marks the lowest."""
    if not isinstance(run.cable, Cable):
        return None
    usual = BY_CABLE.get(run.cable.kind)
    marking = run.record.insulation or run.cable.insulation
    if marking is None:
        return usual
    if degrees := _DEGREES.fullmatch(marking.strip()):
        celsius: int | None = int(degrees[1])
    else:
        ratings = [BY_MARKING.get(each.upper()) for each in _BETWEEN_MARKINGS.split(marking.strip()) if each]
        known = [each for each in ratings if each is not None]
        celsius = min(known) if ratings and len(known) == len(ratings) else None
    if celsius is None:
        return None
    return Insulation(celsius, usual.held_to_c if usual else None)
