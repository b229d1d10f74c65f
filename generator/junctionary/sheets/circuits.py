"""Builds the sheet of a circuit."""

from collections.abc import Iterator

from junctionary.figures.receptacles import ReceptacleMatch
from junctionary.formulas.worked import Worked
from junctionary.house.model import Circuit, House
from junctionary.sheets.circuit import CircuitSheet, MatchLine
from junctionary.sheets.circuit_dark import dark_rooms, dark_says, dark_table, panels_behind
from junctionary.sheets.circuit_drop import drop_table, drop_workings
from junctionary.sheets.circuit_load import in_words, load_facts, load_workings
from junctionary.sheets.circuit_tree import circuit_map, gravest
from junctionary.sheets.drop_plots import drop_plot
from junctionary.sheets.entries import Fact, Row, Table, Working, WorkingLine
from junctionary.sheets.grounds import ground_matches, ground_workings
from junctionary.sheets.isolation import before_circuit
from junctionary.sheets.links import Link, Phrase, Ref, listed
from junctionary.sheets.makeup import cable_words, connector_words, how_known
from junctionary.sheets.naming import (
    NOT_RECORDED,
    breaker_link,
    breaker_words,
    end_link,
    link,
    recorded,
    room_link,
    said,
)
from junctionary.sheets.survey import (
    Survey,
    boxes_known,
    cited,
    edition_words,
    excerpts,
    in_fewer,
    known_words,
    sentence,
    title,
)
from junctionary.sheets.titleblock import circuit_number
from junctionary.units import Quantity, decimal


def circuit_sheet(survey: Survey, circuit_id: str) -> CircuitSheet:
    """The sheet of one circuit."""
    house = survey.house
    circuit = house.circuits[circuit_id]
    ref = Ref("circuit", circuit_id)
    missing = survey.missing_at.get(ref, ())
    return CircuitSheet(
        title=title(
            survey,
            f"Circuit {circuit_id}, map and match",
            numbered(house, circuit),
            known_words(boxes_known(house.boxes[each] for each in circuit.boxes), len(missing)),
        ),
        ref=ref,
        heading=circuit.name,
        lead=_lead(survey, circuit),
        before=before_circuit(survey, circuit_id),
        facts=(*_facts(survey, circuit), *load_facts(survey, circuit)),
        map=circuit_map(survey, circuit),
        match=(*_match(survey, circuit), *ground_matches(survey, circuit)),
        goes_dark=dark_table(survey, circuit),
        dark_says=dark_says(survey, circuit),
        runs=runs_table(survey, circuit.runs),
        joints=_joints(survey, circuit),
        loads=_loads(survey, circuit),
        plot=drop_plot(survey, circuit),
        at_boxes=drop_table(survey, circuit),
        workings=(
            *_workings(survey, circuit),
            *load_workings(survey, circuit),
            *drop_workings(survey, circuit),
            *ground_workings(survey, circuit),
        ),
        findings=survey.findings_at.get(ref, ()),
        today=survey.today_at.get(ref, ()),
        missing=in_fewer(missing),
        excerpts=excerpts(survey, circuit.place, *(house.breakers[each].place for each in circuit.breakers)),
    )


def numbered(house: House, circuit: Circuit) -> str:
    """The number of a circuit's sheet: by panel and space, or by its id where no panel feeds it."""
    if not circuit.breakers:
        return circuit_number(0, circuit.id)
    breaker = house.breakers[circuit.breakers[0]]
    return circuit_number(list(house.panels).index(breaker.panel) + 1, "+".join(breaker.spaces))


def _lead(survey: Survey, circuit: Circuit) -> Phrase:
    house = survey.house
    counts = _counts(circuit)
    if panels_behind(house, circuit):
        counts = sentence(recorded(len(circuit.runs), "run"))
    if not circuit.breakers:
        return ("Which breaker feeds it is not recorded. ", counts)
    fed = listed(tuple(breaker_link(each) for each in circuit.breakers))
    ratings = dict.fromkeys(said(house, house.breakers[each].rating) for each in circuit.breakers)
    return ("Breaker ", *fed, f", {', '.join(ratings)}. ", counts)


def _counts(circuit: Circuit) -> str:
    if not circuit.boxes and not circuit.runs:
        return "No run and no box of it is recorded."
    held = (
        recorded(len(circuit.boxes), "box", "boxes"),
        recorded(len(circuit.devices), "device"),
        recorded(len(circuit.runs), "run"),
    )
    return sentence(", ".join(held))


def _facts(survey: Survey, circuit: Circuit) -> Iterator[Fact]:
    house, record = survey.house, circuit.record
    if fed := panels_behind(house, circuit):
        yield Fact("feeds", listed(tuple(Link(house.panels[each].name, Ref("panel", each)) for each in fed)))
    rooms = dark_rooms(survey, circuit)
    yield Fact("serves", listed(tuple(room_link(house, each) for each in rooms)) or (NOT_RECORDED,))
    yield Fact("purpose", ((record.purpose or NOT_RECORDED).replace("-", " "),))
    if record.stage:
        yield Fact("stage", (record.stage,))
    for id_ in circuit.breakers:
        breaker = house.breakers[id_]
        guards = ", ".join(each.upper() for each in breaker.guards or ())
        nothing = "nothing" if breaker.guards is not None else NOT_RECORDED
        of = f" ({breaker_words(id_)})" if len(circuit.breakers) > 1 else ""
        yield Fact(f"guarded by{of}", (guards or nothing,))
        yield Fact(f"leg{of}", (" + ".join(each or "not known" for each in breaker.legs),))
        if breaker.says and breaker.says != circuit.name:
            yield Fact(f"door card says{of}", (breaker.says,))
        if breaker.tied_to:
            yield Fact(f"handle tied to{of}", listed(tuple(breaker_link(each) for each in breaker.tied_to)))
    yield Fact("judged by", (edition_words(circuit.edition),))
    if record.note:
        yield Fact("note", (record.note,))


def _match(survey: Survey, circuit: Circuit) -> Iterator[MatchLine]:
    house = survey.house
    limit = survey.figures.circuits.get(circuit.id)
    if limit is not None:
        wire = limit.limiting
        what = f"{wire.called}, {wire.what}" if wire else NOT_RECORDED
        may = f"up to {_amps(limit.breaker)}" if limit.breaker.value is not None else "cannot tell"
        if limit.breaker.value is None and wire is not None and wire.breaker.value is not None:
            may = f"no more than {_amps(wire.breaker)}"
        for id_ in circuit.breakers:
            rating = house.breakers[id_].rating
            stands = _stands(rating, limit.breaker, wire.breaker if wire else None)
            yield MatchLine(
                part=f"breaker {breaker_words(id_)}",
                has=said(house, rating),
                may=may,
                stands=stands,
                because=f"the wire that allows least: {what}",
                # What else is found about a breaker that fits says nothing against its rating.
                severity=gravest(survey, {Ref("space", id_)}) if stands != "fits" else None,
            )
    for device in circuit.devices:
        for match in survey.figures.receptacles.get(device, ()):
            if match.circuit in (circuit.id, None):
                yield _receptacle(survey, match)


def _stands(rating: object, breaker: Worked, least: Worked | None) -> str:
    if not isinstance(rating, Quantity):
        return NOT_RECORDED
    known = [each.value for each in (breaker, least) if each is not None and each.value is not None]
    if known and rating.to("A") > min(known):
        return "too large"
    return "fits" if breaker.value is not None else "cannot tell"


def _amps(worked: Worked) -> str:
    value = worked.value
    return "?" if value is None else f"{decimal(value, 0 if value.denominator == 1 else 1)} A"


def _receptacle(survey: Survey, match: ReceptacleMatch) -> MatchLine:
    rating = match.rating_a
    return MatchLine(
        part=f"receptacle {match.device}",
        has=f"{decimal(rating, 0)} A" if rating is not None else NOT_RECORDED,
        may=match.fit.allowed,
        stands=match.fit.verdict,
        because="; ".join(match.fit.lacks) or cited(match.fit.cites),
        severity=gravest(survey, {Ref("device", match.device)}) if match.fit.fits is False else None,
    )


def runs_table(survey: Survey, runs: tuple[str, ...]) -> Table:
    """Runs with their ends, their length and what may guard them."""
    house = survey.house
    staged = any(house.runs[each].stage for each in runs)
    rows = []
    for id_ in runs:
        run = house.runs[id_]
        limit = survey.figures.wires.get(id_)
        may = _amps(limit.breaker) if limit and limit.breaker.value is not None else "cannot tell"
        rows.append(
            Row(
                (
                    (id_,),
                    (cable_words(run),),
                    (end_link(house, run.from_),),
                    (end_link(house, run.to),),
                    (said(house, run.length),),
                    (may,),
                    *(((run.stage or NOT_RECORDED,),) if staged else ()),
                ),
                Ref("run", id_),
            )
        )
    heads = ("run", "cable", "from", "to", "length", "largest breaker", *(("stage",) if staged else ()))
    caption = "" if staged or not rows else "Stage not recorded."
    return Table(heads, tuple(rows), figures=(4, 5), caption=caption)


def _joints(survey: Survey, circuit: Circuit) -> Table:
    house = survey.house
    rows = [
        Row(
            (
                (Link(joint.id, Ref("joint", joint.id)),),
                (joint.role or "",),
                (
                    ", ".join(
                        each.name.removeprefix(f"{box}/").removeprefix(f"{box}.") for each in joint.members
                    ),
                ),
                (connector_words(joint),),
                (how_known(house.boxes[box], joint),),
            )
        )
        for box in circuit.boxes
        for joint in house.boxes[box].joints
        if circuit.id in joint.circuits
    ]
    return Table(("joint", "role", "joins", "in", "known by"), tuple(rows))


def _loads(survey: Survey, circuit: Circuit) -> Table:
    house = survey.house
    rows: list[tuple[Phrase, ...]] = []
    for load in circuit.loads:
        at = load.plugged or load.wired
        marks = [
            word for word, yes in (("continuous", load.continuous), ("motor", load.motor)) if yes is True
        ]
        rows.append(
            (
                (load.name or load.id,),
                (load.is_.replace("-", " "),),
                (said(house, load.draws),),
                (link(house, at) if at else NOT_RECORDED,),
                (", ".join(marks),),
                (load.matters or "",),
            )
        )
    heads = ("load", "is", "draws", "at", "kind", "matters for")
    told = [column for column in range(len(heads)) if any(row[column] != ("",) for row in rows)]
    return Table(
        tuple(heads[column] for column in told),
        tuple(Row(tuple(row[column] for column in told)) for row in rows),
    )


def _workings(survey: Survey, circuit: Circuit) -> Iterator[Working]:
    limit = survey.figures.circuits.get(circuit.id)
    if limit is None or limit.limiting is None:
        return
    wire = limit.limiting
    lines = [
        WorkingLine(
            step.what,
            in_words(step.sum),
            f"{decimal(step.value, 2)} {step.unit}" if step.unit != "A" else decimal(step.value, 2),
        )
        for step in wire.breaker.steps
    ]
    if wire.breaker.value is not None:
        lines.append(WorkingLine("largest breaker", "", decimal(wire.breaker.value, 0), True))
    lacks = limit.breaker.lacks
    says = f"Not all of it is known: {'; '.join(lacks)}." if lacks else ""
    taken = f"Taken for granted: {'; '.join(wire.taken)}." if wire.taken else ""
    yield Working(
        f"{wire.called}, {wire.what}: what may guard it",
        "A",
        tuple(lines),
        " ".join(part for part in (says, taken) if part),
        cited(wire.breaker.cites),
    )
