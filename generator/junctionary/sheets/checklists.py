"""Builds the stage checklist, and how much can be judged of each room and circuit."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from junctionary.checks.engine import rules
from junctionary.checks.finding import LAST_CHEAP, Cheap
from junctionary.sheets.checklist import ChecklistSheet, StageList
from junctionary.sheets.entries import FindingEntry, Row, Table
from junctionary.sheets.links import Link, Phrase, Ref, listed
from junctionary.sheets.lists import Judged
from junctionary.sheets.naming import NOT_RECORDED, circuit_link, homes
from junctionary.sheets.survey import Survey, counted, sentence, title
from junctionary.sheets.titleblock import GENERAL

NOTHING = "nothing"


@dataclass(frozen=True, slots=True)
class _Standing:
    """What is said of one place: its findings, and the facts each check wants there, by check."""

    wrong: tuple[FindingEntry, ...]
    wants: Mapping[str, tuple[str, ...]]


def checklist_sheet(survey: Survey) -> ChecklistSheet:
    """For every room, and for what belongs to no room: proved, wrong, still to record, stage by stage."""
    standing = _standing(survey)
    places: list[tuple[Ref | None, Phrase, str]] = [
        (Ref("room", each.id), (Link(each.name, Ref("room", each.id)),), each.stage or NOT_RECORDED)
        for each in survey.house.rooms.values()
    ]
    places.append((None, ("Panels, circuits, the whole house",), ""))
    return ChecklistSheet(
        title=title(survey, "Stage checklist", GENERAL["checklist"], "judged as recorded"),
        ref=Ref("sheet", "checklist"),
        heading="Stage checklist",
        lead=(
            "Each check stands at the last stage at which its fault is cheap to mend. ",
            Link("What each check looks at", Ref("sheet", "rules")),
            ".",
        ),
        stages=tuple(_stage(stage, before, places, standing) for stage, before in LAST_CHEAP.items()),
    )


def completeness(survey: Survey) -> tuple[Judged, Judged]:
    """Of each room, then of each circuit: how many checks can be judged, and how many facts are missing."""
    standing, house = _standing(survey), survey.house
    rooms = [(Ref("room", each.id), Link(each.name, Ref("room", each.id))) for each in house.rooms.values()]
    circuits = [(Ref("circuit", each), circuit_link(house, each)) for each in house.circuits]
    return _judged(survey, "room", rooms, standing), _judged(survey, "circuit", circuits, standing)


def _judged(
    survey: Survey,
    what: str,
    places: Iterable[tuple[Ref, Link | str]],
    standing: Mapping[Ref | None, _Standing],
) -> Judged:
    rows: list[Row] = []
    whole: list[str | Link] = []
    for ref, name in places:
        wants = standing[ref].wants if ref in standing else {}
        if not wants:
            whole.append(name)
            continue
        rows.append(
            Row(
                (
                    (name,),
                    (f"{len(rules()) - len(wants)} of {len(rules())}",),
                    (str(len(survey.missing_at.get(ref, ()))),),
                    _checks(wants),
                )
            )
        )
    heads = (what, "checks judged", "facts missing", "cannot be told")
    return Judged(Table(heads, tuple(rows), figures=(1, 2)), listed(tuple(whole)))


def _stage(
    stage: Cheap,
    before: str,
    places: Iterable[tuple[Ref | None, Phrase, str]],
    standing: Mapping[Ref | None, _Standing],
) -> StageList:
    due = {each.id for each in rules().values() if each.stage == stage}
    rows: list[Row] = []
    clear: list[str | Link] = []
    for ref, name, now in places:
        here = standing.get(ref, _Standing((), {}))
        wrong = [each for each in here.wrong if each.rule.id in due]
        wants = {rule: needs for rule, needs in here.wants.items() if rule in due}
        if not wrong and not wants:
            clear += name
            continue
        sound = len(due - {each.rule.id for each in wrong} - set(wants))
        rows.append(
            Row(
                (
                    name,
                    (now,),
                    (f"{sound} of {len(due)}",),
                    listed(tuple(Link(each.rule.id, each.ref) for each in wrong)) or (NOTHING,),
                    (
                        "; ".join(dict.fromkeys(need for needs in wants.values() for need in needs))
                        or NOTHING,
                    ),
                )
            )
        )
    heads = ("room", "stage now", "nothing against it", "wrong", "still to record")
    says = sentence(f"{counted(len(due), 'check')} whose fault is cheap to mend {before}")
    return StageList(before, says, Table(heads, tuple(rows), figures=(2,)), listed(tuple(clear)))


def _checks(names: Iterable[str]) -> Phrase:
    return listed(tuple(Link(each, Ref("rule", each)) for each in names))


def _standing(survey: Survey) -> dict[Ref | None, _Standing]:
    """By place; what concerns no room stands under None as well."""
    house = survey.house
    wrong: dict[Ref | None, list[FindingEntry]] = {}
    wants: dict[Ref | None, dict[str, tuple[str, ...]]] = {}

    def at(about: Iterable[str]) -> set[Ref | None]:
        found: set[Ref | None] = set(homes(house, about))
        if not any(each is not None and each.kind == "room" for each in found):
            found.add(None)
        return found

    for finding, entry in zip(survey.judgement.findings, survey.findings, strict=True):
        for place in at(finding.about):
            wrong.setdefault(place, []).append(entry)
    for each in survey.judgement.unrecorded:
        for place in at(each.about):
            held = wants.setdefault(place, {})
            held[each.rule] = tuple(dict.fromkeys((*held.get(each.rule, ()), *each.needs)))
    return {
        place: _Standing(tuple(wrong.get(place, ())), wants.get(place, {}))
        for place in dict.fromkeys((*wrong, *wants))
    }
