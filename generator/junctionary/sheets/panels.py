"""Builds the sheet of a panel: its face as it stands, and the schedule of its breakers."""

from collections.abc import Iterator

from junctionary.house.model import Breaker, House, Panel
from junctionary.house.panels import MAIN, SPACE
from junctionary.records.values import NONE
from junctionary.sheets.ages import age_words, surge_words
from junctionary.sheets.entries import Fact, Row, Table
from junctionary.sheets.face import STATE_WORDS, PanelFace
from junctionary.sheets.faces import GUARD_SIGNS, feeds_phrase
from junctionary.sheets.grounds import panel_facts, panel_workings
from junctionary.sheets.isolation import before_panel
from junctionary.sheets.legend import WORDS
from junctionary.sheets.links import Link, Phrase, Ref, in_a_row
from junctionary.sheets.naming import NOT_RECORDED, circuit_link, room_link, said, where
from junctionary.sheets.panel import PanelSheet
from junctionary.sheets.survey import Survey, excerpts, in_fewer, known_words, title
from junctionary.sheets.titleblock import card_number, panel_number


def panel_sheet(survey: Survey, panel_id: str) -> PanelSheet:
    """The sheet of one panel."""
    house = survey.house
    panel = house.panels[panel_id]
    ref = Ref("panel", panel_id)
    missing = survey.missing_at.get(ref, ())
    position = list(house.panels).index(panel_id) + 1
    face = survey.faces[panel_id]
    return PanelSheet(
        title=title(
            survey,
            f"Panel {panel_id}, face and schedule",
            panel_number(position),
            known_words(panel.record.stage or "as recorded", len(missing)),
        ),
        ref=ref,
        heading=panel.name,
        lead=_lead(house, panel),
        before=before_panel(survey, panel_id),
        facts=tuple(_facts(survey, panel)),
        face=face,
        card=Link(f"{card_number(position)}, the directory card for its door", Ref("card", panel_id)),
        schedule=_schedule(house, panel),
        signs=tuple(_signs(face)),
        workings=tuple(panel_workings(survey, panel)),
        findings=survey.findings_at.get(ref, ()),
        missing=in_fewer(missing),
        excerpts=excerpts(survey, panel.place),
    )


def _lead(house: House, panel: Panel) -> Phrase:
    room = panel.record.at.room if panel.record.at else None
    at: Phrase = (room_link(house, room), ", ") if room else ()
    return (*at, f"{where(house, panel.record.at)}; ", *fed_from(house, panel), ".")


def fed_from(house: House, panel: Panel) -> Phrase:
    """What feeds a panel."""
    if panel.feeder is not None:
        return ("fed by ", circuit_link(house, panel.feeder))
    if panel.record.fed_by == "service":
        return ("fed by the service",)
    return (f"fed by {panel.record.fed_by}" if panel.record.fed_by else "what feeds it is not recorded",)


def _facts(survey: Survey, panel: Panel) -> Iterator[Fact]:
    house, record = survey.house, panel.record
    yield Fact("kind", (record.kind.replace("-", " "),))
    yield Fact("rating", (said(house, record.rating),))
    yield Fact(
        "main breaker", ("no main in this panel" if record.main is NONE else said(house, record.main),)
    )
    yield Fact("spaces", (str(record.spaces),))
    yield from panel_facts(survey, panel)
    yield Fact("surge protection", ("; ".join(surge_words(panel)),))
    yield Fact("age", (age_words(record.made, record.installed),))
    yield Fact("door card dated", (said(house, record.directory_dated),))
    if record.note:
        yield Fact("note", (record.note,))


def guard_words(breaker: Breaker) -> str:
    """``GFCI + AFCI``, ``none``, or that it is not recorded."""
    if breaker.guards is None:
        return NOT_RECORDED
    return " + ".join(each.upper() for each in breaker.guards) or "none"


def _schedule(house: House, panel: Panel) -> Table:
    rows = []
    breakers = in_order(panel)
    # Few date their breakers; a column that says nothing of any would only take room.
    dated = any(each.record.made is not None or each.record.installed is not None for each in breakers)
    for breaker in breakers:
        age = ((age_words(breaker.record.made, breaker.record.installed),),) if dated else ()
        rows.append(
            Row(
                (
                    ("+".join(breaker.spaces),),
                    (said(house, breaker.rating),),
                    ("+".join(each or "?" for each in breaker.legs),),
                    (guard_words(breaker),),
                    feeds_phrase(house, breaker),
                    (rooms_served(house, breaker),),
                    (breaker.says or "",),
                    *age,
                )
            )
        )
    heads = (
        "space",
        "rating",
        "leg",
        "protection",
        "feeds",
        "where",
        "door card says now",
        *(("age",) if dated else ()),
    )
    return Table(heads, tuple(rows))


def rooms_served(house: House, breaker: Breaker) -> str:
    """The rooms of what a breaker feeds, by their names; nothing where that is not known."""
    circuit = house.circuits.get(str(breaker.feeds))
    rooms = circuit.rooms if circuit else ()
    return in_a_row(house.rooms[each].name for each in rooms if each in house.rooms)


def in_order(panel: Panel) -> list[Breaker]:
    """The breakers by the number of their first space, the main left out."""
    return sorted((each for each in panel.breakers if each.spaces != (MAIN,)), key=_place)


def _signs(face: PanelFace) -> Iterator[Fact]:
    """The abbreviations and states this face shows, in words."""
    shown = " ".join(each.guards for each in face.handles)
    for guard, sign in GUARD_SIGNS.items():
        if sign in shown:
            yield Fact(sign, (f"{guard.upper()}: {WORDS[guard.upper()]}",))
    states = {each.state for each in face.handles}
    for state, sign in (("blank", "blank"), ("open", "open"), ("unused", "spare"), ("unrecorded", "?")):
        if state in states:
            yield Fact(sign, (STATE_WORDS[state].partition(": ")[2] or "nothing is recorded of this space",))
    if "unknown" in states:
        yield Fact("broken outline", ("what it feeds is unknown or not recorded",))
    if any(each.is_off for each in face.handles):
        yield Fact(
            "handle outward",
            ("off: kept off, or held off by an interlock; the others are drawn on, toward the middle",),
        )


def _place(breaker: Breaker) -> tuple[int, str]:
    match = SPACE.fullmatch(breaker.spaces[0])
    return (int(match[1]), match[2]) if match else (10_000, breaker.spaces[0])
