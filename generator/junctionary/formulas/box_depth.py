"""How deep a box must be for the devices and wires in it, besides having the volume (314.24)."""

from fractions import Fraction
from functools import cache

from junctionary.formulas.sums import exact, plain
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import cite_in
from junctionary.tables import table
from junctionary.units import WireSize

DEEP_DEVICE_IN = Fraction(15, 8)
"""A device that goes further than this into its box wants room behind it."""

BEHIND_IN = Fraction(1, 4)


@cache
def least_depth(largest: WireSize | None, deepest_in: Fraction | None, edition: str) -> Worked:
    """The least inside depth in inches of a box that encloses devices.

    ``largest`` is the largest conductor in it, ``deepest_in`` how far the deepest device goes
    in; None is not recorded. A box with wire above 4 AWG is sized by its entries instead, and
    then this lacks an answer.
    """
    clause = cite_in(edition, "314.24(B)")
    printed = table("box-depth")
    lacks: list[str] = []
    steps: list[Step] = []
    if largest is None:
        lacks.append("the wire sizes in the box")
    else:
        row = next((each for each in printed if WireSize(each.text("size")) >= largest), None)
        if row is None:
            return lacking([f"a depth for {largest}: the table has none"], "in", (), [clause])
        steps.append(step(f"with {largest}", row.text("depth"), "in", printed.cite_for(edition)))
    if deepest_in is None:
        lacks.append("how deep its devices are")
    elif deepest_in > DEEP_DEVICE_IN:
        steps.append(step("behind the device", f"{exact(deepest_in)} + {exact(BEHIND_IN)}", "in", clause))
    else:
        steps.append(step("the device itself", exact(deepest_in), "in"))
    if lacks:
        return lacking(lacks, "in", steps, [clause])
    most = step("least depth", f"max({', '.join(plain(each.value) for each in steps)})", "in", clause)
    return finished(most.value, "in", [*steps, most])
