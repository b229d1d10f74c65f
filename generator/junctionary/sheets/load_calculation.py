"""Builds the loads sheet: service, feeders and legs."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from fractions import Fraction

from junctionary.figures import FeederLoad, ServiceLoad
from junctionary.figures.draws import Draw, by_circuit
from junctionary.figures.dwelling_parts import counts_by_nameplate, is_covered, words_of
from junctionary.figures.legs import LEAST_A, WITHIN_PERCENT, Leg, OnLeg
from junctionary.formulas.dwelling import TO_NEUTRAL, DemandLoad
from junctionary.formulas.dwelling_service import whole_amps
from junctionary.formulas.worked import Worked
from junctionary.house.model import House
from junctionary.sheets.entries import Fact, Row, Table, Working
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.loads import Calculation, FeederEntry, LegBar, LegLoad, LoadsSheet, Stands
from junctionary.sheets.naming import NOT_RECORDED, breaker_link, circuit_link, counted, said
from junctionary.sheets.reckoning import figure, line, working
from junctionary.sheets.survey import Survey, cited, edition_words, known_words, sentence, title
from junctionary.sheets.titleblock import GENERAL
from junctionary.units import decimal

RULES = (
    "service-overloaded", "feeder-overloaded", "conductor-too-small-for-feeder", "legs-unbalanced",
)  # fmt: skip


def loads_sheet(survey: Survey) -> LoadsSheet:
    """The load calculation of the house."""
    house, service = survey.house, survey.figures.service
    rules = {Ref("rule", each) for each in RULES}
    missing = tuple(
        each for each in survey.missing if any(isinstance(w, Link) and w.to in rules for w in each.settles)
    )
    return LoadsSheet(
        title=title(
            survey,
            f"Loads of service, feeders and legs, by {edition_words(service.edition)}",
            GENERAL["loads"],
            known_words("calculated from the record", len(missing)),
        ),
        ref=Ref("sheet", "loads"),
        heading="Loads",
        lead=(
            f"Calculated by {edition_words(service.edition)}, from nameplates and floor area as recorded.",
        ),
        facts=tuple(_facts(house, service)),
        verdict=_verdict(service),
        methods=tuple(_method(service, each) for each in service.methods),
        neutral=_working("Neutral of the service", service.neutral),
        conductors=tuple(_conductors(service)),
        feeders=tuple(_feeder(house, each) for each in survey.figures.feeders.values()),
        legs=tuple(_bar(house, service, each) for each in service.legs.legs),
        unbalance=_unbalance(service),
        counted=_counted(survey),
        taken=service.taken,
        findings=tuple(each for each in survey.findings if each.rule in rules),
        missing=missing,
    )


def _facts(house: House, service: ServiceLoad) -> Iterator[Fact]:
    told = house.record.service
    yield Fact("system", (said(house, told.system if told else None),))
    yield Fact("service", (f"{figure(service.rating_a)} A" if service.rating_a else NOT_RECORDED,))
    if service.panel:
        yield Fact("disconnected at", (Link(house.panels[service.panel].name, Ref("panel", service.panel)),))
    if service.wire is not None:
        metal = service.wire.metal or "metal not recorded"
        yield Fact("service conductors", (f"{service.wire.size} {metal}",))
    yield Fact("floor area, outside", (re.sub(r"(ft|m)2\b", r"\1²", said(house, house.record.floor_area)),))
    least = service.least
    smallest = f"{figure(least.value)} A" if least.value is not None else "cannot tell"
    yield Fact("smallest standard service", (f"{smallest}, by the method that asks least",))
    yield Fact("general-lighting circuits, at least", (_lighting(service),))


def _lighting(service: ServiceLoad) -> str:
    said_ = [
        f"{figure(worked.value)} of {figure(rating)} A"
        for rating, worked in service.circuits.items()
        if worked.value is not None
    ]
    clauses = cited(cite for worked in service.circuits.values() for cite in worked.cites)
    return f"{' or '.join(said_)} ({clauses})" if said_ else "cannot tell without the floor area"


def _verdict(service: ServiceLoad) -> str:
    rating = f"{figure(service.rating_a)} A" if service.rating_a is not None else "of a rating not recorded"
    small = [each for each in service.methods if _within(each, service.rating_a)]
    if service.passes is True:
        by = " and by the ".join(each.method for each in small)
        fails = [each.method for each in service.methods if each not in small]
        but = f" By the {' and the '.join(fails)} it would not be; one method is enough." if fails else ""
        return f"The service of {rating} is large enough by the {by}.{but}"
    if service.passes is False:
        return f"The service of {rating} is too small by every method."
    return f"Whether the service, {rating}, is large enough cannot be told: something is not recorded."


def _within(load: DemandLoad, rating: Fraction | None) -> bool:
    return rating is not None and load.amps.value is not None and whole_amps(load.amps.value) <= rating


def _method(service: ServiceLoad, load: DemandLoad) -> Calculation:
    rating = f"{figure(service.rating_a)} A" if service.rating_a is not None else NOT_RECORDED
    against = f"the service, {rating}"
    return _calculation(f"Service, {load.method}", load, against, service.rating_a)


def _calculation(heading: str, load: DemandLoad, against: str, limit_a: Fraction | None) -> Calculation:
    least = "at least " if load.amps.lacks else ""
    return Calculation(
        heading=heading,
        answer=f"{least}{decimal(load.least_va, 0)} VA, {decimal(load.least_a, 1)} A",
        against=against,
        stands=_compared(load, limit_a),
        amps=load.least_a,
        limit_a=limit_a,
        complete=not load.amps.lacks,
        working=_working(heading, load),
    )


def _compared(load: DemandLoad, limit_a: Fraction | None) -> Stands:
    if limit_a is None:
        return "cannot tell"
    if whole_amps(load.least_a) > limit_a:
        return "too large"
    return "cannot tell" if load.amps.lacks else "fits"


def _working(heading: str, load: DemandLoad) -> Working:
    made = working(f"{heading}, by {edition_words(load.edition)}", load.va)
    shown = tuple(
        replace(each, within=step not in load.parts and not each.is_sum)
        for each, step in zip(made.lines, load.va.steps, strict=True)
    )
    draws = tuple(line(each, is_sum=True) for each in load.amps.steps)
    sources = cited((*load.va.cites, *load.amps.cites))
    return Working(made.title, "VA", (*shown, *draws), made.says, sources)


def _conductors(service: ServiceLoad) -> Iterator[Working]:
    if service.wire is None:
        return
    wire = service.wire
    stands = {True: "They are large enough.", False: "They are too small.", None: ""}[wire.fits]
    least = f" The smallest that may be there is {wire.least} {wire.metal}." if wire.least else ""
    both = Worked(
        wire.carries.value if not wire.needs.lacks else None,
        "A",
        (*wire.carries.steps, *wire.needs.steps),
        (*wire.carries.cites, *wire.needs.cites),
        ()
        if wire.carries.value is not None and not wire.needs.lacks
        else (*wire.carries.lacks, *wire.needs.lacks),
    )
    yield working(f"Service conductors, {wire.size} {wire.metal or ''}".rstrip(), both, f"{stands}{least}")


def _feeder(house: House, feeder: FeederLoad) -> FeederEntry:
    panel = house.panels[feeder.panel]
    rating = f"{figure(feeder.breaker_a)} A" if feeder.breaker_a is not None else NOT_RECORDED
    breaker: Phrase = (breaker_link(feeder.breaker), f", {rating}") if feeder.breaker else (NOT_RECORDED,)
    wire: Phrase = (feeder.wire.what,) if feeder.wire else (NOT_RECORDED,)
    longer = (
        (Fact("with a quarter more of a car charger", (_amps(feeder.sized),)),)
        if feeder.sized_a > feeder.load.least_a
        else ()
    )
    stands: dict[bool | None, Stands] = {True: "fits", False: "too large", None: "cannot tell"}
    load = _calculation(
        f"Feeder to {panel.name}, standard method", feeder.load, f"its breaker, {rating}", feeder.breaker_a
    )
    return FeederEntry(
        heading=("Feeder to ", Link(panel.name, Ref("panel", panel.id))),
        facts=(
            Fact("circuit", (circuit_link(house, feeder.circuit),)),
            Fact("breaker", breaker),
            Fact("conductors", wire),
            Fact("they carry", (_amps(feeder.ampacity),)),
            Fact("largest breaker for them", (_amps(feeder.allowed),)),
            Fact("load of the neutral", (_amps(feeder.neutral.amps),)),
            *longer,
        ),
        load=replace(load, stands=stands[feeder.carries_load]),
    )


def _amps(worked: Worked) -> str:
    return f"{figure(worked.value)} A" if worked.value is not None else "cannot tell"


def _bar(house: House, service: ServiceLoad, leg: Leg) -> LegBar:
    counted_va = sum((each.part.load for each in leg.on_it), Fraction(0))
    least = "at least " if leg.load.lacks else ""
    return LegBar(
        leg=leg.leg,
        says=f"{least}{decimal(leg.least_va, 0)} VA, {decimal(leg.least_a, 1)} A at {TO_NEUTRAL} V",
        loads=tuple(_on_leg(house, each) for each in leg.on_it),
        motor_va=leg.least_va - counted_va,
        motor=figure(leg.least_va - counted_va),
        va=leg.least_va,
        limit_va=service.rating_a * TO_NEUTRAL if service.rating_a is not None else None,
        volts=TO_NEUTRAL,
        complete=not leg.load.lacks,
    )


def _on_leg(house: House, on_leg: OnLeg) -> LegLoad:
    circuit, part = circuit_link(house, on_leg.circuit), on_leg.part
    itself = part.what == house.circuits[on_leg.circuit].name
    return LegLoad(
        (circuit if itself else part.what,), () if itself else (circuit,), part.load, figure(part.load)
    )


def _unbalance(service: ServiceLoad) -> str:
    found = service.legs.unbalance
    if found.value is None:
        return sentence(f"how far the legs differ cannot be told: {'; '.join(found.lacks)}")
    return (
        f"The legs differ by {decimal(found.value, 1)} % of the heavier; up to {WITHIN_PERCENT} %, or less "
        f"than {LEAST_A} A, is common practice. These are nameplates before any demand factor, with general "
        "lighting spread evenly over its circuits: they tell where to put the next circuit, not what the "
        "service must carry."
    )


def _counted(survey: Survey) -> Table:
    house = survey.house
    on_each = by_circuit(survey.figures.draws)
    rows = []
    for draw in survey.figures.draws.values():
        circuit = house.circuits.get(draw.circuit or "")
        if circuit is None or not counts_by_nameplate(draw, is_covered(house, circuit)):
            continue
        rows.append(
            Row(
                (
                    (words_of(circuit, draw, on_each[circuit.id]),),
                    (circuit_link(house, circuit.id),),
                    (figure(draw.volt_amps.value) if draw.volt_amps.value is not None else NOT_RECORDED,),
                    (f"{figure(draw.volts)} V" if draw.volts is not None else NOT_RECORDED,),
                    (_marks(draw),),
                    (str(draw.place),),
                )
            )
        )
    caption = (
        f"{counted(len(rows), 'load').capitalize()} by nameplate. Lamps, alarms and what is "
        "plugged in on general, small-appliance and laundry circuits are within the amounts "
        "for floor area and circuits."
    )
    return Table(("load", "circuit", "VA", "at", "kind", "recorded in"), tuple(rows), (2, 3), caption)


def _marks(draw: Draw) -> str:
    marks: Iterable[tuple[str, bool]] = (
        ("fastened", draw.fastened is True),
        ("motor", draw.motor is True),
        (f"part of {draw.part_of}", draw.part_of is not None),
        (f"instead of {draw.instead_of}", draw.instead_of is not None),
    )
    return ", ".join(word for word, yes in marks if yes)
