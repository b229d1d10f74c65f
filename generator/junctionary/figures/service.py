"""The service load of a house by each method, and whether its service and conductors are large enough."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from junctionary.figures.draws import Draw
from junctionary.figures.dwelling_parts import counted_circuits, kept_off, sort_loads, untold_breakers
from junctionary.figures.legs import Legs, legs_of_service
from junctionary.figures.surroundings import BASE_C
from junctionary.formulas.ampacity import Conductor, ampacity, largest_breaker
from junctionary.formulas.dwelling import DemandLoad, Dwelling, amount
from junctionary.formulas.dwelling_optional import existing_load, optional_load
from junctionary.formulas.dwelling_service import (
    TERMINALS_C,
    WHOLE_LOAD_A,
    least_conductor,
    least_service,
    lighting_circuits,
    whole_amps,
    whole_load_ampacity,
)
from junctionary.formulas.dwelling_standard import neutral_load, standard_load
from junctionary.formulas.worked import Worked, lacking
from junctionary.house.model import House, Panel
from junctionary.marks import Place
from junctionary.sources import edition_year
from junctionary.units import Quantity, WireSize

LIGHTING_A = (Fraction(15), Fraction(20))


@dataclass(frozen=True, slots=True)
class ServiceWire:
    """The service conductors: what they may carry, and what is asked of them, in A.

    ``rating_a`` is what they are held against: the main breaker's rating, which is what guards them, or
    the service's where that is not recorded. ``by_share``: 310.12 holds, and ``needs`` is 83 % of it; else
    ``needs`` is the largest breaker that may guard them. ``least`` is the smallest size of their metal
    that the rating may have, by 310.12; ``fits`` is None where it cannot be told.
    """

    size: WireSize
    metal: str | None
    place: Place
    rating_a: Fraction | None
    carries: Worked
    needs: Worked
    by_share: bool
    least: WireSize | None
    fits: bool | None


@dataclass(frozen=True, slots=True)
class ServiceLoad:
    """The load of a house on its service.

    ``existing`` is None for a house built under the edition it is judged by.
    ``rating_a`` is None where not recorded. ``passes`` is whether one method at least shows
    that the service is large enough; None where that cannot be told. ``panel`` is where the
    service is disconnected. ``circuits`` are the least number of lighting circuits, by their rating.
    ``taken`` says what was taken for granted. ``methods`` are those that hold for this house: the
    optional one needs a service of 100 A with two legs.
    """

    edition: str
    dwelling: Dwelling
    standard: DemandLoad
    optional: DemandLoad
    existing: DemandLoad | None
    neutral: DemandLoad
    least: Worked
    circuits: Mapping[Fraction, Worked]
    panel: str | None
    rating_a: Fraction | None
    passes: bool | None
    wire: ServiceWire | None
    legs: Legs
    taken: tuple[str, ...]
    methods: tuple[DemandLoad, ...]


def floor_area(house: House) -> Fraction | None:
    """The recorded floor area in ft², None where it is not recorded."""
    area = house.record.floor_area
    return area.to("ft2") if area is not None else None


def service_load(house: House, draws: Mapping[str, Draw]) -> ServiceLoad:
    """The service load of a house; what is not recorded gives a load that says what it lacks."""
    edition, area = house.edition, floor_area(house)
    gaps = tuple(untold_breakers(house, house.panels)) or (() if house.panels else ("the panel",))
    found = sort_loads(house, draws, counted_circuits(house), area)
    dwelling = replace(
        found,
        small_appliance=max(found.small_appliance, int(amount("small-appliance circuit", "count"))),
        laundry=max(found.laundry, int(amount("laundry circuit", "count"))),
        lacks=(*gaps, *found.lacks),
    )
    standard, optional = standard_load(dwelling, edition), optional_load(dwelling, edition)
    existing = existing_load(dwelling, edition) if _stood_before(house) else None
    panel, rating = service_panel(house), _rating(house)
    methods = tuple(
        each
        for each, holds in ((standard, True), (optional, _optional_holds(house, rating)), (existing, True))
        if each is not None and holds
    )
    smaller = min(methods, key=lambda each: each.least_a)
    wire = _service_wire(house)
    return ServiceLoad(
        edition=edition,
        dwelling=dwelling,
        standard=standard,
        optional=optional,
        existing=existing,
        neutral=neutral_load(dwelling, edition),
        least=lacking(smaller.amps.lacks, "A")
        if smaller.amps.lacks
        else least_service(smaller.least_a, edition),
        circuits={each: lighting_circuits(area, each, edition) for each in LIGHTING_A},
        panel=panel.id if panel else None,
        rating_a=rating,
        passes=_passes(methods, rating),
        wire=wire,
        legs=legs_of_service(house, draws, area, gaps),
        taken=tuple(_taken(house, found, wire)),
        methods=methods,
    )


def service_panel(house: House) -> Panel | None:
    """Where the service is disconnected: as told, or else the one panel the service feeds."""
    service = house.record.service
    told = house.panels.get(service.disconnect) if service and service.disconnect else None
    fed = [each for each in house.panels.values() if each.record.fed_by == "service"]
    only = fed if len(fed) == 1 else list(house.panels.values())
    return told or (only[0] if len(only) == 1 else None)


def _rating(house: House) -> Fraction | None:
    """What the service may supply: its rating or its main breaker's, the smaller of those recorded."""
    service, panel = house.record.service, service_panel(house)
    told = [service.rating if service else None, panel.record.main if panel else None]
    known = [each.to("A") for each in told if isinstance(each, Quantity)]
    return min(known, default=None)


def _optional_holds(house: House, rating: Fraction | None) -> bool:
    """Whether the service may be judged by the optional method (220.82(A), from memory)."""
    service = house.record.service
    two_legs = service is None or service.system != "120 V"
    return two_legs and (rating is None or rating >= WHOLE_LOAD_A[0])


def _stood_before(house: House) -> bool:
    return house.record.built is not None and house.record.built < edition_year(house.edition)


def _passes(methods: Iterable[DemandLoad], rating: Fraction | None) -> bool | None:
    kept = tuple(methods)
    if rating is None:
        return None
    if any(each.amps.value is not None and whole_amps(each.amps.value) <= rating for each in kept):
        return True
    return False if all(whole_amps(each.least_a) > rating for each in kept) else None


def _service_wire(house: House) -> ServiceWire | None:
    service, panel = house.record.service, service_panel(house)
    if service is None or service.conductors is None:
        return None
    main = panel.record.main if panel else None
    guard = main if isinstance(main, Quantity) else service.rating
    rating = guard.to("A") if guard is not None else None
    size, metal, edition = service.conductors.size, service.conductors.metal, house.edition
    conductor = Conductor(size, metal, TERMINALS_C, BASE_C, together=3, terminals_c=TERMINALS_C)
    carries = ampacity(conductor, edition)
    within = rating is not None and WHOLE_LOAD_A[0] <= rating <= WHOLE_LOAD_A[1]
    by_share = service.system == "120/240 V" and within
    if rating is None:
        needs, fits = lacking(["the rating of the service"], "A"), None
    elif by_share:
        needs = whole_load_ampacity(rating, edition)
        fits = _reaches(carries, needs.value)
    else:
        # Outside 310.12 the usual rule holds, with the next standard size up.
        needs = largest_breaker(conductor, False, edition)
        fits = None if needs.value is None else needs.value >= rating
    least = least_conductor(rating, metal, edition) if by_share and metal and rating is not None else None
    return ServiceWire(size, metal, service.conductors.place, rating, carries, needs, by_share, least, fits)


def _reaches(carries: Worked, needed: Fraction | None) -> bool | None:
    return None if carries.value is None or needed is None else carries.value >= needed


def _taken(house: House, found: Dwelling, wire: ServiceWire | None) -> Iterable[str]:
    """What the load takes for granted, in words for its page."""
    for word, count in (("small-appliance", found.small_appliance), ("laundry", found.laundry)):
        least = int(amount(f"{word} circuit", "count"))
        if count < least:
            told = "none is" if not count else f"{count} is"
            due = f"{least} {word} circuit{'s' if least > 1 else ''}"
            yield f"{due}, as the code asks for, where {told} recorded"
    if house.record.service is None or house.record.service.system is None:
        yield "a service at 120/240 V, as none is recorded"
    for id_ in kept_off(house):
        yield f"nothing on breaker {id_}, which is kept off"
    yield "watts as volt-amperes, as no power factor is recorded"
    if wire is not None:
        yield f"service conductors at {TERMINALS_C} °C and in air of 30 °C or less"
