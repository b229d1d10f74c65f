"""Loads held against what a receptacle, and what half a circuit, may take."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from junctionary.figures.draws import Draw, by_circuit, together
from junctionary.figures.receptacles import ReceptacleMatch
from junctionary.formulas.circuit_load import Part, connected_load, least_for_range, most_fastened
from junctionary.formulas.receptacle import largest_cord_load, sets_cord_load
from junctionary.formulas.worked import Worked, lacking
from junctionary.house.model import Circuit, House
from junctionary.units import Quantity

OFTEN_FASTENED = ("microwave", "air-conditioner", "space-heater", "car-charger", "pump")
"""Plugged loads that may be fastened in place or not; others that are plugged are taken to be loose."""

INDIVIDUAL_ABOVE_A = 20
"""Above this a receptacle alone on its circuit is for one large appliance, and no share of it is asked."""


@dataclass(frozen=True, slots=True)
class CordLoad:
    """One plugged load, and the most that one may draw there, in A.

    ``most`` lacks what is not recorded. ``over`` is None where either is not known.
    """

    draw: Draw
    circuit: str
    device: str
    most: Worked

    @property
    def over(self) -> bool | None:
        """Whether it draws more than it may."""
        if self.draw.amps.value is None or self.most.value is None:
            return None
        return self.draw.amps.value > self.most.value


@dataclass(frozen=True, slots=True)
class FixedLoads:
    """What is fastened in place behind a breaker that also feeds lights or receptacles, lamps aside, in A.

    ``total`` lacks what is not recorded, and its last step is then what it is at least; ``most``
    is half the circuit. ``perhaps`` may be fastened too, and ``perhaps_a`` is the total with them.
    ``beside`` are the lights and receptacles.
    """

    circuit: str
    breaker: str
    draws: tuple[Draw, ...]
    total: Worked
    most: Worked
    perhaps: tuple[Draw, ...]
    perhaps_a: Fraction
    beside: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RangeCircuit:
    """A household range, and the least rating of its circuit in A.

    ``least`` is None where none is asked, and lacks what the range draws where that is not recorded.
    """

    draw: Draw
    breaker: str
    rating_a: Fraction | None
    least: Worked | None

    @property
    def short(self) -> bool:
        """Whether the circuit is certainly too small for it."""
        least = self.least.value if self.least else None
        return least is not None and self.rating_a is not None and self.rating_a < least


def cord_loads(
    house: House, draws: Mapping[str, Draw], matches: Mapping[str, tuple[ReceptacleMatch, ...]]
) -> Iterator[CordLoad]:
    """Each load plugged into a receptacle of the record.

    A load alone on a circuit of more than 20 A is left out, as is one fastened in place and
    alone on its circuit: for these the breaker is the limit; and so is one on a receptacle among
    several for which the table has no row, as at 50 A or where the receptacle does not suit its circuit.
    """
    for draw in draws.values():
        if not draw.plugged or draw.device is None or draw.circuit is None:
            continue
        own = [each for each in matches.get(draw.device, ()) if each.circuit == draw.circuit]
        if not own:
            untold = lacking([f"whether {draw.device} is a receptacle of circuit {draw.circuit}"], "A")
            yield CordLoad(draw, draw.circuit, draw.device, untold)
        for match in own:
            alone = match.count is not None and match.count.outlets == 1
            large = match.breaker_a is not None and match.breaker_a > INDIVIDUAL_ABOVE_A
            if match.count is not None and match.count.several and _is_not_set(match):
                continue
            if not alone or not (large or draw.fastened):
                edition = house.boxes[house.devices[draw.device].box].edition
                yield CordLoad(draw, draw.circuit, draw.device, _most(match, edition))


def _is_not_set(match: ReceptacleMatch) -> bool:
    """Whether the code sets no limit for one load on such a receptacle of such a circuit."""
    told = match.breaker_a is not None and match.rating_a is not None
    return told and not sets_cord_load(match.breaker_a or Fraction(0), match.rating_a or Fraction(0))


def _most(match: ReceptacleMatch, edition: str) -> Worked:
    if match.breaker_a is None or match.rating_a is None:
        return lacking(match.fit.lacks, "A")
    return largest_cord_load(
        match.breaker_a, match.rating_a, match.count.outlets if match.count else None, edition
    )


def fixed_loads(
    house: House, draws: Mapping[str, Draw], matches: Mapping[str, tuple[ReceptacleMatch, ...]]
) -> Iterator[FixedLoads]:
    """The fastened loads behind each 15 or 20 A breaker that also feeds lights or receptacles."""
    on_circuit = by_circuit(draws)
    for circuit in house.circuits.values():
        own = on_circuit.get(circuit.id, ())
        for breaker in circuit.breakers:
            behind = [each for each in own if _behind(each, breaker)]
            fixed = [each for each in behind if each.fastened and each.is_ != "lighting"]
            perhaps = [each for each in behind if each.fastened is None and each.is_ in OFTEN_FASTENED]
            beside = tuple(_beside(circuit, breaker, behind, (*fixed, *perhaps), matches))
            rating = house.breakers[breaker].rating
            if not (fixed or perhaps) or not beside or not isinstance(rating, Quantity):
                continue
            most = most_fastened(rating.to("A"), circuit.edition)
            if most.value is None:
                continue
            kept = together(fixed)
            lacks = [lack for each in kept for lack in each.amps.lacks]
            either = _total(together((*fixed, *perhaps)), ())
            yield FixedLoads(
                circuit=circuit.id,
                breaker=breaker,
                draws=kept,
                total=_total(kept, lacks),
                most=most,
                perhaps=tuple(perhaps),
                perhaps_a=either.steps[-1].value,
                beside=beside,
            )


def range_circuits(house: House, draws: Mapping[str, Draw]) -> Iterator[RangeCircuit]:
    """Each household range on a circuit of which the breaker is recorded, one for each that feeds it."""
    for draw in draws.values():
        if draw.is_ != "range" or draw.circuit is None:
            continue
        circuit = house.circuits[draw.circuit]
        for breaker in circuit.breakers:
            rating = house.breakers[breaker].rating
            rating_a = rating.to("A") if isinstance(rating, Quantity) else None
            va = draw.volt_amps
            least = va if va.value is None else least_for_range(va.value, circuit.edition)
            yield RangeCircuit(draw, breaker, rating_a, least)


def _behind(draw: Draw, breaker: str) -> bool:
    """Whether a breaker feeds a load; where it is not known which of the circuit's does, any of them may."""
    feeds = [each.breaker for each in draw.connection.feeds]
    return not feeds or breaker in feeds


def _total(draws: Iterable[Draw], lacks: Iterable[str]) -> Worked:
    return connected_load([Part(each.amps.steps[-1]) for each in draws if each.amps.value is not None], lacks)


def _beside(
    circuit: Circuit,
    breaker: str,
    draws: Iterable[Draw],
    fixed: Iterable[Draw],
    matches: Mapping[str, tuple[ReceptacleMatch, ...]],
) -> Iterator[str]:
    """The lamps behind a breaker, and its receptacles that do not hold a fastened load."""
    held = {each.device for each in fixed}
    yield from (each.id for each in draws if each.is_ == "lighting" and not each.plugged)
    for id_ in circuit.devices:
        if id_ not in held and any(each.breaker == breaker for each in matches.get(id_, ())):
            yield id_
