"""How large a ground must be: the equipment ground of a circuit, and the conductor to an electrode."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from junctionary.formulas.resistance import circular_mils
from junctionary.formulas.sums import exact, plain
from junctionary.formulas.worked import Step, Worked, finished, lacking, step
from junctionary.sources import cite_in
from junctionary.tables import table
from junctionary.units import WireSize

ROUNDED = Fraction(1, 1000)
"""Tabulated areas have four figures, so that one may stand this part short of a sum of others."""

AREA = "cmil"

LEAST_UNKNOWN = "how small the circuit's conductors might be"


@dataclass(frozen=True, slots=True)
class GroundSize:
    """The least size of a grounding conductor, with its area in circular mils as the figure.

    ``size`` is None where ``worked`` lacks a fact; ``enough`` is then a size that is
    sure to do all the same, where there is one.
    """

    size: WireSize | None
    enough: WireSize | None
    worked: Worked

    def suits(self, has: WireSize) -> bool | None:
        """Whether a conductor of that size will do, or None where it cannot be told."""
        if self.enough is not None and has >= self.enough:
            return True
        return None if self.size is None else has >= self.size


@cache
def equipment_ground(
    device_a: Fraction | None,
    metal: str | None,
    circuit: WireSize | None,
    least: WireSize | None,
    edition: str,
) -> GroundSize:
    """The least equipment ground behind an overcurrent device of ``device_a`` (250.122).

    ``circuit`` is the size of the circuit's ungrounded conductors, ``least`` the smallest
    that would do there: where they are larger, the ground grows in proportion.
    """
    lacks = [
        phrase
        for fact, phrase in (
            (device_a, "the rating of the breaker"),
            (metal, "the metal of the ground"),
            (circuit, "the size of the circuit's conductors"),
            # Without a rating there is nothing that the conductors must be large enough for.
            (least or device_a is None, LEAST_UNKNOWN),
        )
        if not fact
    ]
    if device_a is None or metal is None or circuit is None or least is None:
        return GroundSize(None, circuit, lacking(lacks, AREA, cites=[cite_in(edition, "250.122")]))
    if _area(circuit) is None:
        return GroundSize(None, circuit, lacking([f"the tabulated area of {circuit}"], AREA))
    printed = table("equipment-ground")
    row = printed.first_at_or_above("device", device_a)
    if row is None:
        gap = [f"a table row for a device of {plain(device_a)} A"]
        return GroundSize(None, circuit, lacking(gap, AREA))
    asked = WireSize(f"{row.text(_column(metal))} AWG")
    what = f"device up to {row.text('device')} A: {asked} {metal}"
    steps = [step(what, _known_area(asked), AREA, printed.cite_for(edition))]
    if circuit > least:
        what = f"in proportion, as the circuit has {circuit} where {least} would do"
        sum_ = f"{_known_area(asked)} × {_known_area(circuit)} / {_known_area(least)}"
        steps.append(step(what, sum_, AREA, cite_in(edition, "250.122(B)")))
    if steps[-1].value > Fraction(_known_area(circuit)):
        sum_ = f"min({exact(steps[-1].value, 0)}, {_known_area(circuit)})"
        what = f"no larger than the circuit's {circuit}"
        steps.append(step(what, sum_, AREA, cite_in(edition, "250.122(A)")))
    return _sized(steps, circuit)


def electrode_conductor(
    service: WireSize | None,
    service_metal: str | None,
    metal: str | None,
    electrode: str | None,
    edition: str,
) -> GroundSize:
    """The least conductor to one electrode, which it goes to alone (250.66).

    ``service`` is the largest ungrounded conductor of the service, or of the feeder to another
    building; ``electrode`` its kind: a rod or a concrete-encased one never asks for more than its own size.
    """
    own = _electrodes_own(electrode, metal, edition)
    lacks = [
        phrase
        for fact, phrase in (
            (service, "the size of the supply conductors"),
            (service_metal, "the metal of the supply conductors"),
            (metal, "the metal of the wire to the electrode"),
            (electrode, "what kind of electrode it is"),
        )
        if fact is None
    ]
    enough = own[0] if own else None
    if service is None or service_metal is None or metal is None or electrode is None:
        return GroundSize(None, enough, lacking(lacks, AREA, cites=[cite_in(edition, "250.66")]))
    asked = _by_service(service, service_metal, metal)
    if asked is None:
        gap = [f"a table row for a supply of {service} {service_metal}"]
        return GroundSize(None, enough, lacking(gap, AREA))
    what = f"supply of {service} {service_metal}: {asked} {metal}"
    steps = [step(what, _known_area(asked), AREA, table("electrode-conductor").cite_for(edition))]
    if own is not None and own[0] < asked:
        steps.append(own[1])
        sum_ = f"min({_known_area(asked)}, {_known_area(own[0])})"
        steps.append(step("the smaller is enough", sum_, AREA))
    elif own is None and electrode == "ring":
        gap = ["the size of the ring, which its wire need not pass"]
        return GroundSize(None, asked, lacking(gap, AREA, steps))
    return _sized(steps, asked)


def _electrodes_own(electrode: str | None, metal: str | None, edition: str) -> tuple[WireSize, Step] | None:
    """The size an electrode of that kind never asks to be passed, as a step; None where it has none."""
    printed = table("electrode-limit")
    if electrode is None or metal is None or electrode not in printed:
        return None
    row = printed.row(electrode)
    if row.text(_column(metal)) == "-":
        return None
    size = WireSize(f"{row.text(_column(metal))} AWG")
    what = f"to a {electrode} electrode alone: {size} {metal}"
    return size, step(what, _known_area(size), AREA, cite_in(edition, row.text("clause")))


def _by_service(service: WireSize, service_metal: str, metal: str) -> WireSize | None:
    column = f"{_column(service_metal)} service"
    for row in table("electrode-conductor"):
        if service <= WireSize(row.text(column)):
            return WireSize(f"{row.text(_column(metal))} AWG")
    return None


def _sized(steps: list[Step], at_most: WireSize) -> GroundSize:
    """The smallest size of the gauge that has the area of the last step."""
    needed = steps[-1].value
    found = next(
        (
            WireSize(each.text("size"))
            for each in table("conductor-area")
            if Fraction(each.text("area")) >= needed * (1 - ROUNDED)
        ),
        at_most,
    )
    return GroundSize(found, None, finished(needed, AREA, steps))


def _area(size: WireSize) -> Fraction | None:
    """A size's area in circular mils, as tabulated; above the gauge its name says it. None between two."""
    if size.name.endswith("kcmil"):
        return Fraction(size.circular_mils)
    return circular_mils(size)


def _known_area(size: WireSize) -> str:
    """The area of a size that the tables print."""
    area = _area(size)
    assert area is not None
    return plain(area)


def _column(metal: str) -> str:
    # Copper-clad aluminium shares the aluminium columns.
    return "copper" if metal == "copper" else "aluminium"
