"""Builds the schedules of the whole house."""

import re

from junctionary.house.model import Circuit, House
from junctionary.sheets.checklists import completeness
from junctionary.sheets.circuits import numbered
from junctionary.sheets.entries import SEVERITIES, Row, Table
from junctionary.sheets.faces import breakers_counted
from junctionary.sheets.links import Link, Phrase, Ref, listed
from junctionary.sheets.lists import (
    FindingGroup,
    FindingsSheet,
    Group,
    ListSheet,
    NotRecordedSheet,
)
from junctionary.sheets.naming import (
    NOT_RECORDED,
    breaker_link,
    circuit_link,
    counted,
    link,
    room_link,
    said,
)
from junctionary.sheets.panels import fed_from
from junctionary.sheets.rooms import box_row
from junctionary.sheets.second_sources import stopping
from junctionary.sheets.survey import Survey, edition_words, in_fewer, sentence, title
from junctionary.sheets.titleblock import GENERAL

_LETTERS = re.compile(r"\D")


def _list(survey: Survey, id_: str, heading: str, lead: str, groups: tuple[Group, ...]) -> ListSheet:
    return ListSheet(
        title=title(survey, heading, GENERAL[id_], "as recorded"),
        ref=Ref("sheet", id_),
        heading=heading,
        lead=(lead,),
        groups=groups,
    )


def panels_list(survey: Survey) -> ListSheet:
    """Every panel, and every other source of supply."""
    house = survey.house
    panels = tuple(
        Row(
            (
                (Link(panel.name, Ref("panel", panel.id)),),
                _at(house, panel.record.at.room if panel.record.at else None),
                (said(house, panel.record.rating),),
                fed_from(house, panel),
                (breakers_counted(panel),),
            )
        )
        for panel in house.panels.values()
    )
    sources = tuple(
        Row(
            (
                (circuit_link(house, each.id),),
                (each.is_.replace("-", " "),),
                (said(house, each.rating),),
                (link(house, each.enters) if each.enters else NOT_RECORDED,),
                (stopping(house, each),),
                (each.without_utility or NOT_RECORDED,),
            )
        )
        for each in house.sources.values()
    )
    return _list(
        survey,
        "panels",
        "Panels and sources",
        sentence(counted(len(panels), "panel")),
        (
            Group("Panels", (), Table(("panel", "where", "rating", "fed", "holds"), panels)),
            Group(
                "Other sources",
                ("What can keep a conductor live with the main off.",),
                Table(("source", "is", "rating", "enters at", "shut off", "without the utility"), sources),
            ),
        ),
    )


def _at(house: House, room: str | None) -> Phrase:
    return (room_link(house, room),) if room else (NOT_RECORDED,)


def circuits_list(survey: Survey) -> ListSheet:
    """Every circuit, by the panel that feeds it."""
    house = survey.house
    heads = ("circuit", "breaker", "rating", "purpose", "rooms", "boxes", "sheet")
    groups = []
    for panel in house.panels.values():
        ours = {breaker.id for breaker in panel.breakers}
        fed = [each for each in house.circuits.values() if ours & set(each.breakers)]
        circuits = sorted(fed, key=_by_space)
        groups.append((panel.name, circuits))
    groups.append(("No breaker recorded", [each for each in house.circuits.values() if not each.breakers]))
    return _list(
        survey,
        "circuits",
        "Circuits",
        sentence(counted(len(house.circuits), "circuit")),
        tuple(
            Group(
                name,
                (),
                Table(
                    heads,
                    tuple(
                        Row(
                            (
                                (circuit_link(house, each.id),),
                                listed(tuple(breaker_link(breaker) for breaker in each.breakers))
                                or (NOT_RECORDED,),
                                (
                                    ", ".join(
                                        dict.fromkeys(
                                            said(house, house.breakers[breaker].rating)
                                            for breaker in each.breakers
                                        )
                                    ),
                                ),
                                ((each.record.purpose or NOT_RECORDED).replace("-", " "),),
                                listed(tuple(room_link(house, room) for room in each.rooms)),
                                (str(len(each.boxes)),),
                                (numbered(house, each),),
                            )
                        )
                        for each in circuits
                    ),
                    figures=(5,),
                ),
            )
            for name, circuits in groups
            if circuits
        ),
    )


def _by_space(circuit: Circuit) -> tuple[int, str]:
    """As the breakers stand in their panel: by the number of the first space, the upper half first."""
    spaces = [space for each in circuit.breakers for space in each.partition("/")[2].split("+")]
    return min((int(_LETTERS.sub("", each) or 0), each) for each in spaces)


def rooms_list(survey: Survey) -> ListSheet:
    """Every room, level by level."""
    house = survey.house
    levels = [(each.id, each.name) for each in house.record.levels]
    known = {id_ for id_, _ in levels}
    groups = []
    for id_, name in (*levels, (None, "Level not recorded")):
        rooms = [
            each
            for each in house.rooms.values()
            if each.record.level == id_ or (id_ is None and each.record.level not in known)
        ]
        rows = tuple(
            Row(
                (
                    (Link(each.name, Ref("room", each.id)),),
                    (each.record.kind,),
                    (str(len(each.boxes)),),
                    listed(tuple(circuit_link(house, circuit) for circuit in each.circuits)),
                    (each.stage or NOT_RECORDED,),
                )
            )
            for each in rooms
        )
        if rows:
            plan: Phrase = ("Plan: ", Link(name, Ref("level", id_)), ".") if id_ else ()
            groups.append(
                Group(name, plan, Table(("room", "kind", "boxes", "circuits", "stage"), rows, figures=(2,)))
            )
    return _list(survey, "rooms", "Rooms", sentence(counted(len(house.rooms), "room")), tuple(groups))


def boxes_list(survey: Survey) -> ListSheet:
    """Every box, room by room."""
    house = survey.house
    heads = ("box", "where", "holds", "fed by", "made up")
    rooms = dict.fromkeys((*house.rooms, *(box.room for box in house.boxes.values())))
    groups = []
    for room in rooms:
        boxes = [each for each in house.boxes.values() if each.room == room]
        if boxes:
            name = house.rooms[room].name if room in house.rooms else room
            table = Table(heads, tuple(box_row(survey, each) for each in boxes))
            groups.append(Group(name, (), table))
    return _list(survey, "boxes", "Boxes", sentence(counted(len(house.boxes), "box", "boxes")), tuple(groups))


def findings_sheet(survey: Survey) -> FindingsSheet:
    """What was found, hazards first; what could not be judged has its own sheet."""
    groups = tuple(
        FindingGroup(severity, tuple(each for each in survey.findings if each.severity == severity))
        for severity in SEVERITIES
        if severity != "unrecorded"
    )
    tally = ", ".join(counted(len(each.findings), each.severity, _plural(each.severity)) for each in groups)
    return FindingsSheet(
        title=title(survey, "Findings", GENERAL["findings"], "judged as recorded"),
        ref=Ref("sheet", "findings"),
        heading="Findings",
        lead=(
            sentence(tally),
            " ",
            Link(f"{counted(len(survey.missing), 'fact')} not recorded", Ref("sheet", "not-recorded")),
            ": what rests on them could not be judged. ",
            Link("All checks", Ref("sheet", "rules")),
            ".",
        ),
        groups=groups,
        today=survey.today,
        edition=edition_words(survey.house.edition),
    )


def _plural(severity: str) -> str:
    return "advice" if severity == "advice" else f"{severity}s"


def not_recorded_sheet(survey: Survey) -> NotRecordedSheet:
    """Every missing fact, those that settle most first."""
    rooms, circuits = completeness(survey)
    return NotRecordedSheet(
        title=title(survey, "Not recorded", GENERAL["not-recorded"], "as recorded"),
        ref=Ref("sheet", "not-recorded"),
        heading="Not recorded",
        lead=(
            sentence(
                f"{counted(len(survey.missing), 'fact')} that a check asked for and the record does not hold"
            ),
        ),
        missing=in_fewer(survey.missing),
        rooms=rooms,
        circuits=circuits,
    )
