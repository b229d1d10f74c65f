"""Builds the schedules of the whole house."""

from junctionary.house.model import Box, House, Joint
from junctionary.records.boxes import Reach
from junctionary.records.values import NONE, UNKNOWN
from junctionary.sheets.boxes import reach_words
from junctionary.sheets.checklists import completeness
from junctionary.sheets.circuits import numbered
from junctionary.sheets.entries import SEVERITIES, Row, Table
from junctionary.sheets.faces import breakers_counted
from junctionary.sheets.isolation import before_any
from junctionary.sheets.links import Link, Phrase, Ref, listed
from junctionary.sheets.lists import (
    FindingGroup,
    FindingsSheet,
    Group,
    ListSheet,
    NotRecordedSheet,
    SplicesSheet,
)
from junctionary.sheets.makeup import connector_words
from junctionary.sheets.naming import (
    NOT_RECORDED,
    breaker_link,
    circuit_link,
    counted,
    link,
    room_link,
    said,
    where,
)
from junctionary.sheets.panels import fed_from
from junctionary.sheets.rooms import box_row
from junctionary.sheets.survey import Survey, boxes_known, edition_words, sentence, title
from junctionary.sheets.titleblock import GENERAL


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
                (each.is_,),
                (said(house, each.rating),),
                (link(house, each.enters) if each.enters else NOT_RECORDED,),
                (each.shut_off or NOT_RECORDED,),
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
                Table(("source", "is", "rating", "enters at", "shut off at", "without the utility"), sources),
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
        circuits = [each for each in house.circuits.values() if ours & set(each.breakers)]
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
                                (each.record.purpose or NOT_RECORDED,),
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


def splices_sheet(survey: Survey) -> SplicesSheet:
    """Every joint of the house, those hardest to reach first."""
    house = survey.house
    hard: list[Row] = []
    alone: list[Row] = []
    others: list[Row] = []
    for box in house.boxes.values():
        for joint in box.joints:
            row = _joint_row(house, box, joint)
            if is_hard_to_reach(box):
                hard.append(row)
            elif not box.devices:
                alone.append(row)
            else:
                others.append(row)
    heads = ("joint", "joins", "in", "where", "reached", "circuit")
    return SplicesSheet(
        title=title(survey, "Splices and pigtails", GENERAL["splices"], boxes_known(house.boxes.values())),
        ref=Ref("sheet", "splices"),
        heading="Splices and pigtails",
        lead=(sentence(counted(len(hard) + len(alone) + len(others), "joint")), " ", _blind(house)),
        before=before_any(),
        groups=(
            Group(
                "Hard to reach",
                ("Hidden, behind a surface, without a box, or nobody can tell.",),
                Table(heads, tuple(hard)),
            ),
            Group("In boxes that only join", (), Table(heads, tuple(alone))),
            Group("Behind devices", (), Table(heads, tuple(others))),
        ),
    )


def _blind(house: House) -> str:
    blind = [each.id for each in house.boxes.values() if each.makeup_unknown or each.makeup_unrecorded]
    if not blind:
        return ""
    return sentence(
        f"{counted(len(blind), 'box', 'boxes')} more may hold joints not recorded: {', '.join(blind)}"
    )


def is_hard_to_reach(box: Box) -> bool:
    """Whether something told stands between a person and the joint, or there is no box around it."""
    reach = box.record.reach
    return box.record.size is NONE or reach is UNKNOWN or isinstance(reach, Reach)


def _joint_row(house: House, box: Box, joint: Joint) -> Row:
    members = ", ".join(
        each.name.removeprefix(f"{box.id}/").removeprefix(f"{box.id}.") for each in joint.members
    )
    return Row(
        (
            (Link(joint.id, Ref("joint", joint.id)),),
            (members,),
            (connector_words(joint),),
            (room_link(house, box.room), ", ", where(house, box.record.at)),
            (reach_words(box.record.reach),),
            listed(tuple(circuit_link(house, each) for each in joint.circuits)) or (NOT_RECORDED,),
        )
    )


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
        missing=survey.missing,
        rooms=rooms,
        circuits=circuits,
    )
