"""Torque measured on a terminal, against what the device lists."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Literal

from junctionary.sources import Citation, cite_for
from junctionary.units import Quantity, show

WITHIN = Fraction(1, 10)
"""How far from the listed value still counts as listed: our threshold, marked practice."""


@dataclass(frozen=True, slots=True)
class TorqueMatch:
    """A measured torque beside the listed; ``off`` is the part it is over (+) or under (−)."""

    verdict: Literal["as listed", "too loose", "too tight"]
    measured: Quantity
    listed: Quantity
    off: Fraction
    cite: Citation | None

    @property
    def allowed(self) -> str:
        """The listed torque in both units."""
        return in_both_units(self.listed)


def compare_torque(
    measured: Quantity, listed: Quantity, edition: str, listed_to: Quantity | None = None
) -> TorqueMatch:
    """How a measured torque stands to a listed one, or to a listed range, in whatever units.

    It cites 110.14(D), which editions before 2017 do not have.
    """
    upper = listed_to or listed
    found, low, high = (each.to("in-lb") for each in (measured, listed, upper))
    nearest = min(max(found, low), high)
    off = (found - nearest) / nearest
    verdict: Literal["as listed", "too loose", "too tight"] = "as listed"
    if abs(off) > WITHIN:
        verdict = "too tight" if off > 0 else "too loose"
    return TorqueMatch(verdict, measured, listed, off, cite_for(edition, "110.14(D)"))


@cache
def in_both_units(torque: Quantity, system: str = "imperial") -> str:
    """A torque as ``14 in-lb (1.58 N m)``, or the other way about in a house that is shown in metric.

    One written in foot-pounds is told in inch-pounds as well, as small screws are listed.
    """
    metric = show(torque, "N m", 2)
    pounds = str(torque) if torque.unit == "in-lb" else show(torque, "in-lb", 1)
    if torque.unit == "ft-lb":
        return f"{torque} ({pounds}, {metric})"
    return f"{metric} ({pounds})" if system == "metric" else f"{pounds} ({metric})"
