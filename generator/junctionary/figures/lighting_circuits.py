"""The circuits for general lighting of a dwelling, held against its floor area."""

from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.dwelling_parts import is_outside
from junctionary.figures.service import floor_area
from junctionary.formulas.dwelling_service import lighting_current
from junctionary.formulas.worked import Worked
from junctionary.house.model import House
from junctionary.units import Quantity

FOR_LIGHTING = ("general", "lighting", "receptacles", "outdoor", "smoke-alarms")
"""Purposes of circuits among which the general lighting of a dwelling is shared out."""


@dataclass(frozen=True, slots=True)
class LightingCircuits:
    """The circuits that share the general lighting, a multiwire one as its hots, and what they carry in A.

    ``needs`` is what the floor area asks of them together. ``lacks`` are ratings that are not recorded.
    """

    circuits: tuple[str, ...]
    carries_a: Fraction
    needs: Worked
    lacks: tuple[str, ...]


def lighting_shared(house: House) -> LightingCircuits:
    """The general-lighting circuits of the dwelling; what stands apart is no part of its floor area."""
    circuits = [
        each
        for each in house.circuits.values()
        if each.breakers and each.record.purpose in FOR_LIGHTING and not is_outside(house, each)
    ]
    breakers = [house.breakers[breaker] for each in circuits for breaker in each.breakers]
    carries = sum(
        (each.rating.to("A") * each.poles for each in breakers if isinstance(each.rating, Quantity)),
        Fraction(0),
    )
    return LightingCircuits(
        tuple(each.id for each in circuits),
        carries,
        lighting_current(floor_area(house), house.edition),
        tuple(f"the rating of {each.id}" for each in breakers if not isinstance(each.rating, Quantity)),
    )
