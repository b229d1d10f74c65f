"""Builds the sheet of a box."""

from fractions import Fraction

from junctionary.house.dates import replace_by
from junctionary.house.model import Box
from junctionary.house.network import entering
from junctionary.records.boxes import LookedAt, Reach
from junctionary.records.values import NONE
from junctionary.sheets.box import BoxSheet
from junctionary.sheets.entries import Fact
from junctionary.sheets.fill import fill_working
from junctionary.sheets.isolation import before_box
from junctionary.sheets.links import Link, Phrase, Ref
from junctionary.sheets.makeup import device_words, enclosure, evidence_words, make_up
from junctionary.sheets.naming import (
    NOT_RECORDED,
    breaker_link,
    circuit_link,
    counted,
    room_link,
    said,
    where,
)
from junctionary.sheets.photo import photos_of_box
from junctionary.sheets.survey import Survey, edition_words, excerpts, in_fewer, known_words, sentence, title
from junctionary.sheets.titleblock import box_number
from junctionary.units import Quantity, show_as


def box_sheet(survey: Survey, box_id: str) -> BoxSheet:
    """The sheet of one box."""
    house = survey.house
    box = house.boxes[box_id]
    ref = Ref("box", box_id)
    missing = survey.missing_at.get(ref, ())
    room = room_link(house, box.room)
    fill = survey.figures.fill.get(box_id)
    position = list(house.rooms).index(box.room) + 1 if box.room in house.rooms else 0
    return BoxSheet(
        title=title(
            survey,
            f"Box {box_id}, make-up and fill",
            box_number(position, box_id),
            known_words(_known_by(box), len(missing)),
        ),
        ref=ref,
        heading=f"Box {box_id}",
        lead=(room, ": ", _lead(survey, box)),
        before=before_box(survey, box_id),
        facts=tuple(_facts(survey, box)),
        makeup=make_up(survey, box),
        fill=fill_working(fill) if fill else None,
        evidence=tuple(_evidence(box)),
        circuits=tuple(_fed_by(survey, each) for each in box.circuits),
        room=room if isinstance(room, Link) else None,
        findings=survey.findings_at.get(ref, ()),
        today=survey.today_at.get(ref, ()),
        missing=in_fewer(missing),
        excerpts=excerpts(survey, box.place),
        photos=photos_of_box(survey.house, box_id),
    )


def _known_by(box: Box) -> str:
    by_word = any(each.expanded for each in box.joints) or any(each.expanded for each in box.landings)
    return f"{evidence_words(box)}{'; make-up by the word' if by_word else ''}"


def _fed_by(survey: Survey, circuit: str) -> Phrase:
    """A circuit and its breakers: ``Den receptacles (main 14)``; a source and where it enters."""
    house = survey.house
    if circuit in house.sources:
        enters = entering(house).get(circuit)
        at: Phrase = (breaker_link(enters),) if enters else ("a breaker not recorded",)
        return (circuit_link(house, circuit), ", which enters at ", *at)
    breakers = house.circuits[circuit].breakers if circuit in house.circuits else ()
    said_: list[str | Link] = [circuit_link(house, circuit)]
    for each in breakers:
        said_ += [" (" if len(said_) == 1 else ", ", breaker_link(each)]
    return (*said_, ")") if breakers else (*said_, " (breaker not recorded)")


def _lead(survey: Survey, box: Box) -> str:
    parts = [box.name] if box.name else []
    parts += filter(None, [where(survey.house, box.record.at, box.name)])
    held = [
        counted(len(box.devices), "device"),
        counted(len(box.runs), "cable"),
        counted(len(box.joints), "joint"),
    ]
    through = [f"{counted(len(box.passing), 'cable')} passing through"] if box.passing else []
    return f"{', '.join(parts)}. {sentence(', '.join((*held, *through)))}"


def _facts(survey: Survey, box: Box) -> list[Fact]:
    house, record = survey.house, box.record
    facts = [
        Fact("size", (enclosure(survey, box),)),
        *_depth(survey, box),
        Fact("cover", (said(house, record.cover),)),
        Fact("reached", (reach_words(record.reach),)),
        Fact("stage", (box.stage or NOT_RECORDED,)),
        Fact("judged by", (edition_words(box.edition),)),
    ]
    facts += [Fact(each.local, (device_words(each),)) for each in box.devices]
    facts += [Fact(f"{local} guarded by", (device,)) for local, device in record.guarded_by.items()]
    facts += [
        Fact(f"{each.local} to be replaced by", (str(by),))
        for each in box.devices
        if (by := replace_by(box, each)) is not None
    ]
    facts += [Fact(f"label on {local}", (", ".join(labels),)) for local, labels in record.labels.items()]
    for what, value in (("note", record.note), ("set back", record.set_back), ("exposed", record.exposed)):
        if value is not None:
            facts.append(Fact(what, (said(house, value),)))
    return facts


def _depth(survey: Survey, box: Box) -> list[Fact]:
    """How deep the box is and must be, where a device is in it."""
    depth = survey.figures.depths.get(box.id)
    if depth is None:
        return []
    shows = survey.house.record.shows

    def long(inches: Fraction) -> str:
        return show_as(Quantity(inches, "in", "length"), shows)

    has = NOT_RECORDED if depth.has_in is None else long(depth.has_in)
    more = f", without the {depth.with_more}" if depth.with_more else ""
    return [Fact("depth", (f"{has}{more}; at least {long(depth.least_in)} is wanted",))]


def reach_words(reach: object) -> str:
    """How a box is reached, in words."""
    if reach is None:
        return "nothing in the way is recorded"
    if reach is NONE:
        return "nothing in the way"
    if not isinstance(reach, Reach):
        return str(reach)
    said_ = [
        f"through {reach.through}" if reach.through else "",
        f"hidden by {reach.hidden_by}" if reach.hidden_by else "",
        f"behind {reach.behind}" if reach.behind else "",
    ]
    return ", ".join(part for part in said_ if part)


def _evidence(box: Box) -> list[Fact]:
    facts = [Fact("the record", (evidence_words(box),))] if box.evidence else []
    if isinstance(box.looked_at, LookedAt):
        for what in ("sheath", "insulation", "copper", "strip", "loops"):
            value = getattr(box.looked_at, what)
            facts.append(Fact(what, (value or "not looked at",)))
    if box.record.seen is not None:
        facts.append(Fact("last seen", (box.record.seen,)))
    return facts
