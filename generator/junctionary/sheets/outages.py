"""Builds the outage card: sources, what each keeps alive, what stays live with the main off, the order."""

from collections.abc import Iterator

from junctionary.figures.draws import Draw
from junctionary.figures.outage import STARTING, Carried, carried
from junctionary.house.isolate import isolate_panel
from junctionary.house.matters import Matter, in_order
from junctionary.house.model import Breaker, House
from junctionary.house.network import breaker_named
from junctionary.house.switching_off import BACKFED
from junctionary.records.house import Source
from junctionary.sheets.circuit_load import shown, working_line
from junctionary.sheets.entries import Fact, Working, WorkingLine
from junctionary.sheets.face_words import face_words
from junctionary.sheets.finding_things import place_of
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.lookup import OutageSheet, SourceCard
from junctionary.sheets.naming import (
    NOT_RECORDED,
    breaker_link,
    breaker_words,
    counted,
    link,
    said,
    source_words,
)
from junctionary.sheets.second_sources import stopping
from junctionary.sheets.survey import Survey, sentence, title
from junctionary.sheets.titleblock import GENERAL
from junctionary.sources import cite

CAUTIONS = (
    "A generator runs outdoors only, far from every window and door, its exhaust pointing away: carbon"
    " monoxide kills without a smell. Check that a carbon monoxide alarm in the house works.",
    "Never through a plug with a plug at both ends. Never with the main on: it makes the street live,"
    " and can kill who works there.",
    "Solar panels make voltage whenever there is light; a battery always.",
    "Somebody on medical equipment: tell the utility beforehand, and have a second way.",
)
BY_LEG = cite("practice", "What runs at once on each leg stays within the source's rating")
WITHOUT = {
    "stops": "stops when the utility does",
    "runs": "runs without it",
    "islands": "takes over by itself, and keeps part of the house live",
}


def outage_sheet(survey: Survey) -> OutageSheet:
    """The outage card of a house; one without a second source says what an outage leaves live."""
    house = survey.house
    sources = tuple(house.sources.values())
    return OutageSheet(
        title=title(survey, "Outage card", GENERAL["outage"], "as recorded"),
        ref=Ref("sheet", "outage"),
        heading="Outage card",
        lead=(
            f"{sentence(counted(len(sources), 'source') + ' besides the utility')}"
            " Print it and hang it at the panel.",
        ),
        stays_live=tuple(_stays(survey)),
        all_dead=tuple(_all_dead(survey)),
        cards=tuple(_card(survey, each) for each in sources),
        cautions=CAUTIONS,
    )  # fmt: skip


def _stays(survey: Survey) -> Iterator[Phrase]:
    house, network = survey.house, survey.network
    for panel in house.panels.values():
        for line in isolate_panel(house, network, panel.id).stays_live:
            # Inside the panel named here its main needs no more than the word.
            words = line.replace(f"{panel.id}/main", "its main").replace(f"feeds {panel.id} ", "feeds it ")
            yield (Link(panel.name, Ref("panel", panel.id)), f": {words}")
    for id_, points in network.entries.items():
        zones = dict.fromkeys(network.zone_at[each] for each in points)
        runs = dict.fromkeys(run for zone in zones for run in network.zones[zone].runs)
        source = house.sources[id_]
        reach = f" (run{'s' if len(runs) > 1 else ''} {', '.join(runs)})" if runs else ""
        doubt = "" if points else "; where it enters is not recorded, so anything may be live"
        yield (_link(source), f": all it feeds, while it runs{reach}{doubt}")


def _all_dead(survey: Survey) -> Iterator[Phrase]:
    """Every source stopped, and the breaker at which it enters off; the mains; then a test."""
    house = survey.house
    for source in house.sources.values():
        yield (_link(source), f": {stopping(house, source)}")
    for breaker in survey.network.index.entering:
        if breaker not in survey.network.index.mains:
            yield (_on_face(house, house.breakers[breaker]), f": {BACKFED}")
    for main in survey.network.index.mains:
        yield (_on_face(house, house.breakers[main]),)
    if not survey.network.index.mains:
        yield ("no main is recorded",)
    yield ("Then test before anything is touched",)


def _on_face(house: House, breaker: Breaker) -> Link:
    """A breaker by its number and by where it stands on its panel; a main needs no number."""
    words = face_words(house, breaker)
    numbered = words if breaker.spaces == ("main",) else f"{breaker_words(breaker.id)} ({words})"
    return Link(numbered, Ref("space", breaker.id))


def _place(house: House, at: str) -> Link | str:
    breaker = breaker_named(house, at)
    return link(house, at) if breaker is None else _on_face(house, breaker)


def _link(source: Source) -> Link:
    return Link(source_words(source), Ref("circuit", source.id))


def _card(survey: Survey, source: Source) -> SourceCard:
    house = survey.house
    enters = breaker_named(house, source.enters) if source.enters else None
    main = house.breakers.get(f"{enters.panel}/main") if enters is not None else None
    by_hand = source.is_ == "generator-inlet" and enters is not None
    held = _held(survey, source, enters) if enters is not None else None
    return SourceCard(
        name=_link(source),
        facts=tuple(_facts(house, source, bool(by_hand))),
        warning=_warning(source, enters, main),
        keeps=tuple(_keeps(survey, enters, held)) if enters is not None else (),
        over=tuple(_over(house, source, enters, main)) if by_hand and enters else (),
        back=tuple(_back(enters, main)) if by_hand and enters else (),
        cannot=tuple(_cannot(source, held)) if enters is not None else (),
        load=tuple(_load(held)) if held is not None else (),
    )


def _facts(house: House, source: Source, by_hand: bool) -> Iterator[Fact]:
    """What is known of a source; where one switched by hand is and enters is said in the steps."""
    yield Fact("is", (source.is_.replace("-", " "),))
    yield Fact("rating", (said(house, source.rating),))
    if not by_hand:
        yield Fact("stands at", (_stands(house, source),) if source.at else (NOT_RECORDED,))
        yield Fact("enters at", (_place(house, source.enters),) if source.enters else (NOT_RECORDED,))
    yield Fact("when the utility fails", (WITHOUT.get(source.without_utility or "", NOT_RECORDED),))
    if source.note:
        yield Fact("note", (source.note,))


def _stands(house: House, source: Source) -> Link | str:
    if not source.at:
        return "its inlet, whose place is not recorded"
    box = house.boxes.get(source.at)
    if box is None:
        return link(house, source.at)
    return Link(f"{box.id}, {place_of(house, box)}", Ref("box", box.id))


def _warning(source: Source, enters: Breaker | None, main: Breaker | None) -> str:
    """What must be said before anybody switches: above all that nothing on record keeps two sources apart."""
    if enters is None:
        return "Where it enters is not recorded: what it makes live is unknown. Find out before it is used."
    if source.is_ == "generator-inlet" and not _apart(enters, main):
        return (
            "Nothing on record keeps its breaker and the main from being on together."
            " Do not use it before an interlock or a transfer switch is seen there."
        )
    return ""


def _apart(enters: Breaker, main: Breaker | None) -> bool:
    """Whether an interlock is recorded between the breaker at which a source enters and the main."""
    return main is not None and enters.id in main.interlocked_with


def _matters(survey: Survey, enters: Breaker) -> tuple[Matter, ...]:
    """What matters on the panel a source enters, in that order."""
    house, index = survey.house, survey.network.index
    feeds = [each.feeds for each in house.panels[enters.panel].breakers if isinstance(each.feeds, str)]
    return in_order(one for each in feeds if each in house.circuits for one in index.matters[each])


def _keeps(survey: Survey, enters: Breaker, held: Carried | None) -> Iterator[Phrase]:
    """What matters and may be switched on, with its breaker and what it draws."""
    left_off = {each.id for each in held.left_off} if held else set()
    house, draws = survey.house, survey.figures.draws
    told = {
        load.id: said(house, load.draws)
        for circuit in house.circuits.values()
        for load in circuit.loads
        if load.draws is not None
    }
    for each in _matters(survey, enters):
        if each.id in left_off:
            continue
        breakers = house.circuits[each.circuit].breakers
        at: list[str | Link] = []
        for breaker in breakers:
            at += [", " if at else "", breaker_link(breaker)]
        draw = draws.get(each.id)
        amps = f"{shown(draw.amps.value)}\u00a0A" if draw is not None and draw.amps.value is not None else ""
        power = ", ".join(one for one in (told.get(each.id), amps) if one) or "what it draws is not recorded"
        yield (*(one for one in at if one), f": {_plain(each.name)} ({each.matters}), {power}")


def _plain(name: str) -> str:
    """``heat pump`` for ``heat-pump``, where a load has no name but its kind."""
    return name.replace("-", " ") if name.islower() else name


def _held(survey: Survey, source: Source, enters: Breaker) -> Carried | None:
    """What matters held against the source's rating; None where that is not recorded, or nothing matters."""
    draws = survey.figures.draws
    kept = [draws[each.id] for each in _matters(survey, enters) if each.id in draws]
    if source.rating is None or not kept:
        return None
    return carried(kept, source.rating.to("A"), draws.values())


def _cannot(source: Source, held: Carried | None) -> Iterator[str]:
    """What it cannot carry, by name; or that nothing recorded tells it."""
    if held is None:
        if source.rating is None:
            yield "Its rating is not recorded: whether it carries all of this cannot be told."
        return
    rating = f"{shown(held.rating_a)} A"
    for each in held.alone:
        yield sentence(
            f"cannot carry {each.name}: it draws {_amps(each)}, its rating is {rating} on each leg"
        )
    for each in held.starting:
        yield sentence(
            f"cannot start {each.name}: a motor takes {STARTING} times what it draws ({_amps(each)}) or more,"
            f" by common practice, while it starts; its rating is {rating} on each leg. Only if its maker"
            " says that it starts on less"
        )
    for each in held.shared:
        yield sentence(f"{each.name} stays off too: on its breaker is what it cannot carry or start")
    for each in held.beyond:
        yield sentence(
            f"{each.name} ({_amps(each)}) is too much beside all that matters more: one or the other"
        )
    if held.left_off or held.beyond:
        least = "at least " if held.untold else ""
        yield f"All the rest at once draws {least}{shown(held.rest_a)} A of {rating} on the fuller leg."
    if held.untold:
        names = ", ".join(each.name for each in held.untold)
        yield f"Not counted, as what they draw is not recorded: {names}. It can carry less by as much."
    if held.fits:
        yield f"All of this at once is within {rating} on each leg."
    yield "A motor draws several times as much while it starts: one at a time, and leave room for it."


def _amps(draw: Draw) -> str:
    return f"{shown(draw.amps.value)} A" if draw.amps.value is not None else NOT_RECORDED


def _load(held: Carried) -> Iterator[Working]:
    """What matters on each leg, added up, and the limit."""
    for each in held.legs:
        *parts, total = each.load.steps
        lines = [working_line(part) for part in parts]
        least = "" if each.load.value is not None else ", at least"
        how = " + ".join(part.sum for part in parts) if len(parts) > 1 else ""
        lines.append(WorkingLine(f"all of it at once{least}", how, shown(total.value), True))
        rating = shown(held.rating_a)
        lines.append(WorkingLine("the source's rating on this leg", rating, rating))
        over = each.least_a > held.rating_a
        says = "More than it can carry: leave off what matters less." if over else ""
        yield Working(f"Leg {each.leg}", "A", tuple(lines), says, str(BY_LEG))


def _over(house: House, source: Source, enters: Breaker, main: Breaker | None) -> Iterator[Phrase]:
    last: Phrase = (", the main last: ", _on_face(house, main)) if main is not None else ()
    yield ("Every breaker in that panel off", *last, ".")
    if main is not None and _apart(enters, main):
        yield (
            "Slide the interlock plate over: it lets the generator's breaker on only while the main is off."
            " Do not force it, and never take it off.",
        )
    yield ("Set the generator up outdoors. Connect its cord at ", _stands(house, source), ", then start it.")
    yield ("On: ", _on_face(house, enters), ".")
    rating = said(house, source.rating)
    yield (
        "One breaker at a time, what matters first, listening to the generator after each."
        f" What runs at once must stay under its rating ({rating}) on each leg.",
    )
    yield ("Leave everything else off, and whatever that matters is more than it can carry.",)


def _back(enters: Breaker, main: Breaker | None) -> Iterator[Phrase]:
    yield ("When the street has supply again: every breaker that you switched on, off.",)
    yield ("Off: ", breaker_link(enters.id), ". Then stop the generator and take its cord away.")
    if main is not None and _apart(enters, main):
        yield ("Slide the interlock plate back.",)
    if main is not None:
        yield ("On: ", Link("the main breaker", Ref("space", main.id)), ". Then the others, one at a time.")
